#pragma once

#include <string>

namespace yardcast::fuzz {

enum class Outcome { refused, read };

/// What has to hold for any text at all: reading ends, with a plan or with problems that are stops. A plan that was
/// read is validated, assessed and written as JSON, written as a file, and read back equal. Aborts, with a word on
/// standard error, where something does not hold.
Outcome exercise(const std::string& text);

}  // namespace yardcast::fuzz
