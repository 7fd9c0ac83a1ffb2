#pragma once

#include <vector>

#include <QPointF>
#include <QString>

#include "core/plan/plan.h"
#include "ui/drawing/part_painter.h"
#include "ui/drawing/projection.h"

namespace yardcast::ui {

/// Height of the ground above the datum at a point of the plan, mm: level at the origin less the fall.
double groundLevelMm(const Plan& plan, Point at);

/// One level of the elevation, for its mark at the side.
struct LevelMark {
    double levelMm = 0.0;
    QString figure;  ///< "+900", "0", "-35"
};
/// The datum, the faces of counters and the tops of panels, from low to high; no two marks are equal.
std::vector<LevelMark> levelMarks(const Plan& plan, const Projection& projection);
/// Paints marks at `x` (drawing mm), figures to the right of it; figures that would overlap move apart.
void paintLevelMarks(QPainter& painter, const std::vector<LevelMark>& marks, double x, const PaintStyle& style);

}  // namespace yardcast::ui
