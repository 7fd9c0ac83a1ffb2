#include "core/pour/mix_quantities.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <string_view>
#include <unordered_map>

#include "core/materials/materials.h"
#include "core/pour/charge.h"
#include "core/pour/mix_remedies.h"
#include "core/pour/weather.h"

namespace yardcast {

namespace {

/// EN practice for thin sections: the largest grain at most a third of the least thickness.
constexpr double kAggregateShareOfThickness = 1.0 / 3.0;
constexpr int kMostCounted = 1000000000;

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

void fillBatches(MixQuantities& q, const Mixer& mixer)
{
    if (!(mixer.drumL > 0.0 && mixer.drumL <= 1e6)) return;
    if (!(mixer.usablePercent > 0.0 && mixer.usablePercent <= 100.0)) return;
    q.usableDrumL = mixer.drumL * mixer.usablePercent / 100;
    q.bagsPerBatch = bagsThatFit(q.usableDrumL, q.litresPerBag);
    q.batches = wholeUp(q.bagsExact / q.bagsPerBatch);
}

void addRatioFinding(const Mix& mix, std::size_t index, const MixQuantities& q, const Charge& charge,
                     std::vector<Finding>& findings)
{
    if (!(mix.maxWaterCement > 0.0) || q.waterBinder <= mix.maxWaterCement + 1e-9) return;
    Finding finding;
    finding.code = mix.recipe ? "recipe_ratio_over" : "water_cement_over";
    finding.severity = Severity::caution;
    finding.subjects = {mix.id};
    finding.pointer = "/mixes/" + std::to_string(index) + (mix.recipe ? "/recipe/water_l_m3" : "/bag/water_l");
    finding.values = {{"water_cement", q.waterCement},
                      {"water_binder", q.waterBinder},
                      {"limit", mix.maxWaterCement},
                      {"water_l", charge.waterL},
                      {"most_water_l", mostWaterL(mix, mix.maxWaterCement)}};
    finding.remedies = ratioRemedies(mix, index, mix.maxWaterCement);
    findings.push_back(std::move(finding));
}

void addFindings(const Plan& plan, const Mix& mix, std::size_t index, const MixQuantities& q, const Charge& charge,
                 const Thinnest& thinnest, std::vector<Finding>& findings)
{
    const std::string pointer = "/mixes/" + std::to_string(index);
    addRatioFinding(mix, index, q, charge, findings);
    if (charge.fumeKg > kMostFumeShare * charge.cementKg * (1 + 1e-9)) {
        findings.push_back({"fume_over",
                            Severity::note,
                            {mix.id},
                            pointer + "/silica_fume_percent",
                            {{"fume_percent", mix.silicaFumePercent}, {"counted_percent", kMostFumeShare * 100}},
                            {}});
    }
    if (const ClassReading reading = readClass(mix.strengthClass); !reading.exact) {
        findings.push_back({"strength_class_unknown",
                            Severity::stop,
                            {mix.id},
                            pointer + "/strength_class",
                            {{"class", mix.strengthClass}, {"taken", reading.taken}},
                            classRemedies(index, reading.canMean)});
    }
    const double mostGrainMm = thinnest.thicknessMm * kAggregateShareOfThickness;
    if (maxAggregateMm(mix) > mostGrainMm + 1e-9) {
        findings.push_back({"aggregate_large",
                            Severity::caution,
                            {mix.id, thinnest.casting},
                            pointer + (mix.recipe ? "/recipe/max_aggregate_mm" : "/bag/max_aggregate_mm"),
                            {{"aggregate_mm", maxAggregateMm(mix)},
                             {"thickness_mm", thinnest.thicknessMm},
                             {"limit_mm", mostGrainMm}},
                            {}});
    }
    if (q.perBag && plan.mixer && q.bagsPerBatch > 0.0 && q.bagsPerBatch < 1.0) {
        findings.push_back({"mixer_small",
                            Severity::caution,
                            {mix.id},
                            "/mixer/drum_l",
                            {{"drum_l", plan.mixer->drumL}, {"usable_l", q.usableDrumL}, {"bag_l", q.litresPerBag}},
                            {}});
    }
}

/// Wrong numbers are reported by validation.
void addFault(const Mix& mix, std::size_t index, MixFault fault, std::vector<Finding>& findings)
{
    if (fault == MixFault::numbers || !mix.recipe) return;
    const std::string pointer = "/mixes/" + std::to_string(index) + "/recipe";
    if (fault == MixFault::noRoom) {
        findings.push_back({"recipe_no_room",
                            Severity::stop,
                            {mix.id},
                            pointer + "/cement_kg_m3",
                            {{"cement_kg", mix.recipe->cementKgM3}, {"water_l", mix.recipe->waterLM3}},
                            {}});
        return;
    }
    const Charge charge = plannedChargeOf(mix);
    findings.push_back({"recipe_too_wet",
                        Severity::stop,
                        {mix.id},
                        pointer + "/sand/moisture_percent",
                        {{"brought_l", charge.moistureL}, {"water_l", mix.recipe->waterLM3}},
                        {}});
}

MixQuantities quantitiesOf(const Mix& mix, const Charge& charge, const std::vector<const Casting*>& castings)
{
    MixQuantities q;
    q.mix = mix.id;
    q.perBag = charge.perBag;
    q.byTrial = charge.byTrial;
    const double allowed = 1 + mix.allowancePercent / 100;
    for (const Casting* casting : castings) {
        q.netL += casting->volumeL;
        q.castingLitres.emplace_back(casting->id, casting->volumeL * allowed);
    }
    q.volumeL = q.netL * allowed;
    q.charges = q.volumeL / charge.litres;
    q.bagKg = charge.perBag ? mix.bag.massKg : mix.recipe->cementBagKg;
    const double bagsInCharge = charge.perBag ? 1.0 : charge.cementKg / q.bagKg;
    q.litresPerBag = charge.litres / bagsInCharge;
    q.bagsExact = q.charges * bagsInCharge;
    q.bags = wholeUp(q.bagsExact);
    q.bagsKg = q.charges * charge.dryMixKg;
    q.cementKg = q.charges * charge.cementKg;
    q.extraCementKg = q.charges * charge.extraCementKg;
    q.sandKg = q.charges * charge.sandKg;
    q.gravelKg = q.charges * charge.gravelKg;
    q.silicaFumeKg = q.charges * charge.fumeKg;
    q.plasticiserKg = q.charges * charge.plasticiserKg;
    q.pigmentKg = q.charges * charge.pigmentKg;
    q.waterL = q.charges * charge.waterL;
    q.fibresKg = q.charges * charge.fibreKg();
    for (const auto& [kind, kg] : charge.fibresKg) q.fibresByKindKg.emplace_back(kind, q.charges * kg);
    q.freshDensityKgM3 = charge.densityKgM3();
    const Ratios ratios = ratiosOf(mix, charge);
    q.waterCement = ratios.waterCement;
    q.waterBinder = ratios.waterBinderK;
    q.kValue = ratios.kValue;
    q.litresLow = q.litresHigh = q.volumeL;
    if (!charge.perBag) return q;
    const double low = litresAtSpread(mix, charge, -1);
    q.litresLow = q.bags * low;
    q.litresHigh = q.bags * litresAtSpread(mix, charge, 1);
    q.spareBags = std::max(0, wholeUp(q.volumeL / low) - q.bags);
    return q;
}

}  // namespace

double bagsThatFit(double litres, double litresPerBag)
{
    const double fitting = litres / litresPerBag;
    return fitting >= 1.0 ? std::floor(fitting + 1e-9) : fitting;
}

double bagsInBatch(const MixQuantities& quantities)
{
    return quantities.bagsPerBatch > 0.0 ? quantities.bagsPerBatch
                                         : bagsThatFit(kHandBatchL, quantities.litresPerBag);
}

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
        const MixFault fault = faultOf(mix);
        if (fault != MixFault::none) {
            addFault(mix, i, fault, findings);
            continue;
        }
        const Charge charge = chargeOf(mix);
        MixQuantities q = quantitiesOf(mix, charge, used->second);
        if (plan.mixer) fillBatches(q, *plan.mixer);
        q.iceKg = iceShareOf(plan) * q.waterL;
        addFindings(plan, mix, i, q, charge, thinnestOf(used->second), findings);
        result.push_back(std::move(q));
    }
    return result;
}

}  // namespace yardcast
