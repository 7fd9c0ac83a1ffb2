#include "core/handling/grip_loads.h"

#include <algorithm>
#include <bit>
#include <cmath>
#include <limits>

namespace yardcast {

namespace {

/// Spread of the grips about their middle, along and across their own main axis.
struct Spread {
    Point middle;
    Point along{1.0, 0.0};
    Point across{0.0, 1.0};
    double alongMm2 = 0.0;
    double acrossMm2 = 0.0;
};

Spread spreadOf(const std::vector<Point>& places)
{
    Spread spread;
    for (const Point p : places) spread.middle = spread.middle + p * (1.0 / static_cast<double>(places.size()));
    double xx = 0.0;
    double yy = 0.0;
    double xy = 0.0;
    for (const Point p : places) {
        const Point d = p - spread.middle;
        xx += d.x * d.x;
        yy += d.y * d.y;
        xy += d.x * d.y;
    }
    const double angle = 0.5 * std::atan2(2 * xy, xx - yy);
    spread.along = {std::cos(angle), std::sin(angle)};
    spread.across = leftNormal(spread.along);
    for (const Point p : places) {
        const Point d = p - spread.middle;
        spread.alongMm2 += dot(d, spread.along) * dot(d, spread.along);
        spread.acrossMm2 += dot(d, spread.across) * dot(d, spread.across);
    }
    return spread;
}

/// Grips nearer together than this, mm, are one place; nearer to one line than this, they do not hold across it.
constexpr double kOnePlaceMm = 1.0;
/// What somebody's two hands reach apart when they carry, mm: judgement.
constexpr double kArmSpanMm = 900.0;
/// With more grips than this nobody shares them.
constexpr std::size_t kMostShared = 12;

}  // namespace

std::vector<GripLoad> gripLoads(const std::vector<Point>& grips, Point centroid, double massKg)
{
    const auto isNumber = [](Point p) { return std::isfinite(p.x) && std::isfinite(p.y); };
    if (grips.size() < 2 || !isNumber(centroid) || !std::isfinite(massKg)) return {};
    if (!std::all_of(grips.begin(), grips.end(), isNumber)) return {};
    const Spread spread = spreadOf(grips);
    if (spread.alongMm2 < kOnePlaceMm * kOnePlaceMm) return {};
    // A rigid piece sinks and turns as a plane on equal springs; three grips leave statics no choice, nor two along their line.
    const Point arm = centroid - spread.middle;
    const double slopeAlong = dot(arm, spread.along) / spread.alongMm2;
    const bool line = spread.acrossMm2 < kOnePlaceMm * kOnePlaceMm;
    const double slopeAcross = line ? 0.0 : dot(arm, spread.across) / spread.acrossMm2;
    std::vector<GripLoad> loads;
    loads.reserve(grips.size());
    for (const Point grip : grips) {
        const Point d = grip - spread.middle;
        const double share = 1.0 / static_cast<double>(grips.size()) + slopeAlong * dot(d, spread.along) +
            slopeAcross * dot(d, spread.across);
        loads.push_back({grip, massKg * share});
    }
    return loads;
}

std::vector<double> personLoads(const std::vector<GripLoad>& loads, int people)
{
    if (people <= 0 || loads.empty()) return {};
    std::vector<Point> places;
    for (const GripLoad& load : loads) places.push_back(load.at);
    const Spread spread = spreadOf(places);
    std::vector<GripLoad> order = loads;
    std::stable_sort(order.begin(), order.end(), [&](const GripLoad& a, const GripLoad& b) {
        const double alongA = std::round(dot(a.at - spread.middle, spread.along));
        const double alongB = std::round(dot(b.at - spread.middle, spread.along));
        return alongA != alongB ? alongA < alongB : dot(a.at, spread.across) < dot(b.at, spread.across);
    });
    const std::size_t count = order.size();
    const std::size_t groups = std::min(static_cast<std::size_t>(people), count);
    std::vector<double> shares;
    if (count > kMostShared) {
        for (const GripLoad& load : order) shares.push_back(load.kg);
        return shares;
    }
    // Every way to cut the row of grips into that many neighbourhoods; bit i: a cut after grip i.
    double best[3] = {};
    for (unsigned cuts = 0; cuts < 1U << (count - 1); ++cuts) {
        if (static_cast<std::size_t>(std::popcount(cuts)) + 1 != groups) continue;
        std::vector<double> kg(1, 0.0);
        double tooFar = 0.0;
        double heaviest = -std::numeric_limits<double>::infinity();
        double reach = 0.0;
        std::size_t first = 0;
        for (std::size_t i = 0; i < count; ++i) {
            kg.back() += order[i].kg;
            if (i + 1 < count && (cuts >> i & 1U) == 0) continue;
            const double apart = distance(order[first].at, order[i].at);
            if (apart > kArmSpanMm) tooFar += 1.0;
            reach += apart;
            heaviest = std::max(heaviest, kg.back());
            first = i + 1;
            if (first < count) kg.push_back(0.0);
        }
        const double cost[3] = {tooFar, std::round(heaviest * 1e6), reach};
        if (!shares.empty() && !std::lexicographical_compare(cost, cost + 3, best, best + 3)) continue;
        std::copy(cost, cost + 3, best);
        shares = std::move(kg);
    }
    return shares;
}

std::vector<std::size_t> gripsOver(const std::vector<GripLoad>& loads, double limitEachKg)
{
    std::vector<std::size_t> over;
    for (std::size_t i = 0; i < loads.size(); ++i) {
        if (loads[i].kg > limitEachKg + 1e-9) over.push_back(i);
    }
    return over;
}

double slingFactor(double includedDeg)
{
    if (!(includedDeg >= 0.0) || includedDeg >= 180.0) return 0.0;
    return 1.0 / sineCosineDeg(includedDeg / 2).cosine;
}

}  // namespace yardcast
