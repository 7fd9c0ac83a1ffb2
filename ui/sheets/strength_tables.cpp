#include "ui/sheets/strength_tables.h"

#include <algorithm>
#include <cmath>

#include "ui/drawing/strength_picture.h"
#include "ui/sheets/hold_pages.h"
#include "ui/sheets/sheet_words.h"
#include "ui/wording/figures.h"
#include "ui/wording/strength_names.h"

namespace yardcast::ui {

namespace {

const SectionForces* worstSection(const CaseResult& result)
{
    const auto worst = std::max_element(
        result.sections.begin(), result.sections.end(),
        [](const SectionForces& a, const SectionForces& b) { return a.usePercent < b.usePercent; });
    return worst == result.sections.end() ? nullptr : &*worst;
}

QString heldSentence(const CaseResult& result, bool isHandled)
{
    QStringList holds;
    QStringList lifted;
    for (const HeldAt& held : result.held) {
        if (held.under == "late corner") {
            // Not yet on its rest: that is the case.
            continue;
        }
        if (held.liftedOff) {
            lifted << heldText(held.under);
        } else {
            holds << Sheets::tr("%1: %2").arg(heldText(held.under), heldForceText(held.forceN));
        }
    }
    QStringList said;
    if (!holds.isEmpty()) said << Sheets::tr("Held by %1.").arg(holds.join(QStringLiteral(", ")));
    // What is handled rests on nothing that it could leave.
    if (!lifted.isEmpty() && !isHandled) {
        said << Sheets::tr("IT LIFTS OFF %1: nothing presses there.").arg(lifted.join(QStringLiteral(", ")));
    }
    return said.join(QLatin1Char(' '));
}

QString factorText(const CaseResult& result)
{
    QString text = QStringLiteral("\u00d7") + numberText(result.factor, 2);
    if (result.suctionKpa > 0.0) text += Sheets::tr(" and %1\u00a0kPa").arg(shortNumberText(result.suctionKpa));
    return text;
}

bool isHandledIn(StrengthCase which)
{
    return which != StrengthCase::ownWeight && which != StrengthCase::inPlace && which != StrengthCase::standing;
}

SheetRow rowOf(const CaseResult& result, const Part& part, const Casting& casting)
{
    SheetRow row;
    if (!result.holds) {
        row.cells = {strengthCaseName(result.which)};
        row.note = Sheets::tr("Nothing holds it in this case, or it tips: it must not be done like this.");
        return row;
    }
    row.cells = {strengthCaseName(result.which),       ageText(result.ageH),
                 factorText(result),                   numberText(result.strengthMpa, 2),
                 numberText(result.tensionTopMpa, 2),  numberText(result.tensionBottomMpa, 2),
                 numberText(result.deflectionMm, 2),   percentText(result.usePercent)};
    QStringList said{worstSentence(result, part)};
    if (result.personGoverns) {
        said << Sheets::tr("Worst with a person's load %1 from the left, %2 from the front.")
                    .arg(lengthText(std::round(result.personAt.x)), lengthText(std::round(result.personAt.y)));
    }
    said << edgeSentence(result, casting) << heldSentence(result, isHandledIn(result.which));
    said.removeAll(QString());
    row.note = said.join(QLatin1Char(' '));
    return row;
}

}  // namespace

QString worstSentence(const CaseResult& result, const Part& part)
{
    const bool upright = part.kind() != PartKind::counter;
    // Of an upright that has no parts of its own there is nothing to say.
    if (upright && result.place.kind == PlaceKind::body && result.sections.empty()) return {};
    QString text = upright ? Sheets::tr("Worst: %1.").arg(placeText(result.place, &part))
                           : Sheets::tr("Worst: %1, at the %2.")
                                 .arg(placeText(result.place, &part), sideText(result.onFace));
    if (const SectionForces* section = worstSection(result)) {
        text += Sheets::tr(" Worst section: %1, moment %2\u00a0Nm/m, force %3\u00a0N/mm, use %4.")
                    .arg(placeText(section->name, &part), numberText(section->meanMomentN, 0),
                         numberText(section->meanForceNMm, 2), percentText(section->usePercent));
    }
    return text;
}

SheetTable caseTable(const CastingStrength& strength, const Part& part, const Casting& casting)
{
    SheetTable table;
    const bool upright = part.kind() != PartKind::counter;
    table.columns = {{Sheets::tr("Case"), 50.0, false},
                     {Sheets::tr("Age"), 23.0, false},
                     {Sheets::tr("Own weight, suction"), 29.0, false},
                     {Sheets::tr("Strength MPa"), 17.0, true},
                     {upright ? Sheets::tr("Tension, one side") : Sheets::tr("Tension, face"), 18.0, true},
                     {upright ? Sheets::tr("other side") : Sheets::tr("underside"), 18.0, true},
                     {Sheets::tr("Sag mm"), 14.0, true},
                     {Sheets::tr("Use"), 14.0, true}};
    const CaseResult* worst = strength.worst();
    for (const CaseResult& result : strength.cases) {
        SheetRow row = rowOf(result, part, casting);
        row.bold = &result == worst;
        table.rows.push_back(std::move(row));
    }
    return table;
}

SheetTable sectionTable(const std::vector<SectionForces>& sections, const Part& part)
{
    SheetTable table;
    table.columns = {{QString(), 5.0, false},
                     {Sheets::tr("Section"), 36.0, false},
                     {Sheets::tr("Moment Nm/m"), 20.0, true},
                     {Sheets::tr("Force N/mm"), 15.0, true},
                     {Sheets::tr("Use"), 14.0, true}};
    for (std::size_t i = 0; i < sections.size(); ++i) {
        const SectionForces& section = sections[i];
        table.rows.push_back({{sectionLetter(i), placeText(section.name, &part), numberText(section.meanMomentN, 0),
                               numberText(section.meanForceNMm, 2), percentText(section.usePercent)},
                              {},
                              false});
    }
    return table;
}

QStringList strengthSentences(const CastingStrength& strength, const Part& part)
{
    QStringList said{
        Sheets::tr("Use: tension at the surface over the strength in bending that may be used at that age. From 100 % on,"
                   " count on a crack."),
        Sheets::tr("Moment: mean along the cut, in Nm for each metre of it (Nm/m), positive where the underside in use is in "
                   "tension. Force in N per mm, tension positive. Tension in MPa."),
        Sheets::tr("Only uncracked concrete is counted on: fibres are not counted, nor is steel."),
        part.kind() == PartKind::counter
            ? Sheets::tr("A slab as thin as this lies outside the code's scope: its formulas (EN 1992-1-1, 3.1.2 and 3.1.8)"
                         " are borrowed, and the result is a careful estimate, no structural design.")
            : Sheets::tr("Home-made pieces like these lie outside the code's scope: its formulas (EN 1992-1-1, 3.1.2 and "
                         "3.1.8) are borrowed, and the result is a careful estimate, no structural design."),
        Sheets::tr("The strength holds for a cured casting at the temperature of the plan; colder or dried out, wait "
                   "longer.")};
    if (strength.gripsProposed) {
        said << Sheets::tr("The plan sets no grips: those drawn are proposed, where the slab suffers least.");
    }
    return said;
}

QString strengthLegend(const CaseResult& result, bool hasSections)
{
    const auto isHand = [](const HeldAt& held) { return held.under.starts_with("hand "); };
    const bool hands = std::any_of(result.held.begin(), result.held.end(), isHand);
    const bool others = !std::all_of(result.held.begin(), result.held.end(), isHand);
    QStringList said{Sheets::tr("Lines of equal use in percent, wide at 100, hatched above.")};
    if (others) said << Sheets::tr("Dashed: what it rests on.");
    if (hands) said << Sheets::tr("Numbered circles: hands.");
    if (result.edge >= 0) {
        said << (result.which == StrengthCase::tilt ? Sheets::tr("Heavy line: the edge it turns about.")
                                                    : Sheets::tr("Heavy line: the edge it stands on."));
    }
    said << Sheets::tr("Ring with cross: the worst place.");
    if (hasSections) said << Sheets::tr("Letters: sections of the table.");
    said << Sheets::tr("Black dot: front left corner.");
    if (!result.faceUp) said << Sheets::tr("In this case it lies face down; it is drawn as it stands.");
    return said.join(QLatin1Char(' '));
}

}  // namespace yardcast::ui
