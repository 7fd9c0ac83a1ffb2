#include "core/structure/handling_ages.h"

#include <gtest/gtest.h>

#include "tests/core/structure/handling_samples.h"

namespace yardcast {
namespace {

using enum StrengthCase;
constexpr StrengthCase kWays[] = {suction, tilt, carriedFlat, carriedOnEdge};

CastingStrengthPtr solvedAt(StrengthInput input, double ageH, Refinement refinement)
{
    input.liftAgeH = ageH;
    return solveStrength(input, refinement, {.inUse = false, .handling = true});
}

/// What the solver of strength says at each age, from one factorisation at another.
void expectSameAtAllAges(const StrengthInput& input, Refinement refinement)
{
    const auto hands = handsOf(input, *solvedAt(input, 48.0, refinement));
    ASSERT_TRUE(hands);
    const auto ages = HandlingAges::make(input, refinement, hands);
    ASSERT_TRUE(ages);
    for (const double ageH : {14.0, 30.0, 100.0, kFullAgeH}) {
        const CastingStrengthPtr solved = solvedAt(input, ageH, refinement);
        // The hands that serve best are chosen on a grid and hardly depend on the age; here they are the same.
        ASSERT_TRUE(handsOf(input, *solved) == *hands);
        StrengthInput at = input;
        at.liftAgeH = ageH;
        const auto concrete = concreteAtAge(at, ageH);
        for (const StrengthCase way : kWays) {
            SCOPED_TRACE(strengthCaseWord(way) + std::string(" at ") + std::to_string(ageH));
            const auto use = ages->use(way, concrete.elasticMpa, concrete.fctk005Mpa);
            const CaseResult* result = solved->find(way);
            ASSERT_EQ(use.has_value(), result != nullptr);
            if (!use) continue;
            EXPECT_EQ(use->holds, result->holds);
            // The same equations, solved with another stiffness: what is left is rounding of a badly scaled system.
            EXPECT_NEAR(use->usePercent, result->usePercent, 1e-5 * result->usePercent);
            EXPECT_NEAR(use->tensionMpa, result->usePercent / 100 * result->strengthMpa, 1e-5 * use->tensionMpa);
            EXPECT_EQ(use->place, result->place);
        }
    }
}

TEST(HandlingAges, CounterWithARimAndASinkAsSolvedAtEachAge)
{
    expectSameAtAllAges(inputOf(sinkSlab(1700, 620, 600)), Refinement::working);
}

TEST(HandlingAges, OnADraftToo) { expectSameAtAllAges(inputOf(sinkSlab(1700, 620, 600)), Refinement::draft); }

TEST(HandlingAges, FaceUpAndGrippedByThePlan)
{
    Counter counter = slab(1500, 600, 45);
    counter.cast = CounterCast::faceUp;
    counter.lift = Lift{};
    counter.lift->grips = {{200, 300}, {1300, 300}};
    expectSameAtAllAges(inputOf(counter), Refinement::draft);
}

TEST(HandlingAges, SupportCastFlat)
{
    Support support;
    support.mix = kMixId;
    Part part;
    part.id = "S1";
    part.body = support;
    expectSameAtAllAges(inputOf(std::move(part)), Refinement::draft);
}

TEST(HandlingAges, ChoosesTheHandsOfTheSolver)
{
    const StrengthInput input = inputOf(sinkSlab(1700, 620, 600));
    const auto ages = HandlingAges::make(input, Refinement::draft);
    ASSERT_TRUE(ages);
    const auto hands = handsOf(input, *solvedAt(input, input.liftAgeH, Refinement::draft));
    ASSERT_TRUE(hands);
    EXPECT_TRUE(ages->hands() == *hands);
    EXPECT_TRUE(hands->gripsProposed);
}

TEST(HandlingAges, NothingWhenStopped)
{
    std::stop_source stop;
    stop.request_stop();
    EXPECT_FALSE(HandlingAges::make(inputOf(slab(1000, 600, 40)), Refinement::draft, {}, stop.get_token()));
}

}  // namespace
}  // namespace yardcast
