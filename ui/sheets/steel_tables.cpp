#include "ui/sheets/steel_tables.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>

#include "ui/sheets/sheet_words.h"
#include "ui/wording/figures.h"
#include "ui/wording/names.h"
#include "ui/wording/steel_names.h"
#include "ui/wording/strength_names.h"

namespace yardcast::ui {

namespace {

QString baseTitle(const CastingSteelLayout& layout)
{
    return layout.datum == SteelDatum::mouldBase ? Sheets::tr("Above mould base mm") : Sheets::tr("From front wall mm");
}

QString wholeMm(double mm)
{
    return shortNumberText(std::round(mm));
}

/// What is cut away from a piece, measured from its corner towards the marked one.
QString notchText(const MeshPiece& piece)
{
    QStringList said;
    for (const Ring& notch : piece.notches) {
        const std::optional<Box> box = boundsOf(notch);
        if (!box) continue;
        said << Sheets::tr("%1 × %2 beginning at %3, %4")
                    .arg(wholeMm(box->width()), wholeMm(box->height()), wholeMm(box->low.x - piece.at.low.x),
                         wholeMm(box->low.y - piece.at.low.y));
    }
    return Sheets::tr("Cut away (along the front, away from it, from its front corner on the side of the black dot): %1.")
        .arg(said.join(QStringLiteral("; ")));
}

/// Alike pieces are one row.
struct AlikePieces {
    const MeshPiece* first = nullptr;
    int count = 0;
};

/// How near a section is to what it carries: cracked where it would crack, else uncracked.
double gravity(const SteelCheck& check)
{
    const double carries = std::max(check.crackingMomentN, check.resistanceN);
    return carries > 0.0 ? check.designMomentN / carries : 0.0;
}

/// Each section once for each side, in its gravest case; the gravest first, as many as a sheet has room for.
std::vector<SteelCheck> gravestChecks(const CastingStrength& strength)
{
    constexpr std::size_t kMost = 8;
    std::vector<SteelCheck> checks;
    for (const SteelCheck& check : strength.steel) {
        if (!steelMatters(check)) continue;
        const auto same = std::find_if(checks.begin(), checks.end(), [&](const SteelCheck& one) {
            return one.name == check.name && one.tensionAtFace == check.tensionAtFace;
        });
        if (same == checks.end()) {
            checks.push_back(check);
        } else if (gravity(check) > gravity(*same)) {
            *same = check;
        }
    }
    std::stable_sort(checks.begin(), checks.end(),
                     [](const SteelCheck& a, const SteelCheck& b) { return gravity(a) > gravity(b); });
    if (checks.size() > kMost) checks.resize(kMost);
    return checks;
}

}  // namespace

SheetTable meshTable(const CastingSteelLayout& layout, bool counter)
{
    SheetTable table;
    table.columns = {{Sheets::tr("Mesh"), 17.0, false},
                     {Sheets::tr("Cut to mm"), 32.0, false},
                     {Sheets::tr("Pieces"), 13.0, true},
                     {Sheets::tr("Wire, pitch"), 40.0, false},
                     {baseTitle(layout), 20.0, true},
                     {Sheets::tr("Spacer mm"), 17.0, true},
                     {Sheets::tr("In use it lies"), 41.0, false}};
    for (const MeshLayout& mesh : layout.meshes) {
        std::map<int, AlikePieces> alike;
        for (const MeshPiece& piece : mesh.pieces) {
            AlikePieces& entry = alike[piece.mark];
            if (!entry.first) entry.first = &piece;
            ++entry.count;
        }
        for (const auto& [mark, entry] : alike) {
            SheetRow row;
            row.cells = {meshMark(mark),
                         Sheets::tr("%1 × %2").arg(wholeMm(entry.first->at.width()), wholeMm(entry.first->at.height())),
                         QString::number(entry.count),
                         Sheets::tr("Ø%1 at %2, %3").arg(shortNumberText(mesh.barMm), shortNumberText(mesh.pitchMm),
                                                         steelMaterialName(mesh.material)),
                         shortNumberText(mesh.height.distanceMm, 1),
                         shortNumberText(mesh.height.spacerMm, 1),
                         steelSideText(mesh.height.side, counter)};
            if (!entry.first->notches.empty()) {
                row.note = notchText(*entry.first);
            }
            table.rows.push_back(std::move(row));
        }
    }
    return table;
}

SheetTable barTable(const CastingSteelLayout& layout, bool counter)
{
    SheetTable table;
    table.columns = {{Sheets::tr("Bar"), 15.0, false},    {Sheets::tr("Ø mm"), 13.0, true},
                     {Sheets::tr("Count"), 14.0, true},   {Sheets::tr("Cut to mm"), 18.0, true},
                     {Sheets::tr("Shape"), 18.0, false},  {baseTitle(layout), 20.0, true},
                     {Sheets::tr("Spacer mm"), 17.0, true}, {Sheets::tr("In use it lies"), 47.0, false},
                     {Sheets::tr("Mass kg"), 18.0, true}};
    for (const BarListRow& bar : layout.barList) {
        const SteelHeight* height = heightOfBar(layout, bar.mark);
        SheetRow row;
        row.cells = {barMark(bar.mark),
                     shortNumberText(bar.diameterMm),
                     QString::number(bar.count),
                     shortNumberText(bar.cutLengthMm),
                     barShapeText(bar.shapeCode),
                     height ? shortNumberText(height->distanceMm, 1) : QString(),
                     height ? shortNumberText(height->spacerMm, 1) : QString(),
                     height ? steelSideText(height->side, counter) : QString(),
                     numberText(bar.massKg, 2)};
        QStringList said;
        if (bar.material != SteelMaterial::steel) said << steelMaterialName(bar.material) + QLatin1Char('.');
        if (bar.suggested) {
            said << Sheets::tr("PROPOSED, not in the plan: across the crack that would begin at an inner corner.");
            const auto shortest = std::min_element(
                layout.cornerBars.begin(), layout.cornerBars.end(), [&](const CornerBar& a, const CornerBar& b) {
                    const double far = 2.0;
                    return (a.bar.mark == bar.mark ? a.anchoredShare : far) <
                           (b.bar.mark == bar.mark ? b.anchoredShare : far);
                });
            if (shortest != layout.cornerBars.end() && shortest->bar.mark == bar.mark && shortest->anchoredShare < 0.995) {
                said << Sheets::tr("The slab is too narrow for its anchorage: %1 of %2.")
                            .arg(percentText(100.0 * shortest->anchoredShare), lengthText(std::round(shortest->anchorageMm)));
            }
        }
        row.note = said.join(QLatin1Char(' '));
        table.rows.push_back(std::move(row));
    }
    return table;
}

SheetTable barPlaceTable(const CastingSteelLayout& layout, Point corner)
{
    SheetTable table;
    table.columns = {{Sheets::tr("Bar"), 20.0, false},
                     {Sheets::tr("Begins: along the front, away from it, mm"), 80.0, false},
                     {Sheets::tr("Ends: along the front, away from it, mm"), 80.0, false}};
    const auto place = [&](Point at) {
        return Sheets::tr("%1, %2").arg(wholeMm(at.x - corner.x), wholeMm(at.y - corner.y));
    };
    const auto add = [&](const LaidBar& bar) {
        const bool turn = bar.from.x > bar.to.x;
        table.rows.push_back(
            {{barMark(bar.mark), place(turn ? bar.to : bar.from), place(turn ? bar.from : bar.to)}, {}, false});
    };
    for (const LaidBar& bar : layout.bars) add(bar);
    for (const CornerBar& bar : layout.cornerBars) add(bar.bar);
    return table;
}

SheetTable steelCheckTable(const CastingStrength* strength, const Part& part)
{
    SheetTable table;
    table.columns = {{Sheets::tr("Section"), 50.0, false},
                     {Sheets::tr("Case"), 36.0, false},
                     {Sheets::tr("Steel needed at"), 24.0, false},
                     {Sheets::tr("Asked Nm/m"), 16.0, true},
                     {Sheets::tr("Cracks at Nm/m"), 17.0, true},
                     {Sheets::tr("Carries with steel Nm/m"), 20.0, true},
                     {Sheets::tr("without Nm/m"), 17.0, true}};
    if (!strength) return table;
    for (const SteelCheck& check : gravestChecks(*strength)) {
        SheetRow row;
        row.cells = {placeText(check.name, &part),
                     strengthCaseName(check.which),
                     sideText(check.tensionAtFace),
                     numberText(check.designMomentN, 0),
                     numberText(check.crackingMomentN, 0),
                     numberText(check.resistanceN, 0),
                     numberText(check.resistancePlainN, 0)};
        row.note = steelCheckText(check);
        table.rows.push_back(std::move(row));
    }
    return table;
}

QStringList steelSentences(const CastingSteelLayout& layout, bool counter)
{
    QStringList said;
    for (const MeshLayout& mesh : layout.meshes) {
        const SteelHeight& height = mesh.height;
        said << Sheets::tr("Mesh: %1, on spacers %2 high. In use it lies %3. Concrete around it: %4 at the %5, %6 behind.")
                    .arg(heightText(height, layout.datum), lengthText(height.spacerMm), steelSideText(height.side, counter),
                         lengthText(height.coverFaceMm), counter ? Sheets::tr("face") : Sheets::tr("front"),
                         lengthText(height.coverBackMm));
        if (mesh.pieces.size() > 1)
            said << Sheets::tr("Where pieces meet they lap by %1 (hatched).").arg(lengthText(mesh.lapMm));
    }
    said << Sheets::tr("Heights are to the nearest side of the steel. Check them with a rod at six places before you "
                       "pour, and again behind the first batch: mesh sinks.");
    said << Sheets::tr("Tie with the wire's ends turned inwards: a tail that reaches the face rusts through it. Bar ends "
                       "keep the cover too.");
    said << fibresText();
    said << Sheets::tr("Steel in so thin a slab lies outside the code's scope: it holds pieces together, it does not "
                       "make the slab a structure.");
    return said;
}

}  // namespace yardcast::ui
