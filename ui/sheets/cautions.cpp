#include "ui/sheets/cautions.h"

#include <algorithm>

#include "ui/sheets/sheet_words.h"
#include "ui/wording/handling_advice.h"

namespace yardcast::ui {

QStringList materialCautions()
{
    return {
        Sheets::tr("Silica dust: cutting, drilling and grinding concrete set free fine silica. Work wet or with "
                   "extraction, wear a fitted P3 mask, never sweep dry. Wear the mask when you open and charge bags"
                   " of cement and silica fume."),
        Sheets::tr("Cement burns: wet mix is strongly alkaline, and burns come hours later without early pain. "
                   "Waterproof gloves, boots, eye protection; rinse at once; with burns or in the eyes see a "
                   "doctor."),
        Sheets::tr("Local rules and licensed trades decide."),
    };
}

QStringList sawCautions()
{
    return {
        Sheets::tr("Sawing at home: guard in place, the blade just deeper than the board, the board held on both sides of "
                   "the cut so that it cannot close on the blade; pull the plug before the blade is touched. Goggles, ear "
                   "muffs, no gloves near the blade."),
        Sheets::tr("Saw dust of boards and timber harms: saw outdoors or with extraction, wear a P2 mask. Foam is cut with a "
                   "knife; a hot wire makes fumes. Cut mesh and bars have sharp ends. Common practice, no source."),
        Sheets::tr("The first cut of a store's saw is often not square to the sheet's edge: check one diagonal. The saw's "
                   "manual and local rules decide."),
    };
}

QStringList liftingCautions()
{
    return {
        lastCaution(),
        Sheets::tr("Lifting: rehearse without the piece, one person gives the commands, nobody stands under or in "
                   "the fall line of a slab on edge. Secure leaning slabs. Clear and measure the way: widths, "
                   "steps, turns."),
        Sheets::tr("Where the list says it is too heavy: ramp, trolley, skates or hoist, or cast it in more pieces."
                   " Steps, slopes and poor grip lower what a team can lift."),
        Sheets::tr("A young slab is weak: carry it on edge like glass, with a straight timber clamped across its "
                   "cutouts. Mass is computed; new concrete and wet foam can be heavier: weigh the first piece if "
                   "you can."),
        Sheets::tr("Grinding slurry and wet concrete burn skin; dry grinding dust harms lungs. Gloves, goggles, P3 "
                   "mask."),
        Sheets::tr("Local rules and licensed trades decide."),
    };
}

QString drawingCaution(const Plan& plan)
{
    const auto has = [&](std::initializer_list<FixtureKind> kinds) {
        return std::any_of(plan.site.fixtures.begin(), plan.site.fixtures.end(), [&](const Fixture& fixture) {
            return std::find(kinds.begin(), kinds.end(), fixture.kind) != kinds.end();
        });
    };
    const bool hot = std::any_of(plan.parts.begin(), plan.parts.end(), [](const PartPtr& part) {
        const auto* appliance = part ? std::get_if<Appliance>(&part->body) : nullptr;
        return appliance && (appliance->surfaceC || appliance->clearanceMm);
    });
    QStringList sentences;
    if (has({FixtureKind::water, FixtureKind::waste, FixtureKind::power, FixtureKind::gas})) {
        sentences << Sheets::tr("Water, waste, power, gas: by local rules and licensed trades.");
    }
    if (hot) {
        sentences << Sheets::tr("Distances of hot appliances: their manual and local rules decide.");
    }
    sentences << Sheets::tr("Home-made slabs are furniture: no standing on overhangs. Slopes, retaining edges and "
                            "unusual loads need an engineer.");
    return sentences.join(QLatin1Char(' '));
}

QString slabCaution()
{
    return Sheets::tr("Home-made slabs are furniture: no standing on overhangs. Cutting and grinding concrete: wet "
                      "or with extraction, P3 mask. Wet concrete burns: gloves, goggles.");
}

}  // namespace yardcast::ui
