#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

#include "ui/drawing/dimension_rows.h"
#include "ui/drawing/painters.h"

namespace yardcast::ui {

namespace {

using What = DimensionTarget::What;

/// Offset of dimensions on the screen, style units.
constexpr double kScreenOffset = 24.0;

void addCutoutSizes(OwnFrame& frame, const Cutout& cutout, double offset)
{
    if (cutout.shape == CutoutShape::circle) {
        const Point half{cutout.diameterMm / 2.0, 0.0};
        frame.add(cutout.centre - half, cutout.centre + half, offset, What::cutoutDiameter, -1, cutout.id);
        return;
    }
    const Placement own{cutout.centre, cutout.turnDeg.value_or(0.0)};
    const double x = cutout.size.width / 2.0;
    const double y = cutout.size.depth / 2.0;
    // Inside the opening, so that strips beside it stay free for their own dimensions.
    frame.add(own.toPlan({-x, y}), own.toPlan({x, y}), -offset, What::cutoutWidth, -1, cutout.id);
    frame.add(own.toPlan({-x, -y}), own.toPlan({-x, y}), -offset, What::cutoutDepth, -1, cutout.id);
}

/// What is left beside the cutout, measured straight from the middle of its box's sides to the outline.
void addStrips(OwnFrame& frame, const Ring& outline, const Cutout& cutout)
{
    const Reach reach = reachOf(cutout);
    const auto strip = [&](Point side, Point direction, What what) {
        if (const std::optional<Point> edge = meet(outline, side, direction)) {
            const bool forwards = direction.x > 0.0 || direction.y > 0.0;
            frame.add(forwards ? side : *edge, forwards ? *edge : side, 0.0, what, -1, cutout.id);
        }
    };
    const Point c = cutout.centre;
    if (cutout.shape == CutoutShape::circle) {
        // A hole needs one distance each way: the nearer.
        const auto free = [&](Point direction) {
            const std::optional<Point> edge = meet(outline, c, direction);
            return edge ? distance(*edge, c) : std::numeric_limits<double>::max();
        };
        const bool left = free({-1.0, 0.0}) <= free({1.0, 0.0});
        const bool front = free({0.0, -1.0}) <= free({0.0, 1.0});
        strip({c.x + (left ? -reach.halfX : reach.halfX), c.y}, {left ? -1.0 : 1.0, 0.0},
              left ? What::cutoutFromLeft : What::cutoutFromRight);
        strip({c.x, c.y + (front ? -reach.halfY : reach.halfY)}, {0.0, front ? -1.0 : 1.0},
              front ? What::cutoutFromFront : What::cutoutFromBack);
        return;
    }
    strip({c.x - reach.halfX, c.y}, {-1.0, 0.0}, What::cutoutFromLeft);
    strip({c.x + reach.halfX, c.y}, {1.0, 0.0}, What::cutoutFromRight);
    strip({c.x, c.y - reach.halfY}, {0.0, -1.0}, What::cutoutFromFront);
    strip({c.x, c.y + reach.halfY}, {0.0, 1.0}, What::cutoutFromBack);
}

void addOutline(OwnFrame& frame, const Ring& outline, double offset)
{
    // Outside the slab: to the right of each edge when the ring runs counter-clockwise.
    const double outwards = signedArea(outline) >= 0.0 ? -offset : offset;
    for (std::size_t i = 0; i < outline.size(); ++i) {
        frame.add(outline[i], outline[(i + 1) % outline.size()], outwards, What::edgeLength, static_cast<int>(i));
    }
}

void addRectangle(OwnFrame& frame, Size size, double offset)
{
    frame.add({0.0, 0.0}, {size.width, 0.0}, -offset, What::edgeLength, 0);
    frame.add({size.width, 0.0}, {size.width, size.depth}, -offset, What::edgeLength, 1);
}

Dimension upright(double x, double lowMm, double highMm, double offset, What what, const std::string& id)
{
    // Measured from low to high: left of it is the left of the sheet.
    Dimension dimension;
    dimension.a = QPointF(x, -lowMm);
    dimension.b = QPointF(x, -highMm);
    dimension.offsetUnits = offset;
    dimension.valueMm = highMm - lowMm;
    dimension.target = {what, id, {}, -1};
    return dimension;
}

Dimension level(double fromX, double toX, double y, double offset, What what, const std::string& id)
{
    Dimension dimension;
    dimension.a = QPointF(fromX, y);
    dimension.b = QPointF(toX, y);
    dimension.offsetUnits = offset;
    dimension.valueMm = toX - fromX;
    dimension.target = {what, id, {}, -1};
    return dimension;
}

/// Rows below the drawing: each chosen part's length, then the whole.
void addRowsBelow(const std::vector<Interval>& intervals, const QRectF& bounds, std::vector<Dimension>& into)
{
    double offset = kPaperFirstRow;
    const auto rows = rowsOf(intervals);
    double low = bounds.left();
    double high = bounds.right();
    for (const auto& row : rows) {
        for (const Interval& interval : row) {
            into.push_back(level(interval.from, interval.to, bounds.bottom(), -offset, What::edgeLength,
                                 interval.part));
        }
        offset += kPaperRow;
    }
    if (!intervals.empty()) {
        low = high = intervals.front().from;
        for (const Interval& interval : intervals) {
            low = std::min(low, interval.from);
            high = std::max(high, interval.to);
        }
        const bool said = rows.size() == 1 && rows.front().size() == 1;
        if (!said) {
            into.push_back(level(low, high, bounds.bottom(), -offset, What::overall, {}));
        }
    }
}

void addRowsLeft(const std::vector<Interval>& intervals, const QRectF& bounds, std::vector<Dimension>& into)
{
    double offset = kPaperFirstRow;
    const auto rows = rowsOf(intervals);
    for (const auto& row : rows) {
        for (const Interval& interval : row) {
            into.push_back(upright(bounds.left(), interval.from, interval.to, offset, What::edgeLength,
                                   interval.part));
        }
        offset += kPaperRow;
    }
    if (rows.size() > 1 || (rows.size() == 1 && rows.front().size() > 1)) {
        double low = intervals.front().from;
        double high = intervals.front().to;
        for (const Interval& interval : intervals) {
            low = std::min(low, interval.from);
            high = std::max(high, interval.to);
        }
        into.push_back(upright(bounds.left(), low, high, offset, What::overall, {}));
    }
}

bool isAny(const Part& part, std::initializer_list<PartKind> kinds)
{
    return std::find(kinds.begin(), kinds.end(), part.kind()) != kinds.end();
}

}  // namespace

std::vector<Dimension> dimensionsAbove(const Part& part, const Projection& projection, double offset)
{
    std::vector<Dimension> dimensions;
    OwnFrame frame(part, projection, dimensions);
    if (const auto* counter = std::get_if<Counter>(&part.body)) {
        addOutline(frame, counter->outline, offset);
        for (const Cutout& cutout : counter->cutouts) {
            addCutoutSizes(frame, cutout, offset);
            addStrips(frame, counter->outline, cutout);
        }
    } else if (const auto* support = std::get_if<Support>(&part.body)) {
        addRectangle(frame, {support->lengthMm, support->widthMm}, offset);
    } else if (const auto* panel = std::get_if<Panel>(&part.body)) {
        addRectangle(frame, {panel->lengthMm, panel->thicknessMm}, offset);
    } else if (const auto* appliance = std::get_if<Appliance>(&part.body)) {
        addRectangle(frame, appliance->size, offset);
    } else if (const auto* front = std::get_if<Front>(&part.body)) {
        frame.add(front->from, front->to, -offset, What::edgeLength, 0);
    }
    return dimensions;
}

std::vector<Dimension> dimensionsInFront(const Plan& plan, const Part& part, const Projection& projection,
                                         double offset)
{
    std::vector<Dimension> dimensions;
    const Levels levels = levelsOf(plan, part);
    const QRectF box = partShape(plan, part, projection).boundingRect();
    if (levels.highMm > levels.lowMm) {
        dimensions.push_back(upright(box.left(), levels.lowMm, levels.highMm, offset, What::height, part.id));
    }
    if (levels.highMm > 0.0) {
        dimensions.push_back(upright(box.right(), 0.0, levels.highMm, -offset, What::level, part.id));
    }
    return dimensions;
}

std::vector<Dimension> partDimensions(const Plan& plan, const Part& part, const Projection& projection)
{
    return projection.isAbove() ? dimensionsAbove(part, projection, kScreenOffset)
                                : dimensionsInFront(plan, part, projection, kScreenOffset);
}

std::vector<Dimension> drawingDimensions(const Plan& plan, const Projection& projection)
{
    std::vector<Dimension> dimensions;
    const QRectF bounds = partsBounds(plan, projection);
    // Counters say where everything is; a plan without any is measured by its other parts.
    const bool counters = std::any_of(plan.parts.begin(), plan.parts.end(), [](const PartPtr& part) {
        return part && part->kind() == PartKind::counter;
    });
    std::vector<Interval> across;
    std::vector<Interval> upwards;
    for (const PartPtr& part : plan.parts) {
        if (!part || (counters && !isAny(*part, {PartKind::counter}))) {
            continue;
        }
        const QRectF box = partShape(plan, *part, projection).boundingRect();
        across.push_back({box.left(), box.right(), part->id});
        upwards.push_back({-box.bottom(), -box.top(), part->id});
    }
    addRowsBelow(across, bounds, dimensions);
    if (projection.isAbove()) {
        addRowsLeft(upwards, bounds, dimensions);
        return dimensions;
    }
    // Heights: levels stand at the right (level marks); on the left what stands on the ground.
    std::vector<Interval> heights;
    for (const PartPtr& part : plan.parts) {
        if (part && isAny(*part, {PartKind::support, PartKind::front})) {
            const Levels levels = levelsOf(plan, *part);
            if (levels.highMm > levels.lowMm) {
                const bool known = std::any_of(heights.begin(), heights.end(), [&](const Interval& other) {
                    return std::fabs(other.from - levels.lowMm) < 0.5 && std::fabs(other.to - levels.highMm) < 0.5;
                });
                if (!known) {
                    heights.push_back({levels.lowMm, levels.highMm, part->id});
                }
            }
        }
    }
    // Small heights go outside, since their figures need room beside their line.
    auto rows = rowsOf(heights);
    const auto least = [](const std::vector<Interval>& row) {
        double size = std::numeric_limits<double>::max();
        for (const Interval& interval : row) {
            size = std::min(size, interval.to - interval.from);
        }
        return size;
    };
    std::stable_sort(rows.begin(), rows.end(), [&](const auto& a, const auto& b) { return least(a) > least(b); });
    double offset = kPaperFirstRow;
    for (const auto& row : rows) {
        for (const Interval& interval : row) {
            dimensions.push_back(
                upright(bounds.left(), interval.from, interval.to, offset, What::height, interval.part));
        }
        offset += least(row) < 0.4 * least(rows.front()) ? 1.7 * kPaperRow : kPaperRow;
    }
    return dimensions;
}

}  // namespace yardcast::ui
