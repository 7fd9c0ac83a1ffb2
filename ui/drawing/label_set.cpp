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

/// Places in the polygon, the nearest to the point first.
std::vector<QRectF> placesIn(const QPolygonF& polygon, QPointF at, QSizeF size)
{
    constexpr int kColumns = 13;
    constexpr int kRows = 9;
    const QRectF bounds = polygon.boundingRect();
    const QSizeF room = bounds.size() - size;
    std::vector<QRectF> places;
    if (room.width() < 0.0 || room.height() < 0.0) return places;
    const QRectF middles(bounds.topLeft() + QPointF(size.width() / 2.0, size.height() / 2.0), room);
    places.push_back(centredOn({std::clamp(at.x(), middles.left(), middles.right()),
                                std::clamp(at.y(), middles.top(), middles.bottom())}, size));
    for (int row = 0; row < kRows; ++row) {
        for (int column = 0; column < kColumns; ++column) {
            places.push_back(centredOn({middles.left() + middles.width() * column / (kColumns - 1),
                                        middles.top() + middles.height() * row / (kRows - 1)}, size));
        }
    }
    const auto far = [at](const QRectF& box) {
        const QPointF away = box.center() - at;
        return QPointF::dotProduct(away, away);
    };
    std::stable_sort(places.begin(), places.end(),
                     [&](const QRectF& a, const QRectF& b) { return far(a) < far(b); });
    return places;
}

/// Places beside a box: below, above, right and left of it, and then farther away.
std::vector<QRectF> placesBeside(const QRectF& beside, QSizeF size, const PaintStyle& style)
{
    std::vector<QRectF> places;
    for (const double awayUnits : {1.0, 4.0, 8.0, 13.0}) {
        const double away = awayUnits * 6.0 * (style.onPaper ? 0.25 : 1.0) * style.mmPerUnit;
        const double down = (beside.height() + size.height()) / 2.0 + away;
        const double aside = (beside.width() + size.width()) / 2.0 + away;
        for (const double slide : {0.0, 0.5, -0.5}) {
            const double x = slide * (beside.width() + size.width());
            const double y = slide * (beside.height() + size.height());
            for (const QPointF shift : {QPointF(x, down), QPointF(x, -down), QPointF(aside, y), QPointF(-aside, y)}) {
                places.push_back(centredOn(beside.center() + shift, size));
            }
        }
    }
    return places;
}

bool meetsAny(const std::vector<QRectF>& boxes, const QRectF& box)
{
    return std::any_of(boxes.begin(), boxes.end(), [&](const QRectF& other) { return other.intersects(box); });
}

QRectF roomBeside(const OverlayLabel& label, QSizeF size, const std::vector<QRectF>& taken, const PaintStyle& style)
{
    if (label.beside.isNull()) return {};
    for (const QRectF& place : placesBeside(label.beside, size, style)) {
        if (!meetsAny(taken, place)) return place;
    }
    return {};
}

/// Where the label goes in this text by its area, or its box where it is to be in full; null where there is no room.
QRectF roomFor(const OverlayLabel& label, QSizeF size, const std::vector<QRectF>& taken, bool avoids,
               const PaintStyle& style)
{
    if (!label.within.isEmpty()) {
        for (const QRectF& place : placesIn(label.within, label.at, size)) {
            if (meetsAny(taken, place) || (avoids && meetsAny(label.avoid, place))) continue;
            if (liesInside(label.within, place)) return place;
        }
    }
    return label.inFull ? roomBeside(label, size, taken, style) : QRectF();
}

/// The fullest text that finds room by the label's area and box.
PlacedLabel placedByArea(const OverlayLabel& label, std::size_t index, const std::vector<QRectF>& taken,
                         const PaintStyle& style)
{
    const auto first = [&](qsizetype count, bool avoids) -> PlacedLabel {
        for (qsizetype i = 0; i < count; ++i) {
            const QString& text = label.texts[i];
            const QRectF box = roomFor(label, textSizeMm(text, style, label.look), taken, avoids, style);
            if (!box.isNull()) return {index, text, box};
        }
        return {};
    };
    PlacedLabel placed;
    if (!label.avoid.empty()) placed = first(label.texts.size() - 1, true);
    if (placed.text.isEmpty()) placed = first(label.texts.size(), false);
    if (!placed.text.isEmpty() || label.inFull) return placed;
    // Beside it briefly: there it is in the way of others.
    for (qsizetype i = std::max<qsizetype>(0, label.texts.size() - 2); i < label.texts.size(); ++i) {
        const QString& text = label.texts[i];
        const QRectF box = roomBeside(label, textSizeMm(text, style, label.look), taken, style);
        if (!box.isNull()) return {index, text, box};
    }
    return placed;
}

}  // namespace

bool liesInside(const QPolygonF& polygon, const QRectF& box)
{
    for (const QPointF& corner : {box.topLeft(), box.topRight(), box.bottomLeft(), box.bottomRight(),
                                  QPointF(box.center().x(), box.top()), QPointF(box.center().x(), box.bottom())}) {
        if (!polygon.containsPoint(corner, Qt::OddEvenFill)) return false;
    }
    return std::none_of(polygon.begin(), polygon.end(), [&](const QPointF& at) { return box.contains(at); });
}

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
    const auto isFree = [&](const QRectF& box) { return !meetsAny(taken, box); };
    std::vector<PlacedLabel> placed;
    for (const std::size_t index : order) {
        const OverlayLabel& label = labels[index];
        if (!label.within.isEmpty() || !label.beside.isNull()) {
            PlacedLabel found = placedByArea(label, index, taken, style);
            if (found.text.isEmpty()) continue;
            taken.push_back(found.box);
            placed.push_back(std::move(found));
            continue;
        }
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
