#include <set>

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include "tests/samples/sample_files.h"

namespace yardcast::test {
namespace {

using Json = nlohmann::json;

/// Walks a value along its schema and notes every key and every word of a choice, as "counter/rim" or
/// "cutout/shape=circle". With a null value it notes all that the schema offers.
class Walk {
public:
    explicit Walk(const Json& schema) : schema_(schema) {}

    void plan(const Json* value) { object("plan", schema_, value); }
    std::set<std::string> seen;

private:
    void object(const std::string& name, const Json& node, const Json* value)
    {
        for (const auto& [key, child] : node.at("properties").items()) {
            if (value && !value->contains(key)) continue;
            const std::string path = name + "/" + key;
            seen.insert(path);
            any(path, child, value ? &value->at(key) : nullptr);
        }
    }

    void any(const std::string& path, const Json& node, const Json* value)
    {
        if (node.contains("$ref")) {
            const std::string reference = node.at("$ref").get<std::string>();
            const std::string name = reference.substr(reference.rfind('/') + 1);
            const Json& target = schema_.at("$defs").at(name);
            if (target.contains("properties")) return object(name, target, value);
            if (target.contains("oneOf")) return oneOf(target, value);
            return any(path, target, value);
        }
        // A plan has one choice of each assumption: the samples cannot show every word of those.
        if (node.contains("enum") && path.rfind("assumptions/", 0) != 0) {
            for (const Json& word : node.at("enum")) {
                if (!value || *value == word) seen.insert(path + "=" + word.get<std::string>());
            }
        }
        if (!node.contains("items") || !node.at("items").is_object()) return;
        if (!value) return any(path, node.at("items"), nullptr);
        for (const Json& item : *value) any(path, node.at("items"), &item);
    }

    /// The five kinds of part, told apart by their word.
    void oneOf(const Json& node, const Json* value)
    {
        for (const Json& choice : node.at("oneOf")) {
            const std::string reference = choice.at("$ref").get<std::string>();
            const std::string kind = reference.substr(reference.rfind('/') + 1);
            if (!value || value->at("kind") == kind) any(kind, choice, value);
        }
    }

    const Json& schema_;
};

TEST(Samples, UseEveryKeyAndEveryWordOfTheFormat)
{
    const Json schema = Json::parse(textOf("resources/yardplan.schema.json"));
    Walk offered(schema);
    offered.plan(nullptr);
    ASSERT_TRUE(offered.seen.contains("panel/core")) << "the schema is not understood";
    ASSERT_TRUE(offered.seen.contains("fixture/kind=gas"));

    Walk used(schema);
    for (const std::string& name : kSamples) {
        const Json plan = Json::parse(sampleText(name));
        used.plan(&plan);
    }
    std::vector<std::string> unused;
    std::set_difference(offered.seen.begin(), offered.seen.end(), used.seen.begin(), used.seen.end(),
                        std::back_inserter(unused));
    EXPECT_THAT(unused, testing::IsEmpty());
}

TEST(Samples, SayThatEverythingInThemIsInvented)
{
    for (const std::string& name : kSamples) {
        const Json plan = Json::parse(sampleText(name));
        EXPECT_THAT(plan.at("about").get<std::string>(), testing::HasSubstr("prices and the appliances are invented"))
            << name;
    }
}

}  // namespace
}  // namespace yardcast::test
