#pragma once

#include <vector>

#include "core/cutting/sheet_cutting.h"

/// A plan's sheet as whoever saws it needs it: what each cut is made in, and what comes of it.
namespace yardcast {

enum class SawnInto {
    further,     ///< a part that is cut again
    piece,
    blank,       ///< to rip at home
    remainder,
    waste
};

/// What lies on the saw after a cut: where on the sheet, and what it is.
struct SawnPart {
    SheetArea area;
    SawnInto into = SawnInto::waste;
    int index = -1;      ///< into the sheet's pieces, blanks or remainders; of what is cut further the step
};

/// One step with its parts.
struct SawnStep {
    SawRun run = SawRun::alongX;
    double atMm = 0.0;
    bool atHome = false;
    SheetArea cut;       ///< the part that lies on the saw
    SheetArea lost;      ///< the saw's own width through it
    SawnPart low;        ///< what the fence measures off: `atMm` of it
    SawnPart high;       ///< what is beyond; of no size where the saw takes the rest
};

/// One a step of the sheet, same order. `whole` is the size of its stock.
std::vector<SawnStep> sawnSteps(Size whole, const CutSheet& sheet);

}  // namespace yardcast
