#include "core/io/cut_list.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <random>

#include <nlohmann/json.hpp>

using namespace yardcast;

namespace {

std::vector<std::string> pointersOf(const std::vector<Finding>& problems)
{
    std::vector<std::string> out;
    for (const Finding& problem : problems) out.push_back(problem.code + " " + problem.pointer);
    return out;
}

}  // namespace

TEST(CutList, BarsAsInTheContract)
{
    const CutListReading reading = readCutList(
        R"({"kind":"bar","saw_mm":3,"stock":[{"length_mm":3000,"price":7.20},{"length_mm":900,"count":2}],)"
        R"("pieces":[{"name":"leg","length_mm":1800,"count":4},{"length_mm":512.5}]})");
    ASSERT_TRUE(reading.problems.empty());
    const BarCutting want{3.0, 0.0, {{3000.0, 7.2, {}}, {900.0, 0.0, 2}}, {{"leg", 1800.0, 4}, {"", 512.5, 1}}};
    ASSERT_TRUE(std::holds_alternative<BarCutting>(reading.list));
    EXPECT_EQ(std::get<BarCutting>(reading.list), want);
}

TEST(CutList, SheetsAsInTheContract)
{
    const CutListReading reading = readCutList(
        R"({"kind":"sheet","saw_mm":4,"trim_mm":5,"stock":[{"size":[2500,1250],"price":39.00}],)"
        R"("pieces":[{"name":"base","size":[1800,620],"count":1,"turn":false}]})");
    ASSERT_TRUE(reading.problems.empty());
    SheetCutting want;
    want.sawMm = 4.0;
    want.trimMm = 5.0;
    want.stock = {{{2500.0, 1250.0}, 39.0, {}}};
    want.pieces = {{"base", {1800.0, 620.0}, 1, false}};
    ASSERT_TRUE(std::holds_alternative<SheetCutting>(reading.list));
    EXPECT_EQ(std::get<SheetCutting>(reading.list), want);
}

TEST(CutList, AllProblemsAtOnceWithTheirPlaces)
{
    const CutListReading reading = readCutList(
        R"({"kind":"bar","saw_mm":-1,"stock":[{"length_mm":0,"price":"7"},5],)"
        R"("pieces":[{"name":7,"length_mm":1e9,"count":0},{"count":1.5}]})");
    EXPECT_THAT(pointersOf(reading.problems),
                testing::ElementsAre("cuts_wrong /saw_mm", "cuts_wrong /stock/0/length_mm", "cuts_wrong /stock/0/price",
                                     "cuts_wrong /stock/1", "cuts_wrong /pieces/0/name",
                                     "cuts_wrong /pieces/0/length_mm", "cuts_wrong /pieces/0/count",
                                     "cuts_missing /pieces/1/length_mm", "cuts_wrong /pieces/1/count"));
    EXPECT_THAT(pointersOf(readCutList(R"({"kind":"sheet","stock":[],"pieces":[{"size":[1]}]})").problems),
                testing::ElementsAre("cuts_wrong /stock", "cuts_wrong /pieces/0/size"));
    EXPECT_THAT(pointersOf(readCutList(R"({"kind":"tube"})").problems), testing::ElementsAre("cuts_wrong /kind"));
    EXPECT_THAT(pointersOf(readCutList("{}").problems), testing::ElementsAre("cuts_missing /kind"));
    EXPECT_THAT(pointersOf(readCutList("[]").problems), testing::ElementsAre("cuts_wrong "));
    EXPECT_THAT(pointersOf(readCutList("{\"kind\":").problems), testing::ElementsAre("json_syntax "));
}

TEST(CutList, NumbersThatAreNoneOrTooManyAreSaid)
{
    EXPECT_FALSE(readCutList(R"({"kind":"bar","stock":[{"length_mm":NaN}],"pieces":[]})").problems.empty());
    EXPECT_FALSE(readCutList(R"({"kind":"bar","stock":[{"length_mm":1e999}],"pieces":[]})").problems.empty());
    const CutListReading many = readCutList(
        R"({"kind":"bar","stock":[{"length_mm":100}],)"
        R"("pieces":[{"length_mm":10,"count":900000},{"length_mm":9,"count":900000}]})");
    EXPECT_THAT(pointersOf(many.problems), testing::ElementsAre("cuts_too_many /pieces"));
}

TEST(CutList, TheAnswerOfBars)
{
    const BarCutting list{
        3.0, 0.0, {{3000.0, 7.2, {}}}, {{"leg", 1800.0, 4}, {"rail", 1150.0, 2}, {"mast", 4000.0, 1}}};
    const auto json = nlohmann::json::parse(cutAnswer(list, cutBars(list)));
    EXPECT_EQ(json["count"], 4);
    EXPECT_DOUBLE_EQ(json["price"].get<double>(), 28.8);
    EXPECT_LE(json["bound"].get<double>(), 28.8);
    EXPECT_TRUE(json["proven"].get<bool>());
    EXPECT_FALSE(json.contains("gap_percent"));
    EXPECT_TRUE(json.contains("bound_count"));
    ASSERT_EQ(json["plan"].size(), 2U);
    EXPECT_EQ(json["plan"][0]["stock"], 0);
    EXPECT_EQ(json["plan"][0]["times"], 2);
    EXPECT_EQ(json["plan"][0]["pieces"][0], (nlohmann::json{{"name", "leg"}, {"length_mm", 1800.0}}));
    EXPECT_EQ(json["unplaced"][0], (nlohmann::json{{"name", "mast"}, {"length_mm", 4000.0}, {"count", 1}}));
    // 3000 - 1800 - 3 - 1150 - 3 = 44 and 3000 - 1800 - 3 = 1197, twice each.
    EXPECT_EQ(json["remainders"],
              (nlohmann::json{{{"length_mm", 1197.0}, {"count", 2}}, {{"length_mm", 44.0}, {"count", 2}}}));
}

TEST(CutList, DamagedTextsGiveProblemsOrAListThatCanBeCut)
{
    const std::string bars =
        R"({"kind":"bar","saw_mm":3,"trim_mm":2,"stock":[{"length_mm":3000,"price":7.20},{"length_mm":900,)"
        R"("count":2}],"pieces":[{"name":"leg","length_mm":1800,"count":4},{"length_mm":512.5}]})";
    const std::string sheets =
        R"({"kind":"sheet","saw_mm":4,"stock":[{"size":[2500,1250],"price":39}],"cut_price":1,)"
        R"("pieces":[{"name":"base","size":[1800,620],"count":1,"turn":false},{"size":[90,80]}]})";
    std::mt19937 random(7);
    int refused = 0;
    int cut = 0;
    for (int round = 0; round < 3000; ++round) {
        std::string text = round % 2 == 0 ? bars : sheets;
        for (int i = 0; i < 2; ++i) {
            const char digit = static_cast<char>('0' + random() % 10);
            const char any = static_cast<char>(random() % 256);
            text[random() % text.size()] = round % 3 == 0 ? digit : any;
        }
        const CutListReading reading = readCutList(text);
        if (!reading.problems.empty()) {
            ++refused;
            continue;
        }
        if (const auto* list = std::get_if<BarCutting>(&reading.list)) {
            ASSERT_TRUE(barTroubles(*list).empty()) << text;
            ++cut;
        } else {
            ASSERT_TRUE(sheetTroubles(std::get<SheetCutting>(reading.list)).empty()) << text;
            ++cut;
        }
    }
    EXPECT_GT(refused, 500);
    EXPECT_GT(cut, 100);
}
