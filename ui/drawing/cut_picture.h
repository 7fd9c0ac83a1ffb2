#pragma once

#include <functional>

#include <QRectF>

#include "core/purchase/cut_lists.h"
#include "ui/drawing/part_painter.h"

class QPainter;

/// What is sawn from one sheet or from lengths, for the screen and for paper. The painter works in mm of the material, the
/// sheet's low corner below left. Told apart without colour: what is left is hatched, what is ripped at home dashed.
namespace yardcast::ui {

/// How many mm of the material one unit of the style covers, so that all of it finds room: what stands around the material is
/// in units, so this is no plain proportion.
double cutPictureScale(const std::function<QRectF(const PaintStyle&)>& bounds, PaintStyle style, QSizeF roomUnits);

/// The sheet with its measures around it.
QRectF cutSheetBounds(const SheetJob& job, const CutSheet& sheet, const PaintStyle& style);
/// Each piece with its name and size where they find room, the cuts numbered in sawing order, remainders with their size.
void paintCutSheet(QPainter& painter, const SheetJob& job, const CutSheet& sheet, const PaintStyle& style);

/// All lengths of a plan, a row for each way of cutting, with how often it is cut.
QRectF cutBarsBounds(const BarJob& job, const BarPlan& plan, const PaintStyle& style);
void paintCutBars(QPainter& painter, const BarJob& job, const BarPlan& plan, const PaintStyle& style);

}  // namespace yardcast::ui
