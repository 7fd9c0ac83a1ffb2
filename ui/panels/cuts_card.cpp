#include "ui/panels/cuts_card.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "ui/panels/counted.h"
#include "ui/panels/cut_view.h"
#include "ui/panels/line_view.h"
#include "ui/wording/cut_names.h"
#include "ui/wording/figures.h"
#include "ui/wording/names.h"

namespace yardcast::ui {

namespace {

QString nameOfJob(const std::string& item, const std::string& name)
{
    return name.empty() ? itemWord(item) : QString::fromStdString(name);
}

/// Of all lists together.
struct Sums {
    int bought = 0;
    int atHand = 0;
    int pieces = 0;
    int cuts = 0;
    int unplaced = 0;
    double price = 0.0;        ///< of sheets and lengths, minor units
    double bound = 0.0;
    bool proven = true;
    std::int64_t cutsMinor = 0;
    Size largestRest;
    double longestRestMm = 0.0;
};

void addSheets(const SheetCuts& cuts, Sums& sums)
{
    for (const CutSheet& sheet : cuts.plan.sheets) {
        const bool atHand = cuts.job.stock[static_cast<std::size_t>(sheet.stock)].atHand;
        (atHand ? sums.atHand : sums.bought) += sheet.times;
        sums.pieces += static_cast<int>(sheet.pieces.size()) * sheet.times;
        if (sheet.remainders.empty() || !cuts.job.atStore) continue;
        const Size rest = sheet.remainders.front().size;
        if (rest.width * rest.depth > sums.largestRest.width * sums.largestRest.depth) sums.largestRest = rest;
    }
    for (const UnplacedPieces& of : cuts.plan.unplaced) sums.unplaced += of.count;
    if (cuts.job.atStore) sums.cuts += cuts.plan.cuts;
    sums.cutsMinor += cuts.cutsMinor;
    sums.price += cuts.plan.sheetsPrice;
    sums.bound += cuts.plan.bound;
    sums.proven = sums.proven && cuts.plan.proven;
}

Sums sumsOf(const CutPlans& cuts)
{
    Sums sums;
    for (const SheetCutsPtr& one : cuts.sheets) addSheets(*one, sums);
    for (const BarCutsPtr& one : cuts.bars) {
        for (const BarPattern& pattern : one->plan.patterns) {
            const bool atHand = one->job.stock[static_cast<std::size_t>(pattern.stock)].atHand;
            (atHand ? sums.atHand : sums.bought) += pattern.times;
            sums.pieces += static_cast<int>(pattern.pieces.size()) * pattern.times;
            sums.longestRestMm = std::max(sums.longestRestMm, pattern.remainderMm);
        }
        for (const BarUnplaced& of : one->plan.unplaced) sums.unplaced += of.count;
        sums.price += one->plan.price;
        sums.bound += one->plan.bound;
        sums.proven = sums.proven && one->plan.proven;
    }
    for (const CutWithoutStock& without : cuts.withoutStock) sums.unplaced += static_cast<int>(without.pieces.size());
    return sums;
}

QString priceText(double minor, const std::string& currency)
{
    return moneyText(static_cast<std::int64_t>(std::llround(minor)), currency);
}

/// Names once each, with how often.
QStringList countedNames(const std::vector<int>& pieces, const std::vector<CutPiece>& of)
{
    QStringList out;
    std::vector<int> sorted = pieces;
    std::stable_sort(sorted.begin(), sorted.end());
    for (std::size_t i = 0; i < sorted.size();) {
        std::size_t same = i;
        while (same < sorted.size() && sorted[same] == sorted[i]) ++same;
        const QString name = QString::fromStdString(of[static_cast<std::size_t>(sorted[i])].name);
        out << (same - i == 1 ? name : CutsCard::tr("%1 × %2").arg(same - i).arg(name));
        i = same;
    }
    return out;
}

}  // namespace

CutsCard::CutsCard(PlanDocument& document, Selection& selection, LiveAssessment& live, QWidget* parent)
    : LiveCard(QStringLiteral("cutsCard"), document, selection, live, parent)
{
    setEmptyText(tr("Nothing to saw yet. What moulds, steel and fronts are cut from is laid out here."));
    picture_ = new CutView(this);
    addToolRow(picture_);
    stock_ = addTable(tr("Sheets and lengths"), {{tr("From"), false}, {tr("cuts"), true}, {tr("left\nmm"), true}});
    pieces_ = addTable(tr("Pieces"), {{tr("Piece"), false}, {tr("count"), true}, {tr("mm"), true}});
    picture_->clear();
}

CardSummary CutsCard::summarise(const Plan& plan, const Assessment& assessment) const
{
    CardSummary summary;
    if (!assessment.cuts) {
        summary.empty = assessment.castings.empty() && assessment.fronts.empty();
        if (!summary.empty) summary.big = {.text = QStringLiteral("…"), .unit = tr("cuts are being worked out")};
        return summary;
    }
    const Sums sums = sumsOf(*assessment.cuts);
    summary.empty = sums.pieces + sums.unplaced == 0;
    if (summary.empty) return summary;
    summary.big = {.code = QStringLiteral("cut_sheets"),
                   .text = QString::number(sums.bought),
                   .unit = counted(sums.pieces, sums.bought == 1 ? tr("sheet or length to buy, for 1 piece")
                                                                 : tr("sheets and lengths to buy, for 1 piece"),
                                   sums.bought == 1 ? tr("sheet or length to buy, for %1 pieces")
                                                    : tr("sheets and lengths to buy, for %1 pieces"))};
    if (sums.unplaced > 0) {
        summary.lines.append({.text = counted(sums.unplaced, tr("1 piece fits nothing that can be bought"),
                                              tr("%1 pieces fit nothing that can be bought")),
                              .mark = Severity::caution});
    }
    summary.lines.append({.code = QStringLiteral("cut_sheets"),
                          .text = tr("%1, %2", "money, proven or gap")
                                      .arg(priceText(sums.price, plan.currency),
                                           gapText(sums.bound, sums.proven, plan.currency))});
    if (sums.cuts > 0) {
        summary.lines.append({.code = QStringLiteral("store_cuts"),
                              .text = tr("%1 at the store, %2")
                                          .arg(counted(sums.cuts, tr("1 cut"), tr("%1 cuts")),
                                               moneyText(sums.cutsMinor, plan.currency))});
    }
    if (summary.lines.size() < 3 && sums.largestRest.width > 0.0) {
        summary.lines.append({.text = tr("Largest remainder %1").arg(sizeText(sums.largestRest.width, sums.largestRest.depth))});
    }
    return summary;
}

int CutsCard::keep(const Source& source)
{
    sources_.push_back(source);
    return static_cast<int>(sources_.size()) - 1;
}

void CutsCard::addSheetLines(const Plan& plan, const CutPlans& cuts, int job, QList<Line>& lines)
{
    const SheetCuts& of = *cuts.sheets[static_cast<std::size_t>(job)];
    if (of.job.pieces.empty()) return;
    const QString item = QString::fromStdString(of.job.item);
    lines.append({.key = QStringLiteral("item/") + item,
                  .kind = Line::Kind::heading,
                  .cells = {nameOfJob(of.job.item, of.job.name)}});
    int number = 1;
    for (int s = 0; s < static_cast<int>(of.plan.sheets.size()); ++s) {
        const CutSheet& sheet = of.plan.sheets[static_cast<std::size_t>(s)];
        const CutStock& stock = of.job.stock[static_cast<std::size_t>(sheet.stock)];
        const Size size = of.job.list.stock[static_cast<std::size_t>(sheet.stock)].size;
        QStringList details{counted(static_cast<int>(sheet.pieces.size()), tr("1 piece"), tr("%1 pieces"))};
        details << (stock.atHand ? tr("at hand") : moneyText(stock.priceMinor, plan.currency));
        if (!sheet.blanks.empty()) {
            details << counted(static_cast<int>(sheet.blanks.size()), tr("1 blank to rip"), tr("%1 blanks to rip"));
        }
        QString left = QStringLiteral("–");
        if (!sheet.remainders.empty()) {
            const Size rest = sheet.remainders.front().size;
            left = tr("%1 × %2").arg(shortNumberText(rest.width, 0), shortNumberText(rest.depth, 0));
        }
        const QString name = sheet.times == 1 ? tr("%1:  %2", "number, size of a sheet").arg(number).arg(sizeText(size.width, size.depth))
                                              : tr("%1–%2:  %3", "numbers, size of sheets")
                                                    .arg(number)
                                                    .arg(number + sheet.times - 1)
                                                    .arg(sizeText(size.width, size.depth));
        lines.append({.key = QStringLiteral("sheet/%1/%2").arg(item).arg(s),
                      .cells = {name, QString::number(sheet.cuts), left},
                      .details = details,
                      .source = keep({.sheets = job, .row = s})});
        number += sheet.times;
    }
}

void CutsCard::addBarLines(const Plan& plan, const CutPlans& cuts, int job, QList<Line>& lines)
{
    const BarCuts& of = *cuts.bars[static_cast<std::size_t>(job)];
    if (of.job.pieces.empty()) return;
    const QString item = QString::fromStdString(of.job.item);
    lines.append({.key = QStringLiteral("item/") + item,
                  .kind = Line::Kind::heading,
                  .cells = {nameOfJob(of.job.item, of.job.name)}});
    for (int p = 0; p < static_cast<int>(of.plan.patterns.size()); ++p) {
        const BarPattern& pattern = of.plan.patterns[static_cast<std::size_t>(p)];
        const CutStock& stock = of.job.stock[static_cast<std::size_t>(pattern.stock)];
        QStringList details = countedNames(pattern.pieces, of.job.pieces);
        details << (stock.atHand ? tr("at hand") : moneyText(stock.priceMinor, plan.currency));
        const int cuts1 = static_cast<int>(pattern.pieces.size()) - (pattern.remainderMm > 0.0 ? 0 : 1);
        lines.append({.key = QStringLiteral("bar/%1/%2").arg(item).arg(p),
                      .cells = {tr("%1 × %2", "how many, length")
                                    .arg(pattern.times)
                                    .arg(lengthText(of.job.list.stock[static_cast<std::size_t>(pattern.stock)].lengthMm)),
                                QString::number(cuts1), shortNumberText(pattern.remainderMm, 0)},
                      .details = details,
                      .source = keep({.bars = job, .row = p})});
    }
}

void CutsCard::fillTables(const Plan& plan, const Assessment& assessment)
{
    sources_.clear();
    QList<Line> stock;
    QList<Line> pieces;
    if (assessment.cuts) {
        const CutPlans& cuts = *assessment.cuts;
        for (int j = 0; j < static_cast<int>(cuts.sheets.size()); ++j) addSheetLines(plan, cuts, j, stock);
        for (int j = 0; j < static_cast<int>(cuts.bars.size()); ++j) addBarLines(plan, cuts, j, stock);
        const auto addPiece = [&](const std::string& item, const std::vector<CutPiece>& of, std::size_t p, int count,
                                  const QString& size, const Source& source) {
            const CutPiece& piece = of[p];
            QStringList details{cutPieceWord(piece.what), subjectName(&plan, piece.subject)};
            if (piece.goodFace) details << tr("good face in");
            if (piece.shaped) details << tr("to shape");
            pieces.append({.key = QStringLiteral("%1/%2").arg(QString::fromStdString(item)).arg(p),
                           .cells = {QString::fromStdString(piece.name), QString::number(count), size},
                           .details = details,
                           .source = keep(source)});
        };
        for (int j = 0; j < static_cast<int>(cuts.sheets.size()); ++j) {
            const SheetJob& job = cuts.sheets[static_cast<std::size_t>(j)]->job;
            for (std::size_t p = 0; p < job.pieces.size(); ++p) {
                const SheetPiece& piece = job.list.pieces[p];
                addPiece(job.item, job.pieces, p, piece.count,
                         tr("%1 × %2").arg(shortNumberText(piece.size.width, 1), shortNumberText(piece.size.depth, 1)),
                         {.sheets = j, .piece = static_cast<int>(p)});
            }
        }
        for (int j = 0; j < static_cast<int>(cuts.bars.size()); ++j) {
            const BarJob& job = cuts.bars[static_cast<std::size_t>(j)]->job;
            for (std::size_t p = 0; p < job.pieces.size(); ++p) {
                addPiece(job.item, job.pieces, p, job.list.pieces[p].count,
                         shortNumberText(job.list.pieces[p].lengthMm, 1), {.bars = j, .piece = static_cast<int>(p)});
            }
        }
    }
    stock_->lineModel().setLines(std::move(stock));
    pieces_->lineModel().setLines(std::move(pieces));
    showChosen();
}

/// The sheet of the current line; without one, the first.
void CutsCard::showChosen()
{
    const LineModel& model = stock_->lineModel();
    int row = stock_->currentRow();
    for (int r = 0; row < 0 && r < model.lines().size(); ++r) {
        if (model.line(r).source >= 0) row = r;
    }
    showPicture(row < 0 || row >= model.lines().size() ? -1 : model.line(row).source);
}

void CutsCard::showPicture(int source)
{
    const AssessmentPtr& assessment = shownAssessment();
    if (source < 0 || source >= static_cast<int>(sources_.size()) || !assessment || !assessment->cuts) {
        picture_->clear();
        return;
    }
    const Source& of = sources_[static_cast<std::size_t>(source)];
    const CutPlans& cuts = *assessment->cuts;
    if (of.sheets >= 0) {
        const SheetCutsPtr& sheets = cuts.sheets[static_cast<std::size_t>(of.sheets)];
        int row = of.row;
        for (int s = 0; row < 0 && s < static_cast<int>(sheets->plan.sheets.size()); ++s) {
            for (const PlacedPiece& piece : sheets->plan.sheets[static_cast<std::size_t>(s)].pieces) {
                if (piece.piece == of.piece) row = s;
            }
        }
        if (row >= 0) {
            picture_->showSheet(sheets, row);
        } else {
            picture_->clear();
        }
    } else {
        picture_->showBars(cuts.bars[static_cast<std::size_t>(of.bars)]);
    }
}

void CutsCard::lineBecameCurrent(const LineView& view, int row)
{
    if (row < 0) return;
    const Line& line = (&view == stock_ ? stock_ : pieces_)->lineModel().line(row);
    if (line.source >= 0) showPicture(line.source);
}

QList<FigureValue> CutsCard::valuesBehind(const QString& code, const Plan& plan, const Assessment& assessment) const
{
    QList<FigureValue> values;
    if (!assessment.cuts) return values;
    const CutPlans& cuts = *assessment.cuts;
    if (code == QLatin1String("store_cuts")) {
        for (const SheetCutsPtr& one : cuts.sheets) {
            if (!one->job.atStore) continue;
            values.append({nameOfJob(one->job.item, one->job.name),
                           tr("%1, %2").arg(counted(one->plan.cuts, tr("1 cut"), tr("%1 cuts")),
                                            moneyText(one->cutsMinor, plan.currency))});
            values.append({tr("Free cuts a sheet"), QString::number(one->job.list.freeCuts)});
            values.append({tr("Saw width"), lengthText(one->job.list.sawMm)});
        }
        return values;
    }
    const auto add = [&](const QString& name, long long count, double price, double bound, bool proven) {
        values.append({tr("%1 × %2").arg(count).arg(name), priceText(price, plan.currency)});
        if (!proven) values.append({tr("No plan costs less than"), priceText(bound, plan.currency)});
    };
    for (const SheetCutsPtr& one : cuts.sheets) {
        add(nameOfJob(one->job.item, one->job.name), one->plan.count, one->plan.sheetsPrice, one->plan.bound,
            one->plan.proven);
    }
    for (const BarCutsPtr& one : cuts.bars) {
        add(nameOfJob(one->job.item, one->job.name), one->plan.count, one->plan.price, one->plan.bound, one->plan.proven);
    }
    return values;
}

LiveCard::LineNote CutsCard::noteOf(const LineView&, const Line& line, const Plan& plan,
                                    const Assessment& assessment) const
{
    if (line.source < 0 || line.source >= static_cast<int>(sources_.size()) || !assessment.cuts) return {};
    const Source& of = sources_[static_cast<std::size_t>(line.source)];
    QList<FigureValue> values;
    if (of.sheets >= 0 && of.row >= 0) {
        const SheetCuts& cuts = *assessment.cuts->sheets[static_cast<std::size_t>(of.sheets)];
        const CutSheet& sheet = cuts.plan.sheets[static_cast<std::size_t>(of.row)];
        double used = 0.0;
        for (const PlacedPiece& piece : sheet.pieces) used += piece.size.width * piece.size.depth;
        const Size size = cuts.job.list.stock[static_cast<std::size_t>(sheet.stock)].size;
        values.append({tr("Sheet"), sizeText(size.width, size.depth)});
        values.append({tr("Used"), percentText(100.0 * used / (size.width * size.depth))});
        for (const SheetArea& rest : sheet.remainders) {
            values.append({tr("Left over"), sizeText(rest.size.width, rest.size.depth)});
        }
        values.append({tr("Cuts"), QString::number(sheet.cuts)});
        values.append({tr("Price"), moneyText(cuts.job.stock[static_cast<std::size_t>(sheet.stock)].priceMinor, plan.currency)});
    }
    return {QStringLiteral("cut_sheets"), values};
}

void CutsCard::visitSubjects(const LineView&, const Line& line, const Assessment& assessment,
                             const std::function<void(const std::string&)>& visit) const
{
    if (line.source < 0 || line.source >= static_cast<int>(sources_.size()) || !assessment.cuts) return;
    const Source& of = sources_[static_cast<std::size_t>(line.source)];
    const CutPlans& cuts = *assessment.cuts;
    const std::vector<CutPiece>& pieces = of.sheets >= 0 ? cuts.sheets[static_cast<std::size_t>(of.sheets)]->job.pieces
                                                         : cuts.bars[static_cast<std::size_t>(of.bars)]->job.pieces;
    std::set<std::string> seen;
    const auto say = [&](int piece) {
        const std::string& subject = pieces[static_cast<std::size_t>(piece)].subject;
        if (seen.insert(subject).second) visit(subject);
    };
    if (of.piece >= 0) {
        say(of.piece);
    } else if (of.sheets >= 0) {
        for (const PlacedPiece& piece :
             cuts.sheets[static_cast<std::size_t>(of.sheets)]->plan.sheets[static_cast<std::size_t>(of.row)].pieces) {
            say(piece.piece);
        }
    } else {
        for (const int piece : cuts.bars[static_cast<std::size_t>(of.bars)]->plan.patterns[static_cast<std::size_t>(of.row)].pieces) {
            say(piece);
        }
    }
}

}  // namespace yardcast::ui
