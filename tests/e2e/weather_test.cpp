#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>
#include <vector>

#include <nlohmann/json.hpp>

#include "tests/e2e/cli_process.h"

namespace yardcast::e2e {
namespace {

using Json = nlohmann::json;
using testing::HasSubstr;

Outcome weatherOf(const std::string& air, const std::string& concrete, const std::string& humidity,
                  const std::string& wind)
{
    return run({"weather", "--air", air, "--concrete", concrete, "--humidity", humidity, "--wind", wind});
}

/// Uno (1998), worked out independently of the program.
TEST(WeatherCommand, AnswersInJson)
{
    const Outcome outcome = weatherOf("20", "25", "60", "10");
    EXPECT_EQ(outcome.code, 0) << outcome.err;
    const Json json = Json::parse(outcome.out);
    EXPECT_NEAR(json.at("evaporation_kg_m2_h").get<double>(), 0.475, 0.0005);
    EXPECT_EQ(json.at("limit_kg_m2_h"), 1.0);
    EXPECT_FALSE(json.at("over_limit").get<bool>());
    EXPECT_NEAR(json.at("working_minutes").get<double>(), 75 / 1.4142135, 1e-3);
    EXPECT_TRUE(Json::parse(weatherOf("38", "35", "30", "24").out).at("over_limit").get<bool>());
    const Json frost = Json::parse(weatherOf("-3.5", "8", "90", "0").out);
    EXPECT_NEAR(frost.at("evaporation_kg_m2_h").get<double>(), 0.0545, 0.0001);
}

TEST(WeatherCommand, RefusesWhatIsNoWeather)
{
    for (const std::vector<std::string>& a : std::vector<std::vector<std::string>>{
             {"20", "25", "160", "10"},
             {"20", "25", "60", "-1"},
             {"200", "25", "60", "10"},
             {"20", "nan", "60", "10"}}) {
        const Outcome outcome = weatherOf(a[0], a[1], a[2], a[3]);
        EXPECT_EQ(outcome.code, 2);
        EXPECT_EQ(outcome.out, "");
        EXPECT_THAT(outcome.err, HasSubstr("--"));
    }
    EXPECT_EQ(run({"weather", "--air", "20"}).code, 2);
    EXPECT_EQ(weatherOf("warm", "25", "60", "10").code, 2);
}

Outcome gainOf(const std::string& log, const std::string& name = "C30/37", const std::string& speed = "N")
{
    return run({"gain", "--class", name, "--speed", speed, "--log", log});
}

/// 24 h at 12, at 18 and at 20 deg C: EN 1992-1-1 eq. B.10 gives 2.587 d; C30/37 has 21.44 (N) and 24.04 MPa (R), worked
/// out independently. The end of the log is the hour of its last row.
TEST(GainCommand, AnswersInJson)
{
    const Folder folder;
    const std::string log = folder.write("log.csv", "hours,c\n0,12\n24,18\n48,20\n72,21\n");
    const Outcome outcome = gainOf(log);
    EXPECT_EQ(outcome.code, 0) << outcome.err;
    const Json json = Json::parse(outcome.out);
    EXPECT_NEAR(json.at("equivalent_age_d").get<double>(), 2.587, 0.0005);
    EXPECT_NEAR(json.at("mean_strength_mpa").get<double>(), 21.44, 0.005);
    EXPECT_NEAR(json.at("share").get<double>(), 21.44 / 38, 0.0002);
    EXPECT_EQ(json.at("hours"), 72.0);
    EXPECT_NEAR(json.at("maturity_c_h").get<double>(), 1920, 1e-6);
    EXPECT_NEAR(json.at("equivalent_age_c1074_h").get<double>(), 60.22, 0.005);
    EXPECT_NEAR(Json::parse(gainOf(log, "C30/37", "R").out).at("mean_strength_mpa").get<double>(), 24.04, 0.005);
    EXPECT_LT(Json::parse(gainOf(log, "C30/37", "S").out).at("mean_strength_mpa").get<double>(), 21.0);
}

TEST(GainCommand, ReadsTheTablesOfTheContinent)
{
    const Folder folder;
    const std::string log = folder.write(
        "log.csv", "\xEF\xBB\xBF# logger 3\r\nh;\xC2\xB0""C\r\n\r\n0;12,0\r\n24;18,0\r\n48;20,0\r\n72;21,0\r\n");
    EXPECT_NEAR(Json::parse(gainOf(log).out).at("equivalent_age_d").get<double>(), 2.587, 0.0005);
    const Json one = Json::parse(gainOf(folder.write("one.csv", "0,12\n")).out);
    EXPECT_EQ(one.at("equivalent_age_d"), 0.0);
    EXPECT_EQ(one.at("mean_strength_mpa"), 0.0);
}

TEST(GainCommand, NamesTheLineThatIsWrong)
{
    const Folder folder;
    const auto refused = [&](const std::string& text, const std::string& says) {
        const Outcome outcome = gainOf(folder.write("bad.csv", text));
        EXPECT_EQ(outcome.code, 2) << text;
        EXPECT_EQ(outcome.out, "");
        EXPECT_THAT(outcome.err, HasSubstr(says));
    };
    refused("0,12\n24,warm\n", "Line 2");
    refused("0,12\n24,13\n12,14\n", "Line 3");
    refused("0,12\n24,500\n", "Line 2");
    refused("", "no row");
    EXPECT_EQ(gainOf(folder.path("none.csv")).code, 2);
    const std::string good = folder.write("good.csv", "0,12\n24,18\n");
    EXPECT_EQ(gainOf(good, "C1000").code, 2);
    EXPECT_THAT(gainOf(good, "C1000").err, HasSubstr("C25/30"));
    EXPECT_EQ(gainOf(good, "C30/37", "fast").code, 2);
}

}  // namespace
}  // namespace yardcast::e2e
