#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cstdlib>
#include <random>

#include <nlohmann/json.hpp>

#include "tests/e2e/cli_process.h"

namespace yardcast::e2e {
namespace {

using Json = nlohmann::json;
using testing::HasSubstr;

/// Exit code 2, a reason, and nothing on standard output.
void expectRefused(const Outcome& outcome, const std::string& what)
{
    EXPECT_TRUE(outcome.ended) << what;
    EXPECT_EQ(outcome.code, 2) << what;
    EXPECT_EQ(outcome.out, "") << what;
    EXPECT_NE(outcome.err, "") << what;
}

TEST(Damage, WhatIsNoPlanIsRefusedByEveryCommand)
{
    const Folder folder;
    const std::vector<std::pair<std::string, std::string>> files{
        {"empty", ""},          {"text", "Once upon a time"},   {"list", "[]"},
        {"other", "{\"a\": 1}"}, {"newer", R"({"yardplan": 2})"}, {"deep", std::string(100000, '[')},
        {"bytes", "\xff\xfe\x00"}, {"cut", smallPlan().substr(0, smallPlan().size() / 2)}};
    for (const auto& [name, text] : files) {
        const std::string path = folder.write(name + ".yardplan", text);
        expectRefused(run({"assess", path, "--json", "--no-remedies"}), name);
        expectRefused(run({"check", path}), name);
        expectRefused(run({"list", path, "--csv"}), name);
        expectRefused(run({"print", path, "-o", folder.path(name + ".pdf")}), name);
        expectRefused(run({"draw", path, "--view", "plan", "-o", folder.path(name + ".svg")}), name);
    }
}

TEST(Damage, FilesThatCannotBeRead)
{
    const Folder folder;
    expectRefused(run({"check", folder.path("missing.yardplan")}), "missing");
    expectRefused(run({"check", folder.path("")}), "a folder");
}

TEST(Damage, SyntaxIsReportedByLineAndColumn)
{
    const Folder folder;
    const Outcome outcome = run({"check", folder.write("x.yardplan", "{\"yardplan\": 1,\n \"title\" \"x\"}")});
    expectRefused(outcome, "syntax");
    EXPECT_THAT(outcome.err, HasSubstr("line 2"));
}

TEST(Damage, AllProblemsAtOnceByPointerWhatAndMend)
{
    const Folder folder;
    Json plan = Json::parse(smallPlan());
    plan["crew"]["people"] = "two";
    plan["parts"][0].erase("outline");
    plan["parts"][1]["cast"] = "sideways";
    plan["mixes"][0]["bag"]["yield_l"] = true;
    const Outcome outcome = run({"check", folder.write("x.yardplan", plan.dump())});
    expectRefused(outcome, "four problems");
    EXPECT_THAT(outcome.err, HasSubstr("/crew/people"));
    EXPECT_THAT(outcome.err, HasSubstr("/parts/0/outline"));
    EXPECT_THAT(outcome.err, HasSubstr("/parts/1/cast"));
    EXPECT_THAT(outcome.err, HasSubstr("sideways"));
    EXPECT_THAT(outcome.err, HasSubstr("flat, upright"));
    EXPECT_THAT(outcome.err, HasSubstr("/mixes/0/bag/yield_l"));
    EXPECT_EQ(std::count(outcome.err.begin(), outcome.err.end(), '\n'), 4);
}

TEST(Damage, BytesChangedAtRandomNeverCrash)
{
    const Folder folder;
    std::mt19937 random(4711);
    const std::vector<std::string> samples = samplePaths();
    // As tests of random plans do: fewer where each takes long.
    const char* every = std::getenv("YARDCAST_EVERY");
    const int rounds = 120 / std::max(1, every ? std::atoi(every) : 1);
    int refused = 0;
    for (int round = 0; round < rounds; ++round) {
        std::string text = readText(samples[static_cast<std::size_t>(round) % samples.size()]);
        const int changes = 1 + round % 5;
        for (int i = 0; i < changes; ++i) {
            const auto at = std::uniform_int_distribution<std::size_t>(0, text.size() - 1)(random);
            switch (random() % 3) {
            case 0: text[at] = static_cast<char>(random() % 256); break;
            case 1: text.erase(at, 1 + random() % 40); break;
            default: text.insert(at, std::string(1 + random() % 3, "0-9.e[{\"}]"[random() % 10])); break;
            }
        }
        const std::string path = folder.write("x.yardplan", text);
        const Outcome outcome = run({"check", path});
        ASSERT_TRUE(outcome.ended) << text;
        ASSERT_GE(outcome.code, 0) << text;
        ASSERT_LE(outcome.code, 2) << text;
        if (outcome.code == 2) {
            ++refused;
            EXPECT_NE(outcome.err, "");
        }
    }
    EXPECT_GT(refused, rounds / 6);
}

TEST(Damage, AbsurdNumbersAreSaidAndComputedAround)
{
    const Folder folder;
    for (const double absurd : {-1e9, 0.0, 1e9, 1e300}) {
        for (const char* pointer :
             {"/parts/0/thickness_mm", "/parts/0/outline/1/0", "/parts/1/length_mm", "/parts/1/at/0",
              "/mixes/0/bag/yield_l", "/mixes/0/bag/mass_kg", "/mixes/0/silica_fume_percent", "/crew/lift_limit_kg",
              "/parts/0/top_mm"}) {
            Json plan = Json::parse(smallPlan());
            plan[Json::json_pointer(pointer)] = absurd;
            const std::string path = folder.write("x.yardplan", plan.dump());
            const Outcome outcome = run({"assess", path, "--json", "--no-remedies"});
            ASSERT_TRUE(outcome.ended) << pointer << " " << absurd;
            ASSERT_EQ(outcome.code, 0) << pointer << " " << absurd << outcome.err;
            ASSERT_TRUE(Json::accept(outcome.out)) << pointer << " " << absurd;
            const Json answer = Json::parse(outcome.out);
            for (const Json& finding : answer.at("findings")) {
                const auto text = finding.at("text").get<std::string>();
                EXPECT_EQ(text.find('?'), std::string::npos) << text;
                EXPECT_LT(text.size(), 400u) << text;
            }
        }
    }
}

TEST(Damage, ABadPriceBookIsRefusedWithItsPointer)
{
    const Folder folder;
    const std::string plan = folder.write("x.yardplan", smallPlan());
    const Outcome outcome = run({"list", plan, "--prices", folder.write("x.yardprices", R"({"yardprices": 1,
        "title": "t", "currency": "EUR", "items": [{"item": "a", "name": "A", "unit": "kg", "group": "steel"}]})")});
    expectRefused(outcome, "prices");
    EXPECT_THAT(outcome.err, HasSubstr("/items/0/packs"));
    expectRefused(run({"list", plan, "--prices", folder.path("none.yardprices")}), "no prices");
}

}  // namespace
}  // namespace yardcast::e2e
