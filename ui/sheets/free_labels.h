#pragma once

#include <vector>

#include <QLineF>
#include <QRectF>

#include "ui/drawing/label_set.h"

class QPainter;

namespace yardcast::ui {

/// Where each label goes so that it covers none of the lines and boxes and no other label: as near to its point as it
/// can within `bounds`, in the fullest text that finds room nearby. A label that finds none is left out.
std::vector<PlacedLabel> placeFree(const std::vector<OverlayLabel>& labels, const PaintStyle& style,
                                   const std::vector<QLineF>& lines, std::vector<QRectF> taken, const QRectF& bounds);
/// Paints them, with a thin line to the point of those that had to go some way.
void paintFreeLabels(QPainter& painter, const std::vector<OverlayLabel>& labels, const PaintStyle& style,
                     const std::vector<QLineF>& lines, std::vector<QRectF> taken, const QRectF& bounds);

}  // namespace yardcast::ui
