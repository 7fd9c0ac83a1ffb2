#pragma once

#include <functional>

#include <QRectF>

#include "ui/drawing/part_painter.h"

class QPainter;

namespace yardcast::ui {

/// Something drawn to scale: what it covers at a scale (drawing mm; type and dimensions grow with the scale), and how
/// it is painted.
struct ScaledDrawing {
    std::function<QRectF(const PaintStyle&)> bounds;
    std::function<void(QPainter&, const PaintStyle&)> paint;
};

struct DrawingFit {
    bool landscape = false;
    int scale = 1;
};

/// The largest ISO 5455 scale at which the drawing fits a sheet to scale, less `topMm` and `bottomMm` of its height;
/// upright where both ways give the same scale. The smallest scale there is when nothing fits.
DrawingFit fitOnSheet(const ScaledDrawing& drawing, double topMm = 0.0, double bottomMm = 0.0);
/// The largest ISO 5455 scale at which the drawing fits a box of mm of paper.
int fitInBox(const ScaledDrawing& drawing, QSizeF boxMm);
/// Paints it in the middle of the box.
void paintInBox(QPainter& painter, const ScaledDrawing& drawing, const QRectF& box, int scale);

}  // namespace yardcast::ui
