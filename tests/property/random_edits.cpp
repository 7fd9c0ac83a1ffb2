#include "core/plan/edits.h"
#include "tests/property/random_plan.h"

namespace yardcast::random {

namespace {

/// Some ids of the plan, now and then one that is not there.
Ids someIds(const Plan& plan, Source& s)
{
    Ids ids;
    for (const PartPtr& part : plan.parts) {
        if (s.chance(40)) ids.push_back(part->id);
    }
    if (s.chance(10)) ids.push_back("nobody");
    return ids;
}

std::string someId(const Plan& plan, Source& s)
{
    if (plan.parts.empty() || s.chance(5)) return "nobody";
    return s.one(plan.parts)->id;
}

std::string someCounter(const Plan& plan, Source& s)
{
    Ids counters;
    for (const PartPtr& part : plan.parts) {
        if (part->kind() == PartKind::counter) counters.push_back(part->id);
    }
    return counters.empty() ? someId(plan, s) : s.one(counters);
}

Point somewhere(Source& s) { return {s.between(-2000, 2000, 0.5), s.between(-2000, 2000, 0.5)}; }

std::string someCutout(const Plan& plan, const std::string& id, Source& s)
{
    const Part* part = findPart(plan, id);
    const auto* counter = part ? std::get_if<Counter>(&part->body) : nullptr;
    return counter && !counter->cutouts.empty() ? s.one(counter->cutouts).id : "K9";
}

int someEdge(Source& s) { return static_cast<int>(s.below(9)) - 1; }

Cutout someHole(Source& s)
{
    Cutout cutout;
    cutout.id = s.chance(50) ? "K1" : "";
    cutout.shape = CutoutShape::circle;
    cutout.centre = somewhere(s);
    cutout.diameterMm = s.between(-10, 500);
    return cutout;
}

using Edit = Plan (*)(const Plan&, Source&);

struct NamedEdit {
    const char* name;
    Edit edit;
};

const std::vector<NamedEdit>& edits()
{
    static const std::vector<NamedEdit> all{
        {"add", [](const Plan& p, Source& s) { return addPart(p, part(s, static_cast<PartKind>(s.below(5)))); }},
        {"remove", [](const Plan& p, Source& s) { return removeParts(p, {someId(p, s)}); }},
        {"move", [](const Plan& p, Source& s) { return moveParts(p, someIds(p, s), somewhere(s)); }},
        {"turn",
         [](const Plan& p, Source& s) { return turnParts(p, someIds(p, s), s.between(-180, 180, 0.5), somewhere(s)); }},
        {"mirror", [](const Plan& p, Source& s) { return mirrorParts(p, someIds(p, s), s.between(-500, 500, 0.25)); }},
        {"duplicate",
         [](const Plan& p, Source& s) {
             return p.parts.size() > 30 ? p : duplicateParts(p, {someId(p, s)}, somewhere(s));
         }},
        {"insert",
         [](const Plan& p, Source& s) {
             return insertParts(p, {part(s, PartKind::counter), part(s, PartKind::appliance)}, somewhere(s));
         }},
        {"raise", [](const Plan& p, Source& s) { return raiseParts(p, someIds(p, s), s.between(-50, 50, 0.1)); }},
        {"align",
         [](const Plan& p, Source& s) { return alignParts(p, someIds(p, s), static_cast<AlignTo>(s.below(6))); }},
        {"distribute",
         [](const Plan& p, Source& s) { return distributeParts(p, someIds(p, s), static_cast<Axis>(s.below(2))); }},
        {"change",
         [](const Plan& p, Source& s) {
             return changePart(p, someId(p, s), [&](Part& one) { one.name = std::to_string(s.below(1000)); });
         }},
        {"change counter",
         [](const Plan& p, Source& s) {
             return changeCounter(p, someCounter(p, s), [&](Counter& c) { c.thicknessMm = s.between(-5, 90, 0.5); });
         }},
        {"change plan",
         [](const Plan& p, Source& s) {
             return changePlan(p, [&](Plan& one) { one.conditions.windKmh = s.between(0, 40); });
         }},
        {"rename",
         [](const Plan& p, Source& s) { return renamePart(p, someId(p, s), s.chance(50) ? "N" : someId(p, s)); }},
        {"resize",
         [](const Plan& p, Source& s) {
             return resizePart(p, someId(p, s), {s.between(-5, 2500, 0.5), s.between(-5, 900)});
         }},
        {"move edge",
         [](const Plan& p, Source& s) {
             return moveOutlineEdge(p, someCounter(p, s), someEdge(s), s.between(-900, 900, 0.5));
         }},
        {"move corner",
         [](const Plan& p, Source& s) { return moveOutlineCorner(p, someCounter(p, s), someEdge(s), somewhere(s)); }},
        {"insert corner",
         [](const Plan& p, Source& s) { return insertOutlineCorner(p, someCounter(p, s), someEdge(s), somewhere(s)); }},
        {"remove corner",
         [](const Plan& p, Source& s) { return removeOutlineCorner(p, someCounter(p, s), someEdge(s)); }},
        {"extrude",
         [](const Plan& p, Source& s) {
             return extrudeOutlineEdge(p, someCounter(p, s), someEdge(s), s.between(-100, 1500), s.between(-100, 1500),
                                       s.between(-400, 400));
         }},
        {"add cutout", [](const Plan& p, Source& s) { return addCutout(p, someCounter(p, s), someHole(s)); }},
        {"remove cutout",
         [](const Plan& p, Source& s) {
             const std::string id = someCounter(p, s);
             return removeCutout(p, id, someCutout(p, id, s));
         }},
        {"change cutout",
         [](const Plan& p, Source& s) {
             const std::string id = someCounter(p, s);
             return changeCutout(p, id, someCutout(p, id, s), [&](Cutout& c) { c.centre = somewhere(s); });
         }},
        {"site outline",
         [](const Plan& p, Source& s) {
             return setSiteOutline(p, s.chance(30) ? Ring{} : Ring{{0, 0}, somewhere(s), somewhere(s)});
         }},
        {"add fixture",
         [](const Plan& p, Source& s) {
             return addFixture(p, Fixture{s.chance(50) ? "X1" : "", FixtureKind::tree, somewhere(s), {}, {}});
         }},
        {"remove fixture", [](const Plan& p, Source&) { return removeFixture(p, "X1"); }},
        {"change fixture",
         [](const Plan& p, Source& s) {
             return changeFixture(p, "X2", [&](Fixture& f) { f.at = somewhere(s); });
         }},
    };
    return all;
}

}  // namespace

Plan edited(const Plan& plan, Source& source, std::string& name)
{
    const NamedEdit& edit = source.one(edits());
    name = edit.name;
    return edit.edit(plan, source);
}

}  // namespace yardcast::random
