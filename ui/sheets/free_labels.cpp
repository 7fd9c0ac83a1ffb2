#include "ui/sheets/free_labels.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <utility>

#include <QPainter>

namespace yardcast::ui {

namespace {

constexpr double kAirUnits = 0.5;
constexpr double kFarUnits = 2.5;

/// Liang and Barsky: whether a part of the segment lies in the box.
bool crosses(const QLineF& line, const QRectF& box)
{
    double from = 0.0;
    double to = 1.0;
    const auto cut = [&](double step, double room) {
        if (step == 0.0) return room >= 0.0;
        const double at = room / step;
        if (step < 0.0) {
            from = std::max(from, at);
        } else {
            to = std::min(to, at);
        }
        return from <= to;
    };
    return cut(-line.dx(), line.x1() - box.left()) && cut(line.dx(), box.right() - line.x1()) &&
           cut(-line.dy(), line.y1() - box.top()) && cut(line.dy(), box.bottom() - line.y1());
}

/// Steps away from a point in style units, the nearest first; sideways counts less, as words are wide.
std::vector<QPointF> steps()
{
    std::vector<QPointF> found;
    for (int i = -20; i <= 20; ++i) {
        for (int j = -18; j <= 18; ++j) found.emplace_back(2.0 * i, 1.0 * j);
    }
    const auto cost = [](QPointF step) { return std::hypot(0.6 * step.x(), step.y()); };
    std::stable_sort(found.begin(), found.end(), [&](QPointF a, QPointF b) { return cost(a) < cost(b); });
    return found;
}

QPointF nearestIn(const QRectF& box, QPointF at)
{
    return {std::clamp(at.x(), box.left(), box.right()), std::clamp(at.y(), box.top(), box.bottom())};
}

}  // namespace

std::vector<PlacedLabel> placeFree(const std::vector<OverlayLabel>& labels, const PaintStyle& style,
                                   const std::vector<QLineF>& lines, std::vector<QRectF> taken, const QRectF& bounds)
{
    const double unit = style.mmPerUnit;
    const double air = kAirUnits * unit;
    const std::vector<QPointF> ways = steps();
    std::vector<std::size_t> order(labels.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return labels[a].weight > labels[b].weight; });
    std::vector<PlacedLabel> placed;
    for (const std::size_t index : order) {
        const OverlayLabel& label = labels[index];
        bool found = false;
        for (const QString& text : label.texts) {
            const QSizeF size = textSizeMm(text, style, label.look);
            for (const QPointF& way : ways) {
                QRectF box(QPointF(0.0, 0.0), size);
                box.moveCenter(label.at + way * unit);
                const QRectF wide = box.adjusted(-air, -air, air, air);
                if (!bounds.contains(wide)) continue;
                const auto covers = [&](const QRectF& other) { return other.intersects(wide); };
                const auto meets = [&](const QLineF& line) { return crosses(line, wide); };
                if (std::any_of(taken.begin(), taken.end(), covers)) continue;
                if (std::any_of(lines.begin(), lines.end(), meets)) continue;
                placed.push_back({index, text, box});
                taken.push_back(wide);
                found = true;
                break;
            }
            if (found) break;
        }
    }
    return placed;
}

void paintFreeLabels(QPainter& painter, const std::vector<OverlayLabel>& labels, const PaintStyle& style,
                     const std::vector<QLineF>& lines, std::vector<QRectF> taken, const QRectF& bounds)
{
    const std::vector<PlacedLabel> placed = placeFree(labels, style, lines, std::move(taken), bounds);
    for (const PlacedLabel& one : placed) {
        const QLineF leader(nearestIn(one.box, labels[one.label].at), labels[one.label].at);
        if (leader.length() < kFarUnits * style.mmPerUnit) continue;
        painter.setPen(thinPen(style, style.ink.ink));
        painter.drawLine(leader);
    }
    for (const PlacedLabel& one : placed) {
        TextLook look = labels[one.label].look;
        look.align = Qt::AlignCenter;
        paintText(painter, one.box.center(), one.text, style, look);
    }
}

}  // namespace yardcast::ui
