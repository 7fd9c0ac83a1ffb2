#include <gtest/gtest.h>

#include "core/plan/edits.h"
#include "tests/core/plan/plan_samples.h"

namespace yardcast {
namespace {

using namespace samples;

TEST(CutoutEdits, AddedCutoutGetsAFreeIdWhereItsOwnIsTaken)
{
    const Plan plan = addCutout(twoSupports(), "C1", tapHole("K1", {900, 540}));
    EXPECT_EQ(body<Counter>(plan, "C1").cutouts[1].id, "K2");
    EXPECT_EQ(freeCutoutId(body<Counter>(plan, "C1")), "K3");
    EXPECT_EQ(body<Counter>(addCutout(plan, "C1", tapHole("tap", {1, 1})), "C1").cutouts[2].id, "tap");
    EXPECT_EQ(body<Counter>(addCutout(plan, "C1", tapHole("", {1, 1})), "C1").cutouts[2].id, "K3");
}

TEST(CutoutEdits, ChangesAndRemovesTheNamedOneOnly)
{
    const Plan plan = addCutout(twoSupports(), "C1", tapHole("K2", {900, 540}));
    const Plan moved = changeCutout(plan, "C1", "K2", [](Cutout& c) { c.centre.x = 850; });
    EXPECT_EQ(body<Counter>(moved, "C1").cutouts[1].centre.x, 850.0);
    EXPECT_EQ(body<Counter>(moved, "C1").cutouts[0], body<Counter>(plan, "C1").cutouts[0]);
    EXPECT_EQ(removeCutout(plan, "C1", "K2"), twoSupports());
}

}  // namespace
}  // namespace yardcast
