#include "ui/drawing/label_set.h"

#include <algorithm>
#include <optional>

#include <QPainter>
#include <QRectF>

namespace yardcast::ui {

namespace {

constexpr double kGapUnits = 2.0;

QRectF centredOn(QPointF middle, QSizeF size)
{
    return {middle - QPointF(size.width() / 2.0, size.height() / 2.0), size};
}

/// Places for a label of this size about the point, the likeliest to be read first.
std::vector<QRectF> placesFor(const OverlayLabel& label, QSizeF size, const PaintStyle& style)
{
    const double clear = (label.clearUnits + kGapUnits) * style.mmPerUnit;
    const double down = clear + size.height() / 2.0;
    const double aside = clear + size.width() / 2.0;
    std::vector<QRectF> places;
    if (label.clearUnits <= 0.0) {
        places.push_back(centredOn(label.at, size));
    }
    // The second round steps over a line of text at the point.
    for (const double further : {0.0, 0.45 * size.height()}) {
        for (const QPointF shift : {QPointF(0.0, down + further), QPointF(0.0, -down - further),
                                    QPointF(aside + further, 0.0), QPointF(-aside - further, 0.0)}) {
            places.push_back(centredOn(label.at + shift, size));
        }
    }
    return places;
}

}  // namespace

void paintLabels(QPainter& painter, std::vector<OverlayLabel> labels, const PaintStyle& style,
                 std::vector<QRectF> taken)
{
    std::stable_sort(labels.begin(), labels.end(),
                     [](const OverlayLabel& a, const OverlayLabel& b) { return a.weight > b.weight; });
    for (const OverlayLabel& label : labels) {
        if (label.clearUnits > 0.0) {
            const double size = 2.0 * label.clearUnits * style.mmPerUnit;
            taken.push_back(centredOn(label.at, QSizeF(size, size)));
        }
    }
    const auto isFree = [&](const QRectF& place) {
        return std::none_of(taken.begin(), taken.end(), [&](const QRectF& other) { return other.intersects(place); });
    };
    for (const OverlayLabel& label : labels) {
        for (const QString& text : label.texts) {
            const std::vector<QRectF> places = placesFor(label, textSizeMm(text, style, label.look), style);
            const auto found = std::find_if(places.begin(), places.end(), isFree);
            if (found == places.end()) {
                continue;
            }
            TextLook look = label.look;
            look.align = Qt::AlignCenter;
            paintText(painter, found->center(), text, style, look);
            taken.push_back(*found);
            break;
        }
    }
}

}  // namespace yardcast::ui
