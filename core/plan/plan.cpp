#include "core/plan/plan.h"

#include <algorithm>

namespace yardcast {

bool operator==(const Plan& a, const Plan& b)
{
    const auto sameParts = [](const std::vector<PartPtr>& p, const std::vector<PartPtr>& q) {
        return std::equal(p.begin(), p.end(), q.begin(), q.end(), [](const PartPtr& x, const PartPtr& y) {
            return x == y || (x && y && *x == *y);
        });
    };
    return a.title == b.title && a.currency == b.currency && a.site == b.site && a.conditions == b.conditions
        && a.crew == b.crew && a.mixer == b.mixer && a.budget == b.budget && a.mixes == b.mixes
        && a.assumptions == b.assumptions && a.pouring == b.pouring && a.moulding == b.moulding && a.season == b.season
        && sameParts(a.parts, b.parts) && a.owned == b.owned && a.prices == b.prices && a.source == b.source;
}

Assumptions assumptionsOf(const Plan& plan) { return withinLimits(plan.assumptions.value_or(Assumptions{})); }

Moulding mouldingOf(const Plan& plan) { return withinLimits(plan.moulding.value_or(Moulding{})); }

int indexOfPart(const Plan& plan, const std::string& id)
{
    for (std::size_t i = 0; i < plan.parts.size(); ++i) {
        if (plan.parts[i]->id == id) return static_cast<int>(i);
    }
    return -1;
}

const Part* findPart(const Plan& plan, const std::string& id)
{
    const int index = indexOfPart(plan, id);
    return index < 0 ? nullptr : plan.parts[static_cast<std::size_t>(index)].get();
}

const Mix* findMix(const Plan& plan, const std::string& id)
{
    const auto found = std::find_if(plan.mixes.begin(), plan.mixes.end(), [&](const Mix& m) { return m.id == id; });
    return found == plan.mixes.end() ? nullptr : &*found;
}

bool isCastUpright(const PartBody& body)
{
    if (const auto* support = std::get_if<Support>(&body)) return support->cast == UprightCast::upright;
    if (const auto* panel = std::get_if<Panel>(&body)) return panel->cast == UprightCast::upright;
    return false;
}

double foamDensityKgM3(const PartBody& body)
{
    if (const auto* counter = std::get_if<Counter>(&body)) return counter->filler.value_or(Filler{}).densityKgM3;
    const std::optional<Core>* core = nullptr;
    if (const auto* support = std::get_if<Support>(&body)) core = &support->core;
    if (const auto* panel = std::get_if<Panel>(&body)) core = &panel->core;
    return core != nullptr && core->has_value() ? (*core)->densityKgM3 : 0.0;
}

const Steel* steelOf(const PartBody& body)
{
    if (const auto* counter = std::get_if<Counter>(&body)) return counter->steel ? &*counter->steel : nullptr;
    if (const auto* panel = std::get_if<Panel>(&body)) return panel->steel ? &*panel->steel : nullptr;
    return nullptr;
}

Ring cutoutRing(const Cutout& cutout)
{
    if (cutout.shape == CutoutShape::circle) return circleRing(cutout.centre, cutout.diameterMm);
    return rectangleRing(cutout.centre, cutout.size, cutout.turnDeg.value_or(0.0), cutout.cornerRadiusMm.value_or(0.0));
}

namespace {

Ring boxRing(double width, double depth) { return {{0, 0}, {width, 0}, {width, depth}, {0, depth}}; }

struct OwnFootprint {
    Ring operator()(const Counter& c) const { return c.outline; }
    Ring operator()(const Support& s) const { return boxRing(s.lengthMm, s.widthMm); }
    Ring operator()(const Panel& p) const { return boxRing(p.lengthMm, p.thicknessMm); }
    Ring operator()(const Front& f) const
    {
        const double span = distance(f.from, f.to);
        if (!(span > 0.0)) return {f.from, f.to};
        const Point visible = leftNormal(f.to - f.from) * (-f.batten.thicknessMm / span);
        return {f.from + visible, f.to + visible, f.to, f.from};
    }
    Ring operator()(const Appliance& a) const { return boxRing(a.size.width, a.size.depth); }
};

struct OwnLevels {
    const Plan& plan;

    Levels operator()(const Counter& c) const { return {c.topMm - fullDepthMm(c), c.topMm}; }
    Levels operator()(const Support& s) const { return {s.baseMm, s.baseMm + s.heightMm}; }
    Levels operator()(const Panel& p) const { return {p.baseMm, p.baseMm + p.heightMm}; }
    Levels operator()(const Front& f) const { return {f.bottomMm, f.topMm}; }
    Levels operator()(const Appliance& a) const
    {
        double base = plan.site.ground ? plan.site.ground->levelMm : 0.0;
        if (a.on) {
            const Part* under = findPart(plan, *a.on);
            if (under && under->kind() == PartKind::counter) base = std::get<Counter>(under->body).topMm;
        }
        return {base, base + a.heightMm};
    }
};

}  // namespace

Ring footprint(const Part& part) { return transformed(std::visit(OwnFootprint{}, part.body), part.place); }

Levels levelsOf(const Plan& plan, const Part& part) { return std::visit(OwnLevels{plan}, part.body); }

double fullDepthMm(const Counter& counter)
{
    return counter.rim ? std::max(counter.rim->depthMm, counter.thicknessMm) : counter.thicknessMm;
}

}  // namespace yardcast
