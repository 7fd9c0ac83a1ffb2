#include <gtest/gtest.h>

#include "core/handling/lifting.h"

/// HSE L23, Manual handling, guidance on team handling: the capability of two is two thirds of the sum of their own,
/// of three one half. (Two thirds was seen restated: 25 + 25 kg gives about 33 kg; one half is from memory. For four
/// and more nothing is published; that one half is kept is the program's judgement.) 25 kg is the reference mass of
/// EN 1005-2 and ISO 11228-1 for the general working population.
namespace yardcast {
namespace {

TEST(TeamLiftingHse, TwoAndThreePeopleAtTwentyFiveKilograms)
{
    EXPECT_EQ(teamLimitKg(1, 25), 25.0);
    EXPECT_NEAR(teamLimitKg(2, 25), 33.3, 0.05);
    EXPECT_NEAR(teamLimitKg(3, 25), 37.5, 1e-9);
    EXPECT_NEAR(teamLimitKg(4, 25), 50.0, 1e-9);
}

TEST(TeamLiftingHse, ACounterOfNearly130KilogramsIsBeyondFourPeople)
{
    EXPECT_LT(teamLimitKg(4, 25), 129.6);
    EXPECT_EQ(peopleNeeded(129.6, 25), 0) << "more than the most that can get round a slab";
}

TEST(TeamLiftingHse, FactorNeverGrowsAndTheLimitNeverFallsWithPeople)
{
    for (int people = 1; people < kMostPeople; ++people) {
        EXPECT_LE(teamFactor(people + 1), teamFactor(people));
        EXPECT_GE(teamLimitKg(people + 1, 25), teamLimitKg(people, 25));
    }
}

}  // namespace
}  // namespace yardcast
