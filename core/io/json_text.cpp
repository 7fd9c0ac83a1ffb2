#include "core/io/json_text.h"

#include <algorithm>

#include "core/io/json_pointer.h"

namespace yardcast {

namespace {

constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";

/// Line and column (characters, both from 1) of a byte.
std::map<std::string, FindingValue> lineAndColumn(std::string_view text, std::size_t byte)
{
    const std::string_view before = text.substr(0, std::min(byte, text.size()));
    const auto lines = std::count(before.begin(), before.end(), '\n');
    const std::size_t lineStart = before.rfind('\n') == std::string_view::npos ? 0 : before.rfind('\n') + 1;
    const auto columns = std::count_if(before.begin() + static_cast<std::ptrdiff_t>(lineStart), before.end(),
                                       [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; });
    return {{"line", static_cast<double>(lines + 1)}, {"column", static_cast<double>(columns + 1)}};
}

Finding stop(std::string code, std::string pointer, std::map<std::string, FindingValue> values)
{
    Finding finding;
    finding.code = std::move(code);
    finding.severity = Severity::stop;
    finding.pointer = std::move(pointer);
    finding.values = std::move(values);
    return finding;
}

/// Length of the well-formed UTF-8 sequence at `at` (Unicode Standard, Table 3-7), or 0.
std::size_t sequenceLength(std::string_view text, std::size_t at)
{
    const auto byte = [&](std::size_t i) -> unsigned {
        return at + i < text.size() ? static_cast<unsigned char>(text[at + i]) : 0U;
    };
    const auto follows = [&](std::size_t i, unsigned low = 0x80, unsigned high = 0xBF) {
        return byte(i) >= low && byte(i) <= high;
    };
    const unsigned lead = byte(0);
    if (lead < 0x80) return 1;
    if (lead >= 0xC2 && lead <= 0xDF) return follows(1) ? 2 : 0;
    if (lead >= 0xE0 && lead <= 0xEF) {
        const unsigned low = lead == 0xE0 ? 0xA0 : 0x80;
        const unsigned high = lead == 0xED ? 0x9F : 0xBF;
        return follows(1, low, high) && follows(2) ? 3 : 0;
    }
    if (lead >= 0xF0 && lead <= 0xF4) {
        const unsigned low = lead == 0xF0 ? 0x90 : 0x80;
        const unsigned high = lead == 0xF4 ? 0x8F : 0xBF;
        return follows(1, low, high) && follows(2) && follows(3) ? 4 : 0;
    }
    return 0;
}

/// The first byte that is no UTF-8, or npos.
std::size_t firstIllFormed(std::string_view text)
{
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t step = sequenceLength(text, at);
        if (step == 0) return at;
        at += step;
    }
    return std::string_view::npos;
}

/// Builds the value from the parser's events. The parser keeps its own stack on the heap, and depth is bounded here.
class Builder {
public:
    Builder(std::string_view text, JsonReading& reading) : text_(text), reading_(reading) {}

    bool null() { return put(nullptr); }
    bool boolean(bool v) { return put(v); }
    bool number_integer(std::int64_t v) { return put(v); }
    bool number_unsigned(std::uint64_t v) { return put(v); }
    bool number_float(double v, const std::string&) { return put(v); }
    bool string(std::string& v) { return put(std::move(v)); }
    bool binary(Json::binary_t&) { return false; }

    bool start_object(std::size_t) { return open(Json::object()); }
    bool start_array(std::size_t) { return open(Json::array()); }
    bool key(std::string& k)
    {
        open_.back().key = std::move(k);
        return true;
    }
    bool end_object()
    {
        reportKeysTwice();
        open_.pop_back();
        return true;
    }
    bool end_array()
    {
        open_.pop_back();
        return true;
    }

    bool parse_error(std::size_t position, const std::string&, const nlohmann::detail::exception& error)
    {
        constexpr int kNumberOutOfRange = 406;
        auto values = lineAndColumn(text_, position > 0 ? position - 1 : 0);
        const bool number = error.id == kNumberOutOfRange;
        reading_.problems.push_back(
            stop(number ? "number_not_finite" : "json_syntax", number ? pointer() : std::string{}, std::move(values)));
        return false;
    }

private:
    struct Open {
        Json* value;
        std::string key;  ///< of the member being read
    };

    template <class V>
    bool put(V&& v)
    {
        return add(Json(std::forward<V>(v))) != nullptr;
    }

    bool open(Json&& container)
    {
        if (open_.size() >= kDeepestJson) {
            reading_.problems.push_back(stop("too_deep", {}, {{"limit", static_cast<double>(kDeepestJson)}}));
            return false;
        }
        Json* added = add(std::move(container));
        if (!added) return false;
        open_.push_back({added, {}});
        return true;
    }

    Json* add(Json&& v)
    {
        if (++count_ > kMostJsonValues) {
            reading_.problems.push_back(stop("too_many_values", {}, {{"limit", static_cast<double>(kMostJsonValues)}}));
            return nullptr;
        }
        if (open_.empty()) {
            reading_.value = std::move(v);
            return &reading_.value;
        }
        Json& into = *open_.back().value;
        if (into.is_array()) {
            auto& list = into.get_ref<Json::array_t&>();
            list.push_back(std::move(v));
            return &list.back();
        }
        // Straight to the end: a look for the key at every insertion would take time with the square of the keys.
        auto& members = into.get_ref<Json::object_t&>();
        members.emplace_back(open_.back().key, std::move(v));
        return &members.back().second;
    }

    void reportKeysTwice()
    {
        const auto& members = open_.back().value->get_ref<const Json::object_t&>();
        std::vector<const std::string*> keys;
        keys.reserve(members.size());
        for (const auto& member : members) keys.push_back(&member.first);
        std::sort(keys.begin(), keys.end(), [](const auto* a, const auto* b) { return *a < *b; });
        for (std::size_t i = 1; i < keys.size() && reading_.problems.size() < kMostReported; ++i) {
            if (*keys[i] != *keys[i - 1]) continue;
            open_.back().key = *keys[i];
            reading_.problems.push_back(stop("key_twice", pointer(), {{"key", *keys[i]}}));
        }
    }

    std::string pointer() const
    {
        std::string text;
        for (const Open& o : open_) {
            text += '/';
            text += o.value->is_array() ? std::to_string(o.value->size() - (&o == &open_.back() ? 0 : 1))
                                        : JsonPath::escaped(o.key);
        }
        return text;
    }

    static constexpr std::size_t kMostReported = 100;
    std::string_view text_;
    JsonReading& reading_;
    std::vector<Open> open_;
    std::size_t count_ = 0;
};

}  // namespace

JsonReading readJson(std::string_view text, std::size_t largestBytes)
{
    JsonReading reading;
    if (text.size() > largestBytes) {
        reading.problems.push_back(stop("too_large", {}, {{"bytes", static_cast<double>(text.size())},
                                                          {"limit_bytes", static_cast<double>(largestBytes)}}));
        return reading;
    }
    if (text.starts_with(kByteOrderMark)) text.remove_prefix(kByteOrderMark.size());
    if (const std::size_t bad = firstIllFormed(text); bad != std::string_view::npos) {
        reading.problems.push_back(stop("not_utf8", {}, lineAndColumn(text, bad)));
        return reading;
    }
    // The parser takes a NUL byte for the end of the text.
    if (const std::size_t nul = text.find('\0'); nul != std::string_view::npos) {
        reading.problems.push_back(stop("json_syntax", {}, lineAndColumn(text, nul)));
        return reading;
    }
    if (text.find_first_not_of(" \t\r\n") == std::string_view::npos) {
        reading.problems.push_back(stop("file_empty", {}, {}));
        return reading;
    }
    Builder builder(text, reading);
    reading.complete = Json::sax_parse(text.begin(), text.end(), &builder);
    return reading;
}

std::string jsonTypeWord(const Json& value)
{
    switch (value.type()) {
    case Json::value_t::null: return "nothing";
    case Json::value_t::boolean: return "yes_no";
    case Json::value_t::string: return "text";
    case Json::value_t::array: return "list";
    case Json::value_t::object: return "object";
    default: return "number";
    }
}

}  // namespace yardcast
