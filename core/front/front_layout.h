#pragma once

#include <string>
#include <vector>

#include "core/plan/finding.h"
#include "core/plan/plan.h"

namespace yardcast {

struct TimberPiece {
    std::string name;     ///< code of a word: "batten", "rail", "door_rail", "door_brace"
    double lengthMm = 0.0;
    double widthMm = 0.0;
    double thicknessMm = 0.0;
    int count = 0;
};

struct DoorLayout {
    double fromMm = 0.0;  ///< edge of the leaf, in the middle of a gap
    double toMm = 0.0;
    double shiftMm = 0.0; ///< the larger of the two moves from where the plan wants the edges
    int battens = 0;
    int hinges = 0;
    HingeSide side = HingeSide::left;
};

/// A batten front with all gaps equal, those at both ends included.
struct FrontLayout {
    std::string part;
    bool solved = false;      ///< false: no count of battens keeps the gap inside its limits
    double lengthMm = 0.0;    ///< along the front
    double heightMm = 0.0;
    int battens = 0;          ///< across the run
    double gapMm = 0.0;
    double battenLengthMm = 0.0;
    std::vector<double> battenStartsMm;  ///< left (or lower) edge of each batten, along the division
    std::vector<DoorLayout> doors;
    std::vector<TimberPiece> pieces;
    int screws = 0;
    int hinges = 0;
    double timberM = 0.0;     ///< metres of batten, rails and braces not included
    double frameTimberM = 0.0;
    double massKg = 0.0;
};

/// Gap limits around the wish, mm: common practice for open battens, no source.
inline constexpr double kLeastGapMm = 4.0;
inline constexpr double kMostGapMm = 15.0;

FrontLayout layOutFront(const Part& part, std::vector<Finding>& findings);

}  // namespace yardcast
