#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

#include "ui/drawing/dimension_painter.h"
#include "ui/drawing/painters.h"

namespace yardcast::ui {

namespace {

using What = DimensionTarget::What;

/// Offsets of rows of dimensions, in style units. One number serves screen and paper: partDimensions is for the
/// screen, sheet and drawing dimensions are for paper.
constexpr double kScreenOffset = 24.0;
constexpr double kPaperFirstRow = 9.0;
constexpr double kPaperRow = 9.0;

/// Collects dimensions of one part in its own frame, seen from above.
class OwnFrame {
public:
    OwnFrame(const Part& part, const Projection& projection, std::vector<Dimension>& into)
        : part_(part), projection_(projection), into_(into)
    {
    }

    /// From a to b; the line lies to the right of a->b in the own frame when `offset` is negative.
    void add(Point a, Point b, double offset, What what, int index = -1, const std::string& cutout = {})
    {
        const double value = distance(a, b);
        if (!(value > 1e-6)) {
            return;
        }
        Dimension dimension;
        dimension.a = projection_.map(part_.place.toPlan(a));
        dimension.b = projection_.map(part_.place.toPlan(b));
        dimension.offsetUnits = offset;
        dimension.valueMm = value;
        dimension.target = {what, part_.id, cutout, index};
        into_.push_back(dimension);
    }

private:
    const Part& part_;
    const Projection& projection_;
    std::vector<Dimension>& into_;
};

/// Where a line from `from` along `direction` first meets the outline.
std::optional<Point> meet(const Ring& outline, Point from, Point direction)
{
    std::optional<double> best;
    for (std::size_t i = 0; i < outline.size(); ++i) {
        const Point p = outline[i];
        const Point edge = outline[(i + 1) % outline.size()] - p;
        const double across = cross(direction, edge);
        if (across == 0.0) {
            continue;
        }
        const double t = cross(p - from, edge) / across;
        const double u = cross(p - from, direction) / across;
        if (t > 1e-9 && u >= 0.0 && u <= 1.0 && (!best || t < *best)) {
            best = t;
        }
    }
    if (!best) {
        return {};
    }
    return from + direction * *best;
}

struct Reach {
    double halfX = 0.0;
    double halfY = 0.0;
};

/// Half sizes of the cutout's box along the counter's own axes.
Reach reachOf(const Cutout& cutout)
{
    const std::optional<Box> box = boundsOf(cutoutRing(cutout));
    if (!box) {
        return {};
    }
    if (cutout.shape == CutoutShape::circle) {
        return {cutout.diameterMm / 2.0, cutout.diameterMm / 2.0};
    }
    return {box->width() / 2.0, box->height() / 2.0};
}

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

std::vector<Dimension> above(const Part& part, const Projection& projection, double offset)
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

std::vector<Dimension> inFront(const Plan& plan, const Part& part, const Projection& projection, double offset)
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

struct Interval {
    double from = 0.0;
    double to = 0.0;
    std::string part;
};

/// Intervals side by side in one row as long as they do not overlap; else the next row.
std::vector<std::vector<Interval>> rowsOf(std::vector<Interval> intervals)
{
    std::sort(intervals.begin(), intervals.end(), [](const Interval& a, const Interval& b) {
        return a.from != b.from ? a.from < b.from : a.to < b.to;
    });
    std::vector<std::vector<Interval>> rows;
    for (const Interval& interval : intervals) {
        bool placed = false;
        for (auto& row : rows) {
            const bool same = std::fabs(row.back().from - interval.from) < 0.5 &&
                              std::fabs(row.back().to - interval.to) < 0.5;
            if (same || row.back().to <= interval.from + 0.5) {
                if (!same) {
                    row.push_back(interval);
                }
                placed = true;
                break;
            }
        }
        if (!placed) {
            rows.push_back({interval});
        }
    }
    return rows;
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

std::vector<Dimension> partDimensions(const Plan& plan, const Part& part, const Projection& projection)
{
    return projection.isAbove() ? above(part, projection, kScreenOffset)
                                : inFront(plan, part, projection, kScreenOffset);
}

std::vector<Dimension> sheetDimensions(const Plan& plan, const Part& part, const Projection& projection)
{
    return projection.isAbove() ? above(part, projection, kPaperFirstRow)
                                : inFront(plan, part, projection, kPaperFirstRow);
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
    double offset = kPaperFirstRow;
    for (const auto& row : rowsOf(heights)) {
        for (const Interval& interval : row) {
            dimensions.push_back(
                upright(bounds.left(), interval.from, interval.to, offset, What::height, interval.part));
        }
        offset += kPaperRow;
    }
    return dimensions;
}

}  // namespace yardcast::ui
