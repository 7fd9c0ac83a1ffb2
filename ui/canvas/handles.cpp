#include "ui/canvas/handles.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "ui/canvas/lookups.h"
#include "ui/canvas/snap_targets.h"
#include "ui/document/selection.h"

namespace yardcast::ui {

namespace {

/// An edge shorter than this on the screen gets no handle of its own: it would hide the thing.
constexpr double kLeastEdgePx = 34.0;
/// A box thinner than this is resized only at its ends.
constexpr double kLeastThickPx = 28.0;

double angleOf(QPointF along) { return std::atan2(along.y(), along.x()) * 180.0 / std::numbers::pi; }
double lengthOf(QPointF v) { return std::hypot(v.x(), v.y()); }

class Collector {
public:
    Collector(const Projection& projection, double mmPerPixel) : projection_(projection), mmPerPixel_(mmPerPixel) {}

    std::vector<Handle> take() { return std::move(handles_); }
    double px(double mm) const { return mm / mmPerPixel_; }
    QPointF drawn(const Placement& place, Point own) const { return projection_.map(place.toPlan(own)); }

    void add(Handle handle, QPointF at, double angleDeg, bool isCorner)
    {
        handle.at = at;
        handle.angleDeg = angleDeg;
        handle.isCorner = isCorner;
        handles_.push_back(std::move(handle));
    }

    void addOutline(const Part& part, const Counter& counter)
    {
        const std::size_t n = counter.outline.size();
        for (std::size_t i = 0; i < n; ++i) {
            const QPointF before = drawn(part.place, counter.outline[(i + n - 1) % n]);
            const QPointF a = drawn(part.place, counter.outline[i]);
            const QPointF b = drawn(part.place, counter.outline[(i + 1) % n]);
            Handle corner{Handle::What::outlineCorner, part.id, {}, {}, static_cast<int>(i), {}, 0.0, true};
            add(corner, a, diagonal(a - before, b - a), true);
            if (px(lengthOf(b - a)) < kLeastEdgePx) continue;
            Handle edge{Handle::What::outlineEdge, part.id, {}, {}, static_cast<int>(i), {}, 0.0, false};
            add(edge, (a + b) / 2.0, angleOf(b - a), false);
        }
    }

    /// A box in its own frame; `proto` names what it belongs to.
    void addBox(const Handle& proto, const Placement& frame, const Box& box)
    {
        const double width = px(box.width());
        const double depth = px(box.height());
        const bool thin = std::min(width, depth) < kLeastThickPx;
        const auto at = [&](int sides) {
            const double x = sides & kLeft ? box.low.x : sides & kRight ? box.high.x : box.centre().x;
            const double y = sides & kFront ? box.low.y : sides & kBack ? box.high.y : box.centre().y;
            return drawn(frame, {x, y});
        };
        const auto put = [&](int sides, bool isCorner) {
            Handle handle = proto;
            handle.index = sides;
            const QPointF right = drawn(frame, {1, 0}) - drawn(frame, {0, 0});
            const QPointF back = drawn(frame, {0, 1}) - drawn(frame, {0, 0});
            double angle = angleOf(sides & (kLeft | kRight) ? back : right);
            if (isCorner) {
                const bool rising = sides == (kLeft | kFront) || sides == (kRight | kBack);
                angle = angleOf(rising ? right + back : right - back) + 90.0;
            }
            add(handle, at(sides), angle, isCorner);
        };
        if (thin) {
            for (const int side : width >= depth ? std::array{kLeft, kRight} : std::array{kFront, kBack}) {
                put(side, false);
            }
            return;
        }
        for (const int side : {kLeft, kRight}) {
            if (depth >= kLeastEdgePx) put(side, false);
        }
        for (const int side : {kFront, kBack}) {
            if (width >= kLeastEdgePx) put(side, false);
        }
        for (const int corner : {kLeft | kFront, kRight | kFront, kRight | kBack, kLeft | kBack}) put(corner, true);
    }

    void addDiameter(const Handle& proto, const Placement& frame, const Cutout& cutout)
    {
        const double radius = cutout.diameterMm / 2.0;
        for (const int side : {kLeft, kRight, kFront, kBack}) {
            const Point off{side & kLeft ? -radius : side & kRight ? radius : 0.0,
                            side & kFront ? -radius : side & kBack ? radius : 0.0};
            // A small hole keeps its middle free for moving it.
            const double out = std::max(1.0, 14.0 * mmPerPixel_ / std::max(radius, 1e-6));
            Handle handle = proto;
            handle.index = side;
            const QPointF at = drawn(frame, cutout.centre + off * out);
            const QPointF centre = drawn(frame, cutout.centre);
            add(handle, at, angleOf(at - centre) + 90.0, false);
        }
    }

private:
    static double diagonal(QPointF in, QPointF out)
    {
        const double inLength = lengthOf(in);
        const double outLength = lengthOf(out);
        if (!(inLength > 0.0) || !(outLength > 0.0)) return 0.0;
        return angleOf(in / inLength + out / outLength);
    }

    const Projection& projection_;
    double mmPerPixel_;
    std::vector<Handle> handles_;
};

Handle named(Handle::What what, const std::string& part, const std::string& cutout = {},
             const std::string& fixture = {})
{
    Handle handle;
    handle.what = what;
    handle.part = part;
    handle.cutout = cutout;
    handle.fixture = fixture;
    return handle;
}

void addCutout(Collector& into, const Part& part, const std::string& id)
{
    const auto* counter = std::get_if<Counter>(&part.body);
    if (!counter) return;
    const auto found = std::ranges::find(counter->cutouts, id, &Cutout::id);
    if (found == counter->cutouts.end()) return;
    if (found->shape == CutoutShape::circle) {
        into.addDiameter(named(Handle::What::diameter, part.id, id), part.place, *found);
        return;
    }
    const Placement frame{part.place.toPlan(found->centre), part.place.turnDeg + found->turnDeg.value_or(0.0)};
    const Point half{found->size.width / 2.0, found->size.depth / 2.0};
    into.addBox(named(Handle::What::box, part.id, id), frame, {half * -1.0, half});
}

void addPartAbove(Collector& into, const Part& part)
{
    if (const auto* counter = std::get_if<Counter>(&part.body)) {
        into.addOutline(part, *counter);
    } else if (const auto* front = std::get_if<Front>(&part.body)) {
        const QPointF from = into.drawn(part.place, front->from);
        const QPointF to = into.drawn(part.place, front->to);
        const double across = angleOf(to - from) + 90.0;
        for (const int end : {0, 1}) {
            Handle handle = named(Handle::What::frontEnd, part.id);
            handle.index = end;
            into.add(handle, end == 0 ? from : to, across, false);
        }
    } else {
        const Size size = boxSizeOf(part);
        into.addBox(named(Handle::What::box, part.id), part.place, {{0, 0}, {size.width, size.depth}});
    }
}

void addGrips(Collector& into, const Part& part, const std::vector<Point>& grips)
{
    for (std::size_t i = 0; i < grips.size(); ++i) {
        Handle handle = named(Handle::What::grip, part.id);
        handle.index = static_cast<int>(i);
        handle.grips = grips;
        into.add(handle, into.drawn(part.place, grips[i]), 0.0, false);
    }
}

void addLevels(Collector& into, const Plan& plan, const Part& part, const Projection& projection)
{
    const Box box = viewBox(plan, part, projection);
    const double x = box.centre().x;
    // A counter's face is moved, not stretched; an appliance stands where it stands.
    const bool foot = part.kind() != PartKind::appliance;
    const bool top = part.kind() != PartKind::counter;
    for (const int side : {kFront, kBack}) {
        if (side == kFront ? !foot : !top) continue;
        Handle handle = named(Handle::What::level, part.id);
        handle.index = side;
        into.add(handle, QPointF(x, -(side == kFront ? box.low.y : box.high.y)), 0.0, false);
    }
}

void addTurn(Collector& into, const Plan& plan, const QStringList& parts, const Projection& projection,
             double mmPerPixel)
{
    const Box box = movingOf(plan, parts, projection).box;
    Handle handle = named(Handle::What::turn, parts.front().toStdString());
    into.add(handle, QPointF(box.centre().x, -box.high.y - kTurnHandlePx * mmPerPixel - 24.0 * mmPerPixel), 0.0, false);
}

}  // namespace

std::vector<Handle> handlesOf(const Plan& plan, const Selection& selection, const Projection& projection,
                              double mmPerPixel, const std::vector<Point>& grips)
{
    Collector into(projection, mmPerPixel);
    if (!selection.cutout().isEmpty()) {
        const Part* part = findPart(plan, selection.cutout().part.toStdString());
        if (part && projection.isAbove()) addCutout(into, *part, selection.cutout().cutout.toStdString());
        return into.take();
    }
    if (!selection.fixture().isEmpty()) {
        const std::string id = selection.fixture().toStdString();
        const auto found = std::ranges::find(plan.site.fixtures, id, &Fixture::id);
        if (found != plan.site.fixtures.end() && found->size && projection.isAbove()) {
            into.addBox(named(Handle::What::box, {}, {}, id), Placement{found->at, 0.0},
                        {{0, 0}, {found->size->width, found->size->depth}});
        }
        return into.take();
    }
    QStringList parts;
    for (const QString& id : selection.parts()) {
        if (findPart(plan, id.toStdString())) parts << id;
    }
    if (parts.isEmpty()) return {};
    if (parts.size() == 1) {
        const Part& part = *findPart(plan, parts.front().toStdString());
        if (projection.isAbove()) {
            addPartAbove(into, part);
            if (part.kind() == PartKind::counter) addGrips(into, part, grips);
        } else {
            addLevels(into, plan, part, projection);
        }
    }
    if (projection.isAbove()) addTurn(into, plan, parts, projection, mmPerPixel);
    return into.take();
}

QCursor cursorOf(const Handle& handle)
{
    if (handle.what == Handle::What::turn) return Qt::PointingHandCursor;
    if (handle.what == Handle::What::grip) return Qt::SizeAllCursor;
    // The hand moves across the edge.
    double across = std::fmod(handle.angleDeg + 90.0, 180.0);
    if (across < 0.0) across += 180.0;
    if (across < 22.5 || across >= 157.5) return Qt::SizeHorCursor;
    if (across < 67.5) return Qt::SizeFDiagCursor;
    if (across < 112.5) return Qt::SizeVerCursor;
    return Qt::SizeBDiagCursor;
}

}  // namespace yardcast::ui
