#include "core/structure/mesh_plan.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/structure/places.h"

namespace yardcast {

namespace {

/// A point is part of an arc where an edge beside it is shorter than this and it turns by less than `kSoftTurn`.
constexpr double kShortEdgeMm = 14.0;
constexpr double kSoftTurn = 50.0 * std::numbers::pi / 180.0;
/// Boundary corners that turn into the concrete by less are no corners.
constexpr double kLeastTurn = 3.0 * std::numbers::pi / 180.0;
constexpr double kLeastCornerTurn = 20.0 * std::numbers::pi / 180.0;
/// Element size at an inner corner of radius r: r / 2.5, within these. Measured: a rounded corner is then within 5 %.
constexpr double kFineOfRadius = 2.5;
constexpr double kSharpMm = 5.0;
constexpr double kOnBoundaryMm = 0.6;
/// Strips beside smaller cutouts than this, mm, are no strips but slab.
constexpr double kLeastStripMm = 100.0;

double turnAt(Point before, Point at, Point after)
{
    return std::atan2(cross(at - before, after - at), dot(at - before, after - at));
}

/// Largest distance of the points between `from` and `to` (indices that may run past the end) from that chord.
double leavesChordMm(const Ring& ring, int from, int to)
{
    const int n = static_cast<int>(ring.size());
    double most = 0.0;
    for (int k = from + 1; k < to; ++k)
        most = std::max(most, distanceToSegment(ring[k % n], ring[from % n], ring[to % n]));
    return most;
}

/// Index of each kept point of the run from..to (both kept), evenly spaced.
std::vector<int> evenly(const Ring& ring, int from, int to, double toleranceMm, int least)
{
    const int edges = to - from;
    for (int pieces = std::min(least, edges); pieces < edges; ++pieces) {
        std::vector<int> kept;
        double most = 0.0;
        for (int i = 0; i <= pieces; ++i)
            kept.push_back(from + static_cast<int>(std::lround(static_cast<double>(i) * edges / pieces)));
        for (int i = 0; i < pieces && most <= toleranceMm; ++i)
            most = std::max(most, leavesChordMm(ring, kept[i], kept[i + 1]));
        if (most <= toleranceMm) return kept;
    }
    std::vector<int> all;
    for (int i = from; i <= to; ++i) all.push_back(i);
    return all;
}

Ring withoutRepeats(const Ring& ring)
{
    constexpr double kSameMm = 0.02;
    Ring result;
    for (const Point p : ring) {
        if (result.empty() || distance(result.back(), p) > kSameMm) result.push_back(p);
    }
    while (result.size() > 1 && distance(result.back(), result.front()) <= kSameMm) result.pop_back();
    return result;
}

double squaredToSegment(Point p, Point a, Point b)
{
    const Point along = b - a;
    const double squared = dot(along, along);
    const double t = squared > 0.0 ? std::clamp(dot(p - a, along) / squared, 0.0, 1.0) : 0.0;
    const Point d = a + along * t - p;
    return dot(d, d);
}

bool onBoundary(const Region& region, Point p)
{
    const auto onRing = [p](const Ring& ring) {
        for (std::size_t i = 0; i < ring.size(); ++i) {
            const Point a = ring[i];
            const Point b = ring[i + 1 < ring.size() ? i + 1 : 0];
            if (squaredToSegment(p, a, b) < kOnBoundaryMm * kOnBoundaryMm) return true;
        }
        return false;
    };
    return std::any_of(region.begin(), region.end(), [&](const Polygon& polygon) {
        return onRing(polygon.outer) || std::any_of(polygon.holes.begin(), polygon.holes.end(), onRing);
    });
}

/// The pieces of a ring that do not run along the boundary of the domain.
void addLines(const Ring& ring, const Region& domain, double toleranceMm, std::vector<Ring>& lines)
{
    const Ring few = withFewerPoints(ring, toleranceMm);
    const std::size_t n = few.size();
    if (n < 3) return;
    std::vector<bool> inner(n);
    for (std::size_t i = 0; i < n; ++i) inner[i] = !onBoundary(domain, (few[i] + few[(i + 1) % n]) * 0.5);
    std::size_t start = 0;
    while (start < n && inner[start]) ++start;
    if (start == n) {
        Ring closed = few;
        closed.push_back(few.front());
        lines.push_back(std::move(closed));
        return;
    }
    Ring line;
    for (std::size_t k = 1; k <= n; ++k) {
        const std::size_t i = (start + k) % n;
        if (inner[i]) {
            if (line.empty()) line.push_back(few[i]);
            line.push_back(few[(i + 1) % n]);
        } else if (!line.empty()) {
            lines.push_back(std::move(line));
            line = {};
        }
    }
}

void addLines(const Region& region, const Region& domain, double toleranceMm, std::vector<Ring>& lines)
{
    for (const Polygon& polygon : region) {
        addLines(polygon.outer, domain, toleranceMm, lines);
        for (const Ring& hole : polygon.holes) addLines(hole, domain, toleranceMm, lines);
    }
}

/// Runs of points where the boundary turns into the concrete (clockwise, as the concrete lies on its left).
void addArcs(const Ring& ring, std::vector<InnerArc>& arcs)
{
    const int n = static_cast<int>(ring.size());
    if (n < 3) return;
    const auto at = [&](int i) { return ring[static_cast<std::size_t>((i % n + n) % n)]; };
    std::vector<bool> turnsIn(ring.size());
    for (int i = 0; i < n; ++i) turnsIn[i] = turnAt(at(i - 1), at(i), at(i + 1)) < -kLeastTurn;
    const auto joined = [&](int i) {  // points i and i+1 belong to one arc
        return turnsIn[(i % n + n) % n] && turnsIn[((i + 1) % n + n) % n] && distance(at(i), at(i + 1)) < 40.0;
    };
    int start = 0;
    while (start < n && joined(start - 1)) ++start;
    if (start == n) {
        arcs.push_back({ring, at(-1), at(0)});
        return;
    }
    for (int i = start; i < start + n;) {
        if (!turnsIn[i % n]) {
            ++i;
            continue;
        }
        InnerArc arc;
        arc.before = at(i - 1);
        arc.points.push_back(at(i));
        while (i + 1 < start + n && joined(i)) arc.points.push_back(at(++i));
        arc.after = at(i + 1);
        arcs.push_back(std::move(arc));
        ++i;
    }
}

double wholeTurn(const InnerArc& arc)
{
    double turn = 0.0;
    for (std::size_t i = 0; i < arc.points.size(); ++i) {
        const Point before = i > 0 ? arc.points[i - 1] : arc.before;
        const Point after = i + 1 < arc.points.size() ? arc.points[i + 1] : arc.after;
        turn += std::abs(turnAt(before, arc.points[i], after));
    }
    return turn;
}

/// Radius of the arc from its length and turn; 0 for a sharp corner.
double radiusMm(const InnerArc& arc)
{
    double run = 0.0;
    for (std::size_t i = 1; i < arc.points.size(); ++i) run += distance(arc.points[i - 1], arc.points[i]);
    return run / wholeTurn(arc);
}

void refineAlong(const Ring& ring, double sizeMm, std::vector<FinePlace>& fine)
{
    for (std::size_t i = 0; i < ring.size(); ++i) {
        const Point a = ring[i];
        const Point b = ring[(i + 1) % ring.size()];
        const int steps = std::max(1, static_cast<int>(distance(a, b) / (2 * sizeMm)));
        for (int k = 0; k < steps; ++k) fine.push_back({a + (b - a) * (static_cast<double>(k) / steps), sizeMm});
    }
}

/// Where a step in depth runs out at the boundary, the thin side's stress is uneven.
void refineEnds(const std::vector<Ring>& lines, const Fineness& fineness, std::vector<FinePlace>& fine)
{
    if (fineness.atEndsMm >= fineness.sizeMm) return;
    for (const Ring& line : lines) {
        if (line.front() == line.back()) continue;
        for (const Point end : {line.front(), line.back()}) fine.push_back({end, fineness.atEndsMm});
    }
}

/// Strips beside cutouts carry most: some elements across.
void refineStrips(const StrengthInput& input, const Fineness& fineness, std::vector<FinePlace>& fine)
{
    const auto* counter = std::get_if<Counter>(&input.body);
    if (!counter) return;
    for (const Cutout& cutout : counter->cutouts) {
        const auto box = boundsOf(cutoutRing(cutout));
        if (!box || std::max(box->width(), box->height()) < kLeastStripMm) continue;
        for (const PlaceKind side : {PlaceKind::stripInFront, PlaceKind::stripBehind, PlaceKind::stripLeft,
                                     PlaceKind::stripRight}) {
            const auto strip = stripBeside(*input.casting, cutout, side);
            if (!strip) continue;
            const double wanted = distance(strip->from, strip->to) / fineness.acrossStrips;
            const double size = std::max(wanted, fineness.inStripsMm);
            if (size >= fineness.sizeMm) continue;
            const bool alongX = side == PlaceKind::stripInFront || side == PlaceKind::stripBehind;
            const Point half = alongX ? Point{box->width() / 2, 0} : Point{0, box->height() / 2};
            const Point middle = (strip->from + strip->to) * 0.5;
            const int places = std::max(1, static_cast<int>(length(half) / size));
            for (int i = 0; i <= places; ++i)
                fine.push_back({middle + half * (2.0 * i / places - 1.0), size});
        }
    }
}

}  // namespace

Ring withFewerPoints(const Ring& source, double toleranceMm)
{
    const Ring ring = withoutRepeats(source);
    const int n = static_cast<int>(ring.size());
    if (n < 4) return ring;
    const auto at = [&](int i) { return ring[static_cast<std::size_t>((i % n + n) % n)]; };
    std::vector<bool> soft(ring.size());
    for (int i = 0; i < n; ++i) {
        const double shorter = std::min(distance(at(i - 1), at(i)), distance(at(i), at(i + 1)));
        soft[i] = shorter < kShortEdgeMm && std::abs(turnAt(at(i - 1), at(i), at(i + 1))) < kSoftTurn;
    }
    int start = 0;
    while (start < n && soft[start]) ++start;
    Ring result;
    if (start == n) {
        const std::vector<int> kept = evenly(ring, 0, n, toleranceMm, 6);
        for (std::size_t k = 0; k + 1 < kept.size(); ++k) result.push_back(at(kept[k]));
        return result;
    }
    for (int i = start; i < start + n;) {
        if (!soft[i % n]) {
            result.push_back(at(i));
            ++i;
            continue;
        }
        int last = i;
        while (last + 1 < start + n && soft[(last + 1) % n] && distance(at(last), at(last + 1)) < kShortEdgeMm) ++last;
        for (const int k : evenly(ring, i, last, toleranceMm, 1)) result.push_back(at(k));
        i = last + 1;
    }
    return result.size() >= 3 ? result : ring;
}

Fineness finenessOf(Refinement refinement)
{
    const double size = meshSizeMm(refinement);
    switch (refinement) {
        case Refinement::draft: return {size, 30.0, 5.0, 80, 0.4, 0.35, 30.0, 5.0, 25.0};
        case Refinement::working: return {size, 14.0, 5.0, 160, 0.4, 0.35, 18.0, 3.0, 25.0};
        case Refinement::printed: return {size, 10.0, 5.0, 250, 0.4, 0.35, 12.0, 3.0, 25.0};
    }
    return {};
}

Fineness coarse() { return {90.0, 90.0, 25.0, 40, 1.5, 0.6, 90.0, 3.0, 90.0}; }

MeshPlan meshPlan(const StrengthInput& input, const Fineness& fineness, const std::vector<Region>& regions)
{
    const Casting& casting = *input.casting;
    const double size = fineness.sizeMm;
    MeshPlan plan;
    MeshRequest& request = plan.request;
    request.sizeMm = size;
    request.growth = fineness.growth;
    if (casting.outline.empty()) return plan;
    const Polygon& outline = casting.outline.front();
    Polygon domain{withFewerPoints(outline.outer, fineness.chordMm), {}};
    for (const Ring& hole : outline.holes) domain.holes.push_back(withFewerPoints(hole, fineness.chordMm));
    request.domain = {domain};

    // Where the thinner kinds end; the deepest one is what is left.
    const double tolerance = std::max(fineness.chordMm, size / 25);
    for (std::size_t i = 1; i < regions.size(); ++i) addLines(regions[i], request.domain, tolerance, request.lines);
    refineEnds(request.lines, fineness, request.fine);
    for (const Rest& rest : input.rests) addLines(rest.bearing, request.domain, tolerance, request.lines);

    addArcs(domain.outer, plan.arcs);
    for (const Ring& hole : domain.holes) addArcs(hole, plan.arcs);
    std::erase_if(plan.arcs, [](const InnerArc& arc) { return wholeTurn(arc) < kLeastCornerTurn; });
    for (const InnerArc& arc : plan.arcs) {
        const double radius = radiusMm(arc);
        const double wanted = radius > 0.0 ? radius / kFineOfRadius : kSharpMm;
        const double fine = std::max(wanted, fineness.finestMm);
        if (fine >= size) continue;
        for (const Point p : arc.points) request.fine.push_back({p, fine});
    }
    refineStrips(input, fineness, request.fine);
    double edges = 0.0;
    for (const Rest& rest : input.rests) edges += perimeterMm(rest.bearing);
    const double atRests = std::max(fineness.atRestsMm, edges / fineness.pointsAtRests);
    if (atRests < size) {
        for (const Rest& rest : input.rests) {
            for (const Polygon& polygon : rest.bearing) refineAlong(polygon.outer, atRests, request.fine);
        }
    }
    return plan;
}

}  // namespace yardcast
