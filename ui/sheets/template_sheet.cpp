#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

#include <QPainter>

#include "ui/drawing/marks.h"
#include "ui/drawing/mould_painter.h"
#include "ui/drawing/own_map.h"
#include "ui/sheets/list_pages.h"
#include "ui/sheets/saw_rows.h"
#include "ui/sheets/scales.h"
#include "ui/sheets/sheet_frame.h"
#include "ui/sheets/sheet_page.h"
#include "ui/sheets/sheet_text.h"
#include "ui/sheets/sheet_words.h"
#include "ui/sheets/template_tiles.h"
#include "ui/wording/figures.h"
#include "ui/wording/mould_names.h"
#include "ui/wording/names.h"

namespace yardcast::ui {

namespace {

constexpr double kHeadMm = 11.0;        ///< of the words over the piece
constexpr double kAroundMm = 6.0;       ///< free round the shape
/// A piece that takes more pages than this is set out with a tape, unless it is asked for by name.
constexpr int kMostPages = 12;

/// One shape to saw to.
struct Shape {
    std::string name;       ///< of the parts: "C1-7"; of a block of several: of the first
    std::string about;      ///< cutout id
    QString title;
    QString size;
    QString blanks;         ///< sizes to saw before trimming: "380 × 380, 379 × 379"
    Region outline;         ///< mould frame
    Region narrow;          ///< the other end, where draft makes it narrower
    std::string casting;
    std::string part;
    bool mirrored = false;
    QString front;
};

QPointF drawn(Point mould) { return {mould.x, -mould.y}; }

double areaOf(const Region& region) { return std::fabs(areaMm2(region)); }

/// As on the saw list: each size once, in the order of the plies.
QString blanksOf(const std::vector<const MouldPart*>& parts)
{
    QStringList sizes;
    for (const MouldPart* part : parts) {
        const QString size = plainSize({part->lengthMm, part->widthMm});
        if (sizes.empty() || sizes.back() != size) sizes << size;
    }
    return sizes.join(QStringLiteral(", "));
}

/// The block that makes one cutout: its widest outline and its narrowest.
Shape formerShape(const std::vector<const MouldPart*>& plies)
{
    Shape shape;
    shape.name = plies.front()->name;
    shape.about = plies.front()->about;
    shape.blanks = blanksOf(plies);
    for (const MouldPart* ply : plies) {
        for (const Region& end : {ply->outline, ply->topOutline}) {
            if (end.empty()) continue;
            if (shape.outline.empty() || areaOf(end) > areaOf(shape.outline)) shape.outline = end;
            if (shape.narrow.empty() || areaOf(end) < areaOf(shape.narrow)) shape.narrow = end;
        }
    }
    if (areaOf(shape.outline) - areaOf(shape.narrow) < 1.0) shape.narrow.clear();
    shape.title = Sheets::tr("former of %1, No. %2")
                      .arg(QString::fromStdString(shape.about), mouldNumbers(plies));
    return shape;
}

void describe(Shape& shape, const Mould& mould, const Plan& plan)
{
    shape.casting = mould.casting;
    shape.part = mould.part;
    shape.mirrored = mould.mirrored;
    const Part* part = findPart(plan, mould.part);
    shape.front = frontEdgeName(part ? part->kind() : PartKind::counter);
    const std::optional<Box> box = boundsOf(shape.outline);
    if (box) shape.size = sizeText(box->width(), box->height());
    const auto* counter = part ? std::get_if<Counter>(&part->body) : nullptr;
    if (!counter) return;
    for (const Cutout& cutout : counter->cutouts) {
        if (cutout.id != shape.about) continue;
        if (cutout.shape == CutoutShape::circle) {
            shape.size = QChar(0x00D8) + lengthText(cutout.diameterMm);
        } else if (cutout.cornerRadiusMm.value_or(0.0) > 0.0) {
            shape.size = Sheets::tr("%1, corners of %2").arg(shape.size, lengthText(*cutout.cornerRadiusMm));
        }
        shape.title = Sheets::tr("%1 (%2)").arg(shape.title, purposeName(cutout.purpose).toLower());
    }
}

std::vector<Shape> shapesOf(const Mould& mould, const Plan& plan)
{
    std::vector<Shape> shapes;
    std::map<std::string, std::vector<const MouldPart*>> formers;
    for (const MouldPart& part : mould.parts) {
        if (part.kind == MouldPartKind::former && !part.about.empty()) formers[part.about].push_back(&part);
    }
    for (const auto& [about, plies] : formers) shapes.push_back(formerShape(plies));
    for (const MouldPart& part : mould.parts) {
        // A curved side is bent, not sawn to a curve.
        if (!part.shaped || part.kind == MouldPartKind::former || part.kind == MouldPartKind::side) continue;
        Shape shape;
        shape.name = part.name;
        shape.about = part.about;
        shape.outline = part.outline;
        shape.blanks = blanksOf({&part});
        shape.title = Sheets::tr("%1, No. %2").arg(mouldPartText(part), mouldNumber(part));
        shapes.push_back(std::move(shape));
    }
    for (Shape& shape : shapes) describe(shape, mould, plan);
    std::erase_if(shapes, [](const Shape& shape) { return shape.outline.empty(); });
    return shapes;
}

QRectF around(const Shape& shape)
{
    const Box box = boundsOf(shape.outline).value_or(Box{});
    return QRectF(drawn(box.low), drawn(box.high)).normalized().adjusted(-kAroundMm, -kAroundMm, kAroundMm, kAroundMm);
}

/// A target: its middle is the point where two pages are laid over one another.
void paintJoin(QPainter& painter, const JoinMark& mark)
{
    constexpr double kRadius = 2.2;
    painter.setPen(QPen(Qt::black, 0.25));
    painter.setBrush(Qt::NoBrush);
    painter.drawEllipse(mark.at, kRadius, kRadius);
    painter.drawLine(mark.at - QPointF(1.7 * kRadius, 0.0), mark.at + QPointF(1.7 * kRadius, 0.0));
    painter.drawLine(mark.at - QPointF(0.0, 1.7 * kRadius), mark.at + QPointF(0.0, 1.7 * kRadius));
    // No wider than what both pages have on either side of the line.
    Type type;
    type.sizeMm = 2.0;
    type.align = Qt::AlignHCenter;
    paintLines(painter, QRectF(mark.at + QPointF(-kTileOverlapMm / 2.0, kRadius + 0.2), QSizeF(kTileOverlapMm, 3.0)),
               {mark.name}, type);
}

/// Which way the front lies, whole on every page that has room for it within the piece.
void paintFront(QPainter& painter, const Shape& shape, const QRectF& piece, const QRectF& tile, const PaintStyle& style)
{
    constexpr double kRoomMm = 16.0;
    TextLook look;
    look.bold = true;
    look.behind = style.ink.sheet;
    look.sizeUnits = 3.4;
    const QString words = Sheets::tr("to the %1").arg(shape.front);
    const double half = textSizeMm(words, style, look).width() / 2.0 + 2.0;
    const QRectF seen = piece.intersected(tile.adjusted(kTileOverlapMm, kTileOverlapMm, -kTileOverlapMm, -kTileOverlapMm));
    if (seen.height() < kRoomMm || seen.width() < 2.0 * half) return;
    const double x = std::clamp(seen.left() + seen.width() / 4.0, seen.left() + half, seen.right() - half);
    const QPointF foot(x, seen.bottom() - 9.0);
    paintText(painter, foot - QPointF(0.0, 3.0), words, style, look);
    painter.setPen(QPen(Qt::black, 0.35));
    painter.drawLine(foot, foot + QPointF(0.0, 4.0));
    paintArrowhead(painter, foot + QPointF(0.0, 6.5), QPointF(0.0, 1.0), style, Qt::black);
}

void paintShape(QPainter& painter, const Shape& shape, const TileGrid& grid, const QRectF& tile)
{
    const PaintStyle style = paperStyle();
    const QPainterPath outline = regionPath(shape.outline, drawn);
    painter.setBrush(Qt::NoBrush);
    if (!shape.narrow.empty()) {
        painter.setPen(hiddenPen(style, Qt::black));
        painter.drawPath(regionPath(shape.narrow, drawn));
    }
    painter.setPen(QPen(Qt::black, 0.35, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin));
    painter.drawPath(outline);
    const QRectF box = outline.boundingRect();
    painter.setPen(centrePen(style, Qt::black));
    painter.drawLine(QPointF(box.center().x(), box.top() - 4.0), QPointF(box.center().x(), box.bottom() + 4.0));
    painter.drawLine(QPointF(box.left() - 4.0, box.center().y()), QPointF(box.right() + 4.0, box.center().y()));
    for (const QLineF& line : grid.joinLines()) {
        painter.setPen(phantomPen(style, Qt::black));
        painter.drawLine(line);
    }
    for (const JoinMark& mark : grid.joinMarks()) paintJoin(painter, mark);
    paintFront(painter, shape, box, grid.rows * grid.columns > 1 ? tile : tile.adjusted(-kTileOverlapMm, -kTileOverlapMm,
                                                                                       kTileOverlapMm, kTileOverlapMm),
               style);
}

/// Which page of the grid this is, small.
void paintGridKey(QPainter& painter, const QRectF& box, const TileGrid& grid, int row, int column)
{
    const double side = std::min(box.width() / grid.columns, box.height() / grid.rows);
    for (int r = 0; r < grid.rows; ++r) {
        for (int c = 0; c < grid.columns; ++c) {
            const QRectF cell(box.right() - (grid.columns - c) * side, box.top() + r * side, side, side);
            painter.setPen(QPen(Qt::black, 0.2));
            painter.setBrush(r == row && c == column ? QBrush(Qt::black) : QBrush(Qt::NoBrush));
            painter.drawRect(cell);
        }
    }
    painter.setBrush(Qt::NoBrush);
}

SheetPage tilePage(const Plan& plan, const Shape& shape, const TileGrid& grid, int row, int column)
{
    SheetPage page;
    page.landscape = grid.landscape;
    page.sheet = sheetTitle(QStringLiteral("template"));
    page.part = subjectName(&plan, shape.casting);
    page.view = shape.mirrored ? Sheets::tr("AS IT LIES IN THE MOULD (mirrored), true size")
                               : Sheets::tr("as it lies in the mould (not mirrored), true size");
    page.scale = scaleText(1);
    page.scaleOf = 1.0;
    page.caution = Sheets::tr("Print at 100 %, nothing fitted to the page; measure the check line before you saw. Goggles and "
                              "hearing protection at the saw.");
    const QString cell = grid.cellName(row, column);
    QStringList words{Sheets::tr("%1: %2, %3.").arg(QString::fromStdString(shape.casting), shape.title, shape.size)};
    words << (shape.mirrored ? Sheets::tr("MIRRORED, as in the mould: lay it on the board with the print up.")
                             : Sheets::tr("Lay it on the board with the print up."));
    words << Sheets::tr("Sawn %1 mm, then trimmed to the line.").arg(shape.blanks);
    if (!shape.narrow.empty()) words << Sheets::tr("Dashed: the narrow end.");
    if (grid.rows * grid.columns > 1) {
        words << Sheets::tr("Cut along the dash-dot line of one page, lay it over the other so that the same targets meet.");
    }
    page.paint = [shape, grid, row, column, cell, words](QPainter& painter, const QRectF& area) {
        const bool several = grid.rows * grid.columns > 1;
        Type type;
        type.sizeMm = kSmallType;
        const QRectF head(area.left() + 2.0, area.top() + 1.0, area.width() - 4.0 - (several ? 34.0 : 0.0), kHeadMm - 1.0);
        QStringList lines;
        for (; type.sizeMm > 2.0; type.sizeMm -= 0.1) {
            lines = wrapped(words.join(QLatin1Char(' ')), head.width(), type);
            if (lineHeightMm(type) * static_cast<double>(lines.size()) <= head.height()) break;
        }
        paintLines(painter, head, lines, type);
        if (several) {
            Type big;
            big.sizeMm = kBigType;
            big.bold = true;
            paintLines(painter, QRectF(area.right() - 34.0, area.top() + 0.6, 16.0, kHeadMm), {cell}, big);
            paintGridKey(painter, QRectF(area.right() - 17.0, area.top() + 1.0, 15.0, kHeadMm - 2.0), grid, row, column);
        }
        const QRectF room = area.adjusted(0.0, kHeadMm, 0.0, 0.0);
        painter.setPen(QPen(Qt::black, 0.2));
        painter.drawLine(room.topLeft(), room.topRight());
        painter.save();
        painter.setClipRect(room);
        painter.translate(room.center() - grid.tile(row, column).center());
        paintShape(painter, shape, grid, grid.tile(row, column));
        painter.restore();
    };
    return page;
}

}  // namespace

std::vector<SheetPage> templatePages(const Plan& plan, const Assessment& assessment, const QString& wanted)
{
    const std::string name = wanted.toStdString();
    std::vector<SheetPage> pages;
    for (const MouldPtr& mould : assessment.moulds) {
        for (const Shape& shape : shapesOf(*mould, plan)) {
            const bool named = !name.empty() && (name == shape.name || name == shape.about);
            const bool ofPiece = name.empty() || name == shape.casting || name == shape.part;
            if (!named && !ofPiece) continue;
            const TileGrid grid = tileGridFor(around(shape), kHeadMm);
            if (!named && grid.rows * grid.columns > kMostPages) continue;
            for (int row = 0; row < grid.rows; ++row) {
                for (int column = 0; column < grid.columns; ++column) {
                    pages.push_back(tilePage(plan, shape, grid, row, column));
                }
            }
        }
    }
    if (pages.empty()) {
        SheetPage page;
        page.sheet = sheetTitle(QStringLiteral("template"));
        pages.push_back(wordsPage(page, Sheets::tr("Nothing here is sawn to a shape: every board is a rectangle.")));
    }
    return pages;
}

}  // namespace yardcast::ui
