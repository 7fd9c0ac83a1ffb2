#include <algorithm>

#include <QPainter>

#include "core/purchase/later_boards.h"
#include "ui/drawing/cut_picture.h"
#include "ui/sheets/cautions.h"
#include "ui/sheets/list_pages.h"
#include "ui/sheets/saw_rows.h"
#include "ui/sheets/sheet_frame.h"
#include "ui/sheets/sheet_text.h"
#include "ui/sheets/sheet_words.h"
#include "ui/wording/board_times.h"
#include "ui/wording/cut_names.h"
#include "ui/wording/figures.h"
#include "ui/wording/mould_names.h"
#include "ui/wording/names.h"

namespace yardcast::ui {

namespace {

/// An empty box to tick.
const QString kTick = QString(QChar(0x25A1));
constexpr double kSheetDrawingMm = 105.0;
constexpr double kBarsDrawingMm = 150.0;
constexpr double kThicknessMm = 22.0;

QString nameOfJob(const std::string& item, const std::string& name)
{
    return name.empty() ? itemWord(item) : QString::fromStdString(name);
}

/// As large as the page is wide: every size is written in, so no scale is needed.
template <class Bounds, class Paint> ListBlock pictureBlock(const QString& title, double mostMm, Bounds bounds, Paint paint)
{
    ListBlock block;
    block.title = title;
    const QSizeF room(contentBox(false, false).width() - 2.0, mostMm);
    PaintStyle style = paperStyle();
    style.mmPerUnit = cutPictureScale(bounds, style, room);
    block.pictureMm = bounds(style).height() / style.mmPerUnit + 1.0;
    block.picture = [style, bounds, paint](QPainter& painter, const QRectF& box) {
        painter.translate(box.center());
        painter.scale(1.0 / style.mmPerUnit, 1.0 / style.mmPerUnit);
        painter.translate(-bounds(style).center());
        paint(painter, style);
    };
    return block;
}

QString titleOf(const SheetJob& job, const CutSheet& sheet, int first, int all)
{
    const CutStock& stock = job.stock[static_cast<std::size_t>(sheet.stock)];
    const QString size = plainSize(job.list.stock[static_cast<std::size_t>(sheet.stock)].size);
    const QString name = nameOfJob(job.item, job.name);
    const QString of = sheet.times == 1 ? Sheets::tr("sheet %1 of %2").arg(first).arg(all)
                                        : Sheets::tr("sheets %1 to %2 of %3, all alike").arg(first).arg(first + sheet.times - 1).arg(all);
    return stock.atHand ? Sheets::tr("%1, %2: at hand, %3").arg(name, of, size) : Sheets::tr("%1, %2: %3").arg(name, of, size);
}

ListBlock cutsBlock(const SheetJob& job, const CutSheet& sheet, int firstStrip, const QString& title)
{
    ListBlock block;
    block.title = title;
    block.table.columns = {{QString(), 7.0, false},
                           {Sheets::tr("Cut"), 13.0, false},
                           {Sheets::tr("On the saw, mm"), 28.0, false},
                           {Sheets::tr("Measure off, mm"), 34.0, false},
                           {Sheets::tr("Gives"), 52.0, false},
                           {Sheets::tr("Leaves"), 50.0, false}};
    for (const SawRow& row : sawRows(job, sheet, false, firstStrip)) {
        block.table.rows.push_back({{kTick, row.number, row.onSaw, row.measureOff, row.gives, row.leaves}, {}, false});
    }
    return block;
}

/// The fence is set once for each width, whichever sheet the strips came from.
void addRips(const SheetCuts& cuts, std::vector<ListBlock>& blocks)
{
    const std::vector<RipRow> rows = ripRows(cuts);
    const int rounds = rows.empty() ? 0 : rows.back().round + 1;
    for (int round = 0; round < rounds; ++round) {
        const bool across = round % 2 == 1;
        ListBlock block;
        block.title = round == 0 ? Sheets::tr("To rip at home, strips of all sheets: one setting of the fence, one row")
                      : across   ? Sheets::tr("Then cut to length at home: one setting of the stop, one row")
                                 : Sheets::tr("Then rip what is narrower still");
        block.table.columns = {{QString(), 7.0, false},
                               {across ? Sheets::tr("Stop, mm") : Sheets::tr("Fence, mm"), 20.0, true},
                               {across ? Sheets::tr("Cuts × wide, mm") : Sheets::tr("Cuts × long, mm"), 28.0, true},
                               {Sheets::tr("In strip (cut)"), 38.0, false},
                               {Sheets::tr("Gives"), 52.0, false},
                               {Sheets::tr("Leaves"), 39.0, false}};
        for (const RipRow& row : rows) {
            if (row.round != round) continue;
            block.table.rows.push_back({{kTick, shortNumberText(row.fenceMm, 1),
                                         Sheets::tr("%1 × %2").arg(row.count).arg(shortNumberText(row.longMm, 1)), row.from,
                                         row.gives.isEmpty() ? QStringLiteral("–") : row.gives,
                                         row.leaves.isEmpty() ? QStringLiteral("–") : row.leaves},
                                        {},
                                        false});
        }
        if (!block.table.rows.empty()) blocks.push_back(std::move(block));
    }
}

/// What a piece is beside its size.
QString whatItIs(const CutPiece& piece, bool atHome)
{
    QStringList what{cutPieceWord(piece.what)};
    if (piece.goodFace) what << Sheets::tr("good face in");
    const QString mitres = mitreText(piece.mitreDeg);
    if (!mitres.isEmpty()) {
        what << mitres;
    } else if (piece.shaped) {
        what << Sheets::tr("trimmed to the template");
    }
    if (piece.cutDownToMm > 0.0) what << Sheets::tr("cut down to %1 thick").arg(lengthText(piece.cutDownToMm));
    if (piece.parts > 1) what << Sheets::tr("%1 of them joined make one").arg(piece.parts);
    if (atHome) what << Sheets::tr("ripped at home");
    return what.join(QStringLiteral(", "));
}

ListBlock piecesBlock(const Plan& plan, const SheetJob& job, const CutSheet& sheet)
{
    ListBlock block;
    block.title = sheet.times == 1 ? Sheets::tr("Pieces: write the number on each and tick it")
                                   : Sheets::tr("Pieces of each of the %1 sheets: write the number on each").arg(sheet.times);
    block.table.columns = {{QString(), 7.0, false},
                           {Sheets::tr("Number"), 22.0, false},
                           {Sheets::tr("how many"), 18.0, true},
                           {Sheets::tr("mm"), 30.0, true},
                           {Sheets::tr("For"), 54.0, false},
                           {Sheets::tr("What it is"), 52.0, false}};
    for (const SawnPieceRow& row : sawnPieces(sheet)) {
        const CutPiece& piece = job.pieces[static_cast<std::size_t>(row.piece)];
        block.table.rows.push_back({{kTick, QString::fromStdString(piece.name), QString::number(row.count),
                                     plainSize(job.list.pieces[static_cast<std::size_t>(row.piece)].size),
                                     subjectName(&plan, piece.subject), whatItIs(piece, row.atHome)},
                                    {},
                                    false});
    }
    return block;
}

/// Where the store's board is not as thick as the plan says, sizes that hang on it are wrong: written down before sawing.
ListBlock thicknessBlock(const SheetJob& job)
{
    ListBlock block;
    block.title = Sheets::tr("Measure the board before anything is cut");
    block.pictureMm = kThicknessMm;
    block.picture = [thicknessMm = job.thicknessMm](QPainter& painter, const QRectF& box) {
        const QRectF field(box.left() + 2.0, box.top() + 1.0, 34.0, 12.0);
        painter.setPen(QPen(Qt::black, 0.5));
        painter.setBrush(Qt::NoBrush);
        painter.drawRect(field);
        Type type;
        type.align = Qt::AlignRight;
        paintFitted(painter, field.adjusted(0.0, 0.0, -2.0, 0.0), Sheets::tr("mm"), type);
        type.align = Qt::AlignLeft;
        paintWrapped(painter, QRectF(field.right() + 4.0, box.top() + 1.0, box.right() - field.right() - 6.0, 20.0),
                     Sheets::tr("These sizes are for boards of %1 mm. Boards that are called the same differ by a millimetre "
                                "and more (common practice, no source). If yours differ, put the measured thickness into "
                                "the plan and print this sheet again: the sizes of sides and formers hang on it.")
                         .arg(shortNumberText(thicknessMm, 1)),
                     type);
    };
    return block;
}

QStringList sumsOf(const Plan& plan, const SheetCuts& cuts)
{
    const SheetPlan& sheets = cuts.plan;
    QStringList lines;
    lines << Sheets::tr("%1: %2 for the sheets, %3.")
                 .arg(nameOfJob(cuts.job.item, cuts.job.name), moneyText(cuts.sheetsMinor, plan.currency),
                      gapText(sheets.bound, sheets.proven, plan.currency));
    if (cuts.job.atStore) {
        lines << Sheets::tr("Cuts at the store: %1, %2. Saw width reckoned with: %3.")
                     .arg(sheets.cuts)
                     .arg(moneyText(cuts.cutsMinor, plan.currency), lengthText(cuts.job.list.sawMm));
        if (cuts.job.list.leastStripMm > 0.0) {
            lines << Sheets::tr("The store cuts nothing narrower than %1: narrower strips come as wider blanks and are ripped "
                                "at home.")
                         .arg(lengthText(cuts.job.list.leastStripMm));
        }
    }
    for (const UnplacedPieces& of : sheets.unplaced) {
        lines << Sheets::tr("NOT CUT: %1 of %2, %3.")
                     .arg(of.count)
                     .arg(QString::fromStdString(cuts.job.pieces[static_cast<std::size_t>(of.piece)].name),
                          of.reason == Unplaced::tooLarge ? Sheets::tr("it fits no sheet")
                                                          : Sheets::tr("there are not enough sheets"));
    }
    return lines;
}

void addSheets(const Plan& plan, const SheetCutsPtr& cuts, std::vector<ListBlock>& blocks, QStringList& sentences)
{
    if (cuts->job.atStore && cuts->job.thicknessMm > 0.0) blocks.push_back(thicknessBlock(cuts->job));
    int first = 1;
    int firstStrip = 1;
    for (std::size_t s = 0; s < cuts->plan.sheets.size(); ++s) {
        const CutSheet& sheet = cuts->plan.sheets[s];
        blocks.push_back(pictureBlock(
            titleOf(cuts->job, sheet, first, cuts->plan.count), kSheetDrawingMm,
            [cuts, s](const PaintStyle& style) { return cutSheetBounds(cuts->job, cuts->plan.sheets[s], style); },
            [cuts, s](QPainter& painter, const PaintStyle& style) {
                paintCutSheet(painter, cuts->job, cuts->plan.sheets[s], style);
            }));
        if (sheet.cuts > 0) {
            blocks.push_back(cutsBlock(cuts->job, sheet, firstStrip,
                                       cuts->job.atStore ? Sheets::tr("Cuts at the store, in sawing order")
                                                         : Sheets::tr("Cuts, in order")));
        }
        blocks.push_back(piecesBlock(plan, cuts->job, sheet));
        first += sheet.times;
        firstStrip += static_cast<int>(sheet.blanks.size());
    }
    addRips(*cuts, blocks);
    sentences << sumsOf(plan, *cuts);
}

void addBars(const Plan& plan, const BarCutsPtr& cuts, std::vector<ListBlock>& blocks, QStringList& sentences)
{
    const BarJob& job = cuts->job;
    if (cuts->plan.patterns.empty()) return;
    const QString name = nameOfJob(job.item, job.name);
    blocks.push_back(pictureBlock(
        cuts->plan.count == 1 ? Sheets::tr("%1: 1 length").arg(name) : Sheets::tr("%1: %2 lengths").arg(name).arg(cuts->plan.count),
        kBarsDrawingMm, [cuts](const PaintStyle& style) { return cutBarsBounds(cuts->job, cuts->plan, style); },
        [cuts](QPainter& painter, const PaintStyle& style) { paintCutBars(painter, cuts->job, cuts->plan, style); }));
    ListBlock list;
    list.title = Sheets::tr("%1, length by length").arg(name);
    list.table.columns = {{QString(), 7.0, false},
                          {Sheets::tr("how many"), 18.0, true},
                          {Sheets::tr("from, mm"), 22.0, true},
                          {Sheets::tr("Cut in this order"), 112.0, false},
                          {Sheets::tr("left, mm"), 20.0, true}};
    for (const BarPattern& pattern : cuts->plan.patterns) {
        QStringList pieces;
        for (const int piece : pattern.pieces) {
            const CutPiece& of = job.pieces[static_cast<std::size_t>(piece)];
            const QString length = shortNumberText(job.list.pieces[static_cast<std::size_t>(piece)].lengthMm, 1);
            const QString number = QString::fromStdString(of.name);
            const QString mitres = mitreText(of.mitreDeg);
            pieces << (mitres.isEmpty() ? Sheets::tr("%1 (%2)", "length, number of a piece").arg(length, number)
                                        : Sheets::tr("%1 (%2, %3)", "length, number of a piece, mitres").arg(length, number, mitres));
        }
        list.table.rows.push_back({{kTick, QString::number(pattern.times),
                                    shortNumberText(job.list.stock[static_cast<std::size_t>(pattern.stock)].lengthMm, 1),
                                    pieces.join(QStringLiteral(" + ")), shortNumberText(pattern.remainderMm, 1)},
                                   {},
                                   false});
    }
    blocks.push_back(std::move(list));
    sentences << Sheets::tr("%1: %2, %3. Saw width reckoned with: %4.")
                     .arg(name, moneyText(cuts->priceMinor, plan.currency),
                          gapText(cuts->plan.bound, cuts->plan.proven, plan.currency), lengthText(job.list.sawMm));
    for (const BarUnplaced& of : cuts->plan.unplaced) {
        sentences << Sheets::tr("NOT CUT: %1 of %2, longer than all lengths or none left.")
                         .arg(of.count)
                         .arg(QString::fromStdString(job.pieces[static_cast<std::size_t>(of.piece)].name));
    }
}

/// What can be sawn up later at home. The lists before have all of it new.
void addOldBoards(const LaterBoards& later, std::vector<ListBlock>& blocks, QStringList& sentences)
{
    if (later.cuts.empty()) return;
    ListBlock list;
    list.title = Sheets::tr("Old bases that can be sawn up at home, by the day of the pour plan: then these need not be bought");
    list.table.columns = {{QString(), 7.0, false},
                          {Sheets::tr("day"), 12.0, true},
                          {Sheets::tr("old base"), 20.0, false},
                          {Sheets::tr("clean part, mm"), 28.0, false},
                          {Sheets::tr("can become, mm"), 112.0, false}};
    for (const LaterCut& cut : later.cuts) {
        list.table.rows.push_back({{kTick, QString::number(cut.day), QString::fromStdString(cut.board),
                                    plainSize(cut.clean), laterPiecesText(cut.pieces)},
                                   {},
                                   false});
    }
    blocks.push_back(std::move(list));
    sentences << Sheets::tr("Saw an old base only after its last casting has left it. Take its screws out first; look at the "
                            "face: what is scratched or swollen is no mould board any more. Saw width at home reckoned "
                            "with: %1.")
                     .arg(lengthText(kHomeSawMm));
}

}  // namespace

std::vector<SheetPage> sawPages(const Plan& plan, const Assessment& assessment)
{
    SheetPage like;
    like.sheet = sheetTitle(QStringLiteral("saw"));
    if (!assessment.cuts) {
        return {wordsPage(like, assessment.castings.empty() && assessment.fronts.empty()
                                    ? Sheets::tr("Nothing to saw yet: the plan has no parts.")
                                    : Sheets::tr("The cuts have not been worked out."))};
    }
    std::vector<SheetPage> pages;
    const auto add = [&](const std::vector<ListBlock>& blocks, const QStringList& sentences) {
        std::vector<SheetPage> more = listPages(like, blocks, sentences + sawCautions());
        pages.insert(pages.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
    };
    // One list a material: whoever stands at the saw has that and nothing else.
    for (const SheetCutsPtr& cuts : assessment.cuts->sheets) {
        std::vector<ListBlock> blocks;
        QStringList sentences;
        addSheets(plan, cuts, blocks, sentences);
        if (!cuts->job.pieces.empty()) add(blocks, sentences);
    }
    std::vector<ListBlock> blocks;
    QStringList sentences;
    for (const BarCutsPtr& cuts : assessment.cuts->bars) addBars(plan, cuts, blocks, sentences);
    for (const CutWithoutStock& without : assessment.cuts->withoutStock) {
        sentences << Sheets::tr("%1: no sheet or length of it has a price, so its %2 pieces are not laid out.")
                         .arg(itemWord(without.item))
                         .arg(without.pieces.size());
    }
    if (!blocks.empty() || !sentences.isEmpty()) add(blocks, sentences);
    std::vector<ListBlock> old;
    QStringList said;
    addOldBoards(laterBoards(plan, assessment.moulds, assessment.pour), old, said);
    if (!old.empty()) add(old, said);
    if (pages.empty()) return {wordsPage(like, Sheets::tr("Nothing to saw: the plan's parts ask for nothing that is cut."))};
    return pages;
}

}  // namespace yardcast::ui
