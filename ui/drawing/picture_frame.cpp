#include "ui/drawing/picture_frame.h"

#include <algorithm>

#include <QPainter>

namespace yardcast::ui {

double pictureUnit(const PaintStyle& style) { return (style.onPaper ? 1.0 : 3.0) * style.mmPerUnit; }

TextLook sideLook(const PaintStyle& style)
{
    TextLook look;
    look.sizeUnits = style.onPaper ? 3.4 : 11.0;
    look.bold = true;
    return look;
}

PictureFrame::PictureFrame(const QRectF& body, const QRectF& around, QPointF corner, const Words& words,
                           const PaintStyle& style)
    : body_(body), around_(around | body), corner_(corner), words_(words), style_(style), unit_(pictureUnit(style))
{
    QRectF outer = around_;
    for (const QString& text : {words_.left, words_.right}) {
        const QSizeF size = textSizeMm(text, style_, sideLook(style_));
        sideMm_ = std::max(sideMm_, size.height() + 2.0 * unit_);
        // Words longer than the side is deep: the picture grows with them.
        const double lack = size.width() - outer.height();
        if (lack > 0.0) outer.adjust(0.0, -lack / 2.0, 0.0, lack / 2.0);
    }
    outer.adjust(-sideMm_, 0.0, sideMm_, 0.0);
    const QSizeF front = textSizeMm(words_.front, style_, sideLook(style_));
    const double wider = front.width() - outer.width();
    if (wider > 0.0) outer.adjust(-wider / 2.0, 0.0, wider / 2.0, 0.0);
    outer.setBottom(outer.bottom() + front.height() + 8.5 * unit_);
    // A head on one line takes less of the sheet than a narrow one on several.
    head_ = handHeadSize(std::max(outer.width(), (style.onPaper ? 58.0 : 40.0) * unit_), words_.title, words_.below, style_);
    const double lack = head_.width() - outer.width();
    if (lack > 0.0) outer.adjust(-lack / 2.0, 0.0, lack / 2.0, 0.0);
    outer.setTop(outer.top() - head_.height() - 2.0 * unit_);
    bounds_ = outer;
}

void PictureFrame::paintSide(QPainter& painter, double x, const QString& text, double angleDeg) const
{
    TextLook look = sideLook(style_);
    look.angleDeg = angleDeg;
    paintText(painter, {x, body_.center().y()}, text, style_, look);
}

void PictureFrame::paint(QPainter& painter) const
{
    paintHandHead(painter, bounds_.topLeft(), bounds_.width(), words_.hand, words_.title, words_.below, style_);
    paintSide(painter, around_.left() - sideMm_ / 2.0, words_.left, -90.0);
    paintSide(painter, around_.right() + sideMm_ / 2.0, words_.right, 90.0);
    // An arrow from where one stands to the edge.
    const double foot = around_.bottom() + 7.5 * unit_;
    painter.setPen(outlinePen(style_));
    painter.drawLine(QPointF(body_.center().x(), foot), QPointF(body_.center().x(), around_.bottom() + unit_));
    paintArrowhead(painter, {body_.center().x(), around_.bottom() + 0.5 * unit_}, {0.0, -1.0}, style_, style_.ink.ink);
    TextLook look = sideLook(style_);
    look.align = Qt::AlignHCenter | Qt::AlignTop;
    paintText(painter, {body_.center().x(), foot}, words_.front, style_, look);
    painter.setPen(Qt::NoPen);
    painter.setBrush(style_.ink.ink);
    painter.drawEllipse(corner_, 1.6 * unit_, 1.6 * unit_);
    painter.setBrush(Qt::NoBrush);
}

}  // namespace yardcast::ui
