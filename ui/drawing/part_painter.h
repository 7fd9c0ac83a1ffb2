#pragma once

#include <QPainterPath>

#include "core/plan/plan.h"
#include "ui/drawing/projection.h"
#include "ui/look/ink.h"

class QPainter;

namespace yardcast::ui {

/// How lines are drawn. On screen pens are cosmetic (widths in pixels); on paper widths are mm of paper
/// (ISO 128-2: wide 0.5, narrow 0.25) at the drawing's scale.
struct PaintStyle {
    Ink ink;
    bool onPaper = false;
    double mmPerUnit = 1.0;   ///< drawing mm that one pixel (screen) or one mm of paper covers
    bool showNames = true;
    bool nameCastings = true;   ///< counters, supports and panels too: not where words over the drawing name them
    double devicePixels = 1.0;  ///< pixels of the device in one of the screen's units: cosmetic pens count those

    double wide() const { return onPaper ? 0.5 * mmPerUnit : 2.0; }
    double narrow() const { return onPaper ? 0.25 * mmPerUnit : 1.0; }
    QPen pen(const QColor& colour, double widthUnits, Qt::PenStyle style = Qt::SolidLine) const;
};

/// The one drawing code for parts: scene, paper and SVG use it. The painter works in drawing mm (Projection).
void paintPart(QPainter& painter, const Plan& plan, const Part& part, const Projection& projection,
               const PaintStyle& style);
/// Outer shape of the part in the view, for hits and selection marks.
QPainterPath partShape(const Plan& plan, const Part& part, const Projection& projection);
/// The cutout of a counter, seen from above.
QPainterPath cutoutShape(const Part& part, const Cutout& cutout, const Projection& projection);
/// Site outline, ground line, fixtures with their letters.
void paintSite(QPainter& painter, const Plan& plan, const Projection& projection, const PaintStyle& style);
void paintFixture(QPainter& painter, const Fixture& fixture, const Projection& projection, const PaintStyle& style);
QPainterPath fixtureShape(const Fixture& fixture, const Projection& projection);
/// The fixture with its words, for a sheet that has to hold them.
QRectF fixtureBounds(const Fixture& fixture, const Projection& projection, const PaintStyle& style);
/// Bounds of the parts with the swing of their doors (in elevation also of the ground line under them); null for a plan
/// without parts.
QRectF partsBounds(const Plan& plan, const Projection& projection);
/// Bounds of everything drawn, in drawing mm; a metre square for an empty plan.
QRectF drawingBounds(const Plan& plan, const Projection& projection);
/// Parts in the order to paint them in the view (far or low first).
std::vector<const Part*> paintOrder(const Plan& plan, const Projection& projection);

}  // namespace yardcast::ui
