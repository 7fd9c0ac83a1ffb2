#include "core/remedy/attempts.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <optional>

#include "core/plan/edits.h"
#include "core/remedy/attempt_tools.h"

namespace yardcast {

namespace {

constexpr double kThicker[] = {5.0, 10.0, 15.0, 20.0};
constexpr double kDeeper[] = {10.0, 20.0, 30.0, 40.0};
constexpr double kRimWidthMm = 60.0;
constexpr double kRimBelowFieldMm = 20.0;
constexpr double kRibWidthMm = 80.0;
constexpr double kCutoutSteps[] = {20.0, 40.0, 60.0};
constexpr double kSupportSteps[] = {50.0, 100.0, 200.0};
constexpr double kLaterH[] = {24.0, 48.0, 96.0, 144.0};
constexpr double kMostWaitH = 28 * 24.0;
constexpr int kMorePeople = 2;

bool startsWith(const std::string& text, const char* start) { return text.rfind(start, 0) == 0; }

/// A copy that stands elsewhere is not what the name of the first one says ("left end").
Plan unnamedCopy(const Plan& plan, const std::string& id, Point byMm)
{
    Ids made;
    const Plan copied = duplicateParts(plan, {id}, byMm, &made);
    return made.empty() ? copied : changePart(copied, made.front(), [](Part& part) { part.name.reset(); });
}

/// Gathers attempts for one counter.
class CounterAttempts {
public:
    CounterAttempts(const Plan& plan, const Part& part, const CastingStrength& strength, const Finding& finding)
        : plan_(plan), part_(part), counter_(std::get<Counter>(part.body)), finding_(finding)
    {
        const CaseResult* worst = worstCase(strength, finding);
        if (worst != nullptr) {
            at_ = worst->at;
            place_ = worst->place;
        }
    }

    std::vector<Attempt> gather()
    {
        if (finding_.code == "rest_on_foam") {
            ribOver();
            return std::move(attempts_);
        }
        if (startsWith(finding_.code, "steel_")) {
            steelToSide();
            barsInStrip();
            thicker();
            return std::move(attempts_);
        }
        if (startsWith(finding_.code, "cracks_handling")) handledOtherwise();
        moveCutout();
        moveSupport();
        thicker();
        rim();
        cutoutRim();
        rib();
        addSupport();
        return std::move(attempts_);
    }

private:
    void attempt(const char* code, std::map<std::string, FindingValue> values, Plan after)
    {
        attempts_.push_back({code, std::move(values), std::move(after)});
    }

    /// Ages that are worth trying: the hour that was found where one was, else a few.
    std::vector<double> waits(double ageH) const
    {
        if (numberAt(finding_.values, "never")) return {};
        if (const auto found = numberAt(finding_.values, "wait_h")) {
            return *found > ageH && *found <= kMostWaitH ? std::vector{*found} : std::vector<double>{};
        }
        std::vector<double> ages;
        for (const double later : kLaterH) {
            if (ageH + later <= kMostWaitH) ages.push_back(ageH + later);
        }
        return ages;
    }

    void handledOtherwise()
    {
        const Lift lift = counter_.lift.value_or(Lift{});
        const double ageH = lift.ageH.value_or(kDefaultLiftAgeH);
        if (!lift.grips.empty()) {
            attempt("grips_proposed", {}, changed([](Counter& c) { c.lift->grips.clear(); }));
        }
        for (const double age : waits(ageH)) {
            attempt("wait_longer", {{"age_h", age}}, changed([&](Counter& c) {
                    if (!c.lift) c.lift.emplace();
                    c.lift->ageH = age;
                }));
        }
        if (finding_.code == "cracks_handling" && lift.carry == CarryWay::flat && isCase("carried_flat")) {
            attempt("carry_on_edge", {}, changed([](Counter& c) {
                    if (!c.lift) c.lift.emplace();
                    c.lift->carry = CarryWay::onEdge;
                }));
        }
        const int people = lift.people.value_or(plan_.crew.people);
        for (int more = 1; more <= kMorePeople; ++more) {
            attempt("more_people", {{"people", static_cast<double>(people + more)}}, changed([&](Counter& c) {
                    if (!c.lift) c.lift.emplace();
                    c.lift->people = people + more;
                    c.lift->grips.clear();
                }));
        }
    }

    bool isCase(const char* word) const { return wordAt(finding_.values, "case") == word; }

    void thicker()
    {
        for (const double by : kThicker) {
            const double thickness = counter_.thicknessMm + by;
            attempt("thicker", {{"by_mm", by}, {"thickness_mm", thickness}}, changeDepth(plan_, part_.id, [&](Counter& c) {
                    c.thicknessMm = thickness;
                    if (c.rim && c.rim->depthMm < thickness) c.rim->depthMm = thickness;
                }));
        }
    }

    void rim()
    {
        if (!counter_.rim) {
            const double depth = counter_.thicknessMm + kRimBelowFieldMm;
            attempt("rim_added", {{"depth_mm", depth}, {"width_mm", kRimWidthMm}},
                changeDepth(plan_, part_.id, [&](Counter& c) {
                    c.rim = Rim{};
                    c.rim->depthMm = depth;
                    c.rim->widthMm = kRimWidthMm;
                }));
            return;
        }
        for (const double by : kDeeper) {
            const double depth = counter_.rim->depthMm + by;
            attempt("rim_deeper", {{"by_mm", by}, {"depth_mm", depth}},
                changeDepth(plan_, part_.id, [&](Counter& c) { c.rim->depthMm = depth; }));
        }
    }

    void cutoutRim()
    {
        if (!counter_.rim) return;
        const Cutout* cutout = findCutout(counter_, place_.a);
        if (cutout == nullptr || cutout->rimMm.value_or(0.0) > 0.0) return;
        attempt("cutout_rim", {{"cutout", cutout->id}, {"width_mm", kRimWidthMm}},
            changeCutout(plan_, part_.id, cutout->id, [](Cutout& c) { c.rimMm = kRimWidthMm; }));
    }

    void rib()
    {
        if (!counter_.rim || !(counter_.rim->depthMm > counter_.thicknessMm)) return;
        const auto box = boundsOf(Ring(counter_.outline));
        if (!box) return;
        const Rib across{{at_.x, box->low.y}, {at_.x, box->high.y}, kRibWidthMm, {}};
        attempt("rib_added", {{"width_mm", kRibWidthMm}, {"x_mm", std::round(at_.x)}},
            changed([&](Counter& c) { c.ribs.push_back(across); }));
    }

    void ribOver()
    {
        const Part* under = findPart(plan_, wordAt(finding_.values, "under"));
        if (under == nullptr || !counter_.rim) return;
        const std::optional<Rib> rib = ribAlong(part_, counter_, *under, kRibWidthMm);
        if (!rib) return;
        attempt("rib_over", {{"under", under->id}, {"width_mm", rib->widthMm}},
            changed([&](Counter& c) { c.ribs.push_back(*rib); }));
    }

    void moveCutout()
    {
        const Cutout* cutout = findCutout(counter_, place_.a);
        if (cutout == nullptr) return;
        const Point away = awayFromStrip(counter_, *cutout, place_.kind);
        if (away == Point{}) return;
        for (const double by : kCutoutSteps) {
            attempt("cutout_moved", {{"cutout", cutout->id}, {"by_mm", by}},
                changeCutout(plan_, part_.id, cutout->id, [&](Cutout& c) { c.centre = c.centre + away * by; }));
        }
    }

    void moveSupport()
    {
        const Part* nearest = nearestBearer(plan_, part_, at_);
        if (nearest == nullptr) return;
        const Point towards = part_.place.toPlan(at_) - middleOf(*nearest);
        const Point along = part_.place.directionToPlan({1.0, 0.0});
        const double reach = dot(towards, along);
        for (const double by : kSupportSteps) {
            if (by > std::abs(reach)) break;
            const Point step = along * (reach > 0.0 ? by : -by);
            attempt("support_moved", {{"support", nearest->id}, {"by_mm", reach > 0.0 ? by : -by}}, moveParts(plan_, {nearest->id}, step));
        }
    }

    void addSupport()
    {
        const Part* nearest = nearestBearer(plan_, part_, at_);
        if (nearest == nullptr || nearest->kind() != PartKind::support) return;
        const Point along = part_.place.directionToPlan({1.0, 0.0});
        const double reach = std::round(dot(part_.place.toPlan(at_) - middleOf(*nearest), along));
        attempt("support_added", {{"x_mm", std::round(at_.x)}}, unnamedCopy(plan_, nearest->id, along * reach));
    }

    void steelToSide()
    {
        if (!counter_.steel || !counter_.steel->mesh) return;
        const Mesh& mesh = *counter_.steel->mesh;
        const bool atFace = isPulledAtFace(finding_);
        const double far = counter_.thicknessMm - kLeastCoverMm - 2 * mesh.barMm;
        const double cover = atFace ? kLeastCoverMm : far;
        if (cover < kLeastCoverMm - 1e-9 || std::abs(cover - mesh.coverMm) < 1.0) return;
        attempt("steel_to_side", {{"cover_mm", cover}}, changed([&](Counter& c) { c.steel->mesh->coverMm = cover; }));
    }

    void barsInStrip()
    {
        const std::optional<BarGroup> bars = barsAlongStrip(counter_, place_, finding_);
        if (!bars) return;
        attempt("bars_added", {{"count", static_cast<double>(bars->count)}, {"diameter_mm", bars->diameterMm}},
            changed([&](Counter& c) {
                if (!c.steel) c.steel.emplace();
                c.steel->bars.push_back(*bars);
            }));
    }

    Plan changed(const std::function<void(Counter&)>& change) const { return changeCounter(plan_, part_.id, change); }

    const Plan& plan_;
    const Part& part_;
    const Counter& counter_;
    const Finding& finding_;
    Point at_;
    PlaceName place_;
    std::vector<Attempt> attempts_;
};

}  // namespace

bool isWorthTrying(const Finding& finding)
{
    if (finding.severity == Severity::note) return false;
    static const char* const kinds[] = {"cracks_",      "tips",        "overhang_long", "rest_on_foam",
                                        "steel_",       "bearing_short"};
    return std::any_of(std::begin(kinds), std::end(kinds),
                       [&](const char* kind) { return startsWith(finding.code, kind); });
}

std::vector<Attempt> attemptsFor(const Plan& plan, const CastingStrength& strength, const Finding& finding)
{
    const Part* part = findPart(plan, strength.part);
    if (part == nullptr || part->kind() != PartKind::counter) return {};
    return CounterAttempts(plan, *part, strength, finding).gather();
}

Plan changeDepth(const Plan& plan, const std::string& counter, const std::function<void(Counter&)>& change)
{
    const Part* before = findPart(plan, counter);
    if (before == nullptr || before->kind() != PartKind::counter) return plan;
    Plan after = changeCounter(plan, counter, change);
    const Part& changed = *findPart(after, counter);
    const double deeper = fullDepthMm(std::get<Counter>(changed.body)) - fullDepthMm(std::get<Counter>(before->body));
    if (deeper == 0.0) return after;
    for (const Part* bearer : bearersOf(plan, *before)) {
        after = changePart(after, bearer->id, [&](Part& part) {
            if (auto* support = std::get_if<Support>(&part.body)) support->heightMm -= deeper;
            if (auto* panel = std::get_if<Panel>(&part.body)) panel->heightMm -= deeper;
        });
    }
    return after;
}

}  // namespace yardcast
