#include <algorithm>
#include <cmath>
#include <optional>

#include "core/structure/in_use.h"

namespace yardcast {

namespace {

constexpr double kHalfMm = kPersonMm / 2;
/// Spots of which less than this share lies on concrete are no place to stand on.
constexpr double kLeastShare = 0.2;
constexpr double kWholeShare = 0.99;
constexpr int kGridSpots = 40;
constexpr int kMostSpots = 120;

/// Share of the square about `p` that is concrete: by a raster, as it only has to tell a spot from none.
double concreteShare(const Region& outline, Point p)
{
    constexpr int kSteps = 5;
    int inside = 0;
    for (int i = 0; i < kSteps; ++i) {
        for (int j = 0; j < kSteps; ++j) {
            const Point q{p.x - kHalfMm + kPersonMm * (i + 0.5) / kSteps,
                          p.y - kHalfMm + kPersonMm * (j + 0.5) / kSteps};
            if (contains(outline, q)) ++inside;
        }
    }
    return static_cast<double>(inside) / (kSteps * kSteps);
}

/// A square that reaches over the edge of a box, pushed aside until it is flush with it; nothing where its middle lies
/// in the box. So a spot does not vanish at once when a cutout is dragged towards it.
std::optional<Point> besideBox(const Box& box, Point p)
{
    const double left = p.x - (box.low.x - kHalfMm);
    const double right = box.high.x + kHalfMm - p.x;
    const double below = p.y - (box.low.y - kHalfMm);
    const double above = box.high.y + kHalfMm - p.y;
    const double least = std::min({left, right, below, above});
    if (least <= 0.0) return p;
    if (least > kHalfMm) return std::nullopt;
    if (least == left) return Point{p.x - left, p.y};
    if (least == right) return Point{p.x + right, p.y};
    return Point{p.x, least == below ? p.y - below : p.y + above};
}

/// Spots side by side along an edge, the square flush with it on the concrete's side (left of from-to).
void alongEdge(Point from, Point to, double pitchMm, std::vector<Point>& spots)
{
    const double span = distance(from, to);
    if (!(span > 1e-6)) return;
    const Point along = (to - from) * (1.0 / span);
    const Point inward = leftNormal(along) * kHalfMm;
    const double room = span - kPersonMm;
    if (room <= 0.0) {
        spots.push_back((from + to) * 0.5 + inward);
        return;
    }
    const int steps = std::max(1, static_cast<int>(std::lround(room / pitchMm)));
    for (int i = 0; i <= steps; ++i) spots.push_back(from + along * (kHalfMm + room * i / steps) + inward);
}

}  // namespace

std::vector<Point> personSpots(const StrengthInput& input)
{
    const Casting& casting = *input.casting;
    std::vector<Point> spots;
    if (casting.outline.empty()) return spots;
    const Polygon& outline = casting.outline.front();

    // Round each cutout: the middle and both ends of the strips beside its box.
    std::vector<Box> cutouts;
    if (const auto* counter = std::get_if<Counter>(&input.body)) {
        for (const Cutout& cutout : counter->cutouts) {
            // A person may well stand over a tap hole.
            const auto box = boundsOf(cutoutRing(cutout));
            if (box && std::max(box->width(), box->height()) >= kPersonMm) cutouts.push_back(*box);
        }
    }
    for (const Box& box : cutouts) {
        const Point c = box.centre();
        for (const double x : {box.low.x, c.x, box.high.x}) {
            spots.push_back({x, box.low.y - kHalfMm});
            spots.push_back({x, box.high.y + kHalfMm});
        }
        spots.push_back({box.low.x - kHalfMm, c.y});
        spots.push_back({box.high.x + kHalfMm, c.y});
    }
    const double perimeter = perimeterMm(outline.outer);
    const double edgePitch = std::max(perimeter / 28, kPersonMm);
    for (std::size_t i = 0; i < outline.outer.size(); ++i) {
        const Point from = outline.outer[i];
        const Point to = outline.outer[(i + 1) % outline.outer.size()];
        if (distance(from, to) >= kPersonMm) alongEdge(from, to, edgePitch, spots);
    }
    std::erase_if(spots, [&](Point p) { return concreteShare(casting.outline, p) < kLeastShare; });
    // Two edges share the square in their corner.
    std::vector<Point> once;
    for (const Point p : spots) {
        if (std::none_of(once.begin(), once.end(), [p](Point q) { return distance(p, q) < 1.0; })) once.push_back(p);
    }
    spots = std::move(once);
    if (spots.size() > kMostSpots / 2) spots.resize(kMostSpots / 2);

    // The field between: a grid of the box, the same wherever cutouts lie but for what these push aside.
    const Box box = casting.boundsMm;
    const Region whole{{outline.outer, {}}};
    const double width = box.width() - 2 * kPersonMm;
    const double height = box.height() - 2 * kPersonMm;
    if (width > 0.0 && height > 0.0) {
        const double pitch = std::sqrt(width * height / kGridSpots);
        const int columns = std::clamp(static_cast<int>(std::ceil(width / pitch)), 1, kGridSpots);
        const int rows = std::clamp(static_cast<int>(std::ceil(height / pitch)), 1, kGridSpots);
        for (int i = 0; i < columns; ++i) {
            for (int j = 0; j < rows; ++j) {
                std::optional<Point> p = Point{box.low.x + kPersonMm + width * (i + 0.5) / columns,
                                               box.low.y + kPersonMm + height * (j + 0.5) / rows};
                if (concreteShare(whole, *p) < kWholeShare) continue;
                for (const Box& cutout : cutouts) {
                    if (p) p = besideBox(cutout, *p);
                }
                if (p && concreteShare(casting.outline, *p) >= kLeastShare) spots.push_back(*p);
            }
        }
    }
    if (spots.size() > kMostSpots) spots.resize(kMostSpots);
    return spots;
}

}  // namespace yardcast
