#pragma once

#include <string>
#include <vector>

#include "core/castings/casting.h"
#include "core/plan/plan.h"

namespace yardcast {

/// Estimated needs of one casting's mould, until the saw plans exist.
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
    double sheetingM2 = 0.0;      ///< for curing
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
inline constexpr double kBoardWasteShare = 0.15;   ///< added to the net area; estimate, no source
inline constexpr double kFilletRadiusMm = 6.0;     ///< silicone in the mould's edges

MouldEstimate estimateMoulds(const Plan& plan, const std::vector<CastingPtr>& castings);

}  // namespace yardcast
