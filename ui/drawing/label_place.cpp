#include <algorithm>
#include <cmath>
#include <limits>

#include "ui/drawing/painters.h"

namespace yardcast::ui {

namespace {

bool insideOutline(const QPolygonF& outline, const QRectF& box)
{
    for (const QPointF& corner : {box.topLeft(), box.topRight(), box.bottomLeft(), box.bottomRight(),
                                  QPointF(box.center().x(), box.top()), QPointF(box.center().x(), box.bottom())}) {
        if (!outline.containsPoint(corner, Qt::OddEvenFill)) {
            return false;
        }
    }
    return std::none_of(outline.begin(), outline.end(), [&](const QPointF& at) { return box.contains(at); });
}

/// What the name must keep clear of: cutouts, what stands on the counter, names of what lies under it.
std::vector<QRectF> obstacles(const Plan& plan, const Part& part, const Counter& counter,
                              const Projection& projection, const PaintStyle& style)
{
    std::vector<QRectF> taken;
    for (const Cutout& cutout : counter.cutouts) {
        taken.push_back(cutoutShape(part, cutout, projection).boundingRect());
    }
    for (const PartPtr& other : plan.parts) {
        const auto* appliance = other ? std::get_if<Appliance>(&other->body) : nullptr;
        if (!appliance) {
            continue;
        }
        const QRectF box = partShape(plan, *other, projection).boundingRect();
        if (levelsOf(plan, *other).highMm > counter.topMm) {
            taken.push_back(box);
        } else {
            QRectF name(QPointF(0.0, 0.0), textSizeMm(partLabel(*other), style));
            name.moveCenter(box.center());
            taken.push_back(name);
        }
    }
    return taken;
}

}  // namespace

LabelPlace counterLabelPlace(const Plan& plan, const Part& part, const Counter& counter,
                             const Projection& projection, const PaintStyle& style)
{
    const QPolygonF outline = ownToAbove(part, counter.outline, projection);
    const QRectF bounds = outline.boundingRect();
    TextLook look;
    look.bold = true;
    std::vector<QRectF> taken;
    bool asked = false;
    for (const QString& text : labelChoices(part)) {
        const QSizeF size = textSizeMm(text, style, look);
        const double margin = 0.25 * textSizeMm(QStringLiteral("0"), style, look).height();
        if (size.width() > bounds.width() || size.height() > bounds.height()) {
            continue;
        }
        if (!asked) {
            taken = obstacles(plan, part, counter, projection, style);
            asked = true;
        }
        LabelPlace best;
        double nearest = std::numeric_limits<double>::max();
        constexpr int kColumns = 24;
        constexpr int kRows = 12;
        for (int row = 0; row < kRows; ++row) {
            for (int column = 0; column < kColumns; ++column) {
                const QPointF at(bounds.left() + bounds.width() * (column + 0.5) / kColumns,
                                 bounds.top() + bounds.height() * (row + 0.5) / kRows);
                const QPointF away = at - bounds.center();
                const double far = std::hypot(away.x(), away.y());
                if (far >= nearest) {
                    continue;
                }
                QRectF box(QPointF(0.0, 0.0), size);
                box.moveCenter(at);
                box.adjust(-margin, -margin, margin, margin);
                const bool free = std::none_of(taken.begin(), taken.end(),
                                               [&](const QRectF& other) { return other.intersects(box); });
                if (free && insideOutline(outline, box)) {
                    nearest = far;
                    best = {text, at};
                }
            }
        }
        if (!best.text.isEmpty()) {
            return best;
        }
    }
    return {};
}

}  // namespace yardcast::ui
