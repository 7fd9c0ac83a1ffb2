#pragma once

#include <QPointF>
#include <QRectF>
#include <QSizeF>
#include <QString>

#include "ui/drawing/hand_marks.h"
#include "ui/drawing/marks.h"

/// Inner seam of the pictures of moulds: what says which view a picture is.
namespace yardcast::ui {

/// Style units of these pictures: a mm of paper, three pixels of the screen; drawing mm.
double pictureUnit(const PaintStyle& style);
/// Bold words beside the picture and in it.
TextLook sideLook(const PaintStyle& style);

/// Words at the sides, the front, the marked corner, the head: what both pictures have.
class PictureFrame {
public:
    struct Words {
        Hand hand = Hand::asItStands;
        QString title;
        QString below;
        QString left;       ///< may have two lines
        QString right;
        QString front;
    };
    /// `body` is the thing, `around` what has to stay clear about it (dimensions); drawing mm.
    PictureFrame(const QRectF& body, const QRectF& around, QPointF corner, const Words& words, const PaintStyle& style);
    QRectF bounds() const { return bounds_; }
    void paint(QPainter& painter) const;

private:
    void paintSide(QPainter& painter, double x, const QString& text, double angleDeg) const;

    QRectF body_;
    QRectF around_;
    QPointF corner_;
    Words words_;
    PaintStyle style_;
    double unit_;
    double sideMm_ = 0.0;
    QSizeF head_;
    QRectF bounds_;
};

}  // namespace yardcast::ui
