#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "core/plan/finding.h"
#include "core/plan/plan.h"

namespace yardcast {

/// The version of the plan file this program reads and writes (key "yardplan").
inline constexpr int kPlanFileVersion = 1;

/// Codes of what reading has to say; every one is a stop. A problem inside a part has the part's id as its subject.
///
/// | code              | values                       | means                                                       |
/// | ----------------- | ---------------------------- | ----------------------------------------------------------- |
/// | json_syntax       | line, column                 | no JSON at this place                                       |
/// | not_utf8          | line, column                 | a byte that is no UTF-8                                     |
/// | number_not_finite | line, column                 | a number too large for any computation                      |
/// | too_large         | bytes, limit_bytes           | longer than kLargestPlanBytes                               |
/// | too_deep          | limit                        | brackets nested deeper than this                            |
/// | too_many_values   | limit                        | more values than any plan has                               |
/// | key_twice         | key                          | the same key twice in one object                            |
/// | not_a_plan        |                              | no key "yardplan", or a version there never was             |
/// | newer_version     | version, known_version       | made by a newer program                                     |
/// | missing_key       | key, expected (type word)    | the key has to be there; the pointer is where it would be   |
/// | wrong_type        | expected, found (type words) | another type of value is wanted                             |
/// | unknown_word      | found, expected (list)       | not one of the words allowed; `expected` has them by commas |
/// | id_empty          |                              | an id without a letter                                      |
/// | id_twice          | id                           | two parts, mixes, fixtures, or cutouts of a counter         |
/// | more_problems     | count                        | so many more that are not listed                            |
///
/// Type words: number, whole_number, text, yes_no, pair ([x, y] or [width, depth]), list, object, nothing.

/// What reading gave: a plan, or every problem at once (each with pointer, what, and what would be right).
/// With `problems` of severity stop there is no plan.
struct PlanReading {
    std::optional<Plan> plan;
    std::vector<Finding> problems;
};

/// From the text of a `.yardplan` file (UTF-8 JSON). Never throws; bounded in depth and size
/// (`kLargestPlanBytes`). Problems: syntax with line and column, wrong types, missing keys, unknown words,
/// ids used twice, a newer file version.
PlanReading readPlan(const std::string& text);
inline constexpr std::size_t kLargestPlanBytes = 64u << 20;

/// The file's text: two-space indent, a newline at the end. Unknown keys and the order of keys are kept where the
/// plan was read from a file. `readPlan(writePlan(p)).plan == p`.
std::string writePlan(const Plan& plan);

/// One part or several as text for the clipboard, and back. Empty when the text is something else.
std::string writeParts(const std::vector<Part>& parts);
std::vector<Part> readParts(const std::string& text);

struct FileText {
    std::optional<std::string> text;
    std::string error;  ///< the system's reason, when there is no text
};
FileText readFile(const std::filesystem::path& path);
/// Written beside the target, flushed to disk, then renamed over it: the old file or the new one, never half.
/// Returns an empty string, or the system's reason.
std::string writeFileAtomically(const std::filesystem::path& path, const std::string& text);

}  // namespace yardcast
