#pragma once

#include <optional>
#include <vector>

#include <QPainterPath>
#include <QRectF>
#include <QTransform>

#include "core/castings/casting.h"
#include "core/plan/plan.h"
#include "core/structure/strength.h"
#include "ui/drawing/label_set.h"
#include "ui/drawing/part_painter.h"
#include "ui/drawing/projection.h"
#include "ui/drawing/use_picture.h"

/// What lies over the drawing at the stage Strength: from above the use of each counter, what holds it, and its worst
/// place; in elevation the use of uprights that are seen, and the deflected shape of counters.
namespace yardcast::ui {

/// What is shown of one casting.
struct StrengthItem {
    PartPtr part;
    CastingPtr casting;
    CastingStrengthPtr strength;
    const CaseResult* result = nullptr;   ///< one of `strength`; null: it has none to show
    bool saysCase = false;                ///< the case is not the same for all, so its name is written
    bool chosen = false;                  ///< everything is said about it, whether there is room or not
    std::optional<QTransform> plane;      ///< own frame to drawing, where the plane of the field is seen
    QPainterPath outline;                 ///< of the casting, own frame; empty where the plane is not seen
    QRectF bounds;                        ///< drawing mm, without labels

    bool shows(const StrengthItem& other) const;
};

/// From the own frame (counters: seen from above; uprights: own x and height) to the drawing, where that plane is
/// seen in this view and not from its edge.
std::optional<QTransform> planeInView(const Part& part, const Projection& projection);
/// Everything but the labels' places. Empty where there is nothing to be seen of the casting in this view.
std::optional<StrengthItem> strengthItem(const PartPtr& part, const CastingPtr& casting,
                                         const CastingStrengthPtr& strength, const CaseResult* result, const Projection& projection,
                                         const PaintStyle& style);

/// By how much deflections are drawn larger than they are: 1, 2 or 5 times a power of ten, the largest shown about as
/// long as a word is high. Nothing where nothing bends.
std::optional<double> deflectionScale(const std::vector<StrengthItem>& items, const PaintStyle& style);

/// The colours and lines of one item; items in the order from low to high.
void paintUse(QPainter& painter, const StrengthItem& item, UsePictures& pictures, const PaintStyle& style);
/// Rests, hands, edges, the worst place, the person; in elevation the deflected shape.
void paintStrengthMarks(QPainter& painter, const StrengthItem& item, const Projection& projection,
                        const PaintStyle& style, double deflectionScale);
/// What stands beside them, to be placed together with those of all others.
std::vector<OverlayLabel> strengthLabels(const StrengthItem& item, UsePictures& pictures,
                                         const Projection& projection, const PaintStyle& style);
/// The name of a counter, which the colours cover, and where it stands.
struct CoveredName {
    QString text;
    QRectF box;
};
std::optional<CoveredName> coveredName(const Plan& plan, const StrengthItem& item, const Projection& projection,
                                       const PaintStyle& style);

}  // namespace yardcast::ui
