#pragma once

#include <string_view>
#include <vector>

#include "core/plan/conditions.h"
#include "core/plan/finding.h"

namespace yardcast {

struct TemperatureLog {
    std::vector<MeasuredTemperature> rows;  ///< hours since the pour, rising; deg C. Empty where there is a problem
    /// The first thing wrong, if any (stop): log_row (values line, text), log_range (line, unit, value, least, most),
    /// log_not_rising (line, at_h, before_h), log_empty.
    std::vector<Finding> problems;
};

/// The table of a temperature logger: a row an hour-and-temperature pair. Fields lie between semicolons or tabs (a
/// decimal comma is read), or else between commas. A first line without a number is a heading; empty lines and those
/// that begin with # are passed over. UTF-8 with or without a byte order mark, any line ends. Never throws.
TemperatureLog readTemperatureLog(std::string_view text);

}  // namespace yardcast
