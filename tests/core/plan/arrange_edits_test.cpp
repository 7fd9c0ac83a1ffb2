#include <gtest/gtest.h>

#include "core/plan/edits.h"
#include "tests/core/plan/plan_samples.h"

namespace yardcast {
namespace {

using namespace samples;

Plan scattered()
{
    Plan plan;
    put(plan, supportPart("S1", {0, 0}, 100, 600));
    put(plan, supportPart("S2", {370, 50}, 200, 400));
    put(plan, supportPart("S3", {1000, 20}, 100, 500));
    return plan;
}

Point at(const Plan& plan, const std::string& id) { return findPart(plan, id)->place.at; }

TEST(ArrangeEdits, AlignsToEachLineOfTheGroup)
{
    const Plan plan = scattered();
    const Ids all{"S1", "S2", "S3"};
    EXPECT_EQ(at(alignParts(plan, all, AlignTo::left), "S2"), (Point{0, 50}));
    EXPECT_EQ(at(alignParts(plan, all, AlignTo::right), "S2"), (Point{900, 50}));
    EXPECT_EQ(at(alignParts(plan, all, AlignTo::centreX), "S2"), (Point{450, 50}));
    EXPECT_EQ(at(alignParts(plan, all, AlignTo::front), "S2"), (Point{370, 0}));
    EXPECT_EQ(at(alignParts(plan, all, AlignTo::back), "S2"), (Point{370, 200}));
    EXPECT_EQ(at(alignParts(plan, all, AlignTo::centreY), "S2"), (Point{370, 100}));
    EXPECT_EQ(alignParts(plan, {"S2"}, AlignTo::left), plan) << "one part is its own line";
}

TEST(ArrangeEdits, AlignsByTheFootprintOfATurnedPart)
{
    Plan plan = turnParts(scattered(), {"S1"}, 90, {0, 0});
    plan = alignParts(plan, {"S1", "S2"}, AlignTo::left);
    EXPECT_EQ(boundsOf(footprint(*findPart(plan, "S2")))->low.x, -600.0);
}

TEST(ArrangeEdits, DistributesWithEqualClearGaps)
{
    const Plan plan = distributeParts(scattered(), {"S3", "S2", "S1"}, Axis::x);
    EXPECT_EQ(at(plan, "S1"), (Point{0, 0}));
    EXPECT_EQ(at(plan, "S2"), (Point{450, 50}));
    EXPECT_EQ(at(plan, "S3"), (Point{1000, 20}));
    EXPECT_EQ(distributeParts(scattered(), {"S1", "S2"}, Axis::x), scattered());
}

TEST(ArrangeEdits, DistributesAlongY)
{
    Plan plan;
    put(plan, supportPart("S1", {0, 0}, 100, 100));
    put(plan, supportPart("S2", {0, 110}, 100, 100));
    put(plan, supportPart("S3", {0, 120}, 100, 200));
    put(plan, supportPart("S4", {0, 1000}, 100, 100));
    const Plan even = distributeParts(plan, {"S1", "S2", "S3", "S4"}, Axis::y);
    EXPECT_EQ(at(even, "S1").y, 0.0);
    EXPECT_EQ(at(even, "S2").y, 300.0);
    EXPECT_EQ(at(even, "S3").y, 600.0);
    EXPECT_EQ(at(even, "S4").y, 1000.0);
}

TEST(ArrangeEdits, NoNumbersDoNotTearTheGroup)
{
    Plan plan = scattered();
    put(plan, supportPart("S4", {std::nan(""), 0}));
    const Plan aligned = alignParts(plan, {"S1", "S2", "S3", "S4"}, AlignTo::left);
    EXPECT_EQ(aligned.parts.size(), 4u);
}

}  // namespace
}  // namespace yardcast
