#include "app/cli_cuts.h"

#include <filesystem>
#include <variant>

#include <QCoreApplication>

#include "app/cli_text_table.h"
#include "core/assess/cuts_json.h"
#include "core/io/cut_list.h"
#include "core/io/plan_file.h"
#include "core/purchase/later_boards.h"
#include "ui/wording/figures.h"
#include "ui/wording/finding_words.h"

namespace yardcast::cli {

namespace {

struct Cli {
    Q_DECLARE_TR_FUNCTIONS(cli)
};

QString plainMm(double mm)
{
    return ui::shortNumberText(mm, 1);
}

QString plainSize(double length, double width)
{
    return width > 0.0 ? plainMm(length) + QStringLiteral(" x ") + plainMm(width) : plainMm(length);
}

QString words(const std::string& text)
{
    return QString::fromStdString(text);
}

/// One piece on one sheet or length, or on several that are cut alike.
struct SawnPiece {
    QString item;
    QString numbers;        ///< of the sheets or lengths: "3" or "3-6", from 1 within the item
    QString stock;
    CutPiece piece;
    double lengthMm = 0.0;
    double widthMm = 0.0;   ///< 0: of a length
    QString place;          ///< "620, 0" from the low corner; of a length the order along it
    bool atHome = false;    ///< ripped of a strip that the store cuts, or not cut at the store at all
};

QString numbersText(int first, int times)
{
    return times == 1 ? QString::number(first) : QStringLiteral("%1-%2").arg(first).arg(first + times - 1);
}

void addSheets(const SheetCuts& cuts, std::vector<SawnPiece>& out)
{
    int number = 1;
    for (const CutSheet& sheet : cuts.plan.sheets) {
        const Size stock = cuts.job.list.stock[static_cast<std::size_t>(sheet.stock)].size;
        for (const PlacedPiece& placed : sheet.pieces) {
            const auto p = static_cast<std::size_t>(placed.piece);
            out.push_back({words(cuts.job.name), numbersText(number, sheet.times), plainSize(stock.width, stock.depth),
                           cuts.job.pieces[p], placed.size.width, placed.size.depth,
                           plainMm(placed.at.x) + QStringLiteral(", ") + plainMm(placed.at.y),
                           placed.blank >= 0 || !cuts.job.atStore});
        }
        number += sheet.times;
    }
}

void addBars(const BarCuts& cuts, std::vector<SawnPiece>& out)
{
    int number = 1;
    for (const BarPattern& pattern : cuts.plan.patterns) {
        const double stock = cuts.job.list.stock[static_cast<std::size_t>(pattern.stock)].lengthMm;
        for (std::size_t i = 0; i < pattern.pieces.size(); ++i) {
            const auto p = static_cast<std::size_t>(pattern.pieces[i]);
            out.push_back({words(cuts.job.name), numbersText(number, pattern.times), plainSize(stock, 0.0),
                           cuts.job.pieces[p], cuts.job.list.pieces[p].lengthMm, 0.0, QString::number(i + 1), true});
        }
        number += pattern.times;
    }
}

std::vector<SawnPiece> sawnPieces(const CutPlans& cuts)
{
    std::vector<SawnPiece> out;
    for (const SheetCutsPtr& one : cuts.sheets) addSheets(*one, out);
    for (const BarCutsPtr& one : cuts.bars) addBars(*one, out);
    return out;
}

QString stepText(const SawStep& step, int number)
{
    const QString run = step.run == SawRun::alongX ? Cli::tr("along the length") : Cli::tr("across");
    return Cli::tr("cut %1: part %2, %3, at %4").arg(number).arg(step.part).arg(run, plainMm(step.atMm));
}

/// The cuts at the store in sawing order, sheet by sheet.
QString stepsText(const SheetCuts& cuts)
{
    QString text;
    int number = 1;
    for (const CutSheet& sheet : cuts.plan.sheets) {
        text += Cli::tr("  Sheet %1, cut so:").arg(numbersText(number, sheet.times)) + QLatin1Char('\n');
        int cut = 1;
        for (const SawStep& step : sheet.steps) {
            if (!step.atHome) text += QStringLiteral("    ") + stepText(step, cut) + QLatin1Char('\n');
            ++cut;
        }
        number += sheet.times;
    }
    return text;
}

QString piecesText(const std::vector<SawnPiece>& pieces, bool atHome)
{
    QString text;
    QString item;
    TextTable table(QStringLiteral("llllll"));
    const auto flush = [&] {
        if (!table.isEmpty()) text += QLatin1Char('\n') + item + QLatin1Char('\n') + table.text();
        table = TextTable(QStringLiteral("llllll"));
    };
    for (const SawnPiece& one : pieces) {
        if (one.atHome != atHome) continue;
        if (one.item != item) flush();
        item = one.item;
        table.add({one.numbers, one.stock, words(one.piece.name), plainSize(one.lengthMm, one.widthMm), one.place,
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
    for (const LaterCut& cut : later.cuts) {
        QStringList pieces;
        for (const LaterPiece& piece : cut.pieces)
            pieces << words(piece.name) + QLatin1Char(' ') + plainSize(piece.size.width, piece.size.depth);
        text += Cli::tr("  On day %1 saw the base of %2 (%3) to %4.")
                    .arg(cut.day)
                    .arg(words(cut.casting), words(cut.board), pieces.join(QStringLiteral(", "))) +
                QLatin1Char('\n');
    }
    text += Cli::tr("  Look at each face first: scratches and swollen places show in the concrete. What is sawn at "
                    "home is less exact than the store's panel saw.") +
            QLatin1Char('\n');
    return text;
}

std::string sawText(const CutPlans& cuts, const LaterBoards& later)
{
    const std::vector<SawnPiece> pieces = sawnPieces(cuts);
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
    text.replace(QChar(0x00A0), QLatin1Char(' '));
    return text.toStdString();
}

QString csvField(QString text)
{
    text.replace(QLatin1Char('"'), QStringLiteral("\"\""));
    return QLatin1Char('"') + text + QLatin1Char('"');
}

std::string sawCsv(const CutPlans& cuts)
{
    QString text = QStringLiteral("item,stock,stock_size_mm,for,piece,kind,length_mm,width_mm,place,where,shaped\r\n");
    for (const SawnPiece& one : sawnPieces(cuts)) {
        const QStringList row{csvField(one.item),
                              csvField(one.numbers),
                              csvField(one.stock),
                              csvField(words(one.piece.subject)),
                              csvField(words(one.piece.name)),
                              csvField(words(one.piece.what)),
                              plainMm(one.lengthMm),
                              one.widthMm > 0.0 ? plainMm(one.widthMm) : QString(),
                              csvField(one.place),
                              one.atHome ? QStringLiteral("home") : QStringLiteral("store"),
                              one.piece.shaped ? QStringLiteral("yes") : QStringLiteral("no")};
        text += row.join(QLatin1Char(',')) + QStringLiteral("\r\n");
    }
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
    return print(job.csv ? sawCsv(*cuts) : sawText(*cuts, later)) ? kDone : kUnusable;
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
