#include "app/cli_cuts.h"

#include <filesystem>
#include <variant>

#include <QCoreApplication>

#include "app/cli_text_table.h"
#include "core/assess/cuts_json.h"
#include "core/io/cut_list.h"
#include "core/io/plan_file.h"
#include "core/purchase/later_boards.h"
#include "ui/wording/board_times.h"
#include "ui/wording/cut_table.h"
#include "ui/wording/figures.h"
#include "ui/wording/finding_words.h"

namespace yardcast::cli {

namespace {

struct Cli {
    Q_DECLARE_TR_FUNCTIONS(cli)
};

QString words(const std::string& text)
{
    return QString::fromStdString(text);
}

QString stepText(const SawStep& step, int number)
{
    const QString run = step.run == SawRun::alongX ? Cli::tr("along the length") : Cli::tr("across");
    return Cli::tr("cut %1: part %2, %3, at %4").arg(number).arg(step.part).arg(run, ui::shortNumberText(step.atMm, 1));
}

/// The cuts at the store in sawing order, sheet by sheet.
QString stepsText(const SheetCuts& cuts)
{
    QString text;
    int number = 1;
    for (const CutSheet& sheet : cuts.plan.sheets) {
        text += Cli::tr("  Sheet %1, cut so:").arg(ui::stockNumbersText(number, sheet.times)) + QLatin1Char('\n');
        int cut = 1;
        for (const SawStep& step : sheet.steps) {
            if (!step.atHome) text += QStringLiteral("    ") + stepText(step, cut) + QLatin1Char('\n');
            ++cut;
        }
        number += sheet.times;
    }
    return text;
}

QString piecesText(const std::vector<ui::SawnPiece>& pieces, bool atHome)
{
    QString text;
    QString item;
    TextTable table(QStringLiteral("llllll"));
    const auto flush = [&] {
        if (!table.isEmpty()) text += QLatin1Char('\n') + item + QLatin1Char('\n') + table.text();
        table = TextTable(QStringLiteral("llllll"));
    };
    for (const ui::SawnPiece& one : pieces) {
        if (one.atHome != atHome) continue;
        if (one.item != item) flush();
        item = one.item;
        table.add({one.numbers, one.stock, words(one.piece.name), ui::sawnSizeText(one), one.place,
                   words(one.piece.what)});
    }
    flush();
    return text;
}

/// What old bases are sawn to, day by day of the pour plan.
QString laterText(const LaterBoards& later)
{
    if (later.cuts.empty()) return {};
    QString text = QLatin1Char('\n') +
                   Cli::tr("Old bases, if you saw them up: these boards need not be bought (day of the pour plan)") +
                   QLatin1Char('\n');
    for (const LaterCut& cut : later.cuts) text += QStringLiteral("  ") + ui::laterCutText(cut) + QLatin1Char('\n');
    text += Cli::tr("  Look at each face first: scratches and swollen places show in the concrete. What is sawn at "
                    "home is less exact than the store's panel saw.") +
            QLatin1Char('\n');
    return text;
}

std::string sawText(const CutPlans& cuts, const LaterBoards& later)
{
    const std::vector<ui::SawnPiece> pieces = ui::sawnPieces(cuts);
    QString text =
        Cli::tr("Saw list: number of the sheet or length, its size, piece, size, place, kind (mm)") + QLatin1Char('\n');
    text += QLatin1Char('\n') + Cli::tr("At the store") + QLatin1Char('\n') + piecesText(pieces, false);
    for (const SheetCutsPtr& one : cuts.sheets) {
        if (one->job.atStore) text += QLatin1Char('\n') + words(one->job.name) + QLatin1Char('\n') + stepsText(*one);
    }
    text += QLatin1Char('\n') + Cli::tr("At home") + QLatin1Char('\n') + piecesText(pieces, true);
    for (const CutWithoutStock& one : cuts.withoutStock) {
        text += QLatin1Char('\n') +
                Cli::tr("%1: no sheet or length is known; %n piece(s) not cut.", nullptr,
                        static_cast<int>(one.pieces.size()))
                    .arg(words(one.item)) +
                QLatin1Char('\n');
    }
    text += laterText(later);
    text.replace(QChar(0x00D7), QLatin1Char('x'));
    text.replace(QChar(0x00A0), QLatin1Char(' '));
    return text.toStdString();
}

}  // namespace

int saw(const Job& job)
{
    std::optional<Loaded> loaded = load(job);
    if (!loaded) return kUnusable;
    solveCuts(*loaded);
    const CutPlansPtr& cuts = loaded->assessment->cuts;
    if (job.json)
        return print(cutsJson(*cuts).dump(2, ' ', false, Json::error_handler_t::replace) + "\n") ? kDone : kUnusable;
    const LaterBoards later = laterBoards(loaded->plan, loaded->assessment->moulds, loaded->assessment->pour);
    return print(job.csv ? ui::cutsCsv(*cuts) : sawText(*cuts, later)) ? kDone : kUnusable;
}

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
