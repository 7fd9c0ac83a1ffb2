#include <algorithm>
#include <cmath>
#include <limits>

#include <QCoreApplication>
#include <QPainter>

#include "ui/drawing/level_marks.h"
#include "ui/drawing/painters.h"
#include "ui/wording/figures.h"
#include "ui/wording/names.h"

namespace yardcast::ui {

namespace {

constexpr double kPointRadiusMm = 60.0;

/// Heights of the site are not in the plan; these only give the elevation its background.
double heightInFrontMm(FixtureKind kind)
{
    return kind == FixtureKind::door ? 2000.0 : 2200.0;
}

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

/// The words of a wall, tree, door or other thing, and where they stand: inside it where they fit, else beside it.
struct Label {
    QString text;
    QPointF at;
    TextLook look;
};

Label labelOf(const Fixture& fixture, const QRectF& box, const Projection& projection, const PaintStyle& style)
{
    Label label;
    label.text = fixture.kind == FixtureKind::other && !fixture.id.empty() ? QString::fromStdString(fixture.id)
                                                                           : fixtureLetter(fixture.kind);
    label.look.colour = style.ink.pencil;
    label.look.behind = style.ink.sheet;
    label.at = box.center();
    const QSizeF size = textSizeMm(label.text, style, label.look);
    if (size.width() <= box.width() && 0.8 * size.height() <= box.height()) {
        if (!projection.isAbove()) {
            label.at.setY(box.top() + 0.8 * size.height());
        }
    } else if (size.width() <= box.height() && 0.8 * size.height() <= box.width()) {
        label.look.angleDeg = -90.0;
    } else if (projection.isAbove()) {
        label.look.align = Qt::AlignLeft | Qt::AlignBottom;
        label.at = box.topLeft();
    } else {
        label.text.clear();
    }
    return label;
}

/// The ground where it is cut by the view: along the parts' front.
QLineF groundLine(const Plan& plan, const Projection& projection, double leftX, double rightX)
{
    double nearest = std::numeric_limits<double>::max();
    for (const PartPtr& part : plan.parts) {
        if (!part) {
            continue;
        }
        for (const Point& point : footprint(*part)) {
            nearest = std::min(nearest, projection.depth(point));
        }
    }
    if (nearest == std::numeric_limits<double>::max()) {
        nearest = 0.0;
    }
    const SineCosine look = sineCosineDeg(projection.lookDeg());
    const auto groundAt = [&](double x) {
        const Point at = projection.rightwards() * x + Point{look.cosine, look.sine} * nearest;
        return QPointF(x, -groundLevelMm(plan, at));
    };
    return {groundAt(leftX), groundAt(rightX)};
}

void paintGroundInFront(QPainter& painter, const Plan& plan, const Projection& projection, const PaintStyle& style)
{
    const QRectF bounds = drawingBounds(plan, projection);
    const QLineF line = groundLine(plan, projection, bounds.left(), bounds.right());
    const double deep = (style.onPaper ? 3.0 : 10.0) * style.mmPerUnit;
    const QPointF down(0.0, deep);
    QPainterPath earth;
    earth.addPolygon(QPolygonF{line.p1(), line.p2(), line.p2() + down, line.p1() + down});
    earth.closeSubpath();
    const std::vector<QLineF> lines = hatchLines(earth, 45.0, (style.onPaper ? 1.8 : 6.0) * style.mmPerUnit);
    painter.setPen(thinPen(style, style.ink.ground));
    painter.drawLines(lines.data(), static_cast<int>(lines.size()));
    painter.setPen(style.pen(style.ink.ink, style.wide()));
    painter.drawLine(line);

    const double percent = 100.0 * std::fabs(line.dy()) / std::max(line.dx(), 1.0);
    if (percent < 0.05) {
        return;
    }
    const bool right = line.dy() > 0.0;
    const QString text = right ? QCoreApplication::translate("Drawing", "ground falls %1 to the right")
                               : QCoreApplication::translate("Drawing", "ground falls %1 to the left");
    TextLook words;
    words.colour = style.ink.pencil;
    if (style.onPaper) {
        // Below the ground the rows of dimensions follow.
        words.align = Qt::AlignLeft | Qt::AlignBottom;
        paintText(painter, bounds.topLeft() - QPointF(0.0, 2.0 * style.mmPerUnit), text.arg(percentText(percent, 1)),
                  style, words);
        return;
    }
    // Under the higher end there is the most room.
    words.align = (right ? Qt::AlignLeft : Qt::AlignRight) | Qt::AlignTop;
    words.behind = style.ink.sheet;
    QPointF at = (right ? line.p1() : line.p2()) + down * 1.3;
    if (std::any_of(plan.site.fixtures.begin(), plan.site.fixtures.end(),
                    [](const Fixture& fixture) { return isConnection(fixture.kind); })) {
        at.setY(std::max(at.y(), 3.7 * kPointRadiusMm));
    }
    paintText(painter, at, text.arg(percentText(percent, 1)), style, words);
}

/// The corner of the drawing where the arrow of the fall meets the fewest other things.
QRectF freeCorner(const Plan& plan, const Projection& projection, QSizeF size)
{
    const QRectF bounds = drawingBounds(plan, projection);
    std::vector<QRectF> taken;
    for (const PartPtr& part : plan.parts) {
        if (part) {
            taken.push_back(partShape(plan, *part, projection).boundingRect());
        }
    }
    for (const Fixture& fixture : plan.site.fixtures) {
        taken.push_back(fixtureShape(fixture, projection).boundingRect());
    }
    const QRectF inner = plan.site.outline ? projection.map(*plan.site.outline).boundingRect() : bounds;
    const double x = inner.right() - size.width();
    const double y = inner.bottom() - size.height();
    QRectF best;
    auto fewest = taken.size() + 1;
    for (const QPointF& at : {QPointF(x, y), QPointF(inner.left(), y), QPointF(x, inner.top()), inner.topLeft(),
                              QPointF(inner.center().x() - size.width() / 2.0, y)}) {
        const QRectF box(at, size);
        const auto meets = static_cast<std::size_t>(std::count_if(
            taken.begin(), taken.end(), [&](const QRectF& other) { return other.intersects(box); }));
        if (meets < fewest) {
            fewest = meets;
            best = box;
        }
    }
    return best;
}

void paintFallArrow(QPainter& painter, const Plan& plan, const Projection& projection, const PaintStyle& style)
{
    const Ground& ground = *plan.site.ground;
    const QString text =
        QCoreApplication::translate("Drawing", "falls %1").arg(percentText(ground.fallPercent, 1));
    TextLook look;
    look.colour = style.ink.pencil;
    look.align = Qt::AlignHCenter | Qt::AlignTop;
    const double run = (style.onPaper ? 10.0 : 36.0) * style.mmPerUnit;
    const QSizeF words = textSizeMm(text, style, look);
    const double gap = 0.15 * run;
    const QRectF box = freeCorner(plan, projection, {std::max(run, words.width()) + 4.0 * gap,
                                                     run + words.height() + 3.0 * gap});
    const SineCosine towards = sineCosineDeg(ground.fallTowardsDeg);
    const QPointF direction(towards.cosine, -towards.sine);
    const QPointF middle(box.center().x(), box.top() + gap + run / 2.0);
    const QPointF tip = middle + direction * (run / 2.0);
    painter.setPen(thinPen(style, style.ink.pencil));
    painter.drawLine(middle - direction * (run / 2.0), tip);
    paintArrowhead(painter, tip, direction, style, style.ink.pencil);
    paintText(painter, QPointF(middle.x(), middle.y() + run / 2.0 + gap), text, style, look);
}

}  // namespace

QRectF groundLineInFront(const Plan& plan, const Projection& projection, double leftX, double rightX)
{
    const QLineF line = groundLine(plan, projection, leftX, rightX);
    return QRectF(line.p1(), line.p2()).normalized();
}

QPainterPath fixtureShape(const Fixture& fixture, const Projection& projection)
{
    if (!projection.isAbove()) {
        QPainterPath path;
        if (isConnection(fixture.kind)) {
            // Its height is not known: it is shown under the ground, where it comes up.
            path.addEllipse(projection.map(fixture.at, -2.5 * kPointRadiusMm), kPointRadiusMm, kPointRadiusMm);
            return path;
        }
        if (fixture.kind == FixtureKind::other) {
            return path;
        }
        const QRectF box = projection.map(fixtureRing(fixture)).boundingRect();
        const double high = heightInFrontMm(fixture.kind);
        path.addRect(QRectF(box.left(), -high, std::max(box.width(), 1.0), high));
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
    QPainterPath shape = fixtureShape(fixture, projection);
    if (shape.isEmpty()) {
        return;
    }
    QRectF box = shape.boundingRect();
    const double least = 2.3 * style.mmPerUnit;
    if (style.onPaper && isConnection(fixture.kind) && !fixture.size && box.width() < 2.0 * least) {
        const QPointF centre = box.center();
        shape = QPainterPath();
        shape.addEllipse(centre, least, least);
        box = shape.boundingRect();
    }
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
    const Label label = labelOf(fixture, box, projection, style);
    if (!label.text.isEmpty()) {
        paintText(painter, label.at, label.text, style, label.look);
    }
}

QRectF fixtureBounds(const Fixture& fixture, const Projection& projection, const PaintStyle& style)
{
    const QRectF box = fixtureShape(fixture, projection).boundingRect();
    if (box.isNull() || isConnection(fixture.kind)) {
        const double least = style.onPaper ? 2.3 * style.mmPerUnit : 0.0;
        return box.isNull() ? box : box | QRectF(box.center() - QPointF(least, least), QSizeF(2 * least, 2 * least));
    }
    const Label label = labelOf(fixture, box, projection, style);
    if (label.text.isEmpty() || !(label.look.align & Qt::AlignBottom)) {
        return box;
    }
    const QSizeF size = textSizeMm(label.text, style, label.look);
    return box | QRectF(label.at - QPointF(0.0, size.height()), size);
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
