#pragma once

#include <vector>

#include "core/cutting/sheet_cutting.h"
#include "core/cutting/sheet_units.h"

namespace yardcast::sheets {

struct StripPiece {
    int piece = 0;         ///< index into SheetCutting::pieces
    Um length = 0;         ///< along the strip
    Um narrow = 0;         ///< across it; less than the strip where others are wider
};

/// Pieces one after the other along a strip of a blank.
struct BlankStrip {
    Um narrow = 0;         ///< across the strip
    std::vector<StripPiece> pieces;
};

/// A part that the store can cut, of which narrow pieces are ripped at home: strips on top of each other, in a frame of its
/// own. What the strips leave is waste.
struct Blank {
    Um w = 0;
    Um h = 0;
    bool turn = false;     ///< may lie turned on the sheet
    bool flipped = false;  ///< the strips stand side by side instead: its frame has x and y exchanged
    bool endsAtHome = false;   ///< every strip is cut across at home, so that its end need not be
    int count = 0;
    std::vector<BlankStrip> strips;
};

/// Blanks for all pieces narrower than `leastStripMm`, none less wide than it and most at least `wishMm` wide. What is wide
/// enough has none.
std::vector<Blank> makeBlanks(const SheetCutting& list, double wishMm);
bool isNarrow(const SheetPiece& piece, double leastStripMm);

}  // namespace yardcast::sheets
