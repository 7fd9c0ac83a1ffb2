#include "core/io/plan_file.h"

#include <algorithm>

#include "core/io/json_text.h"
#include "core/io/plan_reader.h"
#include "core/io/plan_writer.h"

namespace yardcast {

PlanReading readPlan(const std::string& text)
{
    PlanReading reading;
    JsonReading json = readJson(text, kLargestPlanBytes);
    reading.problems = std::move(json.problems);
    if (!json.complete) return reading;
    Plan plan = planFromJson(std::move(json.value), reading.problems);
    if (reading.problems.empty()) reading.plan = std::move(plan);
    return reading;
}

std::string writePlan(const Plan& plan) { return writeJson(planToJson(plan)); }

namespace {

constexpr const char* kClipboardKey = "yardcast_parts";
constexpr int kClipboardVersion = 1;

}  // namespace

std::string writeParts(const std::vector<Part>& parts)
{
    Json list = Json::array();
    for (const Part& part : parts) list.push_back(partToJson(part));
    Json object = Json::object();
    object[kClipboardKey] = kClipboardVersion;
    object["parts"] = std::move(list);
    return writeJson(object);
}

std::vector<Part> readParts(const std::string& text)
{
    // Most of what lies on a clipboard is no JSON object, and some of it is long.
    const std::size_t start = text.find_first_not_of(" \t\r\n");
    if (start == std::string::npos || text[start] != '{') return {};
    JsonReading json = readJson(text, kLargestPlanBytes);
    if (!json.complete || !json.problems.empty()) return {};
    const auto version = json.value.find(kClipboardKey);
    const auto list = json.value.find("parts");
    if (version == json.value.end() || *version != kClipboardVersion) return {};
    if (list == json.value.end() || !list->is_array()) return {};

    std::vector<Finding> problems;
    std::vector<Part> parts;
    for (Json& part : *list) parts.push_back(partFromJson(std::move(part), problems));
    return problems.empty() ? parts : std::vector<Part>{};
}

}  // namespace yardcast
