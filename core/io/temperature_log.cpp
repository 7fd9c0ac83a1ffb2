#include "core/io/temperature_log.h"

#include <charconv>
#include <cmath>
#include <optional>
#include <string>

namespace yardcast {

namespace {

constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";
constexpr std::string_view kBlanks = " \t\f\v";
constexpr std::size_t kShownLetters = 40;
/// As the plan file has them for readings.
constexpr double kMostH = 10'000.0;
constexpr double kLeastC = -40.0;
constexpr double kMostC = 95.0;

std::string_view trimmed(std::string_view text)
{
    const std::size_t first = text.find_first_not_of(kBlanks);
    if (first == std::string_view::npos) return {};
    return text.substr(first, text.find_last_not_of(kBlanks) - first + 1);
}

std::string_view unquoted(std::string_view text)
{
    text = trimmed(text);
    if (text.size() >= 2 && text.front() == '"' && text.back() == '"') return trimmed(text.substr(1, text.size() - 2));
    return text;
}

std::vector<std::string_view> fieldsOf(std::string_view line, char between)
{
    std::vector<std::string_view> fields;
    for (std::size_t from = 0;;) {
        const std::size_t to = line.find(between, from);
        fields.push_back(unquoted(line.substr(from, to == std::string_view::npos ? to : to - from)));
        if (to == std::string_view::npos) break;
        from = to + 1;
    }
    while (fields.size() > 2 && fields.back().empty()) fields.pop_back();
    return fields;
}

std::optional<double> numberOf(std::string_view field, bool decimalComma)
{
    std::string text(field);
    if (decimalComma) {
        if (const std::size_t comma = text.find(','); comma != std::string::npos) text[comma] = '.';
    }
    if (!text.empty() && text.front() == '+') text.erase(0, 1);
    double value = 0.0;
    const char* const end = text.data() + text.size();
    const auto [stopped, error] = std::from_chars(text.data(), end, value);
    if (error != std::errc() || stopped != end || !std::isfinite(value)) return std::nullopt;
    return value;
}

Finding problem(const char* code, FindingValues values = {})
{
    return {code, Severity::stop, {}, "", std::move(values), {}};
}

/// Takes rows one after the other.
class LogReader {
public:
    /// False at the first thing wrong.
    bool take(std::string_view line)
    {
        ++line_;
        const std::string_view text = trimmed(line);
        if (text.empty() || text.front() == '#') return true;
        const char between = text.find(';') != std::string_view::npos ? ';'
            : text.find('\t') != std::string_view::npos              ? '\t'
                                                                      : ',';
        const std::vector<std::string_view> fields = fieldsOf(text, between);
        std::vector<std::optional<double>> numbers;
        bool any = false;
        for (const std::string_view field : fields) {
            numbers.push_back(numberOf(field, between != ','));
            any = any || numbers.back();
        }
        const bool first = !begun_;
        begun_ = true;
        if (first && !any) return true;
        if (numbers.size() != 2 || !numbers[0] || !numbers[1]) {
            return fail(problem("log_row", {{"line", line_}, {"text", std::string(text.substr(0, kShownLetters))}}));
        }
        return add(*numbers[0], *numbers[1]);
    }

    TemperatureLog finish()
    {
        if (log_.problems.empty() && log_.rows.empty()) fail(problem("log_empty", {}));
        if (!log_.problems.empty()) log_.rows.clear();
        return std::move(log_);
    }

private:
    bool add(double h, double c)
    {
        if (!(h >= 0.0 && h <= kMostH)) return fail(range("h", h, 0.0, kMostH));
        if (!(c >= kLeastC && c <= kMostC)) return fail(range("c", c, kLeastC, kMostC));
        if (!log_.rows.empty() && h <= log_.rows.back().h) {
            return fail(problem("log_not_rising", {{"line", line_}, {"at_h", h}, {"before_h", log_.rows.back().h}}));
        }
        log_.rows.push_back({h, c, {}});
        return true;
    }

    Finding range(const char* unit, double value, double least, double most) const
    {
        return problem("log_range", {{"line", line_}, {"unit", std::string(unit)}, {"value", value},
                                     {"least", least}, {"most", most}});
    }

    bool fail(Finding finding)
    {
        log_.problems.push_back(std::move(finding));
        return false;
    }

    TemperatureLog log_;
    double line_ = 0.0;
    bool begun_ = false;
};

}  // namespace

TemperatureLog readTemperatureLog(std::string_view text)
{
    if (text.substr(0, kByteOrderMark.size()) == kByteOrderMark) text.remove_prefix(kByteOrderMark.size());
    LogReader reader;
    while (!text.empty()) {
        const std::size_t end = text.find_first_of("\r\n");
        if (!reader.take(text.substr(0, end))) break;
        if (end == std::string_view::npos) break;
        const bool pair = text.substr(end, 2) == "\r\n";
        text.remove_prefix(end + (pair ? 2 : 1));
    }
    return reader.finish();
}

}  // namespace yardcast
