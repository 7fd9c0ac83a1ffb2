#include "ui/panels/reinforcement_card.h"

#include <set>

#include "core/materials/materials.h"
#include "ui/panels/counted.h"
#include "ui/panels/line_view.h"
#include "ui/wording/figures.h"
#include "ui/wording/names.h"

namespace yardcast::ui {

namespace {

double barMetres(const SteelSchedule& steel)
{
    double metres = 0.0;
    for (const DiameterTotal& total : steel.barTotals) metres += total.lengthM;
    return metres;
}

int castingsWithoutSteel(const Assessment& assessment)
{
    int count = 0;
    for (const PlacedCasting& placed : assessment.castings) count += placed.casting->steel.empty() ? 1 : 0;
    return count;
}

}  // namespace

ReinforcementCard::ReinforcementCard(PlanDocument& document, Selection& selection, LiveAssessment& live,
                                     QWidget* parent)
    : LiveCard(QStringLiteral("reinforcementCard"), document, selection, live, parent)
{
    setEmptyText(tr("No mesh and no bars yet. Choose a counter and give it steel in its properties."));
    byDiameter_ = addTable(tr("Diameters"), {{tr("Bars"), false}, {tr("m"), true}, {tr("kg"), true}});
    bars_ = addTable(tr("Bars"), {{tr("Casting"), false},
                                  {tr("Ø\nmm"), true},
                                  {tr("count"), true},
                                  {tr("length\nmm"), true},
                                  {tr("kg"), true}});
    meshes_ = addTable(tr("Mesh"), {{tr("Casting"), false},
                                    {tr("bar\nmm"), true},
                                    {tr("pitch\nmm"), true},
                                    {tr("net\nm²"), true},
                                    {tr("laps\nm²"), true}});
}

CardSummary ReinforcementCard::summarise(const Plan&, const Assessment& assessment) const
{
    const SteelSchedule& steel = assessment.steel;
    CardSummary summary;
    summary.empty = steel.meshes.empty() && steel.bars.empty();
    if (summary.empty) return summary;
    summary.big = {.code = QStringLiteral("steel_mass"),
                   .text = numberText(steel.massKg, steel.massKg < 100 ? 1 : 0),
                   .unit = tr("kg of steel")};
    if (!steel.meshes.empty()) {
        summary.lines.append(
            {.code = QStringLiteral("mesh_area"), .text = tr("Mesh %1, laps in it").arg(areaText(steel.meshAreaM2))});
    }
    if (!steel.barTotals.empty()) {
        QStringList diameters;
        for (const DiameterTotal& total : steel.barTotals) {
            diameters.append(tr("%1 mm: %2").arg(shortNumberText(total.diameterMm), metresText(total.lengthM)));
        }
        summary.lines.append(
            {.code = QStringLiteral("bar_length"), .text = tr("Bars %1").arg(diameters.join(tr(", ")))});
    }
    const int without = castingsWithoutSteel(assessment);
    if (without > 0) {
        summary.lines.append(
            {.text = counted(without, tr("1 casting without steel"), tr("%1 castings without steel"))});
    }
    return summary;
}

void ReinforcementCard::fillTables(const Plan& plan, const Assessment& assessment)
{
    const SteelSchedule& steel = assessment.steel;
    QList<Line> totals;
    double kg = 0.0;
    for (const DiameterTotal& total : steel.barTotals) {
        const QString diameter = shortNumberText(total.diameterMm);
        totals.append({.key = diameter,
                       .cells = {tr("%1 mm").arg(diameter), numberText(total.lengthM, 1), numberText(total.massKg, 1)},
                       .source = static_cast<int>(totals.size())});
        kg += total.massKg;
    }
    if (!totals.isEmpty()) {
        totals.append({.key = QStringLiteral("total"),
                       .kind = Line::Kind::total,
                       .cells = {tr("All bars"), numberText(barMetres(steel), 1), numberText(kg, 1)}});
    }
    QList<Line> bars;
    for (int i = 0; i < static_cast<int>(steel.bars.size()); ++i) {
        const BarNeed& bar = steel.bars[i];
        bars.append({.key = QStringLiteral("%1/%2").arg(QString::fromStdString(bar.casting)).arg(i),
                     .cells = {subjectName(&plan, bar.casting), shortNumberText(bar.diameterMm),
                               QString::number(bar.count), numberText(bar.lengthMm, 0), numberText(bar.massKg, 2)},
                     .source = i});
    }
    QList<Line> meshes;
    for (int i = 0; i < static_cast<int>(steel.meshes.size()); ++i) {
        const MeshNeed& mesh = steel.meshes[i];
        meshes.append(
            {.key = QStringLiteral("%1/%2").arg(QString::fromStdString(mesh.casting)).arg(i),
             .cells = {subjectName(&plan, mesh.casting), shortNumberText(mesh.barMm), shortNumberText(mesh.pitchMm),
                       numberText(mesh.netAreaM2, 2), numberText(mesh.withLapsM2, 2)},
             .source = i});
    }
    if (!meshes.isEmpty()) {
        double net = 0.0;
        for (const MeshNeed& mesh : steel.meshes) net += mesh.netAreaM2;
        meshes.append({.key = QStringLiteral("total"),
                       .kind = Line::Kind::total,
                       .cells = {tr("All mesh"), {}, {}, numberText(net, 2), numberText(steel.meshAreaM2, 2)}});
    }
    byDiameter_->lineModel().setLines(std::move(totals));
    bars_->lineModel().setLines(std::move(bars));
    meshes_->lineModel().setLines(std::move(meshes));
}

QList<FigureValue> ReinforcementCard::valuesBehind(const QString& code, const Plan&, const Assessment& assessment) const
{
    const SteelSchedule& steel = assessment.steel;
    QList<FigureValue> values;
    double meshKg = 0.0;
    double netM2 = 0.0;
    for (const MeshNeed& mesh : steel.meshes) {
        meshKg += mesh.massKg;
        netM2 += mesh.netAreaM2;
    }
    if (code == QLatin1String("mesh_area")) {
        values.append({tr("Within the cover"), areaText(netM2)});
        values.append({tr("With laps"), areaText(steel.meshAreaM2)});
        return values;
    }
    for (const DiameterTotal& total : steel.barTotals) {
        const QString name = tr("Bars of %1 mm").arg(shortNumberText(total.diameterMm));
        if (code == QLatin1String("bar_length")) {
            values.append({name, metresText(total.lengthM)});
        } else {
            values.append({name, tr("%1 × %2 kg/m = %3")
                                     .arg(metresText(total.lengthM), numberText(barMassKgM(total.diameterMm), 3),
                                          massText(total.massKg))});
        }
    }
    if (code == QLatin1String("steel_mass") && !steel.meshes.empty()) {
        values.append({tr("Mesh %1").arg(areaText(netM2)), massText(meshKg)});
    }
    return values;
}

LiveCard::LineNote ReinforcementCard::noteOf(const LineView& view, const Line& line, const Plan& plan,
                                             const Assessment& assessment) const
{
    if (line.source < 0) return {};
    const SteelSchedule& steel = assessment.steel;
    if (&view == meshes_) {
        const MeshNeed& mesh = steel.meshes[line.source];
        return {QStringLiteral("mesh_area"),
                {{tr("Casting"), subjectName(&plan, mesh.casting)},
                 {tr("Within the cover"), areaText(mesh.netAreaM2)},
                 {tr("With laps"), areaText(mesh.withLapsM2)},
                 {tr("Mass"), tr("%1 kg").arg(numberText(mesh.massKg, 2))}}};
    }
    if (&view == bars_) {
        const BarNeed& bar = steel.bars[line.source];
        return {QStringLiteral("steel_mass"),
                {{tr("Casting"), subjectName(&plan, bar.casting)},
                 {tr("Length"), tr("%1 × %2").arg(bar.count).arg(lengthText(bar.lengthMm))},
                 {tr("Mass a metre"), tr("%1 kg/m").arg(numberText(barMassKgM(bar.diameterMm), 3))},
                 {tr("Mass"), tr("%1 kg").arg(numberText(bar.massKg, 2))}}};
    }
    const DiameterTotal& total = steel.barTotals[line.source];
    return {QStringLiteral("bar_length"),
            {{tr("Length"), metresText(total.lengthM)},
             {tr("Mass a metre"), tr("%1 kg/m").arg(numberText(barMassKgM(total.diameterMm), 3))},
             {tr("Mass"), massText(total.massKg)}}};
}

void ReinforcementCard::visitSubjects(const LineView& view, const Line& line, const Assessment& assessment,
                                      const std::function<void(const std::string&)>& visit) const
{
    if (line.source < 0) return;
    const SteelSchedule& steel = assessment.steel;
    if (&view == bars_) {
        visit(steel.bars[line.source].casting);
    } else if (&view == meshes_) {
        visit(steel.meshes[line.source].casting);
    } else {
        for (const BarNeed& bar : steel.bars) {
            if (bar.diameterMm == steel.barTotals[line.source].diameterMm) visit(bar.casting);
        }
    }
}

}  // namespace yardcast::ui
