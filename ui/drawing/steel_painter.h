#pragma once

#include <vector>

#include "core/reinforcement/steel_layout.h"
#include "ui/drawing/label_set.h"
#include "ui/drawing/own_map.h"
#include "ui/drawing/part_painter.h"

class QPainter;

/// Mesh and bars of one casting as they are laid, the same on the screen, on paper and in SVG. Conventions of ISO 3766:
/// a piece of mesh is its outline with one diagonal and its mark, a bar a wide line; dashed is what is only proposed.
namespace yardcast::ui {

/// `turnDeg`: how far the casting's own x is turned in the drawing, counter-clockwise as seen; the wires follow it.
void paintSteelLayout(QPainter& painter, const CastingSteelLayout& layout, const OwnMap& map, double turnDeg,
                      const PaintStyle& style);
/// Marks with sizes: "mesh 1, 1760 × 560 mm", "bar 1: 2 × Ø8, 25 mm above the mould base", "lap 150"; proposed bars say so.
std::vector<OverlayLabel> steelLabels(const CastingSteelLayout& layout, const OwnMap& map, const PaintStyle& style);
/// Where two pieces of mesh lie over one another; own frame.
std::vector<Box> meshLaps(const MeshLayout& mesh);

}  // namespace yardcast::ui
