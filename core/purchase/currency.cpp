#include "core/purchase/currency.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace yardcast {

namespace {

// ISO 4217:2015, list one; only what differs from two digits.
constexpr std::array<std::string_view, 17> kNoMinor{"BIF", "CLP", "DJF", "GNF", "ISK", "JPY", "KMF", "KRW", "PYG",
                                                    "RWF", "UGX", "UYI", "VND", "VUV", "XAF", "XOF", "XPF"};
constexpr std::array<std::string_view, 7> kThreeDigits{"BHD", "IQD", "JOD", "KWD", "LYD", "OMR", "TND"};
constexpr std::array<std::string_view, 2> kFourDigits{"CLF", "UYW"};

template <std::size_t N>
bool holds(const std::array<std::string_view, N>& list, std::string_view word)
{
    return std::find(list.begin(), list.end(), word) != list.end();
}

}  // namespace

int minorDigits(std::string_view currency)
{
    if (holds(kNoMinor, currency)) return 0;
    if (holds(kThreeDigits, currency)) return 3;
    if (holds(kFourDigits, currency)) return 4;
    return 2;
}

std::int64_t minorPerUnit(std::string_view currency)
{
    std::int64_t units = 1;
    for (int i = 0; i < minorDigits(currency); ++i) units *= 10;
    return units;
}

std::int64_t toMinor(double amount, std::string_view currency)
{
    constexpr double most = 9.0e18;
    const double minor = amount * static_cast<double>(minorPerUnit(currency));
    if (std::isnan(minor)) return 0;
    return std::llround(std::clamp(minor, -most, most));
}

double fromMinor(std::int64_t minor, std::string_view currency)
{
    return static_cast<double>(minor) / static_cast<double>(minorPerUnit(currency));
}

std::string plainMoney(std::int64_t minor, std::string_view currency)
{
    const auto units = static_cast<std::uint64_t>(minorPerUnit(currency));
    const std::uint64_t size = minor < 0 ? 0 - static_cast<std::uint64_t>(minor) : static_cast<std::uint64_t>(minor);
    std::string text = std::to_string(size / units);
    if (const auto digits = static_cast<std::size_t>(minorDigits(currency)); digits > 0) {
        const std::string rest = std::to_string(size % units);
        text += "." + std::string(digits - rest.size(), '0') + rest;
    }
    return minor < 0 ? "-" + text : text;
}

std::int64_t rescaleMinor(std::int64_t minor, std::string_view from, std::string_view to)
{
    const std::int64_t fromUnits = minorPerUnit(from);
    const std::int64_t toUnits = minorPerUnit(to);
    if (toUnits >= fromUnits) return minor * (toUnits / fromUnits);
    const std::int64_t divisor = fromUnits / toUnits;
    const std::int64_t half = divisor / 2;
    return (minor >= 0 ? minor + half : minor - half) / divisor;
}

}  // namespace yardcast
