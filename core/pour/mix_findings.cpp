#include "core/pour/mix_findings.h"

#include <algorithm>
#include <cmath>

#include "core/pour/mix_remedies.h"

namespace yardcast {

namespace {

using What = LimitCheck::What;

/// A mix that its water leaves less of than this share of its class is not to be cast; our choice.
constexpr double kHalfStrength = 0.5;

/// The row of this kind that asks most of those that are not met; null where none fails.
const LimitCheck* worstOf(const MixCheck& check, What what)
{
    const LimitCheck* worst = nullptr;
    for (const LimitCheck& row : check.limits) {
        if (row.what != what || row.met.value_or(true) || row.by == "plan") continue;
        const bool atMost = what == What::waterCement;
        if (!worst || (atMost ? row.limit < worst->limit : row.limit > worst->limit)) worst = &row;
    }
    return worst;
}

const LimitCheck* ownRow(const MixCheck& check)
{
    for (const LimitCheck& row : check.limits) {
        if (row.by == "plan") return &row;
    }
    return nullptr;
}

/// Key of the price book for what goes in.
std::string itemOf(const CardStep& step)
{
    switch (step.what) {
    case Ingredient::cement: return "cement";
    case Ingredient::silicaFume: return "silica_fume";
    case Ingredient::plasticiser: return "plasticiser";
    case Ingredient::pigment: return "pigment";
    case Ingredient::fibres:
    case Ingredient::dryMix:
    case Ingredient::sand:
    case Ingredient::gravel:
    case Ingredient::waterFirst:
    case Ingredient::ice:
    case Ingredient::waterLast: break;
    }
    return "fibre";
}

/// Says what there is to say about one mix.
class Speaker {
public:
    Speaker(const Plan& plan, std::size_t index, const MixQuantities& quantities, const MixingCard& card,
            std::vector<Finding>& findings)
        : plan_(plan), mix_(plan.mixes[index]), index_(index), quantities_(quantities), card_(card), findings_(findings)
    {
    }

    void exposure(Finding& airUnknown)
    {
        const LimitCheck* own = ownRow(card_.check);
        const LimitCheck* ratio = worstOf(card_.check, What::waterCement);
        // Over the plan's own limit is said already, with what clears that; a trial batch that is too wet by `trial`.
        if (ratio && (!own || own->met.value_or(true)) && !(card_.extraWaterL > 0.0)) {
            Finding& finding = asked("exposure_ratio", mix_.recipe ? "/recipe/water_l_m3" : "/bag/water_l", *ratio);
            finding.values["water_binder"] = ratio->is;
            finding.remedies = ratioRemedies(mix_, index_, ratio->limit);
        }
        if (const LimitCheck* cement = worstOf(card_.check, What::cement)) {
            Finding& finding =
                asked("exposure_cement", mix_.recipe ? "/recipe/cement_kg_m3" : "/extra_cement_percent", *cement);
            finding.values["cement_kg"] = cement->is;
            finding.values["least_kg"] = cement->limit;
            finding.remedies = cementRemedies(mix_, index_, [this](const Mix& changed) {
                return !worstOf(checkMix(plan_, changed), What::cement);
            });
        }
        if (const LimitCheck* strength = worstOf(card_.check, What::strengthClass)) {
            Finding& finding = asked("exposure_class", "/strength_class", *strength);
            finding.values["class"] = mix_.strengthClass;
            finding.values["least_class"] = classNamed(strength->limit);
        }
        if (const LimitCheck* air = worstOf(card_.check, What::air)) {
            Finding& finding = asked("exposure_air", "/air_percent", *air);
            finding.values["air_percent"] = air->is;
            finding.values["least_percent"] = air->limit;
        }
        for (const LimitCheck& row : card_.check.limits) {
            if (row.what != What::air || row.met) continue;
            if (airUnknown.pointer.empty()) airUnknown.pointer = pointer("/air_percent");
            airUnknown.subjects.push_back(mix_.id);
            airUnknown.values["least_percent"] = row.limit;
            airUnknown.values["exposure"] = row.by;
        }
    }

    void additions()
    {
        if (const LimitCheck* row = worstOf(card_.check, What::plasticiser)) {
            Finding& finding = asked("plasticiser_over", "/plasticiser_percent", *row);
            finding.values["plasticiser_percent"] = row->is / 10;
            finding.values["limit_percent"] = row->limit / 10;
            finding.remedies = {plasticiserRemedy(index_, kMostAdmixtureGKg / 10)};
        }
        if (const LimitCheck* row = worstOf(card_.check, What::pigment)) {
            Finding& finding = asked("pigment_over", "/pigment_percent", *row);
            finding.severity = Severity::note;
            finding.values["pigment_percent"] = row->is;
            finding.values["limit_percent"] = row->limit;
            finding.remedies = {pigmentRemedy(index_, kMostPigmentPercent)};
        }
        if (const LimitCheck* row = worstOf(card_.check, What::ratioForClass)) {
            Finding& finding = asked("ratio_class", "/strength_class", *row);
            if (row->is < kHalfStrength * row->limit) finding.severity = Severity::stop;
            finding.values["water_binder"] = card_.check.ratios.waterBinderK;
            finding.values["class"] = mix_.strengthClass;
            finding.values["mean_mpa"] = row->is;
            finding.values["wanted_mpa"] = row->limit;
        }
    }

    void scoops()
    {
        const CardStep* least = nullptr;
        const BatchCard* of = nullptr;
        for (const BatchCard* batch : card_.batches()) {
            for (const CardStep& step : batch->steps) {
                if (!step.belowScale || (least && least->kg <= step.kg)) continue;
                least = &step;
                of = batch;
            }
        }
        if (!least) return;
        Finding& finding = add("scoop_small", Severity::note, "");
        finding.values["item"] = itemOf(*least);
        finding.values["scoop_g"] = least->kg * 1000;
        finding.values["least_g"] = kLeastScoopG;
        finding.values["batch_l"] = of->litres;
    }

    void trial()
    {
        if (!mix_.trial) return;
        if (!(card_.trialDensityKgM3 > 0.0)) {
            Finding& finding = add("trial_impossible", Severity::caution, "/trial/concrete_kg");
            finding.values["bucket_l"] = mix_.trial->bucketL;
            finding.values["concrete_kg"] = mix_.trial->concreteKg;
            return;
        }
        if (card_.extraWaterL > 0.0) {
            Finding& finding = add("too_wet_by_density", Severity::caution, "/trial/concrete_kg");
            finding.values["trial_density"] = card_.trialDensityKgM3;
            finding.values["planned_density"] = card_.plannedDensityKgM3;
            finding.values["short_percent"] = (1 - card_.trialDensityKgM3 / card_.plannedDensityKgM3) * 100;
            finding.values["extra_l"] = card_.extraWaterL;
            finding.values["in"] = std::string(card_.perBag ? "bag" : "m3");
            finding.values["water_cement"] = card_.check.ratios.waterCement;
            finding.values["planned_l"] = card_.charge.waterL;
        }
        const Charge planned = plannedChargeOf(mix_);
        const double lowL = card_.perBag ? litresAtSpread(mix_, planned, -1) : planned.litres * (1 - kDensityTolerance);
        if (card_.charge.litres < lowL) {
            Finding& finding = add("yield_low", Severity::note, "/trial");
            finding.values["is_percent"] = card_.charge.litres / planned.litres * 100;
            finding.values["volume_l"] = quantities_.volumeL;
            finding.values["bags"] = static_cast<double>(quantities_.bags);
        }
    }

private:
    std::string pointer(const std::string& key) const { return "/mixes/" + std::to_string(index_) + key; }

    Finding& add(const char* code, Severity severity, const std::string& key)
    {
        return findings_.emplace_back(Finding{code, severity, {mix_.id}, pointer(key), {}, {}});
    }

    Finding& asked(const char* code, const std::string& key, const LimitCheck& row)
    {
        Finding& finding = add(code, Severity::caution, key);
        finding.values["exposure"] = row.by;
        finding.values["limit"] = row.limit;
        return finding;
    }

    const Plan& plan_;
    const Mix& mix_;
    std::size_t index_;
    const MixQuantities& quantities_;
    const MixingCard& card_;
    std::vector<Finding>& findings_;
};

}  // namespace

void addMixFindings(const Plan& plan, std::size_t index, const MixQuantities& quantities, const MixingCard& card,
                    Finding& airUnknown, std::vector<Finding>& findings)
{
    Speaker speaker(plan, index, quantities, card, findings);
    speaker.exposure(airUnknown);
    speaker.additions();
    speaker.scoops();
    speaker.trial();
}

}  // namespace yardcast
