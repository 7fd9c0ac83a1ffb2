#pragma once

#include <vector>

#include <QPointF>
#include <QPolygonF>
#include <QRectF>
#include <QString>
#include <QStringList>

#include "ui/drawing/marks.h"

class QPainter;

namespace yardcast::ui {

/// One label of an overlay, about a point of the drawing.
struct OverlayLabel {
    QPointF at;             ///< drawing mm
    double clearUnits = 0;  ///< half size of the sign at the point, in style units
    QStringList texts;      ///< ways to say it, the fullest first
    TextLook look;
    double weight = 0.0;    ///< where two do not fit, the heavier one is kept
    QPolygonF within;       ///< where not empty: only in here, as near to the point as there is room
    std::vector<QRectF> avoid;  ///< in there: covered only by what would find no room otherwise, or by its shortest text
    QRectF beside;          ///< where not null: beside this box too, in one of the last two texts, where none finds room within
    bool inFull = false;    ///< beside its box rather than in a shorter text
};

/// A label in ink on a plate of the sheet's colour.
OverlayLabel platedLabel(QPointF at, const QStringList& texts, const PaintStyle& style, double weight);

/// Where one of the labels goes, and in which of its texts.
struct PlacedLabel {
    std::size_t label = 0;  ///< index in the labels given
    QString text;
    QRectF box;             ///< drawing mm
};

/// Places labels so that none lies over another: each goes below, above, right or left of its point, in the fullest
/// text that finds room. One that finds none is left out; its sign on the drawing stays and its card has the figure.
/// Without a sign (`clearUnits` 0) the label is centred on its point first. One that has to stay within an area, or may
/// stand beside a box, goes by that instead. `taken`: boxes (drawing mm) that stay
/// clear; the signs of the labels do as well. The heaviest come first in the answer.
/// True where the box lies in the polygon with all its corners and none of the polygon's lies in the box.
bool liesInside(const QPolygonF& polygon, const QRectF& box);
std::vector<PlacedLabel> placeLabels(const std::vector<OverlayLabel>& labels, const PaintStyle& style,
                                     std::vector<QRectF> taken = {});
void paintLabels(QPainter& painter, const std::vector<OverlayLabel>& labels, const PaintStyle& style,
                 std::vector<QRectF> taken = {});

}  // namespace yardcast::ui
