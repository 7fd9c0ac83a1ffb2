#include "core/handling/lifting.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

namespace yardcast {
namespace {

CastingPtr casting(const std::string& id, const std::string& part, double massKg)
{
    auto c = std::make_shared<Casting>();
    c->id = id;
    c->part = part;
    c->massKg = massKg;
    return c;
}

/// A support S1 and a counter C1; crew of two, 25 kg each: limit 33.3 kg.
Plan plan(std::optional<Lift> lift = std::nullopt)
{
    Plan p;
    auto support = std::make_shared<Part>();
    support->id = "S1";
    support->body = Support{};
    auto counter = std::make_shared<Part>();
    counter->id = "C1";
    Counter body;
    body.lift = std::move(lift);
    counter->body = body;
    p.parts = {support, counter};
    return p;
}

TEST(PeopleNeeded, IsTheLeastTeamThatCarriesIt)
{
    EXPECT_EQ(peopleNeeded(0, 25), 1);
    EXPECT_EQ(peopleNeeded(25, 25), 1);
    EXPECT_EQ(peopleNeeded(25.1, 25), 2);
    EXPECT_EQ(peopleNeeded(33.4, 25), 3);
    EXPECT_EQ(peopleNeeded(37.6, 25), 4);
    EXPECT_EQ(peopleNeeded(50.1, 25), 5);
    EXPECT_EQ(peopleNeeded(100, 25), 8);
    EXPECT_EQ(peopleNeeded(100.1, 25), 0) << "more than eight";
    EXPECT_EQ(peopleNeeded(10, 0), 0);
    EXPECT_EQ(peopleNeeded(10, NAN), 0);
}

TEST(PeopleByGuideline, GoesOnWhereHandsHaveNoRoom)
{
    EXPECT_EQ(peopleByGuideline(33.0, 25.0), 2);
    EXPECT_EQ(peopleByGuideline(100.0, 25.0), 8);
    EXPECT_EQ(peopleNeeded(107.0, 25.0), 0);
    EXPECT_EQ(peopleByGuideline(107.0, 25.0), 9);   // 107 / 12.5 = 8.56
    EXPECT_EQ(peopleByGuideline(125.0, 25.0), 10);  // exactly ten halves of 25
    EXPECT_EQ(peopleByGuideline(107.0, 0.0), 0);
    EXPECT_EQ(peopleByGuideline(1e300, 25.0), 0);
}

TEST(Liftings, WithinTheLimitSayNothing)
{
    std::vector<Finding> findings;
    const auto lifts = liftings(plan(), {casting("C1", "C1", 33.3)}, findings);
    ASSERT_EQ(lifts.size(), 1U);
    EXPECT_EQ(lifts[0].people, 2);
    EXPECT_EQ(lifts[0].crewPeople, 2);
    EXPECT_NEAR(lifts[0].limitKg, 100.0 / 3, 1e-9);
    EXPECT_TRUE(findings.empty());
}

TEST(Liftings, PastTheLimitIsACautionAndPastTwiceAStop)
{
    std::vector<Finding> findings;
    liftings(plan(), {casting("C1.1", "C1", 66.6), casting("C1.2", "C1", 66.7)}, findings);
    ASSERT_EQ(findings.size(), 2U);
    EXPECT_EQ(findings[0].code, "heavy");
    EXPECT_EQ(findings[0].severity, Severity::caution);
    EXPECT_THAT(findings[0].subjects, testing::ElementsAre("C1.1", "C1"));
    EXPECT_EQ(findings[0].pointer, "/parts/1");
    EXPECT_NEAR(std::get<double>(findings[0].values.at("limit_kg")), 33.333, 1e-3);
    EXPECT_EQ(std::get<double>(findings[0].values.at("people")), 6.0);
    EXPECT_EQ(std::get<double>(findings[0].values.at("crew")), 2.0);
    EXPECT_EQ(findings[1].code, "too_heavy");
    EXPECT_EQ(findings[1].severity, Severity::stop);
}

TEST(Liftings, ThePartsOwnTeamGoesBeforeTheCrew)
{
    Lift lift;
    lift.people = 4;
    lift.grips = {{-200, 0}, {200, 0}};  // about the middle of these made-up castings
    std::vector<Finding> findings;
    const auto lifts = liftings(plan(lift), {casting("C1", "C1", 45), casting("S1", "S1", 45)}, findings);
    ASSERT_EQ(lifts.size(), 2U);
    EXPECT_EQ(lifts[0].crewPeople, 4);
    EXPECT_EQ(lifts[0].limitKg, 50.0);
    EXPECT_EQ(lifts[0].grips.size(), 2U);
    EXPECT_EQ(lifts[1].crewPeople, 2);
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_THAT(findings[0].subjects, testing::ElementsAre("S1"));
    EXPECT_EQ(findings[0].pointer, "/parts/0");
}

TEST(Liftings, NobodyLiftsNothing)
{
    Plan p = plan();
    p.crew.people = 0;
    std::vector<Finding> findings;
    const auto lifts = liftings(p, {casting("C1", "C1", 10)}, findings);
    EXPECT_EQ(lifts.at(0).limitKg, 0.0);
    EXPECT_EQ(lifts.at(0).people, 1);
    ASSERT_EQ(findings.size(), 1U);
    EXPECT_EQ(findings[0].code, "nobody_lifts") << "not twice nothing";
    EXPECT_EQ(findings[0].severity, Severity::stop);
}

}  // namespace
}  // namespace yardcast
