#pragma once

#include <string>
#include <vector>

#include "core/castings/casting.h"
#include "core/mould/mould.h"
#include "core/plan/plan.h"

namespace yardcast {

/// Boards, foam, battens, strips or rods of one sort that a mould takes.
struct MouldStuffNeed {
    MouldPartKind kind = MouldPartKind::base;  ///< of the first of them
    MouldStuff stuff = MouldStuff::board;
    bool bent = false;
    double widthMm = 0.0;         ///< of battens, strips and rods; 0 of sheets
    double thicknessMm = 0.0;
    double amount = 0.0;          ///< m2 of sheets, m of lengths; net
    double longestMm = 0.0;
};

/// What one casting's mould needs, summed over its parts; of one that comes out of another's mould only what it takes
/// afresh. The board is an estimate until cuts are solved.
struct MouldNeed {
    std::string casting;
    double baseM2 = 0.0;          ///< base board, with margin for the sides to stand on
    double sidesM2 = 0.0;
    double formersM2 = 0.0;       ///< around cutouts
    double boardM2 = 0.0;         ///< all of these with the waste allowance
    double siliconeMl = 0.0;
    double releaseMl = 0.0;
    double foamM2 = 0.0;          ///< of fillers and cores, of sheets `foamThicknessMm` thick
    double foamThicknessMm = 0.0;
    double sheetingM2 = 0.0;      ///< for curing, see curingSheetM2
    double sealerL = 0.0;
    int screws = 0;
    int ties = 0;                 ///< rods, each with two plates and nuts
    double waxedM = 0.0;          ///< edges with wax
    double tapedM = 0.0;          ///< edges of foam
    std::vector<MouldStuffNeed> stuffs;  ///< all but the boards of `boardM2`
};

struct MouldEstimate {
    std::vector<MouldNeed> castings;
    double boardM2 = 0.0;
    double siliconeMl = 0.0;
    double releaseMl = 0.0;
    double sheetingM2 = 0.0;
    double sealerL = 0.0;
};

/// Added to the net area, in which laps and plies are counted already; estimate, no source.
inline constexpr double kBoardWasteShare = 0.10;

/// `moulds` as from `mouldsOf`; of castings that have none there only what their faces ask for.
MouldEstimate estimateMoulds(const Plan& plan, const std::vector<CastingPtr>& castings,
                             const std::vector<MouldPtr>& moulds);

}  // namespace yardcast
