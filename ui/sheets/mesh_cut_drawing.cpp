#include <algorithm>
#include <cmath>
#include <optional>
#include <vector>

#include <QPainter>

#include "ui/drawing/label_set.h"
#include "ui/drawing/marks.h"
#include "ui/sheets/free_labels.h"
#include "ui/sheets/sheet_words.h"
#include "ui/sheets/steel_drawing.h"
#include "ui/wording/figures.h"
#include "ui/wording/steel_names.h"

namespace yardcast::ui {

namespace {

/// Room for figures that find none on the sheet, style units.
constexpr double kAsideUnits = 6.0;

/// From the own frame of the casting to a piece as it lies on the sheet: seen like the slab in the mould, and by a
/// quarter turn where the piece lies turned.
class PieceMap {
public:
    PieceMap(const MeshPiece& piece, const QRectF& box, Seen seen)
        : piece_(piece), box_(box), isMirrored_(seen == Seen::inTheMould)
    {
    }

    QPointF operator()(Point own) const
    {
        const double width = piece_.at.width();
        const double height = piece_.at.height();
        const double x = own.x - piece_.at.low.x;
        const double right = isMirrored_ ? width - x : x;
        const double up = own.y - piece_.at.low.y;
        if (piece_.turnedOnSheet) return {box_.left() + height - up, box_.bottom() - right};
        return {box_.left() + right, box_.bottom() - up};
    }

    const Box& laid() const { return piece_.at; }

private:
    const MeshPiece& piece_;
    QRectF box_;
    bool isMirrored_;
};

QString wholeMm(double mm)
{
    return shortNumberText(std::round(mm));
}

/// Words of the drawing: sizes stand inside what is cut away, all others keep out of it.
struct CutLabels {
    std::vector<OverlayLabel> outside;
    std::vector<OverlayLabel> inside;
    std::vector<QLineF> lines;
    std::vector<QRectF> holes;
};

/// What is cut away, its size in it, and how far it lies from the sides that meet at the dot.
void paintNotch(QPainter& painter, const Ring& notch, const PieceMap& map, const PaintStyle& style,
                CutLabels& made)
{
    const std::optional<Box> box = boundsOf(notch);
    if (!box) return;
    QPolygonF polygon;
    for (const Point& point : notch) polygon.append(map(point));
    painter.setPen(outlinePen(style));
    painter.setBrush(style.ink.sheet);
    painter.drawPolygon(polygon);
    painter.setBrush(Qt::NoBrush);
    constexpr double kNoteworthyMm = 1.0;
    const Point middle = box->centre();
    const Point corner = map.laid().low;
    const double area = box->width() * box->height();
    const QString size = sizeText(std::round(box->width()), std::round(box->height()));
    const QPointF across = map(box->high) - map(box->low);
    const QString words = Sheets::tr("cut away %1").arg(size);
    QStringList texts;
    const QString bare = Sheets::tr("%1 × %2").arg(wholeMm(box->width()), wholeMm(box->height()));
    for (const QString& text : {words, size, bare}) {
        if (textSizeMm(text, style).width() < std::abs(across.x())) texts << text;
    }
    if (!texts.isEmpty()) made.inside.push_back(platedLabel(map(middle), texts, style, area));
    made.holes.push_back(polygon.boundingRect());
    for (qsizetype i = 0; i < polygon.size(); ++i) made.lines.emplace_back(polygon[i], polygon[(i + 1) % polygon.size()]);
    painter.setPen(Qt::NoPen);
    painter.setBrush(style.ink.ink);
    painter.drawEllipse(map(corner), 1.2 * style.mmPerUnit, 1.2 * style.mmPerUnit);
    painter.setBrush(Qt::NoBrush);
    // Of small holes the table says where they are: their figures would run into those of others.
    constexpr double kLeastUnits = 5.0;
    if (std::min(box->width(), box->height()) < kLeastUnits * style.mmPerUnit) return;
    const auto distanceLine = [&](Point from, Point to) {
        const QLineF line(map(from), map(to));
        if (distance(from, to) < kNoteworthyMm) return;
        painter.setPen(thinPen(style, style.ink.ink));
        painter.drawLine(line);
        const QPointF way = (line.p2() - line.p1()) / line.length();
        if (line.length() > 6.0 * style.mmPerUnit) {
            paintArrowhead(painter, line.p1(), -way, style, style.ink.ink);
            paintArrowhead(painter, line.p2(), way, style, style.ink.ink);
        }
        made.outside.push_back(platedLabel(line.center(), {wholeMm(distance(from, to))}, style, 1e9 + area));
    };
    distanceLine({corner.x, middle.y}, {box->low.x, middle.y});
    distanceLine({middle.x, corner.y}, {middle.x, box->low.y});
}

void addSides(const QRectF& box, std::vector<QLineF>& lines)
{
    lines.emplace_back(box.topLeft(), box.topRight());
    lines.emplace_back(box.topRight(), box.bottomRight());
    lines.emplace_back(box.bottomRight(), box.bottomLeft());
    lines.emplace_back(box.bottomLeft(), box.topLeft());
}

/// In the middle of the piece, or of the widest strip beside what is cut away.
QPointF wordsPlace(const MeshPiece& piece, const QRectF& box, Seen seen)
{
    std::optional<Box> largest;
    for (const Ring& notch : piece.notches) {
        const std::optional<Box> one = boundsOf(notch);
        if (one && (!largest || one->width() * one->height() > largest->width() * largest->height())) largest = one;
    }
    if (!largest) return box.center();
    const PieceMap map(piece, box, seen);
    const Box& at = piece.at;
    const double left = largest->low.x - at.low.x;
    const double right = at.high.x - largest->high.x;
    const double x = left > right ? (at.low.x + largest->low.x) / 2.0 : (at.high.x + largest->high.x) / 2.0;
    // Above the middle, out of the way of the line of the distance.
    return map({x, at.centre().y + 0.25 * at.height()});
}

}  // namespace

ScaledDrawing meshCutDrawing(const MeshLayout& mesh, Seen seen)
{
    /// Two sheets side by side.
    const double gap = 60.0;
    const int across = mesh.sheets > 1 ? 2 : 1;
    const int down = (mesh.sheets + across - 1) / across;
    const double width = mesh.sheet.width;
    const double depth = mesh.sheet.depth;
    const auto cornerOf = [=](int sheet) {
        return QPointF((sheet % across) * (width + gap), (sheet / across) * (depth + gap));
    };
    ScaledDrawing drawing;
    const auto boundsAt = [=](const PaintStyle& style) {
        const double unit = style.mmPerUnit;
        return QRectF(0.0, 0.0, across * (width + gap) - gap, down * (depth + gap) - gap)
            .adjusted(-kAsideUnits * unit, -kAsideUnits * unit, kAsideUnits * unit, kAsideUnits * unit);
    };
    drawing.bounds = boundsAt;
    drawing.paint = [=](QPainter& painter, const PaintStyle& style) {
        CutLabels made;
        for (int sheet = 0; sheet < mesh.sheets; ++sheet) {
            painter.setPen(thinPen(style, style.ink.ink));
            painter.setBrush(Qt::NoBrush);
            const QRectF box(cornerOf(sheet), QSizeF(width, depth));
            painter.drawRect(box);
            addSides(box, made.lines);
        }
        for (const MeshPiece& piece : mesh.pieces) {
            QSizeF size(piece.at.width(), piece.at.height());
            if (piece.turnedOnSheet) size.transpose();
            // The low corner of a sheet is drawn below left.
            const QPointF low(piece.onSheet.x, depth - piece.onSheet.y - size.height());
            const QRectF box(cornerOf(piece.sheet) + low, size);
            painter.setPen(outlinePen(style));
            painter.setBrush(style.ink.cast);
            painter.drawRect(box);
            addSides(box, made.lines);
            painter.setBrush(Qt::NoBrush);
            painter.setPen(thinPen(style, style.ink.ink));
            if (piece.notches.empty()) painter.drawLine(box.bottomLeft(), box.topRight());
            for (const Ring& notch : piece.notches) {
                paintNotch(painter, notch, PieceMap(piece, box, seen), style, made);
            }
            OverlayLabel label;
            label.at = wordsPlace(piece, box, seen);
            const QString cutTo = sizeText(std::round(size.width()), std::round(size.height()));
            const QString words =
                Sheets::tr("%1, %2", "mark and size of a piece of mesh").arg(meshMark(piece.mark), cutTo);
            label.texts = {meshMark(piece.mark)};
            if (textSizeMm(words, style).width() < size.width()) label.texts.prepend(words);
            label.look.behind = style.ink.sheet;
            label.look.colour = style.ink.ink;
            label.weight = 1.0 + size.width() * size.height();
            made.outside.push_back(std::move(label));
        }
        const QRectF bounds = boundsAt(style);
        paintFreeLabels(painter, made.inside, style, made.lines, {}, bounds);
        paintFreeLabels(painter, made.outside, style, made.lines, made.holes, bounds);
    };
    return drawing;
}

}  // namespace yardcast::ui
