#include <algorithm>
#include <map>

#include "core/mould/mould_making.h"

namespace yardcast {

const char* mouldPartWord(MouldPartKind kind)
{
    switch (kind) {
    case MouldPartKind::base: return "base";
    case MouldPartKind::side: return "side";
    case MouldPartKind::former: return "former";
    case MouldPartKind::filler: return "filler";
    case MouldPartKind::core: return "core";
    case MouldPartKind::chamfer: return "chamfer";
    case MouldPartKind::drip: return "drip";
    case MouldPartKind::rebate: return "rebate";
    case MouldPartKind::holdDown: return "hold_down";
    case MouldPartKind::bracket: return "bracket";
    case MouldPartKind::spacer: return "spacer";
    case MouldPartKind::cleat: return "cleat";
    case MouldPartKind::foot: return "foot";
    case MouldPartKind::tie: return "tie";
    }
    return "";
}

const char* mouldStuffWord(MouldStuff stuff)
{
    switch (stuff) {
    case MouldStuff::board: return "board";
    case MouldStuff::foam: return "foam";
    case MouldStuff::batten: return "batten";
    case MouldStuff::strip: return "strip";
    case MouldStuff::block: return "block";
    case MouldStuff::rod: return "rod";
    }
    return "";
}

namespace mould_making {

namespace {

/// What lies on the base goes in before the concrete, what hangs or lies on it afterwards.
int placeInOrder(const MouldPart& part)
{
    const bool onBase = part.fromMm <= 0.0;
    switch (part.kind) {
    case MouldPartKind::base: return 0;
    case MouldPartKind::cleat: return 1;
    case MouldPartKind::side: return 2;
    case MouldPartKind::bracket: return 3;
    case MouldPartKind::foot: return 4;
    case MouldPartKind::chamfer: return 5;
    case MouldPartKind::former: return 6;
    case MouldPartKind::drip:
    case MouldPartKind::rebate: return onBase ? 7 : 10;
    case MouldPartKind::spacer: return 8;
    case MouldPartKind::filler: return onBase ? 7 : 9;
    case MouldPartKind::core: return 9;
    case MouldPartKind::tie: return 11;
    case MouldPartKind::holdDown: return 12;
    }
    return 13;
}

}  // namespace

void putInOrder(Mould& mould)
{
    std::stable_sort(mould.parts.begin(), mould.parts.end(), [](const MouldPart& a, const MouldPart& b) {
        return placeInOrder(a) < placeInOrder(b);
    });
    int step = 0;
    int last = -1;
    int number = 0;
    for (MouldPart& part : mould.parts) {
        if (placeInOrder(part) != last) ++step;
        last = placeInOrder(part);
        part.step = step;
        part.name = mould.casting + "-" + std::to_string(++number);
    }
}

}  // namespace mould_making

}  // namespace yardcast
