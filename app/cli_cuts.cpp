#include "app/cli_cuts.h"

#include <filesystem>
#include <variant>

#include "core/io/cut_list.h"
#include "core/io/plan_file.h"
#include "ui/wording/finding_words.h"

namespace yardcast::cli {

int cut(const Job& job)
{
    const FileText file = readFile(std::filesystem::path(job.listPath));
    if (!file.text) {
        complain(job.listPath + ": cannot be read: " + file.error);
        return kUnusable;
    }
    const CutListReading reading = readCutList(*file.text);
    for (const Finding& problem : reading.problems) {
        complain(job.listPath + (problem.pointer.empty() ? "" : ": " + problem.pointer) + ": " +
                 ui::findingText(problem).toStdString() + " " + ui::findingHelp(problem).toStdString());
    }
    if (!reading.problems.empty()) return kUnusable;
    std::string answer;
    if (const auto* bars = std::get_if<BarCutting>(&reading.list)) {
        answer = cutAnswer(*bars, cutBars(*bars));
    } else {
        const auto& sheets = std::get<SheetCutting>(reading.list);
        answer = cutAnswer(sheets, cutSheets(sheets));
    }
    return print(answer) ? kDone : kUnusable;
}

}  // namespace yardcast::cli
