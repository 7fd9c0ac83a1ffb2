#include <cmath>

#include "core/mould/mould_making.h"
#include "core/mould/mould_parts.h"

namespace yardcast::mould_making {

namespace {

/// What arithmetic leaves over a whole number is no reason for a millimetre more.
constexpr double kNoiseMm = 1e-4;

double wholeUpMm(double mm) { return std::ceil(mm - kNoiseMm); }
double halfMm(double mm) { return std::round(mm * 2) / 2; }

/// Its ends lie free, or it is trimmed where it lies.
bool isTrimmed(const MouldPart& part)
{
    return part.shaped || part.bent || part.kind == MouldPartKind::holdDown || part.kind == MouldPartKind::cleat ||
           part.kind == MouldPartKind::foot || part.kind == MouldPartKind::tie;
}

}  // namespace

void roundBlanks(Mould& mould)
{
    for (MouldPart& part : mould.parts) {
        // As one measures it off: half a millimetre is what a pencil line and a saw keep.
        const auto sawn = [&](double mm) { return isTrimmed(part) ? wholeUpMm(mm) : std::max(halfMm(mm), 0.5); };
        part.lengthMm = sawn(part.lengthMm);
        // Of strips and battens the width is that of the length they are cut from.
        if (isSheet(part.stuff)) part.widthMm = sawn(part.widthMm);
    }
}

}  // namespace yardcast::mould_making
