#include "core/structure/uprights.h"

#include <gtest/gtest.h>

#include <numeric>

#include "tests/core/structure/handling_samples.h"

namespace yardcast {
namespace {

Support support()
{
    Support s;
    s.mix = kMixId;
    s.lengthMm = 600;
    s.widthMm = 100;
    s.heightMm = 800;
    return s;
}

Pads pads(int count, Size size)
{
    Pads p;
    p.count = count;
    p.size = size;
    return p;
}

StrengthInput inputOf(const Support& s)
{
    Part part;
    part.id = "S1";
    part.body = s;
    return inputOf(part);
}

const Finding* find(const StandingAnswer& answer, const std::string& code)
{
    for (const Finding& finding : answer.findings) {
        if (finding.code == code) return &finding;
    }
    return nullptr;
}

/// 0.6 x 0.1 x 0.8 m of 2400 kg/m3.
constexpr double kOwnN = 0.6 * 0.1 * 0.8 * 2400 * 9.81;

TEST(StandingPads, LieInTwoRowsWhereTheyFit)
{
    Support s = support();
    s.pads = pads(4, {80, 40});
    const StandingPads two = standingPads(inputOf(s));
    ASSERT_EQ(two.pads.size(), 4u);
    EXPECT_NEAR(two.around.height(), 100, 1e-9);
    EXPECT_NEAR(two.around.width(), 600, 1e-9);

    s.pads = pads(4, {80, 80});
    const StandingPads one = standingPads(inputOf(s));
    ASSERT_EQ(one.pads.size(), 4u);
    EXPECT_NEAR(one.around.height(), 80, 1e-9) << "one row of four along its middle";
    EXPECT_NEAR(one.pads[0].low.x, 0, 1e-9);
    EXPECT_NEAR(one.pads[3].high.x, 600, 1e-9);

    s.pads.reset();
    EXPECT_EQ(standingPads(inputOf(s)).pads.size(), 1u) << "on all of its base";
}

TEST(Standing, SharesByStatics)
{
    Support s = support();
    s.pads = pads(2, {100, 80});
    StrengthInput input = inputOf(s);
    input.carriedN = 900;
    input.carriedAtMm = 400;
    const Standing stands = standing(input);
    ASSERT_TRUE(stands.holds);
    // Pads at 50 and 550: own weight in the middle, the load at 400.
    const double right = kOwnN / 2 + 900 * (400.0 - 50) / 500;
    EXPECT_NEAR(stands.padN[1], right, 1e-6 * right);
    EXPECT_NEAR(stands.padN[0], kOwnN + 900 - right, 1e-6 * right);
    EXPECT_NEAR(stands.padMpa, right / (100 * 80), 1e-9);
    EXPECT_NEAR(stands.groundKpa, 1000 * right / (100 * 80), 1e-6);
}

TEST(Standing, TipsByHandCalculation)
{
    Support s = support();
    s.pads = pads(4, {80, 80});
    StrengthInput input = inputOf(s);
    input.carriedN = 500;
    input.carriedAtMm = 300;
    const Standing stands = standing(input);
    // H x 800 = N x 40: the pads reach 40 mm from the middle.
    EXPECT_NEAR(stands.leanN, (kOwnN + 500) * 40 / 800, 1e-6);
    EXPECT_NEAR(stands.tipFactor, stands.leanN / 1000, 1e-12);
    EXPECT_NEAR(stands.slenderness, 8, 1e-12);
}

TEST(Standing, ALoadBeyondItsPadsTips)
{
    Support s = support();
    s.pads = pads(2, {80, 80});
    StrengthInput input = inputOf(s);
    input.carriedN = 900;
    input.carriedAtMm = 900;
    // (1130 x 300 + 900 x 900) / 2030 = 566: still on the last pad's outer half.
    EXPECT_TRUE(standing(input).holds);
    EXPECT_NEAR(standing(input).padN[0], 0.0, 1e-9);
    input.carriedAtMm = 1100;
    const StandingAnswer answer = standingCase(input);
    ASSERT_EQ(answer.cases.size(), 1u);
    EXPECT_FALSE(answer.cases[0].holds);
    ASSERT_NE(find(answer, "upright_tips"), nullptr);
    EXPECT_EQ(find(answer, "upright_tips")->severity, Severity::stop);
}

TEST(Standing, WithoutPadsThePressureIsLinear)
{
    Support s = support();
    StrengthInput input = inputOf(s);
    const double area = 600 * 100;
    EXPECT_NEAR(standing(input).padMpa, kOwnN / area, 1e-9);
    input.carriedN = kOwnN;
    input.carriedAtMm = 400;  // together 50 mm off the middle: 1 + 6 x 50 / 600
    EXPECT_NEAR(standing(input).padMpa, 2 * kOwnN / area * 1.5, 1e-9);
    input.carriedAtMm = 700;  // 200 off: beyond the kern, 2 N / (3 x 100 x 100)
    EXPECT_NEAR(standing(input).padMpa, 2 * 2 * kOwnN / (3 * 100 * 100), 1e-9);
}

TEST(StandingCase, HoldsItsPads)
{
    Support s = support();
    s.pads = pads(4, {80, 40});
    StrengthInput input = inputOf(s);
    input.carriedN = 1000;
    input.carriedAtMm = 300;
    const StandingAnswer answer = standingCase(input);
    ASSERT_EQ(answer.cases.size(), 1u);
    const CaseResult& result = answer.cases[0];
    EXPECT_EQ(result.which, StrengthCase::standing);
    EXPECT_TRUE(result.holds);
    ASSERT_EQ(result.held.size(), 4u);
    double sum = 0;
    for (const HeldAt& held : result.held) sum += held.forceN;
    EXPECT_NEAR(sum, kOwnN + 1000, 1e-9 * sum);
    EXPECT_EQ(find(answer, "upright_tips"), nullptr) << "it carries a counter and is no bar";
}

TEST(StandingCase, SaysThatAFreePanelAndABarTip)
{
    Panel panel;
    panel.mix = kMixId;
    panel.lengthMm = 1200;
    panel.thicknessMm = 40;
    panel.heightMm = 300;
    Part part;
    part.id = "P1";
    part.body = panel;
    const StandingAnswer free = standingCase(inputOf(part));
    ASSERT_NE(find(free, "upright_tips"), nullptr);
    EXPECT_EQ(find(free, "upright_tips")->severity, Severity::caution);

    Support bar = support();
    bar.heightMm = 1050;
    StrengthInput input = inputOf(bar);
    input.carriedN = 400;
    input.carriedAtMm = 300;
    EXPECT_NE(find(standingCase(input), "upright_tips"), nullptr);

    // Squat and heavy: nobody pushes it over.
    Support block = support();
    block.widthMm = 400;
    block.heightMm = 400;
    block.lengthMm = 2000;
    EXPECT_EQ(find(standingCase(inputOf(block)), "upright_tips"), nullptr);
}

TEST(StandingCase, SaysWhenTheGroundAndPadsArePressedHard)
{
    Support s = support();
    s.pads = pads(2, {120, 60});
    StrengthInput input = inputOf(s);
    input.carriedAtMm = 300;
    const auto ground = [&](double carriedN) {
        input.carriedN = carriedN;
        const StandingAnswer answer = standingCase(input);
        const Finding* finding = find(answer, "ground_pressure");
        return finding ? static_cast<int>(finding->severity) : -1;
    };
    // 14 400 mm2 of pads: 50 kPa at 720 N, 150 kPa at 2160 N.
    EXPECT_EQ(ground(0), static_cast<int>(Severity::note)) << "1130 N";
    EXPECT_EQ(ground(2160 - kOwnN + 5), static_cast<int>(Severity::caution));
    EXPECT_EQ(ground(2160 - kOwnN - 5), static_cast<int>(Severity::note));
    s.baseMm = 900;
    input = inputOf(s);
    EXPECT_EQ(ground(0), -1) << "it stands on something else";

    // EN 1992-1-1 10.9.5.2(2) and 12.3.1 (from memory): 0.4 x 0.8 x 25 / 1.5.
    EXPECT_NEAR(dryBearingMpa(25), 5.333, 1e-3);
    s.baseMm = 0;
    s.pads = pads(2, {10, 10});
    input = inputOf(s);
    input.carriedAtMm = 300;
    input.carriedN = 200 * 5.333 - kOwnN + 3;
    EXPECT_NE(find(standingCase(input), "pad_pressure"), nullptr);
    input.carriedN -= 6;
    EXPECT_EQ(find(standingCase(input), "pad_pressure"), nullptr);
}

TEST(StandingCase, SaysWhatIsSlenderAndWhatRocks)
{
    Support s = support();
    s.widthMm = 30;
    EXPECT_NE(find(standingCase(inputOf(s)), "upright_slender"), nullptr) << "800 / 30";
    s.widthMm = 40;
    EXPECT_EQ(find(standingCase(inputOf(s)), "upright_slender"), nullptr);
    s.pads = pads(1, {80, 40});
    EXPECT_NE(find(standingCase(inputOf(s)), "pads_few"), nullptr);
}

TEST(StandingCase, CountersDoNotStand)
{
    EXPECT_TRUE(standingCase(inputOf(slab(1800, 600, 40))).cases.empty());
}

}  // namespace
}  // namespace yardcast
