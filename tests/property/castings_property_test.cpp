#include <gtest/gtest.h>

#include "core/castings/casting.h"
#include "core/plan/edits.h"
#include "tests/property/random_plan.h"

namespace yardcast {
namespace {

struct Amounts {
    double volumeL = 0.0;
    double massKg = 0.0;
    double fillerL = 0.0;
    double steelKg = 0.0;
    std::size_t pieces = 0;
};

Amounts amountsOf(const Plan& plan)
{
    Amounts sum;
    for (const PartPtr& part : plan.parts) {
        for (const CastingPtr& casting : castingsOf(*part)) {
            sum.volumeL += casting->volumeL;
            sum.massKg += casting->massKg;
            sum.fillerL += casting->fillerL;
            sum.steelKg += casting->steelKg;
            ++sum.pieces;
        }
    }
    return sum;
}

Ids everyId(const Plan& plan)
{
    Ids ids;
    for (const PartPtr& part : plan.parts) ids.push_back(part->id);
    return ids;
}

TEST(CastingsProperty, MovingTurningAndRaisingChangesNothing)
{
    for (const auto seed : random::seeds(200)) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        random::Source source(seed);
        const Plan plan = random::plan(source);
        const Ids ids = everyId(plan);
        const Amounts before = amountsOf(plan);
        Plan moved = moveParts(plan, ids, {source.between(-900, 900, 0.1), source.between(-900, 900, 0.1)});
        moved = turnParts(moved, ids, source.between(-180, 180, 0.1), {100, 200});
        moved = raiseParts(moved, ids, source.between(-30, 30, 0.1));
        const Amounts after = amountsOf(moved);
        // Castings stand in the part's own frame, so these are the very same numbers.
        ASSERT_EQ(after.volumeL, before.volumeL);
        ASSERT_EQ(after.massKg, before.massKg);
        ASSERT_EQ(after.fillerL, before.fillerL);
        ASSERT_EQ(after.pieces, before.pieces);
    }
}

TEST(CastingsProperty, MirroringKeepsVolumeMassAndSteel)
{
    for (const auto seed : random::seeds(200)) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        random::Source source(seed);
        const Plan plan = random::plan(source);
        const Amounts before = amountsOf(plan);
        const Amounts after = amountsOf(mirrorParts(plan, everyId(plan), source.between(-900, 900, 0.1)));
        // Areas are exact to the lattice of 1e-4 mm: some 0.5 mm2 on the 5 m of outline here, times 0.1 m of depth.
        ASSERT_NEAR(after.volumeL, before.volumeL, 1e-3);
        ASSERT_NEAR(after.massKg, before.massKg, 3e-3);
        ASSERT_NEAR(after.fillerL, before.fillerL, 1e-3);
        ASSERT_NEAR(after.steelKg, before.steelKg, 1e-4);
        ASSERT_EQ(after.pieces, before.pieces);
    }
}

TEST(CastingsProperty, JointsTakeTheirGapsAndNothingElse)
{
    for (const auto seed : random::seeds(300)) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        random::Source source(seed);
        Part part;
        part.id = "C1";
        Counter counter = random::counter(source);
        // A rectangle with a rim all round and an opening in its left third, so that the section where the joints are
        // put is known: depth x field + two strips of rim, without groove and rebate.
        const double width = source.between(1600, 3000, 0.5);
        const double depth = source.between(500, 800, 0.5);
        counter.outline = {{0, 0}, {width, 0}, {width, depth}, {0, depth}};
        counter.ribs.clear();
        counter.cutouts.clear();
        Cutout hole;
        hole.id = "K1";
        hole.shape = CutoutShape::circle;
        hole.centre = {width / 6, depth / 2};
        hole.diameterMm = 150;
        counter.cutouts.push_back(hole);
        if (counter.rim) counter.rim->edges.reset();
        counter.drip.reset();
        counter.rebate.reset();
        part.body = counter;
        const double whole = castingsOf(part).at(0)->volumeL;

        const std::size_t joints = 1 + source.below(3);
        double gaps = 0.0;
        for (std::size_t i = 0; i < joints; ++i) {
            const double x = width / 3 + 150 + source.between(0, 60, 0.5) + 120.0 * static_cast<double>(i);
            const double gap = source.between(2, 12, 0.5);
            counter.joints.push_back(Joint{{x, 0}, {x, depth}, gap, {}});
            gaps += gap;
        }
        const double rimDepth = counter.rim ? counter.rim->depthMm : counter.thicknessMm;
        const double rimWidth = counter.rim ? counter.rim->widthMm : 0.0;
        const double sectionMm2 = 2 * rimWidth * rimDepth + (depth - 2 * rimWidth) * counter.thicknessMm;

        part.body = counter;
        const auto pieces = castingsOf(part);
        ASSERT_EQ(pieces.size(), joints + 1);
        double sum = 0.0;
        for (const CastingPtr& piece : pieces) sum += piece->volumeL;
        ASSERT_NEAR(sum, whole - gaps * sectionMm2 * 1e-6, 1e-4);
    }
}

TEST(CastingsProperty, ASlantedJointTakesItsStrip)
{
    for (const auto seed : random::seeds(100)) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        random::Source source(seed);
        Part part;
        part.id = "C1";
        Counter counter;
        const double depth = source.between(400, 900);
        counter.outline = {{0, 0}, {2000, 0}, {2000, depth}, {0, depth}};
        counter.thicknessMm = source.between(30, 80);
        part.body = counter;
        const double whole = castingsOf(part).at(0)->volumeL;
        const double from = source.between(600, 1400);
        const double to = source.between(600, 1400);
        const double gap = source.between(1, 20);
        counter.joints = {Joint{{from, 0}, {to, depth}, gap, {}}};
        part.body = counter;
        const auto pieces = castingsOf(part);
        ASSERT_EQ(pieces.size(), 2u);
        // A strip of width g that crosses a band of depth d at a slant covers g times its length inside the band.
        const double along = std::hypot(to - from, depth);
        ASSERT_NEAR(pieces[0]->volumeL + pieces[1]->volumeL, whole - gap * along * counter.thicknessMm * 1e-6, 1e-4);
    }
}

}  // namespace
}  // namespace yardcast
