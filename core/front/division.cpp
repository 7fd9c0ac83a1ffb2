#include "core/front/division.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

#include "core/front/front_layout.h"

namespace yardcast {

namespace {

constexpr double kGapPerShift = 5.0;
/// Work allowed to one front, in steps of the search below: keeps a front of absurd size from stalling a drag.
constexpr double kMostSteps = 4e6;

/// Gaps for the edges of the doors, in order along the front, so that the sum of squared moves is least: the first
/// edge anywhere, a door's right edge at least one gap after its left, a next door's left edge not before it.
std::vector<int> placeEdges(const std::vector<double>& wishes, const Division& division, double battenMm)
{
    const int gaps = division.battens + 1;
    const double infinite = std::numeric_limits<double>::infinity();
    const auto count = static_cast<std::size_t>(gaps);
    std::vector<double> best(count, infinite);  // least cost with the last placed edge at or before this gap
    std::vector<std::vector<int>> choice(wishes.size(), std::vector<int>(count, -1));
    for (std::size_t edge = 0; edge < wishes.size(); ++edge) {
        std::vector<double> next(count, infinite);
        const std::size_t step = edge % 2;  // 1: the right edge of a door
        double least = infinite;
        int at = -1;
        for (std::size_t gap = 0; gap < count; ++gap) {
            const double before = edge == 0 ? 0.0 : (gap >= step ? best[gap - step] : infinite);
            const double move = division.gapCentreMm(static_cast<int>(gap), battenMm) - wishes[edge];
            const double cost = before + move * move;
            if (cost < least) {
                least = cost;
                at = static_cast<int>(gap);
            }
            next[gap] = least;
            choice[edge][gap] = at;
        }
        best = std::move(next);
    }
    std::vector<int> result(wishes.size());
    int limit = gaps - 1;
    for (std::size_t edge = wishes.size(); edge-- > 0;) {
        const int at = limit < 0 ? -1 : choice[edge][static_cast<std::size_t>(limit)];
        if (at < 0) return {};
        result[edge] = at;
        limit = at - static_cast<int>(edge % 2);
    }
    return result;
}

/// Sets the door gaps; false where the doors have no room.
bool placeDoors(Division& division, double battenMm, const std::vector<WishedDoor>& doors)
{
    if (doors.empty()) return true;
    std::vector<std::size_t> order(doors.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(), [&doors](std::size_t a, std::size_t b) {
        return std::min(doors[a].fromMm, doors[a].toMm) < std::min(doors[b].fromMm, doors[b].toMm);
    });
    std::vector<double> wishes;
    for (const std::size_t i : order) {
        const auto [from, to] = std::minmax(doors[i].fromMm, doors[i].toMm);
        wishes.push_back(from);
        wishes.push_back(to);
    }
    const std::vector<int> edges = placeEdges(wishes, division, battenMm);
    if (edges.empty()) return false;
    division.doorGaps.assign(doors.size(), {});
    for (std::size_t k = 0; k < order.size(); ++k) division.doorGaps[order[k]] = {edges[2 * k], edges[2 * k + 1]};
    for (std::size_t edge = 0; edge < wishes.size(); ++edge) {
        const double move = std::abs(division.gapCentreMm(edges[edge], battenMm) - wishes[edge]);
        division.largestShiftMm = std::max(division.largestShiftMm, move);
    }
    return true;
}

}  // namespace

double equalGapMm(double lengthMm, double battenMm, int battens)
{
    return (lengthMm - battens * battenMm) / (battens + 1);
}

std::optional<Division> divide(double lengthMm, double battenMm, double wishGapMm,
                               const std::vector<WishedDoor>& doors)
{
    const double fewest = std::ceil((lengthMm - kMostGapMm) / (battenMm + kMostGapMm) - 1e-9);
    const double most = std::floor((lengthMm - kLeastGapMm) / (battenMm + kLeastGapMm) + 1e-9);
    if (!(fewest <= most) || !(most >= 1.0) || most > 1e6) return std::nullopt;

    std::vector<int> counts;
    for (int n = std::max(1, static_cast<int>(fewest)); n <= static_cast<int>(most); ++n) counts.push_back(n);
    const auto missOf = [&](int n) { return std::abs(equalGapMm(lengthMm, battenMm, n) - wishGapMm); };
    std::stable_sort(counts.begin(), counts.end(), [&](int a, int b) { return missOf(a) < missOf(b); });

    std::optional<Division> best;
    double leastCost = std::numeric_limits<double>::infinity();
    double steps = 0.0;
    for (const int n : counts) {
        const double miss = missOf(n);
        if (miss >= leastCost) break;
        steps += 2.0 * static_cast<double>(doors.size()) * n;
        if (best && steps > kMostSteps) break;
        Division division;
        division.battens = n;
        division.gapMm = equalGapMm(lengthMm, battenMm, n);
        const bool fits = steps <= kMostSteps && placeDoors(division, battenMm, doors);
        const double cost = fits ? miss + division.largestShiftMm / kGapPerShift
                                 : std::numeric_limits<double>::max();  // taken only where no count has room
        if (cost < leastCost) {
            leastCost = cost;
            best = std::move(division);
        }
        if (!fits && steps > kMostSteps) break;
    }
    return best;
}

}  // namespace yardcast
