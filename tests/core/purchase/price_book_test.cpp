#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <fstream>
#include <random>
#include <set>
#include <sstream>

#include "core/purchase/currency.h"
#include "core/purchase/price_book.h"

namespace yardcast {
namespace {

std::string bookWith(const std::string& items, const std::string& currency = "EUR")
{
    return R"({"yardprices":1,"title":"t","currency":")" + currency + R"(","items":[)" + items + "]}";
}

std::vector<std::string> pointersOf(const PriceBookReading& reading)
{
    std::vector<std::string> pointers;
    for (const Finding& problem : reading.problems) pointers.push_back(problem.pointer);
    return pointers;
}

const std::string kBag =
    R"({"item":"dry_mix","name":"Bag","unit":"kg","group":"concrete","packs":[{"size":25,"price":5.4}]})";

TEST(PriceBook, ExampleIsReadAndSaysItIsInvented)
{
    const PriceBookReading reading = readPriceBook(std::string(exampleBookText()));
    EXPECT_TRUE(reading.problems.empty());
    EXPECT_GT(exampleBook().items.size(), 40u);
    EXPECT_THAT(exampleBook().title, testing::HasSubstr("invented"));
    EXPECT_EQ(exampleBook().currency, kNoCurrency);
    std::set<std::string> groups;
    for (const PricedItem& item : exampleBook().items) groups.insert(item.group);
    EXPECT_EQ(groups.size(), priceGroups().size());
}

TEST(PriceBook, ExampleInTheProgramIsTheFile)
{
    std::ifstream file(YARDCAST_SOURCE_DIR "/resources/example.yardprices", std::ios::binary);
    ASSERT_TRUE(file);
    std::stringstream text;
    text << file.rdbuf();
    EXPECT_EQ(text.str(), exampleBookText());
}

TEST(PriceBook, PricesAreWholeMinorUnits)
{
    EXPECT_EQ(readPriceBook(bookWith(kBag)).book.items.at(0).packs.at(0).priceMinor, 540);
    EXPECT_EQ(readPriceBook(bookWith(kBag, "JPY")).book.items.at(0).packs.at(0).priceMinor, 5);
    EXPECT_EQ(readPriceBook(bookWith(kBag, "KWD")).book.items.at(0).packs.at(0).priceMinor, 5400);
}

TEST(PriceBook, CoverageIsKept)
{
    const std::string item =
        R"({"item":"sealer","name":"S","unit":"l","group":"sealing","packs":[{"size":1,"price":27}],"coverage":8.5})";
    EXPECT_EQ(readPriceBook(bookWith(item)).book.items.at(0).coverageM2, 8.5);
    EXPECT_FALSE(readPriceBook(bookWith(kBag)).book.items.at(0).coverageM2.has_value());
}

TEST(PriceBook, SheetsAndCutsAreKept)
{
    const std::string item = R"({"item":"mould_board","name":"B","unit":"m2","group":"boards",)"
                             R"("packs":[{"size":3.125,"price":39,"sheet":[2500,1250]},{"size":1,"price":15}],)"
                             R"("cuts":{"free":5,"price":0.8}})";
    const PriceBookReading reading = readPriceBook(bookWith(item));
    ASSERT_TRUE(reading.problems.empty());
    const PricedItem& board = reading.book.items.at(0);
    EXPECT_EQ(board.packs.at(0).sheet, (Size{2500.0, 1250.0}));
    EXPECT_FALSE(board.packs.at(1).sheet.has_value());
    ASSERT_TRUE(board.cuts.has_value());
    EXPECT_EQ(board.cuts->freeASheet, 5);
    EXPECT_EQ(board.cuts->priceMinor, 80);
    EXPECT_FALSE(readPriceBook(bookWith(kBag)).book.items.at(0).cuts.has_value());
}

TEST(PriceBook, ASheetThatIsNotItsSizeAndCutsWithoutPriceAreProblems)
{
    const std::string item = R"({"item":"a","name":"A","unit":"m2","group":"boards",)"
                             R"("packs":[{"size":3,"price":39,"sheet":[2500,1250]},{"size":3,"price":1,"sheet":[1]},)"
                             R"({"size":3,"price":1,"sheet":[0,"x"]}],"cuts":{"free":-1}})";
    EXPECT_THAT(pointersOf(readPriceBook(bookWith(item))),
                testing::UnorderedElementsAre("/items/0/packs/0/sheet", "/items/0/packs/1/sheet", "/items/0/packs/2/sheet",
                                              "/items/0/cuts/free", "/items/0/cuts/price"));
}

TEST(PriceBook, TellsAllProblemsAtOnce)
{
    const PriceBookReading reading = readPriceBook(R"({"yardprices":1,"title":"","currency":"euro","items":[
        {"item":"a","name":"A","unit":"stone","group":"concrete","packs":[]},
        {"item":"a","name":"A","unit":"kg","group":"concrete","packs":[{"size":0,"price":-1},{"size":"x"}]},
        7, {"item":"b","name":"B","unit":"kg","group":"steel","packs":[{"size":1,"price":1}],"coverage":0}]})");
    EXPECT_TRUE(reading.book.items.empty());
    EXPECT_THAT(pointersOf(reading),
                testing::UnorderedElementsAre("/title", "/currency", "/items/0/unit", "/items/0/packs", "/items/1/item",
                                              "/items/1/packs/0/size", "/items/1/packs/0/price",
                                              "/items/1/packs/1/size", "/items/1/packs/1/price", "/items/2",
                                              "/items/3/coverage"));
}

TEST(PriceBook, SyntaxProblemSaysLineAndColumn)
{
    const PriceBookReading reading = readPriceBook("{\"yardprices\": 1,\n  \"title\" \"t\"}");
    ASSERT_EQ(reading.problems.size(), 1u);
    EXPECT_EQ(reading.problems[0].code, "prices_not_json");
    EXPECT_EQ(std::get<double>(reading.problems[0].values.at("line")), 2.0);
}

TEST(PriceBook, RefusesNewerVersionsAndOtherFiles)
{
    EXPECT_EQ(readPriceBook(R"({"yardprices":2,"title":"t","currency":"EUR","items":[]})").problems.at(0).code,
              "prices_newer");
    EXPECT_EQ(readPriceBook("[]").problems.at(0).code, "prices_wrong");
    EXPECT_EQ(readPriceBook("").problems.at(0).code, "prices_not_json");
    EXPECT_EQ(readPriceBook("\xff\xfe").problems.at(0).code, "prices_not_json");
    EXPECT_EQ(readPriceBook(std::string(200000, '[')).problems.at(0).code, "prices_not_json");
    EXPECT_FALSE(readPriceBook(R"({"yardplan":1})").problems.empty());
}

TEST(PriceBook, DamagedFilesGiveABookOrProblemsNeverBoth)
{
    std::mt19937 random(99);
    const std::string whole(exampleBookText());
    int refused = 0;
    for (int round = 0; round < 2000; ++round) {
        std::string text = whole.substr(0, round % 3 == 0 ? random() % whole.size() : whole.size());
        for (int i = 0; i < 3 && !text.empty(); ++i) text[random() % text.size()] = static_cast<char>(random() % 256);
        const PriceBookReading reading = readPriceBook(text);
        EXPECT_EQ(reading.problems.empty(), !reading.book.items.empty());
        refused += reading.problems.empty() ? 0 : 1;
        for (const Finding& problem : reading.problems) EXPECT_FALSE(problem.code.empty());
    }
    EXPECT_GT(refused, 1000);
}

// ISO 4217:2015, list one.
TEST(Currency, MinorDigitsOfTheStandard)
{
    EXPECT_EQ(minorDigits("EUR"), 2);
    EXPECT_EQ(minorDigits("USD"), 2);
    EXPECT_EQ(minorDigits("CHF"), 2);
    EXPECT_EQ(minorDigits("JPY"), 0);
    EXPECT_EQ(minorDigits("KRW"), 0);
    EXPECT_EQ(minorDigits("XPF"), 0);
    EXPECT_EQ(minorDigits("ISK"), 0);
    EXPECT_EQ(minorDigits("KWD"), 3);
    EXPECT_EQ(minorDigits("TND"), 3);
    EXPECT_EQ(minorDigits("CLF"), 4);
}

TEST(Currency, RoundsHalfAwayFromZeroAndNeverOverflows)
{
    EXPECT_EQ(toMinor(5.40, "EUR"), 540);
    EXPECT_EQ(toMinor(0.125, "EUR"), 13);
    EXPECT_EQ(toMinor(-0.125, "EUR"), -13);
    EXPECT_EQ(toMinor(1234.5, "JPY"), 1235);
    EXPECT_EQ(toMinor(std::nan(""), "EUR"), 0);
    EXPECT_GT(toMinor(1e300, "EUR"), 1000000000000000000);
    EXPECT_EQ(fromMinor(540, "EUR"), 5.40);
    EXPECT_EQ(plainMoney(-5, "EUR"), "-0.05");
    EXPECT_EQ(plainMoney(5400, "KWD"), "5.400");
    EXPECT_EQ(plainMoney(5400, "JPY"), "5400");
    EXPECT_EQ(rescaleMinor(540, "XXX", "JPY"), 5);
    EXPECT_EQ(rescaleMinor(550, "XXX", "JPY"), 6);
    EXPECT_EQ(rescaleMinor(540, "XXX", "KWD"), 5400);
    EXPECT_EQ(rescaleMinor(540, "XXX", "EUR"), 540);
}

}  // namespace
}  // namespace yardcast
