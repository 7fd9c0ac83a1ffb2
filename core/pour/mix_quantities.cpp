#include "core/pour/mix_quantities.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <string_view>
#include <unordered_map>

#include "core/materials/concrete_strength.h"
#include "core/materials/materials.h"

namespace yardcast {

namespace {

/// EN 206 5.2.5.2.3: silica fume counts up to this share of the cement.
constexpr double kMostFumeShare = 0.11;
/// EN 206 5.2.5.2.3: k = 2.0 where the specified ratio is at most 0.45; above it 1.0 in classes XC and XF, which is
/// where anything outdoors belongs.
constexpr double kLowRatio = 0.45;
constexpr double kForLowRatio = 2.0;
constexpr double kOutdoors = 1.0;
/// EN practice for thin sections: the largest grain at most a third of the least thickness.
constexpr double kAggregateShareOfThickness = 1.0 / 3.0;
/// Fibres above this share of the volume are a slip of the pen.
constexpr double kMostFibreShare = 0.5;
constexpr int kMostCounted = 1000000000;

/// One bag with what is added to it.
struct Charge {
    double cementKg = 0.0;       ///< in the bag and extra
    double extraCementKg = 0.0;
    double fumeKg = 0.0;
    double plasticiserKg = 0.0;
    double litres = 0.0;         ///< fibres included
    double fibresKg = 0.0;
};

bool isShare(double percent) { return percent >= 0.0 && percent <= 1000.0; }

bool isUsable(const Mix& mix)
{
    const Bag& bag = mix.bag;
    const auto isAmount = [](double v) { return v > 0.0 && v <= 1e6; };
    return isAmount(bag.massKg) && isAmount(bag.yieldL) && isAmount(bag.cementKg) && bag.waterL >= 0.0 &&
           bag.waterL <= 1e6 && isShare(mix.extraCementPercent) && isShare(mix.silicaFumePercent) &&
           isShare(mix.plasticiserPercent) && isShare(mix.allowancePercent) &&
           std::all_of(mix.fibres.begin(), mix.fibres.end(),
                       [](const Fibre& f) { return f.kgPerM3 >= 0.0 && f.kgPerM3 <= 1e6; });
}

double fibreShareOfVolume(const Mix& mix)
{
    double share = 0.0;
    for (const Fibre& fibre : mix.fibres) share += fibre.kgPerM3 / 1000 / fibreKgL(fibre.kind);
    return share;
}

/// Absolute volumes: what is added to the bag adds its own volume. The fibres' dose is of the mixed volume, which
/// they are a part of: litres = (all but fibres) / (1 - their share).
Charge chargeOf(const Mix& mix)
{
    Charge charge;
    charge.extraCementKg = mix.bag.massKg * mix.extraCementPercent / 100;
    charge.cementKg = mix.bag.cementKg + charge.extraCementKg;
    charge.fumeKg = charge.cementKg * mix.silicaFumePercent / 100;
    charge.plasticiserKg = charge.cementKg * mix.plasticiserPercent / 100;
    const double withoutFibres = mix.bag.yieldL + charge.extraCementKg / kCementKgL + charge.fumeKg / kSilicaFumeKgL +
                                 charge.plasticiserKg / kPlasticiserKgL;
    charge.litres = withoutFibres / (1 - fibreShareOfVolume(mix));
    for (const Fibre& fibre : mix.fibres) charge.fibresKg += fibre.kgPerM3 / 1000 * charge.litres;
    return charge;
}

int wholeUp(double value)
{
    if (!(value > 0.0)) return 0;
    return static_cast<int>(std::min(std::ceil(value - 1e-9), static_cast<double>(kMostCounted)));
}

struct Thinnest {
    double thicknessMm = std::numeric_limits<double>::infinity();
    std::string casting;
};

Thinnest thinnestOf(const std::vector<const Casting*>& castings)
{
    Thinnest thinnest;
    for (const Casting* casting : castings) {
        for (const Zone& zone : casting->zones) {
            if (zone.isConcrete() && zone.depthMm() < thinnest.thicknessMm)
                thinnest = {zone.depthMm(), casting->id};
        }
    }
    return thinnest;
}

void fillRatios(MixQuantities& q, const Mix& mix, const Charge& charge)
{
    const double waterKg = mix.bag.waterL + kPlasticiserWaterShare * charge.plasticiserKg;
    q.waterCement = waterKg / charge.cementKg;
    if (charge.fumeKg > 0.0) q.kValue = mix.maxWaterCement <= kLowRatio ? kForLowRatio : kOutdoors;
    const double counted = std::min(charge.fumeKg, kMostFumeShare * charge.cementKg);
    q.waterBinder = waterKg / (charge.cementKg + q.kValue * counted);
}

void fillBatches(MixQuantities& q, const Mixer& mixer)
{
    if (!(mixer.drumL > 0.0 && mixer.drumL <= 1e6)) return;
    q.usableDrumL = mixer.drumL * kUsableDrumShare;
    const double fitting = q.usableDrumL / q.litresPerBag;
    q.bagsPerBatch = fitting >= 1.0 ? std::floor(fitting + 1e-9) : fitting;
    q.batches = wholeUp(q.bagsExact / q.bagsPerBatch);
}

void addFindings(const Plan& plan, const Mix& mix, std::size_t index, const MixQuantities& q, const Charge& charge,
                 const Thinnest& thinnest, std::vector<Finding>& findings)
{
    const std::string pointer = "/mixes/" + std::to_string(index);
    if (mix.maxWaterCement > 0.0 && q.waterBinder > mix.maxWaterCement + 1e-9) {
        const double counted = std::min(charge.fumeKg, kMostFumeShare * charge.cementKg);
        const double most = mix.maxWaterCement * (charge.cementKg + q.kValue * counted) -
                            kPlasticiserWaterShare * charge.plasticiserKg;
        Finding finding{"water_cement_over", Severity::caution, {mix.id}, pointer + "/bag/water_l", {}, {}};
        finding.values = {{"water_cement", q.waterCement},
                          {"water_binder", q.waterBinder},
                          {"limit", mix.maxWaterCement},
                          {"water_l", mix.bag.waterL},
                          {"most_water_l", std::max(0.0, most)}};
        findings.push_back(std::move(finding));
    }
    if (charge.fumeKg > kMostFumeShare * charge.cementKg * (1 + 1e-9)) {
        findings.push_back({"fume_over",
                            Severity::note,
                            {mix.id},
                            pointer + "/silica_fume_percent",
                            {{"fume_percent", mix.silicaFumePercent}, {"counted_percent", kMostFumeShare * 100}},
                            {}});
    }
    if (!concreteProperties(mix.strengthClass)) {
        findings.push_back({"strength_class_unknown",
                            Severity::caution,
                            {mix.id},
                            pointer + "/strength_class",
                            {{"class", mix.strengthClass}},
                            {}});
    }
    const double mostGrainMm = thinnest.thicknessMm * kAggregateShareOfThickness;
    if (mix.bag.maxAggregateMm > mostGrainMm + 1e-9) {
        findings.push_back({"aggregate_large",
                            Severity::caution,
                            {mix.id, thinnest.casting},
                            pointer + "/bag/max_aggregate_mm",
                            {{"aggregate_mm", mix.bag.maxAggregateMm},
                             {"thickness_mm", thinnest.thicknessMm},
                             {"limit_mm", mostGrainMm}},
                            {}});
    }
    if (plan.mixer && q.bagsPerBatch > 0.0 && q.bagsPerBatch < 1.0) {
        findings.push_back({"mixer_small",
                            Severity::caution,
                            {mix.id},
                            "/mixer/drum_l",
                            {{"drum_l", plan.mixer->drumL}, {"usable_l", q.usableDrumL}, {"bag_l", q.litresPerBag}},
                            {}});
    }
}

}  // namespace

std::vector<MixQuantities> mixQuantities(const Plan& plan, const std::vector<CastingPtr>& castings,
                                         std::vector<Finding>& findings)
{
    std::unordered_map<std::string_view, std::vector<const Casting*>> users;
    for (const CastingPtr& casting : castings) users[casting->mix].push_back(casting.get());

    std::vector<MixQuantities> result;
    for (std::size_t i = 0; i < plan.mixes.size(); ++i) {
        const Mix& mix = plan.mixes[i];
        const auto used = users.find(mix.id);
        // An id that comes twice counts once; its castings are the first mix's.
        if (used == users.end() || findMix(plan, mix.id) != &mix) continue;
        if (!isUsable(mix) || fibreShareOfVolume(mix) > kMostFibreShare) continue;

        const Charge charge = chargeOf(mix);
        MixQuantities q;
        q.mix = mix.id;
        const double allowed = 1 + mix.allowancePercent / 100;
        for (const Casting* casting : used->second) {
            q.netL += casting->volumeL;
            q.castingLitres.emplace_back(casting->id, casting->volumeL * allowed);
        }
        q.volumeL = q.netL * allowed;
        q.litresPerBag = charge.litres;
        q.bagsExact = q.volumeL / charge.litres;
        q.bags = wholeUp(q.bagsExact);
        q.bagsKg = q.bagsExact * mix.bag.massKg;
        q.extraCementKg = q.bagsExact * charge.extraCementKg;
        q.silicaFumeKg = q.bagsExact * charge.fumeKg;
        q.plasticiserKg = q.bagsExact * charge.plasticiserKg;
        q.waterL = q.bagsExact * mix.bag.waterL;
        q.fibresKg = q.bagsExact * charge.fibresKg;
        for (const Fibre& fibre : mix.fibres)
            q.fibresByKindKg.emplace_back(fibre.kind, fibre.kgPerM3 / 1000 * q.volumeL);
        const double chargeKg = mix.bag.massKg + charge.extraCementKg + charge.fumeKg + charge.plasticiserKg +
                                charge.fibresKg + mix.bag.waterL;
        q.freshDensityKgM3 = chargeKg / charge.litres * 1000;
        fillRatios(q, mix, charge);
        if (plan.mixer) fillBatches(q, *plan.mixer);
        addFindings(plan, mix, i, q, charge, thinnestOf(used->second), findings);
        result.push_back(std::move(q));
    }
    return result;
}

}  // namespace yardcast
