#include <algorithm>
#include <cmath>

#include <QCoreApplication>
#include <QPainter>

#include "ui/drawing/level_marks.h"
#include "ui/drawing/painters.h"
#include "ui/wording/figures.h"
#include "ui/wording/names.h"

namespace yardcast::ui {

namespace {

constexpr double kPointRadiusMm = 60.0;
constexpr double kWallHeightMm = 2200.0;

bool isConnection(FixtureKind kind)
{
    return kind == FixtureKind::water || kind == FixtureKind::waste || kind == FixtureKind::power ||
           kind == FixtureKind::gas;
}

/// One letter a connection, so that they keep apart without colour.
QString fixtureLetter(FixtureKind kind)
{
    switch (kind) {
    case FixtureKind::water:
        return QCoreApplication::translate("Drawing", "W", "letter of the water point");
    case FixtureKind::waste:
        return QCoreApplication::translate("Drawing", "D", "letter of the waste (drain) point");
    case FixtureKind::power:
        return QCoreApplication::translate("Drawing", "E", "letter of the power (electricity) point");
    case FixtureKind::gas:
        return QCoreApplication::translate("Drawing", "G", "letter of the gas point");
    default:
        return fixtureName(kind);
    }
}

/// Water blue dash-dot, power red dashes, gas yellow-brown dots; waste a dash with two dots.
QPen fixturePen(FixtureKind kind, const PaintStyle& style)
{
    const double width = style.onPaper ? style.narrow() * 1.4 : 2.0;
    const auto patterned = [&](const QColor& colour, const QList<qreal>& pattern) {
        QPen pen = style.pen(colour, width);
        if (!pattern.isEmpty()) {
            pen.setDashPattern(pattern);
        }
        return pen;
    };
    switch (kind) {
    case FixtureKind::water:
        return patterned(style.ink.water, {5, 2, 1, 2});
    case FixtureKind::waste:
        return patterned(style.ink.water, {5, 2, 1, 2, 1, 2});
    case FixtureKind::power:
        return patterned(style.ink.power, {3, 2});
    case FixtureKind::gas:
        return patterned(style.ink.gas, {1, 1.5});
    default:
        return style.pen(style.ink.pencil, style.wide());
    }
}

QColor fixtureColour(FixtureKind kind, const PaintStyle& style)
{
    switch (kind) {
    case FixtureKind::water:
    case FixtureKind::waste:
        return style.ink.water;
    case FixtureKind::power:
        return style.ink.power;
    case FixtureKind::gas:
        return style.ink.gas;
    default:
        return style.ink.pencil;
    }
}

Ring fixtureRing(const Fixture& fixture)
{
    if (!fixture.size) {
        return rectangleRing(fixture.at, {2.0 * kPointRadiusMm, 2.0 * kPointRadiusMm});
    }
    const Point high = fixture.at + Point{fixture.size->width, fixture.size->depth};
    return {fixture.at, {high.x, fixture.at.y}, high, {fixture.at.x, high.y}};
}

void paintGroundInFront(QPainter& painter, const Plan& plan, const Projection& projection, const PaintStyle& style)
{
    const QRectF bounds = drawingBounds(plan, projection);
    const double margin = 0.06 * bounds.width() + 100.0;
    double nearest = 0.0;
    bool any = false;
    for (const PartPtr& part : plan.parts) {
        if (!part) {
            continue;
        }
        for (const Point& point : footprint(*part)) {
            nearest = any ? std::min(nearest, projection.depth(point)) : projection.depth(point);
            any = true;
        }
    }
    const SineCosine look = sineCosineDeg(projection.lookDeg());
    const auto groundAt = [&](double x) {
        const Point at = projection.rightwards() * x + Point{look.cosine, look.sine} * nearest;
        return QPointF(x, -groundLevelMm(plan, at));
    };
    const QPointF left = groundAt(bounds.left() - margin);
    const QPointF right = groundAt(bounds.right() + margin);
    const double deep = (style.onPaper ? 3.0 : 10.0) * style.mmPerUnit;
    QPainterPath earth;
    earth.addPolygon(QPolygonF{left, right, right + QPointF(0.0, deep), left + QPointF(0.0, deep)});
    earth.closeSubpath();
    const std::vector<QLineF> lines = hatchLines(earth, 45.0, (style.onPaper ? 1.8 : 6.0) * style.mmPerUnit);
    painter.setPen(thinPen(style, style.ink.ground));
    painter.drawLines(lines.data(), static_cast<int>(lines.size()));
    painter.setPen(style.pen(style.ink.ink, style.wide()));
    painter.drawLine(left, right);

    const double fall = right.y() - left.y();
    const double percent = 100.0 * std::fabs(fall) / (right.x() - left.x());
    if (percent < 0.05) {
        return;
    }
    TextLook words;
    words.align = Qt::AlignLeft | Qt::AlignTop;
    words.colour = style.ink.pencil;
    const QString text = fall > 0.0 ? QCoreApplication::translate("Drawing", "ground falls %1 to the right")
                                    : QCoreApplication::translate("Drawing", "ground falls %1 to the left");
    const QPointF below = left + QPointF(0.0, deep * 1.4 + std::max(0.0, fall));
    paintText(painter, below, text.arg(percentText(percent, 1)), style, words);
}

void paintFallArrow(QPainter& painter, const Plan& plan, const Projection& projection, const PaintStyle& style)
{
    const QRectF bounds = drawingBounds(plan, projection);
    const Ground& ground = *plan.site.ground;
    const SineCosine towards = sineCosineDeg(ground.fallTowardsDeg);
    const QPointF direction(towards.cosine, -towards.sine);
    const double run = (style.onPaper ? 12.0 : 40.0) * style.mmPerUnit;
    const double inset = 0.9 * run;
    const QPointF middle(bounds.right() - inset, bounds.top() + inset);
    const QPointF tip = middle + direction * (run / 2.0);
    painter.setPen(thinPen(style, style.ink.pencil));
    painter.drawLine(middle - direction * (run / 2.0), tip);
    paintArrowhead(painter, tip, direction, style, style.ink.pencil);
    TextLook look;
    look.colour = style.ink.pencil;
    look.behind = style.ink.sheet;
    const QString text = QCoreApplication::translate("Drawing", "falls %1")
                             .arg(percentText(ground.fallPercent, 1));
    paintText(painter, middle, text, style, look);
}

}  // namespace

QPainterPath fixtureShape(const Fixture& fixture, const Projection& projection)
{
    if (!projection.isAbove()) {
        QPainterPath path;
        if (isConnection(fixture.kind) || !fixture.size) {
            path.addEllipse(projection.map(fixture.at, kPointRadiusMm), kPointRadiusMm, kPointRadiusMm);
            return path;
        }
        const QRectF box = projection.map(fixtureRing(fixture)).boundingRect();
        path.addRect(QRectF(box.left(), -kWallHeightMm, std::max(box.width(), 1.0), kWallHeightMm));
        return path;
    }
    if (fixture.size) {
        if (fixture.kind == FixtureKind::tree) {
            QPainterPath path;
            path.addEllipse(projection.map(fixtureRing(fixture)).boundingRect());
            return path;
        }
        return pathOf(projection.map(fixtureRing(fixture)));
    }
    QPainterPath path;
    path.addEllipse(projection.map(fixture.at), kPointRadiusMm, kPointRadiusMm);
    return path;
}

void paintFixture(QPainter& painter, const Fixture& fixture, const Projection& projection, const PaintStyle& style)
{
    const QPainterPath shape = fixtureShape(fixture, projection);
    const QRectF box = shape.boundingRect();
    if (isConnection(fixture.kind)) {
        painter.setPen(fixturePen(fixture.kind, style));
        painter.setBrush(style.ink.sheet);
        painter.drawPath(shape);
        painter.setBrush(Qt::NoBrush);
        TextLook look;
        look.bold = true;
        look.colour = fixtureColour(fixture.kind, style);
        look.sizeUnits = std::min(1.3 * std::min(box.width(), box.height()) / 2.0 / style.mmPerUnit,
                                  2.0 * labelUnits(style));
        if (look.sizeUnits * (style.onPaper ? 3.0 : 1.0) >= 5.0) {
            paintText(painter, box.center(), fixtureLetter(fixture.kind), style, look);
        }
        return;
    }
    if (fixture.kind == FixtureKind::wall && projection.isAbove()) {
        // A wall is cut by the view from above.
        fillCut(painter, shape, style);
    } else if (fixture.kind == FixtureKind::wall) {
        painter.fillPath(shape, style.ink.grid);
    }
    painter.setPen(fixture.kind == FixtureKind::wall && projection.isAbove() ? outlinePen(style)
                                                                             : thinPen(style, style.ink.pencil));
    painter.setBrush(Qt::NoBrush);
    painter.drawPath(shape);
    if (!style.showNames) {
        return;
    }
    TextLook look;
    look.colour = style.ink.pencil;
    look.behind = style.ink.sheet;
    const QString letter = fixtureLetter(fixture.kind);
    const QSizeF size = textSizeMm(letter, style, look);
    QPointF at = box.center();
    if (!projection.isAbove()) {
        at = QPointF(box.center().x(), box.top() + 0.8 * size.height());
    }
    if (size.width() <= box.width() && 0.8 * size.height() <= box.height()) {
        paintText(painter, at, letter, style, look);
    } else if (size.width() <= box.height() && 0.8 * size.height() <= box.width()) {
        look.angleDeg = -90.0;
        paintText(painter, box.center(), letter, style, look);
    } else if (projection.isAbove()) {
        look.align = Qt::AlignLeft | Qt::AlignBottom;
        paintText(painter, QPointF(box.left(), box.top()), letter, style, look);
    }
}

void paintSite(QPainter& painter, const Plan& plan, const Projection& projection, const PaintStyle& style)
{
    if (projection.isAbove()) {
        if (plan.site.outline && plan.site.outline->size() >= 3) {
            painter.setPen(phantomPen(style, style.ink.pencil));
            painter.setBrush(Qt::NoBrush);
            painter.drawPolygon(projection.map(*plan.site.outline));
        }
        if (plan.site.ground && std::fabs(plan.site.ground->fallPercent) > 0.0) {
            paintFallArrow(painter, plan, projection, style);
        }
    }
    for (const Fixture& fixture : plan.site.fixtures) {
        paintFixture(painter, fixture, projection, style);
    }
    if (!projection.isAbove()) {
        paintGroundInFront(painter, plan, projection, style);
    }
}

}  // namespace yardcast::ui
