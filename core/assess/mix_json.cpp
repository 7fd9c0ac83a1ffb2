#include "core/assess/mix_json.h"

namespace yardcast {

namespace {

const char* ingredientWord(Ingredient what)
{
    switch (what) {
    case Ingredient::dryMix: return "dry_mix";
    case Ingredient::cement: return "cement";
    case Ingredient::sand: return "sand";
    case Ingredient::gravel: return "gravel";
    case Ingredient::silicaFume: return "silica_fume";
    case Ingredient::plasticiser: return "plasticiser";
    case Ingredient::pigment: return "pigment";
    case Ingredient::fibres: return "fibres";
    case Ingredient::waterFirst: return "water_first";
    case Ingredient::ice: return "ice";
    case Ingredient::waterLast: return "water_last";
    }
    return "";
}

const char* limitWord(LimitCheck::What what)
{
    switch (what) {
    case LimitCheck::What::waterCement: return "water_binder";
    case LimitCheck::What::strengthClass: return "fck_mpa";
    case LimitCheck::What::cement: return "cement_kg_m3";
    case LimitCheck::What::air: return "air_percent";
    case LimitCheck::What::fume: return "silica_fume_percent";
    case LimitCheck::What::plasticiser: return "plasticiser_g_kg";
    case LimitCheck::What::ratioForClass: return "mean_strength_by_ratio_mpa";
    case LimitCheck::What::pigment: return "pigment_percent";
    }
    return "";
}

Json limitsJson(const MixCheck& check)
{
    Json list = Json::array();
    for (const LimitCheck& row : check.limits) {
        // What is not stated has no figure to compare.
        const bool known = row.met.has_value() || row.what == LimitCheck::What::ratioForClass;
        list.push_back({{"what", limitWord(row.what)},
                        {"by", row.by},
                        {"is", known ? Json(rounded(row.is)) : Json()},
                        {"limit", rounded(row.limit)},
                        {"met", row.met ? Json(*row.met) : Json()}});
    }
    return list;
}

Json batchJson(const BatchCard& batch)
{
    Json steps = Json::array();
    for (const CardStep& step : batch.steps) {
        Json one{{"what", ingredientWord(step.what)}, {"kg", rounded(step.kg)}};
        if (!step.kind.empty()) one["kind"] = step.kind;
        if (step.litres > 0.0) one["l"] = rounded(step.litres);
        if (step.wholeBags > 0) {
            one["whole_bags"] = step.wholeBags;
            one["rest_kg"] = rounded(step.restKg);
        }
        one["mix_minutes"] = rounded(step.mixMinutes);
        if (step.belowScale) one["below_scale"] = true;
        steps.push_back(std::move(one));
    }
    return {{"times", batch.times},
            {"litres", rounded(batch.litres)},
            {"bags", rounded(batch.bags)},
            {"minutes", rounded(batch.minutes)},
            {"steps", steps}};
}

Json cardJson(const MixingCard& card)
{
    Json json{{"by_hand", card.byHand},
              {"full", batchJson(card.full)},
              {"last_but_one", batchJson(card.lastButOne)},
              {"odd", batchJson(card.odd)},
              {"even", card.even}};
    if (card.sparedL > 0.0) json["spared_l"] = rounded(card.sparedL);
    json["planned_density_kg_m3"] = rounded(card.plannedDensityKgM3);
    if (card.trialDensityKgM3 > 0.0) {
        json["trial_density_kg_m3"] = rounded(card.trialDensityKgM3);
        json["extra_water_l"] = rounded(card.extraWaterL);
        json["trial_water_cement"] = rounded(card.check.ratios.waterCement);
    }
    return json;
}

Json mixJson(const MixQuantities& mix)
{
    Json fibres = Json::array();
    for (const auto& [kind, kg] : mix.fibresByKindKg) fibres.push_back({{"kind", kind}, {"kg", rounded(kg)}});
    Json castings = Json::array();
    for (const auto& [casting, litres] : mix.castingLitres) {
        castings.push_back({{"casting", casting}, {"volume_l", rounded(litres)}});
    }
    return {{"mix", mix.mix},
            {"recipe", !mix.perBag},
            {"net_l", rounded(mix.netL)},
            {"volume_l", rounded(mix.volumeL)},
            {"litres_per_bag", rounded(mix.litresPerBag)},
            {"bag_kg", rounded(mix.bagKg)},
            {"bags", mix.bags},
            {"bags_exact", rounded(mix.bagsExact)},
            {"spare_bags", mix.spareBags},
            {"litres_low", rounded(mix.litresLow)},
            {"litres_high", rounded(mix.litresHigh)},
            {"by_trial", mix.byTrial},
            {"dry_mix_kg", rounded(mix.bagsKg)},
            {"cement_kg", rounded(mix.cementKg)},
            {"extra_cement_kg", rounded(mix.extraCementKg)},
            {"sand_kg", rounded(mix.sandKg)},
            {"gravel_kg", rounded(mix.gravelKg)},
            {"silica_fume_kg", rounded(mix.silicaFumeKg)},
            {"plasticiser_kg", rounded(mix.plasticiserKg)},
            {"pigment_kg", rounded(mix.pigmentKg)},
            {"water_l", rounded(mix.waterL)},
            {"ice_kg", rounded(mix.iceKg)},
            {"fibres_kg", rounded(mix.fibresKg)},
            {"fibres", fibres},
            {"water_cement", rounded(mix.waterCement)},
            {"water_binder", rounded(mix.waterBinder)},
            {"k_value", rounded(mix.kValue)},
            {"fresh_density_kg_m3", rounded(mix.freshDensityKgM3)},
            {"batches", mix.batches},
            {"bags_per_batch", rounded(mix.bagsPerBatch)},
            {"castings", castings}};
}

}  // namespace

Json mixesJson(const Plan& plan, const Assessment& assessment)
{
    Json list = Json::array();
    for (const MixQuantities& mix : assessment.mixes) {
        Json json = mixJson(mix);
        for (const MixingCard& card : assessment.cards) {
            if (card.mix != mix.mix) continue;
            const Ratios& ratios = card.check.ratios;
            json["water_binder_plain"] = rounded(ratios.waterBinderPlain);
            json["total_water_cement"] = rounded(ratios.totalWaterCement);
            json["cement_kg_m3"] = rounded(card.check.cementKgM3);
            json["class_supported"] = card.check.classSupported;
            if (const Mix* stated = findMix(plan, mix.mix); stated && stated->airPercent)
                json["air_percent"] = rounded(*stated->airPercent);
            json["limits"] = limitsJson(card.check);
            json["card"] = cardJson(card);
        }
        list.push_back(std::move(json));
    }
    return list;
}

}  // namespace yardcast
