#include "core/io/plan_patch.h"

#include <utility>

#include "core/io/json_text.h"
#include "core/io/plan_reader.h"
#include "core/io/plan_writer.h"

namespace yardcast {

PlanReading applyPatch(const Plan& plan, const std::string& patchText)
{
    PlanReading reading;
    JsonReading patch = readJson(patchText, kLargestPlanBytes);
    reading.problems = std::move(patch.problems);
    if (!patch.complete || !reading.problems.empty()) return reading;

    Json changed = planToJson(plan);
    try {
        changed.patch_inplace(patch.value);
    } catch (const Json::exception& failure) {
        Finding finding;
        finding.code = "patch_fails";
        finding.severity = Severity::stop;
        finding.values = {{"reason", std::string(failure.what())}};
        reading.problems.push_back(std::move(finding));
        return reading;
    }

    Plan made = planFromJson(std::move(changed), reading.problems);
    if (!reading.problems.empty()) return reading;
    for (PartPtr& part : made.parts) {
        const int before = indexOfPart(plan, part->id);
        if (before >= 0 && *plan.parts[static_cast<std::size_t>(before)] == *part) {
            part = plan.parts[static_cast<std::size_t>(before)];
        }
    }
    reading.plan = std::move(made);
    return reading;
}

std::string patchBetween(const Plan& before, const Plan& after)
{
    // Through the text, so that numbers are compared as the file has them.
    const auto from = nlohmann::json::parse(writePlan(before));
    const auto to = nlohmann::json::parse(writePlan(after));
    return nlohmann::json::diff(from, to).dump();
}

}  // namespace yardcast
