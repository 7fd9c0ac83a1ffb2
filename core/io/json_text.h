#pragma once

#include <string>
#include <vector>

#include <nlohmann/json.hpp>

#include "core/plan/finding.h"

namespace yardcast {

using Json = nlohmann::ordered_json;

/// Brackets inside brackets; deeper text is refused, so that nothing that walks a value can run out of stack.
inline constexpr std::size_t kDeepestJson = 64;
/// Numbers, words, lists and objects in one text; more are refused, so that memory stays bounded.
inline constexpr std::size_t kMostJsonValues = 4'000'000;

struct JsonReading {
    Json value;                     ///< only of use when `complete`
    bool complete = false;          ///< the text was read to its end
    std::vector<Finding> problems;  ///< severity stop: json_syntax, not_utf8, number_not_finite, too_large, too_deep,
                                    ///< too_many_values, key_twice (values as listed in core/io/plan_file.h)
};

/// JSON text (RFC 8259) to a value. UTF-8, with or without a byte order mark; NUL bytes and ill-formed UTF-8 are
/// problems. Never throws for what the text holds. A key that stands twice in one object is a problem, but the text
/// is read on to the end.
JsonReading readJson(std::string_view text, std::size_t largestBytes);

/// Two-space indent and a newline at the end; a list without objects in it stands on one line where it fits.
/// Ill-formed UTF-8 in strings becomes U+FFFD.
std::string writeJson(const Json& value);

/// What a value is, as one word: nothing, yes_no, number, text, list, object.
std::string jsonTypeWord(const Json& value);

}  // namespace yardcast
