#pragma once

#include <string>
#include <vector>

#include "core/plan/finding.h"
#include "core/plan/plan.h"

namespace yardcast {

struct TimberPiece {
    /// Code of a word: "batten", "rail", "stile", "door_batten", "door_rail", "door_stile", "door_brace".
    std::string name;
    double lengthMm = 0.0;
    double widthMm = 0.0;
    double thicknessMm = 0.0;
    int count = 0;
};

struct DoorLayout {
    double fromMm = 0.0;  ///< edge of the leaf: upright battens, the middle of a gap; level, where the plan has it
    double toMm = 0.0;
    double shiftMm = 0.0; ///< the larger of the two moves from where the plan wants the edges
    int battens = 0;
    int hinges = 0;
    HingeSide side = HingeSide::left;
};

/// A batten front with all gaps equal, those at both ends included.
struct FrontLayout {
    std::string part;
    bool solved = false;      ///< false: no count of battens keeps the gap inside its limits, or doors have no room
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
/// Frame timber, square; assumed.
inline constexpr double kFrameTimberMm = 45.0;
/// Between a leaf that cuts level battens and what stands beside it; common practice 3 to 4 mm, no source.
inline constexpr double kDoorClearanceMm = 4.0;

/// The layout of a part that is a front; for any other part, or sizes that are no sizes, an unsolved empty one.
/// With the opening as measured, its smaller width and height are used. Upright battens divide the length, and door
/// edges move to the middle of a gap; level battens divide the height, and doors cut them, with a stile on each side
/// of the cut. `findings`: no division keeps the gap inside its limits, more doors than battens, a door that moved, an
/// opening out of square.
/// They carry no pointer, because the layout does not know where in the plan the part stands.
FrontLayout layOutFront(const Part& part, std::vector<Finding>& findings);

}  // namespace yardcast
