#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "tests/core/structure/handling_samples.h"

namespace yardcast {
namespace {

/// Slabs of all sorts: rectangles, ells, triangles, skew ones, with rims, openings and odd hand places.
Counter anySlab(int seed)
{
    std::mt19937 random(static_cast<unsigned>(seed));
    const auto between = [&](double a, double b) { return std::uniform_real_distribution<double>(a, b)(random); };
    const double length = between(300, 2200);
    const double width = between(150, 800);
    Counter counter = slab(length, width, between(25, 70));
    switch (seed % 5) {
        case 1:
            counter.outline = {{0, 0},           {length, 0},           {length, width},
                               {length * 0.4, width}, {length * 0.4, width + 400}, {0, width + 400}};
            break;
        case 2: counter.outline = {{0, 0}, {length, 0}, {between(0, length), width}}; break;
        case 3: counter.outline = {{0, 0}, {length, 60}, {length * 0.9, width}, {length * 0.1, width * 0.8}}; break;
        default: break;
    }
    if (seed % 3 == 0) {
        counter.rim = Rim{};
        counter.rim->depthMm = counter.thicknessMm + 20;
    }
    if (seed % 4 == 0) {
        Cutout cutout;
        cutout.id = "K1";
        cutout.centre = {between(0.3, 0.7) * length, between(0.4, 0.6) * width};
        cutout.size = {between(50, 300), between(40, 0.5 * width)};
        cutout.cornerRadiusMm = between(0, 20);
        counter.cutouts.push_back(cutout);
    }
    return counter;
}

TEST(HandlingOfAnySlab, IsSolvedAndInBalance)
{
    for (int seed = 0; seed < 24; ++seed) {
        SCOPED_TRACE(seed);
        const StrengthInput input = inputOf(anySlab(seed), 1 + seed % 9);
        const auto body = makeBody(input, Refinement::draft);
        ASSERT_NE(body, nullptr);
        const auto answer = handlingCases(input, body, Refinement::draft);
        ASSERT_TRUE(answer);
        EXPECT_EQ(answer->cases.size(), 6u);
        const auto handled = HandledBody::make(body);
        const double weight = -handled->free().resultant(handled->weight())[2];
        const double stuck = -handled->free().resultant(handled->suction())[2];
        for (const CaseResult& result : answer->cases) {
            SCOPED_TRACE(strengthCaseWord(result.which));
            EXPECT_TRUE(result.holds);
            EXPECT_TRUE(std::isfinite(result.usePercent));
            EXPECT_GT(result.usePercent, 0.0);
            const double load = result.factor * weight + result.suctionKpa * stuck;
            double sum = 0.0;
            for (const HeldAt& held : result.held) {
                EXPECT_GE(held.forceN, 0.0);
                sum += held.forceN;
            }
            EXPECT_NEAR(sum, load, 1e-9 * load);
        }
    }
}

TEST(HandlingOfAnySlab, OddHandPlacesHoldOrTip)
{
    int held = 0;
    int tipped = 0;
    for (int seed = 0; seed < 12; ++seed) {
        SCOPED_TRACE(seed);
        StrengthInput input = inputOf(anySlab(seed));
        std::mt19937 random(static_cast<unsigned>(seed));
        const Box box = input.casting->boundsMm;
        for (int i = 0; i < 1 + seed % 6; ++i) {
            input.grips.push_back({std::uniform_real_distribution<double>(box.low.x, box.high.x)(random),
                                   std::uniform_real_distribution<double>(box.low.y, box.high.y)(random)});
        }
        const HandlingAnswer answer = handle(input, Refinement::draft);
        EXPECT_EQ(answer.grips, input.grips);
        const CaseResult* flat = caseIn(answer, StrengthCase::carriedFlat);
        ASSERT_NE(flat, nullptr);
        bool said = false;
        for (const Finding& finding : answer.findings) said = said || finding.code == "grips_tip";
        EXPECT_EQ(said, !flat->holds);
        ++(flat->holds ? held : tipped);
    }
    EXPECT_GT(held, 0);
    EXPECT_GT(tipped, 0);
}

}  // namespace
}  // namespace yardcast
