#pragma once

#include <string>

#include "core/io/plan_file.h"

namespace yardcast {

/// The plan that an RFC 6902 JSON Patch makes of the file of this one (`Remedy::edit`), or why it does not: what
/// `readPlan` says of the patch's text and of its outcome, or `patch_fails` where the patch does not fit the plan (a
/// place that is not there, a test that does not hold; its value `reason` is for a log, not for the screen). Parts that
/// the patch leaves as they are stay the same objects. Never throws for what the texts hold.
PlanReading applyPatch(const Plan& plan, const std::string& patchText);

/// The edit that makes `after` of `before`, as RFC 6902 JSON Patch on the plan file.
std::string patchBetween(const Plan& before, const Plan& after);

}  // namespace yardcast
