#include "ui/look/severity_mark.h"

#include <QPainter>
#include <QPainterPath>

namespace yardcast::ui {

QColor colourOf(Severity severity, const Ink& ink)
{
    switch (severity) {
    case Severity::stop: return ink.stop;
    case Severity::caution: return ink.caution;
    case Severity::note: break;
    }
    return ink.pencil;
}

void paintSeverityMark(QPainter& painter, const QRectF& rect, Severity severity, const Ink& ink)
{
    const double side = qMin(rect.width(), rect.height());
    const auto at = [&](double x, double y) { return rect.center() + QPointF(x, y) * side; };
    const QColor colour = colourOf(severity, ink);
    const double stroke = qMax(1.5, side * 0.1);
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(colour, stroke, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter.setBrush(Qt::NoBrush);
    switch (severity) {
    case Severity::stop:
        painter.setBrush(colour);
        painter.drawRect(QRectF(at(-0.38, -0.38), at(0.38, 0.38)));
        painter.setPen(QPen(ink.sheet, stroke * 1.3, Qt::SolidLine, Qt::FlatCap));
        painter.drawLine(at(-0.24, 0), at(0.24, 0));
        break;
    case Severity::caution: {
        painter.drawPolygon(QPolygonF{at(0, -0.38), at(0.44, 0.36), at(-0.44, 0.36)});
        painter.drawLine(at(0, -0.1), at(0, 0.1));
        painter.drawPoint(at(0, 0.23));
        break;
    }
    case Severity::note:
        painter.drawEllipse(rect.center(), side * 0.38, side * 0.38);
        painter.drawLine(at(0, 0.0), at(0, 0.18));
        painter.drawPoint(at(0, -0.17));
        break;
    }
    painter.restore();
}

}  // namespace yardcast::ui
