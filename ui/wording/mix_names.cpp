#include "ui/wording/mix_names.h"

#include <cmath>

#include "core/materials/materials.h"
#include "ui/wording/figures.h"
#include "ui/wording/words.h"

namespace yardcast::ui {

namespace {

}  // namespace

QString weighedText(double kg)
{
    const double grams = kg * 1000;
    if (std::round(grams) < 1000.0) return Words::tr("%1\u00a0g").arg(numberText(grams, grams < 19.95 ? 1 : 0));
    return Words::tr("%1\u00a0kg").arg(numberText(kg, kg < 9.995 ? 2 : 1));
}

QString measuredText(double litres)
{
    const double ml = litres * 1000;
    if (std::round(ml) < 1000.0) return Words::tr("%1\u00a0ml").arg(numberText(ml, ml < 19.95 ? 1 : 0));
    return Words::tr("%1\u00a0l").arg(numberText(litres, litres < 9.995 ? 2 : 1));
}

QString stepName(const CardStep& step, bool perBag)
{
    switch (step.what) {
    case Ingredient::dryMix: return Words::tr("Dry mix");
    case Ingredient::cement: return perBag ? Words::tr("Extra cement") : Words::tr("Cement");
    case Ingredient::sand: return Words::tr("Sand");
    case Ingredient::gravel: return Words::tr("Gravel");
    case Ingredient::silicaFume: return Words::tr("Silica fume");
    case Ingredient::plasticiser: return Words::tr("Plasticiser, into the last water");
    case Ingredient::pigment: return Words::tr("Pigment");
    case Ingredient::fibres: return Words::tr("Fibres %1").arg(QString::fromStdString(step.kind));
    case Ingredient::waterFirst: return Words::tr("Water, first portion");
    case Ingredient::ice: return Words::tr("Ice, crushed");
    case Ingredient::waterLast: return Words::tr("Water, last portion");
    }
    return {};
}

QString bagsText(double bags)
{
    const double whole = std::round(bags);
    if (std::abs(bags - whole) < 1e-6) {
        return whole == 1.0 ? Words::tr("1 bag") : Words::tr("%1 bags").arg(numberText(whole, 0));
    }
    return Words::tr("%1 bags").arg(numberText(bags, 2));
}

QString stepAmountText(const CardStep& step)
{
    switch (step.what) {
    case Ingredient::waterFirst:
    case Ingredient::waterLast: return measuredText(step.litres);
    case Ingredient::plasticiser:
        return Words::tr("%1 (%2)", "measured, weighed").arg(measuredText(step.litres), weighedText(step.kg));
    case Ingredient::dryMix:
    case Ingredient::cement:
        if (step.wholeBags > 0) {
            if (step.restKg < 0.005) return bagsText(step.wholeBags);
            return Words::tr("%1 and %2").arg(bagsText(step.wholeBags), weighedText(step.restKg));
        }
        break;
    case Ingredient::sand:
    case Ingredient::gravel:
    case Ingredient::ice:
    case Ingredient::silicaFume:
    case Ingredient::pigment:
    case Ingredient::fibres: break;
    }
    return weighedText(step.kg);
}

QString batchesText(const MixingCard& card)
{
    QStringList parts;
    for (const BatchCard* batch : card.batches()) {
        parts << Words::tr("%1 × %2").arg(batch->times).arg(volumeText(batch->litres));
    }
    if (parts.size() < 2) return parts.join(QString());
    const QString last = parts.takeLast();
    return Words::tr("%1 and %2").arg(parts.join(QStringLiteral(", ")), last);
}

QString batchName(const MixingCard& card, const BatchCard& batch)
{
    if (card.count() == 1) return Words::tr("The one batch");
    if (&batch == &card.odd) return Words::tr("Last batch");
    if (&batch == &card.lastButOne) return Words::tr("Last but one");
    return card.even ? Words::tr("Each batch") : Words::tr("Full batch");
}

QString sharedBatchesText(const MixingCard& card)
{
    if (card.even) {
        return card.sparedL > 0.0
                   ? Words::tr("All batches are alike: by full ones the last would be only %1, too little to mix well.")
                         .arg(volumeText(card.sparedL))
                   : Words::tr("Everything is weighed, so all batches are alike: none is a rest.");
    }
    if (!(card.sparedL > 0.0)) return {};
    return Words::tr("The last two share: by full batches the last would be only %1, too little to mix well.")
        .arg(volumeText(card.sparedL));
}

QString waterText(const MixingCard& card)
{
    const Charge& charge = card.charge;
    const double plasticiserL = charge.plasticiserKg * kPlasticiserWaterShare;
    QStringList parts{Words::tr("%1 from the tap, into the bucket").arg(measuredText(charge.waterL))};
    if (plasticiserL > 0.0) parts << Words::tr("%1 in the plasticiser").arg(measuredText(plasticiserL));
    if (charge.moistureL > 0.0) parts << Words::tr("%1 on sand and gravel").arg(measuredText(charge.moistureL));
    if (charge.moistureL < 0.0) {
        parts << Words::tr("less %1 that dry sand and gravel drink").arg(measuredText(-charge.moistureL));
    }
    const QString words = card.perBag ? Words::tr("Water for a bag: %1; all of it, for the ratios, %2. Ice is part of the tap water.")
                                      : Words::tr("Water for a m³: %1; all of it, for the ratios, %2. Ice is part of the tap water.");
    return words.arg(parts.join(QStringLiteral(", ")), measuredText(charge.effectiveWaterL));
}

QString limitKindName(LimitCheck::What what)
{
    switch (what) {
    case LimitCheck::What::waterCement: return Words::tr("Water to cement");
    case LimitCheck::What::strengthClass: return Words::tr("Strength class");
    case LimitCheck::What::cement: return Words::tr("Cement in a m³");
    case LimitCheck::What::air: return Words::tr("Air");
    case LimitCheck::What::fume: return Words::tr("Silica fume");
    case LimitCheck::What::plasticiser: return Words::tr("Plasticiser");
    case LimitCheck::What::ratioForClass: return Words::tr("Mean strength the ratio gives");
    case LimitCheck::What::pigment: return Words::tr("Pigment");
    }
    return {};
}

QString limitName(const LimitCheck& row)
{
    const QString by = row.by == "plan" ? Words::tr("this plan") : QString::fromStdString(row.by);
    return Words::tr("%1, %2", "limit, who sets it").arg(limitKindName(row.what), by);
}

QString missedText(const MixCheck& check)
{
    QStringList kinds;
    for (std::size_t i = 0; i < check.limits.size(); ++i) {
        const LimitCheck::What what = check.limits[i].what;
        QStringList by;
        bool told = false;
        for (std::size_t j = 0; j < check.limits.size(); ++j) {
            const LimitCheck& row = check.limits[j];
            if (row.what != what || row.met.value_or(true)) continue;
            told = told || j < i;
            by << (row.by == "plan" ? Words::tr("this plan") : QString::fromStdString(row.by));
        }
        if (told || by.isEmpty() || check.limits[i].met.value_or(true)) continue;
        kinds << Words::tr("%1 (%2)", "limit, who sets it")
                     .arg(limitKindName(what).toLower(), by.join(QStringLiteral(", ")));
    }
    return kinds.join(QStringLiteral("; "));
}

QString limitText(const LimitCheck& row)
{
    const auto most = [](const QString& is, const QString& limit) {
        return Words::tr("%1, at most %2").arg(is, limit);
    };
    const auto least = [](const QString& is, const QString& limit) {
        return Words::tr("%1, at least %2").arg(is, limit);
    };
    const QString unknown = Words::tr("not stated");
    switch (row.what) {
    case LimitCheck::What::waterCement: return most(numberText(row.is, 2), numberText(row.limit, 2));
    case LimitCheck::What::strengthClass:
        return least(row.met ? QString::fromStdString(classNamed(row.is)) : unknown,
                     QString::fromStdString(classNamed(row.limit)));
    case LimitCheck::What::cement: return least(massText(row.is), massText(row.limit));
    case LimitCheck::What::air:
        return least(row.met ? percentText(row.is, 1) : unknown, percentText(row.limit, 0));
    case LimitCheck::What::fume:
    case LimitCheck::What::pigment: return most(percentText(row.is, 1), percentText(row.limit, 0));
    case LimitCheck::What::plasticiser: return most(percentText(row.is / 10, 1), percentText(row.limit / 10, 0));
    case LimitCheck::What::ratioForClass:
        if (!row.met) return Words::tr("about %1 MPa").arg(numberText(row.is, 0));
        return Words::tr("about %1 MPa, the class has %2").arg(numberText(row.is, 0), numberText(row.limit, 0));
    }
    return {};
}

QString metText(const std::optional<bool>& met)
{
    if (!met) return Words::tr("not known");
    return *met ? Words::tr("met") : Words::tr("not met");
}

QString spreadText(const MixQuantities& quantities)
{
    if (!quantities.perBag) return {};
    const QString low = numberText(quantities.litresLow, 0);
    const QString high = Words::tr("%1\u00a0l").arg(numberText(quantities.litresHigh, 0));
    return low == numberText(quantities.litresHigh, 0)
               ? Words::tr("%1 give %2").arg(bagsText(quantities.bags), high)
               : Words::tr("%1 give %2 to %3").arg(bagsText(quantities.bags), low, high);
}

}  // namespace yardcast::ui
