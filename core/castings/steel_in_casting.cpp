#include "core/castings/steel_in_casting.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "core/materials/materials.h"

namespace yardcast {

namespace {

constexpr double kMostDiameterMm = 100.0;
constexpr double kFibresInResinKgM3 = 2100.0;
/// A bar drawn along the line of the cover is inside, whatever the rounding of a turned outline.
constexpr double kOnLineMm = 0.01;

bool isCover(double mm) { return mm >= 0.0 && mm <= kLargestCoordinateMm; }

/// Where the segment meets the ring's edges, as shares of its length.
void addCrossings(Point from, Point along, const Ring& ring, std::vector<double>& shares)
{
    for (std::size_t i = 0; i < ring.size(); ++i) {
        const Point a = ring[i];
        const Point edge = ring[(i + 1) % ring.size()] - a;
        const double denominator = cross(along, edge);
        if (denominator == 0.0) continue;
        const double onEdge = cross(a - from, along) / denominator;
        const double share = cross(a - from, edge) / denominator;
        // A little beyond the edge's ends, so that no corner is missed; a cut too many does no harm.
        const double slack = 2 * kOnLineMm / length(edge);
        if (onEdge >= -slack && onEdge <= 1.0 + slack && share > 0.0 && share < 1.0) shares.push_back(share);
    }
}

bool insideOrOnLine(const Region& region, Point p)
{
    if (contains(region, p)) return true;
    return std::any_of(region.begin(), region.end(), [p](const Polygon& polygon) {
        return distanceToRing(polygon.outer, p) <= kOnLineMm ||
               std::any_of(polygon.holes.begin(), polygon.holes.end(),
                           [p](const Ring& hole) { return distanceToRing(hole, p) <= kOnLineMm; });
    });
}

void addMesh(const Mesh& mesh, const Region& outline, SteelInPiece& steel)
{
    if (!(mesh.barMm > 0.0 && mesh.barMm <= kMostDiameterMm && mesh.pitchMm > mesh.barMm && isCover(mesh.coverMm)))
        return;
    const AreaMoments net = moments(offset(outline, -mesh.coverMm, OffsetJoin::mitre));
    if (!(net.areaMm2 > 0.0)) return;
    SteelItem item;
    item.mesh = true;
    item.diameterMm = mesh.barMm;
    item.pitchMm = mesh.pitchMm;
    item.meshAreaM2 = net.areaMm2 * 1e-6;
    item.material = mesh.material;
    const double volumeMm3 = net.areaMm2 * 2 * barAreaMm2(mesh.barMm) / mesh.pitchMm;
    item.massKg = volumeMm3 * 1e-9 * reinforcementKgM3(mesh.material);
    const double depthMm = mesh.coverMm + mesh.barMm;  // where the two layers touch
    steel.add(item.massKg, mesh.material, net.centroid(), depthMm);
    steel.items.push_back(item);
}

void addBars(const BarGroup& group, const Region& outline, SteelInPiece& steel)
{
    std::map<long long, SteelItem> byLength;  // tenths of a mm
    for (const BarStretch& piece : barPieces(group, outline)) {
        const double lengthMm = piece.lengthMm();
        SteelItem& item = byLength[std::llround(lengthMm * 10)];
        const double massKg = barAreaMm2(group.diameterMm) * lengthMm * 1e-9 * reinforcementKgM3(group.material);
        item.material = group.material;
        item.diameterMm = group.diameterMm;
        item.lengthMm = lengthMm;
        item.count += 1;
        item.massKg += massKg;
        steel.add(massKg, group.material, (piece.from + piece.to) * 0.5, group.coverMm + group.diameterMm / 2);
    }
    for (auto entry = byLength.rbegin(); entry != byLength.rend(); ++entry) steel.items.push_back(entry->second);
}

/// Shares of a segment, `low` to `high`; nothing where low is above high.
struct Span {
    double low = 1.0;
    double high = 0.0;
    bool isEmpty() const { return !(low <= high); }
};

Span hull(const Span& a, const Span& b)
{
    if (a.isEmpty()) return b;
    if (b.isEmpty()) return a;
    return {std::min(a.low, b.low), std::max(a.high, b.high)};
}

/// Where value + t * slope lies between low and high.
Span spanBetween(double value, double slope, double low, double high)
{
    if (slope == 0.0) return value >= low && value <= high ? Span{-HUGE_VAL, HUGE_VAL} : Span{};
    const double atLow = (low - value) / slope;
    const double atHigh = (high - value) / slope;
    return {std::min(atLow, atHigh), std::max(atLow, atHigh)};
}

Span spanInDisc(Point from, Point along, Point centre, double radius)
{
    const Point offset = from - centre;
    const double a = dot(along, along);
    const double b = dot(offset, along);
    const double root = b * b - a * (dot(offset, offset) - radius * radius);
    if (!(root >= 0.0)) return {};
    return {(-b - std::sqrt(root)) / a, (-b + std::sqrt(root)) / a};
}

/// Where the segment is nearer than `radius` to the edge a-b: a rectangle along it and a disc at each end make one
/// convex shape, so the hull of the three spans is the span of the shape.
Span spanNearEdge(Point from, Point along, Point a, Point b, double radius)
{
    Span span = hull(spanInDisc(from, along, a, radius), spanInDisc(from, along, b, radius));
    const double edge = distance(a, b);
    if (edge > 0.0) {
        const Point unit = (b - a) * (1.0 / edge);
        const Span beside = spanBetween(cross(unit, from - a), cross(unit, along), -radius, radius);
        const Span abreast = spanBetween(dot(unit, from - a), dot(unit, along), 0.0, edge);
        span = hull(span, {std::max(beside.low, abreast.low), std::min(beside.high, abreast.high)});
    }
    return span;
}

double segmentDistance(Point a, Point b, Point c, Point d)
{
    if (cross(b - a, c - a) * cross(b - a, d - a) < 0 && cross(d - c, a - c) * cross(d - c, b - c) < 0) return 0.0;
    return std::min({distanceToSegment(a, c, d), distanceToSegment(b, c, d), distanceToSegment(c, a, b),
                     distanceToSegment(d, a, b)});
}

void addNearSpans(Point from, Point to, const Ring& ring, double coverMm, std::vector<Span>& spans)
{
    for (std::size_t i = 0; i < ring.size(); ++i) {
        const Point a = ring[i];
        const Point b = ring[(i + 1) % ring.size()];
        const Span span = spanNearEdge(from, to - from, a, b, coverMm);
        if (span.isEmpty() || span.high <= 0.0 || span.low >= 1.0) continue;
        if (segmentDistance(from, to, a, b) >= coverMm - kOnLineMm) continue;
        spans.push_back(span);
    }
}

/// The parts of the segment that lie in the region and at least `coverMm` from its boundary.
std::vector<BarStretch> clipWithCover(Point from, Point to, const Region& region, double coverMm)
{
    if (coverMm <= 2 * kOnLineMm) return clipToRegion(from, to, region);
    std::vector<Span> spans;
    for (const Polygon& polygon : region) {
        addNearSpans(from, to, polygon.outer, coverMm, spans);
        for (const Ring& hole : polygon.holes) addNearSpans(from, to, hole, coverMm, spans);
    }
    std::sort(spans.begin(), spans.end(), [](const Span& a, const Span& b) { return a.low < b.low; });
    spans.push_back({1.0, HUGE_VAL});

    const Point along = to - from;
    std::vector<BarStretch> pieces;
    double start = 0.0;
    for (const Span& span : spans) {
        const double end = std::min(span.low, 1.0);
        // What is between two spans does not cross the boundary: all of it is inside or none.
        if ((end - start) * length(along) >= kShortestBarMm && contains(region, from + along * ((start + end) / 2)))
            pieces.push_back({from + along * start, from + along * end});
        start = std::max(start, span.high);
    }
    return pieces;
}

}  // namespace

std::vector<BarStretch> clipToRegion(Point from, Point to, const Region& region)
{
    const Point along = to - from;
    const double span = length(along);
    if (!(span >= kShortestBarMm)) return {};
    std::vector<double> shares{0.0, 1.0};
    for (const Polygon& polygon : region) {
        addCrossings(from, along, polygon.outer, shares);
        for (const Ring& hole : polygon.holes) addCrossings(from, along, hole, shares);
    }
    std::sort(shares.begin(), shares.end());

    std::vector<BarStretch> pieces;
    double start = -1.0;
    const auto close = [&](double end) {
        if (start >= 0.0 && (end - start) * span >= kShortestBarMm)
            pieces.push_back({from + along * start, from + along * end});
        start = -1.0;
    };
    for (std::size_t i = 0; i + 1 < shares.size(); ++i) {
        const double middle = (shares[i] + shares[i + 1]) / 2;
        if (insideOrOnLine(region, from + along * middle)) {
            if (start < 0.0) start = shares[i];
        } else {
            close(shares[i]);
        }
    }
    close(1.0);
    return pieces;
}

std::vector<BarStretch> barPieces(const BarGroup& group, const Region& outline)
{
    const double spacing = group.spacingMm.value_or(kDefaultBarSpacingMm);
    const Point along = group.to - group.from;
    const double span = length(along);
    if (!(group.diameterMm > 0.0 && group.diameterMm <= kMostDiameterMm && isCover(group.coverMm))) return {};
    if (group.count < 1 || group.count > kMostBars || !(std::abs(spacing) <= kLargestCoordinateMm)) return {};
    if (!(span > 0.0 && span <= 2 * kLargestCoordinateMm)) return {};

    const Point side = leftNormal(along) * (1.0 / span);
    std::vector<BarStretch> pieces;
    for (int i = 0; i < group.count; ++i) {
        const Point shift = side * ((i - (group.count - 1) / 2.0) * spacing);
        const std::vector<BarStretch> bars = clipWithCover(group.from + shift, group.to + shift, outline, group.coverMm);
        pieces.insert(pieces.end(), bars.begin(), bars.end());
    }
    return pieces;
}

double reinforcementKgM3(SteelMaterial material)
{
    const bool fibres = material == SteelMaterial::glass || material == SteelMaterial::basalt;
    return fibres ? kFibresInResinKgM3 : kSteelKgM3;
}

void SteelInPiece::add(double itemKg, SteelMaterial material, Point at, double depthMm)
{
    const double litres = itemKg / reinforcementKgM3(material) * 1000;
    massKg += itemKg;
    momentKgMm = momentKgMm + at * itemKg;
    depthMomentKgMm += itemKg * depthMm;
    volumeL += litres;
    momentLMm = momentLMm + at * litres;
    depthMomentLMm += litres * depthMm;
}

SteelInPiece steelInPiece(const Steel& steel, const Region& outline)
{
    SteelInPiece result;
    if (steel.mesh) addMesh(*steel.mesh, outline, result);
    for (const BarGroup& group : steel.bars) addBars(group, outline, result);
    return result;
}

}  // namespace yardcast
