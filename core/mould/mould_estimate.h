#pragma once

#include <string>
#include <vector>

#include "core/castings/casting.h"
#include "core/mould/mould.h"
#include "core/plan/plan.h"

namespace yardcast {

/// What one casting's mould needs: summed over its boards, blocks and strips where the mould is known, else estimated.
/// The board is an estimate in any case until cuts are solved.
struct MouldNeed {
    std::string casting;
    double baseM2 = 0.0;          ///< base board, with margin for the sides to stand on
    double sidesM2 = 0.0;
    double formersM2 = 0.0;       ///< around cutouts
    double boardM2 = 0.0;         ///< all of these with the waste allowance
    double siliconeMl = 0.0;
    double releaseMl = 0.0;
    double foamM2 = 0.0;          ///< of sheets `foamThicknessMm` thick
    double foamThicknessMm = 0.0;
    double sheetingM2 = 0.0;      ///< for curing, see curingSheetM2
    double sealerL = 0.0;
};

struct MouldEstimate {
    std::vector<MouldNeed> castings;
    double boardM2 = 0.0;
    double siliconeMl = 0.0;
    double releaseMl = 0.0;
    double sheetingM2 = 0.0;
    double sealerL = 0.0;
};

inline constexpr double kBoardMm = 18.0;           ///< mould board; assumed
/// Added to the net area, in which laps and plies are counted already; estimate, no source.
inline constexpr double kBoardWasteShare = 0.10;
inline constexpr double kFilletRadiusMm = 6.0;     ///< silicone in the mould's edges

/// `moulds` as from `mouldsOf`; castings that have none there are estimated from their sizes.
MouldEstimate estimateMoulds(const Plan& plan, const std::vector<CastingPtr>& castings,
                             const std::vector<MouldPtr>& moulds = {});

}  // namespace yardcast
