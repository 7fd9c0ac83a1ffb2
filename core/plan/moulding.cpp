#include "core/plan/moulding.h"

#include <algorithm>

namespace yardcast {

namespace {

/// Shorter than this, mm, nothing can be made of it; longer, it is no board.
constexpr NumberLimits kOffcutLimits{20.0, 20'000.0};
constexpr int kMostOffcuts = 1000;

bool isBoard(const Offcut& offcut)
{
    return isWithin(offcut.size.width, kOffcutLimits) && isWithin(offcut.size.depth, kOffcutLimits) &&
           isWithin(offcut.thicknessMm, kBoardLimits) && offcut.count >= 1 && offcut.count <= kMostOffcuts;
}

}  // namespace

Moulding withinLimits(const Moulding& moulding)
{
    const Moulding defaults;
    Moulding sound = moulding;
    keepWithin(sound.boardMm, kBoardLimits, defaults.boardMm);
    keepWithin(sound.edgeMm, kEdgeLimits, defaults.edgeMm);
    keepWithin(sound.draftDeg, kDraftLimits, defaults.draftDeg);
    keepWithin(sound.toleranceMm, kToleranceLimits, defaults.toleranceMm);
    keepWithin(sound.bowMm, kBowLimits, defaults.bowMm);
    keepWithin(sound.bracketMm, kBracketLimits);
    keepWithin(sound.sawMm, kSawLimits, defaults.sawMm);
    keepWithin(sound.trimMm, kTrimLimits, defaults.trimMm);
    keepWithin(sound.leastStripMm, kLeastStripLimits, defaults.leastStripMm);
    sound.offcuts.erase(std::remove_if(sound.offcuts.begin(), sound.offcuts.end(),
                                       [](const Offcut& offcut) { return !isBoard(offcut); }),
                        sound.offcuts.end());
    return sound;
}

}  // namespace yardcast
