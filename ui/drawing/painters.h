#pragma once

#include <string>
#include <vector>

#include <QString>
#include <QStringList>

#include "core/assess/assessment.h"
#include "ui/drawing/marks.h"

/// Inner seams of the drawing floor: what the dispatch in part_painter.cpp shares with the two views.
namespace yardcast::ui {

void paintPartAbove(QPainter& painter, const Plan& plan, const Part& part, const Projection& projection,
                    const PaintStyle& style);
void paintPartInFront(QPainter& painter, const Plan& plan, const Part& part, const Projection& projection,
                      const PaintStyle& style);
QPainterPath partShapeInFront(const Plan& plan, const Part& part, const Projection& projection);

QPainterPath pathOf(const QPolygonF& polygon);
/// A ring of the part's own frame brought into the view from above.
QPolygonF ownToAbove(const Part& part, const Ring& own, const Projection& projection);
/// "C1 Sink counter", or the id alone.
QString partLabel(const Part& part);
/// Ways to write the label, the fullest first: in one line, in two or three, the id alone.
QStringList labelChoices(const Part& part);
/// The name on one line, in two, or the id alone: the first that fits the room; empty when nothing does.
QString labelThatFits(const Part& part, QSizeF roomMm, const PaintStyle& style);
/// Hidden line of the rim, in the own frame: for each rimmed edge the stretch between the inner corners.
std::vector<std::pair<Point, Point>> rimInnerEdges(const Counter& counter);
bool isRimmed(const Counter& counter, int edge);
/// The counters that lie over some of the part as seen from above.
std::vector<const Part*> countersOver(const Plan& plan, const Part& part);
/// Where a counter's name stands seen from above: inside the outline, clear of cutouts and of what stands on it or is
/// named below it. Empty text when there is no room.
struct LabelPlace {
    QString text;
    QPointF at;  ///< drawing mm
};
/// What words on the counter should keep clear of: cutouts, what stands on it, names of what lies under it.
std::vector<QRectF> labelObstacles(const Plan& plan, const Part& part, const Counter& counter,
                                   const Projection& projection, const PaintStyle& style);
LabelPlace counterLabelPlace(const Plan& plan, const Part& part, const Counter& counter,
                             const Projection& projection, const PaintStyle& style);
/// Where the names of the counters stand that there are castings of; nothing in elevation or without names.
std::vector<QRectF> counterNameBoxes(const Plan& plan, const std::vector<PlacedCasting>& castings,
                                     const Projection& projection, const PaintStyle& style);
/// Box of the ground line between two places along the elevation, drawing mm.
QRectF groundLineInFront(const Plan& plan, const Projection& projection, double leftX, double rightX);

}  // namespace yardcast::ui
