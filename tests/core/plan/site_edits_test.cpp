#include <gtest/gtest.h>

#include "core/plan/edits.h"
#include "tests/core/plan/plan_samples.h"

namespace yardcast {
namespace {

TEST(SiteEdits, OutlineIsSetAndTakenAway)
{
    const Plan plan = setSiteOutline(samples::twoSupports(), {{0, 0}, {5000, 0}, {5000, 4000}});
    ASSERT_TRUE(plan.site.outline);
    EXPECT_EQ(plan.site.outline->size(), 3u);
    EXPECT_EQ(setSiteOutline(plan, {}), samples::twoSupports());
}

TEST(SiteEdits, FixturesAreAddedChangedAndRemoved)
{
    Fixture tap;
    tap.id = "tap";
    tap.kind = FixtureKind::water;
    const Plan one = addFixture(samples::twoSupports(), tap);
    const Plan two = addFixture(one, tap);
    ASSERT_EQ(two.site.fixtures.size(), 2u);
    EXPECT_EQ(two.site.fixtures[0].id, "tap");
    EXPECT_EQ(two.site.fixtures[1].id, "X1");
    const Plan moved = changeFixture(two, "X1", [](Fixture& f) { f.at = {10, 20}; });
    EXPECT_EQ(moved.site.fixtures[1].at, (Point{10, 20}));
    EXPECT_EQ(moved.site.fixtures[0], two.site.fixtures[0]);
    EXPECT_EQ(removeFixture(two, "X1"), one);
}

}  // namespace
}  // namespace yardcast
