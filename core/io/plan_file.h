#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "core/plan/finding.h"
#include "core/plan/plan.h"

namespace yardcast {

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
