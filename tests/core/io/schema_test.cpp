#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/io/plan_fields.h"
#include "core/io/plan_file.h"
#include "core/io/plan_types.h"
#include "core/io/plan_words.h"
#include "core/purchase/price_book.h"
#include "tests/core/io/full_plan.h"
#include "tests/core/io/schema_check.h"

namespace yardcast {
namespace {

using samples::SchemaCheck;
using ::testing::ElementsAreArray;
using ::testing::IsEmpty;

Json resource(const std::string& name)
{
    const FileText file = readFile(std::string(YARDCAST_SOURCE_DIR) + "/resources/" + name);
    return Json::parse(file.text.value());
}

const Json& planSchema()
{
    static const Json schema = resource("yardplan.schema.json");
    return schema;
}

/// Goes through the keys of one object as the reader does and holds each against the schema's.
template <class T>
class KeyVisitor {
public:
    explicit KeyVisitor(const Json& object) : object_(object) {}

    const T& value() const { return value_; }
    const std::vector<std::string>& keys() const { return keys_; }
    const std::vector<std::string>& needed() const { return needed_; }

    void id(std::string T::*) { need("id"); }
    template <class M>
    bool needed(std::string_view key, M T::*)
    {
        need(key);
        hold<M>(key);
        return true;
    }
    template <class M>
    bool neededIf(bool, std::string_view key, M T::*)
    {
        keys_.emplace_back(key);
        hold<M>(key);
        return true;
    }
    template <class M>
    void defaulted(std::string_view key, M T::*member)
    {
        neededIf(false, key, member);
        holdDefault(key, T{}.*member);
    }
    template <class M>
    void optional(std::string_view key, std::optional<M> T::*)
    {
        keys_.emplace_back(key);
        hold<M>(key);
    }
    template <class M>
    void list(std::string_view key, std::vector<M> T::*member)
    {
        neededIf(false, key, member);
    }
    template <class M, class F>
    void within(M T::*, F&& visit)
    {
        KeyVisitor<M> visitor(object_);
        visit(visitor);
        for (const std::string& key : visitor.keys()) keys_.push_back(key);
    }
    void kind() { need("kind"); }
    void body() {}

private:
    void need(std::string_view key)
    {
        keys_.emplace_back(key);
        needed_.emplace_back(key);
    }

    Json property(std::string_view key) const
    {
        const auto& properties = object_.at("properties");
        if (!properties.contains(key)) {
            ADD_FAILURE() << "the schema has no " << key;
            return {};
        }
        return properties.at(std::string(key));
    }

    /// The type, and for words the words, that the reader wants.
    template <class M>
    void hold(std::string_view key)
    {
        const Json rule = property(key);
        if constexpr (std::is_enum_v<M>) {
            std::vector<std::string> words;
            for (const auto& [value, word] : wordsOf(static_cast<const M*>(nullptr))) words.emplace_back(word);
            EXPECT_EQ(rule.value("enum", std::vector<std::string>{}), words) << key;
        } else if constexpr (io_types::ListOf<M>::value) {
            EXPECT_EQ(rule.value("type", ""), "array") << key;
        } else if constexpr (std::is_same_v<M, double>) {
            EXPECT_EQ(rule.value("type", ""), "number") << key;
        } else if constexpr (std::is_same_v<M, int>) {
            EXPECT_EQ(rule.value("type", ""), "integer") << key;
        } else if constexpr (std::is_same_v<M, bool>) {
            EXPECT_EQ(rule.value("type", ""), "boolean") << key;
        } else if constexpr (std::is_same_v<M, std::string>) {
            EXPECT_EQ(rule.value("type", ""), "string") << key;
        } else if constexpr (std::is_same_v<M, Point>) {
            EXPECT_EQ(rule.value("$ref", ""), "#/$defs/point") << key;
        } else if constexpr (std::is_same_v<M, Size>) {
            EXPECT_EQ(rule.value("$ref", ""), "#/$defs/size") << key;
        } else {
            EXPECT_TRUE(rule.contains("$ref")) << key;
        }
    }

    template <class M>
    void holdDefault(std::string_view key, const M& initial)
    {
        const Json rule = property(key);
        if (!rule.contains("default")) return;
        if constexpr (std::is_enum_v<M>) {
            EXPECT_EQ(rule["default"], std::string(wordFor(initial))) << key;
        } else if constexpr (std::is_arithmetic_v<M> || std::is_same_v<M, std::string>) {
            EXPECT_EQ(rule["default"], Json(initial)) << key;
        }
    }

    const Json& object_;
    T value_{};
    std::vector<std::string> keys_;
    std::vector<std::string> needed_;
};

template <class T>
void expectSameKeys(const Json& object, std::vector<std::string> before = {}, std::vector<std::string> needed = {})
{
    KeyVisitor<T> visitor(object);
    describe(visitor, static_cast<const T*>(nullptr));
    before.insert(before.end(), visitor.keys().begin(), visitor.keys().end());
    needed.insert(needed.end(), visitor.needed().begin(), visitor.needed().end());
    std::vector<std::string> keys;
    for (const auto& [key, rule] : object.at("properties").items()) keys.push_back(key);
    EXPECT_THAT(keys, ::testing::UnorderedElementsAreArray(before));
    EXPECT_THAT(object.value("required", std::vector<std::string>{}), ElementsAreArray(needed));
}

template <class T>
void expectSameKeysInDefinition(const std::string& name)
{
    SCOPED_TRACE(name);
    expectSameKeys<T>(planSchema().at("$defs").at(name));
}

template <class T>
void expectSameKeysOfPart(const std::string& name)
{
    SCOPED_TRACE(name);
    const Json& object = planSchema().at("$defs").at(name);
    KeyVisitor<Part> part(object);
    describe(part, static_cast<const Part*>(nullptr));
    expectSameKeys<T>(object, part.keys(), part.needed());
    EXPECT_EQ(object.at("properties").at("kind").at("const"), name);
}

TEST(Schema, NamesTheKeysTheReaderKnows)
{
    expectSameKeys<Plan>(planSchema(), {"yardplan"}, {"yardplan"});
    expectSameKeysInDefinition<Ground>("ground");
    expectSameKeysInDefinition<Fixture>("fixture");
    expectSameKeysInDefinition<Site>("site");
    expectSameKeysInDefinition<Conditions>("conditions");
    expectSameKeysInDefinition<Crew>("crew");
    expectSameKeysInDefinition<Mixer>("mixer");
    expectSameKeysInDefinition<Budget>("budget");
    expectSameKeysInDefinition<Bag>("bag");
    expectSameKeysInDefinition<Fibre>("fibre");
    expectSameKeysInDefinition<Mix>("mix");
    expectSameKeysInDefinition<Rim>("rim");
    expectSameKeysInDefinition<Filler>("filler");
    expectSameKeysInDefinition<Rib>("rib");
    expectSameKeysInDefinition<Cutout>("cutout");
    expectSameKeysInDefinition<Joint>("joint");
    expectSameKeysInDefinition<Mesh>("mesh");
    expectSameKeysInDefinition<BarGroup>("bars");
    expectSameKeysInDefinition<Steel>("steel");
    expectSameKeysInDefinition<PlacedLoad>("load");
    expectSameKeysInDefinition<Lift>("lift");
    expectSameKeysInDefinition<Drip>("drip");
    expectSameKeysInDefinition<Rebate>("rebate");
    expectSameKeysInDefinition<Moulding>("mould");
    expectSameKeysInDefinition<Offcut>("offcut");
    expectSameKeysInDefinition<SharedMould>("shared_mould");
    expectSameKeysInDefinition<Core>("core");
    expectSameKeysInDefinition<Pads>("pads");
    expectSameKeysInDefinition<Batten>("batten");
    expectSameKeysInDefinition<Door>("door");
    expectSameKeysInDefinition<MeasuredOpening>("measured");
    expectSameKeysInDefinition<Assumptions>("assumptions");
    expectSameKeysInDefinition<Owned>("owned");
    expectSameKeysInDefinition<OwnPrice>("price");
    expectSameKeysOfPart<Counter>("counter");
    expectSameKeysOfPart<Support>("support");
    expectSameKeysOfPart<Panel>("panel");
    expectSameKeysOfPart<Front>("front");
    expectSameKeysOfPart<Appliance>("appliance");
}

TEST(Schema, HoldsForAWholePlan)
{
    EXPECT_THAT(SchemaCheck(planSchema()).problems(Json::parse(samples::kFullPlan)), IsEmpty());
    EXPECT_THAT(SchemaCheck(planSchema()).problems(Json::parse(R"({"yardplan": 1, "mine": 7})")), IsEmpty());
}

TEST(Schema, HoldsForTheSamples)
{
    int count = 0;
    const std::filesystem::path folder = std::string(YARDCAST_SOURCE_DIR) + "/sample-projects";
    for (const auto& entry : std::filesystem::directory_iterator(folder)) {
        if (entry.path().extension() != ".yardplan") continue;
        ++count;
        const std::string text = readFile(entry.path()).text.value();
        EXPECT_THAT(SchemaCheck(planSchema()).problems(Json::parse(text)), IsEmpty()) << entry.path();
        const PlanReading reading = readPlan(text);
        ASSERT_TRUE(reading.plan) << entry.path();
        EXPECT_EQ(Json::parse(writePlan(*reading.plan)), Json::parse(text)) << entry.path();
    }
    EXPECT_GE(count, 3);
}

TEST(Schema, RefusesWhatTheReaderRefuses)
{
    const SchemaCheck check(planSchema());
    const Json good = Json::parse(samples::kFullPlan);
    const auto refused = [&](const char* pointer, const Json& value) {
        Json bad = good;
        bad[Json::json_pointer(pointer)] = value;
        return !check.problems(bad).empty() && !readPlan(bad.dump()).plan;
    };
    EXPECT_TRUE(refused("/yardplan", 2));
    EXPECT_TRUE(refused("/title", 5));
    EXPECT_TRUE(refused("/crew/people", 1.5));
    EXPECT_TRUE(refused("/mixes/0/cement_speed", "Q"));
    EXPECT_TRUE(refused("/parts/0/kind", "pillar"));
    EXPECT_TRUE(refused("/parts/0/at", Json::array({1, 2, 3})));
    EXPECT_TRUE(refused("/parts/0/cutouts/0/shape", "circle")) << "it has no diameter";
    EXPECT_TRUE(refused("/parts/0/rim", Json::array()));
    EXPECT_TRUE(refused("/parts/1/id", ""));
    EXPECT_FALSE(refused("/parts/1/note", "mine"));
}

TEST(Schema, OfThePriceBook)
{
    const Json schema = resource("yardprices.schema.json");
    const SchemaCheck check(schema);
    const Json book = resource("example.yardprices");
    EXPECT_THAT(check.problems(book), IsEmpty());
    const Json& item = schema.at("$defs").at("item").at("properties");
    EXPECT_EQ(item.at("unit").at("enum").get<std::vector<std::string>>(), priceUnits());
    EXPECT_EQ(item.at("group").at("enum").get<std::vector<std::string>>(), priceGroups());

    const auto refused = [&](const char* pointer, const Json& value) {
        Json bad = book;
        bad[Json::json_pointer(pointer)] = value;
        return !check.problems(bad).empty() && !readPriceBook(bad.dump()).problems.empty();
    };
    EXPECT_TRUE(refused("/yardprices", 2));
    EXPECT_TRUE(refused("/items/0/unit", "barrel"));
    EXPECT_TRUE(refused("/items/0/packs", Json::array()));
    EXPECT_TRUE(refused("/items/0/packs/0/price", -1));
    EXPECT_TRUE(refused("/items/0/packs/0/size", 0));
    for (const char* key : {"item", "name", "unit", "group", "packs"}) {
        Json bad = book;
        bad["items"][0].erase(key);
        EXPECT_FALSE(check.problems(bad).empty()) << key;
        EXPECT_FALSE(readPriceBook(bad.dump()).problems.empty()) << key;
    }
}

}  // namespace
}  // namespace yardcast
