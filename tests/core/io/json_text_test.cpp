#include <gtest/gtest.h>

#include "core/io/json_text.h"

namespace yardcast {
namespace {

constexpr std::size_t kRoom = 1 << 20;

std::string soleCode(const std::string& text)
{
    const JsonReading reading = readJson(text, kRoom);
    return reading.problems.size() == 1 ? reading.problems[0].code : std::to_string(reading.problems.size());
}

double number(const Finding& finding, const std::string& key) { return std::get<double>(finding.values.at(key)); }

TEST(JsonText, ReadsAWholeValue)
{
    const JsonReading reading = readJson(R"( {"b": [1, 2.5, -3e2, true, null, "x"], "a": {}} )", kRoom);
    ASSERT_TRUE(reading.complete);
    EXPECT_TRUE(reading.problems.empty());
    EXPECT_EQ(reading.value.dump(), R"({"b":[1,2.5,-300.0,true,null,"x"],"a":{}})") << "order is kept";
}

TEST(JsonText, SyntaxIsReportedWithLineAndColumn)
{
    const JsonReading reading = readJson("{\n  \"é\": 1,\n  \"b\" 2\n}", kRoom);
    EXPECT_FALSE(reading.complete);
    ASSERT_EQ(reading.problems.size(), 1u);
    EXPECT_EQ(reading.problems[0].code, "json_syntax");
    EXPECT_EQ(reading.problems[0].severity, Severity::stop);
    EXPECT_EQ(number(reading.problems[0], "line"), 3.0);
    EXPECT_EQ(number(reading.problems[0], "column"), 7.0);
}

TEST(JsonText, ColumnsCountCharactersNotBytes)
{
    const JsonReading reading = readJson("[\"éé\" x]", kRoom);
    ASSERT_EQ(reading.problems.size(), 1u);
    EXPECT_EQ(number(reading.problems[0], "column"), 7.0);
}

TEST(JsonText, EmptyAndCutTexts)
{
    EXPECT_EQ(soleCode(""), "file_empty");
    EXPECT_EQ(soleCode("   \n"), "file_empty");
    EXPECT_EQ(soleCode("{\"a\": [1, 2"), "json_syntax");
    EXPECT_EQ(soleCode("{} {}"), "json_syntax");
    EXPECT_EQ(soleCode("\"open"), "json_syntax");
    EXPECT_EQ(soleCode("NaN"), "json_syntax");
}

TEST(JsonText, ByteOrderMarkIsAccepted)
{
    const JsonReading reading = readJson("\xEF\xBB\xBF{\"a\": 1}", kRoom);
    EXPECT_TRUE(reading.complete);
    EXPECT_TRUE(reading.problems.empty());
}

TEST(JsonText, NulIsNoEndOfText)
{
    EXPECT_EQ(soleCode(std::string("{}\0", 3)), "json_syntax");
    EXPECT_EQ(soleCode(std::string("{\"a\0\": 1}", 9)), "json_syntax");
    EXPECT_EQ(soleCode("{\"a\": \"\\u0000\"}"), "0") << "an escaped one is a character like others";
}

TEST(JsonText, IllFormedUtf8)
{
    for (const char* bad :
         {"\"\xff\"", "\"\xc0\xaf\"", "\"\xed\xa0\x80\"", "\"\xf4\x90\x80\x80\"", "\"\xe2\x82\"", "\xfe"}) {
        EXPECT_EQ(soleCode(bad), "not_utf8");
    }
    EXPECT_EQ(soleCode("\"\xf0\x9f\x8d\x90 \xe2\x82\xac \xc3\xa9\""), "0");
    EXPECT_EQ(soleCode(R"("\ud800")"), "json_syntax") << "half a surrogate pair";
}

TEST(JsonText, NumbersBeyondDoubles)
{
    const JsonReading reading = readJson("{\"a\": [1,\n 1e999]}", kRoom);
    ASSERT_EQ(reading.problems.size(), 1u);
    EXPECT_EQ(reading.problems[0].code, "number_not_finite");
    EXPECT_EQ(reading.problems[0].pointer, "/a/1");
    EXPECT_EQ(number(reading.problems[0], "line"), 2.0);
    EXPECT_EQ(soleCode("1e308"), "0");
    EXPECT_EQ(soleCode("123456789012345678901234567890"), "0") << "a large whole number is read as a double";
}

TEST(JsonText, DepthIsBounded)
{
    const auto nested = [](std::size_t depth) { return std::string(depth, '[') + std::string(depth, ']'); };
    EXPECT_EQ(soleCode(nested(kDeepestJson)), "0");
    EXPECT_EQ(soleCode(nested(kDeepestJson + 1)), "too_deep");
    EXPECT_EQ(soleCode(std::string(500'000, '[')), "too_deep");
    std::string objects;
    for (int i = 0; i < 100'000; ++i) objects += "{\"a\":";
    EXPECT_EQ(soleCode(objects), "too_deep");
}

TEST(JsonText, SizeIsBounded)
{
    EXPECT_EQ(readJson("[1,2,3]", 7).problems.size(), 0u);
    const JsonReading reading = readJson("[1,2,3]", 6);
    ASSERT_EQ(reading.problems.size(), 1u);
    EXPECT_EQ(reading.problems[0].code, "too_large");
    EXPECT_EQ(number(reading.problems[0], "bytes"), 7.0);
    EXPECT_EQ(number(reading.problems[0], "limit_bytes"), 6.0);
}

TEST(JsonText, CountOfValuesIsBounded)
{
    std::string text = "[0";
    for (std::size_t i = 0; i < kMostJsonValues; ++i) text += ",0";
    text += "]";
    const JsonReading reading = readJson(text, text.size());
    ASSERT_EQ(reading.problems.size(), 1u);
    EXPECT_EQ(reading.problems[0].code, "too_many_values");
}

TEST(JsonText, KeysTwiceAreReportedAndTheRestIsRead)
{
    const JsonReading reading = readJson(R"({"a/b": 1, "c": [0, {"x~": 1, "y": 2, "x~": 3}], "a/b": 4})", kRoom);
    EXPECT_TRUE(reading.complete);
    ASSERT_EQ(reading.problems.size(), 2u);
    EXPECT_EQ(reading.problems[0].code, "key_twice");
    EXPECT_EQ(reading.problems[0].pointer, "/c/1/x~0");
    EXPECT_EQ(reading.problems[1].pointer, "/a~1b");
}

TEST(JsonText, ManyKeysTakeNoSquareOfTime)
{
    std::string text = "{";
    for (int i = 0; i < 300'000; ++i) text += "\"k" + std::to_string(i) + "\":0,";
    text += "\"last\":0}";
    EXPECT_TRUE(readJson(text, text.size()).complete);
}

TEST(JsonText, WritesShortListsOnOneLine)
{
    const Json value = Json::parse(R"({"a":[[0,0],[1,2.5]],"b":[{"c":[]}],"d":{},"e":"\u00e9\n"})");
    EXPECT_EQ(writeJson(value), "{\n  \"a\": [[0, 0], [1, 2.5]],\n  \"b\": [\n    {\n      \"c\": []\n    }\n  ],\n"
                                "  \"d\": {},\n  \"e\": \"é\\n\"\n}\n");
}

TEST(JsonText, WrapsLongListsAndReadsThemBack)
{
    Json value = Json::array();
    for (int i = 0; i < 100; ++i) value.push_back(Json::array({i * 1000, i + 0.25}));
    const std::string text = writeJson(value);
    EXPECT_EQ(Json::parse(text), value);
    EXPECT_NE(text.find("\n  [1000, 1.25],\n"), std::string::npos);
}

TEST(JsonText, IllFormedStringsDoNotStopTheWriter)
{
    EXPECT_EQ(writeJson(Json("a\xff")), "\"a\xEF\xBF\xBD\"\n");
}

}  // namespace
}  // namespace yardcast
