#include <algorithm>
#include <cmath>
#include <limits>
#include <string_view>
#include <unordered_set>

#include "ui/drawing/label_set.h"
#include "ui/drawing/painters.h"

namespace yardcast::ui {

std::vector<QRectF> labelObstacles(const Plan& plan, const Part& part, const Counter& counter,
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
            taken = labelObstacles(plan, part, counter, projection, style);
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
                if (free && liesInside(outline, box)) {
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

std::vector<QRectF> counterNameBoxes(const Plan& plan, const std::vector<PlacedCasting>& castings,
                                     const Projection& projection, const PaintStyle& style)
{
    std::vector<QRectF> boxes;
    if (!style.showNames || !projection.isAbove()) {
        return boxes;
    }
    TextLook look;
    look.bold = true;
    std::unordered_set<std::string_view> shown;
    for (const PlacedCasting& placed : castings) {
        if (placed.casting) shown.insert(placed.casting->part);
    }
    for (const PartPtr& part : plan.parts) {
        const auto* counter = part ? std::get_if<Counter>(&part->body) : nullptr;
        if (!counter || shown.count(part->id) == 0) {
            continue;
        }
        const LabelPlace place = counterLabelPlace(plan, *part, *counter, projection, style);
        if (!place.text.isEmpty()) {
            QRectF box(QPointF(0.0, 0.0), textSizeMm(place.text, style, look));
            box.moveCenter(place.at);
            boxes.push_back(box);
        }
    }
    return boxes;
}

}  // namespace yardcast::ui
