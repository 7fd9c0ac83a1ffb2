#pragma once

#include <vector>

#include <QRectF>
#include <QString>

#include "ui/drawing/mould_painter.h"

/// What lies how high above the base board, in the position in which the piece is poured.
namespace yardcast::ui {

struct MouldHeight {
    QString name;
    double fromMm = 0.0;
    double toMm = 0.0;
    bool lies = false;      ///< it is laid at `fromMm`
    bool fills = false;     ///< its top at `toMm` is to be seen when it is filled
};
/// From the base up: concrete, foam, steel, formers, strips.
std::vector<MouldHeight> mouldHeights(const MouldSubject& subject);

/// Where a section shows most: through the middle of the largest cutout and beside it, mm in the mould frame.
double mouldSectionXMm(const MouldSubject& subject);
/// The section across at x of the mould frame, seen from the right end of the mould: the front edge at the left. Drawing
/// mm, the upper face of the base at y 0; heights above the base at its right.
QRectF mouldSectionBounds(const MouldSubject& subject, double xMm, const PaintStyle& style);
void paintMouldSection(QPainter& painter, const MouldSubject& subject, double xMm, const PaintStyle& style);

}  // namespace yardcast::ui
