#include "core/handling/lift_means.h"

#include <algorithm>
#include <cmath>

#include "core/io/number_text.h"
#include "core/io/patch_text.h"
#include "core/plan/validation.h"

namespace yardcast {

namespace {

/// Thicknesses that foam boards come in, mm; common practice, no source.
constexpr double kFoamMm[] = {20.0, 30.0, 40.0, 50.0, 60.0, 80.0, 100.0, 120.0, 150.0};
/// Solid concrete left about a core, where the piece is gripped, stands and bears, mm: judgement.
constexpr double kFrameMm[] = {80.0, 60.0};
constexpr double kLeastCoreMm = 100.0;

std::string tenthsText(double value)
{
    const double tenths = std::round(value * 10) / 10;
    return shortestText(tenths == 0.0 ? 0.0 : tenths);
}

std::string pairText(Point p) { return "[" + tenthsText(p.x) + "," + tenthsText(p.y) + "]"; }

std::string jointText(const Joint& joint)
{
    return "{\"from\":" + pairText(joint.from) + ",\"to\":" + pairText(joint.to) + "}";
}

/// A support or panel as a box with a core.
struct Shape {
    double lengthMm;
    double heightMm;
    double thicknessMm;
    const std::optional<Core>* core;
};

std::optional<Shape> shapeOf(const PartBody& body)
{
    if (const auto* s = std::get_if<Support>(&body)) return Shape{s->lengthMm, s->heightMm, s->widthMm, &s->core};
    if (const auto* p = std::get_if<Panel>(&body)) return Shape{p->lengthMm, p->heightMm, p->thicknessMm, &p->core};
    return std::nullopt;
}

double massWith(const Part& part, const Core& core)
{
    Part after = part;
    if (auto* support = std::get_if<Support>(&after.body)) support->core = core;
    if (auto* panel = std::get_if<Panel>(&after.body)) panel->core = core;
    double mass = 0.0;
    for (const CastingPtr& piece : castingsOf(after)) mass += piece->massKg;
    return mass;
}

}  // namespace

const char* liftMeansWord(LiftMeans means)
{
    switch (means) {
    case LiftMeans::morePeople: return "more_people";
    case LiftMeans::joint: return "joint";
    case LiftMeans::foamCore: return "foam_core";
    case LiftMeans::trolley: return "trolley";
    case LiftMeans::straps: return "straps";
    case LiftMeans::hoist: return "hoist";
    }
    return "";
}

Rests::Rests(const Plan& plan) : plan_(plan)
{
    for (const PartPtr& part : plan.parts) {
        if (part->kind() != PartKind::support && part->kind() != PartKind::panel) continue;
        const auto box = boundsOf(footprint(*part));
        const auto isNumber = [](Point p) { return std::isfinite(p.x) && std::isfinite(p.y); };
        if (!box || !isNumber(box->low) || !isNumber(box->high)) continue;
        rests_.push_back({*box, levelsOf(plan, *part).highMm, part.get()});
        widestMm_ = std::max(widestMm_, box->width());
    }
    std::stable_sort(rests_.begin(), rests_.end(), [](const Rest& a, const Rest& b) { return a.box.low.x < b.box.low.x; });
}

std::vector<Box> Rests::under(const Part& counter) const
{
    std::vector<Box> boxes;
    if (counter.kind() != PartKind::counter) return boxes;
    const double underside = levelsOf(plan_, counter).lowMm;
    const auto slab = boundsOf(footprint(counter));
    if (!slab) return boxes;
    auto rest = std::lower_bound(rests_.begin(), rests_.end(), slab->low.x - widestMm_,
                                 [](const Rest& r, double x) { return r.box.low.x < x; });
    for (; rest != rests_.end() && rest->box.low.x < slab->high.x; ++rest) {
        const double gap = underside - rest->highMm;
        if (gap < -1.0 || gap > kBeddingMm + kDefaultPadMm) continue;
        if (rest->box.high.x <= slab->low.x || rest->box.high.y <= slab->low.y || rest->box.low.y >= slab->high.y) continue;
        Ring ring = footprint(*rest->part);
        for (Point& p : ring) p = counter.place.toOwn(p);
        if (const auto own = boundsOf(ring)) boxes.push_back(*own);
    }
    return boxes;
}

double tiltKg(const Casting& casting)
{
    if (casting.outline.empty()) return 0.0;
    const Ring& ring = casting.outline[0].outer;
    const bool upright = casting.kind != PartKind::counter;
    const Point centre{casting.centroidMm[0], upright ? casting.boundsMm.centre().y : casting.centroidMm[1]};
    double longest = 0.0;
    double pull = 0.0;
    for (std::size_t i = 0; i < ring.size(); ++i) {
        const Point a = ring[i];
        const Point b = ring[(i + 1) % ring.size()];
        const double along = distance(a, b);
        // Alike edges: the one that asks for more, to be safe.
        if (!(along > 0.0) || along < longest - 0.5) continue;
        double reach = 0.0;
        for (const Point p : ring) reach = std::max(reach, cross(b - a, p - a) / along);
        const double arm = cross(b - a, centre - a) / along;
        if (!(reach > 0.0) || !(arm > 0.0)) continue;
        const double kg = casting.massKg * std::min(1.0, arm / reach);
        pull = along > longest + 0.5 ? kg : std::max(pull, kg);
        longest = std::max(longest, along);
    }
    return pull;
}

std::optional<CoreProposal> proposeCore(const Part& part, double limitKg)
{
    const auto shape = shapeOf(part.body);
    if (!shape || !(limitKg > 0.0)) return std::nullopt;
    double now = 0.0;
    for (const CastingPtr& piece : castingsOf(part)) now += piece->massKg;
    if (!(now > limitKg)) return std::nullopt;
    const bool cored = shape->core->has_value();
    std::optional<CoreProposal> lightest;
    for (const double frame : kFrameMm) {
        for (const double foam : kFoamMm) {
            if ((shape->thicknessMm - foam) / 2 < kLeastWallMm) break;
            Core core = cored ? **shape->core : Core{};
            const auto tens = [](double mm) { return std::floor(mm / 10) * 10; };
            core.lengthMm = std::max(core.lengthMm, tens(shape->lengthMm - 2 * frame));
            core.heightMm = std::max(core.heightMm, tens(shape->heightMm - 2 * frame));
            core.thicknessMm = foam;
            if (core.lengthMm < kLeastCoreMm || core.heightMm < kLeastCoreMm) break;
            const CoreProposal proposal{core, massWith(part, core)};
            if (!(proposal.massKg > 0.0) || proposal.massKg > now - 0.5) continue;
            if (proposal.massKg <= limitKg) return proposal;
            if (!lightest || proposal.massKg < lightest->massKg - 1e-9) lightest = proposal;
        }
    }
    return lightest;
}

std::string jointPatch(std::size_t part, const Counter& counter, const std::vector<Joint>& joints)
{
    const std::string path = "/parts/" + std::to_string(part) + "/joints";
    std::string text;
    const auto append = [&](const std::string& piece) {
        if (!text.empty()) text += ",";
        text += piece;
    };
    if (counter.joints.empty()) {
        for (const Joint& joint : joints) append(jointText(joint));
        text = addOperation(path, "[" + text + "]");
    } else {
        for (const Joint& joint : joints) append(addOperation(path + "/-", jointText(joint)));
    }
    return "[" + text + "]";
}

std::string corePatch(std::size_t part, bool hasCore, const Core& core)
{
    const std::string path = "/parts/" + std::to_string(part) + "/core";
    const std::string sizes[][2] = {{"length_mm", tenthsText(core.lengthMm)},
                                    {"height_mm", tenthsText(core.heightMm)},
                                    {"thickness_mm", tenthsText(core.thicknessMm)}};
    std::string text;
    for (const auto& [key, value] : sizes) {
        if (!text.empty()) text += ",";
        // What else stands in a core that is there already stays.
        text += hasCore ? addOperation(path + "/" + key, value) : "\"" + key + "\":" + value;
    }
    if (hasCore) return "[" + text + "]";
    return addPatch(path, "{" + text + ",\"density_kg_m3\":" + tenthsText(core.densityKgM3) + "}");
}

}  // namespace yardcast
