#pragma once

#include <vector>

#include <QPointF>
#include <QRectF>
#include <QString>

#include "ui/drawing/part_painter.h"

class QPainter;

/// Running dimensions after ISO 129-1: from one datum, which is marked with a small circle, along one line; each figure
/// says how far it is from there. Fewer lines than chains, and no sums to do with cold fingers.
namespace yardcast::ui {

struct RunningStop {
    double atMm = 0.0;      ///< along the row, drawing mm
    double edgeMm = 0.0;    ///< across it: where what is measured ends, drawing mm
    QString about;          ///< "K1"; empty for the outline
    bool isMiddle = false;  ///< of what is round: its middle, not an edge
};

struct RunningRow {
    bool across = true;             ///< along x of the drawing, else along y
    double datumMm = 0.0;           ///< where nought is, along the row
    double lineMm = 0.0;            ///< where its line lies, across it
    double outwards = 1.0;          ///< +1: figures below (right of) the line, -1: above (left of) it
    std::vector<RunningStop> stops;
    QString title{};                ///< of the row, beyond its datum
};

/// Without stops nearer to one another than half a mm, in order from the datum.
RunningRow tidied(RunningRow row);
QRectF runningBounds(const RunningRow& row, const PaintStyle& style);
void paintRunning(QPainter& painter, const RunningRow& row, const PaintStyle& style);

}  // namespace yardcast::ui
