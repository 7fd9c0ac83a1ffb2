#include "app/cli_commands.h"

#include "app/cli_reports.h"
#include "app/cli_schema.h"
#include "core/assess/assessment_json.h"
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
    if (!job.json) return written(assessmentReport(*loaded));
    return written(assessmentJson(loaded->plan, *loaded->assessment, ui::findingWords(loaded->plan)));
}

int check(const Job& job)
{
    std::optional<Loaded> loaded = load(job);
    if (!loaded) return kUnusable;
    solve(*loaded, Refinement::working);
    if (!print(findingsReport(*loaded))) return kUnusable;
    return loaded->assessment->count(Severity::stop) > 0 ? kStopFound : kDone;
}

int list(const Job& job)
{
    const std::optional<Loaded> loaded = load(job);
    if (!loaded) return kUnusable;
    return written(job.csv ? shoppingCsv(*loaded) : shoppingReport(*loaded));
}

int schema(const Job&)
{
    return written(std::string(planSchemaText()));
}

}  // namespace yardcast::cli
