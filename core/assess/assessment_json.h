#pragma once

#include <functional>
#include <string>

#include "core/assess/assessment.h"

namespace yardcast {

/// The sentences for findings come from outside: core knows no wording.
struct FindingWords {
    std::function<std::string(const Finding&)> text;
    std::function<std::string(const Finding&)> source;
    std::function<std::string(const Remedy&)> remedy;
    std::function<std::string(const Remedy&)> effect;
};

struct MouldSavings;

/// The object of the contract (`"yardcast_assessment": 1`) as JSON text, two-space indent, newline at the end. With
/// `savings` "mould" has "sharing", "later_boards" and what they save.
std::string assessmentJson(const Plan& plan, const Assessment& assessment, const FindingWords& words,
                           const MouldSavings* savings = nullptr);

}  // namespace yardcast
