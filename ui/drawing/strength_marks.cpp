#include "ui/drawing/strength_marks.h"

#include <QPainter>
#include <QPainterPath>

#include "ui/drawing/marks.h"
#include "ui/look/use_ramp.h"

namespace yardcast::ui {

namespace {

/// Lines that can be seen on every shade: the ink on a wider line of the other.
template <typename Draw>
void onAnyShade(QPainter& painter, const PaintStyle& style, const QColor& colour, double widthUnits, Draw draw)
{
    painter.setBrush(Qt::NoBrush);
    painter.setPen(style.pen(style.ink.sheet, widthUnits + 2.0));
    draw();
    painter.setPen(style.pen(colour, widthUnits));
    draw();
}

}  // namespace

void paintWorstPlace(QPainter& painter, QPointF at, double usePercent, const PaintStyle& style)
{
    constexpr double kFull = 100.0;
    const double radius = 7.0 * style.mmPerUnit;
    const QColor colour = usePercent >= kFull ? style.ink.stop : style.ink.ink;
    onAnyShade(painter, style, colour, style.wide(), [&] {
        painter.drawEllipse(at, radius, radius);
        for (const QPointF& arm : {QPointF(1.0, 0.0), QPointF(-1.0, 0.0), QPointF(0.0, 1.0), QPointF(0.0, -1.0)}) {
            painter.drawLine(at + 0.55 * radius * arm, at + 1.55 * radius * arm);
        }
    });
}

void paintHand(QPainter& painter, QPointF at, const PaintStyle& style)
{
    const double radius = (kHandMarkPx - 1.0) * style.mmPerUnit;
    painter.setPen(style.pen(style.ink.chosen, style.wide()));
    painter.setBrush(style.ink.sheet);
    painter.drawEllipse(at, radius, radius);
    painter.setBrush(style.ink.chosen);
    painter.drawEllipse(at, radius * 0.35, radius * 0.35);
    painter.setBrush(Qt::NoBrush);
}

void paintHeldRegion(QPainter& painter, const Region& region, const QTransform& plane, const PaintStyle& style,
                     bool liftsOff)
{
    QPainterPath path;
    for (const Polygon& polygon : region) {
        const auto add = [&](const Ring& ring) {
            QPolygonF drawn;
            for (const Point& point : ring) drawn.append(plane.map(QPointF(point.x, point.y)));
            path.addPolygon(drawn);
            path.closeSubpath();
        };
        add(polygon.outer);
        for (const Ring& hole : polygon.holes) add(hole);
    }
    painter.setBrush(Qt::NoBrush);
    painter.setPen(style.pen(style.ink.sheet, style.wide() + 1.0));
    painter.drawPath(path);
    painter.setPen(hiddenPen(style, liftsOff ? style.ink.caution : style.ink.ink));
    painter.drawPath(path);
}

void paintLiftsOff(QPainter& painter, QPointF at, const PaintStyle& style)
{
    const double size = kLiftsOffMarkPx * style.mmPerUnit;
    onAnyShade(painter, style, style.ink.caution, style.wide(), [&] {
        painter.drawLine(at + QPointF(-size, 0.8 * size), at + QPointF(size, 0.8 * size));
        painter.drawLine(at + QPointF(0.0, 0.4 * size), at + QPointF(0.0, -0.8 * size));
        painter.drawPolyline(QPolygonF{at + QPointF(-0.5 * size, -0.2 * size), at + QPointF(0.0, -0.8 * size),
                                       at + QPointF(0.5 * size, -0.2 * size)});
    });
}

void paintPush(QPainter& painter, QPointF at, const PaintStyle& style)
{
    const double length = 16.0 * style.mmPerUnit;
    painter.setPen(style.pen(style.ink.ink, style.wide()));
    painter.drawLine(at + QPointF(0.0, length), at + QPointF(0.0, 0.3 * length));
    paintArrowhead(painter, at, QPointF(0.0, -1.0), style, style.ink.ink);
}

void paintCut(QPainter& painter, QPointF from, QPointF to, const PaintStyle& style)
{
    painter.setBrush(Qt::NoBrush);
    painter.setPen(style.pen(style.ink.sheet, style.wide() + 1.0));
    painter.drawLine(from, to);
    painter.setPen(centrePen(style, style.ink.ink));
    painter.drawLine(from, to);
}

void paintStandingEdge(QPainter& painter, QPointF from, QPointF to, const PaintStyle& style)
{
    onAnyShade(painter, style, style.ink.chosen, 3.0, [&] { painter.drawLine(from, to); });
}

void paintPerson(QPainter& painter, QPointF at, const PaintStyle& style)
{
    const double unit = style.mmPerUnit;
    QPainterPath person;
    person.addEllipse(at, 8.0 * unit, 4.0 * unit);
    QPainterPath head;
    head.addEllipse(at, 3.4 * unit, 3.4 * unit);
    painter.setPen(style.pen(style.ink.sheet, 3.0));
    painter.setBrush(style.ink.ink);
    painter.drawPath(person);
    painter.setPen(style.pen(style.ink.sheet, 1.5));
    painter.drawPath(head);
    painter.setBrush(Qt::NoBrush);
}

}  // namespace yardcast::ui
