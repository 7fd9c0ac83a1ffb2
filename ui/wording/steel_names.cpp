#include "ui/wording/steel_names.h"

#include <algorithm>

#include <QStringList>

#include "ui/wording/figures.h"
#include "ui/wording/strength_names.h"
#include "ui/wording/words.h"

namespace yardcast::ui {

namespace {

/// Beyond this a multiple says nothing more.
constexpr double kMostTimes = 20.0;

QString timesText(double times)
{
    return times > kMostTimes ? Words::tr("over %1").arg(shortNumberText(kMostTimes)) : shortNumberText(times, 2);
}

}  // namespace

QString meshMark(int mark)
{
    return Words::tr("mesh %1", "mark of a piece of mesh").arg(mark);
}

QString barMark(int mark)
{
    return Words::tr("bar %1", "mark of a bar").arg(mark);
}

const SteelHeight* heightOfBar(const CastingSteelLayout& layout, int mark)
{
    const auto laid = std::ranges::find(layout.bars, mark, &LaidBar::mark);
    if (laid != layout.bars.end()) return &laid->height;
    const auto corner = std::ranges::find(layout.cornerBars, mark, [](const CornerBar& bar) { return bar.bar.mark; });
    return corner == layout.cornerBars.end() ? nullptr : &corner->bar.height;
}

QString heightText(const SteelHeight& height, SteelDatum datum)
{
    const QString distance = lengthText(height.distanceMm);
    return datum == SteelDatum::mouldBase ? Words::tr("%1 above the mould base").arg(distance)
                                          : Words::tr("%1 from the front wall of the mould").arg(distance);
}

QString steelSideText(SteelSide side, bool counter)
{
    switch (side) {
    case SteelSide::face: return counter ? Words::tr("towards the face") : Words::tr("towards the front");
    case SteelSide::middle: return Words::tr("in the middle: it works either way, but weakly");
    case SteelSide::underside: return counter ? Words::tr("towards the underside") : Words::tr("towards the back");
    }
    return {};
}

QString barShapeText(const std::string& code)
{
    return code == "00" ? Words::tr("straight") : QString::fromStdString(code);
}

bool steelMatters(const SteelCheck& check)
{
    constexpr double kShare = 0.1;
    return check.designMomentN > kShare * check.crackingMomentN;
}

bool steelIsWeak(const SteelCheck& check)
{
    constexpr double kShare = 0.5;
    const bool nearCracking = check.designMomentN > kShare * check.crackingMomentN;
    return nearCracking && (check.breaksWithoutWarning || check.resistanceN < check.designMomentN);
}

QString steelCheckText(const SteelCheck& check)
{
    QStringList said;
    const QString side = sideText(check.tensionAtFace);
    if (!(check.steelAreaMm2M > 0.0)) {
        said << Words::tr("No steel that counts lies towards the %1, where it is needed once this cracks.").arg(side);
    } else if (check.designMomentN > 0.0) {
        const QString with = timesText(check.resistanceN / check.designMomentN);
        const QString without = timesText(check.resistancePlainN / check.designMomentN);
        said << Words::tr("Steel is needed at the %1. Cracked, with its steel, it carries %2 times what is asked; plain "
                          "concrete %3 times.")
                    .arg(side, with, without);
        constexpr double kWorthMore = 1.5;
        if (check.resistanceBestN > kWorthMore * check.resistanceN) {
            said << Words::tr("Where it lies the steel is worth little: at its least cover to the %1 the same steel would "
                              "carry %2 times what is asked.")
                        .arg(side, timesText(check.resistanceBestN / check.designMomentN));
        }
    }
    if (check.breaksWithoutWarning) {
        said << Words::tr("It would break without warning: cracked it carries less than what cracks it.");
    }
    if (check.crackWidthMm > 0.0) {
        said << Words::tr("Cracks about %1 wide.").arg(Words::tr("%1\u00a0mm").arg(shortNumberText(check.crackWidthMm, 2)));
    }
    return said.join(QLatin1Char(' '));
}

QString fibresText()
{
    return Words::tr("Fibres are not counted on for strength: nobody has measured what they do in this mix.");
}

QString pourPositionText(const CastingSteelLayout& layout, bool counter)
{
    if (layout.datum == SteelDatum::frontWall) return Words::tr("stands in the mould");
    if (counter) {
        return layout.faceDown ? Words::tr("lies face down on the mould base")
                               : Words::tr("lies face up, its underside on the mould base");
    }
    return layout.faceDown ? Words::tr("lies front down on the mould base")
                           : Words::tr("lies front up, its back on the mould base");
}

}  // namespace yardcast::ui
