#include "core/pour/mixing_card.h"

#include <algorithm>
#include <cmath>

#include "core/materials/materials.h"
#include "core/pour/batch_shares.h"
#include "core/pour/mix_findings.h"
#include "core/pour/weather.h"

namespace yardcast {

namespace {

/// The steps of one batch, each with what goes in.
class Steps {
public:
    Steps(const Charge& charge, double bagKg, double charges, double iceShare)
        : charge_(charge), bagKg_(bagKg), charges_(charges), iceShare_(iceShare)
    {
    }

    std::vector<CardStep> take()
    {
        water(Ingredient::waterFirst, kFirstWaterShare - iceShare_, 0.0);
        add(Ingredient::ice, charge_.waterL * iceShare_, 0.0);
        grains(Ingredient::gravel, charge_.gravelKg, 0.0);
        addition(Ingredient::silicaFume, {}, charge_.fumeKg, kFumeMinutes);
        addition(Ingredient::pigment, {}, charge_.pigmentKg, kFumeMinutes);
        if (charge_.perBag) {
            addition(Ingredient::cement, {}, charge_.extraCementKg, 0.0);
            inBags(Ingredient::dryMix, charge_.dryMixKg, kBinderMinutes);
        } else {
            inBags(Ingredient::cement, charge_.cementKg, charge_.sandKg > 0.0 ? 0.0 : kBinderMinutes);
            grains(Ingredient::sand, charge_.sandKg, kBinderMinutes);
        }
        addition(Ingredient::plasticiser, {}, charge_.plasticiserKg, 0.0);
        water(Ingredient::waterLast, 1 - kFirstWaterShare, kLastWaterMinutes);
        for (std::size_t i = 0; i < charge_.fibresKg.size(); ++i) {
            const auto& [kind, kg] = charge_.fibresKg[i];
            addition(Ingredient::fibres, kind, kg, i + 1 == charge_.fibresKg.size() ? kFibreMinutes : 0.0);
        }
        return std::move(steps_);
    }

private:
    CardStep* add(Ingredient what, double inChargeKg, double minutes)
    {
        if (!(inChargeKg > 0.0)) return nullptr;
        CardStep step;
        step.what = what;
        step.kg = step.restKg = inChargeKg * charges_;
        step.mixMinutes = minutes;
        steps_.push_back(step);
        return &steps_.back();
    }

    void water(Ingredient what, double share, double minutes)
    {
        if (CardStep* step = add(what, charge_.waterL * share, minutes)) step->litres = step->kg;
    }

    void grains(Ingredient what, double inChargeKg, double minutes) { add(what, inChargeKg, minutes); }

    void addition(Ingredient what, const std::string& kind, double inChargeKg, double minutes)
    {
        CardStep* step = add(what, inChargeKg, minutes);
        if (!step) return;
        step->kind = kind;
        step->belowScale = step->kg * 1000 < kLeastScoopG;
        if (what == Ingredient::plasticiser) step->litres = step->kg / kPlasticiserKgL;
    }

    void inBags(Ingredient what, double inChargeKg, double minutes)
    {
        CardStep* step = add(what, inChargeKg, minutes);
        if (!step) return;
        step->wholeBags = static_cast<int>(std::min(std::floor(step->kg / bagKg_ + 1e-9), 1e9));
        step->restKg = std::max(0.0, step->kg - step->wholeBags * bagKg_);
        if (step->restKg < 1e-9 * step->kg) step->restKg = 0.0;
    }

    const Charge& charge_;
    double bagKg_;
    double charges_;
    double iceShare_;
    std::vector<CardStep> steps_;
};

BatchCard batchOf(const MixQuantities& quantities, const Charge& charge, double bags, int times, double iceShare)
{
    BatchCard batch;
    batch.times = times;
    if (times == 0) return batch;
    batch.bags = bags;
    batch.litres = bags * quantities.litresPerBag;
    batch.steps = Steps(charge, quantities.bagKg, batch.litres / charge.litres, iceShare).take();
    for (const CardStep& step : batch.steps) batch.minutes += step.mixMinutes;
    return batch;
}

void addBatches(MixingCard& card, const MixQuantities& quantities, double iceShare)
{
    const BatchShares shares = shareBatches(quantities.bagsExact, bagsInBatch(quantities));
    const auto once = [&](double bags) {
        return batchOf(quantities, card.charge, bags, bags > 0.0 ? 1 : 0, iceShare);
    };
    card.full = batchOf(quantities, card.charge, shares.fullBags, shares.full, iceShare);
    card.lastButOne = once(shares.lastButOneBags);
    card.odd = once(shares.lastBags);
    card.even = shares.even;
    card.sparedL = shares.sparedBags * quantities.litresPerBag;
}

MixingCard cardOf(const Plan& plan, const Mix& mix, const MixQuantities& quantities)
{
    MixingCard card;
    card.mix = mix.id;
    card.perBag = quantities.perBag;
    card.bagKg = quantities.bagKg;
    card.byHand = !(quantities.bagsPerBatch > 0.0);
    card.charge = chargeOf(mix);
    card.check = checkMix(plan, mix);
    addBatches(card, quantities, iceShareOf(plan));
    card.litresLow = quantities.litresLow;
    card.litresHigh = quantities.litresHigh;
    card.spareBags = quantities.spareBags;
    card.plannedDensityKgM3 = plannedChargeOf(mix).densityKgM3();
    card.trialDensityKgM3 = trialDensityKgM3(mix).value_or(0.0);
    card.extraWaterL = extraWaterByTrialL(mix);
    return card;
}

}  // namespace

std::vector<const BatchCard*> MixingCard::batches() const
{
    std::vector<const BatchCard*> there;
    for (const BatchCard* batch : {&full, &lastButOne, &odd}) {
        if (batch->times > 0) there.push_back(batch);
    }
    return there;
}

BatchCard batchOfLitres(const Plan& plan, const MixQuantities& quantities, double litres)
{
    const Mix* mix = findMix(plan, quantities.mix);
    if (!mix || !(litres > 0.0) || !(quantities.litresPerBag > 0.0)) return {};
    return batchOf(quantities, chargeOf(*mix), litres / quantities.litresPerBag, 1, iceShareOf(plan));
}

std::vector<MixingCard> mixingCards(const Plan& plan, const std::vector<MixQuantities>& quantities,
                                    std::vector<Finding>& findings)
{
    std::vector<MixingCard> cards;
    Finding airUnknown{"exposure_air_unknown", Severity::note, {}, {}, {}, {}};
    for (const MixQuantities& one : quantities) {
        const Mix* mix = findMix(plan, one.mix);
        if (!mix || !isUsable(*mix)) continue;
        cards.push_back(cardOf(plan, *mix, one));
        const auto index = static_cast<std::size_t>(mix - plan.mixes.data());
        addMixFindings(plan, index, one, cards.back(), airUnknown, findings);
    }
    if (!airUnknown.subjects.empty()) findings.push_back(std::move(airUnknown));
    return cards;
}

}  // namespace yardcast
