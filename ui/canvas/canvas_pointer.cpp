#include <algorithm>
#include <cmath>
#include <utility>

#include <QMouseEvent>

#include "core/plan/plan.h"
#include "ui/canvas/canvas_host.h"
#include "ui/canvas/pointer_label.h"
#include "ui/canvas/typed_size_field.h"
#include "ui/document/plan_document.h"
#include "ui/document/selection.h"

/// The pointer's way through the canvas: from the view's events to the tool's.
namespace yardcast::ui {

namespace {

constexpr double kDragPx = 4.0;
constexpr double kDriftEdgePx = 14.0;

}  // namespace

Point CanvasHost::toPlane(QPointF viewPx) const { return projection_.unmap(view_->toDrawing(viewPx)); }

Point CanvasHost::viewCentre() const
{
    const Point at = projection_.unmap(view_->centreMm());
    return {std::round(at.x / 10.0) * 10.0, std::round(at.y / 10.0) * 10.0};
}

bool CanvasHost::clickByKey(Qt::KeyboardModifiers modifiers)
{
    switch (choice_.kind) {
    case ToolKind::counter:
    case ToolKind::support:
    case ToolKind::panel:
    case ToolKind::appliance:
    case ToolKind::cutout:
    case ToolKind::fixture: break;
    default: return false;
    }
    if (tool_->isGesturing() || field_->isOpen()) return false;
    PointerEvent click;
    click.at = viewCentre();
    const QStringList chosen = selection_.parts();
    const Part* part =
        chosen.size() == 1 ? findPart(*document_.plan(), chosen.front().toStdString()) : nullptr;
    if (part && part->kind() == PartKind::counter && projection_.isAbove()) {
        if (const std::optional<Box> box = boundsOf(footprint(*part))) click.at = box->centre();
    }
    click.pressedAt = click.at;
    click.viewPx = QRectF(view_->viewport()->rect()).center();
    click.button = Qt::LeftButton;
    click.modifiers = modifiers;
    tool_->press(click);
    tool_->release(click);
    settle();
    return true;
}

PointerEvent CanvasHost::pointerEvent(const QMouseEvent& event) const
{
    PointerEvent out;
    out.viewPx = event.position();
    out.at = toPlane(event.position());
    out.pressedAt = pressed_ ? pressed_->at : out.at;
    out.dragged = dragged_;
    out.button = event.button();
    out.buttons = event.buttons();
    out.modifiers = event.modifiers();
    return out;
}

void CanvasHost::setPointer(QPointF viewPx)
{
    pointerPx_ = viewPx;
    pointerInside_ = true;
    label_->follow(viewPx.toPoint());
    emit pointerMoved(viewPx);
}

void CanvasHost::press(QMouseEvent* event, bool isDouble)
{
    setPointer(event->position());
    if (field_->isOpen()) {
        // What is typed counts, unless it makes no sense: then the field stays and says why.
        if (!field_->apply()) return;
        settle();
        ignoreRelease_ = true;
        return;
    }
    canvas_.setFocus(Qt::MouseFocusReason);
    if (event->button() == Qt::RightButton) {
        contextMenu(event);
        return;
    }
    if (event->button() != Qt::LeftButton) return;
    ignoreRelease_ = false;
    dragged_ = false;
    pressed_.reset();
    snapper_.clear();
    pressed_ = pointerEvent(*event);
    if (isDouble) {
        tool_->doubleClick(*pressed_);
    } else {
        tool_->press(*pressed_);
    }
    settle();
}

void CanvasHost::move(QMouseEvent* event)
{
    setPointer(event->position());
    if (field_->isOpen() || ignoreRelease_) return;
    if (pressed_ && !dragged_) {
        const QPointF off = event->position() - pressed_->viewPx;
        dragged_ = std::hypot(off.x(), off.y()) >= kDragPx;
    }
    if (snapper_.isShowing()) overlayDirty_ = true;
    snapper_.clear();
    tool_->move(pointerEvent(*event));
    settle();
    modifiers_ = event->modifiers();
    if (driftPx().isNull()) {
        driftTimer_.stop();
    } else if (!driftTimer_.isActive()) {
        driftTimer_.start();
    }
}

/// How far the sheet goes by in a moment, while something is dragged past the edge of the view.
QPointF CanvasHost::driftPx() const
{
    if (!pressed_ || !dragged_ || !tool_->isGesturing() || field_->isOpen()) return {};
    const QRectF calm =
        QRectF(view_->viewport()->rect()).adjusted(kDriftEdgePx, kDriftEdgePx, -kDriftEdgePx, -kDriftEdgePx);
    const auto speed = [](double beyond) { return std::clamp(beyond / 3.0, -24.0, 24.0); };
    const double x = pointerPx_.x() < calm.left() ? calm.left() - pointerPx_.x()
        : pointerPx_.x() > calm.right()           ? calm.right() - pointerPx_.x()
                                                  : 0.0;
    const double y = pointerPx_.y() < calm.top() ? calm.top() - pointerPx_.y()
        : pointerPx_.y() > calm.bottom()         ? calm.bottom() - pointerPx_.y()
                                                 : 0.0;
    return {speed(x), speed(y)};
}

void CanvasHost::drift()
{
    const QPointF px = driftPx();
    if (px.isNull()) {
        driftTimer_.stop();
        return;
    }
    view_->panBy(px);
    modifiersChanged(modifiers_);
}

void CanvasHost::release(QMouseEvent* event)
{
    setPointer(event->position());
    if (event->button() != Qt::LeftButton || !pressed_) return;
    if (field_->isOpen()) {
        // The button may be let go to type with both hands: the gesture waits for the field.
        pressed_.reset();
        return;
    }
    PointerEvent out = pointerEvent(*event);
    pressed_.reset();
    if (std::exchange(ignoreRelease_, false)) return;
    snapper_.clear();
    tool_->release(out);
    snapper_.clear();
    repaintOverlay();
    settle();
}

void CanvasHost::leave()
{
    pointerInside_ = false;
    emit pointerLeft();
    if (pressed_ || field_->isOpen()) return;
    snapper_.clear();
    tool_->leave();
    label_->say({});
    repaintOverlay();
    settle();
}

void CanvasHost::contextMenu(QMouseEvent* event)
{
    if (cancelGesture()) return;
    const std::vector<Hit> hits = hitsAt(toPlane(event->position()));
    const bool chosen = std::ranges::any_of(hits, [&](const Hit& hit) {
        return hit.what == Hit::What::part && selection_.contains(QString::fromStdString(hit.part));
    });
    if (hits.empty()) {
        selection_.clear();
    } else if (hits.front().what == Hit::What::cutout) {
        selection_.setCutout({QString::fromStdString(hits.front().part), QString::fromStdString(hits.front().cutout)});
    } else if (hits.front().what == Hit::What::fixture) {
        selection_.setFixture(QString::fromStdString(hits.front().fixture));
    } else if (!chosen) {
        selection_.setParts({QString::fromStdString(hits.front().part)});
    }
    settle();
    emit contextMenuRequested(event->globalPosition().toPoint());
}

void CanvasHost::modifiersChanged(Qt::KeyboardModifiers modifiers)
{
    if ((!pointerInside_ && !pressed_) || field_->isOpen() || ignoreRelease_) return;
    QMouseEvent event(QEvent::MouseMove, pointerPx_, view_->viewport()->mapToGlobal(pointerPx_), Qt::NoButton,
                      pressed_ ? Qt::LeftButton : Qt::NoButton, modifiers);
    move(&event);
    view_->updateCursor();
}

}  // namespace yardcast::ui
