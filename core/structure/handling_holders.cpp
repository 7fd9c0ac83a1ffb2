#include "core/structure/handling_holders.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace yardcast {

namespace {

/// Hands below an edge cover a strip as high as the fingers are thick (judgement).
constexpr double kBelowEdgeMm = 20.0;
constexpr int kMostBelowEdge = 4;
/// What presses with less than this share of the load does not press: that is what rounding leaves.
constexpr double kNothingShare = 1e-9;

/// What a hand covers below an edge; where there is little concrete at that place, the nearest place with more,
/// first towards `outwards`, so that hands stay on both sides of the weight.
Region handBelow(const Region& outline, const StandingEdge& edge, double atMm, double outwards)
{
    const Point along = (edge.to - edge.from) * (1.0 / edge.lengthMm());
    const Point inset = edge.inward() * (kBelowEdgeMm / 2);
    const double least = 0.3 * kHandMm.width * kBelowEdgeMm;
    for (const double side : {outwards, -outwards}) {
        for (int step = 0; step * kHandMm.width / 2 < edge.lengthMm(); ++step) {
            const double mm = atMm + side * step * kHandMm.width / 2;
            if (mm < 0.0 || mm > edge.lengthMm()) continue;
            const Point middle = edge.from + along * mm + inset;
            const Point half = along * (kHandMm.width / 2);
            Region region = intersect(regionOf(stripRing(middle - half, middle + half, kBelowEdgeMm)), outline);
            if (areaMm2(region) >= least) return region;
        }
    }
    return {};
}

}  // namespace

std::vector<FreeBody::Place> Holders::places() const
{
    std::vector<FreeBody::Place> list;
    for (const Named& named : all) list.insert(list.end(), named.places.begin(), named.places.end());
    return list;
}

std::vector<HeldAt> heldBy(const Holders& holders, const FreeBody::State& state)
{
    std::vector<HeldAt> held;
    double total = 0.0;
    for (const double force : state.forceN) total += force;
    std::size_t next = 0;
    for (const Holders::Named& named : holders.all) {
        HeldAt at;
        at.under = named.under;
        Point moment;
        Point middle;
        int touching = 0;
        for (const Region& region : named.regions) {
            const double force = state.forceN[next++];
            const Point centre = moments(region).centroid();
            at.region.insert(at.region.end(), region.begin(), region.end());
            at.forceN += force;
            moment = moment + centre * force;
            middle = middle + centre * (1.0 / static_cast<double>(named.regions.size()));
            touching += force > kNothingShare * total ? 1 : 0;
        }
        at.centre = at.forceN > 0.0 ? moment * (1.0 / at.forceN) : middle;
        at.touchingShare = named.regions.empty() ? 0.0 : static_cast<double>(touching) / named.regions.size();
        at.liftedOff = touching == 0;
        held.push_back(std::move(at));
    }
    return held;
}

Holders handsAt(HandledBody& handled, const std::vector<Point>& points, Point along)
{
    Holders holders;
    for (const Point p : points) {
        Region region = handRegion(handled.body().input.casting->outline, p, along);
        if (region.empty()) region = regionOf(rectangleRing(p, {1.0, 1.0}));
        holders.all.push_back(
            {"hand " + std::to_string(holders.all.size() + 1), {handled.hand(p, along)}, {std::move(region)}});
    }
    return holders;
}

Holders tiltHolders(HandledBody& handled, const FoundTilt& tilt)
{
    const HandledBody::EdgePieces& pieces = handled.edge(tilt.edge);
    Holders holders;
    holders.all.push_back({"edge", pieces.places, pieces.regions});
    const Point along = (tilt.edge.to - tilt.edge.from) * (1.0 / tilt.edge.lengthMm());
    for (Holders::Named& hand : handsAt(handled, tilt.hands, along).all) holders.all.push_back(std::move(hand));
    return holders;
}

Holders handsBelow(HandledBody& handled, const StandingEdge& edge, int weightAlong)
{
    const std::array<double, 6> sum = handled.free().resultant(weightAlong);
    const Point down = edge.inward() * -1.0;
    const double weightN = sum[0] * down.x + sum[1] * down.y;
    if (!(weightN > 0.0)) return {};
    const double zMm = (sum[4] * down.x - sum[3] * down.y) / weightN;
    const Point along = (edge.to - edge.from) * (1.0 / edge.lengthMm());
    const double middle = dot(handled.body().centroid - edge.from, along);
    const double toEnd = std::min(middle, edge.lengthMm() - middle);
    const double room = toEnd - std::min(kHandMm.width, toEnd) / 2;
    const double half = std::min((0.5 - kBattenShare) * edge.lengthMm(), room);
    const int count = std::min(kMostBelowEdge, tiltHandCount(handled.body().input.people, edge.lengthMm()));
    Holders holders;
    for (int i = 0; i < count; ++i) {
        const double at = middle + half * (2.0 * i / (count - 1) - 1.0);
        Region region = handBelow(handled.body().input.casting->outline, edge, at, at < middle ? -1.0 : 1.0);
        if (region.empty()) continue;
        const FreeBody::Place place = handled.handBelow(region, edge.inward(), zMm);
        holders.all.push_back({"hand " + std::to_string(holders.all.size() + 1), {place}, {std::move(region)}});
    }
    return holders;
}

std::optional<StandingEdge> edgeToStandOn(const StrengthInput& input)
{
    if (input.casting->kind != PartKind::counter) return baseEdge(input.casting->outline);
    const auto edges = standingEdges(input.casting->outline);
    return edges.empty() ? std::nullopt : std::optional(edges.front());
}

}  // namespace yardcast
