#include "app/cli_context.h"

#include <algorithm>
#include <cerrno>
#include <cstdio>
#include <cstring>
#include <filesystem>
#include <memory>

#include "core/assess/assess.h"
#include "core/assess/readiness_assessor.h"
#include "core/assess/strength_assessor.h"
#include "core/assess/with_cuts.h"
#include "core/io/plan_file.h"
#include "core/remedy/remedies.h"
#include "ui/wording/finding_words.h"

namespace yardcast::cli {

namespace {

bool isGrave(const Finding& finding)
{
    return finding.severity == Severity::stop;
}

/// One line a problem: where, what, and what would be right.
void complainAbout(const std::string& path, const std::vector<Finding>& problems)
{
    for (const Finding& problem : problems) {
        std::string line = path;
        if (!problem.pointer.empty()) line += ": " + problem.pointer;
        line += ": " + ui::findingText(problem).toStdString();
        const std::string help = ui::findingHelp(problem).toStdString();
        if (!help.empty()) line += " " + help;
        complain(line);
    }
}

std::optional<std::string> readWhole(const std::string& path)
{
    FileText file = readFile(std::filesystem::path(path));
    if (!file.text) complain(path + ": cannot be read: " + file.error);
    return std::move(file.text);
}

std::optional<PriceBook> loadPrices(const std::string& path)
{
    if (path.empty()) return exampleBook();
    const std::optional<std::string> text = readWhole(path);
    if (!text) return {};
    PriceBookReading reading = readPriceBook(*text);
    if (reading.problems.empty()) return std::move(reading.book);
    complainAbout(path, reading.problems);
    return {};
}

}  // namespace

std::optional<Loaded> load(const Job& job)
{
    std::optional<PriceBook> prices = loadPrices(job.pricesPath);
    const std::optional<std::string> text = readWhole(job.planPath);
    if (!text) return {};
    PlanReading reading = readPlan(*text);
    if (!reading.plan || std::any_of(reading.problems.begin(), reading.problems.end(), isGrave)) {
        complainAbout(job.planPath, reading.problems);
        return {};
    }
    if (!prices) return {};

    Assessment assessment = *assess(*reading.plan, *prices);
    std::vector<Finding>& findings = assessment.findings;
    findings.insert(findings.end(), reading.problems.begin(), reading.problems.end());
    std::stable_sort(findings.begin(), findings.end(),
                     [](const Finding& a, const Finding& b) { return a.severity > b.severity; });
    return Loaded{std::move(*reading.plan), std::move(*prices),
                  std::make_shared<const Assessment>(std::move(assessment))};
}

void solve(Loaded& loaded, Refinement refinement)
{
    const auto strength = StrengthAssessor().assess(loaded.plan, *loaded.assessment, refinement);
    if (strength) loaded.assessment = withStrength(loaded.plan, loaded.assessment, *strength);
    const auto readiness = ReadinessAssessor().assess(loaded.plan, *loaded.assessment, {}, refinement);
    if (readiness) loaded.assessment = withReadiness(loaded.plan, loaded.assessment, *readiness);
}

void solveCuts(Loaded& loaded)
{
    const CutPlansPtr cuts = CutSolver().solve(cutJobs(loaded.plan, loaded.prices, *loaded.assessment));
    loaded.assessment = withCuts(loaded.plan, loaded.assessment, loaded.prices, cuts);
}

MouldSavings saveMoulds(Loaded& loaded)
{
    const std::optional<MouldSavings> savings = mouldSavings(loaded.plan, loaded.prices, *loaded.assessment);
    if (!savings) return {};
    loaded.assessment = withMouldSavings(loaded.plan, loaded.assessment, *savings);
    return *savings;
}

void tryRemedies(Loaded& loaded)
{
    RemedyFinder finder(loaded.plan, loaded.prices, loaded.assessment, Refinement::working);
    FoundRemedies found;
    for (const Finding& finding : finder.findings()) found[complaintOf(finding)] = finder.remedies(finding);
    loaded.assessment = withRemedies(loaded.assessment, found);
}

bool wouldOverwritePlan(const Job& job)
{
    std::error_code ignored;
    if (!std::filesystem::equivalent(job.planPath, job.outPath, ignored)) return false;
    complain(job.outPath + ": that is the plan itself. Give -o another name.");
    return true;
}

bool knowsPart(const Loaded& loaded, const std::string& part)
{
    if (part.empty() || findPart(loaded.plan, part)) return true;
    std::string ids;
    for (const PartPtr& known : loaded.plan.parts) ids += (ids.empty() ? "" : ", ") + known->id;
    complain("there is no part \"" + part + "\" in the plan. There are: " + ids + ".");
    return false;
}

void complain(const std::string& text)
{
    std::fprintf(stderr, "yardcast-cli: %s\n", text.c_str());
}

bool print(const std::string& text)
{
    if (std::fwrite(text.data(), 1, text.size(), stdout) == text.size() && std::fflush(stdout) == 0) return true;
    complain(std::string("standard output: ") + std::strerror(errno));
    return false;
}

}  // namespace yardcast::cli
