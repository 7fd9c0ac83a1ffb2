#include "ui/drawing/label_set.h"

#include <algorithm>
#include <numeric>
#include <utility>

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

OverlayLabel platedLabel(QPointF at, const QStringList& texts, const PaintStyle& style, double weight)
{
    OverlayLabel label;
    label.at = at;
    label.texts = texts;
    label.look.behind = style.ink.sheet;
    label.look.colour = style.ink.ink;
    label.weight = weight;
    return label;
}

std::vector<PlacedLabel> placeLabels(const std::vector<OverlayLabel>& labels, const PaintStyle& style,
                                     std::vector<QRectF> taken)
{
    std::vector<std::size_t> order(labels.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return labels[a].weight > labels[b].weight; });
    for (const OverlayLabel& label : labels) {
        if (label.clearUnits > 0.0) {
            const double size = 2.0 * label.clearUnits * style.mmPerUnit;
            taken.push_back(centredOn(label.at, QSizeF(size, size)));
        }
    }
    const auto isFree = [&](const QRectF& box) {
        return std::none_of(taken.begin(), taken.end(), [&](const QRectF& other) { return other.intersects(box); });
    };
    std::vector<PlacedLabel> placed;
    for (const std::size_t index : order) {
        const OverlayLabel& label = labels[index];
        for (const QString& text : label.texts) {
            const std::vector<QRectF> boxes = placesFor(label, textSizeMm(text, style, label.look), style);
            const auto found = std::find_if(boxes.begin(), boxes.end(), isFree);
            if (found != boxes.end()) {
                placed.push_back({index, text, *found});
                taken.push_back(*found);
                break;
            }
        }
    }
    return placed;
}

void paintLabels(QPainter& painter, const std::vector<OverlayLabel>& labels, const PaintStyle& style,
                 std::vector<QRectF> taken)
{
    for (const PlacedLabel& placed : placeLabels(labels, style, std::move(taken))) {
        TextLook look = labels[placed.label].look;
        look.align = Qt::AlignCenter;
        paintText(painter, placed.box.center(), placed.text, style, look);
    }
}

}  // namespace yardcast::ui
