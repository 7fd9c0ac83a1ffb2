#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/castings/casting.h"
#include "core/io/plan_file.h"
#include "tests/samples/sample_files.h"

namespace yardcast::test {
namespace {

class EverySample : public testing::TestWithParam<std::string> {};

INSTANTIATE_TEST_SUITE_P(Samples, EverySample, testing::ValuesIn(kSamples), [](const auto& sampleInfo) {
    std::string name = sampleInfo.param;
    std::replace(name.begin(), name.end(), '-', '_');
    return name;
});

TEST_P(EverySample, IsWrittenAsTheProgramWritesPlans)
{
    EXPECT_EQ(writePlan(sample(GetParam())), sampleText(GetParam()));
}

/// Supports end exactly where a slab's underside is, under both ends of each piece, with at least 24 mm to bear on
/// (two slabs share a 60 mm panel across a 4 mm joint in one sample: 28 mm each).
TEST_P(EverySample, RestsEveryPieceOnSupportsUnderBothItsEnds)
{
    const Plan plan = sample(GetParam());
    for (const PartPtr& part : plan.parts) {
        const auto* counter = std::get_if<Counter>(&part->body);
        if (!counter) continue;
        const double underside = counter->topMm - fullDepthMm(*counter);
        for (const CastingPtr& casting : castingsOf(*part)) {
            const Region piece = transformed(casting->outline, part->place);
            const Point middle = moments(piece).centroid();
            const double least = 24.0 * 150.0;
            int rests = 0;
            Region all;
            for (const PartPtr& other : plan.parts) {
                const auto* support = std::get_if<Support>(&other->body);
                if (!support || std::abs(support->baseMm + support->heightMm - underside) > 1e-9) continue;
                const Region bearing = intersect(piece, regionOf(footprint(*other)));
                if (areaMm2(bearing) == 0.0) continue;
                EXPECT_GE(areaMm2(bearing), least) << casting->id << " on " << other->id;
                all = unite(all, bearing);
                ++rests;
            }
            ASSERT_GE(rests, 2) << casting->id;
            const Box box = *boundsOf(all);
            EXPECT_TRUE(box.low.x < middle.x && middle.x < box.high.x) << casting->id;
            EXPECT_TRUE(box.low.y < middle.y && middle.y < box.high.y) << casting->id;
        }
    }
}

struct Litres {
    const char* sample;
    const char* part;
    double litres;
};

/// Areas by an independent program for plane shapes (arcs as chords of a 128-gon's quarter), times the depths. By hand:
/// B1 less a drip groove of 8 x 5 along 1250 mm (30.102 - 0.050), C3 less a rebate of 44 x 6 along 1000 mm (25.788 - 0.264).
TEST(Samples, HoldTheConcreteReckonedByOtherMeans)
{
    const Litres expected[] = {
        {"grill-bench", "A1", 24.240},    {"grill-bench", "A2", 19.632},     {"grill-bench", "S1", 18.096},
        {"grill-bench", "S3", 13.476},    {"corner-kitchen", "B1", 30.052},  {"corner-kitchen", "B2", 68.447},
        {"corner-kitchen", "B4", 50.400}, {"corner-kitchen", "S1", 19.008},  {"two-level-bar", "C1a", 33.620},
        {"two-level-bar", "C2", 24.222},  {"two-level-bar", "C3", 25.524},   {"two-level-bar", "C4", 47.600},
        {"two-level-bar", "C5a", 35.772}, {"two-level-bar", "S3", 20.796},   {"two-level-bar", "P1", 13.182},
    };
    for (const Litres& line : expected) {
        const Plan plan = sample(line.sample);
        const Part* part = findPart(plan, line.part);
        ASSERT_TRUE(part) << line.part;
        double litres = 0.0;
        for (const CastingPtr& casting : castingsOf(*part)) litres += casting->volumeL;
        EXPECT_NEAR(litres, line.litres, 0.002) << line.sample << " " << line.part;
    }
}

}  // namespace
}  // namespace yardcast::test
