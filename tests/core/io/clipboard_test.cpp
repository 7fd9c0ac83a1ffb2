#include <gtest/gtest.h>

#include "core/io/plan_file.h"
#include "tests/core/io/full_plan.h"
#include "tests/core/plan/plan_samples.h"

namespace yardcast {
namespace {

TEST(Clipboard, PartsComeBackAsTheyWere)
{
    const Plan plan = *readPlan(samples::kFullPlan).plan;
    std::vector<Part> parts;
    for (const PartPtr& part : plan.parts) parts.push_back(*part);
    EXPECT_EQ(readParts(writeParts(parts)), parts);
    EXPECT_TRUE(readParts(writeParts({})).empty());
}

TEST(Clipboard, OtherTextGivesNothing)
{
    for (const char* text : {"", "  ", "hello", "{", "{}", "[1]", "{\"yardcast_parts\": 1}",
                             "{\"yardcast_parts\": 2, \"parts\": []}", "{\"yardcast_parts\": 1, \"parts\": [1]}",
                             "{\"yardcast_parts\": 1, \"parts\": [{\"id\": \"C1\"}]}"}) {
        EXPECT_TRUE(readParts(text).empty()) << text;
    }
    EXPECT_TRUE(readParts(samples::kFullPlan).empty()) << "a whole plan is no part";
}

}  // namespace
}  // namespace yardcast
