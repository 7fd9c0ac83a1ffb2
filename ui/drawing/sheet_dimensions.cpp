#include <algorithm>
#include <cmath>

#include "core/castings/casting.h"
#include "ui/drawing/dimension_rows.h"

namespace yardcast::ui {

namespace {

using What = DimensionTarget::What;

/// Something located along one axis of the slab: from low to high (equal for the centre of a hole), reaching up to
/// `base` across, where its extension lines begin.
struct Feature {
    double low = 0.0;
    double high = 0.0;
    double base = 0.0;
    double edgeLow = 0.0;   ///< outline beside it
    double edgeHigh = 0.0;
    std::string cutout;
};

enum class Axis { x, y };

Point along(Axis axis, double at, double across)
{
    return axis == Axis::x ? Point{at, across} : Point{across, at};
}

/// Round and turned cutouts: their box says nothing to whoever makes the mould.
bool isLocatedByCentre(const Cutout& cutout)
{
    return cutout.shape == CutoutShape::circle || std::fmod(cutout.turnDeg.value_or(0.0), 90.0) != 0.0;
}

Feature featureOf(const Counter& counter, const Box& box, const Cutout& cutout, Axis axis)
{
    const Reach reach = isLocatedByCentre(cutout) ? Reach{} : reachOf(cutout);
    const Point c = cutout.centre;
    const double middle = axis == Axis::x ? c.x : c.y;
    const double half = axis == Axis::x ? reach.halfX : reach.halfY;
    Feature feature;
    feature.cutout = cutout.id;
    feature.low = middle - half;
    feature.high = middle + half;
    feature.base = axis == Axis::x ? c.y + reach.halfY : c.x + reach.halfX;
    const Point direction = axis == Axis::x ? Point{1.0, 0.0} : Point{0.0, 1.0};
    const auto edge = [&](Point from, Point towards, double fallback) {
        const std::optional<Point> met = meet(counter.outline, from, towards);
        return met ? (axis == Axis::x ? met->x : met->y) : fallback;
    };
    feature.edgeLow = edge(c, direction * -1.0, axis == Axis::x ? box.low.x : box.low.y);
    feature.edgeHigh = edge(c, direction, axis == Axis::x ? box.high.x : box.high.y);
    return feature;
}

/// Features side by side form one chain; those that overlap get rows of their own.
std::vector<std::vector<Feature>> chainsOf(std::vector<Feature> features)
{
    std::stable_sort(features.begin(), features.end(),
                     [](const Feature& a, const Feature& b) { return a.low < b.low; });
    std::vector<std::vector<Feature>> rows;
    for (const Feature& feature : features) {
        const auto row = std::find_if(rows.begin(), rows.end(), [&](const std::vector<Feature>& one) {
            return one.back().high <= feature.low + 0.5 && std::fabs(one.back().edgeLow - feature.edgeLow) < 0.5;
        });
        if (row == rows.end()) {
            rows.push_back({feature});
        } else {
            row->push_back(feature);
        }
    }
    return rows;
}

/// Rows behind the slab (axis x) or at its right (axis y), each a row further out.
class SideRows {
public:
    SideRows(OwnFrame& frame, const Box& box, Axis axis, int firstRow)
        : frame_(frame), outside_(axis == Axis::x ? box.high.y : box.high.x), axis_(axis), row_(firstRow)
    {
    }

    void add(double from, double to, double base, What what, const std::string& cutout)
    {
        // The line goes to the left of x and to the right of y: away from the slab.
        const double side = axis_ == Axis::x ? 1.0 : -1.0;
        frame_.add(along(axis_, from, base), along(axis_, to, base),
                   side * (kPaperFirstRow + row_ * kPaperRow), what, -1, cutout, side * (outside_ - base));
    }
    void next() { ++row_; }

private:
    OwnFrame& frame_;
    double outside_;
    Axis axis_;
    int row_;
};

void addCutoutChains(OwnFrame& frame, const Counter& counter, const Box& box, Axis axis, int firstRow)
{
    SideRows rows(frame, box, axis, firstRow);
    const What low = axis == Axis::x ? What::cutoutFromLeft : What::cutoutFromFront;
    const What high = axis == Axis::x ? What::cutoutFromRight : What::cutoutFromBack;
    const What size = axis == Axis::x ? What::cutoutWidth : What::cutoutDepth;
    std::vector<Feature> openings;
    std::vector<Feature> holes;
    for (const Cutout& cutout : counter.cutouts) {
        (isLocatedByCentre(cutout) ? holes : openings).push_back(featureOf(counter, box, cutout, axis));
    }
    for (const auto& chain : chainsOf(openings)) {
        rows.add(chain.front().edgeLow, chain.front().low, chain.front().base, low, chain.front().cutout);
        for (std::size_t i = 0; i < chain.size(); ++i) {
            rows.add(chain[i].low, chain[i].high, chain[i].base, size, chain[i].cutout);
            const bool last = i + 1 == chain.size();
            rows.add(chain[i].high, last ? chain[i].edgeHigh : chain[i + 1].low,
                     last ? chain[i].base : std::max(chain[i].base, chain[i + 1].base), last ? high : What::none,
                     chain[i].cutout);
        }
        rows.next();
    }
    for (const auto& chain : chainsOf(holes)) {
        double from = chain.front().edgeLow;
        double base = chain.front().base;
        for (const Feature& hole : chain) {
            rows.add(from, hole.low, std::max(base, hole.base), What::none, hole.cutout);
            from = hole.low;
            base = hole.base;
        }
        rows.next();
    }
}

Point outwardNormal(const Ring& outline, std::size_t edge, double side)
{
    const Point run = outline[(edge + 1) % outline.size()] - outline[edge];
    const double size = length(run);
    return size > 0.0 ? leftNormal(run) * (-side / size) : Point{};
}

/// Edges that say nothing new: an equal one lies opposite. Of the two the front and the left one stay.
bool isSaidOpposite(const Ring& outline, std::size_t edge, double side)
{
    const auto count = outline.size();
    const Point run = outline[(edge + 1) % count] - outline[edge];
    for (std::size_t other = 0; other < count; ++other) {
        const Point back = outline[other] - outline[(other + 1) % count];
        if (other == edge || length(run - back) > 0.05) {
            continue;
        }
        const Point shift = outline[(other + 1) % count] - outline[edge];
        if (std::fabs(dot(shift, run)) > 0.05 * length(run)) {
            continue;
        }
        const Point mine = outwardNormal(outline, edge, side);
        const Point theirs = outwardNormal(outline, other, side);
        const double merit = mine.x + mine.y;
        const double theirMerit = theirs.x + theirs.y;
        if (merit > theirMerit + 1e-9 || (std::fabs(merit - theirMerit) <= 1e-9 && edge > other)) {
            return true;
        }
    }
    return false;
}

struct OutlineSides {
    bool behind = false;
    bool right = false;
    std::vector<Interval> inFront;  ///< what edges at the front already say
    std::vector<Interval> atLeft;
};

OutlineSides addOutlineEdges(OwnFrame& frame, const Ring& outline)
{
    OutlineSides sides;
    const double side = signedArea(outline) >= 0.0 ? 1.0 : -1.0;
    for (std::size_t i = 0; i < outline.size(); ++i) {
        if (isSaidOpposite(outline, i, side)) {
            continue;
        }
        const Point normal = outwardNormal(outline, i, side);
        sides.behind = sides.behind || normal.y > 0.5;
        sides.right = sides.right || normal.x > 0.5;
        const Point a = outline[i];
        const Point b = outline[(i + 1) % outline.size()];
        if (normal.y < -0.99) {
            sides.inFront.push_back({std::min(a.x, b.x), std::max(a.x, b.x), {}});
        } else if (normal.x < -0.99) {
            sides.atLeft.push_back({std::min(a.y, b.y), std::max(a.y, b.y), {}});
        }
        frame.add(a, b, -side * kPaperFirstRow, What::edgeLength,
                  static_cast<int>(i));
    }
    return sides;
}

bool isSaid(const std::vector<Interval>& said, const Interval& one)
{
    return std::any_of(said.begin(), said.end(), [&](const Interval& other) {
        return std::fabs(other.from - one.from) < 0.05 && std::fabs(other.to - one.to) < 0.05;
    });
}

/// Sizes of the castings that joints divide the counter into: in front of it and at its left.
void addCastingRows(OwnFrame& frame, const Part& part, const Box& box, const OutlineSides& said)
{
    std::vector<Interval> across;
    std::vector<Interval> upwards;
    const std::vector<CastingPtr> castings = castingsOf(part);
    if (castings.size() < 2) {
        return;
    }
    for (const CastingPtr& casting : castings) {
        const Interval x{casting->boundsMm.low.x, casting->boundsMm.high.x, casting->id};
        const Interval y{casting->boundsMm.low.y, casting->boundsMm.high.y, casting->id};
        if (!isSaid(said.inFront, x)) {
            across.push_back(x);
        }
        if (!isSaid(said.atLeft, y)) {
            upwards.push_back(y);
        }
    }
    double offset = kPaperFirstRow + kPaperRow;
    for (const auto& row : rowsOf(across)) {
        for (const Interval& one : row) {
            frame.add({one.from, box.low.y}, {one.to, box.low.y}, -offset, What::none);
        }
        offset += kPaperRow;
    }
    offset = kPaperFirstRow + kPaperRow;
    for (const auto& row : rowsOf(upwards)) {
        for (const Interval& one : row) {
            frame.add({box.low.x, one.from}, {box.low.x, one.to}, offset, What::none);
        }
        offset += kPaperRow;
    }
}

}  // namespace

std::vector<Dimension> sheetDimensions(const Plan& plan, const Part& part, const Projection& projection)
{
    if (!projection.isAbove()) {
        return dimensionsInFront(plan, part, projection, kPaperFirstRow);
    }
    const auto* counter = std::get_if<Counter>(&part.body);
    const std::optional<Box> box = counter ? boundsOf(counter->outline) : std::nullopt;
    if (!box) {
        return dimensionsAbove(part, projection, kPaperFirstRow);
    }
    std::vector<Dimension> dimensions;
    OwnFrame frame(part, projection, dimensions);
    const OutlineSides taken = addOutlineEdges(frame, counter->outline);
    addCutoutChains(frame, *counter, *box, Axis::x, taken.behind ? 1 : 0);
    addCutoutChains(frame, *counter, *box, Axis::y, taken.right ? 1 : 0);
    for (const Cutout& cutout : counter->cutouts) {
        if (cutout.shape == CutoutShape::circle) {
            const Point half{cutout.diameterMm / 2.0, 0.0};
            frame.add(cutout.centre - half, cutout.centre + half, 0.0, What::cutoutDiameter, -1, cutout.id);
        }
    }
    if (!counter->joints.empty()) {
        addCastingRows(frame, part, *box, taken);
    }
    return dimensions;
}

}  // namespace yardcast::ui
