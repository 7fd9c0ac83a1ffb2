#include "ui/wording/cut_names.h"

#include <cmath>
#include <cstdint>

#include "ui/wording/figures.h"
#include "ui/wording/mould_names.h"
#include "ui/wording/names.h"
#include "ui/wording/words.h"

namespace yardcast::ui {

QString cutPieceWord(const std::string& what)
{
    for (int kind = 0; kind <= static_cast<int>(kLastMouldPart); ++kind) {
        const auto of = static_cast<MouldPartKind>(kind);
        if (what == mouldPartWord(of)) return mouldPartName(of);
    }
    if (what == "mesh") return Words::tr("mesh");
    if (what == "bar") return Words::tr("bar");
    return timberPieceName(what);
}

QString gapText(double boundMinor, bool proven, const std::string& currency)
{
    if (proven) return Words::tr("proven to be the least");
    if (boundMinor < 1.0) return Words::tr("not proven to be the least");
    const auto least = static_cast<std::int64_t>(std::llround(boundMinor));
    return Words::tr("not proven: no plan costs less than %1").arg(moneyText(least, currency));
}

}  // namespace yardcast::ui
