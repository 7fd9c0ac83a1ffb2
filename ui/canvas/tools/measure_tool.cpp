#include "ui/canvas/tools/measure_tool.h"

#include <cmath>

#include <QCoreApplication>
#include <QPainter>

#include "ui/canvas/piece_text.h"
#include "ui/wording/figures.h"

namespace yardcast::ui {

namespace {

QString tr(const char* text) { return QCoreApplication::translate("MeasureTool", text); }

Point straight(Point from, Point to)
{
    return std::abs(to.x - from.x) >= std::abs(to.y - from.y) ? Point{to.x, from.y} : Point{from.x, to.y};
}

}  // namespace

QString MeasureTool::name() const { return tr("Measure"); }

QString MeasureTool::hint() const
{
    return measuring_ ? tr("Click the other end. Shift keeps it straight.")
                      : tr("Click one end, then the other; or drag.");
}

void MeasureTool::activate() { targets_ = host().snapTargets({}); }

void MeasureTool::deactivate()
{
    cancel();
    from_.reset();
    host().repaintOverlay();
}

void MeasureTool::tell()
{
    const double far = distance(*from_, to_);
    const Point way = to_ - *from_;
    const QString text = lengthText(far);
    const bool slanted = std::abs(way.x) >= 0.05 && std::abs(way.y) >= 0.05;
    host().sayAtPointer(measuring_ ? text : QString());
    host().say(slanted ? joined({text, wayText(way, host().projection().isAbove())}) : text);
    host().repaintOverlay();
}

void MeasureTool::press(const PointerEvent& event)
{
    if (event.button != Qt::LeftButton) return;
    pressed_ = true;
    if (measuring_) {
        move(event);
        measuring_ = false;
        pressed_ = false;
        host().clearGuides();
        host().hintChanged();
        tell();
        return;
    }
    targets_ = host().snapTargets({});
    from_ = host().snapPoint(targets_, event.at, event.modifiers).at;
    to_ = *from_;
    targets_.gridOrigin = *from_;
    measuring_ = true;
    host().hintChanged();
    tell();
}

void MeasureTool::move(const PointerEvent& event)
{
    const Point at = host().snapPoint(targets_, event.at, event.modifiers).at;
    if (!measuring_) return;
    to_ = event.modifiers & Qt::ShiftModifier ? straight(*from_, at) : at;
    tell();
}

void MeasureTool::release(const PointerEvent& event)
{
    if (!measuring_ || !pressed_) return;
    pressed_ = false;
    // A click has set the first end; a drag has set both.
    if (!event.dragged) return;
    move(event);
    measuring_ = false;
    host().clearGuides();
    host().hintChanged();
    tell();
}

bool MeasureTool::cancel()
{
    if (!measuring_) return false;
    measuring_ = false;
    pressed_ = false;
    from_.reset();
    host().clearGuides();
    host().sayAtPointer({});
    host().hintChanged();
    host().repaintOverlay();
    return true;
}

Dimension MeasureTool::line() const
{
    Dimension dimension;
    // From left to right, so that the figure stands above the line.
    const bool turned = to_.x < from_->x;
    const Point a = turned ? to_ : *from_;
    const Point b = turned ? *from_ : to_;
    dimension.a = QPointF(a.x, -a.y);
    dimension.b = QPointF(b.x, -b.y);
    dimension.offsetUnits = 0.0;
    dimension.valueMm = distance(a, b);
    return dimension;
}

void MeasureTool::paint(QPainter& painter, const PaintStyle& style)
{
    if (!from_ || distance(*from_, to_) < 1e-6) return;
    PaintStyle marked = style;
    marked.ink.ink = style.ink.chosen;
    paintDimension(painter, line(), marked);
}

QRectF MeasureTool::paintBounds() const
{
    if (!from_) return {};
    PaintStyle style;
    style.mmPerUnit = host().mmPerPixel();
    return dimensionBounds(line(), style);
}

}  // namespace yardcast::ui
