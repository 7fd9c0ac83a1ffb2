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
    EXPECT_EQ(told("0,12\n1,120\n"), "log_range 2");
    EXPECT_EQ(told("0,-60\n"), "log_range 1");
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
