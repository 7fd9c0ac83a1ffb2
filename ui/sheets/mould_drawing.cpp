#include "ui/sheets/mould_drawing.h"

#include <vector>

#include <QPainter>

#include "ui/drawing/mould_section.h"

namespace yardcast::ui {

ScaledDrawing mouldDrawing(const MouldSubject& subject, double sectionXMm)
{
    MouldLook look;
    look.sectionXMm = sectionXMm;
    ScaledDrawing drawing;
    drawing.bounds = [subject, look](const PaintStyle& style) { return mouldPictureBounds(subject, look, style); };
    drawing.paint = [subject, look](QPainter& painter, const PaintStyle& style) {
        paintMouldPicture(painter, subject, look, style);
    };
    return drawing;
}

ScaledDrawing standingDrawing(const MouldSubject& subject)
{
    ScaledDrawing drawing;
    drawing.bounds = [subject](const PaintStyle& style) { return standingPictureBounds(subject, style); };
    drawing.paint = [subject](QPainter& painter, const PaintStyle& style) {
        paintStandingPicture(painter, subject, style);
    };
    return drawing;
}

ScaledDrawing mouldSectionDrawing(const MouldSubject& subject, double sectionXMm)
{
    ScaledDrawing drawing;
    drawing.bounds = [subject, sectionXMm](const PaintStyle& style) {
        return mouldSectionBounds(subject, sectionXMm, style);
    };
    drawing.paint = [subject, sectionXMm](QPainter& painter, const PaintStyle& style) {
        paintMouldSection(painter, subject, sectionXMm, style);
    };
    return drawing;
}

ScaledDrawing inARow(const std::vector<ScaledDrawing>& drawings)
{
    constexpr double kBetween = 8.0;
    // Where each is moved to, so that their feet are level.
    const auto places = [drawings](const PaintStyle& style) {
        std::vector<QPointF> shifts;
        double x = 0.0;
        for (const ScaledDrawing& drawing : drawings) {
            const QRectF box = drawing.bounds(style);
            shifts.emplace_back(x - box.left(), -box.bottom());
            x += box.width() + kBetween * style.mmPerUnit;
        }
        return shifts;
    };
    ScaledDrawing row;
    row.bounds = [drawings, places](const PaintStyle& style) {
        const std::vector<QPointF> shifts = places(style);
        QRectF bounds;
        for (std::size_t i = 0; i < drawings.size(); ++i) bounds |= drawings[i].bounds(style).translated(shifts[i]);
        return bounds;
    };
    row.paint = [drawings, places](QPainter& painter, const PaintStyle& style) {
        const std::vector<QPointF> shifts = places(style);
        for (std::size_t i = 0; i < drawings.size(); ++i) {
            painter.save();
            painter.translate(shifts[i]);
            drawings[i].paint(painter, style);
            painter.restore();
        }
    };
    return row;
}

}  // namespace yardcast::ui
