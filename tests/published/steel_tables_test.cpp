#include <gtest/gtest.h>

#include "core/materials/materials.h"
#include "core/reinforcement/steel_schedule.h"
#include "tests/core/castings/counters.h"

namespace yardcast {
namespace {

/// EN 10080, nominal sizes at 7850 kg/m3, as printed: mm2 to one decimal, and kg/m to three decimals from that rounded
/// area (40 mm: 1256.6 x 0.00785 = 9.864, where the exact area gives 9.8646).
constexpr double kAreaRoundingMm2 = 0.05;
constexpr double kMassRoundingKgM = 0.0005 + kAreaRoundingMm2 * 7850e-6;

struct BarRow {
    double diameterMm;
    double kgM;
    double areaMm2;
};

class BarTableEn10080 : public testing::TestWithParam<BarRow> {};

TEST_P(BarTableEn10080, MassAndArea)
{
    const BarRow row = GetParam();
    EXPECT_NEAR(barMassKgM(row.diameterMm), row.kgM, kMassRoundingKgM);
    EXPECT_NEAR(barAreaMm2(row.diameterMm), row.areaMm2, kAreaRoundingMm2 + 1e-9);
}

INSTANTIATE_TEST_SUITE_P(Sizes, BarTableEn10080,
                         testing::Values(BarRow{6, 0.222, 28.3}, BarRow{8, 0.395, 50.3}, BarRow{10, 0.617, 78.5},
                                         BarRow{12, 0.888, 113.1}, BarRow{16, 1.578, 201.1},
                                         BarRow{20, 2.466, 314.2}, BarRow{25, 3.853, 490.9},
                                         BarRow{32, 6.313, 804.2}, BarRow{40, 9.864, 1256.6}));

TEST(BarTable, SmallSizes)
{
    // The table's two smaller sizes are printed with their masses only.
    EXPECT_NEAR(barMassKgM(5), 0.154, kMassRoundingKgM);
    EXPECT_NEAR(barMassKgM(7), 0.302, kMassRoundingKgM);
}

/// BS 4483 welded fabric of square pattern as printed, here through a whole casting: a slab of 1 m2 with no cover to
/// take off. The table is built on the rounded values of one bar: A142 is 28.3 / 0.2 = 141.5, and A393 weighs ten
/// metres of 0.616 kg, 6.16, where the exact bar gives 6.165. So each figure carries the bar's rounding, times the
/// metres of bar, and its own.
struct MeshRow {
    const char* name;
    double barMm;
    double pitchMm;
    double areaMm2PerM;
    double kgM2;
};

class MeshTableBs4483 : public testing::TestWithParam<MeshRow> {};

TEST_P(MeshTableBs4483, MassOfASquareMetre)
{
    const MeshRow row = GetParam();
    const double barsPerM = 1000 / row.pitchMm;
    EXPECT_NEAR(barAreaMm2(row.barMm) * barsPerM, row.areaMm2PerM, 0.5 + kAreaRoundingMm2 * barsPerM) << row.name;
    Counter counter = slab(1000, 1000, 60);
    counter.steel = Steel{Mesh{row.barMm, row.pitchMm, 0, {}}, {}, {}};
    const auto castings = castingsOf(partOf(counter));
    ASSERT_EQ(castings.size(), 1U);
    EXPECT_NEAR(castings[0]->steelKg, row.kgM2, 0.005 + 0.0005 * 2 * barsPerM) << row.name;
}

INSTANTIATE_TEST_SUITE_P(Types, MeshTableBs4483,
                         testing::Values(MeshRow{"A142", 6, 200, 142, 2.22}, MeshRow{"A193", 7, 200, 193, 3.02},
                                         MeshRow{"A252", 8, 200, 252, 3.95}, MeshRow{"A393", 10, 200, 393, 6.16},
                                         MeshRow{"D98", 5, 200, 98, 1.54}));

/// EN 1992-1-1:2004 Table 3.1: the class is named by cylinder and cube strength.
TEST(ConcreteClassesEn1992, AreNamedByTheirStrengths)
{
    for (const char* name : {"C12/15", "C16/20", "C20/25", "C25/30", "C30/37", "C35/45", "C40/50", "C45/55", "C50/60",
                             "C55/67", "C60/75", "C70/85", "C80/95", "C90/105"}) {
        const auto c = concreteClass(name);
        ASSERT_TRUE(c) << name;
        EXPECT_EQ("C" + std::to_string(static_cast<int>(c->fckMpa)) + "/" +
                      std::to_string(static_cast<int>(c->fckCubeMpa)),
                  name);
    }
}

/// EN 1992-1-1:2004 8.2(2): bars at least max(bar, aggregate + 5 mm, 20 mm) apart, clear.
TEST(BarSpacingEn1992, ClearDistance)
{
    struct Case {
        double diameterMm;
        double aggregateMm;
        double leastClearMm;
    };
    for (const Case c : {Case{8, 8, 20}, Case{25, 8, 25}, Case{8, 16, 21}, Case{8, 32, 37}}) {
        for (const double over : {0.0, -0.1}) {
            Counter counter = slab(1000, 600, 120);
            counter.steel = Steel{std::nullopt,
                                  {BarGroup{{0, 300}, {1000, 300}, c.diameterMm, 2,
                                            c.leastClearMm + c.diameterMm + over, 40, {}}},
                                  {}};
            Plan plan;
            plan.mixes.resize(1);
            plan.mixes[0].id = "worktop";
            plan.mixes[0].bag.maxAggregateMm = c.aggregateMm;
            plan.parts = {std::make_shared<const Part>(partOf(counter))};
            std::vector<Finding> findings;
            steelSchedule(plan, castingsOf(*plan.parts[0]), findings);
            const bool close = std::any_of(findings.begin(), findings.end(),
                                           [](const Finding& f) { return f.code == "bars_close"; });
            EXPECT_EQ(close, over < 0) << c.diameterMm << ' ' << c.aggregateMm;
        }
    }
}

}  // namespace
}  // namespace yardcast
