#include "core/structure/stress_marks.h"

#include <algorithm>
#include <cmath>

namespace yardcast {

namespace {

/// Marks along a line, apart in thicknesses of the thinnest kind, and at least, mm.
constexpr double kApart = 0.5;
constexpr double kLeastApartMm = 15.0;
/// To tell what lies beside a line, mm.
constexpr double kBesideMm = 0.5;
/// Within so many thicknesses of an inner corner the corner itself counts: marks lie just outside.
constexpr double kRoundCorner = 0.5;
constexpr double kJustOutside = 1.001;

class Marks {
public:
    Marks(const Body& body, const std::vector<Region>& regions) : body_(body), regions_(regions)
    {
        double thinnest = HUGE_VAL;
        for (const SectionKind& kind : body.kinds)
            thinnest = std::min(thinnest, kind.skins ? -kind.undersideMm : kind.depthMm);
        apartMm_ = std::max(kLeastApartMm, kApart * thinnest);
    }

    void alongRing(const Ring& ring)
    {
        for (std::size_t i = 0; i < ring.size(); ++i) alongSegment(ring[i], ring[(i + 1) % ring.size()]);
    }

    void aroundCorner(const InnerCorner& corner)
    {
        const double mm = kRoundCorner * kJustOutside * corner.thicknessMm;
        for (const CrackLine& line : corner.lines) add(line.from + line.inward * mm, line.inward);
        if (corner.lines.empty()) return;
        // Along the boundary to both sides: square to the first and the last crack line.
        const Point first = leftNormal(corner.lines.front().inward);
        const Point last = leftNormal(corner.lines.back().inward);
        for (const Point p : {corner.along.front(), corner.along.back()}) {
            for (const Point way : {first, first * -1.0, last, last * -1.0}) add(p + way * mm, leftNormal(way));
        }
    }

    std::vector<StressMark> take() { return std::move(marks_); }

private:
    void alongSegment(Point a, Point b)
    {
        const double span = distance(a, b);
        if (!(span > 1e-6)) return;
        const Point along = (b - a) * (1.0 / span);
        const int pieces = std::max(1, static_cast<int>(std::lround(span / apartMm_)));
        for (int i = 0; i < pieces; ++i) add(a + along * (span * i / pieces), leftNormal(along));
    }

    /// Of each kind that lies on either side.
    void add(Point p, Point aside)
    {
        if (nearCorner(p)) return;
        const PlaceInMesh place = placeOf(p, aside);
        if (place.triangle < 0) return;
        for (std::size_t k = 0; k < regions_.size(); ++k) {
            if (regions_.size() == 1 || contains(regions_[k], p + aside * kBesideMm) || contains(regions_[k], p - aside * kBesideMm))
                marks_.push_back({p, static_cast<int>(k), place});
        }
    }

    PlaceInMesh placeOf(Point p, Point aside) const
    {
        for (const double mm : {0.0, kBesideMm, -kBesideMm}) {
            const PlaceInMesh place = body_.index.find(body_.mesh(), p + aside * mm);
            if (place.triangle >= 0) return place;
        }
        return {};
    }

    bool nearCorner(Point p) const
    {
        return std::any_of(body_.corners.begin(), body_.corners.end(), [&](const InnerCorner& corner) {
            const double mm = kRoundCorner * corner.thicknessMm;
            return std::any_of(corner.along.begin(), corner.along.end(),
                               [&](Point q) { return dot(p - q, p - q) <= mm * mm; });
        });
    }

    const Body& body_;
    const std::vector<Region>& regions_;
    double apartMm_ = 0.0;
    std::vector<StressMark> marks_;
};

}  // namespace

std::vector<StressMark> stressMarks(const Body& body, const std::vector<Region>& regions,
                                    const std::vector<Ring>& boundary)
{
    Marks marks(body, regions);
    for (const Ring& ring : boundary) marks.alongRing(ring);
    for (std::size_t k = 1; k < regions.size(); ++k) {
        for (const Polygon& polygon : regions[k]) {
            marks.alongRing(polygon.outer);
            for (const Ring& hole : polygon.holes) marks.alongRing(hole);
        }
    }
    for (const Rest& rest : body.input.rests) {
        for (const Polygon& polygon : rest.bearing) {
            marks.alongRing(polygon.outer);
            for (const Ring& hole : polygon.holes) marks.alongRing(hole);
        }
    }
    for (const InnerCorner& corner : body.corners) marks.aroundCorner(corner);
    return marks.take();
}

}  // namespace yardcast
