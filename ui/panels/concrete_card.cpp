#include "ui/panels/concrete_card.h"

#include <algorithm>
#include <string>
#include <unordered_map>

#include <QHash>

#include "core/materials/materials.h"
#include "core/pour/charge.h"
#include "ui/panels/counted.h"
#include "ui/panels/line_view.h"
#include "ui/wording/figures.h"
#include "ui/wording/mix_names.h"
#include "ui/wording/names.h"

namespace yardcast::ui {

namespace {

struct Totals {
    double litres = 0.0;
    int bags = 0;             ///< of dry mix
    bool recipes = false;     ///< something is mixed from cement, sand and gravel
    int batches = 0;
    const MixQuantities* wettest = nullptr;  ///< nearest to its limit, or furthest beyond
};

double shareOfLimit(const Plan& plan, const MixQuantities& mix)
{
    const Mix* wanted = findMix(plan, mix.mix);
    return wanted && wanted->maxWaterCement > 0.0 ? mix.waterCement / wanted->maxWaterCement : 0.0;
}

Totals totalsOf(const Plan& plan, const Assessment& assessment)
{
    Totals totals;
    for (const MixQuantities& mix : assessment.mixes) {
        totals.litres += mix.volumeL;
        if (mix.perBag) totals.bags += mix.bags;
        totals.recipes = totals.recipes || !mix.perBag;
        totals.batches += mix.batches;
        if (!totals.wettest || shareOfLimit(plan, mix) > shareOfLimit(plan, *totals.wettest)) totals.wettest = &mix;
    }
    return totals;
}

/// The one size of all bags, or nothing.
std::optional<double> commonBagKg(const Assessment& assessment)
{
    std::optional<double> size;
    for (const MixQuantities& quantities : assessment.mixes) {
        if (!quantities.perBag) continue;
        if (size && *size != quantities.bagKg) return std::nullopt;
        size = quantities.bagKg;
    }
    return size;
}

/// The note behind a row of the table by mix.
QString codeOfRow(const QString& row)
{
    static const QHash<QString, QString> codes{{QStringLiteral("litres"), QStringLiteral("concrete_volume")},
                                               {QStringLiteral("bags"), QStringLiteral("bags")},
                                               {QStringLiteral("exact"), QStringLiteral("bags")},
                                               {QStringLiteral("cement"), QStringLiteral("extra_cement")},
                                               {QStringLiteral("fume"), QStringLiteral("silica_fume")},
                                               {QStringLiteral("plasticiser"), QStringLiteral("plasticiser")},
                                               {QStringLiteral("pigment"), QStringLiteral("pigment")},
                                               {QStringLiteral("spare"), QStringLiteral("yield_spread")},
                                               {QStringLiteral("spread"), QStringLiteral("yield_spread")},
                                               {QStringLiteral("sand"), QStringLiteral("grains")},
                                               {QStringLiteral("gravel"), QStringLiteral("grains")},
                                               {QStringLiteral("plain"), QStringLiteral("water_binder")},
                                               {QStringLiteral("total"), QStringLiteral("water_cement")},
                                               {QStringLiteral("fibre"), QStringLiteral("fibres")},
                                               {QStringLiteral("water"), QStringLiteral("water")},
                                               {QStringLiteral("ice"), QStringLiteral("water")},
                                               {QStringLiteral("ratio"), QStringLiteral("water_cement")},
                                               {QStringLiteral("binder"), QStringLiteral("water_binder")},
                                               {QStringLiteral("perbag"), QStringLiteral("litres_per_bag")},
                                               {QStringLiteral("batches"), QStringLiteral("batches")},
                                               {QStringLiteral("perbatch"), QStringLiteral("batches")}};
    return codes.value(row);
}

QString idText(const std::string& id) { return QString::fromStdString(id); }

}  // namespace

ConcreteCard::ConcreteCard(PlanDocument& document, Selection& selection, LiveAssessment& live, QWidget* parent)
    : LiveCard(QStringLiteral("concreteCard"), document, selection, live, parent)
{
    setEmptyText(tr("Nothing to cast yet. Drag a counter onto the sheet, or press C."));
    byMix_ = addTable(tr("By mix"), {{tr("Mix"), false}, {tr("Amount"), true}});
    limits_ = addTable(tr("Limits of EN 206"), {{tr("Limit"), false}, {tr("is"), false}, {tr("result"), false}});
    batches_ = addTable(tr("One batch"), {{tr("Step"), false}, {tr("full"), true}, {tr("last\nbut one"), true}, {tr("last"), true}});
    byCasting_ = addTable(tr("By casting"), {{tr("Casting"), false}, {tr("net\nl"), true}, {tr("to mix\nl"), true}});
}

CardSummary ConcreteCard::summarise(const Plan& plan, const Assessment& assessment) const
{
    CardSummary summary;
    summary.empty = assessment.mixes.empty();
    if (summary.empty) return summary;
    const Totals totals = totalsOf(plan, assessment);
    summary.big = {.code = QStringLiteral("concrete_volume"),
                   .text = numberText(totals.litres, totals.litres < 100 ? 1 : 0),
                   .unit = tr("l to mix, with allowance")};
    const std::optional<double> bagKg = commonBagKg(assessment);
    const QString count = counted(totals.bags, tr("1 bag"), tr("%1 bags"));
    QString bags = bagKg ? tr("%1 of %2 kg").arg(count, shortNumberText(*bagKg)) : tr("%1 of several sizes").arg(count);
    if (totals.recipes) {
        bags = totals.bags > 0 ? tr("%1, and cement, sand and gravel").arg(bags) : tr("From cement, sand and gravel");
    }
    summary.lines.append({.code = QStringLiteral("bags"), .text = bags});

    const Mix* mix = findMix(plan, totals.wettest->mix);
    const bool tooWet = mix && totals.wettest->waterCement > mix->maxWaterCement;
    QString ratio = tr("Water-cement %1").arg(numberText(totals.wettest->waterCement, 2));
    if (mix) {
        ratio += tooWet ? tr(", over the limit %1").arg(numberText(mix->maxWaterCement, 2))
                        : tr(", limit %1").arg(numberText(mix->maxWaterCement, 2));
    }
    if (assessment.mixes.size() > 1) ratio += tr(" (%1)").arg(idText(totals.wettest->mix));
    summary.lines.append({.code = QStringLiteral("water_cement"),
                          .text = ratio,
                          .mark = tooWet ? std::optional(Severity::caution) : std::nullopt});

    if (plan.mixer) {
        int poured = 0;
        for (const PourDay& day : assessment.pour.days) poured += day.batches;
        QString text = tr("%1 in a drum of %2").arg(counted(totals.batches, tr("1 batch"), tr("%1 batches")),
                                                    volumeText(plan.mixer->drumL));
        // Each day and each wait for a mould ends with a smaller one.
        if (poured > totals.batches) text += tr("; by the pour plan %1").arg(poured);
        summary.lines.append({.code = QStringLiteral("batches"), .text = text});
    } else {
        summary.lines.append({.text = tr("No mixer in the plan, so batches are not counted.")});
    }
    return summary;
}

void ConcreteCard::fillTables(const Plan& plan, const Assessment& assessment)
{
    QList<Line> mixes;
    QList<Line> castings;
    std::unordered_map<std::string, int> places;
    for (const PlacedCasting& placed : assessment.castings) {
        places.emplace(placed.casting->id, static_cast<int>(places.size()));
    }
    for (int i = 0; i < static_cast<int>(assessment.mixes.size()); ++i) {
        const MixQuantities& mix = assessment.mixes[i];
        const QString id = idText(mix.mix);
        Line heading{.key = id + QStringLiteral("/"), .kind = Line::Kind::heading, .cells = {id}, .source = i};
        mixes.append(heading);
        const auto row = [&](const char* key, const QString& name, double value, int decimals) {
            if (value <= 0.0) return;
            mixes.append({.key = id + QLatin1Char('/') + QLatin1String(key),
                          .cells = {name, numberText(value, decimals)},
                          .source = i});
        };
        row("litres", tr("Concrete to mix, l"), mix.volumeL, 1);
        row("bags", mix.perBag ? tr("Dry mix, whole bags") : tr("Cement, whole bags"), mix.bags, 0);
        row("spare", tr("Spare bags for a low yield"), mix.spareBags, 0);
        if (mix.perBag) {
            mixes.append({.key = id + QStringLiteral("/spread"),
                          .cells = {tr("Yield with its spread, l"),
                                    tr("%1 to %2").arg(numberText(mix.litresLow, 0), numberText(mix.litresHigh, 0))},
                          .source = i});
        }
        row("exact", tr("Dry mix, kg"), mix.bagsKg, 1);
        row("cement", mix.perBag ? tr("Extra cement, kg") : tr("Cement, kg"),
            mix.perBag ? mix.extraCementKg : mix.cementKg, 1);
        row("sand", tr("Sand as it lies, kg"), mix.sandKg, 1);
        row("gravel", tr("Gravel as it lies, kg"), mix.gravelKg, 1);
        row("fume", tr("Silica fume, kg"), mix.silicaFumeKg, 2);
        row("plasticiser", tr("Plasticiser, kg"), mix.plasticiserKg, 2);
        row("pigment", tr("Pigment, kg"), mix.pigmentKg, 2);
        for (const auto& [kind, kg] : mix.fibresByKindKg) {
            mixes.append({.key = id + QStringLiteral("/fibre/") + idText(kind),
                          .cells = {tr("Fibres %1, kg").arg(idText(kind)), numberText(kg, 2)},
                          .source = i});
        }
        row("water", tr("Water from the tap, l"), mix.waterL, 1);
        row("ice", tr("of this as ice, kg"), mix.iceKg, 1);
        row("ratio", tr("Water-cement ratio"), mix.waterCement, 2);
        if (mix.kValue > 0.0) row("binder", tr("Water to cement and silica fume"), mix.waterBinder, 2);
        row("perbag", mix.byTrial ? tr("A bag gives (trial batch), l") : tr("A bag gives, l"), mix.litresPerBag, 2);
        row("batches", tr("Batches"), mix.batches, 0);
        row("perbatch", tr("Bags in a batch"), mix.bagsPerBatch, mix.bagsPerBatch < 1.0 ? 2 : 0);
        for (const auto& [casting, litres] : mix.castingLitres) {
            const auto placed = places.find(casting);
            if (placed == places.end()) continue;
            const Casting& one = *assessment.castings[placed->second].casting;
            castings.append(
                {.key = idText(casting),
                 .cells = {subjectName(&plan, casting), numberText(one.volumeL, 1), numberText(litres, 1)},
                 .source = placed->second});
        }
    }
    fillMixCards(plan, assessment);
    std::ranges::stable_sort(castings, {}, &Line::source);
    byMix_->lineModel().setLines(std::move(mixes));
    byCasting_->lineModel().setLines(std::move(castings));
}

void ConcreteCard::fillMixCards(const Plan& plan, const Assessment& assessment)
{
    Q_UNUSED(plan)
    QList<Line> limits;
    QList<Line> batches;
    for (int i = 0; i < static_cast<int>(assessment.mixes.size()); ++i) {
        const auto card = std::ranges::find(assessment.cards, assessment.mixes[i].mix, &MixingCard::mix);
        if (card == assessment.cards.end()) continue;
        const QString id = idText(card->mix);
        const Ratios& ratios = card->check.ratios;
        limits.append({.key = id + QLatin1Char('/'), .kind = Line::Kind::heading, .cells = {id}, .source = i});
        const auto ratio = [&](const char* key, const QString& name, double value) {
            limits.append({.key = id + QLatin1Char('/') + QLatin1String(key),
                           .cells = {name, numberText(value, 2), QString()},
                           .source = i});
        };
        ratio("ratio", card->extraWaterL > 0.0 ? tr("Water to cement, trial batch") : tr("Water to cement"),
              ratios.waterCement);
        if (ratios.kValue > 0.0) {
            ratio("binder", tr("the same, silica fume counted"), ratios.waterBinderK);
            ratio("plain", tr("the same, all silica fume as cement"), ratios.waterBinderPlain);
        }
        if (!card->perBag) ratio("total", tr("the same, water in the grains too"), ratios.totalWaterCement);
        for (int row = 0; row < static_cast<int>(card->check.limits.size()); ++row) {
            const LimitCheck& check = card->check.limits[static_cast<std::size_t>(row)];
            limits.append({.key = id + QStringLiteral("/limit/") + QString::number(row),
                           .cells = {limitName(check), limitText(check), metText(check.met)},
                           .source = i});
        }
        batches.append({.key = id + QLatin1Char('/'),
                        .kind = Line::Kind::heading,
                        .cells = {tr("%1: %2").arg(id, batchesText(*card))},
                        .source = i});
        if (card->batches().empty()) continue;
        const BatchCard& longest = *card->batches().front();
        for (std::size_t step = 0; step < longest.steps.size(); ++step) {
            const auto amount = [&](const BatchCard& batch) {
                return step < batch.steps.size() ? stepAmountText(batch.steps[step]) : QString();
            };
            const QString name = stepName(longest.steps[step], card->perBag);
            batches.append({.key = id + QStringLiteral("/step/") + QString::number(step),
                            .cells = {name, amount(card->full), amount(card->lastButOne), amount(card->odd)},
                            .source = i});
        }
        for (const QString& words : {sharedBatchesText(*card), waterText(*card)}) {
            if (words.isEmpty()) continue;
            batches.append({.key = id + QStringLiteral("/words/") + QString::number(batches.size()),
                            .cells = {words},
                            .tip = words});
        }
    }
    limits_->lineModel().setLines(std::move(limits));
    batches_->lineModel().setLines(std::move(batches));
}

QList<FigureValue> ConcreteCard::valuesOf(const QString& code, const MixQuantities& quantities, const Mix& mix,
                                          const QString& prefix)
{
    QList<FigureValue> values;
    const auto add = [&](const QString& name, const QString& value) { values.append({prefix + name, value}); };
    const double cementKg = quantities.cementKg;
    if (code == QLatin1String("concrete_volume")) {
        add(tr("castings"), volumeText(quantities.netL));
        add(tr("allowance"), percentText(mix.allowancePercent));
        add(tr("to mix"), volumeText(quantities.volumeL));
    } else if (code == QLatin1String("bags") || code == QLatin1String("litres_per_bag")) {
        if (quantities.byTrial) {
            add(tr("by the trial batch"), tr("%1 kg/m³").arg(numberText(quantities.freshDensityKgM3, 0)));
        } else if (quantities.perBag) {
            add(tr("yield of the bag alone"), tr("%1 l").arg(shortNumberText(bagYieldL(mix.bag))));
        }
        add(tr("a bag gives"), tr("%1 l").arg(numberText(quantities.litresPerBag, 2)));
        add(tr("exactly"), tr("%1 bags").arg(numberText(quantities.bagsExact, 2)));
        add(tr("whole bags"), QString::number(quantities.bags));
    } else if (code == QLatin1String("water_cement") || code == QLatin1String("water")) {
        add(tr("water from the tap"), volumeText(quantities.waterL));
        add(tr("water in the plasticiser"),
            measuredText(quantities.plasticiserKg * kPlasticiserWaterShare));
        if (quantities.perBag) {
            add(tr("cement in the bags"), massText(quantities.bagsExact * mix.bag.cementKg));
            add(tr("extra cement"), weighedText(quantities.extraCementKg));
        } else {
            add(tr("cement"), massText(quantities.cementKg));
            add(tr("sand and gravel, as they lie"), massText(quantities.sandKg + quantities.gravelKg));
        }
        add(tr("ratio"), numberText(quantities.waterCement, 3));
    } else if (code == QLatin1String("water_binder")) {
        add(tr("cement, all of it"), massText(cementKg));
        add(tr("silica fume"), weighedText(quantities.silicaFumeKg));
        add(tr("k"), shortNumberText(quantities.kValue));
        add(tr("ratio"), numberText(quantities.waterBinder, 3));
    } else if (code == QLatin1String("batches")) {
        add(tr("room in the drum"), volumeText(quantities.usableDrumL));
        add(tr("bags in a batch"), shortNumberText(quantities.bagsPerBatch));
        add(tr("batches"), QString::number(quantities.batches));
    } else if (code == QLatin1String("extra_cement")) {
        add(tr("dry mix"), massText(quantities.bagsKg));
        add(tr("share of the dry mix"), percentText(mix.extraCementPercent, 1));
        add(tr("extra cement"), weighedText(quantities.extraCementKg));
    } else if (code == QLatin1String("silica_fume")) {
        add(tr("cement, all of it"), massText(cementKg));
        add(tr("share of the cement"), percentText(mix.silicaFumePercent, 1));
        add(tr("silica fume"), weighedText(quantities.silicaFumeKg));
    } else if (code == QLatin1String("plasticiser")) {
        add(tr("cement, all of it"), massText(cementKg));
        add(tr("share of the cement"), percentText(mix.plasticiserPercent, 2));
        add(tr("plasticiser"), tr("%1 kg, %2 l").arg(numberText(quantities.plasticiserKg, 2),
                                                     numberText(quantities.plasticiserKg / kPlasticiserKgL, 2)));
    } else if (code == QLatin1String("pigment")) {
        add(tr("cement, all of it"), massText(cementKg));
        add(tr("share of the cement"), percentText(mix.pigmentPercent, 1));
        add(tr("pigment"), weighedText(quantities.pigmentKg));
    } else if (code == QLatin1String("yield_spread")) {
        add(quantities.byTrial ? tr("spread left by the trial batch") : tr("spread"),
            percentText(yieldSpreadPercent(mix, chargeOf(mix)), 1));
        add(tr("whole bags give"),
            tr("%1 to %2").arg(volumeText(quantities.litresLow), volumeText(quantities.litresHigh)));
        add(tr("to mix"), volumeText(quantities.volumeL));
        add(tr("spare bags"), QString::number(quantities.spareBags));
    } else if (code == QLatin1String("grains")) {
        add(tr("sand"), massText(quantities.sandKg));
        add(tr("gravel"), massText(quantities.gravelKg));
        add(tr("water from the tap"), volumeText(quantities.waterL));
    } else if (code == QLatin1String("fibres")) {
        add(tr("to mix"), volumeText(quantities.volumeL));
        for (const auto& [kind, kg] : quantities.fibresByKindKg) add(idText(kind), tr("%1 kg").arg(numberText(kg, 2)));
    }
    return values;
}

QList<FigureValue> ConcreteCard::valuesBehind(const QString& code, const Plan& plan, const Assessment& assessment) const
{
    QList<FigureValue> values;
    for (const MixQuantities& quantities : assessment.mixes) {
        const Mix* mix = findMix(plan, quantities.mix);
        if (!mix) continue;
        const bool several = assessment.mixes.size() > 1;
        values += valuesOf(code, quantities, *mix, several ? tr("%1: ").arg(idText(quantities.mix)) : QString());
    }
    return values;
}

LiveCard::LineNote ConcreteCard::noteOf(const LineView& view, const Line& line, const Plan& plan,
                                        const Assessment& assessment) const
{
    if (line.source < 0) return {};
    if (&view == byCasting_) {
        const Casting& casting = *assessment.castings[line.source].casting;
        const Mix* mix = findMix(plan, casting.mix);
        if (!mix) return {};
        return {QStringLiteral("concrete_volume"),
                {{tr("casting"), subjectName(&plan, casting.id)},
                 {tr("volume"), volumeText(casting.volumeL)},
                 {tr("allowance"), percentText(mix->allowancePercent)},
                 {tr("to mix"), volumeText(casting.volumeL * (1.0 + mix->allowancePercent / 100.0))}}};
    }
    const MixQuantities& quantities = assessment.mixes[line.source];
    const Mix* mix = findMix(plan, quantities.mix);
    const QString row = line.key.section(QLatin1Char('/'), 1, 1);
    if (row == QLatin1String("limit")) {
        return {QStringLiteral("mix_limit"),
                {{tr("limit"), line.cells.value(0)},
                 {tr("is"), line.cells.value(1)},
                 {tr("result"), line.cells.value(2)}}};
    }
    if (row == QLatin1String("step")) {
        return {QStringLiteral("mix_step"),
                {{tr("step"), line.cells.value(0)},
                 {tr("full batch"), line.cells.value(1)},
                 {tr("last batch"), line.cells.value(2)}}};
    }
    const QString code = codeOfRow(row);
    if (!mix || code.isEmpty()) return {};
    return {code, valuesOf(code, quantities, *mix, {})};
}

void ConcreteCard::visitSubjects(const LineView& view, const Line& line, const Assessment& assessment,
                                 const std::function<void(const std::string&)>& visit) const
{
    if (line.source < 0) return;
    if (&view != byCasting_) {
        visit(assessment.mixes[line.source].mix);
    } else {
        visit(assessment.castings[line.source].casting->id);
    }
}

}  // namespace yardcast::ui
