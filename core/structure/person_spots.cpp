#include <algorithm>
#include <cmath>

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
    if (const auto* counter = std::get_if<Counter>(&input.body)) {
        for (const Cutout& cutout : counter->cutouts) {
            const auto box = boundsOf(cutoutRing(cutout));
            if (!box || std::max(box->width(), box->height()) < kPersonMm) continue;
            const Point c = box->centre();
            for (const double x : {box->low.x, c.x, box->high.x}) {
                spots.push_back({x, box->low.y - kHalfMm});
                spots.push_back({x, box->high.y + kHalfMm});
            }
            spots.push_back({box->low.x - kHalfMm, c.y});
            spots.push_back({box->high.x + kHalfMm, c.y});
        }
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

    // The field between: a grid of the box, the same wherever cutouts lie.
    const Box box = casting.boundsMm;
    const double width = box.width() - 2 * kPersonMm;
    const double height = box.height() - 2 * kPersonMm;
    if (width > 0.0 && height > 0.0) {
        const double pitch = std::sqrt(width * height / kGridSpots);
        const int columns = std::clamp(static_cast<int>(std::ceil(width / pitch)), 1, kGridSpots);
        const int rows = std::clamp(static_cast<int>(std::ceil(height / pitch)), 1, kGridSpots);
        for (int i = 0; i < columns; ++i) {
            for (int j = 0; j < rows; ++j) {
                const Point p{box.low.x + kPersonMm + width * (i + 0.5) / columns,
                              box.low.y + kPersonMm + height * (j + 0.5) / rows};
                // Half over a cutout is no place: the squares flush with its edges stand for those.
                if (concreteShare(casting.outline, p) > kWholeShare) spots.push_back(p);
            }
        }
    }
    if (spots.size() > kMostSpots) spots.resize(kMostSpots);
    return spots;
}

}  // namespace yardcast
