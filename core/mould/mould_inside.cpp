#include <algorithm>
#include <cmath>
#include <iterator>
#include <numbers>

#include "core/castings/counter_zones.h"
#include "core/mould/mould_making.h"

namespace yardcast::mould_making {

namespace {

constexpr double kSameMm = 1e-6;
/// However steep the draft, a former keeps this share of its narrower side.
constexpr double kMostDraftShare = 0.25;
/// Blocks of mortar that hold a core off the base. Common practice, no source.
constexpr double kSpacerMm = 30.0;
constexpr double kSpacerGridMm = 350.0;
constexpr double kSpacerFromEdgeMm = 60.0;
/// An outline with more steps than that is sawn to shape as a whole.
constexpr std::size_t kMostRectangles = 4;

bool share(const Box& a, const Box& b)
{
    return a.low.x < b.high.x && b.low.x < a.high.x && a.low.y < b.high.y && b.low.y < a.high.y;
}

/// All sides moved inwards, point for point where no side of the ring vanishes.
Region movedInwards(const Region& region, double byMm)
{
    Region moved = region;
    for (Polygon& polygon : moved) {
        if (!polygon.holes.empty()) return offset(region, -byMm, OffsetJoin::mitre);
        const Ring ring = polygon.outer;
        const std::size_t n = ring.size();
        for (std::size_t i = 0; i < n; ++i) {
            const Point before = ring[i] - ring[(i + n - 1) % n];
            const Point after = ring[(i + 1) % n] - ring[i];
            const Point a = leftNormal(before) * (1.0 / length(before));
            const Point b = leftNormal(after) * (1.0 / length(after));
            const double closeness = 1.0 + dot(a, b);
            if (!(closeness > 1e-3)) return offset(region, -byMm, OffsetJoin::mitre);
            polygon.outer[i] = ring[i] + (a + b) * (byMm / closeness);
        }
        for (std::size_t i = 0; i < n; ++i) {
            const std::size_t next = (i + 1) % n;
            if (!(dot(ring[next] - ring[i], polygon.outer[next] - polygon.outer[i]) > 0.0))
                return offset(region, -byMm, OffsetJoin::mitre);
        }
    }
    return moved;
}

/// One cutout in the mould frame.
struct Opening {
    const Cutout* cutout = nullptr;
    Region whole;        ///< as drawn
    bool clipped = false;
    double perMm = 0.0;  ///< by how much each side moves in for each mm of height
    double faceMm = 0.0; ///< height of the face, where it is as drawn
    std::vector<const Opening*> before;

    Region at(const Region& outline, double heightMm) const
    {
        const double moved = perMm * (heightMm - faceMm);
        Region region = std::abs(moved) > kSameMm ? movedInwards(whole, moved) : whole;
        if (clipped) region = intersect(region, outline);
        for (const Opening* other : before) region = subtract(region, other->at(outline, heightMm));
        return region;
    }
};

std::vector<Opening> openingsOf(const Making& making)
{
    std::vector<Opening> openings;
    const auto* counter = making.counter();
    if (!counter) return openings;
    openings.reserve(counter->cutouts.size());
    const Box mouldBox = boundsOf(making.outline).value_or(Box{});
    for (const Cutout& cutout : counter->cutouts) {
        Ring ring = ringInMould(making.casting, making.part, cutoutRing(cutout));
        const auto box = boundsOf(ring);
        if (!box || !share(*box, mouldBox)) continue;
        Opening opening;
        opening.cutout = &cutout;
        opening.clipped = std::any_of(ring.begin(), ring.end(), [&](Point p) {
            return !contains(making.outline, p) || distanceToRing(making.outline, p) < making.mould.heightMm;
        });
        opening.whole = regionOf(ring);
        if (opening.clipped && intersect(opening.whole, making.outlineRegion).empty()) continue;
        const double tangent = std::tan(making.how.draftDeg * std::numbers::pi / 180.0);
        const double most = kMostDraftShare * std::min(box->width(), box->height()) /
                            std::max(making.mould.heightMm, kSameMm);
        opening.perMm = std::min(tangent, most);
        opening.faceMm = making.faceUp ? making.mould.heightMm : 0.0;
        // Cast face up they grow towards the base, where two may meet that lie apart at the face.
        const auto reach = [&](const Box& drawn, double perMm) {
            const double more = making.faceUp ? perMm * making.mould.heightMm : 0.0;
            return Box{drawn.low - Point{more, more}, drawn.high + Point{more, more}};
        };
        for (const Opening& other : openings) {
            if (share(reach(*box, opening.perMm), reach(boundsOf(other.whole).value_or(Box{}), other.perMm)))
                opening.before.push_back(&other);
        }
        openings.push_back(std::move(opening));
    }
    return openings;
}

/// Heights of the joints between plies.
std::vector<double> plyHeights(const Making& making)
{
    const double height = making.mould.heightMm;
    std::vector<double> heights{0.0};
    if (making.how.former == FormerStuff::board) {
        for (double z = making.how.boardMm; z < height - kSameMm; z += making.how.boardMm) heights.push_back(z);
    }
    heights.push_back(height);
    return heights;
}

void setBlank(MouldPart& part, const Cutout* cutout, double moreMm)
{
    const Blank blank = blankOf(part.outline);
    part.lengthMm = blank.lengthMm;
    part.widthMm = blank.widthMm;
    part.shaped = blank.shaped;
    if (!cutout) return;
    if (cutout->shape == CutoutShape::circle) {
        // The chords that it is drawn with stay within it.
        part.lengthMm = part.widthMm = cutout->diameterMm + 2 * moreMm;
        return;
    }
    const double width = cutout->size.width + 2 * moreMm;
    const double depth = cutout->size.depth + 2 * moreMm;
    if (std::max(width, depth) * std::min(width, depth) > blank.lengthMm * blank.widthMm + 1.0) return;
    part.lengthMm = std::max(width, depth);
    part.widthMm = std::min(width, depth);
    part.shaped = cutout->cornerRadiusMm.value_or(0.0) > 0.0 || areaMm2(part.outline) < width * depth - 1.0;
}

void addFormers(Making& making, const std::vector<Opening>& openings)
{
    const std::vector<double> heights = plyHeights(making);
    for (const Opening& opening : openings) {
        const double drawn = areaMm2(opening.at(making.outlineRegion, opening.faceMm));
        Region lower = opening.at(making.outlineRegion, 0.0);
        for (std::size_t i = 0; i + 1 < heights.size(); ++i) {
            Region upper = opening.at(making.outlineRegion, heights[i + 1]);
            MouldPart ply;
            ply.kind = MouldPartKind::former;
            ply.about = opening.cutout->id;
            ply.fromMm = heights[i];
            ply.toMm = heights[i + 1];
            ply.thicknessMm = ply.toMm - ply.fromMm;
            // What no whole board makes up is made up with foam.
            const bool whole = std::abs(ply.thicknessMm - making.how.boardMm) < kSameMm;
            ply.stuff = making.how.former == FormerStuff::board && whole ? MouldStuff::board : MouldStuff::foam;
            ply.outline = lower;
            if (opening.perMm > 0.0) ply.topOutline = upper;
            const double moreMm = -opening.perMm * (ply.fromMm - opening.faceMm);
            setBlank(ply, opening.clipped || !opening.before.empty() ? nullptr : opening.cutout, moreMm);
            // Sides that lean are planed to the line, whatever their outline.
            ply.shaped = ply.shaped || opening.perMm > 0.0;
            const double middle = opening.perMm > 0.0
                                      ? areaMm2(opening.at(making.outlineRegion, (ply.fromMm + ply.toMm) / 2))
                                      : areaMm2(ply.outline);
            const double mean = opening.perMm > 0.0 ? (areaMm2(ply.outline) + 4 * middle + areaMm2(upper)) / 6 : middle;
            making.mould.draftL += (drawn - mean) * ply.thicknessMm * 1e-6;
            making.mould.parts.push_back(std::move(ply));
            lower = std::move(upper);
        }
        making.mould.cutoutDraftMm = std::max(making.mould.cutoutDraftMm, opening.perMm * making.mould.heightMm);
    }
}

/// An L of foam is put together of rectangles: half of one sawn out of a sheet would be waste.
Region inRectangles(const Region& region)
{
    Region parts;
    for (const Polygon& polygon : region) {
        const std::vector<Box> boxes = rectanglesOf({polygon});
        if (boxes.size() < 2 || boxes.size() > kMostRectangles) {
            parts.push_back(polygon);
            continue;
        }
        for (const Box& box : boxes) {
            for (Polygon& part : intersect({polygon}, rectangle(box.low, box.high))) parts.push_back(std::move(part));
        }
    }
    return parts;
}

/// One part for each polygon of foam, and for each rectangle of one that is an L.
void addFoam(Making& making, MouldPartKind kind, const Region& region, double lowMm, double highMm)
{
    for (const Polygon& polygon : inRectangles(region)) {
        MouldPart foam;
        foam.kind = kind;
        foam.stuff = MouldStuff::foam;
        foam.outline = {polygon};
        foam.fromMm = lowMm;
        foam.toMm = highMm;
        foam.thicknessMm = highMm - lowMm;
        setBlank(foam, nullptr, 0.0);
        if (making.mould.standing) {
            // It is sawn from a sheet as thick as its least way.
            double ways[3] = {foam.lengthMm, foam.widthMm, foam.thicknessMm};
            std::sort(std::begin(ways), std::end(ways));
            foam.thicknessMm = ways[0];
            foam.widthMm = ways[1];
            foam.lengthMm = ways[2];
        }
        making.mould.parts.push_back(std::move(foam));
    }
}

/// Formers that grow towards the base take away of foam and strips what lies beside them there.
Region withoutFormers(Making& making, Region beside, const std::vector<Opening>& openings, double lowMm, double highMm)
{
    if (!making.faceUp) return beside;
    const double before = areaMm2(beside);
    for (const Opening& opening : openings) {
        if (opening.perMm > 0.0) beside = subtract(beside, opening.at(making.outlineRegion, lowMm));
    }
    making.mould.draftL += (before - areaMm2(beside)) * (highMm - lowMm) * 1e-6;
    return beside;
}

void addFillers(Making& making, const std::vector<Opening>& openings)
{
    bool drawn = false;
    for (const Zone& zone : making.mould.zones) {
        if (zone.kind != ZoneKind::filler) continue;
        drawn = true;
        addFoam(making, MouldPartKind::filler, withoutFormers(making, zone.region, openings, zone.fromMm, zone.toMm),
                zone.fromMm, zone.toMm);
    }
    if (drawn || making.casting.kind != PartKind::counter) return;
    // A field that is shallower than the rim has a hollow below it, which foam must make.
    Region hollow;
    double thickness = making.mould.heightMm;
    for (const Zone& zone : making.casting.zones) {
        if (zone.kind != ZoneKind::field) continue;
        const double depth = zone.toMm + zone.grooveMm;
        if (depth > making.mould.heightMm - kSameMm) continue;
        thickness = depth;
        const Region region = regionInMould(making.casting, making.part, zone.region);
        hollow = hollow.empty() ? region : unite(hollow, region);
    }
    if (hollow.empty()) return;
    const double deep = making.mould.heightMm;
    const double low = making.lowMm(thickness, deep);
    const double high = making.highMm(thickness, deep);
    addFoam(making, MouldPartKind::filler, withoutFormers(making, std::move(hollow), openings, low, high), low, high);
}

std::vector<double> spread(double from, double to)
{
    const double low = std::min(from + kSpacerFromEdgeMm, (from + to) / 2);
    const double high = std::max(to - kSpacerFromEdgeMm, (from + to) / 2);
    const int steps = static_cast<int>(std::ceil((high - low) / kSpacerGridMm));
    if (steps < 1) return {(from + to) / 2};
    std::vector<double> places;
    for (int i = 0; i <= steps; ++i) places.push_back(low + (high - low) * i / steps);
    return places;
}

/// Blocks under a core that lies; beside one that stands, on both its faces.
void addSpacers(Making& making, const Zone& core)
{
    const Box box = boundsOf(core.region).value_or(Box{});
    MouldPart spacer;
    spacer.kind = MouldPartKind::spacer;
    spacer.stuff = MouldStuff::block;
    spacer.count = 0;
    const auto place = [&](Point low, Point high) {
        const Region one = rectangle(low, high);
        spacer.outline.push_back(one[0]);
        ++spacer.count;
    };
    double off = core.fromMm;
    if (making.mould.standing) {
        off = box.low.y;
        spacer.fromMm = (core.fromMm + core.toMm - kSpacerMm) / 2;
        spacer.toMm = spacer.fromMm + kSpacerMm;
        for (const double x : spread(box.low.x, box.high.x)) {
            place({x - kSpacerMm / 2, 0.0}, {x + kSpacerMm / 2, off});
            place({x - kSpacerMm / 2, box.high.y}, {x + kSpacerMm / 2, making.mould.depthMm});
        }
    } else {
        spacer.toMm = core.fromMm;
        for (const double x : spread(box.low.x, box.high.x)) {
            for (const double y : spread(box.low.y, box.high.y))
                place({x - kSpacerMm / 2, y - kSpacerMm / 2}, {x + kSpacerMm / 2, y + kSpacerMm / 2});
        }
    }
    if (!(off > 0.0)) return;
    spacer.lengthMm = kSpacerMm;
    spacer.widthMm = kSpacerMm;
    spacer.thicknessMm = off;
    making.mould.parts.push_back(std::move(spacer));
}

/// Strips for what `zones` say is cut back, one for each edge that it runs along.
void addStripsOf(Making& making, MouldPartKind kind, const std::vector<int>& edges, double fromEdgeMm, double widthMm,
                 const std::vector<Opening>& openings)
{
    const Counter& counter = *making.counter();
    const Ring& outline = counter.outline;
    const int count = static_cast<int>(outline.size());
    const double reach = fromEdgeMm + widthMm;
    const double sense = signedArea(outline) >= 0.0 ? 1.0 : -1.0;
    for (const Zone& zone : making.casting.zones) {
        const bool here = kind == MouldPartKind::drip ? zone.grooveMm > 0.0 : zone.isConcrete() && zone.fromMm > 0.0;
        if (!here) continue;
        const double from = kind == MouldPartKind::drip ? zone.toMm : 0.0;
        const double to = kind == MouldPartKind::drip ? zone.toMm + zone.grooveMm : zone.fromMm;
        const auto add = [&](const Region& region, Point along, const char* about) {
            for (const Polygon& polygon : region) {
                MouldPart strip;
                strip.kind = kind;
                strip.stuff = MouldStuff::strip;
                strip.about = about;
                strip.fromMm = making.lowMm(from, to);
                strip.toMm = making.highMm(from, to);
                double low = HUGE_VAL;
                double high = -HUGE_VAL;
                for (const Point p : polygon.outer) {
                    low = std::min(low, dot(p, along));
                    high = std::max(high, dot(p, along));
                }
                strip.lengthMm = std::max(high - low, widthMm);
                strip.widthMm = std::min(high - low, widthMm);
                strip.thicknessMm = to - from;
                strip.insideMm = strip.lengthMm;
                strip.outline = regionInMould(making.casting, making.part, {polygon});
                making.mould.parts.push_back(std::move(strip));
            }
        };
        Region left = withoutFormers(making, zone.region, openings, making.lowMm(from, to), making.highMm(from, to));
        std::vector<int> done;
        for (const int edge : edges) {
            if (edge < 0 || edge >= count || std::find(done.begin(), done.end(), edge) != done.end()) continue;
            done.push_back(edge);
            const Point a = outline[static_cast<std::size_t>(edge)];
            const Point b = outline[static_cast<std::size_t>((edge + 1) % count)];
            const double span = distance(a, b);
            if (!(span > 0.0) || left.empty()) continue;
            const Point along = (b - a) * (1.0 / span);
            const Point inwards = leftNormal(along) * sense;
            // Past its ends too, for the piece that closes an inner corner.
            const Point p = a - along * (2 * reach) + inwards * fromEdgeMm;
            const Point q = b + along * (2 * reach) + inwards * fromEdgeMm;
            const Region band = regionOf({p, q, q + inwards * widthMm, p + inwards * widthMm});
            const Region piece = intersect(left, band);
            if (piece.empty()) continue;
            left = subtract(left, band);
            const Point out = inwards * -1.0;
            add(piece, along, sideWord({making.mould.mirrored ? -out.x : out.x, out.y}));
        }
        add(left, {1.0, 0.0}, "");
    }
}

}  // namespace

void addInside(Making& making)
{
    const std::vector<Opening> openings = openingsOf(making);
    addFormers(making, openings);
    addFillers(making, openings);
    const std::vector<Zone> zones = making.mould.zones;
    for (const Zone& zone : zones) {
        if (zone.kind != ZoneKind::core) continue;
        addFoam(making, MouldPartKind::core, zone.region, zone.fromMm, zone.toMm);
        addSpacers(making, zone);
    }
    const Counter* counter = making.counter();
    if (!counter) return;
    if (counter->drip)
        addStripsOf(making, MouldPartKind::drip, counter->drip->edges, std::max(0.0, counter->drip->fromEdgeMm),
                    counter->drip->widthMm, openings);
    if (counter->rebate)
        addStripsOf(making, MouldPartKind::rebate, counter->rebate->edges, 0.0, counter->rebate->widthMm, openings);
}

}  // namespace yardcast::mould_making
