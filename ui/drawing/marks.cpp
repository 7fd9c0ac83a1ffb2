#include "ui/drawing/marks.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include <QImage>
#include <QPainter>

namespace yardcast::ui {

QPen PaintStyle::pen(const QColor& colour, double widthUnits, Qt::PenStyle lineStyle) const
{
    QPen made(colour, onPaper ? widthUnits : widthUnits * devicePixels, lineStyle, Qt::FlatCap, Qt::MiterJoin);
    made.setCosmetic(!onPaper);
    return made;
}

namespace {

QPen patterned(const PaintStyle& style, const QColor& colour, const QList<qreal>& screen, const QList<qreal>& paper)
{
    QPen made = style.pen(colour, style.narrow());
    made.setDashPattern(style.onPaper ? paper : screen);
    return made;
}

}  // namespace

QPen outlinePen(const PaintStyle& style)
{
    return style.pen(style.ink.ink, style.wide());
}

QPen thinPen(const PaintStyle& style, const QColor& colour)
{
    return style.pen(colour, style.narrow());
}

// Dash lengths on paper are those of ISO 128-2 in line widths: dashed 12/3, chain 24/3/0.5/3; the screen's are
// shorter, since a pixel is wider than a narrow line.
QPen hiddenPen(const PaintStyle& style, const QColor& colour)
{
    return patterned(style, colour, {6, 4}, {12, 3});
}

QPen centrePen(const PaintStyle& style, const QColor& colour)
{
    return patterned(style, colour, {12, 3, 2, 3}, {24, 3, 0.5, 3});
}

QPen phantomPen(const PaintStyle& style, const QColor& colour)
{
    return patterned(style, colour, {12, 3, 2, 3, 2, 3}, {24, 3, 0.5, 3, 0.5, 3});
}

std::vector<Span> spansInside(const std::vector<QPolygonF>& polygons, QPointF origin, QPointF direction)
{
    std::vector<double> crossings;
    const QPointF normal(-direction.y(), direction.x());
    const double lengthSquared = QPointF::dotProduct(direction, direction);
    for (const QPolygonF& polygon : polygons) {
        const qsizetype count = polygon.size();
        for (qsizetype i = 0; i < count; ++i) {
            const QPointF a = polygon[i] - origin;
            const QPointF b = polygon[(i + 1) % count] - origin;
            const double sideA = QPointF::dotProduct(a, normal);
            const double sideB = QPointF::dotProduct(b, normal);
            if ((sideA < 0.0) == (sideB < 0.0)) {
                continue;
            }
            const QPointF at = a + (b - a) * (sideA / (sideA - sideB));
            crossings.push_back(QPointF::dotProduct(at, direction) / lengthSquared);
        }
    }
    std::sort(crossings.begin(), crossings.end());
    std::vector<Span> spans;
    for (std::size_t i = 0; i + 1 < crossings.size(); i += 2) {
        spans.push_back({crossings[i], crossings[i + 1]});
    }
    return spans;
}

namespace {

std::vector<QPolygonF> polygonsOf(const QPainterPath& path)
{
    const QList<QPolygonF> list = path.toSubpathPolygons();
    return {list.begin(), list.end()};
}

/// Calls `visit(origin, spans)` for parallel scan lines through the path; `direction` has length 1.
template <typename Visit>
void scan(const QPainterPath& path, QPointF direction, double spacingMm, Visit visit)
{
    const QRectF box = path.controlPointRect();
    if (box.isEmpty() || spacingMm <= 0.0) {
        return;
    }
    const std::vector<QPolygonF> polygons = polygonsOf(path);
    const QPointF normal(-direction.y(), direction.x());
    double low = std::numeric_limits<double>::max();
    double high = std::numeric_limits<double>::lowest();
    for (const QPointF& corner : {box.topLeft(), box.topRight(), box.bottomLeft(), box.bottomRight()}) {
        low = std::min(low, QPointF::dotProduct(corner, normal));
        high = std::max(high, QPointF::dotProduct(corner, normal));
    }
    // A plan with absurd sizes must not hang the sheet.
    constexpr double kMostLines = 4000.0;
    const double spacing = std::max(spacingMm, (high - low) / kMostLines);
    const auto first = static_cast<long long>(std::ceil(low / spacing));
    const auto last = static_cast<long long>(std::floor(high / spacing));
    for (long long row = first; row <= last; ++row) {
        const QPointF origin = normal * (static_cast<double>(row) * spacing);
        visit(row, origin, spansInside(polygons, origin, direction));
    }
}

/// Marks on a staggered lattice inside the path, each made by `add`.
template <typename Add>
void lattice(const QPainterPath& path, double pitchMm, double marginMm, Add add)
{
    // Marks are for the eye: an area with more of them than a sheet can show has none.
    const QRectF box = path.controlPointRect();
    constexpr double kMostMarks = 60'000.0;
    if (!(box.width() * box.height() < kMostMarks * pitchMm * pitchMm)) {
        return;
    }
    const QPointF along(1.0, 0.0);
    scan(path, along, pitchMm, [&](long long row, QPointF origin, const std::vector<Span>& spans) {
        const double shift = (row % 2 == 0) ? 0.0 : 0.5;
        for (const Span& span : spans) {
            const double from = span.from + marginMm;
            const double to = span.to - marginMm;
            const double first = std::ceil(from / pitchMm - shift);
            for (double k = first; (k + shift) * pitchMm <= to; k += 1.0) {
                add(QPointF((k + shift) * pitchMm, origin.y()));
            }
        }
    });
}

/// A tile for the screen, kept at one pixel a dot whatever the zoom; drawn as an image so that one fill does
/// tone and dots.
QBrush dotBrush(const PaintStyle& style)
{
    constexpr int kTile = 12;
    QImage tile(kTile, kTile, QImage::Format_RGB32);
    tile.fill(style.ink.cast);
    const QRgb dot = style.ink.castDots.rgb();
    tile.setPixel(2, 3, dot);
    tile.setPixel(8, 1, dot);
    tile.setPixel(5, 7, dot);
    tile.setPixel(10, 9, dot);
    tile.setPixel(1, 10, dot);
    QBrush brush(tile);
    brush.setTransform(QTransform::fromScale(style.mmPerUnit, style.mmPerUnit));
    return brush;
}

}  // namespace

std::vector<QLineF> hatchLines(const QPainterPath& path, double angleDeg, double spacingMm)
{
    const double angle = angleDeg * std::numbers::pi / 180.0;
    const QPointF direction(std::cos(angle), -std::sin(angle));
    std::vector<QLineF> lines;
    scan(path, direction, spacingMm, [&](long long, QPointF origin, const std::vector<Span>& spans) {
        for (const Span& span : spans) {
            lines.emplace_back(origin + direction * span.from, origin + direction * span.to);
        }
    });
    return lines;
}

void fillCast(QPainter& painter, const QPainterPath& path, const PaintStyle& style)
{
    if (!style.onPaper) {
        painter.fillPath(path, dotBrush(style));
        return;
    }
    painter.fillPath(path, style.ink.cast);
    const double size = 0.25 * style.mmPerUnit;
    // In pieces: readers of SVG do not take paths of any length.
    constexpr int kMostElements = 10'000;
    QPainterPath dots;
    const auto flush = [&] {
        if (!dots.isEmpty()) {
            painter.fillPath(dots, style.ink.castDots);
        }
        dots = QPainterPath();
    };
    lattice(path, 4.0 * style.mmPerUnit, size, [&](QPointF at) {
        dots.addRect(QRectF(at.x() - size / 2.0, at.y() - size / 2.0, size, size));
        if (dots.elementCount() > kMostElements) {
            flush();
        }
    });
    flush();
}

void fillCut(QPainter& painter, const QPainterPath& path, const PaintStyle& style)
{
    painter.fillPath(path, style.ink.sheet);
    const std::vector<QLineF> lines = hatchLines(path, 45.0, (style.onPaper ? 2.0 : 7.0) * style.mmPerUnit);
    painter.setPen(thinPen(style, style.ink.ink));
    painter.drawLines(lines.data(), static_cast<int>(lines.size()));
}

void crossesIn(QPainter& painter, const QPainterPath& path, const PaintStyle& style)
{
    const double unit = style.onPaper ? 1.0 : 3.0;
    const double half = 0.6 * unit * style.mmPerUnit;
    const double pitch = 4.0 * unit * style.mmPerUnit;
    const QRectF box = path.boundingRect();
    // Rows are centred, so that a thin strip has its crosses in its middle.
    const double rows = std::floor(std::max(0.0, box.height() - 3.0 * half) / pitch);
    const QPointF shift(0.0, box.center().y() - std::floor(rows / 2.0) * pitch - (std::fmod(rows, 2.0) * pitch / 2.0));
    std::vector<QLineF> lines;
    lattice(path.translated(-shift), pitch, 1.5 * half, [&](QPointF centred) {
        const QPointF at = centred + shift;
        if (at.y() - half < box.top() || at.y() + half > box.bottom()) {
            return;
        }
        lines.emplace_back(at + QPointF(-half, -half), at + QPointF(half, half));
        lines.emplace_back(at + QPointF(-half, half), at + QPointF(half, -half));
    });
    painter.setPen(thinPen(style, style.ink.pencil));
    painter.drawLines(lines.data(), static_cast<int>(lines.size()));
}

void fillFoam(QPainter& painter, const QPainterPath& path, const PaintStyle& style)
{
    painter.fillPath(path, style.ink.foam);
    crossesIn(painter, path, style);
}

void paintArrowhead(QPainter& painter, QPointF tip, QPointF direction, const PaintStyle& style,
                    const QColor& colour)
{
    const double length = std::hypot(direction.x(), direction.y());
    if (length <= 0.0) {
        return;
    }
    const double size = (style.onPaper ? 2.8 : 8.0) * style.mmPerUnit;
    const QPointF along = direction / length * size;
    const QPointF across(-along.y(), along.x());
    const double halfWidth = std::tan(15.0 * std::numbers::pi / 180.0);
    QPainterPath head(tip);
    head.lineTo(tip - along + across * halfWidth);
    head.lineTo(tip - along - across * halfWidth);
    head.closeSubpath();
    painter.fillPath(head, colour);
}

}  // namespace yardcast::ui
