#include "core/plan/edits/edit_tools.h"

namespace yardcast {

using namespace edit_tools;

namespace {

/// Lowest plus highest own x of a part: x -> sum - x mirrors it within its own bounds.
struct BoundsSum {
    static double of(const Ring& ring)
    {
        const auto box = boundsOf(ring);
        return box ? box->low.x + box->high.x : 0.0;
    }
    double operator()(const Counter& c) const { return of(c.outline); }
    double operator()(const Support& s) const { return s.lengthMm; }
    double operator()(const Panel& p) const { return p.lengthMm; }
    double operator()(const Front& f) const { return f.from.x + f.to.x; }
    double operator()(const Appliance& a) const { return a.size.width; }
};

struct MirrorWithin {
    double sum;

    void flip(Point& p) const { p = {tidy(sum - p.x), p.y}; }
    void flip(Steel& steel) const
    {
        for (BarGroup& bars : steel.bars) {
            flip(bars.from);
            flip(bars.to);
        }
    }

    /// The ring is run through the other way so that it keeps its sense, and so that edge 0 stays edge 0:
    /// a rectangle from its front left corner comes out as the same rectangle.
    void flipOutline(Counter& c) const
    {
        const std::size_t n = c.outline.size();
        if (n == 0) return;
        std::vector<Point> mirrored(n);
        for (std::size_t i = 0; i < n; ++i) {
            mirrored[i] = c.outline[(n + 1 - i) % n];
            flip(mirrored[i]);
        }
        c.outline = std::move(mirrored);
        const int count = static_cast<int>(n);
        forEachEdgeList(c, [count](std::vector<int>& edges) {
            for (int& edge : edges) {
                if (edge >= 0 && edge < count) edge = (count - edge) % count;
            }
        });
    }

    void operator()(Counter& c) const
    {
        flipOutline(c);
        for (Rib& rib : c.ribs) {
            flip(rib.from);
            flip(rib.to);
        }
        for (Cutout& cutout : c.cutouts) {
            flip(cutout.centre);
            if (cutout.turnDeg) cutout.turnDeg = 0.0 - *cutout.turnDeg;
        }
        for (Joint& joint : c.joints) {
            flip(joint.from);
            flip(joint.to);
        }
        if (c.steel) flip(*c.steel);
        for (PlacedLoad& load : c.loads) flip(load.centre);
        if (c.lift) {
            for (Point& grip : c.lift->grips) flip(grip);
        }
    }
    void operator()(Support&) const {}
    void operator()(Panel& p) const
    {
        if (p.steel) flip(*p.steel);
    }
    /// The ends change places, or the battens would come to lie on the other side of the line.
    void operator()(Front& f) const
    {
        const double span = distance(f.from, f.to);
        std::swap(f.from, f.to);
        flip(f.from);
        flip(f.to);
        for (Door& door : f.doors) {
            const double from = door.fromMm;
            door.fromMm = tidy(span - door.toMm);
            door.toMm = tidy(span - from);
            door.hinges = door.hinges == HingeSide::left ? HingeSide::right : HingeSide::left;
        }
        if (f.measured) {
            std::swap(f.measured->leftMm, f.measured->rightMm);
            std::swap(f.measured->diagonalRisingMm, f.measured->diagonalFallingMm);
        }
    }
    void operator()(Appliance&) const {}
};

}  // namespace

Plan mirrorParts(const Plan& plan, const Ids& ids, double xMm)
{
    return withEach(plan, ids, [&](Part& part) {
        const double sum = std::visit(BoundsSum{}, part.body);
        std::visit(MirrorWithin{sum}, part.body);
        const Point at = part.place.at;
        part.place.turnDeg = tidyTurn(-part.place.turnDeg);
        part.place.at = tidy(Point{2.0 * xMm - at.x, at.y} - part.place.directionToPlan({sum, 0.0}));
    });
}

}  // namespace yardcast
