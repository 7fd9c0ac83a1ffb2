#include "core/structure/places.h"

#include <algorithm>
#include <cmath>

namespace yardcast {

namespace {

/// A cutout's strip is one where it is no wider than this, mm, and than so many times the cutout. Our choice.
constexpr double kWidestStripMm = 300.0;
constexpr double kStripOfCutout = 1.5;
/// The first edge met from a cutout's middle must be its own.
constexpr double kOwnEdgeMm = 2.0;
/// A gap between rests shorter than this, in thicknesses, is no span; likewise an overhang.
constexpr double kLeastSpan = 3.0;
constexpr double kLeastOverhang = 1.0;
/// Of even load an overhang of half a span bends the slab as much as the span does (w a2 / 2 against w L2 / 8).
constexpr double kOverhangAsSpan = 0.5;

/// Distances from `from` along `direction` (a unit vector) at which a ring is crossed, both ways.
void addCrossings(const Ring& ring, Point from, Point direction, std::vector<double>& at)
{
    const Point aside = leftNormal(direction);
    for (std::size_t i = 0; i < ring.size(); ++i) {
        const Point a = ring[i] - from;
        const Point b = ring[i + 1 < ring.size() ? i + 1 : 0] - from;
        const double da = dot(a, aside);
        const double db = dot(b, aside);
        if ((da >= 0.0) == (db >= 0.0)) continue;
        at.push_back(dot(a + (b - a) * (da / (da - db)), direction));
    }
}

Point outwardOf(PlaceKind side)
{
    switch (side) {
        case PlaceKind::stripInFront: return {0.0, -1.0};
        case PlaceKind::stripBehind: return {0.0, 1.0};
        case PlaceKind::stripLeft: return {-1.0, 0.0};
        default: return {1.0, 0.0};
    }
}

const Region& touchedOf(const Rest& rest) { return rest.bearing; }

Box boxOf(const Rest& rest) { return boundsOf(touchedOf(rest)).value_or(Box{}); }

bool touches(const Rest& rest) { return !rest.bearing.empty(); }

double along(Point p, bool x) { return x ? p.x : p.y; }

bool within(const Box& box, Point p, double slackMm)
{
    return p.x >= box.low.x - slackMm && p.x <= box.high.x + slackMm && p.y >= box.low.y - slackMm &&
           p.y <= box.high.y + slackMm;
}

constexpr PlaceKind kStripSides[] = {PlaceKind::stripInFront, PlaceKind::stripBehind, PlaceKind::stripLeft,
                                     PlaceKind::stripRight};

std::optional<PlaceName> stripAt(const StrengthInput& input, Point at)
{
    const auto* counter = std::get_if<Counter>(&input.body);
    if (!counter) return std::nullopt;
    std::optional<PlaceName> best;
    double narrowest = kWidestStripMm;
    for (const Cutout& cutout : counter->cutouts) {
        const Box box = boundsOf(cutoutRing(cutout)).value_or(Box{});
        for (const PlaceKind side : kStripSides) {
            const bool across = side == PlaceKind::stripLeft || side == PlaceKind::stripRight;
            const double cutoutMm = across ? box.height() : box.width();
            if (along(at, !across) < along(box.low, !across) || along(at, !across) > along(box.high, !across)) continue;
            const auto strip = stripBeside(*input.casting, cutout, side);
            if (!strip) continue;
            const double width = distance(strip->from, strip->to);
            if (width > narrowest || width > kStripOfCutout * cutoutMm) continue;
            const double s = along(at, across);
            if (s < along(strip->from, across) - 1.0 || s > along(strip->to, across) + 1.0) continue;
            narrowest = width;
            best = PlaceName{side, cutout.id, {}};
        }
    }
    return best;
}

}  // namespace

std::optional<Chord> chordThrough(const Casting& casting, Point at, Point direction)
{
    if (casting.outline.empty() || !contains(casting.outline.front().outer, at)) return std::nullopt;
    std::vector<double> crossings;
    addCrossings(casting.outline.front().outer, at, direction, crossings);
    double before = -HUGE_VAL;
    double after = HUGE_VAL;
    for (const double t : crossings) (t <= 0.0 ? before : after) = t <= 0.0 ? std::max(before, t) : std::min(after, t);
    if (!std::isfinite(before) || !std::isfinite(after) || !(after > before)) return std::nullopt;
    return Chord{at + direction * before, at + direction * after};
}

std::optional<Chord> stripBeside(const Casting& casting, const Cutout& cutout, PlaceKind side)
{
    const Point outward = outwardOf(side);
    std::vector<double> own;
    addCrossings(cutoutRing(cutout), cutout.centre, outward, own);
    std::erase_if(own, [](double t) { return t <= 0.0; });
    std::vector<double> crossings;
    for (const Polygon& polygon : casting.outline) {
        addCrossings(polygon.outer, cutout.centre, outward, crossings);
        for (const Ring& hole : polygon.holes) addCrossings(hole, cutout.centre, outward, crossings);
    }
    std::erase_if(crossings, [](double t) { return t <= 0.0; });
    std::sort(crossings.begin(), crossings.end());
    if (own.empty() || crossings.size() < 2) return std::nullopt;
    const double edge = *std::max_element(own.begin(), own.end());
    if (std::abs(crossings[0] - edge) > kOwnEdgeMm || crossings.size() % 2 != 0) return std::nullopt;
    Chord strip{cutout.centre + outward * crossings[0], cutout.centre + outward * crossings[1]};
    if (outward.x + outward.y < 0.0) std::swap(strip.from, strip.to);
    return strip;
}

std::vector<Span> spansOf(const StrengthInput& input)
{
    std::vector<Span> spans;
    const int count = static_cast<int>(input.rests.size());
    for (int i = 0; i < count; ++i) {
        for (int j = i + 1; j < count; ++j) {
            if (!touches(input.rests[i]) || !touches(input.rests[j])) continue;
            Box a = boxOf(input.rests[i]);
            Box b = boxOf(input.rests[j]);
            const Point apart = b.centre() - a.centre();
            const bool x = std::abs(apart.x) >= std::abs(apart.y);
            const bool turned = along(apart, x) < 0.0;
            if (turned) std::swap(a, b);
            const double clear = along(b.low, x) - along(a.high, x);
            const double low = std::max(along(a.low, !x), along(b.low, !x));
            const double high = std::min(along(a.high, !x), along(b.high, !x));
            if (clear < kLeastSpan * input.casting->deepestMm || high <= low) continue;
            bool between = false;
            for (int k = 0; k < count && !between; ++k) {
                if (k == i || k == j || !touches(input.rests[k])) continue;
                const Box c = boxOf(input.rests[k]);
                const double mid = along(c.centre(), x);
                between = mid > along(a.high, x) && mid < along(b.low, x) && along(c.low, !x) < high &&
                          along(c.high, !x) > low;
            }
            if (between) continue;
            const double s = (along(a.high, x) + along(b.low, x)) / 2;
            const double t = (low + high) / 2;
            spans.push_back({turned ? j : i, turned ? i : j, x, clear, x ? Point{s, t} : Point{t, s}});
        }
    }
    return spans;
}

std::vector<Overhang> overhangsOf(const StrengthInput& input)
{
    std::vector<Overhang> overhangs;
    const Box slab = input.casting->boundsMm;
    for (const Point out : {Point{-1, 0}, Point{1, 0}, Point{0, -1}, Point{0, 1}}) {
        const auto reach = [out](const Box& box) { return out.x + out.y > 0 ? dot(box.high, out) : dot(box.low, out); };
        int outermost = -1;
        double most = -HUGE_VAL;
        for (std::size_t i = 0; i < input.rests.size(); ++i) {
            if (!touches(input.rests[i])) continue;
            const double r = reach(boxOf(input.rests[i]));
            if (r > most + 1e-6) {
                most = r;
                outermost = static_cast<int>(i);
            }
        }
        if (outermost < 0) continue;
        const double beyond = reach(slab) - most;
        if (beyond < kLeastOverhang * input.casting->deepestMm) continue;
        const Point middle = boxOf(input.rests[outermost]).centre();
        overhangs.push_back({outermost, out, beyond, out.x != 0.0 ? slab.width() : slab.height(),
                             middle + out * (most - dot(middle, out))});
    }
    return overhangs;
}

PlaceName placeAt(const Body& body, Point at, int corner)
{
    const StrengthInput& input = body.input;
    if (corner >= 0) return {PlaceKind::corner, body.corners[corner].of, {}};
    if (auto strip = stripAt(input, at)) return *strip;
    for (const Rest& rest : input.rests) {
        if (touches(rest) && within(boxOf(rest), at, input.casting->deepestMm / 2))
            return {PlaceKind::over, rest.under, {}};
    }
    const std::vector<Span> spans = spansOf(input);
    const auto inMiddle = [at](const Span& span) {
        return std::abs(along(at, span.alongX) - along(span.middle, span.alongX)) <= span.clearMm / 4;
    };
    for (const Overhang& o : overhangsOf(input)) {
        if (!(dot(at - o.at, o.outwards) > 0.0)) continue;
        // An edge that reaches a little past two posts bends between them, not beyond them.
        const bool spanGoverns = std::ranges::any_of(spans, [&](const Span& span) {
            const bool acrossIt = span.alongX != (o.outwards.x != 0.0);
            return acrossIt && inMiddle(span) && o.lengthMm < kOverhangAsSpan * span.clearMm;
        });
        if (!spanGoverns) return {PlaceKind::overhang, input.rests[o.rest].under, {}};
    }
    for (const Span& span : spans) {
        if (inMiddle(span)) return {PlaceKind::middleOfSpan, input.rests[span.a].under, input.rests[span.b].under};
    }
    const PlaceInMesh place = body.index.find(body.mesh(), at);
    int kind = 0;
    if (place.triangle >= 0) {
        const double* share = &body.share[static_cast<std::size_t>(place.triangle) * body.kinds.size()];
        kind = static_cast<int>(std::max_element(share, share + body.kinds.size()) - share);
    }
    switch (body.kinds[kind].kind) {
        case ZoneKind::rim:
        case ZoneKind::cutoutRim:
        case ZoneKind::rib: return {PlaceKind::rim, {}, {}};
        case ZoneKind::body:
        case ZoneKind::core: return {PlaceKind::body, {}, {}};
        default: return {PlaceKind::field, {}, {}};
    }
}

std::string placeWords(const PlaceName& place)
{
    switch (place.kind) {
        case PlaceKind::stripInFront: return "strip in front of " + place.a;
        case PlaceKind::stripBehind: return "strip behind " + place.a;
        case PlaceKind::stripLeft: return "strip left of " + place.a;
        case PlaceKind::stripRight: return "strip right of " + place.a;
        case PlaceKind::middleOfSpan: return "middle of span " + place.a + "-" + place.b;
        case PlaceKind::over: return "over " + place.a;
        case PlaceKind::overhang: return "overhang beyond " + place.a;
        case PlaceKind::corner: return place.a.empty() ? "inner corner" : "corner of " + place.a;
        case PlaceKind::field: return "field";
        case PlaceKind::rim: return "rim";
        case PlaceKind::body: return "body";
    }
    return "field";
}

}  // namespace yardcast
