#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <limits>
#include <optional>

#include "core/materials/materials.h"
#include "core/purchase/currency.h"
#include "core/purchase/needs.h"
#include "core/purchase/shopping.h"

namespace yardcast {
namespace {

/// A plan in parts that a test fills in; nothing else of core is run.
struct Shop {
    Plan plan;
    PriceBook book = exampleBook();
    std::vector<CastingPtr> castings;
    std::vector<MixQuantities> mixes;
    SteelSchedule steel;
    std::vector<FrontLayout> fronts;
    MouldEstimate mould;
    std::vector<Finding> findings;

    ShoppingList list()
    {
        findings.clear();
        return shoppingList(plan, book, castings, mixes, steel, fronts, mould, findings);
    }

    void addMix(const std::string& id, double bagsExact, Bag bag = {})
    {
        Mix mix;
        mix.id = id;
        mix.bag = bag;
        mix.allowancePercent = 0.0;
        plan.mixes.push_back(mix);
        auto casting = std::make_shared<Casting>();
        casting->mix = id;
        casting->volumeL = bagsExact * bag.yieldL;
        std::vector<Finding> said;
        mixes.push_back(mixQuantities(plan, {casting}, said).at(0));
    }

    bool says(const std::string& code) const { return finding(code) != nullptr; }

    const Finding* finding(const std::string& code) const
    {
        for (const Finding& each : findings) {
            if (each.code == code) return &each;
        }
        return nullptr;
    }
};

MouldNeed mouldNeed(const std::string& casting, double baseM2, double boardM2)
{
    MouldNeed need;
    need.casting = casting;
    need.baseM2 = baseM2;
    need.boardM2 = boardM2;
    return need;
}

std::optional<ShoppingLine> lineOf(const ShoppingList& list, const std::string& item)
{
    for (const ShoppingLine& line : list.lines) {
        if (line.item == item) return line;
    }
    return {};
}

int packsOf(const ShoppingLine& line)
{
    int packs = 0;
    for (const PackChoice& choice : line.packs) packs += choice.count;
    return packs;
}

TEST(Shopping, NothingIsBoughtForAnEmptyPlan)
{
    Shop shop;
    const ShoppingList list = shop.list();
    EXPECT_TRUE(list.lines.empty());
    EXPECT_EQ(list.totalMinor, 0);
    EXPECT_TRUE(shop.findings.empty());
}

TEST(Shopping, WholeBagsForEachMix)
{
    Shop shop;
    shop.addMix("worktop", 4.3);
    shop.addMix("body", 2.3);
    const ShoppingLine line = lineOf(shop.list(), "dry_mix").value();
    EXPECT_NEAR(line.need, 6.6 * 25, 1e-9);
    EXPECT_EQ(packsOf(line), 8);
    EXPECT_EQ(line.priceMinor, 8 * 540);
    EXPECT_NEAR(line.leftover, 8 * 25 - 6.6 * 25, 1e-9);
    ASSERT_EQ(line.origins.size(), 2u);
    EXPECT_EQ(line.origins[1].subject, "body");
    EXPECT_NEAR(line.origins[1].amount, 2.3 * 25, 1e-9);
}

TEST(Shopping, TwoSortsOfBagsAreTwoLines)
{
    Shop shop;
    shop.addMix("worktop", 4.3);
    Bag other;
    other.massKg = 40.0;
    shop.addMix("body", 2.3, other);
    const ShoppingList list = shop.list();
    std::vector<ShoppingLine> bags;
    for (const ShoppingLine& line : list.lines) {
        if (line.item == "dry_mix") bags.push_back(line);
    }
    ASSERT_EQ(bags.size(), 2u);
    EXPECT_EQ(bags[0].packs.at(0).size, 25.0);
    EXPECT_EQ(bags[1].packs.at(0).size, 40.0);
    EXPECT_EQ(bags[1].packs.at(0).count, 3);
    // No price for 40 kg in the book: by the kg, 5.40 x 40/25.
    EXPECT_EQ(bags[1].packs.at(0).priceMinor, 864);
    EXPECT_TRUE(shop.says("bag_price_reckoned"));
}

TEST(Shopping, ASpareBagWhereWholeBagsLeaveLittle)
{
    Shop tight;
    tight.addMix("worktop", 7.95);
    EXPECT_TRUE(lineOf(tight.list(), "spare_bag").has_value());
    Shop roomy;
    roomy.addMix("worktop", 7.2);
    EXPECT_FALSE(lineOf(roomy.list(), "spare_bag").has_value());
}

TEST(Shopping, SpareBagsOfEachSortAreItsOwnLine)
{
    Shop shop;
    shop.addMix("worktop", 7.95);
    Bag unsure;
    unsure.massKg = 40.0;
    unsure.yieldSpreadPercent = 25.0;
    shop.addMix("body", 9.0, unsure);  // 9 / 0.75: three more
    const ShoppingList list = shop.list();
    std::vector<ShoppingLine> spare;
    for (const ShoppingLine& line : list.lines) {
        if (line.item == "spare_bag") spare.push_back(line);
    }
    ASSERT_EQ(spare.size(), 2u);
    EXPECT_EQ(spare[0].need, 1.0);
    EXPECT_EQ(spare[0].priceMinor, 540);
    EXPECT_EQ(spare[1].need, 3.0);
    EXPECT_EQ(spare[1].priceMinor, 3 * 864) << "each as a bag of its own sort";
}

TEST(Shopping, ARecipeIsBoughtAsCementSandAndGravel)
{
    Shop shop;
    Mix mix;
    mix.id = "own";
    mix.recipe = Recipe{};
    mix.pigmentPercent = 3;
    mix.allowancePercent = 0.0;
    shop.plan.mixes.push_back(mix);
    auto casting = std::make_shared<Casting>();
    casting->mix = "own";
    casting->volumeL = 100.0;
    shop.mixes = mixQuantities(shop.plan, {casting}, shop.findings);
    const ShoppingList list = shop.list();
    EXPECT_FALSE(lineOf(list, "dry_mix").has_value());
    EXPECT_FALSE(lineOf(list, "spare_bag").has_value());
    EXPECT_NEAR(lineOf(list, "cement")->need, 35.0, 1e-9);
    EXPECT_NEAR(lineOf(list, "pigment")->need, 1.05, 1e-9);
    EXPECT_NEAR(lineOf(list, "sand")->need, shop.mixes[0].sandKg, 1e-9);
    EXPECT_NEAR(lineOf(list, "gravel")->need, shop.mixes[0].gravelKg, 1e-9);
    for (const char* item : {"sand", "gravel", "pigment"}) EXPECT_TRUE(lineOf(list, item)->priced) << item;
}

TEST(Shopping, ASpareBagCostsWhatTheOthersCost)
{
    Shop shop;
    shop.addMix("worktop", 7.95);
    shop.plan.prices = {{"dry_mix", 25.0, 7.10, {}}};
    EXPECT_EQ(lineOf(shop.list(), "spare_bag")->priceMinor, 710);
}

TEST(Shopping, OwnPricesReplaceThoseOfTheBook)
{
    Shop shop;
    MixQuantities mix;
    mix.mix = "worktop";
    mix.extraCementKg = 4.0;
    shop.mixes = {mix};
    EXPECT_EQ(lineOf(shop.list(), "cement")->priceMinor, 210);
    shop.plan.prices = {{"cement", 25.0, 4.99, {}}};
    const ShoppingLine line = lineOf(shop.list(), "cement").value();
    EXPECT_EQ(line.priceMinor, 499);
    EXPECT_EQ(line.packs.at(0).size, 25.0);
    EXPECT_EQ(line.name, "Cement, bag");
}

TEST(Shopping, WhatIsOwnedIsTakenOffOnce)
{
    Shop shop;
    shop.mould.castings = {mouldNeed("C1", 0, 2.0), mouldNeed("C2", 0, 2.5)};
    shop.plan.owned = {{"mould_board", 1.0, {}}, {"mould_board", 0.6, {}}};
    ShoppingLine line = lineOf(shop.list(), "mould_board").value();
    EXPECT_NEAR(line.need, 4.5, 1e-12);
    EXPECT_NEAR(line.owned, 1.6, 1e-12);
    EXPECT_EQ(packsOf(line), 1);
    EXPECT_NEAR(line.leftover, 3.125 - 2.9, 1e-9);
    EXPECT_TRUE(line.estimate);

    shop.plan.owned = {{"mould_board", 100.0, {}}};
    line = lineOf(shop.list(), "mould_board").value();
    EXPECT_NEAR(line.owned, 4.5, 1e-12);
    EXPECT_TRUE(line.packs.empty());
    EXPECT_EQ(line.priceMinor, 0);
    EXPECT_TRUE(line.priced);
    EXPECT_FALSE(shop.says("no_price"));
}

TEST(Shopping, AWrongKeyIsSaid)
{
    Shop shop;
    shop.plan.owned = {{"bord", 1.0, {}}};
    shop.plan.prices = {{"cement", 25.0, 6.0, {}}, {"cementt", 25.0, 6.0, {}}};
    shop.list();
    ASSERT_TRUE(shop.says("owned_unknown"));
    EXPECT_EQ(shop.finding("owned_unknown")->pointer, "/owned/0/item");
    ASSERT_TRUE(shop.says("price_unknown"));
    EXPECT_EQ(shop.finding("price_unknown")->pointer, "/prices/1/item");
}

TEST(Shopping, WithoutAPriceTheLineStaysAndSaysSo)
{
    Shop shop;
    shop.steel.meshes = {{"C1", 2.5, 30.0, 1.0, 1.2, 0.0}};
    const ShoppingList list = shop.list();
    const ShoppingLine line = lineOf(list, "mesh_2.5_30").value();
    EXPECT_FALSE(line.priced);
    EXPECT_EQ(line.group, "steel");
    EXPECT_EQ(line.unit, "m2");
    ASSERT_TRUE(shop.says("no_price"));
    EXPECT_THAT(shop.finding("no_price")->subjects, testing::ElementsAre("C1"));
    shop.plan.prices = {{"mesh_2.5_30", 2.0, 11.0, {}}};
    EXPECT_TRUE(lineOf(shop.list(), "mesh_2.5_30")->priced);
    EXPECT_FALSE(shop.says("no_price"));
    EXPECT_FALSE(shop.says("price_unknown"));
}

TEST(Shopping, ABarLongerThanAnyStockIsSaid)
{
    Shop shop;
    shop.steel.bars = {{"C1", 8.0, 6500.0, 2, 0.0}};
    shop.list();
    ASSERT_TRUE(shop.says("longer_than_stock"));
    EXPECT_EQ(std::get<double>(shop.finding("longer_than_stock")->values.at("stock_mm")), 6000.0);
    shop.steel.bars = {{"C1", 8.0, 5900.0, 2, 0.0}};
    shop.list();
    EXPECT_FALSE(shop.says("longer_than_stock"));
}

TEST(Shopping, LinesStandByAisleAndSumExactly)
{
    Shop shop;
    shop.addMix("worktop", 7.2);
    shop.mixes[0].extraCementKg = 7.2;
    shop.mixes[0].silicaFumeKg = 2.7;
    shop.mixes[0].plasticiserKg = 0.33;
    shop.mixes[0].fibresByKindKg = {{"AR glass", 0.28}};
    shop.steel.meshes = {{"C1", 4.0, 50.0, 1.0, 1.2, 3.9}};
    shop.steel.bars = {{"C1", 8.0, 1700.0, 4, 2.7}};
    shop.mould.castings = {{"C1", 1.2, 0.3, 0.1, 1.84, 90, 160, 0.6, 20.0, 1.7, 0.3, 120, 0, 30.0, 8.0,
                             {{MouldPartKind::filler, MouldStuff::foam, false, 0.0, 20.0, 0.6, 1200.0}}}};
    const ShoppingList list = shop.list();
    std::int64_t sum = 0;
    std::vector<std::size_t> aisles;
    for (const ShoppingLine& line : list.lines) {
        EXPECT_TRUE(line.priced) << line.item;
        std::int64_t price = 0;
        double bought = 0.0;
        for (const PackChoice& choice : line.packs) {
            price += choice.count * choice.priceMinor;
            bought += choice.count * choice.size;
        }
        EXPECT_EQ(price, line.priceMinor) << line.item;
        EXPECT_GE(bought, line.need - line.owned - 1e-6) << line.item;
        EXPECT_NEAR(bought - (line.need - line.owned), line.leftover, 1e-9) << line.item;
        sum += line.priceMinor;
        const auto& groups = priceGroups();
        const auto aisle = std::find(groups.begin(), groups.end(), line.group) - groups.begin();
        aisles.push_back(static_cast<std::size_t>(aisle));
    }
    EXPECT_EQ(sum, list.totalMinor);
    EXPECT_TRUE(std::is_sorted(aisles.begin(), aisles.end()));
    EXPECT_TRUE(lineOf(list, "fibre_ar_glass").has_value());
    EXPECT_NEAR(lineOf(list, "plasticiser")->need, 0.33 / kPlasticiserKgL, 1e-12);
    EXPECT_TRUE(lineOf(list, "foam_20").has_value());
    EXPECT_EQ(lineOf(list, "screw_mould")->need, 120.0) << "those of the mould";
    EXPECT_FALSE(lineOf(list, "screw_mould")->estimate);
    EXPECT_EQ(lineOf(list, "mould_wax")->packs.at(0).count, 1);
    EXPECT_NEAR(lineOf(list, "bar_8")->need, 6.8 * (1 + kCutAllowanceShare), 1e-9);
    EXPECT_NEAR(list.massKg, 8 * 25 + 10 + shop.steel.massKg, 1e-9);
}

TEST(Shopping, BattensOfTheirOwnSectionComeFirst)
{
    Shop shop;
    Part part;
    part.id = "F1";
    Front front;
    front.batten.species = "larch";
    part.body = front;
    shop.plan.parts = {std::make_shared<const Part>(part)};
    FrontLayout layout;
    layout.part = "F1";
    layout.solved = true;
    layout.timberM = 20.0;
    layout.battenLengthMm = 780.0;
    shop.fronts = {layout};
    ASSERT_TRUE(lineOf(shop.list(), "batten").has_value());
    EXPECT_THAT(lineOf(shop.list(), "batten")->name, testing::HasSubstr("46 x 27 larch"));
    shop.plan.prices = {{"batten_46x27", 2.0, 2.50, {}}};
    ASSERT_TRUE(lineOf(shop.list(), "batten_46x27").has_value());
    EXPECT_EQ(packsOf(lineOf(shop.list(), "batten_46x27").value()), 11);
}

TEST(Shopping, BudgetAndQuote)
{
    Shop shop;
    shop.addMix("worktop", 7.2);
    const double total = fromMinor(shop.list().totalMinor, "EUR");
    ASSERT_GT(total, 0.0);

    shop.plan.budget = Budget{total - 1.0, {}, {}};
    shop.list();
    ASSERT_TRUE(shop.says("over_budget"));
    EXPECT_EQ(shop.finding("over_budget")->severity, Severity::caution);
    EXPECT_NEAR(std::get<double>(shop.finding("over_budget")->values.at("amount")), 1.0, 1e-9);
    EXPECT_EQ(shop.finding("over_budget")->pointer, "/budget/limit");

    shop.plan.budget = Budget{total, {}, {}};
    shop.list();
    EXPECT_FALSE(shop.says("over_budget"));
    EXPECT_TRUE(shop.says("budget_tight"));

    shop.plan.budget = Budget{total / 0.89, total + 100.0, {}};
    shop.list();
    EXPECT_FALSE(shop.says("budget_tight"));
    EXPECT_TRUE(shop.says("saves_against_quote"));

    shop.plan.budget = Budget{total * 2, total / 2, {}};
    shop.list();
    EXPECT_TRUE(shop.says("dearer_than_quote"));
}

TEST(Shopping, OneMouldBaseForTwoPiecesIsOfferedWhereItSavesMoney)
{
    Shop shop;
    // Two bases of 1 m2: with sides 4.0 m2, two boards of 3.125; on one base 2.85 m2, one board.
    shop.mould.castings = {mouldNeed("A2", 1.0, 2.0), mouldNeed("A1", 1.0001, 2.0)};
    shop.plan.budget = Budget{40.0, {}, {}};
    const std::int64_t before = shop.list().totalMinor;
    ASSERT_TRUE(shop.says("over_budget"));
    const auto& remedies = shop.finding("over_budget")->remedies;
    ASSERT_EQ(remedies.size(), 1u);
    EXPECT_EQ(std::get<std::string>(remedies[0].values.at("castings")), "A1, A2");
    EXPECT_EQ(std::get<double>(remedies[0].values.at("saves")), 39.0);
    EXPECT_EQ(remedies[0].effect, "-39.00 EUR");

    // What is offered was tried: with that much less to cover the list is that much cheaper.
    shop.mould.castings[0].boardM2 -= 1.15;
    EXPECT_EQ(before - shop.list().totalMinor, 3900);

    // One board does for both: nothing to save.
    shop.mould.castings = {mouldNeed("A1", 0.6, 1.2), mouldNeed("A2", 0.5, 1.0)};
    shop.plan.budget = Budget{1.0, {}, {}};
    shop.list();
    ASSERT_TRUE(shop.says("over_budget"));
    EXPECT_TRUE(shop.finding("over_budget")->remedies.empty());
}

TEST(Shopping, NothingIsConvertedBetweenCurrencies)
{
    Shop shop;
    shop.addMix("worktop", 7.2);
    EXPECT_TRUE((shop.list(), shop.says("example_prices")));

    shop.plan.currency = "JPY";
    EXPECT_EQ(lineOf(shop.list(), "dry_mix")->priceMinor, 8 * 5);
    EXPECT_EQ(shop.list().currency, "JPY");

    shop.book.currency = "EUR";
    const ShoppingList list = shop.list();
    EXPECT_TRUE(shop.says("currency_differs"));
    EXPECT_FALSE(lineOf(list, "dry_mix")->priced);
    EXPECT_EQ(list.totalMinor, 0);

    shop.plan.prices = {{"dry_mix", 25.0, 900.0, {}}};
    EXPECT_EQ(lineOf(shop.list(), "dry_mix")->priceMinor, 8 * 900);
}

TEST(Shopping, AbsurdNeedsDoNotOverflow)
{
    Shop shop;
    shop.addMix("worktop", 1.0);
    shop.mixes[0].extraCementKg = 1e30;
    shop.mixes[0].silicaFumeKg = std::numeric_limits<double>::infinity();
    const ShoppingList list = shop.list();
    EXPECT_FALSE(lineOf(list, "cement")->priced);
    EXPECT_EQ(lineOf(list, "cement")->priceMinor, 0);
}

TEST(Shopping, KeysOfItems)
{
    EXPECT_EQ(itemSlug("AR glass"), "ar_glass");
    EXPECT_EQ(itemSlug("  Basalt, 12 mm "), "basalt_12_mm");
    EXPECT_EQ(itemSlug("\xc3\xa9"), "");
    EXPECT_EQ(meshItem(4.0, 50.0), "mesh_4_50");
    EXPECT_EQ(barItem(10.0), "bar_10");
    EXPECT_EQ(meshItem(3.0, 50.0, SteelMaterial::glass), "mesh_3_50_glass");
    EXPECT_EQ(barItem(6.0, SteelMaterial::stainless), "bar_6_stainless");
}

}  // namespace
}  // namespace yardcast
