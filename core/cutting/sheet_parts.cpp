#include "core/cutting/sheet_parts.h"

#include <cmath>

namespace yardcast {

namespace {

/// Lengths are kept to a thousandth of a millimetre; sums of doubles differ by less.
constexpr double kSameMm = 0.0006;

bool isSame(const SheetArea& a, Point at, Size size)
{
    return std::abs(a.at.x - at.x) < kSameMm && std::abs(a.at.y - at.y) < kSameMm
        && std::abs(a.size.width - size.width) < kSameMm && std::abs(a.size.depth - size.depth) < kSameMm;
}

/// What doubles leave of nothing is nothing.
double beyond(double wholeMm, double goneMm)
{
    return wholeMm - goneMm < kSameMm ? 0.0 : wholeMm - goneMm;
}

SawnPart partOf(const CutSheet& sheet, const SheetArea& area, int cutBy)
{
    const auto indexOf = [](auto i) { return static_cast<int>(i); };
    // A blank is cut again too, but it is what the store hands out.
    for (std::size_t i = 0; i < sheet.blanks.size(); ++i) {
        if (isSame(area, sheet.blanks[i].at, sheet.blanks[i].size)) {
            return {area, SawnInto::blank, indexOf(i)};
        }
    }
    if (cutBy >= 0) {
        return {area, SawnInto::further, cutBy};
    }
    for (std::size_t i = 0; i < sheet.pieces.size(); ++i) {
        if (isSame(area, sheet.pieces[i].at, sheet.pieces[i].size)) {
            return {area, SawnInto::piece, indexOf(i)};
        }
    }
    for (std::size_t i = 0; i < sheet.remainders.size(); ++i) {
        if (isSame(area, sheet.remainders[i].at, sheet.remainders[i].size)) {
            return {area, SawnInto::remainder, indexOf(i)};
        }
    }
    return {area, SawnInto::waste, -1};
}

}  // namespace

std::vector<SawnStep> sawnSteps(Size whole, const CutSheet& sheet)
{
    std::vector<SheetArea> areas(2 * sheet.steps.size() + 1);
    std::vector<int> cutBy(areas.size(), -1);
    areas[0] = {{0.0, 0.0}, whole};
    for (std::size_t i = 0; i < sheet.steps.size(); ++i) {
        const SawStep& step = sheet.steps[i];
        const SheetArea part = areas[static_cast<std::size_t>(step.part)];
        cutBy[static_cast<std::size_t>(step.part)] = static_cast<int>(i);
        SheetArea& low = areas[2 * i + 1] = part;
        SheetArea& high = areas[2 * i + 2] = part;
        const double gone = step.atMm + step.lostMm;
        if (step.run == SawRun::alongY) {
            low.size.width = step.atMm;
            high.at.x += gone;
            high.size.width = beyond(part.size.width, gone);
        } else {
            low.size.depth = step.atMm;
            high.at.y += gone;
            high.size.depth = beyond(part.size.depth, gone);
        }
    }
    std::vector<SawnStep> out;
    for (std::size_t i = 0; i < sheet.steps.size(); ++i) {
        const SawStep& step = sheet.steps[i];
        SawnStep sawn;
        sawn.run = step.run;
        sawn.atMm = step.atMm;
        sawn.atHome = step.atHome;
        sawn.cut = areas[static_cast<std::size_t>(step.part)];
        sawn.lost = sawn.cut;
        if (step.run == SawRun::alongY) {
            sawn.lost.at.x += step.atMm;
            sawn.lost.size.width = step.lostMm;
        } else {
            sawn.lost.at.y += step.atMm;
            sawn.lost.size.depth = step.lostMm;
        }
        sawn.low = partOf(sheet, areas[2 * i + 1], cutBy[2 * i + 1]);
        sawn.high = partOf(sheet, areas[2 * i + 2], cutBy[2 * i + 2]);
        out.push_back(sawn);
    }
    return out;
}

}  // namespace yardcast
