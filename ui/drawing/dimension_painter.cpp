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
    const double aside = layout.runMm / 2.0 + layout.figureMm.width() / 2.0 + clear;
    layout.figureAt = (layout.lineA + layout.lineB) / 2.0 +
                      up * (rise + dimension.figureRow * 0.95 * layout.figureMm.height()) +
                      layout.along * (dimension.figureEnd * aside);
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

namespace {

QRectF figureBox(const Layout& layout, double share)
{
    QTransform place;
    place.translate(layout.figureAt.x(), layout.figureAt.y());
    place.rotate(layout.angleDeg);
    const QSizeF size = layout.figureMm * share;
    return place.mapRect(QRectF(QPointF(-size.width() / 2.0, -size.height() / 2.0), size));
}

/// Whether another line goes on at this end: a figure beyond it would be read as the other's.
bool goesOn(const std::vector<Layout>& layouts, std::size_t self, QPointF end)
{
    for (std::size_t i = 0; i < layouts.size(); ++i) {
        if (i == self || !layouts[i].drawn) {
            continue;
        }
        for (const QPointF& other : {layouts[i].lineA, layouts[i].lineB}) {
            if (std::hypot((other - end).x(), (other - end).y()) < 0.5) {
                return true;
            }
        }
    }
    return false;
}

struct FigurePlace {
    int row = 0;
    int end = 0;
};

/// Places to try, the best first: over the line; beyond a free end; raised by rows.
std::vector<FigurePlace> placesFor(const std::vector<Layout>& layouts, std::size_t self)
{
    const Layout& layout = layouts[self];
    std::vector<FigurePlace> places;
    if (layout.figureMm.width() <= 0.98 * layout.runMm) {
        places.push_back({0, 0});
    }
    if (!goesOn(layouts, self, layout.lineB)) {
        places.push_back({0, 1});
    }
    if (!goesOn(layouts, self, layout.lineA)) {
        places.push_back({0, -1});
    }
    constexpr int kMostRows = 6;
    for (int row = 1; row < kMostRows; ++row) {
        places.push_back({row, 0});
    }
    return places;
}

}  // namespace

void staggerFigures(std::vector<Dimension>& dimensions, const PaintStyle& style)
{
    std::vector<Layout> layouts;
    layouts.reserve(dimensions.size());
    for (Dimension& dimension : dimensions) {
        dimension.figureRow = 0;
        dimension.figureEnd = 0;
        layouts.push_back(layOut(dimension, style));
    }
    // Wide spans first: their figure sits in the middle of its own line, and the narrow ones make way.
    std::vector<std::size_t> order(dimensions.size());
    for (std::size_t i = 0; i < order.size(); ++i) {
        order[i] = i;
    }
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return dimensions[a].valueMm > dimensions[b].valueMm;
    });
    std::vector<QRectF> taken;
    for (const std::size_t i : order) {
        if (!layouts[i].drawn) {
            continue;
        }
        for (const FigurePlace& place : placesFor(layouts, i)) {
            Dimension tried = dimensions[i];
            tried.figureRow = place.row;
            tried.figureEnd = place.end;
            const QRectF box = figureBox(layOut(tried, style), 0.85);
            if (std::none_of(taken.begin(), taken.end(), [&](const QRectF& other) { return other.intersects(box); })) {
                dimensions[i] = tried;
                taken.push_back(box);
                break;
            }
        }
    }
}

}  // namespace yardcast::ui
