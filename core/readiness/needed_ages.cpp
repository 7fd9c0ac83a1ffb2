#include "core/readiness/needed_ages.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/materials/concrete_strength.h"
#include "core/pour/cement_speed.h"
#include "core/pour/mix_concrete.h"

namespace yardcast {

namespace {

constexpr double kNever = std::numeric_limits<double>::infinity();
constexpr double kFullDays = 28.0;
constexpr double kSettledDays = 1e-3;
constexpr int kMostSteps = 40;

/// Looks for the age from which on one way of handling holds.
class AgeSearch {
public:
    AgeSearch(HandlingAges& ages, StrengthCase which, const ConcreteProperties& concrete, double s)
        : ages_(ages), which_(which), concrete_(concrete), s_(s)
    {
    }

    struct Found {
        double days = 0.0;
        HandlingAges::Use use;
    };
    /// Not below `leastDays`; by the mean strength or its fractile. Nothing where the way makes no sense.
    std::optional<Found> find(double leastDays, bool byMean)
    {
        const auto full = useAt(kFullDays, byMean);
        if (!full) return std::nullopt;
        if (!full->holds || full->usePercent > 100.0) return Found{kNever, *full};
        if (!(leastDays < kFullDays)) return Found{leastDays, *full};
        HandlingAges::Use use = *useAt(leastDays, byMean);
        double low = leastDays;
        if (use.holds && use.usePercent <= 100.0) return Found{low, use};
        double high = kFullDays;
        HandlingAges::Use held = *full;
        double days = kFullDays;
        use = held;
        for (int step = 0; step < kMostSteps && high - low > kSettledDays; ++step) {
            // The tension at `days` would be borne from here on.
            double next = use.holds ? ageAfter(days, use.usePercent / 100.0) : (low + high) / 2;
            if (!(next > low && next < high)) next = (low + high) / 2;
            const bool settled = std::abs(next - days) < kSettledDays;
            days = next;
            use = *useAt(days, byMean);
            if (use.holds && use.usePercent <= 100.0) {
                high = days;
                held = use;
            } else {
                low = days;
            }
            if (settled) break;
        }
        return Found{high, held};
    }

private:
    std::optional<HandlingAges::Use> useAt(double days, bool byMean)
    {
        const StrengthAtAge at = strengthAtEquivalentAge(concrete_, s_, days);
        return ages_.use(which_, at.elasticMpa, byMean ? at.fctmMpa : at.fctk005Mpa);
    }
    /// Tensile strength goes with the share itself before 28 days (eq. 3.4).
    double ageAfter(double days, double strengthRatio) const
    {
        return ageOfShareDays(strengthShare(days, s_) * strengthRatio, s_);
    }

    HandlingAges& ages_;
    StrengthCase which_;
    const ConcreteProperties& concrete_;
    double s_;
};

}  // namespace

const char* handlingWayWord(HandlingWay way)
{
    switch (way) {
    case HandlingWay::strip: return "strip";
    case HandlingWay::tilt: return "tilt";
    case HandlingWay::carryFlat: return "carry_flat";
    case HandlingWay::carryOnEdge: return "carry_on_edge";
    }
    return "";
}

StrengthCase caseOfWay(HandlingWay way)
{
    switch (way) {
    case HandlingWay::strip: return StrengthCase::suction;
    case HandlingWay::tilt: return StrengthCase::tilt;
    case HandlingWay::carryFlat: return StrengthCase::carriedFlat;
    case HandlingWay::carryOnEdge: return StrengthCase::carriedOnEdge;
    }
    return StrengthCase::suction;
}

CastingAgesPtr neededAges(const StrengthInput& input, Refinement refinement, const std::optional<ChosenHands>& hands,
                          std::stop_token stop)
{
    auto answer = std::make_shared<CastingAges>();
    const auto whole = concreteProperties(input.strengthClass);
    if (!input.casting) {
        answer->whyNot = "no_casting";
        return answer;
    }
    if (!whole) {
        answer->whyNot = "class_unknown";
        return answer;
    }
    const std::unique_ptr<HandlingAges> ages = HandlingAges::make(input, refinement, hands, stop);
    if (stop.stop_requested()) return nullptr;
    if (!ages) {
        answer->whyNot = "no_mesh";
        return answer;
    }
    const double s = cementS(input.cementSpeed);
    const MixConcrete concrete{input.strengthClass, input.likelyShare, input.cautiousShare, 0.0, 0.0,
                               weakened(*whole, input.likelyShare), weakened(*whole, input.cautiousShare)};
    const double likelyOff = likelyStripDays(concrete, s, input.assumptions.stripMpa);
    const double cautiousOff = std::max(likelyOff, cautiousStripDays(concrete, s, input.assumptions.stripMpa));
    const bool upright = isCastUpright(input.body);
    for (const HandlingWay way : kHandlingWays) {
        if (stop.stop_requested()) return nullptr;
        NeededAge needed{way, likelyOff, cautiousOff, 0.0, {}, true, true};
        AgeSearch likely(*ages, caseOfWay(way), concrete.likely, s);
        AgeSearch safe(*ages, caseOfWay(way), concrete.cautious, s);
        const auto cautious = safe.find(cautiousOff, false);
        if (cautious) {
            needed.possible = cautious->use.holds;
            needed.cautiousDays = cautious->days;
            needed.likelyDays = std::min(likely.find(likelyOff, true)->days, needed.cautiousDays);
            needed.tensionMpa = cautious->use.tensionMpa;
            needed.place = cautious->use.place;
            needed.byCompression = !(needed.cautiousDays > cautiousOff);
        } else if (way == HandlingWay::tilt || way == HandlingWay::carryFlat) {
            if (upright) continue;
            needed.possible = false;
        } else if (way == HandlingWay::carryOnEdge) {
            needed.possible = false;
        }
        if (!needed.possible) {
            needed.likelyDays = needed.cautiousDays = kNever;
            needed.byCompression = false;
        }
        answer->ways.push_back(std::move(needed));
    }
    return answer;
}

}  // namespace yardcast
