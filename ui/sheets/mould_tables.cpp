#include "ui/sheets/mould_tables.h"

#include <algorithm>
#include <cmath>

#include "core/materials/boards.h"
#include "core/materials/gravity.h"
#include "core/materials/holding.h"
#include "core/mould/mould_parts.h"
#include "ui/drawing/mould_section.h"
#include "ui/sheets/sheet_words.h"
#include "ui/wording/figures.h"
#include "ui/wording/mould_names.h"
#include "ui/wording/mould_steps.h"
#include "ui/wording/names.h"

namespace yardcast::ui {

namespace {

/// An empty box to tick.
QString tickBox() { return QString(QChar(0x25A1)); }

QString wholeMm(double mm) { return shortNumberText(mm, 1); }

bool hasFoam(const Mould& mould)
{
    return std::any_of(mould.parts.begin(), mould.parts.end(), isFoamInside);
}

}  // namespace

SheetTable mouldPartTable(const Mould& mould)
{
    SheetTable table;
    table.columns = {{Sheets::tr("No."), 16.0, false},          {Sheets::tr("Part"), 52.0, false},
                     {Sheets::tr("Of"), 22.0, false},           {Sheets::tr("Long mm"), 20.0, true},
                     {Sheets::tr("Wide mm"), 20.0, true},       {Sheets::tr("Thick mm"), 18.0, true},
                     {Sheets::tr("Count"), 14.0, true},         {Sheets::tr("From base mm"), 24.0, true}};
    for (const MouldPart& part : mould.parts) {
        SheetRow row;
        QString name = mouldPartText(part);
        const QString mitres = mitreText(part.mitreDeg);
        if (!mitres.isEmpty()) {
            name = Sheets::tr("%1, %2", "part of a mould, its mitres").arg(name, mitres);
        } else if (part.shaped) {
            name = Sheets::tr("%1, trimmed to the template").arg(name);
        }
        if (part.bent) name = Sheets::tr("%1, bent").arg(name);
        if (part.goodFace) {
            name = part.kind == MouldPartKind::base ? Sheets::tr("%1, good face up").arg(name)
                                                    : Sheets::tr("%1, good face in").arg(name);
        }
        row.cells = {QString::fromStdString(part.name), name, mouldStuffName(part.stuff), wholeMm(part.lengthMm),
                     wholeMm(part.widthMm), wholeMm(part.thicknessMm), QString::number(part.count),
                     Sheets::tr("%1 to %2").arg(wholeMm(part.fromMm), wholeMm(part.toMm))};
        table.rows.push_back(std::move(row));
    }
    return table;
}

SheetTable mouldStepTable(const MouldSubject& subject)
{
    SheetTable table;
    table.columns = {{tickBox(), 8.0, false},
                     {Sheets::tr("Step"), 12.0, true},
                     {Sheets::tr("No."), 30.0, false},
                     {Sheets::tr("What to do"), 130.0, false}};
    const bool hasSteel = subject.steel && !(subject.steel->meshes.empty() && subject.steel->bars.empty());
    int number = 0;
    for (const MouldStep& step : mouldSteps(*subject.mould, hasSteel)) {
        table.rows.push_back({{tickBox(), QString::number(++number), step.numbers, step.text}, {}, false});
    }
    return table;
}

SheetTable mouldCutoutTable(const MouldSubject& subject)
{
    SheetTable table;
    const auto* counter = std::get_if<Counter>(&subject.part->body);
    if (!counter) return table;
    table.columns = {{Sheets::tr("Cutout"), 42.0, false},     {Sheets::tr("Size mm"), 34.0, true},
                     {Sheets::tr("From left mm"), 27.0, true}, {Sheets::tr("From right mm"), 27.0, true},
                     {Sheets::tr("From front mm"), 27.0, true}, {Sheets::tr("From back mm"), 27.0, true}};
    for (const Cutout& cutout : counter->cutouts) {
        const std::optional<Box> own = boundsOf(cutoutRing(cutout));
        if (!own || contains(subject.casting->outline, cutout.centre)) continue;
        const Point a = ownToMould(subject, own->low);
        const Point b = ownToMould(subject, own->high);
        const Box box{{std::min(a.x, b.x), std::min(a.y, b.y)}, {std::max(a.x, b.x), std::max(a.y, b.y)}};
        if (box.low.x < -0.5 || box.high.x > subject.mould->widthMm + 0.5) continue;
        const QString size = cutout.shape == CutoutShape::circle
                                 ? QChar(0x00D8) + wholeMm(cutout.diameterMm)
                                 : Sheets::tr("%1 × %2").arg(wholeMm(cutout.size.width), wholeMm(cutout.size.depth));
        table.rows.push_back({{Sheets::tr("%1 %2").arg(QString::fromStdString(cutout.id),
                                                       purposeName(cutout.purpose).toLower()),
                               size, wholeMm(box.low.x), wholeMm(subject.mould->widthMm - box.high.x), wholeMm(box.low.y),
                               wholeMm(subject.mould->depthMm - box.high.y)},
                              {},
                              false});
    }
    return table;
}

SheetTable mouldHeightTable(const MouldSubject& subject)
{
    SheetTable table;
    table.columns = {{Sheets::tr("Above the base board"), 80.0, false},
                     {Sheets::tr("From mm"), 30.0, true},
                     {Sheets::tr("To mm"), 30.0, true}};
    for (const MouldHeight& height : mouldHeights(subject)) {
        table.rows.push_back({{height.name, wholeMm(height.fromMm), wholeMm(height.toMm)}, {}, false});
    }
    return table;
}

SheetTable mouldTieTable(const Mould& mould)
{
    SheetTable table;
    if (mould.ties.rows.empty()) return table;
    table.columns = {{Sheets::tr("Row"), 14.0, true},
                     {Sheets::tr("Above the base mm"), 34.0, true},
                     {Sheets::tr("How many"), 22.0, true},
                     {Sheets::tr("Force in each"), 30.0, true},
                     {Sheets::tr("What holds there"), 80.0, false}};
    int number = 0;
    for (const MouldTies::Row& row : mould.ties.rows) {
        const bool foot = number == 0;
        const bool onBase = std::any_of(mould.parts.begin(), mould.parts.end(),
                                        [](const MouldPart& part) { return part.kind == MouldPartKind::foot; });
        const QString what = !foot ? (row.through ? Sheets::tr("rod through the concrete, in a sleeve that stays")
                                                  : Sheets::tr("rod above the concrete"))
                             : onBase ? Sheets::tr("the batten at the foot, %1 screws at each stud").arg(mould.ties.footScrews)
                                      : Sheets::tr("the edge of the base, %1 screws at each stud").arg(mould.ties.footScrews);
        const int count = foot ? 2 * mould.ties.across : mould.ties.across;
        table.rows.push_back({{QString::number(++number), wholeMm(row.heightMm), QString::number(count),
                               Sheets::tr("%1 N").arg(numberText(row.forceN, 0)), what},
                              {},
                              false});
    }
    return table;
}

QStringList mouldSentences(const MouldSubject& subject)
{
    const Mould& mould = *subject.mould;
    QStringList said;
    const MouldPressure& pressure = mould.pressure;
    if (pressure.heightMm > 0.0) {
        const QString rule = pressure.rule == "hydrostatic" ? Sheets::tr("as a liquid")
                                                            : Sheets::tr("by DIN 18218, from memory");
        said << Sheets::tr("Fresh concrete %1 high presses with %2 kN/m² at the base (%3): brackets every %4 at most; the "
                           "sides then bow out by %5 (beam theory).")
                    .arg(lengthText(std::round(pressure.heightMm)), numberText(pressure.pressureKpa, 1), rule,
                         lengthText(std::floor(pressure.bracketMm)), lengthText(std::round(pressure.bowMm * 10.0) / 10.0));
    }
    if (pressure.codeKpa > 0.0) {
        const QString aci = pressure.aciKpa > 0.0 ? Sheets::tr("%1 kN/m²").arg(numberText(pressure.aciKpa, 1))
                                                  : Sheets::tr("does not hold for it");
        said << Sheets::tr("It rises by %1 m an hour, consistency %2. For comparison: as a liquid %3, DIN 18218 %4, ACI 347 %5, "
                           "CIRIA 108 %6 kN/m² (all three from memory).")
                    .arg(numberText(pressure.riseMPerH, 1), QString::fromStdString(pressure.concreteClass),
                         numberText(pressure.hydrostaticKpa, 1), numberText(pressure.codeKpa, 1), aci,
                         numberText(pressure.ciriaKpa, 1));
    }
    const MouldTies& ties = mould.ties;
    if (!ties.rows.empty()) {
        said << Sheets::tr("The studs bend from row to row of ties, %1 at most: by %2, stressed with %3 MPa of the %4 MPa that "
                           "count (C16 of EN 338, from memory; each span under the pressure at its lower end). A tie is counted "
                           "on for %5 N: plate on batten. Sleeves, foot battens and two faces tied in pairs are common "
                           "practice, no source. Set steel and core clear of the rods; brace the mould so that it cannot tip.")
                    .arg(lengthText(ties.longestMm), lengthText(std::round(ties.bowMm * 10.0) / 10.0),
                         numberText(ties.stressMpa, 1), numberText(kBattenStrengthMpa, 1), numberText(kTieN, 0));
    }
    const int screws = mould.screws.sides + mould.screws.formers + mould.screws.holdDowns + mould.screws.foam;
    if (screws > 0) {
        said << Sheets::tr("Screws: %1 for the sides, %2 for formers, %3 for hold-downs, %4 for foam.")
                    .arg(mould.screws.sides)
                    .arg(mould.screws.formers)
                    .arg(mould.screws.holdDowns)
                    .arg(mould.screws.foam);
    }
    if (mould.sealedMm > 0.0 || mould.touchedM2 > 0.0) {
        said << Sheets::tr("Silicone: %1 of edges, about %2 ml. Release agent: %3, about %4 ml.")
                    .arg(metresText(mould.sealedMm / 1000.0), numberText(mould.siliconeMl, 0),
                         areaText(mould.touchedM2), numberText(mould.releaseMl, 0));
        if (mould.waxedMm > 0.0) said << Sheets::tr("Wax: %1 of edges.").arg(metresText(mould.waxedMm / 1000.0));
    }
    if (mould.upliftN > 0.0) {
        said << Sheets::tr("FOAM FLOATS: fresh concrete lifts it with %1 N (the weight of %2 kg). Hold it down with %3 N; "
                           "a stone laid on it is no fixing.")
                    .arg(numberText(mould.upliftN, 0), numberText(mould.upliftN / kGravityMS2, 0),
                         numberText(mould.holdDownN, 0));
    } else if (hasFoam(mould)) {
        said << Sheets::tr("Foam floats in fresh concrete: fix it before you pour.");
    }
    if (mould.mostWidthMm > 0.0) {
        QString size = Sheets::tr("By the boards' tolerance the piece comes out %1 to %2 wide and %3 to %4 deep.")
                           .arg(lengthText(mould.leastWidthMm), lengthText(mould.mostWidthMm),
                                lengthText(mould.leastDepthMm), lengthText(mould.mostDepthMm));
        if (!mould.takenUpBy.empty()) {
            size += QLatin1Char(' ')
                  + Sheets::tr("The gap of %1 to %2 takes that up.")
                        .arg(lengthText(mould.gapMm), QString::fromStdString(mould.takenUpBy));
        }
        said << size;
    }
    said << twinTexts(mould);
    said << Sheets::tr("Sawing boards: goggles, hearing protection, no gloves at the saw. A full mould is heavy: its "
                       "table has to carry it before you pour. Home-made slabs are furniture.");
    return said;
}

QStringList mouldQuestions(const MouldSubject& subject)
{
    const Mould& mould = *subject.mould;
    QStringList questions;
    const QString hand = mouldCheckQuestion(mould.check, subject.part->kind());
    if (!hand.isEmpty()) questions << hand;
    const bool right = ownToMould(subject, datumCorner(subject)).x > mould.widthMm / 2.0;
    questions << (right ? Sheets::tr("Is the corner with the black dot at the front on your right?")
                        : Sheets::tr("Is the corner with the black dot at the front on your left?"));
    // Of a rectangle both are alike; of an L each has its own length.
    QStringList lengths;
    for (const Mould::Diagonal& diagonal : mould.diagonals) lengths << numberText(diagonal.lengthMm, 0);
    const qsizetype measured = lengths.size();
    lengths.removeDuplicates();
    if (measured == 1) {
        questions << Sheets::tr("Does the diagonal read %1 mm, to 1 mm?").arg(lengths.front());
    } else if (lengths.size() == 1) {
        questions << Sheets::tr("Do both diagonals read %1 mm, to 1 mm?").arg(lengths.front());
    } else if (measured > 1) {
        questions << Sheets::tr("Do the diagonals, as drawn, read %1 mm, to 1 mm?").arg(lengths.join(QStringLiteral(", ")));
    }
    if (hasFoam(mould)) questions << Sheets::tr("Is all foam held down?");
    return questions;
}

}  // namespace yardcast::ui
