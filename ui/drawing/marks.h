#pragma once

#include <vector>

#include <QBrush>
#include <QLineF>
#include <QPainterPath>
#include <QPointF>
#include <QSizeF>
#include <QString>

#include "ui/drawing/part_painter.h"

class QPainter;

/// What all painters of the drawing share: fills, line kinds, text at a size in style units. Nothing here relies on
/// clipping, so that every paint device (screen, PDF, SVG) gives the same picture.
namespace yardcast::ui {

/// Line kinds of ISO 128-2, narrow unless `wide` is asked for.
QPen outlinePen(const PaintStyle& style);                          ///< continuous, wide: visible outlines
QPen thinPen(const PaintStyle& style, const QColor& colour);       ///< continuous, narrow
QPen hiddenPen(const PaintStyle& style, const QColor& colour);     ///< dashed, narrow: hidden outlines
QPen centrePen(const PaintStyle& style, const QColor& colour);     ///< long dash, dot: centre lines
QPen phantomPen(const PaintStyle& style, const QColor& colour);    ///< long dash, two dots: neighbouring things

/// Stretches of the line through `origin` along `direction` that lie inside the path (odd-even rule), as distances
/// along it in units of the direction's length.
struct Span {
    double from = 0.0;
    double to = 0.0;
};
std::vector<Span> spansInside(const std::vector<QPolygonF>& polygons, QPointF origin, QPointF direction);
/// Parallel lines inside the path, `spacingMm` apart, at `angleDeg` (counter-clockwise as seen). The lines of all
/// paths lie on one lattice, so that pieces of one part join.
std::vector<QLineF> hatchLines(const QPainterPath& path, double angleDeg, double spacingMm);

/// Concrete seen: its tone with fine dots.
void fillCast(QPainter& painter, const QPainterPath& path, const PaintStyle& style);
/// Concrete cut: hatched (ISO 128-3, general representation of a cut).
void fillCut(QPainter& painter, const QPainterPath& path, const PaintStyle& style);
/// Foam: its tone with crosses.
void fillFoam(QPainter& painter, const QPainterPath& path, const PaintStyle& style);
/// Crosses of a hidden core, no tone.
void crossesIn(QPainter& painter, const QPainterPath& path, const PaintStyle& style);

struct TextLook {
    double sizeUnits = 0.0;        ///< em height in style units; 0: the style's usual
    double angleDeg = 0.0;         ///< clockwise as seen, about the anchor
    Qt::Alignment align = Qt::AlignCenter;
    QColor colour;                 ///< invalid: ink
    QColor behind;                 ///< a plate behind the text; invalid: none
    bool bold = false;
};

/// Usual em height of labels and of figures, style units.
double labelUnits(const PaintStyle& style);
double figureUnits(const PaintStyle& style);
/// Width and height of one line in drawing mm.
QSizeF textSizeMm(const QString& text, const PaintStyle& style, const TextLook& look = {});
/// Paints text (lines parted by \n) with its `align` point at `at`; returns its shape in drawing mm.
QPainterPath paintText(QPainter& painter, QPointF at, const QString& text, const PaintStyle& style,
                       const TextLook& look = {});
/// A filled arrowhead of ISO 129-1 (30 degrees) with its point at `tip`, coming along `direction` (drawing).
void paintArrowhead(QPainter& painter, QPointF tip, QPointF direction, const PaintStyle& style,
                    const QColor& colour);

}  // namespace yardcast::ui
