#include "core/io/plan_writer.h"

#include <cmath>

#include "core/io/plan_fields.h"
#include "core/io/plan_file.h"
#include "core/io/plan_types.h"
#include "core/io/plan_words.h"

namespace yardcast {

namespace {

using namespace io_types;

/// Beyond this not every whole number is a double.
constexpr double kLargestWhole = 9007199254740992.0;

/// Each writes into `slot`, which still holds what the file had there; a value that did not change keeps its token.
void writeValue(Json& slot, double value)
{
    if (slot.is_number() && slot.get<double>() == value) return;
    if (!std::isfinite(value)) {
        // JSON has no such number. What stood there before is nearer to what was meant than anything else.
        if (!slot.is_number()) slot = 0;
        return;
    }
    if (value == std::floor(value) && std::abs(value) <= kLargestWhole) {
        slot = static_cast<std::int64_t>(value);
    } else {
        slot = value;
    }
}

void writeValue(Json& slot, int value) { writeValue(slot, static_cast<double>(value)); }
void writeValue(Json& slot, bool value) { slot = value; }
void writeValue(Json& slot, const std::string& value) { slot = value; }

void writePair(Json& slot, double first, double second)
{
    if (!slot.is_array() || slot.size() != 2) slot = Json::array({nullptr, nullptr});
    writeValue(slot[0], first);
    writeValue(slot[1], second);
}
void writeValue(Json& slot, Point value) { writePair(slot, value.x, value.y); }
void writeValue(Json& slot, Size value) { writePair(slot, value.width, value.depth); }

template <class E>
    requires std::is_enum_v<E>
void writeValue(Json& slot, E value)
{
    slot = std::string(wordFor(value));
}

template <class T>
    requires isObject<T>
void writeValue(Json& slot, const T& value);

template <class T>
void writeValue(Json& slot, const std::vector<T>& values)
{
    if (!slot.is_array()) slot = Json::array();
    auto& list = slot.get_ref<Json::array_t&>();
    list.resize(values.size());
    for (std::size_t i = 0; i < values.size(); ++i) writeValue(list[i], values[i]);
}

template <class T>
class ObjectWriter {
public:
    /// `fromFile`: the object began as what a file had, so keys absent there stay absent while they say the default.
    ObjectWriter(Json& object, const T& value, bool fromFile) : object_(object), value_(value), fromFile_(fromFile) {}

    const T& value() const { return value_; }

    template <class M>
    bool needed(std::string_view key, M T::*member)
    {
        writeValue(slot(key), value_.*member);
        return true;
    }

    void id(std::string T::*member) { needed("id", member); }

    template <class M>
    bool neededIf(bool condition, std::string_view key, M T::*member)
    {
        if (condition || has(key) || !(value_.*member == initial().*member)) needed(key, member);
        return true;
    }

    template <class M>
    void defaulted(std::string_view key, M T::*member)
    {
        neededIf(!fromFile_, key, member);
    }

    template <class M>
    void list(std::string_view key, std::vector<M> T::*member)
    {
        if (has(key) || !(value_.*member).empty()) writeValue(slot(key), value_.*member);
    }

    template <class M>
    void optional(std::string_view key, const std::optional<M> T::*member)
    {
        if (value_.*member) {
            writeValue(slot(key), *(value_.*member));
        } else if (has(key)) {
            object_.erase(std::string(key));
        }
    }

    template <class M, class F>
    void within(M T::*member, F&& visit)
    {
        ObjectWriter<M> writer(object_, value_.*member, fromFile_);
        visit(writer);
    }

    void kind() { writeValue(slot("kind"), value_.kind()); }

    void body()
    {
        std::visit(
            [this]<class Body>(const Body& body) {
                ObjectWriter<Body> writer(object_, body, fromFile_);
                describe(writer, static_cast<const Body*>(nullptr));
            },
            value_.body);
    }

private:
    static const T& initial()
    {
        static const T made{};
        return made;
    }

    bool has(std::string_view key) const { return object_.find(key) != object_.end(); }

    Json& slot(std::string_view key)
    {
        const auto found = object_.find(key);
        if (found != object_.end()) return *found;
        auto& members = object_.template get_ref<Json::object_t&>();
        members.emplace_back(std::string(key), nullptr);
        return members.back().second;
    }

    Json& object_;
    const T& value_;
    bool fromFile_;
};

template <class T>
Json objectOf(const T& value)
{
    const bool fromFile = value.source.object && value.source.object->is_object();
    Json object = fromFile ? *value.source.object : Json::object();
    ObjectWriter<T> writer(object, value, fromFile);
    describe(writer, static_cast<const T*>(nullptr));
    return object;
}

template <class T>
    requires isObject<T>
void writeValue(Json& slot, const T& value)
{
    if constexpr (std::is_same_v<T, PartPtr>) {
        slot = objectOf(*value);
    } else {
        slot = objectOf(value);
    }
}

}  // namespace

Json planToJson(const Plan& plan)
{
    const bool fromFile = plan.source.object && plan.source.object->is_object();
    Json object = fromFile ? *plan.source.object : Json::object();
    if (!object.contains("yardplan")) object["yardplan"] = kPlanFileVersion;
    ObjectWriter<Plan> writer(object, plan, fromFile);
    describe(writer, static_cast<const Plan*>(nullptr));
    return object;
}

Json partToJson(const Part& part) { return objectOf(part); }

}  // namespace yardcast
