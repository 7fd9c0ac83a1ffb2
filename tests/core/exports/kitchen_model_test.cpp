#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "core/exports/kitchen_model.h"
#include "core/exports/stl.h"
#include "tests/core/exports/read_stl.h"
#include "tests/property/random_plan.h"
#include "tests/samples/sample_files.h"

namespace yardcast {
namespace {

std::vector<CastingPtr> castingsOfAll(const Plan& plan)
{
    std::vector<CastingPtr> all;
    for (const PartPtr& part : plan.parts) {
        for (const CastingPtr& casting : castingsOf(*part)) all.push_back(casting);
    }
    return all;
}

const Casting* castingOf(const std::vector<CastingPtr>& castings, const std::string& id)
{
    const auto found = std::find_if(castings.begin(), castings.end(), [&](const CastingPtr& c) { return c->id == id; });
    return found == castings.end() ? nullptr : found->get();
}

/// Volume of a closed hollow counts as a shell of its own: a body with `handles` openings through it.
int eulerOf(const Casting& casting)
{
    const int openings = int(casting.outline.front().holes.size());
    const bool enclosed = std::any_of(casting.zones.begin(), casting.zones.end(), [&](const Zone& zone) {
        return zone.kind == ZoneKind::core && zone.fromMm > 0.0;
    });
    return 2 - 2 * openings + (enclosed ? 2 : 0);
}

TEST(KitchenModel, EachCastingOfTheSamplesIsOneClosedBodyOfItsVolume)
{
    int castingsSeen = 0;
    for (const std::string& name : test::kSamples) {
        SCOPED_TRACE(name);
        const Plan plan = test::sample(name);
        const std::vector<CastingPtr> castings = castingsOfAll(plan);
        for (const ModelPiece& piece : kitchenModel(plan, castings)) {
            SCOPED_TRACE(piece.id);
            const SolidCheck check = checkSolid(piece.solid);
            EXPECT_TRUE(check.closed);
            EXPECT_GT(volumeMm3(piece.solid), 0.0);
            const Casting* casting = castingOf(castings, piece.id);
            if (!casting) continue;
            ++castingsSeen;
            EXPECT_NEAR(volumeMm3(piece.solid) / (casting->volumeL * 1e6), 1.0, 1e-6);
            EXPECT_EQ(check.euler(), eulerOf(*casting));
            // The file has single floats: 2e-4 mm at 4 m, and no two points may become one.
            const Solid read = test::readStl(stlBytes({piece}));
            EXPECT_TRUE(checkSolid(read).closed);
            EXPECT_EQ(checkSolid(read).points, check.points);
            EXPECT_NEAR(volumeMm3(read) / volumeMm3(piece.solid), 1.0, 1e-5);
        }
        for (const CastingPtr& casting : castings) {
            const std::vector<ModelPiece> only = kitchenModel(plan, castings, casting->part);
            EXPECT_TRUE(
                std::any_of(only.begin(), only.end(), [&](const ModelPiece& p) { return p.id == casting->id; }));
        }
    }
    EXPECT_GT(castingsSeen, 20);
}

TEST(KitchenModel, PiecesStandWhereThePlanHasThem)
{
    for (const std::string& name : test::kSamples) {
        SCOPED_TRACE(name);
        const Plan plan = test::sample(name);
        for (const ModelPiece& piece : kitchenModel(plan, castingsOfAll(plan))) {
            SCOPED_TRACE(piece.id);
            const Part& part = *findPart(plan, piece.part);
            const Levels levels = levelsOf(plan, part);
            const Box box = *boundsOf(footprint(part));
            double low = 1e9, high = -1e9;
            for (const SolidPoint& p : piece.solid.points) {
                low = std::min(low, p[2]);
                high = std::max(high, p[2]);
                EXPECT_GE(p[0], box.low.x - 0.01);
                EXPECT_LE(p[0], box.high.x + 0.01);
                EXPECT_GE(p[1], box.low.y - 0.01);
                EXPECT_LE(p[1], box.high.y + 0.01);
            }
            // Battens end where their division ends; a counter's piece may lie beside all of its deep strips.
            EXPECT_GE(low, levels.lowMm - 0.01);
            EXPECT_LE(high, levels.highMm + 0.01);
            if (part.kind() != PartKind::front) {
                EXPECT_NEAR(high, levels.highMm, 0.01);
            }
            if (part.kind() == PartKind::support || part.kind() == PartKind::panel) {
                EXPECT_NEAR(low, levels.lowMm, 0.01);
            }
        }
    }
}

TEST(KitchenModel, RandomCountersAreClosedBodiesOfTheirVolume)
{
    int whole = 0;
    for (const std::uint32_t seed : random::seeds(300)) {
        SCOPED_TRACE(seed);
        random::Source source(seed);
        Counter counter = random::counter(source);
        if (source.chance(40)) {
            const Box box = *boundsOf(Ring(counter.outline));
            const double x = source.between(box.low.x + 100, box.high.x - 100);
            counter.joints.push_back({{x, box.low.y - 10}, {x + source.between(-60, 60), box.high.y + 10}, {}, {}});
        }
        Part part{"C1", {}, {{source.between(-3000, 3000, 0.1), source.between(-3000, 3000, 0.1)},
                             source.between(0, 359, 0.5)}, counter, {}};
        for (const CastingPtr& casting : castingsOf(part)) {
            SCOPED_TRACE(casting->id);
            const ModelPiece piece = modelOf(*casting, part);
            const SolidCheck check = checkSolid(piece.solid);
            EXPECT_TRUE(check.closed);
            EXPECT_EQ(check.shells, 1);
            EXPECT_EQ(check.euler(), eulerOf(*casting));
            whole += check.shells == 1;
            EXPECT_NEAR(volumeMm3(piece.solid) / (casting->volumeL * 1e6), 1.0, 1e-6);
        }
    }
    EXPECT_GE(whole, 1);
}

}  // namespace
}  // namespace yardcast
