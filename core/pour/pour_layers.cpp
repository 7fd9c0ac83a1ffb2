#include <algorithm>
#include <cmath>

#include "core/materials/gravity.h"
#include "core/pour/pour_plan.h"

namespace yardcast {

namespace {

constexpr double kLPerMm3 = 1e-6;
/// Planes nearer than this are one.
constexpr double kSamePlaneMm = 1.0;
/// A slice with less of the outline than this stands beside foam or a raised base.
constexpr double kWholeSliceShare = 0.999;

/// A prism of the casting in the pouring position.
struct Prism {
    bool concrete = true;
    double areaMm2 = 0.0;
    double fromMm = 0.0;
    double toMm = 0.0;

    double litresBetween(double low, double high) const
    {
        return areaMm2 * std::max(0.0, std::min(high, toMm) - std::max(low, fromMm)) * kLPerMm3;
    }
};

struct Heights {
    double lowMm = 0.0;
    double highMm = 0.0;
};

bool isFaceUp(const Part& part)
{
    const auto* counter = std::get_if<Counter>(&part.body);
    return counter != nullptr && counter->cast == CounterCast::faceUp;
}

/// The steel of the part in the pouring position, from the lowest up; what touches is one.
std::vector<Heights> steelHeights(const Casting& casting, const Part& part)
{
    const Steel* steel = steelOf(part.body);
    if (steel == nullptr || casting.steel.empty()) return {};
    std::vector<Heights> all;
    const auto take = [&](double coverMm, double sizeMm) {
        Heights one{coverMm, coverMm + sizeMm};
        if (isFaceUp(part)) one = {casting.deepestMm - one.highMm, casting.deepestMm - one.lowMm};
        if (!std::isfinite(one.lowMm) || !std::isfinite(one.highMm)) return;
        one.lowMm = std::clamp(one.lowMm, 0.0, casting.deepestMm);
        one.highMm = std::clamp(one.highMm, one.lowMm, casting.deepestMm);
        all.push_back(one);
    };
    // The bars of a mesh lie across one another.
    if (steel->mesh) take(steel->mesh->coverMm, 2 * steel->mesh->barMm);
    for (const BarGroup& bars : steel->bars) take(bars.coverMm, bars.diameterMm);
    std::sort(all.begin(), all.end(), [](const Heights& a, const Heights& b) { return a.lowMm < b.lowMm; });
    std::vector<Heights> apart;
    for (const Heights& one : all) {
        if (apart.empty() || one.lowMm > apart.back().highMm + kSamePlaneMm) {
            apart.push_back(one);
        } else {
            apart.back().highMm = std::max(apart.back().highMm, one.highMm);
        }
    }
    return apart;
}

std::vector<Prism> prismsOf(const Casting& casting, bool faceUp)
{
    std::vector<Prism> prisms;
    for (const Zone& zone : casting.zones) {
        Prism prism{zone.isConcrete(), areaMm2(zone.region), zone.fromMm, zone.toMm};
        if (faceUp) {
            prism.fromMm = casting.deepestMm - zone.toMm;
            prism.toMm = casting.deepestMm - zone.fromMm;
        }
        if (prism.areaMm2 > 0.0 && prism.toMm > prism.fromMm) prisms.push_back(prism);
    }
    return prisms;
}

std::vector<double> planesOf(const std::vector<Prism>& prisms, const std::vector<Heights>& steel)
{
    std::vector<double> planes;
    for (const Prism& prism : prisms) {
        planes.push_back(prism.fromMm);
        planes.push_back(prism.toMm);
    }
    std::sort(planes.begin(), planes.end());
    std::vector<double> kept;
    for (const double plane : planes) {
        if (kept.empty() || plane - kept.back() >= kSamePlaneMm) kept.push_back(plane);
    }
    if (!planes.empty() && !kept.empty()) kept.back() = planes.back();
    if (steel.empty()) return kept;
    const double lowMm = steel.front().lowMm;
    const auto isNear = [&](double plane) { return std::abs(plane - lowMm) < kSamePlaneMm; };
    if (std::none_of(kept.begin(), kept.end(), isNear)) {
        kept.insert(std::upper_bound(kept.begin(), kept.end(), lowMm), lowMm);
    }
    return kept;
}

/// Height of a casting that stands in its mould, with its core.
std::vector<PourLayer> standingLayers(const Casting& casting, double litres)
{
    std::vector<PourLayer> layers;
    for (const Zone& zone : casting.zones) {
        if (zone.isConcrete()) continue;
        const auto box = boundsOf(zone.region);
        if (box) layers.push_back({LayerKind::filler, box->low.y, box->high.y});
    }
    layers.push_back({LayerKind::whole, casting.boundsMm.low.y, casting.boundsMm.high.y, litres});
    return layers;
}

/// What was cut out of the casting by planes, made to sum to what is to be mixed.
void shareOut(std::vector<PourLayer>& layers, double litres)
{
    double sum = 0.0;
    PourLayer* last = nullptr;
    for (PourLayer& layer : layers) {
        sum += layer.litres;
        if (layer.litres > 0.0) last = &layer;
    }
    if (last == nullptr) return;
    double others = 0.0;
    for (PourLayer& layer : layers) {
        layer.litres *= litres / sum;
        if (&layer != last) others += layer.litres;
    }
    last->litres = litres - others;
}

}  // namespace

const char* layerKindWord(LayerKind kind)
{
    switch (kind) {
    case LayerKind::first: return "first";
    case LayerKind::steel: return "steel";
    case LayerKind::second: return "second";
    case LayerKind::filler: return "filler";
    case LayerKind::rim: return "rim";
    case LayerKind::whole: return "whole";
    }
    return "";
}

std::vector<PourLayer> pourLayers(const Casting& casting, const Part& part, double litres)
{
    if (isCastUpright(part.body)) return standingLayers(casting, litres);
    const std::vector<Prism> prisms = prismsOf(casting, isFaceUp(part));
    const std::vector<Heights> steel = steelHeights(casting, part);
    const std::vector<double> planes = planesOf(prisms, steel);
    const double wholeMm2 = areaMm2(casting.outline) * kWholeSliceShare;

    std::vector<PourLayer> layers;
    std::vector<const Prism*> laid;
    std::size_t steelLaid = 0;
    int slices = 0;
    for (std::size_t i = 0; i + 1 < planes.size(); ++i) {
        const double low = planes[i];
        const double high = planes[i + 1];
        // The lowest lies on the layer below; what is farther up is hung before the layer that takes it in.
        const auto isDue = [&](const Heights& one, bool lowest) {
            return lowest ? one.lowMm < low + kSamePlaneMm : one.lowMm < high;
        };
        while (steelLaid < steel.size() && isDue(steel[steelLaid], steelLaid == 0)) {
            layers.push_back({LayerKind::steel, steel[steelLaid].lowMm, steel[steelLaid].highMm});
            ++steelLaid;
        }
        double sliceL = 0.0;
        for (const Prism& prism : prisms) {
            if (prism.concrete) {
                sliceL += prism.litresBetween(low, high);
            } else if (prism.litresBetween(low, high) > 0.0 &&
                       std::find(laid.begin(), laid.end(), &prism) == laid.end()) {
                layers.push_back({LayerKind::filler, prism.fromMm, prism.toMm});
                laid.push_back(&prism);
            }
        }
        if (!(sliceL > 0.0)) continue;
        const bool beside = sliceL < wholeMm2 * (high - low) * kLPerMm3;
        const LayerKind kind = beside ? LayerKind::rim : slices == 0 ? LayerKind::first : LayerKind::second;
        layers.push_back({kind, low, high, sliceL});
        ++slices;
    }
    if (slices == 0) return {{LayerKind::whole, 0.0, casting.deepestMm, litres}};
    if (slices == 1) {
        for (PourLayer& layer : layers) {
            if (layer.litres > 0.0) layer.kind = LayerKind::whole;
        }
    }
    shareOut(layers, litres);
    return layers;
}

Uplift upliftOf(double foamL, double foamKgM3, double freshKgM3)
{
    Uplift uplift;
    if (!(foamL > 0.0) || !(freshKgM3 > foamKgM3)) return uplift;
    uplift.litres = foamL;
    uplift.forceN = foamL / 1000 * (freshKgM3 - foamKgM3) * kGravityMS2;
    uplift.holdN = kHoldShare * uplift.forceN;
    const double pairs = std::ceil(std::min(uplift.holdN / kFixingN, 1e6) / 2);
    uplift.fixings = std::max(kLeastFixings, 2 * static_cast<int>(pairs));
    return uplift;
}

}  // namespace yardcast
