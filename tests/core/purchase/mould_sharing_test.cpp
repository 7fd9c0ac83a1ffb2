#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/io/plan_patch.h"
#include "core/purchase/mould_sharing.h"
#include "tests/core/purchase/mould_fixture.h"

namespace yardcast {
namespace {

using mould_fixture::plainMould;
using testing::ElementsAre;
using testing::SizeIs;

/// Four equal slabs of 20 l, and a larger one.
struct Yard {
    Plan plan;
    std::vector<CastingPtr> castings;
    std::vector<MixQuantities> quantities;
    PourWeather weather = pour_fixture::evenWeather(75);
    std::vector<MouldPtr> moulds;

    explicit Yard(int equal = 4)
    {
        std::vector<PartPtr> parts{pour_fixture::slab("Z", 40)};
        std::vector<Mould> same;
        for (int i = 0; i < equal; ++i) {
            const std::string id = "S" + std::to_string(i + 1);
            parts.push_back(pour_fixture::slab(id, 20));
            same.push_back(plainMould(id, 400, 1000));
        }
        plan.mixes = {pour_fixture::mixNamed("body")};
        plan.mixer = Mixer{};
        // So that the age of lifting decides when a mould is free, not the strength of the concrete.
        plan.assumptions.emplace().stripMpa = kStripLimits.least;
        plan.parts = std::move(parts);
        castings = pour_fixture::castingsOfPlan(plan);
        quantities = pour_fixture::quantitiesOf(plan, castings, 30);
        moulds = mould_fixture::twins(std::move(same));
        moulds.insert(moulds.begin(), mould_fixture::shared(plainMould("Z", 800, 1000)));
    }

    PourGround ground() const { return {castings, quantities, weather}; }
    PourPlan pour() const
    {
        std::vector<Finding> findings;
        return pourPlan(plan, castings, quantities, weather, findings);
    }
    MouldSharing sharing(const BoardsPrice& price = {}, std::vector<Finding>* findings = nullptr) const
    {
        std::vector<Finding> ignored;
        return mouldSharing(plan, ground(), moulds, pour(), price, findings ? *findings : ignored);
    }
};

/// Ten of money a mould that is built.
std::int64_t tenAMould(const Plan& plan)
{
    std::int64_t moulds = 5;
    for (const SharedMould& list : mouldingOf(plan).shared) moulds -= std::int64_t(list.castings.size()) - 1;
    return 1000 * moulds;
}

TEST(MouldSharing, FewerMouldsSaveMoneyAndTakeDays)
{
    const MouldSharing sharing = Yard().sharing(tenAMould);
    EXPECT_EQ(sharing.days, 1);
    ASSERT_THAT(sharing.groups, SizeIs(1));
    const SharingGroup& group = sharing.groups[0];
    EXPECT_THAT(group.castings, ElementsAre("S1", "S2", "S3", "S4"));
    EXPECT_EQ(group.mouldsNow, 4);
    EXPECT_DOUBLE_EQ(group.waitH, 48);
    ASSERT_THAT(group.options, SizeIs(3));
    // Three moulds: the fourth slab waits 48 h. One: each waits for the one before, in the morning two days later.
    const auto& [three, two, one] = std::tie(group.options[0], group.options[1], group.options[2]);
    EXPECT_EQ(three.moulds.size(), 3u);
    EXPECT_EQ(three.uses, 2);
    EXPECT_EQ(three.moreDays, 2);
    EXPECT_EQ(three.savesMinor, 1000);
    EXPECT_THAT(two.moulds, ElementsAre(ElementsAre("S1", "S3"), ElementsAre("S2", "S4")));
    EXPECT_EQ(two.moreDays, 2);
    EXPECT_EQ(two.savesMinor, 2000);
    EXPECT_THAT(one.moulds, ElementsAre(ElementsAre("S1", "S2", "S3", "S4")));
    EXPECT_EQ(one.uses, 4);
    EXPECT_EQ(one.days, 7);
    EXPECT_EQ(one.savesMinor, 3000);
    EXPECT_FALSE(one.worn);
    // Of one mould: base 600 x 1200, sides 2 x 436 x 50 and 2 x 1000 x 50.
    const double mouldM2 = 0.6 * 1.2 + 2 * 0.436 * 0.05 + 2 * 1.0 * 0.05;
    EXPECT_NEAR(two.savesM2, 2 * mouldM2, 1e-9);
}

/// As the pour plan has it: days and hours of the same answer.
TEST(MouldSharing, WaitsForTheStrengthThatFreesAMould)
{
    Yard yard;
    yard.plan.assumptions->stripMpa = 15.0;
    yard.plan.mixes.front().bag.waterL = 1.8;  // the class stands: 0.43
    yard.plan.conditions.airC = 20;
    const SharingGroup group = yard.sharing(tenAMould).groups.at(0);
    // 15 of 25 MPa of C25/30 at 20 deg C: 3.0232 / 0.9981 days (EN 1992-1-1 eq. 3.2, B.10).
    EXPECT_NEAR(group.waitH, 3.0232 / 0.9981 * 24, 0.02);
    EXPECT_EQ(group.options.back().days, 10) << "three waits of more than three days, each to the morning or that forenoon";
}

TEST(MouldSharing, ThePlanAsItIsMayShareAlready)
{
    Yard yard;
    yard.plan = withMoulds(yard.plan, {"S1", "S2", "S3", "S4"}, 2);
    const MouldSharing sharing = yard.sharing(tenAMould);
    EXPECT_EQ(sharing.days, 3);
    const SharingGroup& group = sharing.groups.at(0);
    EXPECT_EQ(group.mouldsNow, 2);
    ASSERT_THAT(group.options, SizeIs(3));
    EXPECT_EQ(group.options[0].moulds.size(), 4u);
    EXPECT_EQ(group.options[0].moreDays, -2);
    EXPECT_EQ(group.options[0].savesMinor, -2000);
    EXPECT_LT(group.options[0].savesM2, 0.0);
    EXPECT_TRUE(mouldingOf(group.options[0].after).shared.empty());
}

TEST(MouldSharing, MirrorTwinsAndStrangersDoNotShare)
{
    Yard yard(2);
    Mould left = *yard.moulds[1];
    Mould right = *yard.moulds[2];
    left.twins = {{"S2", TwinKind::mirror}};
    right.twins = {{"S1", TwinKind::mirror}};
    yard.moulds[1] = mould_fixture::shared(left);
    yard.moulds[2] = mould_fixture::shared(right);
    EXPECT_TRUE(yard.sharing().groups.empty());

    yard.plan.moulding = Moulding{};
    yard.plan.moulding->shared = {{{"S1", "S2", "nobody"}, {}}};
    std::vector<Finding> findings;
    yard.sharing({}, &findings);
    ASSERT_THAT(findings, SizeIs(2));
    EXPECT_EQ(findings[0].code, "shared_not_same");
    EXPECT_EQ(findings[0].severity, Severity::caution);
    EXPECT_EQ(findings[0].subjects.at(0), "S2");
    EXPECT_EQ(findings[0].pointer, "/mould/shared/0/1");
    EXPECT_EQ(findings[1].code, "shared_unknown");
}

TEST(MouldSharing, ManyUsesWearTheFace)
{
    Yard yard(6);
    const MouldSharing sharing = yard.sharing(tenAMould);
    EXPECT_TRUE(sharing.groups.at(0).options.back().worn);  // six out of one coated board
    EXPECT_FALSE(sharing.groups.at(0).options.front().worn);
    yard.plan = sharing.groups.at(0).options.back().after;
    std::vector<Finding> findings;
    yard.sharing({}, &findings);
    ASSERT_THAT(findings, SizeIs(1));
    EXPECT_EQ(findings[0].code, "mould_worn");
    EXPECT_DOUBLE_EQ(std::get<double>(findings[0].values.at("uses")), 6);
}

TEST(MouldSharing, TheRemedyIsTheFewestDaysThatSaveEnoughAndItsEditDoesIt)
{
    const Yard yard;
    const MouldSharing sharing = yard.sharing(tenAMould);
    const std::optional<Remedy> enough = sharingRemedy(yard.plan, sharing, 1500);
    ASSERT_TRUE(enough);
    EXPECT_EQ(enough->code, "share_mould");
    EXPECT_DOUBLE_EQ(std::get<double>(enough->values.at("moulds")), 2);
    EXPECT_DOUBLE_EQ(std::get<double>(enough->values.at("more_days")), 2);
    const PlanReading after = applyPatch(yard.plan, enough->edit);
    ASSERT_TRUE(after.plan);
    ASSERT_THAT(mouldingOf(*after.plan).shared, SizeIs(2));
    EXPECT_THAT(mouldingOf(*after.plan).shared[0].castings, ElementsAre("S1", "S3"));

    const std::optional<Remedy> most = sharingRemedy(yard.plan, sharing, 100000);
    ASSERT_TRUE(most);
    EXPECT_DOUBLE_EQ(std::get<double>(most->values.at("moulds")), 1);
    // Nobody knows the price, or it saves nothing.
    EXPECT_FALSE(sharingRemedy(yard.plan, yard.sharing(), 1));
    EXPECT_FALSE(sharingRemedy(yard.plan, yard.sharing([](const Plan&) { return 7; }), 1));
}

}  // namespace
}  // namespace yardcast
