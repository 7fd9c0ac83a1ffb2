#pragma once

#include <QRectF>
#include <QString>

#include "ui/drawing/part_painter.h"

class QPainter;

/// What keeps two pictures of one casting apart, in words and in shape, so that a copy in black and white, or an eye
/// that sees no colours, cannot take one for the other.
namespace yardcast::ui {

enum class Hand { asItStands, straight, mirrored };

/// Two triangles and an axis between them: one the mirror image of the other, or the same way round, or only one.
void paintHandGlyph(QPainter& painter, const QRectF& box, Hand hand, const PaintStyle& style);
/// The head over a picture, `widthMm` wide or as wide as its words need: of a mirrored one light on dark, of the others
/// dark on light. It covers what `handHeadSize` gives.
void paintHandHead(QPainter& painter, QPointF topLeft, double widthMm, Hand hand, const QString& title,
                   const QString& below, const PaintStyle& style);
QSizeF handHeadSize(double widthMm, const QString& title, const QString& below, const PaintStyle& style);
/// A small mark over a piece of the plan: the glyph on a plate, `halfUnits` to each side of its middle.
void paintHandBadge(QPainter& painter, QPointF at, Hand hand, const PaintStyle& style);
double handBadgeUnits(const PaintStyle& style);

}  // namespace yardcast::ui
