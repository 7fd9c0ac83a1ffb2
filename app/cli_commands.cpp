#include "app/cli_commands.h"

#include "app/cli_reports.h"
#include "app/cli_schema.h"
#include "core/assess/assessment_json.h"
#include "core/io/plan_file.h"
#include "core/remedy/remedies.h"
#include "ui/wording/finding_words.h"

namespace yardcast::cli {

namespace {

int written(const std::string& text)
{
    return print(text) ? kDone : kUnusable;
}

}  // namespace

int assess(const Job& job)
{
    std::optional<Loaded> loaded = load(job);
    if (!loaded) return kUnusable;
    solve(*loaded, Refinement::printed);
    solveCuts(*loaded);
    if (!job.json) return written(assessmentReport(*loaded));
    if (!job.noRemedies) tryRemedies(*loaded);
    const MouldSavings savings = saveMoulds(*loaded);
    return written(assessmentJson(loaded->plan, *loaded->assessment, ui::findingWords(loaded->plan), &savings));
}

int check(const Job& job)
{
    std::optional<Loaded> loaded = load(job);
    if (!loaded) return kUnusable;
    solve(*loaded, Refinement::printed);
    solveCuts(*loaded);
    if (!print(findingsReport(*loaded))) return kUnusable;
    return loaded->assessment->count(Severity::stop) > 0 ? kStopFound : kDone;
}

int list(const Job& job)
{
    std::optional<Loaded> loaded = load(job);
    if (!loaded) return kUnusable;
    solveCuts(*loaded);
    return written(job.csv ? shoppingCsv(*loaded) : shoppingReport(*loaded));
}

int best(const Job& job)
{
    const std::optional<Loaded> loaded = load(job);
    if (!loaded) return kUnusable;
    const Part* part = findPart(loaded->plan, job.part);
    if (part == nullptr || part->kind() != PartKind::counter) {
        complain("--part: there is no counter with the id \"" + job.part + "\".");
        return kUnusable;
    }
    const SearchGoal goal = job.goal == "cheapest" ? SearchGoal::cheapest : SearchGoal::lightest;
    const std::optional<SearchAnswer> answer = searchCounter(loaded->plan, loaded->prices, job.part, goal, {});
    if (!answer) {
        complain(job.part + ": none of the forms tried holds in every case.");
        return kNothingFound;
    }
    if (!job.outPath.empty()) {
        const std::string error = writeFileAtomically(job.outPath, writePlan(answer->plan));
        if (!error.empty()) {
            complain(job.outPath + ": cannot be written: " + error);
            return kUnusable;
        }
    }
    const FindingWords words = ui::findingWords(loaded->plan);
    return written(words.remedy(answer->remedy) + "\n" + words.effect(answer->remedy) + "\n");
}

int schema(const Job&)
{
    return written(std::string(planSchemaText()));
}

}  // namespace yardcast::cli
