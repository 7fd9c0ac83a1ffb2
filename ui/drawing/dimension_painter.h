#pragma once

#include <QPainterPath>
#include <QPointF>
#include <QString>
#include <vector>

#include "core/plan/plan.h"
#include "ui/drawing/part_painter.h"
#include "ui/drawing/projection.h"

namespace yardcast::ui {

/// What a dimension stands for, so that a click on it can be typed over.
struct DimensionTarget {
    enum class What {
        none,
        edgeLength,      ///< length of outline edge `index` of a counter, or side `index` of a rectangle part
        cutoutWidth, cutoutDepth, cutoutDiameter,
        cutoutFromLeft, cutoutFromRight, cutoutFromFront, cutoutFromBack,  ///< strip left beside the cutout
        height, level,   ///< elevation: height of a part, its top above the datum
        overall
    };
    What what = What::none;
    std::string part;
    std::string cutout;
    int index = -1;
    friend bool operator==(const DimensionTarget&, const DimensionTarget&) = default;
};

/// One dimension after ISO 129-1, in drawing mm: measured from a to b, its line moved by `offset` to the left of a->b.
struct Dimension {
    QPointF a;
    QPointF b;
    double offsetUnits = 24.0;  ///< in style units (pixels or mm of paper)
    double offsetMm = 0.0;       ///< added to it, in drawing mm, so that a row lies outside whatever it is measured on
    double valueMm = 0.0;
    DimensionTarget target;
    /// Rows above its line the figure moves up, tied by a leader, where a chain is too dense for one row.
    int figureRow = 0;
    /// 0: the figure stands over the middle; 1: beyond b, -1: beyond a, where the span is too narrow for it.
    int figureEnd = 0;
};

/// Dimensions of chosen parts (all their sides and cutouts).
std::vector<Dimension> partDimensions(const Plan& plan, const Part& part, const Projection& projection);
/// Dimensions of the whole drawing for paper: chains and overall sizes outside it.
std::vector<Dimension> drawingDimensions(const Plan& plan, const Projection& projection);
/// Dimensions of one part drawn alone for paper: all that is needed to build it.
std::vector<Dimension> sheetDimensions(const Plan& plan, const Part& part, const Projection& projection);
/// Gives figures of chains that would run into one another rows of their own; needs the style for the type's size.
void staggerFigures(std::vector<Dimension>& dimensions, const PaintStyle& style);
/// What the figure says: whole mm, or one decimal where the value is not whole; a diameter with its sign before it.
QString dimensionFigure(const Dimension& dimension);
/// Everything the dimension covers (lines and figure), drawing mm.
QRectF dimensionBounds(const Dimension& dimension, const PaintStyle& style);
/// Paints one; returns the shape of its figure for hits. The figure is kept readable from below or from the right.
QPainterPath paintDimension(QPainter& painter, const Dimension& dimension, const PaintStyle& style);

}  // namespace yardcast::ui
