#pragma once

#include <vector>

#include "core/structure/strength.h"

namespace yardcast {

/// What the steel is worth at every named section in every case: the section cracked and with its steel where it lies,
/// against what passes through it with the factors of EN 1990 (1.35 on own weight and loads, 1.5 on what people add).
/// Where a cut runs through field and rim, the section is that of a T: flush at the face, with `cutDepths` below it.
/// One a section and case; none for castings that cannot have steel. Only the greatest of a place over all cases is
/// kept for each side, and none where next to nothing is asked.
std::vector<SteelCheck> steelWorth(const StrengthInput& input, const std::vector<CaseResult>& cases);

/// steel_missing (none at all), steel_absent (none that counts at that place), steel_weak (cautions; one of the three),
/// steel_wrong_side (caution), steel_wide_crack (caution), steel_brittle (note): at most one of
/// each for a casting, at its worst section.
void addSteelFindings(const StrengthInput& input, const std::vector<SteelCheck>& checks,
                      std::vector<Finding>& findings);

/// How wide the concrete along a cut is at each depth.
struct CutDepth {
    double depthMm = 0.0;
    double widthMm = 0.0;
};
/// Ascending depth; measured at many points along the cut.
std::vector<CutDepth> cutDepths(const Casting& casting, Point from, Point to);

}  // namespace yardcast
