#include <gtest/gtest.h>

#include "core/io/json_text.h"
#include "core/io/plan_file.h"
#include "tests/property/random_plan.h"

namespace yardcast {
namespace {

TEST(FilesProperty, WriteThenReadIsTheIdentity)
{
    for (const auto seed : random::seeds(1000)) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        random::Source source(seed);
        const Plan plan = random::plan(source);
        const std::string text = writePlan(plan);
        const PlanReading reading = readPlan(text);
        ASSERT_TRUE(reading.plan) << reading.problems.front().code << " " << reading.problems.front().pointer;
        ASSERT_EQ(*reading.plan, plan);
        ASSERT_EQ(writePlan(*reading.plan), text);
    }
}

Json randomValue(random::Source& s, int depth)
{
    switch (s.below(depth > 0 ? 7 : 5)) {
    case 0: return nullptr;
    case 1: return s.chance(50);
    case 2: return s.between(-1000, 1000, 0.125);
    case 3: return static_cast<std::int64_t>(s.below(1'000'000));
    case 4: return std::string("text ") + std::to_string(s.below(50));
    case 5: {
        Json list = Json::array();
        for (auto n = s.below(4); n > 0; --n) list.push_back(randomValue(s, depth - 1));
        return list;
    }
    default: {
        Json object = Json::object();
        for (auto n = s.below(4); n > 0; --n) object["k" + std::to_string(n)] = randomValue(s, depth - 1);
        return object;
    }
    }
}

/// The same JSON with the keys of every object in another order and unknown ones among them.
Json shuffled(const Json& value, random::Source& s)
{
    if (value.is_array()) {
        Json list = Json::array();
        for (const Json& element : value) list.push_back(shuffled(element, s));
        return list;
    }
    if (!value.is_object()) return value;
    std::vector<std::pair<std::string, Json>> members;
    for (const auto& [key, member] : value.items()) members.emplace_back(key, shuffled(member, s));
    for (auto n = s.below(3); n > 0; --n) members.emplace_back("x~/" + std::to_string(n), randomValue(s, 3));
    for (std::size_t i = members.size(); i > 1; --i) {
        std::swap(members[i - 1], members[s.below(static_cast<std::uint32_t>(i))]);
    }
    Json object = Json::object();
    for (auto& [key, member] : members) object[key] = std::move(member);
    return object;
}

TEST(FilesProperty, OrderAndUnknownKeysSurviveAtEveryLevel)
{
    for (const auto seed : random::seeds(500)) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        random::Source source(seed);
        const Json json = shuffled(Json::parse(writePlan(random::plan(source))), source);
        const PlanReading reading = readPlan(json.dump());
        ASSERT_TRUE(reading.plan) << reading.problems.front().code << " " << reading.problems.front().pointer;
        ASSERT_EQ(Json::parse(writePlan(*reading.plan)).dump(), json.dump());
    }
}

TEST(FilesProperty, UnknownKeysSurviveEdits)
{
    for (const auto seed : random::seeds(300)) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        random::Source source(seed);
        Json json = Json::parse(writePlan(random::plan(source)));
        for (Json& part : json["parts"]) part["x_mark"] = part["id"];
        Plan plan = *readPlan(json.dump()).plan;
        for (int i = 0; i < 25; ++i) {
            std::string name;
            plan = random::edited(plan, source, name);
        }
        std::size_t marked = 0;
        const Json written = Json::parse(writePlan(plan));
        for (const Json& part : written["parts"]) marked += part.contains("x_mark");
        std::size_t fromFile = 0;
        for (const PartPtr& part : plan.parts) fromFile += part->source.unknown != nullptr;
        ASSERT_EQ(marked, fromFile);
    }
}

TEST(FilesProperty, PartsSurviveTheClipboard)
{
    for (const auto seed : random::seeds(300)) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        random::Source source(seed);
        std::vector<Part> parts;
        const Plan plan = random::plan(source);
        for (const PartPtr& part : plan.parts) parts.push_back(*part);
        ASSERT_EQ(readParts(writeParts(parts)), parts);
    }
}

}  // namespace
}  // namespace yardcast
