#pragma once

#include <vector>

#include "core/cutting/sheet_blanks.h"
#include "core/cutting/sheet_cutting.h"
#include "core/cutting/sheet_tree.h"

namespace yardcast::sheets {

/// A part that comes free and is wanted: which item of the search, where, and which part of the steps it is.
struct CutPart {
    int item = 0;
    Um x = 0;
    Um y = 0;
    Um w = 0;
    Um h = 0;
    bool turned = false;
    int part = 0;
    Um wantedW = 0;     ///< less than w where a loose part keeps what is over
};

/// Sides of an item that may be longer than asked for, because it is cut to size at home anyway.
enum class Loose { none, w, h, both };

/// The store's cuts of one sheet, before it is known which of several equal pieces each part becomes.
struct SawnSheet {
    int bin = 0;
    std::vector<SawStep> steps;
    std::vector<CutPart> parts;
    std::vector<SheetArea> remainders;
};

/// Sizes without the saw width, as the person measures them.
struct SheetOnSaw {
    Um w = 0;
    Um h = 0;
    Um trim = 0;
    Um saw = 0;
};

/// `loose` of each item. What would be waste beside a loose side stays on.
SawnSheet sawSheet(const SheetForest& forest, int sheet, const SheetOnSaw& on, const std::vector<Loose>& loose);

/// Adds a blank that is the part given: its place, its pieces and the cuts at home.
void ripBlank(const Blank& blank, const CutPart& part, Um saw, CutSheet& out);

}  // namespace yardcast::sheets
