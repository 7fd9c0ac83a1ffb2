#include "core/structure/strength_input.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>

#include "core/pour/cement_speed.h"
#include "core/pour/mix_concrete.h"
#include "core/pour/weather.h"
#include "core/structure/body.h"

namespace yardcast {

namespace {

/// As in the checks of the plan (core/plan/validation): what shares less than this only touches, and pads and bedding
/// make up so much between a support and the slab. Common practice, no source.
constexpr double kTouchMm = 1.0;
/// What hangs in a cutout rests on so much of the slab round it. Common practice, no source.
constexpr double kFlangeMm = 15.0;

Ring inOwnFrame(Ring ring, const Placement& place)
{
    for (Point& p : ring) p = place.toOwn(p);
    return ring;
}

bool boxesShare(const Box& a, const Box& b)
{
    return std::min(a.high.x, b.high.x) - std::max(a.low.x, b.low.x) > 0.0 &&
           std::min(a.high.y, b.high.y) - std::max(a.low.y, b.low.y) > 0.0;
}

/// A support or a panel as what may carry a counter.
struct Upright {
    double topMm = 0.0;
    double baseMm = 0.0;
    double padsMm = 0.0;
    double lengthMm = 0.0;
    double widthMm = 0.0;
    bool support = false;
};

std::optional<Upright> uprightOf(const Part& part)
{
    if (const auto* s = std::get_if<Support>(&part.body)) {
        return Upright{s->baseMm + s->heightMm, s->baseMm,
                       s->pads ? s->pads->thicknessMm.value_or(kDefaultPadMm) : 0.0, s->lengthMm, s->widthMm, true};
    }
    if (const auto* p = std::get_if<Panel>(&part.body))
        return Upright{p->baseMm + p->heightMm, p->baseMm, 0.0, p->lengthMm, p->thicknessMm, false};
    return std::nullopt;
}

/// Underside of the concrete that a thing of this height would bear: the lowest that it does not pierce, if it is near
/// enough. A support that ends inside the slab holds all of it (the checks of the plan say that it must not).
std::optional<double> depthBorneMm(const Casting& casting, double faceMm, const Upright& upright)
{
    double deepest = -1.0;
    for (const Zone& zone : casting.zones) {
        if (!zone.isConcrete()) continue;
        if (faceMm - zone.toMm - upright.topMm >= -kTouchMm) deepest = std::max(deepest, zone.toMm);
    }
    if (deepest >= 0.0) {
        if (faceMm - deepest - upright.topMm > upright.padsMm + kBeddingMm) return std::nullopt;
        return deepest;
    }
    const bool endsInside = upright.support && upright.baseMm < faceMm - casting.deepestMm &&
                            upright.topMm <= faceMm + kTouchMm;
    if (!endsInside) return std::nullopt;
    return casting.deepestMm;
}

double extentMm(const Region& region, Point direction)
{
    double low = HUGE_VAL;
    double high = -HUGE_VAL;
    for (const Polygon& polygon : region) {
        for (const Point p : polygon.outer) {
            low = std::min(low, dot(p, direction));
            high = std::max(high, dot(p, direction));
        }
    }
    return high > low ? high - low : 0.0;
}

bool onlyTouches(const Region& region)
{
    const auto box = boundsOf(region);
    return !box || std::min(box->width(), box->height()) <= kTouchMm;
}

std::optional<Rest> restOf(const Casting& casting, const Part& part, const Counter& counter, const Part& under)
{
    const auto upright = uprightOf(under);
    if (!upright) return std::nullopt;
    const auto depth = depthBorneMm(casting, counter.topMm, *upright);
    if (!depth) return std::nullopt;
    const Ring ring = inOwnFrame(footprint(under), part.place);
    const auto box = boundsOf(ring);
    if (!box || !boxesShare(*box, casting.boundsMm)) return std::nullopt;
    Rest rest;
    rest.under = under.id;
    const Region whole = regionOf(ring);
    rest.footprint = intersect(whole, casting.outline);
    if (onlyTouches(rest.footprint)) return std::nullopt;
    for (const Zone& zone : casting.zones) {
        if (!zone.isConcrete() || zone.toMm + zone.grooveMm < *depth - kTouchMm) continue;
        const Region piece = intersect(rest.footprint, zone.region);
        rest.bearing = rest.bearing.empty() ? piece : unite(rest.bearing, piece);
    }
    const Point along = part.place.directionToOwn(under.place.directionToPlan({1.0, 0.0}));
    rest.lengthMm = extentMm(rest.bearing, upright->lengthMm >= upright->widthMm ? leftNormal(along) : along);
    return rest;
}

/// One load before it is shared among the castings of its counter.
struct Placed {
    std::string name;
    Ring ring;
    double massKg = 0.0;
    bool appliance = false;
};

std::vector<Placed> loadsOf(const Plan& plan, const Part& part, const Counter& counter)
{
    std::vector<Placed> loads;
    for (const PlacedLoad& load : counter.loads)
        loads.push_back({load.name, rectangleRing(load.centre, load.size), load.massKg, false});
    for (const PartPtr& other : plan.parts) {
        const auto* appliance = std::get_if<Appliance>(&other->body);
        if (!appliance || appliance->on != part.id) continue;
        loads.push_back({other->id, inOwnFrame(footprint(*other), part.place), appliance->massKg, true});
    }
    std::erase_if(loads, [](const Placed& load) { return !(load.massKg > 0.0) || load.ring.size() < 3; });
    return loads;
}

/// The edge of the cutout that a load hangs in, where it hangs in one.
Region flangeRegion(const Counter& counter, Point centre)
{
    for (const Cutout& cutout : counter.cutouts) {
        const Ring ring = cutoutRing(cutout);
        if (!contains(ring, centre)) continue;
        const Region opening = regionOf(ring);
        return subtract(offset(opening, kFlangeMm, OffsetJoin::mitre), opening);
    }
    return {};
}

double distanceMm(const Casting& casting, Point p)
{
    if (contains(casting.outline, p)) return 0.0;
    double least = HUGE_VAL;
    for (const Polygon& polygon : casting.outline) {
        least = std::min(least, distanceToRing(polygon.outer, p));
        for (const Ring& hole : polygon.holes) least = std::min(least, distanceToRing(hole, p));
    }
    return least;
}

/// Shares a load among the castings by the area it has on each; what lies on none goes to the nearest.
void share(const Placed& load, const Counter& counter, const std::vector<StrengthInput*>& inputs)
{
    const Region whole = regionOf(load.ring);
    const Point centre = moments(whole).centroid();
    const auto shareOver = [&](const Region& region) {
        std::vector<Region> pieces;
        double total = 0.0;
        for (const StrengthInput* input : inputs) {
            pieces.push_back(intersect(region, input->casting->outline));
            total += areaMm2(pieces.back());
        }
        if (!(total > 0.0)) return false;
        for (std::size_t i = 0; i < inputs.size(); ++i) {
            const double part = areaMm2(pieces[i]) / total;
            if (part > 0.0)
                inputs[i]->loads.push_back({load.name, std::move(pieces[i]), load.massKg * part, load.appliance});
        }
        return true;
    };
    if (shareOver(whole)) return;
    const Region flange = flangeRegion(counter, centre);
    if (!flange.empty() && shareOver(flange)) return;
    const auto nearest = std::min_element(inputs.begin(), inputs.end(), [&](const auto* a, const auto* b) {
        return distanceMm(*a->casting, centre) < distanceMm(*b->casting, centre);
    });
    (*nearest)->loads.push_back({load.name, whole, load.massKg, load.appliance});
}

double determinant(const std::array<std::array<double, 3>, 3>& m)
{
    return m[0][0] * (m[1][1] * m[2][2] - m[1][2] * m[2][1]) - m[0][1] * (m[1][0] * m[2][2] - m[1][2] * m[2][0]) +
           m[0][2] * (m[1][0] * m[2][1] - m[1][1] * m[2][0]);
}

/// What a stiff slab on even beds puts on its rests: statics for two, an estimate for more. N, one a rest.
std::vector<double> reactionsN(const StrengthInput& input)
{
    const Casting& casting = *input.casting;
    double force = casting.massKg * kGravityMS2;
    Point turning = Point{casting.centroidMm[0], casting.centroidMm[1]} * force;
    for (const PressingLoad& load : input.loads) {
        const double n = load.massKg * kGravityMS2;
        force += n;
        turning = turning + moments(load.region).centroid() * n;
    }
    std::vector<AreaMoments> beds;
    for (const Rest& rest : input.rests) beds.push_back(moments(rest.bearing));
    std::vector<double> result(beds.size(), 0.0);
    std::vector<bool> presses(beds.size(), true);
    for (std::size_t round = 0; round <= beds.size(); ++round) {
        // About the load, so that the figures stay small.
        const Point o = turning * (1.0 / force);
        double a = 0.0, x = 0.0, y = 0.0, xx = 0.0, xy = 0.0, yy = 0.0;
        for (std::size_t i = 0; i < beds.size(); ++i) {
            if (!presses[i]) continue;
            const AreaMoments& m = beds[i];
            a += m.areaMm2;
            x += m.firstXMm3 - o.x * m.areaMm2;
            y += m.firstYMm3 - o.y * m.areaMm2;
            xx += m.secondXxMm4 - 2 * o.x * m.firstXMm3 + o.x * o.x * m.areaMm2;
            yy += m.secondYyMm4 - 2 * o.y * m.firstYMm3 + o.y * o.y * m.areaMm2;
            xy += m.secondXyMm4 - o.x * m.firstYMm3 - o.y * m.firstXMm3 + o.x * o.y * m.areaMm2;
        }
        const double all = determinant({{{a, x, y}, {x, xx, xy}, {y, xy, yy}}});
        if (!(all > 0.0)) break;
        const double p = force * (xx * yy - xy * xy) / all;
        const double px = -force * (x * yy - xy * y) / all;
        const double py = force * (x * xy - xx * y) / all;
        bool pulls = false;
        for (std::size_t i = 0; i < beds.size(); ++i) {
            const AreaMoments& m = beds[i];
            result[i] = presses[i] ? p * m.areaMm2 + px * (m.firstXMm3 - o.x * m.areaMm2) +
                                         py * (m.firstYMm3 - o.y * m.areaMm2)
                                   : 0.0;
            if (result[i] < 0.0) {
                presses[i] = false;
                pulls = true;
            }
        }
        if (!pulls) break;
    }
    for (double& n : result) n = std::max(n, 0.0);
    return result;
}

void addMix(const Plan& plan, StrengthInput& input)
{
    const Mix* mix = findMix(plan, input.casting->mix);
    if (!mix) return;
    const MixConcrete concrete = concreteOf(*mix);
    input.strengthClass = concrete.name;
    input.likelyShare = concrete.likelyShare;
    input.cautiousShare = concrete.cautiousShare;
    input.cementSpeed = mix->cementSpeed;
    input.maxAggregateMm = maxAggregateMm(*mix);
    input.fibres = std::any_of(mix->fibres.begin(), mix->fibres.end(), [](const Fibre& f) { return f.kgPerM3 > 0.0; });
}

void addRests(const Plan& plan, const Part& part, const Counter& counter, StrengthInput& input)
{
    for (const PartPtr& under : plan.parts) {
        if (auto rest = restOf(*input.casting, part, counter, *under)) input.rests.push_back(std::move(*rest));
    }
}

/// What stands on each support, N, with its lever along the support's own x.
struct Carried {
    double forceN = 0.0;
    double momentNMm = 0.0;
};

}  // namespace

bool operator==(const StrengthInput& a, const StrengthInput& b)
{
    // A casting is a pure function of its part's body.
    const bool sameCasting = a.casting == b.casting || (a.casting && b.casting && a.casting->id == b.casting->id);
    return sameCasting && a.body == b.body && a.rests == b.rests && a.loads == b.loads && a.carriedN == b.carriedN &&
           a.carriedAtMm == b.carriedAtMm && a.strengthClass == b.strengthClass &&
           a.likelyShare == b.likelyShare && a.cautiousShare == b.cautiousShare && a.cementSpeed == b.cementSpeed &&
           a.maxAggregateMm == b.maxAggregateMm && a.fibres == b.fibres && a.course == b.course &&
           a.liftAgeH == b.liftAgeH && a.people == b.people && a.grips == b.grips && a.assumptions == b.assumptions;
}

std::optional<ConcreteProperties> concreteOf(const StrengthInput& input)
{
    const auto whole = concreteProperties(input.strengthClass);
    if (!whole) return std::nullopt;
    return weakened(*whole, input.likelyShare);
}

StrengthAtAge concreteAtAge(const StrengthInput& input, double ageH)
{
    const auto concrete = concreteOf(input);
    if (!concrete) return {};
    const double s = cementS(input.cementSpeed);
    if (ageH >= kFullAgeH) return strengthAtEquivalentAge(*concrete, s, kFullAgeH / 24);
    return strengthAtAge(*concrete, s, ageH, input.course);
}

double personLoadN(const StrengthInput& input)
{
    const auto* counter = std::get_if<Counter>(&input.body);
    return personN(input.assumptions, counter ? counter->imposed.value_or(Imposed::worktop) : Imposed::worktop);
}

Finding findingAbout(const StrengthInput& input, std::string code, Severity severity)
{
    Finding finding{std::move(code), severity, {input.casting->id}, "", {}, {}};
    if (input.casting->part != input.casting->id) finding.subjects.push_back(input.casting->part);
    return finding;
}

std::vector<StrengthInput> strengthInputs(const Plan& plan, const std::vector<CastingPtr>& castings)
{
    std::map<std::string, const Part*> parts;
    for (const PartPtr& part : plan.parts) parts[part->id] = part.get();
    std::vector<StrengthInput> inputs;
    inputs.reserve(castings.size());
    std::map<std::string, std::vector<StrengthInput*>> ofCounter;
    const Assumptions assumptions = assumptionsOf(plan);
    const TemperatureCourse course = courseOf(plan);
    for (const CastingPtr& casting : castings) {
        StrengthInput& input = inputs.emplace_back();
        input.casting = casting;
        input.assumptions = assumptions;
        input.course = course;
        input.people = plan.crew.people;
        addMix(plan, input);
        const auto found = parts.find(casting->part);
        if (found == parts.end()) continue;
        const Part& part = *found->second;
        input.body = part.body;
        const auto* counter = std::get_if<Counter>(&part.body);
        if (!counter) continue;
        if (counter->lift) {
            input.liftAgeH = counter->lift->ageH.value_or(kDefaultLiftAgeH);
            input.people = counter->lift->people.value_or(plan.crew.people);
            for (const Point grip : counter->lift->grips) {
                if (contains(casting->outline, grip)) input.grips.push_back(grip);
            }
        }
        addRests(plan, part, *counter, input);
        ofCounter[part.id].push_back(&input);
    }

    std::map<std::string, Carried> carried;
    for (const auto& [id, group] : ofCounter) {
        const Part& part = *parts.at(id);
        const Counter& counter = std::get<Counter>(part.body);
        for (const Placed& load : loadsOf(plan, part, counter)) share(load, counter, group);
        for (const StrengthInput* input : group) {
            const std::vector<double> reactions = reactionsN(*input);
            for (std::size_t i = 0; i < reactions.size(); ++i) {
                const Rest& rest = input->rests[i];
                const Point at = part.place.toPlan(moments(rest.bearing).centroid());
                Carried& sum = carried[rest.under];
                sum.forceN += reactions[i];
                sum.momentNMm += reactions[i] * parts.at(rest.under)->place.toOwn(at).x;
            }
        }
    }
    for (StrengthInput& input : inputs) {
        const auto found = carried.find(input.casting->part);
        if (found == carried.end() || !(found->second.forceN > 0.0)) continue;
        input.carriedN = found->second.forceN;
        input.carriedAtMm = found->second.momentNMm / found->second.forceN;
    }
    return inputs;
}

}  // namespace yardcast
