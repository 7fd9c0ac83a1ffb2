#include "ui/panels/concrete_card.h"

#include <algorithm>

#include "core/materials/materials.h"
#include "ui/panels/counted.h"
#include "ui/panels/line_view.h"
#include "ui/wording/figures.h"
#include "ui/wording/names.h"

namespace yardcast::ui {

namespace {

struct Totals {
    double litres = 0.0;
    int bags = 0;
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
        totals.bags += mix.bags;
        totals.batches += mix.batches;
        if (!totals.wettest || shareOfLimit(plan, mix) > shareOfLimit(plan, *totals.wettest)) totals.wettest = &mix;
    }
    return totals;
}

/// The one size of all bags, or nothing.
std::optional<double> commonBagKg(const Plan& plan, const Assessment& assessment)
{
    std::optional<double> size;
    for (const MixQuantities& quantities : assessment.mixes) {
        const Mix* mix = findMix(plan, quantities.mix);
        if (!mix || (size && *size != mix->bag.massKg)) return std::nullopt;
        size = mix->bag.massKg;
    }
    return size;
}

QString idText(const std::string& id) { return QString::fromStdString(id); }

}  // namespace

ConcreteCard::ConcreteCard(PlanDocument& document, Selection& selection, LiveAssessment& live, QWidget* parent)
    : LiveCard(QStringLiteral("concreteCard"), document, selection, live, parent)
{
    setEmptyText(tr("Nothing to cast yet. Drag a counter onto the sheet, or press C."));
    byMix_ = addTable(tr("By mix"), {{tr("Mix"), false}, {tr("Amount"), true}});
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
    const std::optional<double> bagKg = commonBagKg(plan, assessment);
    const QString count = counted(totals.bags, tr("1 bag"), tr("%1 bags"));
    const QString bags =
        bagKg ? tr("%1 of %2 kg").arg(count, shortNumberText(*bagKg)) : tr("%1 of several sizes").arg(count);
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
        summary.lines.append({.code = QStringLiteral("batches"),
                              .text = tr("%1 in a drum of %2")
                                          .arg(counted(totals.batches, tr("1 batch"), tr("%1 batches")),
                                               volumeText(plan.mixer->drumL))});
    } else {
        summary.lines.append({.text = tr("No mixer in the plan, so batches are not counted.")});
    }
    return summary;
}

void ConcreteCard::fillTables(const Plan& plan, const Assessment& assessment)
{
    QList<Line> mixes;
    QList<Line> castings;
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
        row("bags", tr("Dry mix, whole bags"), mix.bags, 0);
        row("exact", tr("Dry mix, kg"), mix.bagsKg, 1);
        row("cement", tr("Extra cement, kg"), mix.extraCementKg, 1);
        row("fume", tr("Silica fume, kg"), mix.silicaFumeKg, 2);
        row("plasticiser", tr("Plasticiser, kg"), mix.plasticiserKg, 2);
        for (const auto& [kind, kg] : mix.fibresByKindKg) {
            mixes.append({.key = id + QStringLiteral("/fibre/") + idText(kind),
                          .cells = {tr("Fibres %1, kg").arg(idText(kind)), numberText(kg, 2)},
                          .source = i});
        }
        row("water", tr("Water to add, l"), mix.waterL, 1);
        row("ratio", tr("Water-cement ratio"), mix.waterCement, 2);
        if (mix.kValue > 0.0) row("binder", tr("Water to cement and silica fume"), mix.waterBinder, 2);
        row("perbag", tr("A bag gives, l"), mix.litresPerBag, 2);
        row("batches", tr("Batches"), mix.batches, 0);
        row("perbatch", tr("Bags in a batch"), mix.bagsPerBatch, mix.bagsPerBatch < 1.0 ? 2 : 0);
        for (const auto& [casting, litres] : mix.castingLitres) {
            const auto placed = std::ranges::find_if(assessment.castings, [&](const PlacedCasting& p) {
                return p.casting->id == casting;
            });
            if (placed == assessment.castings.end()) continue;
            castings.append(
                {.key = idText(casting),
                 .cells = {subjectName(&plan, casting), numberText(placed->casting->volumeL, 1), numberText(litres, 1)},
                 .source = static_cast<int>(placed - assessment.castings.begin())});
        }
    }
    std::ranges::stable_sort(castings, {}, &Line::source);
    byMix_->lineModel().setLines(std::move(mixes));
    byCasting_->lineModel().setLines(std::move(castings));
}

QList<FigureValue> ConcreteCard::valuesBehind(const QString& code, const Plan& plan, const Assessment& assessment) const
{
    QList<FigureValue> values;
    for (const MixQuantities& quantities : assessment.mixes) {
        const Mix* mix = findMix(plan, quantities.mix);
        if (!mix) continue;
        const QString id = idText(quantities.mix);
        if (code == QLatin1String("concrete_volume")) {
            values.append({tr("%1: castings").arg(id), volumeText(quantities.netL)});
            values.append({tr("%1: allowance").arg(id), percentText(mix->allowancePercent)});
            values.append({tr("%1: to mix").arg(id), volumeText(quantities.volumeL)});
        } else if (code == QLatin1String("bags")) {
            values.append({tr("%1: a bag gives").arg(id), tr("%1 l").arg(numberText(quantities.litresPerBag, 2))});
            values.append({tr("%1: exactly").arg(id), tr("%1 bags").arg(numberText(quantities.bagsExact, 2))});
            values.append({tr("%1: whole bags").arg(id), QString::number(quantities.bags)});
        } else if (code == QLatin1String("water_cement")) {
            const double inPlasticiser = quantities.plasticiserKg * kPlasticiserWaterShare;
            values.append({tr("%1: water added").arg(id), volumeText(quantities.waterL)});
            values.append({tr("%1: water in the plasticiser").arg(id), tr("%1 l").arg(numberText(inPlasticiser, 2))});
            values.append({tr("%1: cement in the bags").arg(id), massText(quantities.bagsExact * mix->bag.cementKg)});
            values.append({tr("%1: extra cement").arg(id), massText(quantities.extraCementKg)});
            values.append({tr("%1: ratio").arg(id), numberText(quantities.waterCement, 3)});
        } else if (code == QLatin1String("batches")) {
            values.append({tr("%1: room in the drum").arg(id), volumeText(quantities.usableDrumL)});
            values.append({tr("%1: bags in a batch").arg(id), shortNumberText(quantities.bagsPerBatch)});
            values.append({tr("%1: batches").arg(id), QString::number(quantities.batches)});
        }
    }
    return values;
}

void ConcreteCard::visitSubjects(const LineView& view, const Line& line, const Assessment& assessment,
                                 const std::function<void(const std::string&)>& visit) const
{
    if (line.source < 0) return;
    if (&view == byMix_) {
        visit(assessment.mixes[line.source].mix);
    } else {
        visit(assessment.castings[line.source].casting->id);
    }
}

}  // namespace yardcast::ui
