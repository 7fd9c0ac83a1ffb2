#include "ui/sheets/handedness.h"

#include <cmath>

#include "ui/sheets/sheet_words.h"
#include "ui/wording/names.h"

namespace yardcast::ui {

Point frontLeftCorner(const Ring& outline)
{
    Point best = outline.empty() ? Point{} : outline.front();
    for (const Point& point : outline) {
        if (point.y < best.y - 0.05 || (point.y < best.y + 0.05 && point.x < best.x)) {
            best = point;
        }
    }
    return best;
}

QString handednessSentence(const Counter& counter, Seen seen)
{
    const Cutout* largest = nullptr;
    double most = 0.0;
    for (const Cutout& cutout : counter.cutouts) {
        const double area = std::fabs(signedArea(cutoutRing(cutout)));
        if (area > most) {
            most = area;
            largest = &cutout;
        }
    }
    const std::optional<Box> box = boundsOf(counter.outline);
    if (!largest || !box) {
        return {};
    }
    double aside = largest->centre.x - box->centre().x;
    const bool inMould = seen == Seen::inTheMould;
    if (inMould) {
        aside = -aside;
    }
    const QString name = purposeName(largest->purpose).toLower();
    if (std::fabs(aside) < 5.0) {
        return (inMould ? Sheets::tr("Stand at the front of the mould: the %1 is in the middle.")
                        : Sheets::tr("Stand at the front edge: the %1 is in the middle."))
            .arg(name);
    }
    if (inMould) {
        return (aside < 0.0 ? Sheets::tr("Stand at the front of the mould: the %1 is on your left.")
                            : Sheets::tr("Stand at the front of the mould: the %1 is on your right."))
            .arg(name);
    }
    return (aside < 0.0 ? Sheets::tr("Stand at the front edge: the %1 is on your left.")
                        : Sheets::tr("Stand at the front edge: the %1 is on your right."))
        .arg(name);
}

}  // namespace yardcast::ui
