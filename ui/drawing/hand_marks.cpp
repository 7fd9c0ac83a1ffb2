#include "ui/drawing/hand_marks.h"

#include <algorithm>

#include <QPainter>

#include "ui/drawing/marks.h"

namespace yardcast::ui {

namespace {

double perUnit(const PaintStyle& style) { return (style.onPaper ? 1.0 : 3.0) * style.mmPerUnit; }

TextLook titleLook(const PaintStyle& style)
{
    TextLook look;
    look.sizeUnits = style.onPaper ? 4.4 : 13.0;
    look.bold = true;
    return look;
}

TextLook belowLook(const PaintStyle& style)
{
    TextLook look;
    look.sizeUnits = style.onPaper ? 3.4 : 11.0;
    return look;
}

/// The title on one line or on two, parted where that makes the longer one shortest.
QString fitted(const QString& text, double widthMm, const PaintStyle& style, const TextLook& look)
{
    if (textSizeMm(text, style, look).width() <= widthMm) return text;
    const QStringList words = text.split(QLatin1Char(' '));
    QStringList lines;
    QString line;
    for (const QString& word : words) {
        const QString longer = line.isEmpty() ? word : line + QLatin1Char(' ') + word;
        if (!line.isEmpty() && textSizeMm(longer, style, look).width() > widthMm) {
            lines.append(line);
            line = word;
        } else {
            line = longer;
        }
    }
    lines.append(line);
    return lines.join(QLatin1Char('\n'));
}

double glyphWidth(const PaintStyle& style) { return 9.0 * perUnit(style); }

QPainterPath triangle(QPointF foot, double width, double height, double sense)
{
    QPainterPath path(foot);
    path.lineTo(foot + QPointF(sense * width, 0.0));
    path.lineTo(foot + QPointF(0.0, -height));
    path.closeSubpath();
    return path;
}

}  // namespace

void paintHandGlyph(QPainter& painter, const QRectF& box, Hand hand, const PaintStyle& style)
{
    const double half = box.width() / 2.0;
    const double gap = 0.14 * half;
    const double width = half - 2.0 * gap;
    const double height = 0.8 * box.height();
    const double foot = box.center().y() + height / 2.0;
    const QPen pen = painter.pen();
    const QPen line = thinPen(style, pen.color());
    painter.setPen(line);
    painter.setBrush(Qt::NoBrush);
    if (hand == Hand::asItStands) {
        painter.drawPath(triangle({box.center().x() - width / 2.0, foot}, width, height, 1.0));
    } else {
        const bool mirrored = hand == Hand::mirrored;
        const QPointF left(mirrored ? box.center().x() - gap : box.left() + gap, foot);
        painter.drawPath(triangle(left, width, height, mirrored ? -1.0 : 1.0));
        painter.fillPath(triangle({box.center().x() + gap, foot}, width, height, 1.0), pen.color());
        QPen axis = line;
        axis.setStyle(Qt::DashLine);
        painter.setPen(axis);
        painter.drawLine(QPointF(box.center().x(), box.top()), QPointF(box.center().x(), box.bottom()));
    }
    painter.setPen(pen);
}

QSizeF handHeadSize(double widthMm, const QString& title, const QString& below, const PaintStyle& style)
{
    const double unit = perUnit(style);
    const double room = std::max(20.0 * unit, widthMm - glyphWidth(style) - 5.0 * unit);
    const QSizeF first = textSizeMm(fitted(title, room, style, titleLook(style)), style, titleLook(style));
    QSizeF second;
    if (!below.isEmpty()) {
        second = textSizeMm(fitted(below, room, style, belowLook(style)), style, belowLook(style));
    }
    const double words = std::max(first.width(), second.width()) + glyphWidth(style) + 5.0 * unit;
    return {std::max(widthMm, words), std::max(first.height() + second.height(), 6.0 * unit) + 1.6 * unit};
}

void paintHandHead(QPainter& painter, QPointF topLeft, double widthMm, Hand hand, const QString& title,
                   const QString& below, const PaintStyle& style)
{
    const double unit = perUnit(style);
    const QSizeF size = handHeadSize(widthMm, title, below, style);
    const QRectF box(topLeft, size);
    const bool mirrored = hand == Hand::mirrored;
    const QColor back = mirrored ? style.ink.ink : style.ink.sheet;
    const QColor fore = mirrored ? style.ink.sheet : style.ink.ink;
    painter.fillRect(box, back);
    painter.setBrush(Qt::NoBrush);
    painter.setPen(thinPen(style, style.ink.ink));
    painter.drawRect(box);
    painter.setPen(thinPen(style, fore));
    paintHandGlyph(painter, QRectF(box.left() + 1.5 * unit, box.center().y() - 3.0 * unit, 8.0 * unit, 6.0 * unit), hand,
                   style);
    const double room = std::max(20.0 * unit, widthMm - glyphWidth(style) - 5.0 * unit);
    const double left = box.left() + glyphWidth(style) + 2.5 * unit;
    TextLook look = titleLook(style);
    look.align = Qt::AlignLeft | Qt::AlignTop;
    look.colour = fore;
    const QString first = fitted(title, room, style, look);
    const double firstHeight = textSizeMm(first, style, look).height();
    TextLook small = belowLook(style);
    small.align = look.align;
    small.colour = fore;
    const QString second = below.isEmpty() ? QString() : fitted(below, room, style, small);
    const double secondHeight = second.isEmpty() ? 0.0 : textSizeMm(second, style, small).height();
    const double top = box.center().y() - (firstHeight + secondHeight) / 2.0;
    paintText(painter, {left, top}, first, style, look);
    if (!second.isEmpty()) paintText(painter, {left, top + firstHeight}, second, style, small);
}

double handBadgeUnits(const PaintStyle& style) { return style.onPaper ? 4.0 : 13.0; }

void paintHandBadge(QPainter& painter, QPointF at, Hand hand, const PaintStyle& style)
{
    const double half = handBadgeUnits(style) * style.mmPerUnit;
    const QRectF box(at.x() - half, at.y() - 0.7 * half, 2.0 * half, 1.4 * half);
    const bool mirrored = hand == Hand::mirrored;
    painter.setPen(thinPen(style, style.ink.ink));
    painter.setBrush(mirrored ? style.ink.ink : style.ink.sheet);
    painter.drawRect(box);
    painter.setPen(thinPen(style, mirrored ? style.ink.sheet : style.ink.ink));
    painter.setBrush(Qt::NoBrush);
    paintHandGlyph(painter, box.adjusted(0.12 * half, 0.14 * half, -0.12 * half, -0.14 * half), hand, style);
}

}  // namespace yardcast::ui
