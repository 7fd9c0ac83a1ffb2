#pragma once

#include <cstdint>
#include <string>
#include <string_view>

namespace yardcast {

/// ISO 4217 "no currency involved": a price book that carries it counts in whole units of the plan's own currency.
inline constexpr std::string_view kNoCurrency = "XXX";

/// Digits of the minor unit, 0 to 4 (ISO 4217:2015 list one: EUR 2, JPY 0, KWD 3); 2 for codes not in the list.
int minorDigits(std::string_view currency);
/// Minor units in one whole unit: 10 to the power of `minorDigits`.
std::int64_t minorPerUnit(std::string_view currency);

/// Whole units to minor units, rounded half away from zero. Amounts that do not fit (or are no numbers) give the
/// nearest value that does, or 0.
std::int64_t toMinor(double amount, std::string_view currency);
double fromMinor(std::int64_t minor, std::string_view currency);
/// "321.40" or "-0.05": the minor digits of the currency after a decimal point.
std::string plainMoney(std::int64_t minor, std::string_view currency);
/// An amount in minor units of one currency read as the same number of whole units of another, rounded half
/// away from zero. No exchange rate is involved.
std::int64_t rescaleMinor(std::int64_t minor, std::string_view from, std::string_view to);

}  // namespace yardcast
