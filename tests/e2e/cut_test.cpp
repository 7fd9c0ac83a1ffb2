#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <fstream>
#include <set>
#include <string>
#include <vector>

#include <nlohmann/json.hpp>

#include "tests/e2e/cli_process.h"

namespace yardcast::e2e {
namespace {

using Json = nlohmann::json;
using testing::HasSubstr;

Outcome cutOf(const std::string& text)
{
    const Folder folder;
    return run({"cut", folder.write("list.json", text)});
}

// The instance of Gilmore and Gomory's rolls in Chvatal, Linear Programming, 1983, ch. 13: 453 rolls, bound 452.25.
TEST(CutCommand, PublishedRolls)
{
    const Outcome outcome =
        cutOf(R"({"kind":"bar","saw_mm":0,"stock":[{"length_mm":100,"price":2}],"pieces":[)"
              R"({"name":"a","length_mm":45,"count":97},{"name":"b","length_mm":36,"count":610},)"
              R"({"name":"c","length_mm":31,"count":395},{"name":"d","length_mm":14,"count":211}]})");
    ASSERT_EQ(outcome.code, 0) << outcome.err;
    const Json json = Json::parse(outcome.out);
    EXPECT_EQ(json.at("count"), 453);
    EXPECT_EQ(json.at("price").get<double>(), 906.0);
    EXPECT_NEAR(json.at("bound").get<double>(), 904.5, 1e-5);
    EXPECT_NEAR(json.at("bound_count").get<double>(), 452.25, 1e-5);
    EXPECT_EQ(json.at("proven"), true);
    int placed = 0;
    for (const Json& row : json.at("plan")) {
        double sum = 0.0;
        for (const Json& piece : row.at("pieces")) sum += piece.at("length_mm").get<double>();
        EXPECT_LE(sum, 100.0);
        placed += row.at("times").get<int>() * static_cast<int>(row.at("pieces").size());
    }
    EXPECT_EQ(placed, 97 + 610 + 395 + 211);
}

TEST(CutCommand, SheetsHavePlacesAndSawSteps)
{
    const Outcome outcome =
        cutOf(R"({"kind":"sheet","saw_mm":4,"trim_mm":0,"stock":[{"size":[2500,1250],"price":39.00}],)"
              R"("pieces":[{"name":"base","size":[1800,620],"count":2,"turn":true}]})");
    ASSERT_EQ(outcome.code, 0) << outcome.err;
    const Json json = Json::parse(outcome.out);
    EXPECT_EQ(json.at("count"), 1);
    EXPECT_EQ(json.at("price").get<double>(), 39.0);
    ASSERT_EQ(json.at("plan").size(), 1U);
    const Json& sheet = json.at("plan").at(0);
    ASSERT_EQ(sheet.at("pieces").size(), 2U);
    for (const Json& piece : sheet.at("pieces")) {
        EXPECT_EQ(piece.at("name"), "base");
        EXPECT_TRUE(piece.contains("at") && piece.contains("size") && piece.contains("turned"));
    }
    EXPECT_GE(sheet.at("saw").size(), 3U);
}

TEST(CutCommand, BadListsAreAnsweredWithEveryPlace)
{
    const Outcome outcome =
        cutOf(R"({"kind":"bar","stock":[{"length_mm":-5}],"pieces":[{"length_mm":0,"count":1e300}]})");
    EXPECT_EQ(outcome.code, 2);
    EXPECT_TRUE(outcome.out.empty());
    EXPECT_THAT(outcome.err, HasSubstr("/stock/0/length_mm"));
    EXPECT_THAT(outcome.err, HasSubstr("/pieces/0/length_mm"));
    EXPECT_THAT(outcome.err, HasSubstr("/pieces/0/count"));
    EXPECT_EQ(cutOf("nothing").code, 2);
    EXPECT_EQ(run({"cut", "no such list"}).code, 2);
}

TEST(CutCommand, APieceLongerThanAllStockIsSaidAndTheRestIsCut)
{
    const Outcome outcome =
        cutOf(R"({"kind":"bar","stock":[{"length_mm":1000,"price":1}],)"
              R"("pieces":[{"name":"long","length_mm":1001},{"name":"short","length_mm":400,"count":1000000}]})");
    EXPECT_EQ(outcome.code, 2);  // a million and one
    const Outcome fewer =
        cutOf(R"({"kind":"bar","stock":[{"length_mm":1000,"price":1}],)"
              R"("pieces":[{"name":"long","length_mm":1001},{"name":"short","length_mm":400,"count":999998}]})");
    ASSERT_EQ(fewer.code, 0) << fewer.err;
    const Json json = Json::parse(fewer.out);
    EXPECT_EQ(json.at("count"), 499999);
    EXPECT_EQ(json.at("unplaced").at(0).at("name"), "long");
}

TEST(SawCommand, EveryBoardOfTheMouldsIsSawnOnceAndTheListBuysThoseSheets)
{
    for (const std::string& path : samplePaths()) {
        const Outcome saw = run({"saw", path, "--json"});
        ASSERT_EQ(saw.code, 0) << saw.err;
        const Json cuts = Json::parse(saw.out);
        int sawn = 0;
        std::int64_t boardsMinor = 0;
        for (const Json& job : cuts.at("sheets")) {
            if (job.at("item") != "mould_board") continue;
            for (const Json& sheet : job.at("plan")) {
                sawn += sheet.at("times").get<int>() * static_cast<int>(sheet.at("pieces").size());
            }
            for (const Json& piece : job.at("unplaced")) sawn += piece.at("count").get<int>();
            boardsMinor += job.at("price_minor").get<std::int64_t>() - job.at("cuts_minor").get<std::int64_t>();
        }
        const Json assessment = Json::parse(run({"assess", path, "--json", "--no-remedies"}).out);
        std::int64_t boughtMinor = 0;
        for (const Json& line : assessment.at("shopping").at("lines")) {
            if (line.at("item") == "mould_board") boughtMinor = line.at("price_minor").get<std::int64_t>();
        }
        EXPECT_EQ(boughtMinor, boardsMinor) << path;
        EXPECT_EQ(assessment.at("cuts"), cuts) << path;
        // What comes out of a mould after another casting needs no boards of its own.
        std::set<std::string> later;
        std::ifstream file(path);
        const Json plan = Json::parse(file);
        for (const Json& shared : plan.value(Json::json_pointer("/mould/shared"), Json::array())) {
            const auto castings = shared.at("castings").get<std::vector<std::string>>();
            later.insert(castings.begin() + 1, castings.end());
        }
        int wanted = 0;
        for (const Json& mould : assessment.at("mould").at("boards")) {
            if (later.count(mould.at("casting").get<std::string>()) > 0) continue;
            if (mould.at("stuff") == "board") wanted += mould.at("count").get<int>();
        }
        EXPECT_GT(sawn, 0) << path;
        EXPECT_EQ(sawn, wanted) << path;
    }
}

TEST(SawCommand, TablesAndCsv)
{
    const Outcome table = run({"saw", samplePaths()[0]});
    ASSERT_EQ(table.code, 0) << table.err;
    EXPECT_THAT(table.out, HasSubstr("At the store"));
    EXPECT_THAT(table.out, HasSubstr("At home"));
    const Outcome csv = run({"saw", samplePaths()[0], "--csv"});
    ASSERT_EQ(csv.code, 0) << csv.err;
    EXPECT_THAT(csv.out, testing::StartsWith("item,stock,stock_size_mm,for,piece,kind,length_mm,width_mm,place,where,shaped\r\n"));
    EXPECT_THAT(csv.out, HasSubstr(",store,"));
}

}  // namespace
}  // namespace yardcast::e2e
