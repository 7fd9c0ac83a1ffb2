#pragma once

#include <string>
#include <vector>

#include <QString>

#include "core/assess/assessment_json.h"
#include "core/plan/finding.h"
#include "core/plan/plan.h"

/// Sentences for findings. Core states a code with values; here it becomes what a person reads.
namespace yardcast::ui {

/// One sentence: what and where, with numbers and units. With a plan, parts are called by their names. A code without
/// a sentence gives the code itself (a test sees to it that there is none).
QString findingText(const Finding& finding, const Plan* plan = nullptr);
/// Where the limit comes from: a published source, or "common practice, no source", or "this plan's own limit".
QString findingSource(const Finding& finding);
/// What would help, in one sentence; empty where nothing needs help.
QString findingHelp(const Finding& finding);
QString remedyText(const Remedy& remedy);
/// What it adds and what it brings: "+4.3 kg, +6.20 EUR, greatest use then 84 %". Empty where that is not known.
QString remedyEffect(const Remedy& remedy);

/// Every code that has a sentence.
std::vector<std::string> wordedFindingCodes();

/// The words that the JSON of an assessment needs. The plan must outlive them.
FindingWords findingWords(const Plan& plan);

}  // namespace yardcast::ui
