#include "ui/sheets/drawing_fit.h"

#include <algorithm>
#include <limits>

#include <QPainter>

#include "ui/sheets/scales.h"
#include "ui/sheets/sheet_frame.h"
#include "ui/sheets/sheet_text.h"

namespace yardcast::ui {

namespace {

constexpr double kAirMm = 2.0;

bool fits(const ScaledDrawing& drawing, QSizeF boxMm, int scale)
{
    const QSizeF size = drawing.bounds(paperStyle(scale)).size() / scale;
    return size.width() <= boxMm.width() - 2.0 * kAirMm && size.height() <= boxMm.height() - 2.0 * kAirMm;
}

}  // namespace

DrawingFit fitOnSheet(const ScaledDrawing& drawing, double topMm, double bottomMm)
{
    for (const int scale : reductionScales()) {
        for (const bool landscape : {false, true}) {
            const QSizeF box = contentBox(landscape, true).adjusted(0.0, topMm, 0.0, -bottomMm).size();
            if (fits(drawing, box, scale)) {
                return {landscape, scale};
            }
        }
    }
    return {false, reductionScales().back()};
}

int fitInBox(const ScaledDrawing& drawing, QSizeF boxMm)
{
    int best = reductionScales().back();
    double least = std::numeric_limits<double>::max();
    for (const int scale : reductionScales()) {
        if (fits(drawing, boxMm, scale)) {
            return scale;
        }
        // Type does not shrink with the scale: where nothing fits, the least that stands out.
        const QSizeF size = drawing.bounds(paperStyle(scale)).size() / scale;
        const double over = std::max(size.width() / boxMm.width(), size.height() / boxMm.height());
        if (over < least) {
            least = over;
            best = scale;
        }
    }
    return best;
}

void paintInBox(QPainter& painter, const ScaledDrawing& drawing, const QRectF& box, int scale)
{
    const PaintStyle style = paperStyle(scale);
    painter.save();
    painter.translate(box.center());
    painter.scale(1.0 / scale, 1.0 / scale);
    painter.translate(-drawing.bounds(style).center());
    drawing.paint(painter, style);
    painter.restore();
}

}  // namespace yardcast::ui
