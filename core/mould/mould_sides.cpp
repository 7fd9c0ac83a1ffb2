#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/materials/boards.h"
#include "core/mould/mould_making.h"

namespace yardcast::mould_making {

namespace {

/// Chords of a curve are shorter, mm, and turn by less from one to the next; so many of them make a curve.
constexpr double kLongestChordMm = 200.0;
constexpr double kChordTurnDeg = 25.0;
constexpr std::size_t kFewestChords = 3;
/// Corners that are square to this (sine) are lapped; others are mitred.
constexpr double kSquareSine = 1e-4;

Point unit(Point v)
{
    const double span = length(v);
    return span > 0.0 ? v * (1.0 / span) : Point{};
}
/// Out of a ring that runs counter-clockwise.
Point outwards(Point from, Point to) { return leftNormal(unit(to - from)) * -1.0; }

double turnDeg(Point before, Point at, Point after)
{
    const Point a = at - before;
    const Point b = after - at;
    return std::atan2(cross(a, b), dot(a, b)) * 180.0 / std::numbers::pi;
}

std::vector<Stretch> stretchesOf(const Ring& ring)
{
    const std::size_t n = ring.size();
    const auto at = [&](std::size_t i) { return ring[i % n]; };
    std::vector<char> soft(n);
    std::vector<char> chord(n);
    for (std::size_t i = 0; i < n; ++i) {
        soft[i] = std::abs(turnDeg(at(i + n - 1), at(i), at(i + 1))) < kChordTurnDeg;
        chord[i] = distance(at(i), at(i + 1)) < kLongestChordMm;
    }
    // An edge goes on from the one before where both are chords and the corner between them is soft.
    const auto goesOn = [&](std::size_t i) { return soft[i % n] && chord[i % n] && chord[(i + n - 1) % n]; };
    std::size_t start = n;
    for (std::size_t i = 0; i < n && start == n; ++i) {
        if (!goesOn(i)) start = i;
    }
    if (start == n) {
        Stretch all{ring, true, true};
        return {all};
    }
    std::vector<Stretch> stretches;
    for (std::size_t i = 0; i < n;) {
        std::size_t chords = 1;
        while (i + chords < n && goesOn(start + i + chords)) ++chords;
        const bool bent = chords >= kFewestChords;
        for (std::size_t k = 0; k < (bent ? 1 : chords); ++k) {
            Stretch stretch;
            stretch.bent = bent;
            const std::size_t last = bent ? chords : 1;
            for (std::size_t j = 0; j <= last; ++j) stretch.points.push_back(at(start + i + k + j));
            stretches.push_back(std::move(stretch));
        }
        i += chords;
    }
    return stretches;
}

/// How a stretch's board ends at one of its corners.
struct BoardEnd {
    Point inner;
    Point outer;
    double extraMm = 0.0;  ///< longer than the inside at its longer face
    double mitreDeg = 0.0; ///< see MouldPart::mitreDeg
};

enum class Lap { none, covers, butts };

/// Of an end whose far face reaches `pastMm` further than its near one.
double mitreDegOf(double pastMm, double acrossMm)
{
    constexpr double kSquareDeg = 0.05;
    const double deg = std::atan2(pastMm, acrossMm) * 180.0 / std::numbers::pi;
    return std::abs(deg) < kSquareDeg ? 0.0 : deg;
}

/// Direction along the stretch at its corner, and the neighbour's likewise (both counter-clockwise).
BoardEnd endAt(Point corner, Point along, Point otherAlong, double thicknessMm, bool atStart, Lap lap)
{
    const Point normal = leftNormal(along) * -1.0;
    const double turn = atStart ? cross(otherAlong, along) : cross(along, otherAlong);
    const Point forth = atStart ? along * -1.0 : along;
    if (lap != Lap::none) {
        // At an outer corner the board that covers runs on past the end of the other; at an inner one the other stops
        // short.
        double past = 0.0;
        if (turn > 0.0 && lap == Lap::covers) past = thicknessMm;
        if (turn < 0.0 && lap == Lap::butts) past = -thicknessMm;
        const Point inner = corner + forth * past;
        return {inner, inner + normal * thicknessMm, past, 0.0};
    }
    const Point otherNormal = leftNormal(otherAlong) * -1.0;
    const double closeness = 1.0 + dot(normal, otherNormal);
    // A corner that nearly runs back on itself has no mitre that could be sawn.
    if (closeness < 0.15) return {corner, corner + normal * thicknessMm, 0.0, 0.0};
    const Point outer = corner + (normal + otherNormal) * (thicknessMm / closeness);
    const double past = dot(outer - corner, forth);
    return {corner, outer, std::max(0.0, past), mitreDegOf(past, thicknessMm)};
}

double thicknessOf(const Stretch& stretch, const Moulding& how)
{
    return stretch.bent ? std::min(kBendableStripMm, how.boardMm) : how.boardMm;
}

Point firstAlong(const Stretch& s) { return unit(s.points[1] - s.points[0]); }
Point lastAlong(const Stretch& s) { return unit(s.points.back() - s.points[s.points.size() - 2]); }

bool isLapped(const Stretch& before, const Stretch& after)
{
    return !before.bent && !after.bent && std::abs(dot(lastAlong(before), firstAlong(after))) < kSquareSine;
}

/// The outer line of a bent strip, from its last point back to its first.
void appendOuter(Ring& ring, const Stretch& stretch, double thicknessMm)
{
    const auto& p = stretch.points;
    const std::size_t n = p.size();
    for (std::size_t k = 0; k < n; ++k) {
        const std::size_t i = n - 1 - k;
        if (!stretch.closed && (i == 0 || i == n - 1)) continue;
        const Point a = outwards(p[(i + n - 1) % n], p[i]);
        const Point b = outwards(p[i], p[(i + 1) % n]);
        ring.push_back(p[i] + (a + b) * (thicknessMm / (1.0 + dot(a, b))));
    }
}

MouldPart sideOf(const Making& making, std::size_t index)
{
    const Stretch& stretch = making.stretches[index];
    const std::size_t n = making.stretches.size();
    const double thickness = thicknessOf(stretch, making.how);
    MouldPart side;
    side.kind = MouldPartKind::side;
    side.stuff = MouldStuff::board;
    side.bent = stretch.bent;
    side.goodFace = true;
    side.thicknessMm = thickness;
    side.insideMm = stretch.lengthMm();
    side.fromMm = making.how.sides == SideJoint::besideBase ? -making.how.boardMm : 0.0;
    side.toMm = making.mould.heightMm;
    side.widthMm = side.toMm - side.fromMm;
    side.lengthMm = side.insideMm;
    if (stretch.closed) {
        Polygon band;
        appendOuter(band.outer, stretch, thickness);
        std::reverse(band.outer.begin(), band.outer.end());
        Ring hole = stretch.points;
        std::reverse(hole.begin(), hole.end());
        band.holes.push_back(std::move(hole));
        side.outline = {std::move(band)};
        return side;
    }
    const Stretch& before = making.stretches[(index + n - 1) % n];
    const Stretch& after = making.stretches[(index + 1) % n];
    const BoardEnd start = endAt(stretch.points.front(), firstAlong(stretch), lastAlong(before), thickness, true,
                                 isLapped(before, stretch) ? Lap::butts : Lap::none);
    const BoardEnd end = endAt(stretch.points.back(), lastAlong(stretch), firstAlong(after), thickness, false,
                               isLapped(stretch, after) ? Lap::covers : Lap::none);
    Ring ring = stretch.points;
    ring.front() = start.inner;
    ring.back() = end.inner;
    ring.push_back(end.outer);
    appendOuter(ring, stretch, thickness);
    ring.push_back(start.outer);
    if (signedArea(ring) < 0.0) std::reverse(ring.begin(), ring.end());
    side.outline = {{std::move(ring), {}}};
    side.lengthMm += start.extraMm + end.extraMm;
    if (!stretch.bent) side.mitreDeg = {start.mitreDeg, end.mitreDeg};
    side.shaped = !stretch.bent && (!isLapped(before, stretch) || !isLapped(stretch, after));
    side.about = sideWord(outwards(stretch.points.front(), stretch.points.back()));
    return side;
}

/// A rebate takes the edge of the face away.
bool runsBesideRebate(const Making& making, const Stretch& stretch)
{
    const Point a = stretch.points.front();
    const Point b = stretch.points.back();
    const Point probe = (a + b) * 0.5 - outwards(a, b);
    return std::any_of(making.mould.zones.begin(), making.mould.zones.end(), [&](const Zone& zone) {
        return zone.isConcrete() && zone.fromMm > 0.0 && contains(zone.region, probe);
    });
}

/// The inner line of a bent strip, from its last point back to its first; empty where the curve is too tight for it.
Ring innerLine(const Stretch& stretch, double legMm)
{
    const auto& p = stretch.points;
    const std::size_t n = p.size();
    Ring line;
    for (std::size_t k = 0; k < n; ++k) {
        const std::size_t i = n - 1 - k;
        const bool first = !stretch.closed && i == 0;
        const bool last = !stretch.closed && i == n - 1;
        const Point a = first ? outwards(p[0], p[1]) : outwards(p[(i + n - 1) % n], p[i]);
        const Point b = last ? outwards(p[n - 2], p[n - 1]) : outwards(p[i], p[(i + 1) % n]);
        line.push_back(p[i] - (a + b) * (legMm / (1.0 + dot(a, b))));
    }
    for (std::size_t k = 0; k + 1 < n; ++k) {
        if (!(dot(line[k] - line[k + 1], p[n - 1 - k] - p[n - 2 - k]) > 0.0)) return {};
    }
    return line;
}

MouldPart chamferStrip(double legMm)
{
    MouldPart strip;
    strip.kind = MouldPartKind::chamfer;
    strip.stuff = MouldStuff::strip;
    strip.toMm = legMm;
    strip.widthMm = legMm;
    strip.thicknessMm = legMm;
    strip.edgeMm = legMm;
    return strip;
}

void addBentChamfer(Making& making, const Stretch& stretch)
{
    MouldPart strip = chamferStrip(making.how.edgeMm);
    strip.bent = true;
    Ring inner = innerLine(stretch, making.how.edgeMm);
    if (inner.empty()) return;
    strip.insideMm = stretch.lengthMm();
    strip.lengthMm = strip.insideMm;
    if (stretch.closed) {
        strip.outline = {{stretch.points, {std::move(inner)}}};
    } else {
        Ring ring = stretch.points;
        ring.insert(ring.end(), inner.begin(), inner.end());
        strip.outline = {{std::move(ring), {}}};
        strip.about = sideWord(outwards(stretch.points.front(), stretch.points.back()));
    }
    making.mould.parts.push_back(std::move(strip));
}

void addChamfer(Making& making, std::size_t index)
{
    const Stretch& stretch = making.stretches[index];
    const double leg = making.how.edgeMm;
    if (!(leg > 0.0) || runsBesideRebate(making, stretch)) return;
    if (stretch.bent) {
        addBentChamfer(making, stretch);
        return;
    }
    const std::size_t n = making.stretches.size();
    const Point a = stretch.points.front();
    const Point b = stretch.points.back();
    const Point along = unit(b - a);
    const Point inwards = outwards(a, b) * -1.0;
    // Mitred with the neighbours: the inner line ends where theirs meets it.
    const auto innerEnd = [&](Point corner, Point otherAlong) {
        const Point otherInwards = leftNormal(otherAlong);
        const double closeness = 1.0 + dot(inwards, otherInwards);
        if (closeness < 0.15) return corner + inwards * leg;
        return corner + (inwards + otherInwards) * (leg / closeness);
    };
    const Point from = innerEnd(a, lastAlong(making.stretches[(index + n - 1) % n]));
    const Point to = innerEnd(b, firstAlong(making.stretches[(index + 1) % n]));
    if (!(dot(to - from, along) > 0.0)) return;
    MouldPart strip = chamferStrip(leg);
    strip.about = sideWord(inwards * -1.0);
    strip.outline = {{{a, b, to, from}, {}}};
    strip.mitreDeg = {mitreDegOf(dot(from - a, along), leg), mitreDegOf(dot(b - to, along), leg)};
    // Sawn square first, as long as it is at its longest.
    strip.lengthMm = std::max(dot(b, along), dot(to, along)) - std::min(dot(a, along), dot(from, along));
    strip.insideMm = distance(a, b);
    making.mould.parts.push_back(std::move(strip));
}

}  // namespace

const char* sideWord(Point outwardsOf)
{
    if (std::abs(outwardsOf.y) >= std::abs(outwardsOf.x)) return outwardsOf.y < 0.0 ? "front" : "back";
    return outwardsOf.x < 0.0 ? "left" : "right";
}

Blank blankOf(const Region& region)
{
    const Box box = boundsOf(region).value_or(Box{});
    constexpr double kSameAreaMm2 = 1.0;
    return {std::max(box.width(), box.height()), std::min(box.width(), box.height()),
            std::abs(areaMm2(region) - box.width() * box.height()) > kSameAreaMm2};
}

void addBaseAndSides(Making& making)
{
    making.stretches = stretchesOf(making.outline);
    addBase(making);
    for (std::size_t i = 0; i < making.stretches.size(); ++i) making.mould.parts.push_back(sideOf(making, i));
    // The edges of the face lie on the base only where it is cast face down.
    if (making.how.edge != EdgeFinish::chamfer || making.faceUp || making.mould.standing) return;
    for (std::size_t i = 0; i < making.stretches.size(); ++i) addChamfer(making, i);
}

}  // namespace yardcast::mould_making
