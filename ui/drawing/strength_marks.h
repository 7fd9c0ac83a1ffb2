#pragma once

#include <QPointF>
#include <QTransform>

#include "core/geometry/region.h"
#include "ui/drawing/part_painter.h"

class QPainter;

/// Signs of the stage Strength, told apart by their shapes. All in drawing mm.
namespace yardcast::ui {

inline constexpr double kHandMarkPx = 6.0;
inline constexpr double kLiftsOffMarkPx = 8.0;
inline constexpr double kPersonMarkPx = 9.0;

/// A ring with a cross hair about the place of the greatest use.
void paintWorstPlace(QPainter& painter, QPointF at, double usePercent, const PaintStyle& style);
/// A ring: a hand or a grip.
void paintHand(QPainter& painter, QPointF at, const PaintStyle& style);
/// The area on which it is held, dashed; in the colour of caution where it lifts off.
void paintHeldRegion(QPainter& painter, const Region& region, const QTransform& plane, const PaintStyle& style,
                     bool liftsOff);
/// An arrow up from a bar: there is air between the two.
void paintLiftsOff(QPainter& painter, QPointF at, const PaintStyle& style);
/// An arrow up against the underside: what presses from below.
void paintPush(QPainter& painter, QPointF at, const PaintStyle& style);
/// The cut across the worst strip.
void paintCut(QPainter& painter, QPointF from, QPointF to, const PaintStyle& style);
/// The edge it is turned about or stands on.
void paintStandingEdge(QPainter& painter, QPointF from, QPointF to, const PaintStyle& style);
/// Head and shoulders from above.
void paintPerson(QPainter& painter, QPointF at, const PaintStyle& style);

}  // namespace yardcast::ui
