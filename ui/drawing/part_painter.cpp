#include "ui/drawing/part_painter.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include <QStringList>

#include "ui/drawing/painters.h"

namespace yardcast::ui {

QPainterPath pathOf(const QPolygonF& polygon)
{
    QPainterPath path;
    if (polygon.size() >= 3) {
        path.addPolygon(polygon);
        path.closeSubpath();
    }
    return path;
}

QPolygonF ownToAbove(const Part& part, const Ring& own, const Projection& projection)
{
    QPolygonF polygon;
    polygon.reserve(static_cast<qsizetype>(own.size()));
    for (const Point& point : own) {
        polygon.append(projection.map(part.place.toPlan(point)));
    }
    return polygon;
}

QString partLabel(const Part& part)
{
    const QString id = QString::fromStdString(part.id);
    if (!part.name || part.name->empty()) {
        return id;
    }
    return id + QLatin1Char(' ') + QString::fromStdString(*part.name);
}

QStringList labelChoices(const Part& part)
{
    const QString id = QString::fromStdString(part.id);
    if (!part.name || part.name->empty()) {
        return {id};
    }
    const QString name = QString::fromStdString(*part.name);
    QStringList choices{partLabel(part), id + QLatin1Char('\n') + name};
    // A long name in two lines, parted at the gap nearest its middle.
    const qsizetype middle = name.size() / 2;
    const qsizetype before = name.lastIndexOf(QLatin1Char(' '), middle);
    const qsizetype after = name.indexOf(QLatin1Char(' '), middle);
    const bool early = before > 0 && (after < 0 || middle - before <= after - middle);
    const qsizetype gap = early ? before : after;
    if (gap > 0) {
        QString parted = name;
        parted[gap] = QLatin1Char('\n');
        choices << id + QLatin1Char('\n') + parted;
    }
    return choices << id;
}

QString labelThatFits(const Part& part, QSizeF roomMm, const PaintStyle& style)
{
    TextLook look;
    look.bold = true;
    for (const QString& text : labelChoices(part)) {
        const QSizeF size = textSizeMm(text, style, look);
        if (size.width() <= 0.96 * roomMm.width() && 0.8 * size.height() <= roomMm.height()) {
            return text;
        }
    }
    return {};
}

bool isRimmed(const Counter& counter, int edge)
{
    if (!counter.rim) {
        return false;
    }
    return !counter.rim->edges || std::find(counter.rim->edges->begin(), counter.rim->edges->end(), edge) !=
                                      counter.rim->edges->end();
}

std::vector<std::pair<Point, Point>> rimInnerEdges(const Counter& counter)
{
    const auto count = counter.outline.size();
    if (!counter.rim || count < 3) {
        return {};
    }
    const double side = signedArea(counter.outline) >= 0.0 ? 1.0 : -1.0;
    const auto inset = [&](std::size_t edge) {
        return isRimmed(counter, static_cast<int>(edge)) ? counter.rim->widthMm : 0.0;
    };
    std::vector<Point> inner(count);
    for (std::size_t i = 0; i < count; ++i) {
        const std::size_t before = (i + count - 1) % count;
        const Point at = counter.outline[i];
        Point in = at - counter.outline[before];
        Point out = counter.outline[(i + 1) % count] - at;
        const double inLength = length(in);
        const double outLength = length(out);
        if (inLength <= 0.0 || outLength <= 0.0) {
            inner[i] = at;
            continue;
        }
        in = in * (1.0 / inLength);
        out = out * (1.0 / outLength);
        const Point inNormal = leftNormal(in) * side;
        const Point outNormal = leftNormal(out) * side;
        const double sine = cross(in, out);
        if (std::fabs(sine) < 1e-6) {
            inner[i] = at + outNormal * std::max(inset(before), inset(i));
            continue;
        }
        // The corner of the two lines moved inwards: at + a*out where a brings it off the first line, and so on.
        const Point onFirst = at + inNormal * inset(before);
        const double toSecond = inset(i) - dot(onFirst - at, outNormal);
        inner[i] = onFirst + in * (toSecond / dot(in, outNormal));
    }
    std::vector<std::pair<Point, Point>> edges;
    for (std::size_t i = 0; i < count; ++i) {
        if (inset(i) > 0.0) {
            edges.emplace_back(inner[i], inner[(i + 1) % count]);
        }
    }
    return edges;
}

namespace {

/// Bounds of a counter in plan axes, without making its ring: this is asked for every pair of a part and a counter.
Box boundsInPlan(const Part& part, const Counter& counter)
{
    constexpr double kFar = std::numeric_limits<double>::max();
    Box box{{kFar, kFar}, {-kFar, -kFar}};
    const SineCosine turn = sineCosineDeg(part.place.turnDeg);
    for (const Point& own : counter.outline) {
        const double x = part.place.at.x + own.x * turn.cosine - own.y * turn.sine;
        const double y = part.place.at.y + own.x * turn.sine + own.y * turn.cosine;
        box.low = {std::min(box.low.x, x), std::min(box.low.y, y)};
        box.high = {std::max(box.high.x, x), std::max(box.high.y, y)};
    }
    return box;
}

}  // namespace

std::vector<const Part*> countersOver(const Plan& plan, const Part& part)
{
    std::vector<const Part*> over;
    const std::optional<Box> box = boundsOf(footprint(part));
    if (!box) {
        return over;
    }
    std::optional<double> high;
    for (const PartPtr& other : plan.parts) {
        const auto* counter = other ? std::get_if<Counter>(&other->body) : nullptr;
        if (!counter || other.get() == &part || other->id == part.id) {
            continue;
        }
        const Box there = boundsInPlan(*other, *counter);
        if (there.low.x >= box->high.x || there.high.x <= box->low.x || there.low.y >= box->high.y ||
            there.high.y <= box->low.y) {
            continue;
        }
        if (!high) {
            high = levelsOf(plan, part).highMm;
        }
        if (counter->topMm > *high) {
            over.push_back(other.get());
        }
    }
    return over;
}

void paintPart(QPainter& painter, const Plan& plan, const Part& part, const Projection& projection,
               const PaintStyle& style)
{
    if (projection.isAbove()) {
        paintPartAbove(painter, plan, part, projection, style);
    } else {
        paintPartInFront(painter, plan, part, projection, style);
    }
}

QPainterPath partShape(const Plan& plan, const Part& part, const Projection& projection)
{
    if (!projection.isAbove()) {
        return partShapeInFront(plan, part, projection);
    }
    return pathOf(projection.map(footprint(part)));
}

QPainterPath cutoutShape(const Part& part, const Cutout& cutout, const Projection& projection)
{
    return pathOf(ownToAbove(part, cutoutRing(cutout), projection));
}

namespace {

/// Where a door's leaf swings, so that paper keeps room for it.
QRectF doorSwings(const Part& part, const Projection& projection)
{
    const auto* front = std::get_if<Front>(&part.body);
    if (!front || !projection.isAbove()) {
        return {};
    }
    const double run = distance(front->from, front->to);
    QRectF bounds;
    for (const Door& door : front->doors) {
        if (run <= 0.0 || door.toMm <= door.fromMm) {
            continue;
        }
        const Point unit = (front->to - front->from) * (1.0 / run);
        const Point outwards = leftNormal(unit) * -(door.toMm - door.fromMm);
        const Point a = front->from + unit * door.fromMm;
        const Point b = front->from + unit * door.toMm;
        bounds |= ownToAbove(part, {a, b, b + outwards, a + outwards}, projection).boundingRect();
    }
    return bounds;
}

}  // namespace

QRectF partsBounds(const Plan& plan, const Projection& projection)
{
    QRectF bounds;
    for (const PartPtr& part : plan.parts) {
        if (part) {
            bounds |= partShape(plan, *part, projection).boundingRect();
            bounds |= doorSwings(*part, projection);
        }
    }
    if (!projection.isAbove() && !bounds.isNull()) {
        bounds |= groundLineInFront(plan, projection, bounds.left(), bounds.right());
    }
    return bounds;
}

QRectF drawingBounds(const Plan& plan, const Projection& projection)
{
    QRectF bounds = partsBounds(plan, projection);
    for (const Fixture& fixture : plan.site.fixtures) {
        bounds |= fixtureShape(fixture, projection).boundingRect();
    }
    if (plan.site.outline && projection.isAbove()) {
        bounds |= projection.map(*plan.site.outline).boundingRect();
    }
    if (!projection.isAbove() && !bounds.isNull()) {
        bounds |= groundLineInFront(plan, projection, bounds.left(), bounds.right());
    }
    if (bounds.isEmpty()) {
        return QRectF(0.0, -1000.0, 1000.0, 1000.0);
    }
    return bounds;
}

std::vector<const Part*> paintOrder(const Plan& plan, const Projection& projection)
{
    struct Entry {
        const Part* part;
        double first;
        double second;
    };
    std::vector<Entry> entries;
    entries.reserve(plan.parts.size());
    for (const PartPtr& part : plan.parts) {
        if (!part) {
            continue;
        }
        const Levels levels = levelsOf(plan, *part);
        if (projection.isAbove()) {
            // What lies under a counter is drawn over it, with hidden lines.
            double first = levels.highMm;
            double second = 0.0;
            for (const Part* counter : countersOver(plan, *part)) {
                first = std::max(first, std::get<Counter>(counter->body).topMm);
                second = 1.0;
            }
            entries.push_back({part.get(), first, second});
        } else {
            double nearest = std::numeric_limits<double>::max();
            for (const Point& point : footprint(*part)) {
                nearest = std::min(nearest, projection.depth(point));
            }
            entries.push_back({part.get(), -nearest, levels.lowMm});
        }
    }
    std::stable_sort(entries.begin(), entries.end(), [](const Entry& a, const Entry& b) {
        return a.first != b.first ? a.first < b.first : a.second < b.second;
    });
    std::vector<const Part*> order;
    order.reserve(entries.size());
    for (const Entry& entry : entries) {
        order.push_back(entry.part);
    }
    return order;
}

}  // namespace yardcast::ui
