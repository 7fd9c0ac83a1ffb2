#include "core/assess/readiness_assessor.h"

#include <algorithm>
#include <cstdint>
#include <iterator>
#include <utility>
#include <variant>

#include "core/assess/share_out.h"
#include "core/structure/strength_input.h"

namespace yardcast {

namespace {

/// As `playPour` has them; every window and the command line play the same.
constexpr int kPlays = 2000;
constexpr std::uint64_t kSeed = 1;
/// So many answers of one casting are kept: what undo and redo lead to.
constexpr std::size_t kKept = 4;

/// Weather and the plan's own hour do not change the ages that are needed, nor does which way of carrying is planned.
/// The age of lifting chooses the hands where nobody else has.
StrengthInput withoutHours(const StrengthInput& input, bool handsKnown)
{
    StrengthInput bare = input;
    bare.course = {};
    if (!handsKnown) return bare;
    bare.liftAgeH = kDefaultLiftAgeH;
    if (auto* counter = std::get_if<Counter>(&bare.body); counter && counter->lift) {
        counter->lift->ageH.reset();
        counter->lift->carry = CarryWay::flat;
        if (*counter->lift == Lift{}) counter->lift.reset();
    }
    return bare;
}

}  // namespace

std::optional<Readiness> ReadinessAssessor::assess(const Plan& plan, const Assessment& assessment,
                                                   std::stop_token stop, Refinement refinement)
{
    std::vector<CastingPtr> castings;
    castings.reserve(assessment.castings.size());
    for (const PlacedCasting& placed : assessment.castings) castings.push_back(placed.casting);
    const std::vector<StrengthInput> inputs = strengthInputs(plan, castings);

    std::vector<Known> known(inputs.size());
    std::vector<std::size_t> unsolved;
    for (std::size_t i = 0; i < inputs.size(); ++i) {
        const CastingStrength* strength = assessment.strengthOf(inputs[i].casting->id);
        if (strength != nullptr) known[i].hands = handsOf(inputs[i], *strength);
        known[i].input = withoutHours(inputs[i], known[i].hands.has_value());
        known[i].refinement = refinement;
        known[i].ages = find(known[i]);
        if (!known[i].ages) unsolved.push_back(i);
    }

    shareOut(unsolved, stop, [&](std::size_t i) {
        known[i].ages = neededAges(inputs[i], refinement, known[i].hands, stop);
    });

    Readiness readiness;
    bool complete = true;
    for (const std::size_t i : unsolved) {
        if (known[i].ages) {
            keep(known[i]);
        } else {
            complete = false;
        }
    }
    if (!complete || stop.stop_requested()) return std::nullopt;
    for (std::size_t i = 0; i < inputs.size(); ++i) readiness.hours.push_back(hoursOf(inputs[i], *known[i].ages));
    std::vector<std::string> mixes;
    for (const MixQuantities& mix : assessment.mixes) mixes.push_back(mix.mix);
    readiness.gain = gainCurves(plan, mixes, readiness.hours);
    readiness.season = seasonMonths(plan, mixes, readiness.hours);
    readiness.play = playPour(plan, castings, assessment.mixes, kPlays, kSeed, stop);
    if (stop.stop_requested()) return std::nullopt;
    forgetOthers(memo_, castings);
    return readiness;
}

CastingAgesPtr ReadinessAssessor::find(const Known& wanted)
{
    const auto entry = memo_.find(wanted.input.casting->id);
    if (entry == memo_.end()) return nullptr;
    const auto found = std::ranges::find_if(entry->second, [&](const Known& one) {
        return one.refinement == wanted.refinement && one.hands == wanted.hands && one.input == wanted.input;
    });
    if (found == entry->second.end()) return nullptr;
    std::rotate(entry->second.begin(), found, std::next(found));
    return entry->second.front().ages;
}

void ReadinessAssessor::keep(Known known)
{
    std::deque<Known>& all = memo_[known.input.casting->id];
    all.push_front(std::move(known));
    if (all.size() > kKept) all.pop_back();
}

}  // namespace yardcast
