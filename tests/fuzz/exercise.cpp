#include "tests/fuzz/exercise.h"

#include <cmath>
#include <cstdio>
#include <cstdlib>

#include "core/assess/assess.h"
#include "core/assess/assessment_json.h"
#include "core/io/json_text.h"
#include "core/io/plan_file.h"
#include "core/plan/validation.h"

namespace yardcast::fuzz {

namespace {

void must(bool holds, const char* what)
{
    if (holds) return;
    std::fprintf(stderr, "does not hold: %s\n", what);
    std::abort();
}

void checkFindings(const std::vector<Finding>& findings)
{
    for (const Finding& finding : findings) {
        must(!finding.code.empty(), "a finding has a code");
        must(finding.pointer.empty() || finding.pointer.front() == '/', "a pointer begins with a slash");
    }
}

void checkFigures(const Assessment& assessment)
{
    must(std::isfinite(assessment.volumeL()) && assessment.volumeL() >= 0.0, "volume is a number");
    must(std::isfinite(assessment.massKg()) && assessment.massKg() >= 0.0, "mass is a number");
    for (const PlacedCasting& placed : assessment.castings) {
        must(placed.casting != nullptr, "a casting is there");
        must(placed.casting->volumeL > 0.0, "a casting has a volume");
        for (const double c : placed.centroidMm) must(std::isfinite(c), "a centroid is a place");
    }
    checkFindings(assessment.findings);
}

}  // namespace

Outcome exercise(const std::string& text)
{
    const PlanReading reading = readPlan(text);
    must(reading.plan.has_value() == reading.problems.empty(), "a plan or problems");
    checkFindings(reading.problems);
    for (const Finding& problem : reading.problems) must(problem.severity == Severity::stop, "a problem is a stop");
    readParts(text);
    if (!reading.plan) return Outcome::refused;
    const Plan& plan = *reading.plan;

    checkFindings(validate(plan).findings);
    const AssessmentPtr assessment = assess(plan, exampleBook());
    checkFigures(*assessment);
    const std::string json = assessmentJson(plan, *assessment, FindingWords{});
    must(readJson(json, json.size()).complete, "the assessment is JSON");

    const std::string written = writePlan(plan);
    const PlanReading again = readPlan(written);
    must(again.plan.has_value(), "what is written can be read");
    must(*again.plan == plan, "what is read back is the same plan");
    must(writePlan(*again.plan) == written, "writing is stable");
    return Outcome::read;
}

}  // namespace yardcast::fuzz
