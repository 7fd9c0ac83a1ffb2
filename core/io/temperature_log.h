#pragma once

#include <string_view>
#include <vector>

#include "core/plan/conditions.h"
#include "core/plan/finding.h"

namespace yardcast {

struct TemperatureLog {
    std::vector<MeasuredTemperature> rows;  ///< hours since the pour, rising; deg C. Empty where there is a problem
    /// The rows had dates and times of the day: their hours are counted from the first row.
    bool fromClock = false;
    /// The first thing wrong, if any (stop): log_row (values line, text), log_range (line, unit, value, least, most),
    /// log_fahrenheit (line or 0, value, as_c), log_not_rising (line, at_h, before_h), log_empty.
    std::vector<Finding> problems;
};
/// Above this no thin casting gets, nor does the middle of a log lie above kWarmLogC: likely they are deg F. Our choice;
/// steam and heated moulds are not of this trade.
inline constexpr double kHottestLogC = 60.0;
inline constexpr double kWarmLogC = 45.0;

/// The table of a temperature logger: a row an hour-and-temperature pair. In place of the hour stand date and time of the
/// day as "2025-07-01 08:30", with a T between them, with seconds, or in two fields, all in the same zone. Fields lie between semicolons or tabs (a
/// decimal comma is read), or else between commas. A first line without a number is a heading; empty lines and those
/// that begin with # are passed over. UTF-8 with or without a byte order mark, any line ends. Never throws.
TemperatureLog readTemperatureLog(std::string_view text);

}  // namespace yardcast
