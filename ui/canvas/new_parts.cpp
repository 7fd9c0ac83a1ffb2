#include "ui/canvas/new_parts.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include "core/plan/edits.h"

namespace yardcast::ui {

namespace {

/// Free of the counter's front and back, so that the support's edge does not show.
constexpr double kSetBackMm = 20.0;
constexpr double kSupportWidthMm = 100.0;

std::string mixFor(const Plan& plan) { return plan.mixes.empty() ? "worktop" : plan.mixes.front().id; }

double undersideMm(const Part& counter)
{
    const auto& body = std::get<Counter>(counter.body);
    return body.topMm - fullDepthMm(body);
}

/// Placement of a box whose own x runs along its longer side.
Placement alongLonger(const Box& box)
{
    if (box.width() >= box.height()) return {box.low, 0.0};
    return {{box.high.x, box.low.y}, 90.0};
}

double longer(const Box& box) { return std::max(box.width(), box.height()); }
double shorter(const Box& box) { return std::min(box.width(), box.height()); }

Box around(Point centre, Size size)
{
    const Point half{size.width / 2, size.depth / 2};
    return {centre - half, centre + half};
}

Point roundedMm(Point p) { return {std::round(p.x), std::round(p.y)}; }

}  // namespace

Plan withMix(const Plan& plan)
{
    if (!plan.mixes.empty()) return plan;
    return changePlan(plan, [](Plan& p) {
        Mix mix;
        mix.id = "worktop";
        p.mixes.push_back(mix);
    });
}

Size defaultSize(PartKind kind)
{
    switch (kind) {
    case PartKind::counter: return {1800.0, 620.0};
    case PartKind::support: return {kSupportWidthMm, 580.0};
    case PartKind::panel: return {1800.0, 40.0};
    case PartKind::front: return {1200.0, 0.0};
    case PartKind::appliance: return {600.0, 500.0};
    }
    return {};
}

Cutout defaultCutout(CutoutPurpose purpose, CutoutShape shape)
{
    Cutout cutout;
    cutout.purpose = purpose;
    cutout.shape = shape;
    switch (purpose) {
    case CutoutPurpose::sink:
        cutout.size = {560.0, 400.0};
        cutout.cornerRadiusMm = 20.0;
        cutout.diameterMm = 400.0;
        break;
    case CutoutPurpose::hob:
        cutout.size = {560.0, 490.0};
        cutout.diameterMm = 380.0;
        break;
    case CutoutPurpose::tap:
        cutout.size = {35.0, 35.0};
        cutout.diameterMm = 35.0;
        break;
    case CutoutPurpose::drain:
        cutout.size = {90.0, 90.0};
        cutout.diameterMm = 90.0;
        break;
    case CutoutPurpose::other:
        cutout.size = {300.0, 300.0};
        cutout.diameterMm = 200.0;
        break;
    }
    if (shape == CutoutShape::circle) {
        cutout.size = {};
        cutout.cornerRadiusMm.reset();
    } else {
        cutout.diameterMm = 0.0;
    }
    return cutout;
}

const Part* counterAt(const Plan& plan, Point at)
{
    const Part* best = nullptr;
    for (const PartPtr& part : plan.parts) {
        const auto* counter = std::get_if<Counter>(&part->body);
        if (!counter || !contains(footprint(*part), at)) continue;
        if (!best || counter->topMm > std::get<Counter>(best->body).topMm) best = part.get();
    }
    return best;
}

std::optional<std::pair<Point, Point>> chordThrough(const Ring& outline, Point at, Point direction)
{
    const double unit = length(direction);
    if (outline.size() < 3 || !(unit > 0.0) || !contains(outline, at)) return std::nullopt;
    std::vector<double> crossings;
    for (std::size_t i = 0; i < outline.size(); ++i) {
        const Point a = outline[i];
        const Point edge = outline[(i + 1) % outline.size()] - a;
        const double turn = cross(direction, edge);
        if (std::abs(turn) < 1e-9) continue;
        const double share = cross(a - at, direction) / turn;
        if (share < -1e-9 || share > 1.0 + 1e-9) continue;
        crossings.push_back(cross(a - at, edge) / turn);
    }
    std::ranges::sort(crossings);
    // On an edge or in a corner the line meets the outline where it begins: the stretch that counts is the one that
    // runs through the slab, not the point.
    const double least = 1.0 / unit;
    for (std::size_t i = 0; i + 1 < crossings.size(); ++i) {
        const double from = crossings[i];
        const double to = crossings[i + 1];
        if (to - from < least || from > 1e-6 || to < -1e-6) continue;
        const Point middle = at + direction * ((from + to) / 2);
        if (contains(outline, middle) && distanceToRing(outline, middle) > 0.5) {
            return std::pair{at + direction * from, at + direction * to};
        }
    }
    return std::nullopt;
}

namespace {

/// The room of a support or panel that belongs to a counter, in the counter's own frame: from front to back through
/// the point, or along the back edge behind it.
std::optional<Box> boxWithin(const Counter& counter, PartKind kind, Point own)
{
    const auto chord = chordThrough(counter.outline, own, {0.0, 1.0});
    if (!chord) return std::nullopt;
    if (kind == PartKind::support) {
        const double low = chord->first.y + kSetBackMm;
        const double high = chord->second.y - kSetBackMm;
        if (high - low < kLeastSizeMm) return std::nullopt;
        return Box{{own.x - kSupportWidthMm / 2, low}, {own.x + kSupportWidthMm / 2, high}};
    }
    const double thickness = defaultSize(PartKind::panel).depth;
    for (std::size_t i = 0; i < counter.outline.size(); ++i) {
        const Point p = counter.outline[i];
        const Point q = counter.outline[(i + 1) % counter.outline.size()];
        const bool level = std::abs(p.y - q.y) < 1e-6;
        if (!level || distanceToSegment(chord->second, p, q) > 1e-6 || std::abs(p.x - q.x) < kLeastSizeMm) continue;
        return Box{{std::min(p.x, q.x), p.y - thickness}, {std::max(p.x, q.x), p.y}};
    }
    return std::nullopt;
}

Part makePart(const Plan& plan, PartKind kind, const Box& box, const Part* counter);

}  // namespace

Part defaultPart(const Plan& plan, PartKind kind, Point at)
{
    const Part* counter = counterAt(plan, at);
    if (counter && (kind == PartKind::support || kind == PartKind::panel)) {
        const auto& body = std::get<Counter>(counter->body);
        if (const auto box = boxWithin(body, kind, counter->place.toOwn(at))) {
            Part part = makePart(plan, kind, *box, counter);
            part.place = {counter->place.toPlan(part.place.at),
                          std::fmod(part.place.turnDeg + counter->place.turnDeg, 360.0)};
            return part;
        }
    }
    return newPart(plan, kind, around(roundedMm(at), defaultSize(kind)));
}

Part newPart(const Plan& plan, PartKind kind, const Box& box)
{
    if (kind == PartKind::front) {
        const double y = box.centre().y;
        return newFront(plan, {box.low.x, y}, {box.high.x, y});
    }
    return makePart(plan, kind, box, counterAt(plan, box.centre()));
}

namespace {

/// With `counter` as what it stands under or on, or null.
Part makePart(const Plan& plan, PartKind kind, const Box& box, const Part* counter)
{
    Part part;
    part.id = freePartId(plan, kind);
    switch (kind) {
    case PartKind::counter: {
        Counter body;
        body.topMm = kCounterTopMm;
        body.thicknessMm = kCounterThicknessMm;
        body.outline = {{0, 0}, {box.width(), 0}, {box.width(), box.height()}, {0, box.height()}};
        body.mix = mixFor(plan);
        part.place = {box.low, 0.0};
        part.body = body;
        break;
    }
    case PartKind::support: {
        Support body;
        body.lengthMm = longer(box);
        body.widthMm = shorter(box);
        body.baseMm = 0.0;
        body.heightMm = (counter ? undersideMm(*counter) : kCounterTopMm - kCounterThicknessMm) - body.baseMm;
        body.mix = mixFor(plan);
        part.place = alongLonger(box);
        part.body = body;
        break;
    }
    case PartKind::panel: {
        Panel body;
        body.lengthMm = longer(box);
        body.thicknessMm = shorter(box);
        body.baseMm = counter ? std::get<Counter>(counter->body).topMm : kCounterTopMm;
        body.mix = mixFor(plan);
        part.place = alongLonger(box);
        part.body = body;
        break;
    }
    case PartKind::appliance: {
        Appliance body;
        body.size = {box.width(), box.height()};
        if (counter) body.on = counter->id;
        body.heightMm = counter ? 300.0 : 850.0;
        body.massKg = counter ? 30.0 : 60.0;
        part.place = {box.low, 0.0};
        part.body = body;
        break;
    }
    case PartKind::front: break;
    }
    return part;
}

}  // namespace

Part newCounter(const Plan& plan, const Ring& outline)
{
    Part part;
    part.id = freePartId(plan, PartKind::counter);
    Counter body;
    body.topMm = kCounterTopMm;
    body.thicknessMm = kCounterThicknessMm;
    body.mix = mixFor(plan);
    const auto bounds = boundsOf(outline);
    part.place.at = bounds ? bounds->low : Point{};
    Ring ring = outline;
    // Counter-clockwise, as a dragged one is: then edge 0 starts at a front corner and edges read the same way round.
    if (signedArea(ring) < 0.0) std::ranges::reverse(ring);
    for (Point& p : ring) p = p - part.place.at;
    body.outline = std::move(ring);
    part.body = std::move(body);
    return part;
}

Part newFront(const Plan& plan, Point from, Point to)
{
    const Point middle = (from + to) * 0.5;
    const Part* under = counterAt(plan, middle);
    // One looks at a front from the right-hand side of from->to.
    const Point right = leftNormal(to - from) * -1.0;
    Point towards{0.0, -1.0};
    if (under) {
        if (const auto bounds = boundsOf(footprint(*under))) {
            const Point out = middle - bounds->centre();
            if (std::abs(dot(out, right)) > 1e-9) towards = out;
        }
    } else if (std::abs(right.y) < 1e-9 * std::abs(right.x)) {
        towards = {1.0, 0.0};
    }
    if (dot(right, towards) < 0.0) std::swap(from, to);

    Part part;
    part.id = freePartId(plan, PartKind::front);
    Front body;
    body.to = to - from;
    body.batten.species = "larch";
    if (under) body.topMm = std::max(undersideMm(*under), body.bottomMm + kLeastSizeMm);
    part.place.at = from;
    part.body = body;
    return part;
}

Plan withNewPart(const Plan& plan, Part part)
{
    const bool isCast = part.kind() != PartKind::front && part.kind() != PartKind::appliance;
    return addPart(isCast ? withMix(plan) : plan, std::move(part));
}

namespace {

const char* fixtureWord(FixtureKind kind)
{
    switch (kind) {
    case FixtureKind::water: return "water";
    case FixtureKind::waste: return "waste";
    case FixtureKind::power: return "power";
    case FixtureKind::gas: return "gas";
    case FixtureKind::wall: return "wall";
    case FixtureKind::tree: return "tree";
    case FixtureKind::door: return "door";
    case FixtureKind::other: return "other";
    }
    return "other";
}

}  // namespace

std::string freeFixtureId(const Plan& plan, FixtureKind kind)
{
    const auto taken = [&](const std::string& id) {
        return std::ranges::any_of(plan.site.fixtures, [&](const Fixture& f) { return f.id == id; });
    };
    const std::string word = fixtureWord(kind);
    if (!taken(word)) return word;
    for (int n = 2;; ++n) {
        const std::string id = word + "-" + std::to_string(n);
        if (!taken(id)) return id;
    }
}

bool hasExtent(FixtureKind kind)
{
    return kind == FixtureKind::wall || kind == FixtureKind::tree || kind == FixtureKind::door
        || kind == FixtureKind::other;
}

Size defaultFixtureSize(FixtureKind kind)
{
    switch (kind) {
    case FixtureKind::wall: return {3000.0, 240.0};
    case FixtureKind::tree: return {400.0, 400.0};
    case FixtureKind::door: return {900.0, 60.0};
    default: return {400.0, 400.0};
    }
}

}  // namespace yardcast::ui
