#include "core/cutting/bar_cutting.h"

#include <gtest/gtest.h>

#include <limits>

using namespace yardcast;

TEST(BarTroubles, AllOfThemAtOnceByPlace)
{
    const double none = std::numeric_limits<double>::quiet_NaN();
    BarCutting list{-1.0, none, {{0.0, -2.0, -1}, {none, none, {}}}, {{"a", 0.0, 1}, {"b", 1e7, 0}, {"c", 100.0, 2'000'000}}};
    using Kind = BarTrouble::Kind;
    const std::vector<BarTrouble> want{
        {Kind::BadSaw, -1, -1}, {Kind::BadSaw, -1, -1}, {Kind::NoLength, 0, -1}, {Kind::BadPrice, 0, -1}, {Kind::BadCount, 0, -1},
        {Kind::NoLength, 1, -1}, {Kind::BadPrice, 1, -1}, {Kind::NoLength, -1, 0}, {Kind::TooLong, -1, 1}, {Kind::BadCount, -1, 1},
        {Kind::TooMany, -1, -1}};
    EXPECT_EQ(barTroubles(list), want);
}

TEST(BarTroubles, NothingToCutFrom)
{
    const std::vector<BarTrouble> want{{BarTrouble::Kind::NoStock, -1, -1}};
    EXPECT_EQ(barTroubles({}), want);
}
