#include "core/structure/handling_cases.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <variant>

#include "core/structure/handling_findings.h"
#include "core/structure/handling_holders.h"
#include "core/structure/handling_search.h"

namespace yardcast {

namespace {

/// Rests nearer to each other than this share of the length are no place for two battens.
constexpr double kLeastBattenSpan = 0.3;
constexpr int kBattenPieces = 5;
/// Concrete within this of the deepest touches what it lies on.
constexpr double kTouchMm = 0.5;
/// Uses that differ by less, as a share, are the same: what is left is noise.
constexpr double kSameUse = 1e-6;
/// Mirrored slabs have other meshes: their uses differ by up to this share.
constexpr double kNearlySameUse = 0.01;

/// What of a counter's underside touches a straight batten, face up: only what is as deep as it gets.
Region underside(const Casting& casting)
{
    Region all;
    for (const Zone& zone : casting.zones) {
        if (!zone.isConcrete() || zone.toMm + zone.grooveMm < casting.deepestMm - kTouchMm) continue;
        all = all.empty() ? zone.region : unite(all, zone.region);
    }
    return all;
}

/// Two lines across that battens lie on.
using BattenLines = std::array<std::pair<Point, Point>, 2>;

std::optional<BattenLines> battensAt(const Region& outline, const SlabAxes& axes, double firstMm, double secondMm)
{
    BattenLines lines;
    for (int i = 0; i < 2; ++i) {
        const auto ends = endsOfLine(outline, axes.at(i == 0 ? firstMm : secondMm, 0.0), axes.across);
        if (!ends) return std::nullopt;
        lines[i] = *ends;
    }
    return lines;
}

std::optional<BattenLines> battenLines(const StrengthInput& input, const SlabAxes& axes)
{
    double first = axes.lengthMm;
    double last = 0.0;
    for (const Rest& rest : input.rests) {
        const Region& region = rest.bearing.empty() ? rest.footprint : rest.bearing;
        if (region.empty()) continue;
        const double at = dot(moments(region).centroid() - axes.origin, axes.along);
        first = std::min(first, at);
        last = std::max(last, at);
    }
    const double half = kBattenMm / 2;
    if (last - first >= kLeastBattenSpan * axes.lengthMm) {
        return battensAt(input.casting->outline, axes, std::max(first, half), std::min(last, axes.lengthMm - half));
    }
    return battensAt(input.casting->outline, axes, kBattenShare * axes.lengthMm, (1.0 - kBattenShare) * axes.lengthMm);
}

Holders battens(HandledBody& handled, const Region& touching, const BattenLines& lines)
{
    Holders holders;
    for (int i = 0; i < 2; ++i) {
        Holders::Named named{"batten " + std::to_string(i + 1), {}, {}};
        named.regions = stripPieces(touching, lines[i].first, lines[i].second, kBattenMm, kBattenPieces);
        for (const Region& region : named.regions) named.places.push_back(handled.bed(region));
        holders.all.push_back(std::move(named));
    }
    return holders;
}

/// The four ends of two battens; empty where a batten has less than two pieces.
Holders cornersOf(const Holders& battens)
{
    Holders corners;
    for (const Holders::Named& batten : battens.all) {
        if (batten.places.size() < 2) return {};
        for (const bool last : {false, true}) {
            corners.all.push_back({"corner " + std::to_string(corners.all.size() + 1),
                                   {last ? batten.places.back() : batten.places.front()},
                                   {last ? batten.regions.back() : batten.regions.front()}});
        }
    }
    return corners;
}

/// A casting in all that is done to it, on one mesh.
class Rehearsal {
public:
    Rehearsal(HandledBody& handled, HandledBody& draft, std::stop_token stop)
        : handled_(handled), draft_(draft), input_(handled.body().input),
          axes_(slabAxes(input_.casting->outline)), onFace_(liesOnFace(input_)), stop_(std::move(stop)),
          cuts_(stripCuts(handled.body()))
    {
    }

    std::optional<HandlingAnswer> run()
    {
        HandlingAnswer answer;
        const bool upright = isCastUpright(input_.body);
        const bool isSupport = input_.casting->kind == PartKind::support;
        answer.grips = input_.grips;
        if (!upright && answer.grips.empty()) {
            if (const auto found = findGrips(draft_, stop_)) answer.grips = found->grips;
            answer.gripsProposed = !answer.grips.empty();
        }
        const auto tilt = upright ? std::nullopt : findTilt(draft_, stop_);
        if (stop_.stop_requested()) return std::nullopt;
        const auto edge = tilt ? std::optional(tilt->edge) : edgeToStandOn(input_);
        const auto lines = isSupport || upright ? std::nullopt : battenLines(input_, axes_);

        // All loads first: they are solved together.
        const std::vector<Point> hands =
            answer.gripsProposed ? answer.grips : handsOfGrips(answer.grips, input_.casting->outline);
        const Holders grips = handsAt(handled_, hands, axes_.along);
        Holders tilted;
        if (tilt) {
            tilted = tiltHolders(handled_, *tilt);
            answer.tiltHands = tilt->hands;
        }
        Holders below;
        int weightAlong = -1;
        if (edge) {
            weightAlong = handled_.weightAlong(edge->inward() * -1.0);
            below = handsBelow(handled_, *edge, weightAlong);
        }
        const Region touching = underside(*input_.casting);
        const Holders onBattens = lines ? battens(handled_, touching, *lines) : Holders{};
        const Holders corners = cornersOf(onBattens);
        const auto careless = lines ? battensAtEnds() : std::nullopt;
        const Holders atEnds = careless ? battens(handled_, touching, *careless) : Holders{};
        handled_.solveAdded();
        if (stop_.stop_requested()) return std::nullopt;

        if (hasSuction(input_) && !grips.all.empty()) answer.cases.push_back(suction(grips));
        if (tilt) answer.cases.push_back(tiltCase(tilted, *tilt));
        if (!upright && !grips.all.empty()) answer.cases.push_back(carriedFlat(grips));
        if (edge) answer.cases.push_back(carriedOnEdge(below, *edge, weightAlong));
        if (lines) answer.cases.push_back(setDown(onBattens));
        if (!corners.all.empty()) {
            if (auto late = cornerLate(corners, touching, *lines)) answer.cases.push_back(std::move(*late));
        }
        if (stop_.stop_requested()) return std::nullopt;
        HandlingFacts facts;
        if (!atEnds.all.empty()) facts.endsUsePercent = usePercent(atEnds, input_.assumptions.handlingFactor);
        facts.battenInsetMm = kBattenShare * axes_.lengthMm;
        answer.findings = handlingFindings(input_, answer, facts);
        return answer;
    }

private:
    std::optional<BattenLines> battensAtEnds() const
    {
        return battensAt(input_.casting->outline, axes_, kBattenMm / 2, axes_.lengthMm - kBattenMm / 2);
    }

    FreeBody::State hold(const Holders& holders, double factor, double suctionKpa = 0.0) const
    {
        return handled_.free().hold({{handled_.weight(), factor}, {handled_.suction(), suctionKpa}}, holders.places(),
                                    {});
    }

    double usePercent(const Holders& holders, double factor)
    {
        const FreeBody::State state = hold(holders, factor);
        if (!state.holds) return kTips;
        handled_.expectMany(false);
        return handled_.usesOf(state, HandledBody::Side::faceUp).faceUpPercent;
    }

    CaseSetting setting(StrengthCase which, double factor, bool faceUp) const
    {
        CaseSetting setting;
        setting.which = which;
        setting.ageH = input_.liftAgeH;
        setting.factor = factor;
        setting.down = {0.0, 0.0, faceUp ? -1.0 : 1.0};
        setting.faceUp = faceUp;
        return setting;
    }

    CaseResult resultOf(const FreeBody::State& state, const Holders& holders, const CaseSetting& setting,
                        double sign) const
    {
        ShellSolution solution;
        solution.settled = state.holds;
        if (state.holds) {
            solution.displacement = handled_.free().displacement(state);
            for (double& value : solution.displacement) value *= sign;
        }
        CaseResult result = caseResult(handled_.body(), handled_.free().system(), solution, setting, cuts_);
        result.holds = state.holds;
        if (state.holds) result.held = heldBy(holders, state);
        return result;
    }

    CaseResult suction(const Holders& grips) const
    {
        const double kpa = suctionKpa(input_.assumptions);
        CaseSetting how = setting(StrengthCase::suction, 1.0, !onFace_);
        how.suctionKpa = kpa;
        return resultOf(hold(grips, 1.0, kpa), grips, how, onFace_ ? -1.0 : 1.0);
    }

    CaseResult tiltCase(const Holders& holders, const FoundTilt& tilt) const
    {
        const double factor = input_.assumptions.strippingFactor;
        CaseResult result = resultOf(hold(holders, factor), holders, setting(StrengthCase::tilt, factor, !onFace_),
                                     onFace_ ? -1.0 : 1.0);
        result.edge = tilt.edge.edge;
        return result;
    }

    CaseResult carriedFlat(const Holders& grips) const
    {
        const double factor = input_.assumptions.handlingFactor;
        const FreeBody::State state = hold(grips, factor);
        CaseResult up = resultOf(state, grips, setting(StrengthCase::carriedFlat, factor, true), 1.0);
        if (!onFace_ || !state.holds) return up;
        CaseResult down = resultOf(state, grips, setting(StrengthCase::carriedFlat, factor, false), -1.0);
        // Noise must not choose where both ways are the same.
        return down.usePercent > up.usePercent * (1.0 + kSameUse) ? down : up;
    }

    CaseResult carriedOnEdge(const Holders& below, const StandingEdge& edge, int weightAlong) const
    {
        const double factor = input_.assumptions.handlingFactor;
        const Point up = edge.inward();
        const FreeBody::State state =
            handled_.free().hold({{weightAlong, factor}}, below.places(), {false, up});
        CaseSetting how = setting(StrengthCase::carriedOnEdge, factor, true);
        how.down = {-up.x, -up.y, 0.0};
        CaseResult result = resultOf(state, below, how, 1.0);
        result.edge = edge.edge;
        return result;
    }

    CaseResult setDown(const Holders& battens) const
    {
        const double factor = input_.assumptions.handlingFactor;
        return resultOf(hold(battens, factor), battens, setting(StrengthCase::setDown, factor, true), 1.0);
    }

    static std::vector<FreeBody::Place> withLateCorner(const Holders& corners, int late, double gapMm)
    {
        std::vector<FreeBody::Place> places = corners.places();
        places[late].gapMm = gapMm;
        return places;
    }

    /// Which corner is worst to let down late is found on the draft.
    std::optional<CaseResult> cornerLate(const Holders& corners, const Region& touching, const BattenLines& lines)
    {
        const double factor = input_.assumptions.handlingFactor;
        const double gapMm = input_.assumptions.lateCornerMm;
        const Holders onDraft = &handled_ == &draft_ ? corners : cornersOf(battens(draft_, touching, lines));
        draft_.solveAdded();
        draft_.expectMany(false);
        int worst = -1;
        double worstUse = -1.0;
        bool worstReaches = false;
        for (int late = 0; late < static_cast<int>(onDraft.all.size()); ++late) {
            const auto places = withLateCorner(onDraft, late, gapMm);
            const auto state = draft_.free().hold({{draft_.weight(), factor}}, places, {});
            if (!state.holds) continue;
            const double use = draft_.usesOf(state, HandledBody::Side::faceUp).faceUpPercent;
            // Neither the order of the corners nor the mesh must choose where it is the same which is late: then the
            // slab that stays level tells more than the one that has rocked over onto the late corner.
            const bool reaches = state.forceN[static_cast<std::size_t>(late)] > 0.0;
            const bool same = worst >= 0 && std::abs(use - worstUse) <= kNearlySameUse * worstUse;
            if (same ? !(worstReaches && !reaches) : worst >= 0 && use < worstUse) continue;
            worst = late;
            worstUse = use;
            worstReaches = reaches;
        }
        if (worst < 0) return std::nullopt;
        const auto places = withLateCorner(corners, worst, gapMm);
        const auto state = handled_.free().hold({{handled_.weight(), factor}}, places, {});
        CaseResult result = resultOf(state, corners, setting(StrengthCase::cornerLate, factor, true), 1.0);
        if (state.holds) result.held[worst].under = "late corner";
        return result;
    }

    HandledBody& handled_;
    HandledBody& draft_;
    const StrengthInput& input_;
    SlabAxes axes_;
    bool onFace_;
    std::stop_token stop_;
    std::vector<NamedCut> cuts_;
};

}  // namespace

std::optional<HandlingAnswer> handlingCases(const StrengthInput& input, const std::shared_ptr<const Body>& body,
                                            Refinement refinement, std::stop_token stop)
{
    if (!body || !input.casting) return HandlingAnswer{};
    const std::unique_ptr<HandledBody> handled = HandledBody::make(body, stop);
    std::unique_ptr<HandledBody> draft;
    if (refinement != Refinement::draft) draft = HandledBody::make(makeBody(input, Refinement::draft), stop);
    if (stop.stop_requested()) return std::nullopt;
    if (!handled || (refinement != Refinement::draft && !draft)) return HandlingAnswer{};
    return Rehearsal(*handled, draft ? *draft : *handled, stop).run();
}

}  // namespace yardcast
