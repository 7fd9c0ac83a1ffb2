#include "core/io/temperature_log.h"

#include <algorithm>
#include <charconv>
#include <chrono>
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
/// 60 deg C in Fahrenheit: what is above is neither.
constexpr double kMostF = 140.0;
constexpr double kHoursADay = 24.0;

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

/// Digits of a date or time: `count` of them at `from`, none else.
std::optional<int> digitsAt(std::string_view text, std::size_t from, std::size_t count)
{
    if (text.size() < from + count) return std::nullopt;
    int value = 0;
    for (const char c : text.substr(from, count)) {
        if (c < '0' || c > '9') return std::nullopt;
        value = value * 10 + (c - '0');
    }
    return value;
}

/// Hours since 1970 of "YYYY-MM-DD hh:mm", with T, seconds or Z.
std::optional<double> clockHours(std::string_view text)
{
    if (!text.empty() && text.back() == 'Z') text.remove_suffix(1);
    if (text.size() != 16 && text.size() != 19) return std::nullopt;
    if (text[4] != '-' || text[7] != '-' || (text[10] != ' ' && text[10] != 'T') || text[13] != ':') return std::nullopt;
    const auto year = digitsAt(text, 0, 4);
    const auto month = digitsAt(text, 5, 2);
    const auto day = digitsAt(text, 8, 2);
    const auto hour = digitsAt(text, 11, 2);
    const auto minute = digitsAt(text, 14, 2);
    std::optional<int> second = 0;
    if (text.size() == 19) second = text[16] == ':' ? digitsAt(text, 17, 2) : std::nullopt;
    if (!year || !month || !day || !hour || !minute || !second) return std::nullopt;
    if (*hour > 24 || *minute > 59 || *second > 60) return std::nullopt;
    const std::chrono::year_month_day date{std::chrono::year{*year}, std::chrono::month{static_cast<unsigned>(*month)},
                                           std::chrono::day{static_cast<unsigned>(*day)}};
    if (!date.ok()) return std::nullopt;
    const double days = static_cast<double>(std::chrono::sys_days{date}.time_since_epoch().count());
    return days * kHoursADay + *hour + *minute / 60.0 + *second / 3600.0;
}

double celsiusOf(double fahrenheit) { return (fahrenheit - 32.0) / 1.8; }

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
        const std::optional<double> clock = clockOf(fields);
        const bool first = !begun_;
        begun_ = true;
        if (first && !any && !clock) return true;
        if (clock && numbers.back() && (log_.rows.empty() || log_.fromClock)) {
            if (log_.rows.empty()) zeroH_ = *clock;
            log_.fromClock = true;
            return add(*clock - zeroH_, *numbers.back());
        }
        if (log_.fromClock) numbers.clear();
        if (numbers.size() != 2 || !numbers[0] || !numbers[1]) {
            return fail(problem("log_row", {{"line", line_}, {"text", std::string(text.substr(0, kShownLetters))}}));
        }
        return add(*numbers[0], *numbers[1]);
    }

    TemperatureLog finish()
    {
        if (log_.problems.empty() && log_.rows.empty()) fail(problem("log_empty", {}));
        if (log_.problems.empty()) {
            std::vector<double> all;
            for (const MeasuredTemperature& row : log_.rows) all.push_back(row.c);
            const auto middle = all.begin() + static_cast<std::ptrdiff_t>(all.size() / 2);
            std::nth_element(all.begin(), middle, all.end());
            if (*middle > kWarmLogC) fail(fahrenheit(0.0, *middle));
        }
        if (!log_.problems.empty()) log_.rows.clear();
        return std::move(log_);
    }

private:
    /// Date and time in the first field, or in the first two; a temperature must follow and nothing else.
    static std::optional<double> clockOf(const std::vector<std::string_view>& fields)
    {
        if (fields.size() == 2) return clockHours(fields[0]);
        if (fields.size() != 3) return std::nullopt;
        return clockHours(std::string(fields[0]) + ' ' + std::string(fields[1]));
    }

    static Finding fahrenheit(double line, double value)
    {
        return problem("log_fahrenheit", {{"line", line}, {"value", value}, {"as_c", celsiusOf(value)}});
    }

    bool add(double h, double c)
    {
        if (!log_.rows.empty() && h <= log_.rows.back().h) {
            return fail(problem("log_not_rising", {{"line", line_}, {"at_h", h}, {"before_h", log_.rows.back().h}}));
        }
        if (!(h >= 0.0 && h <= kMostH)) return fail(range("h", h, 0.0, kMostH));
        if (!(c >= kLeastC && c <= kMostF)) return fail(range("c", c, kLeastC, kHottestLogC));
        if (c > kHottestLogC) return fail(fahrenheit(line_, c));
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
    double zeroH_ = 0.0;  ///< of the first row, since 1970
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
