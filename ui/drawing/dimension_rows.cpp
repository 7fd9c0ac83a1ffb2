#include "ui/drawing/dimension_rows.h"

#include <algorithm>
#include <cmath>

namespace yardcast::ui {

void OwnFrame::add(Point a, Point b, double offsetUnits, DimensionTarget::What what, int index,
                   const std::string& cutout, double offsetMm)
{
    const double value = distance(a, b);
    if (!(value > 1e-6)) {
        return;
    }
    Dimension dimension;
    dimension.a = projection_.map(part_.place.toPlan(a));
    dimension.b = projection_.map(part_.place.toPlan(b));
    dimension.offsetUnits = offsetUnits;
    dimension.offsetMm = offsetMm;
    dimension.valueMm = value;
    dimension.target = {what, part_.id, cutout, index};
    into_.push_back(dimension);
}

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

}  // namespace yardcast::ui
