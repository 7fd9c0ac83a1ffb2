#include "ui/wording/cut_names.h"

#include <cmath>

#include "ui/wording/figures.h"
#include "ui/wording/names.h"
#include "ui/wording/words.h"

namespace yardcast::ui {

QString cutPieceWord(const std::string& what)
{
    if (what == "base") return Words::tr("base", "part of a mould");
    if (what == "side") return Words::tr("side", "part of a mould");
    if (what == "former") return Words::tr("former", "part of a mould");
    if (what == "filler") return Words::tr("filler", "part of a mould");
    if (what == "core") return Words::tr("core", "part of a mould");
    if (what == "chamfer") return Words::tr("chamfer strip", "part of a mould");
    if (what == "drip") return Words::tr("strip of the drip groove", "part of a mould");
    if (what == "rebate") return Words::tr("strip of the rebate", "part of a mould");
    if (what == "hold_down") return Words::tr("hold-down", "part of a mould");
    if (what == "bracket") return Words::tr("bracket", "part of a mould");
    if (what == "spacer") return Words::tr("spacer", "part of a mould");
    if (what == "mesh") return Words::tr("mesh");
    if (what == "bar") return Words::tr("bar");
    return timberPieceName(what);
}

QString gapText(double boundMinor, bool proven, const std::string& currency)
{
    if (proven) return Words::tr("proven to be the least");
    if (boundMinor < 1.0) return Words::tr("not proven to be the least");
    return Words::tr("not proven: no plan costs less than %1").arg(moneyText(std::llround(boundMinor), currency));
}

}  // namespace yardcast::ui
