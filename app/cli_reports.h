#pragma once

#include <string>

#include "app/cli_context.h"

namespace yardcast::cli {

/// Tables for a person to read, UTF-8.
std::string assessmentReport(const Loaded& loaded);
std::string findingsReport(const Loaded& loaded);
std::string shoppingReport(const Loaded& loaded);
/// RFC 4180: comma, CRLF, quotes doubled, one header row; numbers with a decimal point. A row for each pack size; what
/// belongs to the item (need, owned, leftover) stands in its first row only, so that columns can be summed.
std::string shoppingCsv(const Loaded& loaded);

}  // namespace yardcast::cli
