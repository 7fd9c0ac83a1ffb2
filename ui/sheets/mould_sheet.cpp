#include <algorithm>
#include <cmath>
#include <initializer_list>
#include <optional>

#include <QPainter>

#include "ui/drawing/mould_section.h"
#include "ui/sheets/list_pages.h"
#include "ui/sheets/mould_drawing.h"
#include "ui/sheets/mould_tables.h"
#include "ui/sheets/scales.h"
#include "ui/sheets/sheet_frame.h"
#include "ui/sheets/sheet_page.h"
#include "ui/sheets/sheet_text.h"
#include "ui/sheets/sheet_words.h"
#include "ui/wording/board_times.h"
#include "ui/wording/mould_names.h"
#include "ui/wording/names.h"

namespace yardcast::ui {

namespace {

constexpr double kSideMm = 62.0;        ///< of the column or field with the casting as it stands
constexpr double kQuestionsMm = 74.0;
constexpr double kStripMm = 48.0;
constexpr double kAirMm = 2.0;

SheetPage blank(const Plan& plan, const MouldSubject& subject)
{
    SheetPage page;
    page.sheet = sheetTitle(QStringLiteral("mould"));
    page.part = subjectName(&plan, subject.casting->id);
    page.caution = Sheets::tr("Sawing: goggles, hearing protection. Silicone and release agent: by their safety sheets. Foam "
                              "floats in fresh concrete: hold it down. A full mould is heavy: a table that carries it.");
    return page;
}

QString viewText(const Mould& mould)
{
    if (mould.standing) return Sheets::tr("from above, AS IT STANDS IN THE MOULD");
    return mould.mirrored ? Sheets::tr("from above, AS IT LIES IN THE MOULD (mirrored)")
                          : Sheets::tr("from above, as it lies in the mould (not mirrored)");
}

/// Questions with a box for yes and one for no.
void paintQuestions(QPainter& painter, const QRectF& box, const MouldSubject& subject)
{
    painter.setPen(QPen(Qt::black, 0.5));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(box);
    constexpr double kTickMm = 4.0;
    const QRectF inner = box.adjusted(2.0, 1.5, -2.0, -1.0);
    const QStringList questions = mouldQuestions(subject);
    const QString last = Sheets::tr("Any NO: stop, do not pour.");
    const double words = inner.width() - 2.0 * (kTickMm + 8.0);
    Type type;
    type.sizeMm = kSmallType;
    double needed = 0.0;
    for (; type.sizeMm > 2.2; type.sizeMm -= 0.1) {
        needed = 2.0 * lineHeightMm(type) + 1.0;
        for (const QString& question : questions) {
            needed += std::max(kTickMm, lineHeightMm(type) * static_cast<double>(wrapped(question, words, type).size())) + 1.2;
        }
        if (needed <= inner.height()) break;
    }
    Type strong = type;
    strong.bold = true;
    double y = inner.top();
    y += paintLines(painter, QRectF(inner.left(), y, inner.width(), 10.0), {Sheets::tr("CHECK AT THE MOULD")}, strong) + 1.0;
    for (const QString& question : questions) {
        const double height = paintWrapped(painter, QRectF(inner.left(), y, words, 40.0), question, type);
        double x = inner.left() + words + 2.0;
        for (const QString& answer : {Sheets::tr("yes"), Sheets::tr("no")}) {
            painter.setPen(QPen(Qt::black, 0.35));
            painter.drawRect(QRectF(x, y + 0.3, kTickMm, kTickMm));
            paintLines(painter, QRectF(x + kTickMm + 0.8, y + 0.3, 8.0, kTickMm), {answer}, type);
            x += kTickMm + 7.0;
        }
        y += std::max(kTickMm, height) + 1.2;
    }
    paintLines(painter, QRectF(inner.left(), y, inner.width(), 10.0), {last}, strong);
}

void paintTitled(QPainter& painter, const QRectF& box, const QString& title, const ScaledDrawing& drawing)
{
    const QRectF inner = box.adjusted(1.0, kListTitleMm, -1.0, 0.0);
    const int own = fitInBox(drawing, inner.size());
    paintListTitle(painter, QRectF(box.left(), box.top(), box.width(), kListTitleMm), title.arg(scaleText(own)));
    paintInBox(painter, drawing, inner, own);
}

/// Where the parts of the page lie.
struct Layout {
    bool landscape = true;
    bool alone = false;     ///< the mould has the page to itself, all else a page of its own
    int scale = 1;
    QRectF mould;
    QRectF standing;
    QRectF section;
    QRectF questions;
};

bool fits(const ScaledDrawing& drawing, const QRectF& box, int scale)
{
    const QSizeF size = drawing.bounds(paperStyle(scale)).size() / scale;
    return size.width() <= box.width() - 2.0 * kAirMm && size.height() <= box.height() - 2.0 * kAirMm;
}

/// The two pictures side by side, the section and the questions below.
Layout sideBySide(bool landscape)
{
    const QRectF area = contentBox(landscape, true);
    Layout layout;
    layout.landscape = landscape;
    layout.standing = QRectF(area.left(), area.top(), kSideMm, area.height() - kStripMm);
    layout.mould = QRectF(area.left() + kSideMm, area.top(), area.width() - kSideMm, area.height() - kStripMm);
    layout.questions = QRectF(area.right() - kQuestionsMm, area.bottom() - kStripMm, kQuestionsMm, kStripMm);
    layout.section = QRectF(area.left(), area.bottom() - kStripMm, area.width() - kQuestionsMm, kStripMm);
    return layout;
}

/// For pieces as wide as the sheet: the mould over the whole width, all else in a strip below.
Layout oneBelow(bool landscape)
{
    const QRectF area = contentBox(landscape, true);
    Layout layout;
    layout.landscape = landscape;
    const double strip = landscape ? kStripMm : 2.0 * kStripMm;
    layout.mould = area.adjusted(0.0, 0.0, 0.0, -strip);
    const QRectF below(area.left(), area.bottom() - strip, area.width(), strip);
    if (landscape) {
        layout.standing = QRectF(below.left(), below.top(), kSideMm, strip);
        layout.questions = QRectF(below.right() - kQuestionsMm, below.top(), kQuestionsMm, strip);
        layout.section = QRectF(layout.standing.right(), below.top(), below.width() - kSideMm - kQuestionsMm, strip);
    } else {
        layout.standing = QRectF(below.left(), below.top(), below.width() - kQuestionsMm, strip / 2.0);
        layout.questions = QRectF(below.right() - kQuestionsMm, below.top(), kQuestionsMm, strip / 2.0);
        layout.section = QRectF(below.left(), below.top() + strip / 2.0, below.width(), strip / 2.0);
    }
    return layout;
}

/// The mould as high as the sheet; all else in a column at the left.
Layout inAColumn()
{
    constexpr double kColumnMm = 118.0;
    const QRectF area = contentBox(true, true);
    Layout layout;
    const QRectF column(area.left(), area.top(), kColumnMm, area.height());
    layout.mould = area.adjusted(kColumnMm, 0.0, 0.0, 0.0);
    const double standing = column.height() - 2.0 * kStripMm;
    layout.standing = QRectF(column.left(), column.top(), kColumnMm, standing);
    layout.section = QRectF(column.left(), column.top() + standing, kColumnMm, kStripMm);
    layout.questions = QRectF(column.left(), column.bottom() - kStripMm, kColumnMm, kStripMm);
    return layout;
}

/// The mould alone; the rest on an upright page, the section over its whole width.
Layout onTwoPages(bool landscape)
{
    Layout layout;
    layout.alone = true;
    layout.landscape = landscape;
    layout.mould = contentBox(landscape, true);
    const QRectF other = contentBox(false, false);
    layout.standing = QRectF(other.left(), other.top(), other.width() - kQuestionsMm, 1.5 * kStripMm);
    layout.questions = QRectF(other.right() - kQuestionsMm, other.top(), kQuestionsMm, 1.5 * kStripMm);
    layout.section = other.adjusted(0.0, 1.5 * kStripMm, 0.0, 0.0);
    return layout;
}

/// The first of these ways that shows the mould largest.
std::optional<Layout> largestOf(const ScaledDrawing& mould, std::initializer_list<Layout> ways)
{
    for (const int scale : reductionScales()) {
        for (Layout layout : ways) {
            if (!fits(mould, layout.mould, scale)) continue;
            layout.scale = scale;
            return layout;
        }
    }
    return std::nullopt;
}

Layout layoutFor(const ScaledDrawing& mould, bool standing)
{
    // Of those that show the mould equally large, the first leave the section most room.
    const std::optional<Layout> one =
        largestOf(mould, {sideBySide(true), sideBySide(false), oneBelow(true), oneBelow(false), inAColumn()});
    const std::optional<Layout> two = largestOf(mould, {onTwoPages(true), onTwoPages(false)});
    // Both pictures on one page show the mirror best. Of what is poured standing the section is as high as the piece, and
    // the ties are seen in it only.
    if (two && (standing || !one || one->scale > 2 * two->scale)) return *two;
    if (one) return *one;
    Layout last = oneBelow(true);
    last.scale = fitInBox(mould, last.mould.size());
    return last;
}

std::vector<SheetPage> drawingPages(const Plan& plan, const MouldSubject& subject)
{
    const double sectionX = mouldSectionXMm(subject);
    const ScaledDrawing mould = mouldDrawing(subject, sectionX);
    const ScaledDrawing standing = standingDrawing(subject);
    const ScaledDrawing section = mouldSectionDrawing(subject, sectionX);
    const Layout layout = layoutFor(mould, subject.mould->standing);
    const auto paintRest = [subject, standing, section, layout](QPainter& painter) {
        painter.setPen(QPen(Qt::black, 0.25));
        painter.setBrush(Qt::NoBrush);
        painter.drawRect(layout.standing);
        painter.drawRect(layout.section);
        paintTitled(painter, layout.standing, Sheets::tr("In the kitchen, %1"), standing);
        paintTitled(painter, layout.section,
                    Sheets::tr("Section A–A as it is poured, %1; heights above the base in mm"), section);
        paintQuestions(painter, layout.questions, subject);
    };
    SheetPage page = blank(plan, subject);
    page.landscape = layout.landscape;
    page.view = viewText(*subject.mould);
    page.scale = scaleText(layout.scale);
    page.scaleOf = layout.scale;
    page.paint = [mould, layout, paintRest](QPainter& painter, const QRectF&) {
        paintInBox(painter, mould, layout.mould, layout.scale);
        if (!layout.alone) paintRest(painter);
    };
    std::vector<SheetPage> pages{page};
    if (layout.alone) {
        SheetPage rest = blank(plan, subject);
        rest.view = viewText(*subject.mould);
        rest.paint = [paintRest](QPainter& painter, const QRectF&) { paintRest(painter); };
        pages.push_back(std::move(rest));
    }
    return pages;
}

std::vector<SheetPage> tablePages(const Plan& plan, const Assessment& assessment, const LaterBoards& later,
                                  const MouldSubject& subject)
{
    std::vector<ListBlock> blocks;
    const auto add = [&](const QString& title, SheetTable table) {
        if (table.rows.empty()) return;
        ListBlock block;
        block.title = title;
        block.table = std::move(table);
        blocks.push_back(std::move(block));
    };
    add(Sheets::tr("Steps in their order"), mouldStepTable(subject));
    add(Sheets::tr("Parts"), mouldPartTable(*subject.mould));
    add(Sheets::tr("Cutouts, from the inside of the mould's sides to both edges, as you stand at the front"),
        mouldCutoutTable(subject));
    add(Sheets::tr("Ties, from the foot up"), mouldTieTable(*subject.mould));
    add(Sheets::tr("Heights"), mouldHeightTable(subject));
    SheetPage like = blank(plan, subject);
    like.view = viewText(*subject.mould);
    return listPages(like, blocks, boardTimeTexts(plan, assessment, later, subject.casting->id) + mouldSentences(subject));
}

}  // namespace

std::vector<SheetPage> mouldPages(const Plan& plan, const Assessment& assessment, const QString& only)
{
    std::vector<SheetPage> pages;
    const std::string name = only.toStdString();
    const LaterBoards later = laterBoards(plan, assessment.moulds, assessment.pour);
    for (const MouldPtr& mould : assessment.moulds) {
        if (!name.empty() && name != mould->casting && name != mould->part) continue;
        const std::optional<MouldSubject> subject = mouldSubject(plan, assessment, mould->casting);
        if (!subject) continue;
        std::vector<SheetPage> drawn = drawingPages(plan, *subject);
        pages.insert(pages.end(), std::make_move_iterator(drawn.begin()), std::make_move_iterator(drawn.end()));
        std::vector<SheetPage> more = tablePages(plan, assessment, later, *subject);
        pages.insert(pages.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
    }
    if (pages.empty()) {
        SheetPage page;
        page.sheet = sheetTitle(QStringLiteral("mould"));
        pages.push_back(wordsPage(page, Sheets::tr("Nothing of this plan is cast, so there is no mould to build.")));
    }
    return pages;
}

}  // namespace yardcast::ui
