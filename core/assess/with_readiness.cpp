#include <algorithm>
#include <cmath>
#include <iterator>
#include <map>
#include <set>
#include <utility>
#include <variant>

#include "core/assess/finding_order.h"
#include "core/assess/readiness_assessor.h"
#include "core/io/patch_text.h"
#include "core/pour/weather.h"

namespace yardcast {

namespace {

/// Hours, as shown, from which all castings of a part hold as planned; infinity where one never does.
std::map<std::string, double> waitByPart(const std::vector<CastingHoursPtr>& hours)
{
    std::map<std::string, double> waits;
    for (const CastingHoursPtr& casting : hours) {
        const EarliestHour* last = casting ? casting->governing() : nullptr;
        if (last == nullptr) continue;
        double& wait = waits[casting->part];
        wait = std::max(wait, shownWaitH(last->cautiousH));
    }
    return waits;
}

const EarliestHour* hourOfCase(const CastingHours& hours, const std::string& caseWord)
{
    const auto found = std::ranges::find_if(hours.ways, [&](const EarliestHour& hour) {
        return caseWord == strengthCaseWord(caseOfWay(hour.way));
    });
    return found == hours.ways.end() || !found->possible ? nullptr : &*found;
}

const CastingHours* hoursOfCasting(const std::vector<CastingHoursPtr>& hours, const std::string& casting)
{
    for (const CastingHoursPtr& one : hours) {
        if (one && one->casting == casting) return one.get();
    }
    return nullptr;
}

/// The plan's own hour put later; RFC 6902.
std::string laterEdit(const Plan& plan, int index, double ageH)
{
    const auto* counter = std::get_if<Counter>(&plan.parts[static_cast<std::size_t>(index)]->body);
    if (counter == nullptr) return {};
    const std::string lift = "/parts/" + std::to_string(index) + "/lift";
    const std::string age = std::to_string(std::lround(ageH));
    return counter->lift ? addPatch(lift + "/age_h", age) : addPatch(lift, R"({"age_h":)" + age + "}");
}

/// Strength speaks for the ways of handling that it solved: what it complains about has got its hours, and what it does
/// not complain about is not complained about here.
bool isSaidByStrength(const Assessment& assessment, const CastingHours& hours, const Finding& finding)
{
    if (numberAt(finding.values, "by_compression") == 1.0) return false;
    const CastingStrength* strength = assessment.strengthOf(hours.casting);
    if (strength == nullptr) return false;
    const std::string way = wordAt(finding.values, "way");
    return std::ranges::any_of(kHandlingWays, [&](HandlingWay one) {
        return way == handlingWayWord(one) && strength->find(caseOfWay(one)) != nullptr;
    });
}

/// Figures that differ by less are the same in any sentence.
constexpr double kSameValue = 0.005;

/// Where the mould stays on for the strength of the concrete itself, what would crack first is another matter.
FindingValues whatCounts(const Finding& finding)
{
    FindingValues values = finding.values;
    if (numberAt(values, "by_compression") == 1.0) {
        for (const char* key : {"way", "place", "tension_mpa"}) values.erase(key);
    }
    return values;
}

bool sameValue(const FindingValue& a, const FindingValue& b)
{
    const double* x = std::get_if<double>(&a);
    const double* y = std::get_if<double>(&b);
    return x != nullptr && y != nullptr ? std::abs(*x - *y) < kSameValue : a == b;
}

/// Remedies must be the same: an edit helps one part only.
bool saysTheSame(const Finding& a, const Finding& b)
{
    return a.code == b.code && a.severity == b.severity && a.remedies == b.remedies &&
           std::ranges::equal(whatCounts(a), whatCounts(b), [](const auto& x, const auto& y) {
               return x.first == y.first && sameValue(x.second, y.second);
           });
}

void addMissing(std::vector<std::string>& all, const std::string& one)
{
    if (std::ranges::find(all, one) == all.end()) all.push_back(one);
}

/// Each of the findings is about one casting, its first subject. What is said of several in the same words is said
/// once: subjects are the castings, `count` of them, then their parts.
std::vector<Finding> saidOnce(const std::vector<Finding>& findings)
{
    std::vector<Finding> once;
    std::vector<std::vector<const Finding*>> groups;
    for (const Finding& finding : findings) {
        const auto same = std::ranges::find_if(
            groups, [&](const auto& group) { return saysTheSame(*group.front(), finding); });
        if (same == groups.end()) {
            groups.push_back({&finding});
        } else {
            same->push_back(&finding);
        }
    }
    for (const auto& group : groups) {
        Finding& all = once.emplace_back(*group.front());
        if (group.size() == 1) continue;
        all.subjects.clear();
        for (const Finding* one : group) addMissing(all.subjects, one->subjects.front());
        all.values["count"] = static_cast<double>(all.subjects.size());
        for (const Finding* one : group) {
            for (const std::string& subject : one->subjects) addMissing(all.subjects, subject);
        }
    }
    return once;
}

/// Hours asked for that the temperatures read do not reach: a note, for what comes after them is the plan's weather.
void addReadingsEnd(const Plan& plan, const std::vector<CastingHoursPtr>& hours, std::vector<Finding>& findings)
{
    const std::vector<MeasuredTemperature>& read = plan.conditions.measured;
    if (read.empty()) return;
    double askedH = 0.0;
    for (const CastingHoursPtr& casting : hours) {
        const EarliestHour* last = casting ? casting->governing() : nullptr;
        if (last && std::isfinite(last->cautiousH)) askedH = std::max(askedH, last->cautiousH);
    }
    if (!(askedH > read.back().h)) return;
    const TemperatureCourse course = courseOf(plan);
    findings.push_back({"readings_end",
                        Severity::note,
                        {},
                        "/conditions/measured",
                        {{"last_h", read.back().h},
                         {"last_c", read.back().c},
                         {"asked_h", askedH},
                         {"low_c", course.lowC},
                         {"high_c", course.highC}},
                        {}});
}

}  // namespace

AssessmentPtr withReadiness(const Plan& plan, const AssessmentPtr& assessment, const Readiness& readiness)
{
    auto answer = std::make_shared<Assessment>(*assessment);
    answer->hours = readiness.hours;
    answer->play = readiness.play;
    answer->gain = readiness.gain;
    answer->season = readiness.season;

    const std::map<std::string, double> waits = waitByPart(readiness.hours);
    std::set<std::string> told;
    for (Finding& finding : answer->findings) {
        if (finding.code != "cracks_handling" || finding.subjects.empty()) continue;
        const CastingHours* hours = hoursOfCasting(readiness.hours, finding.subjects.front());
        const EarliestHour* hour = hours ? hourOfCase(*hours, wordAt(finding.values, "case")) : nullptr;
        if (hour == nullptr) continue;
        told.insert(hours->casting);
        if (std::isfinite(hour->likelyH)) finding.values["likely_h"] = hour->likelyH;
        if (std::isfinite(hour->cautiousH)) {
            finding.values["cautious_h"] = hour->cautiousH;
            const auto wait = waits.find(hours->part);
            const bool all = wait != waits.end() && std::isfinite(wait->second);
            finding.values["wait_h"] = std::max(all ? wait->second : 0.0, shownWaitH(hour->cautiousH));
        } else if (!std::isfinite(hour->cautiousDays)) {
            finding.values["never"] = 1.0;
        }
    }

    std::vector<Finding> added;
    for (const CastingHoursPtr& hours : readiness.hours) {
        if (!hours || told.count(hours->casting) > 0) continue;
        const int index = indexOfPart(plan, hours->part);
        for (Finding finding : hours->findings) {
            if (isSaidByStrength(*answer, *hours, finding)) continue;
            if (index >= 0) finding.pointer = "/parts/" + std::to_string(index) + finding.pointer;
            const auto wait = waits.find(hours->part);
            if (finding.code == "lifted_early" && wait != waits.end() && std::isfinite(wait->second)) {
                Remedy later{"lift_later", {{"age_h", wait->second}}, {}, {}};
                if (index >= 0) later.edit = laterEdit(plan, index, wait->second);
                finding.remedies.push_back(std::move(later));
            }
            added.push_back(std::move(finding));
        }
    }
    added = saidOnce(added);
    addReadingsEnd(plan, readiness.hours, added);
    if (readiness.play) std::ranges::copy(readiness.play->findings, std::back_inserter(added));
    const FindingOrder order(plan, answer->castings);
    order.sort(added);
    order.merge(answer->findings, std::move(added));
    return answer;
}

}  // namespace yardcast
