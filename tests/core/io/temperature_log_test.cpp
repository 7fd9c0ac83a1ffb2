#include "core/io/temperature_log.h"

#include <string>

#include <gtest/gtest.h>

namespace yardcast {
namespace {

/// "0:12 24:18" of a log that reads well; the code and line of its problem otherwise.
std::string told(const std::string& text)
{
    const TemperatureLog log = readTemperatureLog(text);
    if (!log.problems.empty()) {
        EXPECT_TRUE(log.rows.empty());
        EXPECT_EQ(log.problems.size(), 1u);
        const Finding& problem = log.problems[0];
        const auto line = numberAt(problem.values, "line");
        return problem.code + (line ? " " + std::to_string(static_cast<int>(*line)) : "");
    }
    std::string all;
    for (const MeasuredTemperature& row : log.rows) {
        all += (all.empty() ? "" : " ") + std::to_string(static_cast<int>(row.h * 10)) + ":" +
               std::to_string(static_cast<int>(row.c * 10));
    }
    return all;
}

TEST(TemperatureLog, ReadsTheUsualTables)
{
    EXPECT_EQ(told("0,12\n24,18\n48,20\n"), "0:120 240:180 480:200");
    EXPECT_EQ(told("hours,deg C\n0,12.5\n0.5,18"), "0:125 5:180");
    EXPECT_EQ(told("h;c\r\n0;12,5\r\n0,5;18\r\n"), "0:125 5:180");
    EXPECT_EQ(told("0\t12,5\n1\t13.5\n"), "0:125 10:135");
    EXPECT_EQ(told("\xEF\xBB\xBFhours;temperature\n0;12\n"), "0:120");
    EXPECT_EQ(told("# from the logger\n\n  \n0 , -3\n\n# a note\n6,+4.5\n"), "0:-30 60:45");
    EXPECT_EQ(told("\"hours\",\"c\"\n\"0\",\"12\"\n"), "0:120");
    EXPECT_EQ(told("0,12,\n1,13,,\n"), "0:120 10:130");
    EXPECT_EQ(told("0,12\r1,13\r"), "0:120 10:130");
}

TEST(TemperatureLog, NamesTheFirstBadRowByItsLine)
{
    EXPECT_EQ(told("0,12\n1,warm\n2,x\n"), "log_row 2");
    EXPECT_EQ(told("0,12\n\n# note\nx,12\n"), "log_row 4");
    EXPECT_EQ(told("x,12\n"), "log_row 1");
    EXPECT_EQ(told("0,12\nhours,c\n"), "log_row 2") << "a heading stands first or not at all";
    EXPECT_EQ(told("0,5,21,3\n"), "log_row 1") << "decimal commas want semicolons";
    EXPECT_EQ(told("0\n"), "log_row 1");
    EXPECT_EQ(told("0,12\n1,nan\n"), "log_row 2");
    EXPECT_EQ(told("0,12\n1,inf\n"), "log_row 2");
    EXPECT_EQ(told("0,12\n1,1e999\n"), "log_row 2");
    EXPECT_EQ(told("0,12\n1,0x10\n"), "log_row 2");
    EXPECT_EQ(told("0;1,2,3\n"), "log_row 1");
    EXPECT_EQ(told(std::string("0,12\n1,1\0\n", 10)), "log_row 2");
}

TEST(TemperatureLog, RowsRiseAndAreTemperaturesOfConcrete)
{
    EXPECT_EQ(told("0,12\n24,13\n24,14\n"), "log_not_rising 3");
    EXPECT_EQ(told("0,12\n24,13\n12,14\n"), "log_not_rising 3");
    EXPECT_EQ(told("-1,12\n"), "log_range 1");
    EXPECT_EQ(told("0,12\n1,150\n"), "log_range 2");
    EXPECT_EQ(told("0,-60\n"), "log_range 1");
}

TEST(TemperatureLog, DegreesFahrenheitAreRefused)
{
    EXPECT_EQ(told("0,20\n1,60\n2,20\n"), "0:200 10:600 20:200");
    EXPECT_EQ(told("0,20\n1,60.1\n"), "log_fahrenheit 2");
    EXPECT_EQ(told("0,12\n1,120\n"), "log_fahrenheit 2");
    // All of a mild spring day: 50 to 59 deg F.
    const TemperatureLog mild = readTemperatureLog("0,50\n6,55\n12,59\n18,52\n");
    ASSERT_EQ(mild.problems.size(), 1u);
    EXPECT_EQ(mild.problems[0].code, "log_fahrenheit");
    EXPECT_TRUE(mild.rows.empty());
    EXPECT_EQ(numberAt(mild.problems[0].values, "value"), 55.0);
    EXPECT_NEAR(*numberAt(mild.problems[0].values, "as_c"), 12.8, 0.05);
    // Warm by its own heat for a while, as thick pieces are.
    EXPECT_EQ(told("0,20\n6,48\n12,40\n"), "0:200 60:480 120:400");
}

TEST(TemperatureLog, ReadsDatesAndTimes)
{
    EXPECT_EQ(told("2025-07-01 08:30,21\n2025-07-01 09:00,22\n2025-07-02 08:30,20"), "0:210 5:220 240:200");
    EXPECT_EQ(told("time;deg C\n2025-02-28T23:00:00;4,5\n2025-03-01T01:00:00;4\n"), "0:45 20:40");
    EXPECT_EQ(told("2024-02-28T23:00:00Z,4.5\n2024-03-01T01:00:00Z,4\n"), "0:45 260:40") << "a leap year";
    EXPECT_EQ(told("date,time,temp\n2025-07-01,08:30,21\n2025-07-01,20:30,18\n"), "0:210 120:180");
    EXPECT_TRUE(readTemperatureLog("2025-07-01 08:30,21").fromClock);
    EXPECT_FALSE(readTemperatureLog("0,21").fromClock);
    EXPECT_EQ(told("2025-07-01 08:30,21\n2025-07-01 08:00,22\n"), "log_not_rising 2");
    EXPECT_EQ(told("2025-07-01 08:30,21\n3,22\n"), "log_row 2") << "one or the other";
    EXPECT_EQ(told("0,21\n2025-07-01 08:30,22\n"), "log_row 2");
    EXPECT_EQ(told("0,20\n2025-02-30 08:30,22\n"), "log_row 2");
    EXPECT_EQ(told("0,20\n01/07/2025 08:30,22\n"), "log_row 2");
    EXPECT_EQ(told("2025-13-01 08:30,x\n1,2,3\n"), "log_row 2");
}

TEST(TemperatureLog, EmptyOnesSaySo)
{
    EXPECT_EQ(told(""), "log_empty");
    EXPECT_EQ(told("\xEF\xBB\xBF\n\n"), "log_empty");
    EXPECT_EQ(told("hours,c\n"), "log_empty");
    EXPECT_EQ(told("# only a note"), "log_empty");
}

}  // namespace
}  // namespace yardcast
