#include "ui/panels/reinforcement_card.h"

#include <algorithm>
#include <map>
#include <set>

#include <QLabel>

#include "core/materials/materials.h"
#include "ui/panels/counted.h"
#include "ui/panels/line_view.h"
#include "ui/wording/figures.h"
#include "ui/wording/names.h"
#include "ui/wording/steel_names.h"
#include "ui/wording/strength_names.h"

namespace yardcast::ui {

namespace {

double barMetres(const SteelSchedule& steel)
{
    double metres = 0.0;
    for (const DiameterTotal& total : steel.barTotals) metres += total.lengthM;
    return metres;
}

bool isCounter(const Plan& plan, const std::string& id)
{
    const Part* part = findPart(plan, id);
    return part && part->kind() == PartKind::counter;
}

int breaksWithoutWarning(const Assessment& assessment)
{
    int count = 0;
    for (const CastingStrengthPtr& strength : assessment.strength) {
        if (!strength) continue;
        count += static_cast<int>(std::ranges::count_if(
            strength->steel, [](const SteelCheck& check) { return check.breaksWithoutWarning && steelIsWeak(check); }));
    }
    return count;
}

int castingsWithoutSteel(const Assessment& assessment)
{
    int count = 0;
    for (const PlacedCasting& placed : assessment.castings) count += placed.casting->steel.empty() ? 1 : 0;
    return count;
}

bool hasLaps(const SteelSchedule& steel)
{
    const auto lapped = [](const MeshLayout& mesh) { return mesh.pieces.size() > 1; };
    return std::ranges::any_of(steel.layouts, [&](const CastingSteelLayoutPtr& layout) {
        return std::ranges::any_of(layout->meshes, lapped);
    });
}

}  // namespace

ReinforcementCard::ReinforcementCard(PlanDocument& document, Selection& selection, LiveAssessment& live,
                                     QWidget* parent)
    : LiveCard(QStringLiteral("reinforcementCard"), document, selection, live, parent)
{
    setEmptyText(tr("No mesh and no bars yet. Choose a counter and give it steel in its properties."));
    byDiameter_ = addTable(tr("Diameters"), {{tr("Bars"), false}, {tr("m"), true}, {tr("kg"), true}});
    bars_ = addTable(tr("Bars"), {{tr("Bar"), false},
                                  {tr("Ø\nmm"), true},
                                  {tr("count"), true},
                                  {tr("cut to\nmm"), true},
                                  {tr("base\nmm"), true}});
    meshes_ = addTable(tr("Mesh"), {{tr("Piece"), false},
                                    {tr("cut to\nmm"), true},
                                    {tr("count"), true},
                                    {tr("base\nmm"), true}});
    worth_ = addTable(tr("Worth"), {{tr("Section"), false},
                                    {tr("asked\nN"), true},
                                    {tr("cracks\nN"), true},
                                    {tr("steel\nN"), true},
                                    {tr("plain\nN"), true}});
    auto* about = new QLabel(tr("Base: above the mould base. Worth: moment once cracked, with its steel and plain (N is "
                                "Nmm per mm). Fibres are not counted."),
                             this);
    about->setWordWrap(true);
    about->setObjectName(QStringLiteral("steelAbout"));
    addFootnote(about);
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
        const QString area = areaText(steel.meshAreaM2);
        summary.lines.append({.code = QStringLiteral("mesh_area"),
                              .text = hasLaps(steel) ? tr("Mesh %1, laps in it").arg(area) : tr("Mesh %1").arg(area)});
    }
    if (!steel.barTotals.empty()) {
        std::map<double, double> metres;
        for (const DiameterTotal& total : steel.barTotals) metres[total.diameterMm] += total.lengthM;
        QStringList diameters;
        for (const auto& [diameterMm, lengthM] : metres) {
            diameters.append(tr("%1 mm: %2").arg(shortNumberText(diameterMm), metresText(lengthM)));
        }
        summary.lines.append(
            {.code = QStringLiteral("bar_length"), .text = tr("Bars %1").arg(diameters.join(tr(", ")))});
    }
    const int brittle = breaksWithoutWarning(assessment);
    const int without = castingsWithoutSteel(assessment);
    if (brittle > 0) {
        summary.lines.append({.text = counted(brittle, tr("1 section breaks without warning"),
                                              tr("%1 sections break without warning")),
                              .mark = Severity::caution});
    } else if (without > 0) {
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
        totals.append({.key = QStringLiteral("%1/%2").arg(diameter).arg(static_cast<int>(total.material)),
                       .cells = {tr("%1 mm").arg(diameter), numberText(total.lengthM, 1), numberText(total.massKg, 1)},
                       .details = {steelMaterialName(total.material)},
                       .source = static_cast<int>(totals.size())});
        kg += total.massKg;
    }
    if (!totals.isEmpty()) {
        totals.append({.key = QStringLiteral("total"),
                       .kind = Line::Kind::total,
                       .cells = {tr("All bars"), numberText(barMetres(steel), 1), numberText(kg, 1)}});
    }
    byDiameter_->lineModel().setLines(std::move(totals));
    bars_->lineModel().setLines(barLines(plan, assessment));
    meshes_->lineModel().setLines(meshLines(plan, assessment));
    worth_->lineModel().setLines(checkLines(plan, assessment));
}

std::vector<ReinforcementCard::BarRow> ReinforcementCard::barRows(const Assessment& assessment)
{
    std::vector<BarRow> rows;
    for (const CastingSteelLayoutPtr& layout : assessment.steel.layouts) {
        for (std::size_t i = 0; i < layout->barList.size(); ++i) rows.push_back({layout, i});
    }
    return rows;
}

std::vector<ReinforcementCard::PieceRow> ReinforcementCard::pieceRows(const Assessment& assessment)
{
    std::vector<PieceRow> rows;
    for (const CastingSteelLayoutPtr& layout : assessment.steel.layouts) {
        for (std::size_t m = 0; m < layout->meshes.size(); ++m) {
            const std::vector<MeshPiece>& pieces = layout->meshes[m].pieces;
            const std::size_t first = rows.size();
            for (std::size_t i = 0; i < pieces.size(); ++i) {
                const auto alike = std::find_if(rows.begin() + static_cast<std::ptrdiff_t>(first), rows.end(),
                                                [&](const PieceRow& row) { return pieces[row.piece].mark == pieces[i].mark; });
                if (alike != rows.end()) {
                    ++alike->count;
                } else {
                    rows.push_back({layout, m, i, 1});
                }
            }
        }
    }
    return rows;
}

std::vector<ReinforcementCard::CheckRow> ReinforcementCard::checkRows(const Assessment& assessment)
{
    std::vector<CheckRow> rows;
    for (const CastingStrengthPtr& strength : assessment.strength) {
        if (!strength) continue;
        for (std::size_t i = 0; i < strength->steel.size(); ++i) rows.push_back({strength, i});
    }
    return rows;
}

QList<Line> ReinforcementCard::barLines(const Plan& plan, const Assessment& assessment) const
{
    QList<Line> lines;
    for (const BarRow& one : barRows(assessment)) {
        const BarListRow& bar = one.layout->barList[one.row];
        const SteelHeight* height = heightOfBar(*one.layout, bar.mark);
        const bool counter = isCounter(plan, one.layout->part);
        QStringList details{barShapeText(bar.shapeCode)};
        if (height) details << steelSideText(height->side, counter);
        if (bar.material != SteelMaterial::steel) details << steelMaterialName(bar.material);
        if (bar.suggested) details << tr("proposed, not in the plan");
        lines.append({.key = QStringLiteral("%1/%2").arg(QString::fromStdString(one.layout->casting)).arg(bar.mark),
                      .cells = {tr("%1, %2", "casting, mark").arg(QString::fromStdString(one.layout->casting),
                                                                   barMark(bar.mark)),
                                shortNumberText(bar.diameterMm), QString::number(bar.count),
                                shortNumberText(bar.cutLengthMm), height ? shortNumberText(height->distanceMm, 1) : QString()},
                      .details = details,
                      .tip = subjectName(&plan, one.layout->casting),
                      .source = static_cast<int>(lines.size())});
    }
    return lines;
}

QList<Line> ReinforcementCard::meshLines(const Plan& plan, const Assessment& assessment) const
{
    QList<Line> lines;
    for (const PieceRow& one : pieceRows(assessment)) {
        const MeshLayout& mesh = one.layout->meshes[one.mesh];
        const MeshPiece& piece = mesh.pieces[one.piece];
        QStringList details{tr("Ø%1 at %2").arg(shortNumberText(mesh.barMm), shortNumberText(mesh.pitchMm)),
                            steelMaterialName(mesh.material),
                            steelSideText(mesh.height.side, isCounter(plan, one.layout->part))};
        if (mesh.pieces.size() > 1) details << tr("laps %1").arg(lengthText(mesh.lapMm));
        if (!piece.notches.empty()) details << tr("with cut-outs");
        lines.append({.key = QStringLiteral("%1/%2/%3")
                                 .arg(QString::fromStdString(one.layout->casting))
                                 .arg(one.mesh)
                                 .arg(piece.mark),
                      .cells = {tr("%1, %2", "casting, mark").arg(QString::fromStdString(one.layout->casting),
                                                                   meshMark(piece.mark)),
                                tr("%1 × %2").arg(numberText(piece.at.width(), 0), numberText(piece.at.height(), 0)),
                                QString::number(one.count), shortNumberText(mesh.height.distanceMm, 1)},
                      .details = details,
                      .tip = subjectName(&plan, one.layout->casting),
                      .source = static_cast<int>(lines.size())});
    }
    return lines;
}

QList<Line> ReinforcementCard::checkLines(const Plan& plan, const Assessment& assessment) const
{
    QList<Line> lines;
    int source = -1;
    for (const CheckRow& one : checkRows(assessment)) {
        ++source;
        const SteelCheck& check = one.strength->steel[one.check];
        const Part* part = findPart(plan, one.strength->part);
        QStringList details{strengthCaseName(check.which), tr("needed at the %1").arg(sideText(check.tensionAtFace))};
        if (check.breaksWithoutWarning) details << tr("breaks without warning");
        if (!steelMatters(check)) continue;
        lines.append({.key = QStringLiteral("%1/%2").arg(QString::fromStdString(one.strength->casting)).arg(one.check),
                      .cells = {tr("%1, %2", "casting, section").arg(QString::fromStdString(one.strength->casting),
                                                                      placeText(check.name, part)),
                                numberText(check.designMomentN, 0), numberText(check.crackingMomentN, 0),
                                numberText(check.resistanceN, 0), numberText(check.resistancePlainN, 0)},
                      .details = details,
                      .tip = steelCheckText(check),
                      .mark = steelIsWeak(check) ? std::optional(Severity::caution) : std::nullopt,
                      .source = source});
    }
    return lines;
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
    const auto index = static_cast<std::size_t>(line.source);
    if (&view == meshes_) {
        const PieceRow row = pieceRows(assessment)[index];
        const MeshLayout& mesh = row.layout->meshes[row.mesh];
        return {QStringLiteral("mesh_area"),
                {{tr("Casting"), subjectName(&plan, row.layout->casting)},
                 {tr("It lies"), heightText(mesh.height, row.layout->datum)},
                 {tr("Spacers"), lengthText(mesh.height.spacerMm)},
                 {tr("Concrete at the face"), lengthText(mesh.height.coverFaceMm)},
                 {tr("Concrete behind"), lengthText(mesh.height.coverBackMm)},
                 {tr("Cut from"), tr("%1 × %2").arg(mesh.sheets).arg(sizeText(mesh.sheet.width, mesh.sheet.depth))},
                 {tr("Lap"), lengthText(mesh.lapMm)}}};
    }
    if (&view == bars_) {
        const BarRow row = barRows(assessment)[index];
        const BarListRow& bar = row.layout->barList[row.row];
        LineNote note{QStringLiteral("bar_cut"),
                      {{tr("Casting"), subjectName(&plan, row.layout->casting)},
                       {tr("Room between covers"), lengthText(bar.lengthMm)},
                       {tr("Cut to"), lengthText(bar.cutLengthMm)},
                       {tr("On a schedule"), lengthText(bar.scheduledLengthMm)},
                       {tr("Mass"), tr("%1 kg").arg(numberText(bar.massKg, 2))}}};
        if (const SteelHeight* height = heightOfBar(*row.layout, bar.mark)) {
            note.values.append({tr("It lies"), heightText(*height, row.layout->datum)});
            note.values.append({tr("Spacers"), lengthText(height->spacerMm)});
        }
        return note;
    }
    if (&view == worth_) {
        const CheckRow row = checkRows(assessment)[index];
        const SteelCheck& check = row.strength->steel[row.check];
        const auto moment = [](double newton) { return tr("%1 N").arg(numberText(newton, 0)); };
        return {QStringLiteral("steel_worth"),
                {{tr("Casting"), subjectName(&plan, row.strength->casting)},
                 {tr("Asked, with safety"), moment(check.designMomentN)},
                 {tr("Cracks at"), moment(check.crackingMomentN)},
                 {tr("With its steel"), moment(check.resistanceN)},
                 {tr("Plain"), moment(check.resistancePlainN)},
                 {tr("The same steel best placed"), moment(check.resistanceBestN)},
                 {tr("Steel"), tr("%1 mm² a metre").arg(numberText(check.steelAreaMm2M, 0))},
                 {tr("Effective depth"), lengthText(check.effectiveDepthMm)},
                 {tr("In words"), steelCheckText(check)}}};
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
    const auto index = static_cast<std::size_t>(line.source);
    if (&view == bars_) {
        visit(barRows(assessment)[index].layout->casting);
    } else if (&view == meshes_) {
        visit(pieceRows(assessment)[index].layout->casting);
    } else if (&view == worth_) {
        visit(checkRows(assessment)[index].strength->casting);
    } else {
        for (const BarNeed& bar : steel.bars) {
            const DiameterTotal& total = steel.barTotals[line.source];
            if (bar.diameterMm == total.diameterMm && bar.material == total.material) visit(bar.casting);
        }
    }
}

}  // namespace yardcast::ui
