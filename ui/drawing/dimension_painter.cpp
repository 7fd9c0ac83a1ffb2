#include "ui/drawing/dimension_painter.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include <QPainter>

#include "ui/drawing/marks.h"
#include "ui/wording/figures.h"

namespace yardcast::ui {

namespace {

/// Where the lines and the figure of one dimension lie, drawing mm.
struct Layout {
    bool drawn = false;
    QPointF lineA;
    QPointF lineB;
    QPointF along;    ///< unit, a to b
    QPointF outwards; ///< unit, towards the dimension line
    double runMm = 0.0;
    double reach = 0.0;  ///< from what is measured to the line
    bool arrowsInside = true;
    QPointF figureAt;   ///< middle of the figure
    double angleDeg = 0.0;
    QSizeF figureMm;
    bool onLeader = false;
};

TextLook figureLook(const PaintStyle& style)
{
    TextLook look;
    look.sizeUnits = figureUnits(style);
    return look;
}

double arrowMm(const PaintStyle& style)
{
    return (style.onPaper ? 2.8 : 8.0) * style.mmPerUnit;
}

/// Figures are read from below or from the right (ISO 129-1): the angle is kept in [-90, 90).
double readableDeg(QPointF along)
{
    double angle = std::atan2(along.y(), along.x()) * 180.0 / std::numbers::pi;
    if (angle >= 90.0 - 1e-6) {
        angle -= 180.0;
    } else if (angle < -90.0 - 1e-6) {
        angle += 180.0;
    }
    return angle;
}

Layout layOut(const Dimension& dimension, const PaintStyle& style)
{
    Layout layout;
    const QPointF run = dimension.b - dimension.a;
    layout.runMm = std::hypot(run.x(), run.y());
    if (!(layout.runMm > 0.0) || !std::isfinite(layout.runMm)) {
        return layout;
    }
    layout.drawn = true;
    layout.along = run / layout.runMm;
    const QPointF left(layout.along.y(), -layout.along.x());
    const double offset = dimension.offsetUnits * style.mmPerUnit + dimension.offsetMm;
    layout.reach = std::fabs(offset);
    layout.outwards = offset < 0.0 ? -left : left;
    layout.lineA = dimension.a + left * offset;
    layout.lineB = dimension.b + left * offset;
    layout.angleDeg = readableDeg(layout.along);
    layout.figureMm = textSizeMm(dimensionFigure(dimension), style, figureLook(style));
    layout.arrowsInside = layout.runMm >= 3.0 * arrowMm(style);

    const double angle = layout.angleDeg * std::numbers::pi / 180.0;
    const QPointF up(std::sin(angle), -std::cos(angle));
    const double clear = (style.onPaper ? 0.4 : 1.0) * style.mmPerUnit;
    const double rise = 0.42 * layout.figureMm.height() + clear;
    layout.onLeader = dimension.figureRow > 0;
    // Rows go away from the object when that is up for the reader; else above the line all the same.
    layout.figureAt = (layout.lineA + layout.lineB) / 2.0 +
                      up * (rise + dimension.figureRow * 0.95 * layout.figureMm.height());
    return layout;
}

}  // namespace

QString dimensionFigure(const Dimension& dimension)
{
    const QString figure = shortNumberText(dimension.valueMm, 1);
    return dimension.target.what == DimensionTarget::What::cutoutDiameter ? QChar(0x00D8) + figure : figure;
}

QRectF dimensionBounds(const Dimension& dimension, const PaintStyle& style)
{
    const Layout layout = layOut(dimension, style);
    QRectF bounds = QRectF(dimension.a, dimension.a);
    for (const QPointF& point : {dimension.b, layout.lineA, layout.lineB}) {
        bounds |= QRectF(point, QSizeF(1e-3, 1e-3));
    }
    if (layout.drawn) {
        QTransform place;
        place.translate(layout.figureAt.x(), layout.figureAt.y());
        place.rotate(layout.angleDeg);
        const QSizeF size = layout.figureMm;
        bounds |= place.mapRect(QRectF(QPointF(-size.width() / 2.0, -size.height() / 2.0), size));
    }
    return bounds;
}

QPainterPath paintDimension(QPainter& painter, const Dimension& dimension, const PaintStyle& style)
{
    const Layout layout = layOut(dimension, style);
    if (!layout.drawn) {
        return {};
    }
    const QColor colour = style.ink.ink;
    painter.setPen(thinPen(style, colour));
    const double unit = style.mmPerUnit;
    const double gap = (style.onPaper ? 1.0 : 3.0) * unit;
    const double beyond = (style.onPaper ? 2.0 : 4.0) * unit;
    const double reach = layout.reach;
    std::vector<QLineF> lines;
    for (const QPointF& foot : {dimension.a, dimension.b}) {
        if (reach > gap) {
            lines.emplace_back(foot + layout.outwards * gap, foot + layout.outwards * (reach + beyond));
        }
    }
    const double stub = layout.arrowsInside ? 0.0 : 1.8 * arrowMm(style);
    lines.emplace_back(layout.lineA - layout.along * stub, layout.lineB + layout.along * stub);
    if (layout.onLeader) {
        const QPointF middle = (layout.lineA + layout.lineB) / 2.0;
        const QPointF up = layout.figureAt - middle;
        const double height = std::hypot(up.x(), up.y());
        lines.emplace_back(middle, middle + up * std::max(0.0, 1.0 - 0.45 * layout.figureMm.height() / height));
    }
    painter.drawLines(lines.data(), static_cast<int>(lines.size()));
    const QPointF inwards = layout.arrowsInside ? -layout.along : layout.along;
    paintArrowhead(painter, layout.lineA, inwards, style, colour);
    paintArrowhead(painter, layout.lineB, -inwards, style, colour);

    TextLook look = figureLook(style);
    look.angleDeg = layout.angleDeg;
    look.colour = colour;
    return paintText(painter, layout.figureAt, dimensionFigure(dimension), style, look);
}

void staggerFigures(std::vector<Dimension>& dimensions, const PaintStyle& style)
{
    std::vector<QRectF> taken;
    taken.reserve(dimensions.size());
    // Wide spans first: their figure sits in the middle of its own line, and the narrow ones make way.
    std::vector<std::size_t> order(dimensions.size());
    for (std::size_t i = 0; i < order.size(); ++i) {
        order[i] = i;
    }
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return dimensions[a].valueMm > dimensions[b].valueMm;
    });
    for (const std::size_t i : order) {
        Dimension& dimension = dimensions[i];
        dimension.figureRow = 0;
        constexpr int kMostRows = 6;
        for (; dimension.figureRow < kMostRows; ++dimension.figureRow) {
            const Layout layout = layOut(dimension, style);
            if (!layout.drawn) {
                break;
            }
            const bool fits = layout.figureMm.width() <= 0.98 * layout.runMm || dimension.figureRow > 0;
            QTransform place;
            place.translate(layout.figureAt.x(), layout.figureAt.y());
            place.rotate(layout.angleDeg);
            const QSizeF size = layout.figureMm * 0.85;
            const QRectF box = place.mapRect(QRectF(QPointF(-size.width() / 2.0, -size.height() / 2.0), size));
            const bool free = std::none_of(taken.begin(), taken.end(),
                                           [&](const QRectF& other) { return other.intersects(box); });
            if (fits && free) {
                taken.push_back(box);
                break;
            }
        }
        if (dimension.figureRow == kMostRows) {
            dimension.figureRow = 0;
        }
    }
}

}  // namespace yardcast::ui
