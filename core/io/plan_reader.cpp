#include "core/io/plan_reader.h"

#include <algorithm>
#include <limits>
#include <set>

#include "core/io/json_pointer.h"
#include "core/io/plan_fields.h"
#include "core/io/plan_file.h"
#include "core/io/plan_types.h"
#include "core/io/plan_words.h"

namespace yardcast {

namespace {

using namespace io_types;

constexpr std::size_t kMostProblems = 500;

class Problems {
public:
    explicit Problems(std::vector<Finding>& list) : list_(list) {}

    void add(std::string code, const JsonPath& path, std::map<std::string, FindingValue> values,
             std::vector<std::string> subjects = {})
    {
        if (list_.size() >= kMostProblems) {
            ++unlisted_;
            return;
        }
        Finding finding;
        finding.code = std::move(code);
        finding.severity = Severity::stop;
        finding.subjects = std::move(subjects);
        finding.pointer = path.pointer();
        finding.values = std::move(values);
        list_.push_back(std::move(finding));
    }

    void wrongType(const JsonPath& path, std::string expected, const Json& found)
    {
        add("wrong_type", path, {{"expected", std::move(expected)}, {"found", jsonTypeWord(found)}});
    }

    std::size_t count() const { return list_.size(); }

    /// Problems since `first` that name nobody are about `id`.
    void about(std::size_t first, const std::string& id)
    {
        for (std::size_t i = first; i < list_.size(); ++i) {
            if (list_[i].subjects.empty()) list_[i].subjects.push_back(id);
        }
    }

    void close()
    {
        if (unlisted_ == 0) return;
        Finding finding;
        finding.code = "more_problems";
        finding.severity = Severity::stop;
        finding.values["count"] = static_cast<double>(unlisted_);
        list_.push_back(std::move(finding));
    }

private:
    std::vector<Finding>& list_;
    std::size_t unlisted_ = 0;
};

/// One JSON object on its way into a value.
struct OpenObject {
    Problems& problems;
    Json& json;
    const JsonPath& path;
    std::vector<std::string_view> known;
    std::vector<std::string_view> children;
    std::optional<PartKind> kind;

    Json* find(std::string_view key)
    {
        known.push_back(key);
        const auto found = json.find(key);
        return found == json.end() ? nullptr : &*found;
    }

    /// What is left once everything was read; empties the object.
    FileSource source()
    {
        const auto in = [](const std::vector<std::string_view>& keys, const std::string& key) {
            return std::find(keys.begin(), keys.end(), key) != keys.end();
        };
        Json whole = Json::object();
        Json unknown = Json::object();
        auto& wholeMembers = whole.get_ref<Json::object_t&>();
        auto& unknownMembers = unknown.get_ref<Json::object_t&>();
        for (auto& [key, member] : json.get_ref<Json::object_t&>()) {
            if (!in(known, key)) unknownMembers.emplace_back(key, member);
            if (in(children, key)) {
                wholeMembers.emplace_back(key, nullptr);
            } else {
                wholeMembers.emplace_back(key, std::move(member));
            }
        }
        FileSource source;
        source.object = std::make_shared<const Json>(std::move(whole));
        if (!unknown.empty()) source.unknown = std::make_shared<const Json>(std::move(unknown));
        return source;
    }
};

/// The word for what a member of this type looks like in the file.
template <class T>
std::string expectedWord()
{
    if constexpr (std::is_same_v<T, double>) {
        return "number";
    } else if constexpr (std::is_same_v<T, int>) {
        return "whole_number";
    } else if constexpr (std::is_same_v<T, bool>) {
        return "yes_no";
    } else if constexpr (std::is_same_v<T, std::string> || std::is_enum_v<T>) {
        return "text";
    } else if constexpr (std::is_same_v<T, Point> || std::is_same_v<T, Size>) {
        return "pair";
    } else if constexpr (ListOf<T>::value) {
        return "list";
    } else {
        return "object";
    }
}

template <class T>
class ObjectReader;

bool readValue(Problems& problems, Json& json, const JsonPath& path, double& into)
{
    if (!json.is_number()) {
        problems.wrongType(path, "number", json);
        return false;
    }
    into = json.get<double>();
    return true;
}

bool readValue(Problems& problems, Json& json, const JsonPath& path, int& into)
{
    const double value = json.is_number() ? json.get<double>() : 0.5;
    if (value != std::floor(value) || std::abs(value) > std::numeric_limits<int>::max()) {
        problems.wrongType(path, "whole_number", json);
        return false;
    }
    into = static_cast<int>(value);
    return true;
}

bool readValue(Problems& problems, Json& json, const JsonPath& path, bool& into)
{
    if (!json.is_boolean()) {
        problems.wrongType(path, "yes_no", json);
        return false;
    }
    into = json.get<bool>();
    return true;
}

bool readValue(Problems& problems, Json& json, const JsonPath& path, std::string& into)
{
    if (!json.is_string()) {
        problems.wrongType(path, "text", json);
        return false;
    }
    into = json.get_ref<const std::string&>();
    return true;
}

bool readPair(Problems& problems, Json& json, const JsonPath& path, double& first, double& second)
{
    if (!json.is_array() || json.size() != 2) {
        problems.wrongType(path, "pair", json);
        return false;
    }
    const bool one = readValue(problems, json[0], path.at(std::size_t{0}), first);
    const bool two = readValue(problems, json[1], path.at(std::size_t{1}), second);
    return one && two;
}

bool readValue(Problems& problems, Json& json, const JsonPath& path, Point& into)
{
    return readPair(problems, json, path, into.x, into.y);
}

bool readValue(Problems& problems, Json& json, const JsonPath& path, Size& into)
{
    return readPair(problems, json, path, into.width, into.depth);
}

template <class E>
    requires std::is_enum_v<E>
bool readValue(Problems& problems, Json& json, const JsonPath& path, E& into)
{
    std::string word;
    if (!readValue(problems, json, path, word)) return false;
    std::string expected;
    for (const auto& [value, name] : wordsOf(static_cast<const E*>(nullptr))) {
        if (name == word) {
            into = value;
            return true;
        }
        if (!expected.empty()) expected += ", ";
        expected += name;
    }
    problems.add("unknown_word", path, {{"found", word}, {"expected", expected}});
    return false;
}

template <class T>
    requires isObject<T>
bool readValue(Problems& problems, Json& json, const JsonPath& path, T& into);

template <class T>
bool readValue(Problems& problems, Json& json, const JsonPath& path, std::vector<T>& into)
{
    if (!json.is_array()) {
        problems.wrongType(path, "list", json);
        return false;
    }
    into.clear();
    into.resize(json.size());
    bool good = true;
    for (std::size_t i = 0; i < json.size(); ++i) {
        if (!readValue(problems, json[i], path.at(i), into[i])) good = false;
    }
    return good;
}

template <class T>
class ObjectReader {
public:
    ObjectReader(OpenObject& object, T& value) : object_(object), value_(value) {}

    const T& value() const { return value_; }

    template <class M>
    bool needed(std::string_view key, M T::*member)
    {
        return neededIf(true, key, member);
    }

    void id(std::string T::*member)
    {
        if (!needed("id", member) || !(value_.*member).empty()) return;
        object_.problems.add("id_empty", object_.path.at("id"), {});
    }

    template <class M>
    bool neededIf(bool condition, std::string_view key, M T::*member)
    {
        if (Json* json = find<M>(key)) return readValue(object_.problems, *json, object_.path.at(key), value_.*member);
        if (condition) {
            object_.problems.add("missing_key", object_.path.at(key),
                                 {{"key", std::string(key)}, {"expected", expectedWord<M>()}});
        }
        return false;
    }

    template <class M>
    void defaulted(std::string_view key, M T::*member)
    {
        neededIf(false, key, member);
    }

    template <class M>
    void list(std::string_view key, std::vector<M> T::*member)
    {
        neededIf(false, key, member);
    }

    template <class M>
    void optional(std::string_view key, std::optional<M> T::*member)
    {
        if (Json* json = find<M>(key)) {
            readValue(object_.problems, *json, object_.path.at(key), (value_.*member).emplace());
        }
    }

    template <class M, class F>
    void within(M T::*member, F&& visit)
    {
        ObjectReader<M> reader(object_, value_.*member);
        visit(reader);
    }

    void kind()
    {
        struct Kind {
            PartKind kind;
        } read{};
        if (ObjectReader<Kind>(object_, read).needed("kind", &Kind::kind)) object_.kind = read.kind;
    }

    void body()
    {
        if (!object_.kind) return;
        switch (*object_.kind) {
        case PartKind::counter: return bodyOf<Counter>();
        case PartKind::support: return bodyOf<Support>();
        case PartKind::panel: return bodyOf<Panel>();
        case PartKind::front: return bodyOf<Front>();
        case PartKind::appliance: return bodyOf<Appliance>();
        }
    }

private:
    template <class M>
    Json* find(std::string_view key)
    {
        Json* json = object_.find(key);
        if (json && hasOwnSource<M>()) object_.children.push_back(key);
        return json;
    }

    template <class Body>
    void bodyOf()
    {
        Body& made = value_.body.template emplace<Body>();
        ObjectReader<Body> reader(object_, made);
        describe(reader, static_cast<const Body*>(nullptr));
    }

    OpenObject& object_;
    T& value_;
};

template <class T>
    requires isObject<T>
bool readValue(Problems& problems, Json& json, const JsonPath& path, T& into)
{
    if (!json.is_object()) {
        problems.wrongType(path, "object", json);
        return false;
    }
    const std::size_t before = problems.count();
    if constexpr (std::is_same_v<T, PartPtr>) {
        auto part = std::make_shared<Part>();
        readValue(problems, json, path, *part);
        into = std::move(part);
    } else {
        OpenObject object{problems, json, path, {}, {}, {}};
        ObjectReader<T> reader(object, into);
        describe(reader, static_cast<const T*>(nullptr));
        if constexpr (std::is_same_v<T, Part>) {
            if (!into.id.empty()) problems.about(before, into.id);
        }
        into.source = object.source();
    }
    return problems.count() == before;
}

/// Ids that stand twice in one list.
class IdCheck {
public:
    IdCheck(Problems& problems, JsonPath list) : problems_(problems), list_(list) {}

    void see(const std::string& id, const std::vector<std::string>& subjects)
    {
        const JsonPath element = list_.at(index_++);
        const JsonPath path = element.at("id");
        if (!id.empty() && !seen_.insert(id).second) problems_.add("id_twice", path, {{"id", id}}, subjects);
    }

private:
    Problems& problems_;
    JsonPath list_;
    std::size_t index_ = 0;
    std::set<std::string> seen_;
};

void checkIds(const Plan& plan, Problems& problems)
{
    const JsonPath root;
    IdCheck mixes(problems, root.at("mixes"));
    for (const Mix& mix : plan.mixes) mixes.see(mix.id, {mix.id});

    const JsonPath site = root.at("site");
    IdCheck fixtures(problems, site.at("fixtures"));
    for (const Fixture& fixture : plan.site.fixtures) fixtures.see(fixture.id, {});

    const JsonPath list = root.at("parts");
    IdCheck parts(problems, list);
    for (std::size_t i = 0; i < plan.parts.size(); ++i) {
        const Part& part = *plan.parts[i];
        parts.see(part.id, {part.id});
        const auto* counter = std::get_if<Counter>(&part.body);
        if (!counter) continue;
        const JsonPath element = list.at(i);
        IdCheck cutouts(problems, element.at("cutouts"));
        for (const Cutout& cutout : counter->cutouts) cutouts.see(cutout.id, {part.id});
    }
}

/// False where nothing else in the file can be trusted to mean what we think.
bool checkVersion(const Json& object, Problems& problems)
{
    const JsonPath root;
    const JsonPath path = root.at("yardplan");
    const auto found = object.is_object() ? object.find("yardplan") : object.end();
    if (!object.is_object() || found == object.end()) {
        problems.add("not_a_plan", root, {});
        return false;
    }
    if (!found->is_number()) {
        problems.wrongType(path, "whole_number", *found);
        return false;
    }
    const double version = found->get<double>();
    if (version > kPlanFileVersion) {
        problems.add("newer_version", path,
                     {{"version", version}, {"known_version", static_cast<double>(kPlanFileVersion)}});
        return false;
    }
    if (version != kPlanFileVersion) {
        problems.add("not_a_plan", path, {});
        return false;
    }
    return true;
}

}  // namespace

Plan planFromJson(Json&& object, std::vector<Finding>& list)
{
    Problems problems(list);
    Plan plan;
    if (!checkVersion(object, problems)) return plan;

    const JsonPath root;
    OpenObject open{problems, object, root, {"yardplan"}, {}, {}};
    ObjectReader<Plan> reader(open, plan);
    describe(reader, static_cast<const Plan*>(nullptr));
    plan.source = open.source();
    for (PartPtr& part : plan.parts) {
        if (!part) part = std::make_shared<Part>();
    }
    checkIds(plan, problems);
    problems.close();
    return plan;
}

Part partFromJson(Json&& object, std::vector<Finding>& list)
{
    Problems problems(list);
    Part part;
    readValue(problems, object, JsonPath{}, part);
    return part;
}

}  // namespace yardcast
