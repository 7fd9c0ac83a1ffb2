#include "ui/canvas/tools/cutout_tool.h"

#include <algorithm>
#include <cmath>

#include <QCoreApplication>
#include <QPainter>

#include "core/plan/edits.h"
#include "ui/canvas/dimension_edit.h"
#include "ui/canvas/gestures/move_gesture.h"
#include "ui/canvas/lookups.h"
#include "ui/canvas/new_parts.h"
#include "ui/canvas/piece_text.h"
#include "ui/canvas/snap_targets.h"
#include "ui/document/plan_document.h"
#include "ui/wording/figures.h"
#include "ui/wording/names.h"

namespace yardcast::ui {

namespace {

constexpr double kLeastCutoutMm = 8.0;

QString tr(const char* text) { return QCoreApplication::translate("CutoutTool", text); }

QString sizeOf(const Cutout& cutout)
{
    return cutout.shape == CutoutShape::circle ? tr("%1 across").arg(lengthText(cutout.diameterMm))
                                               : sizeText(cutout.size.width, cutout.size.depth);
}

}  // namespace

CutoutTool::CutoutTool(ToolHost& host, CutoutPurpose purpose, CutoutShape shape)
    : Tool(host), purpose_(purpose), shape_(shape)
{
}

QString CutoutTool::name() const { return tr("Cut %1").arg(purposeName(purpose_).toLower()); }

QString CutoutTool::hint() const
{
    if (anchor_) return tr("Let go when it is as large as it should be, or type the size.");
    const bool any = std::ranges::any_of(host().document().plan()->parts,
                                         [](const PartPtr& part) { return part->kind() == PartKind::counter; });
    if (!any) return tr("Draw a counter first: a cutout goes through a counter.");
    const QString size = sizeOf(defaultCutout(purpose_, shape_));
    return shape_ == CutoutShape::circle
        ? tr("Click in a counter: %1. Or drag from the centre outwards.").arg(size)
        : tr("Click in a counter: %1. Or drag from corner to corner.").arg(size);
}

void CutoutTool::deactivate()
{
    cancel();
    ghost_.reset();
    host().clearGuides();
    host().sayAtPointer({});
    host().repaintOverlay();
}

bool CutoutTool::takeCounter(Point inPlan)
{
    const Plan& plan = *host().document().committed();
    const Part* part = counterAt(plan, inPlan);
    if (!part) {
        counter_.clear();
        return false;
    }
    if (counter_ != part->id || !(frame_ == part->place)) {
        counter_ = part->id;
        frame_ = part->place;
    }
    targets_ = targetsWithin(*part, {});
    return true;
}

Cutout CutoutTool::usualAt(Point own) const
{
    Cutout cutout = defaultCutout(purpose_, shape_);
    if (const Counter* counter = findCounter(*host().document().committed(), counter_)) {
        cutout.id = freeCutoutId(*counter);
    }
    cutout.centre = own;
    return cutout;
}

Point CutoutTool::snapOwn(Point inPlan, Qt::KeyboardModifiers modifiers)
{
    return host().snapPoint(targets_, frame_.toOwn(inPlan), modifiers, frame_).at;
}

/// A cutout of the usual size snaps as a thing that is moved: its middle to middles, its sides to sides, equal strips.
Point CutoutTool::snapUsual(Point inPlan, Qt::KeyboardModifiers modifiers)
{
    const Point own = frame_.toOwn(inPlan);
    const auto box = boundsOf(cutoutRing(usualAt({})));
    if (!box) return own;
    Moving moving = movingOf(*box);
    if (shape_ == CutoutShape::circle) moving.corners.clear();
    const Snap snap = host().snapMove(targets_, moving, own, modifiers, {}, frame_);
    // The grid is for centres here; the low corner of a sink with odd sizes would put its middle off it.
    const double grid = host().gridMm(modifiers);
    Point at = snap.at;
    if (snap.kindX == SnapKind::grid && grid > 0.0) at.x = std::round(own.x / grid) * grid;
    if (snap.kindY == SnapKind::grid && grid > 0.0) at.y = std::round(own.y / grid) * grid;
    return at;
}

Cutout CutoutTool::dragged() const
{
    Cutout cutout = usualAt(*anchor_);
    if (shape_ == CutoutShape::circle) {
        cutout.diameterMm = std::round(2.0 * distance(*anchor_, to_));
        return cutout;
    }
    cutout.centre = (*anchor_ + to_) * 0.5;
    cutout.size = {std::abs(to_.x - anchor_->x), std::abs(to_.y - anchor_->y)};
    if (cutout.cornerRadiusMm) {
        cutout.cornerRadiusMm = std::min(*cutout.cornerRadiusMm, std::min(cutout.size.width, cutout.size.depth) / 2.0);
    }
    return cutout;
}

void CutoutTool::tell(const Cutout& cutout)
{
    // What the counter would weigh with the hole, also while it is only pointed at.
    const Plan plan = addCutout(*host().document().committed(), counter_, cutout);
    const Part* part = findPart(plan, counter_);
    if (!part) return;
    const QString text = joined({sizeOf(cutout), stripsText(std::get<Counter>(part->body), cutout),
                                 massAndPeople(plan, *part)});
    host().sayAtPointer(text);
    host().say(text);
}

void CutoutTool::preview(Cutout cutout)
{
    const Counter* counter = findCounter(*host().document().committed(), counter_);
    if (!counter) return;
    cutout.id = freeCutoutId(*counter);
    host().document().preview([id = counter_, cutout](const Plan& plan) { return addCutout(plan, id, cutout); });
    tell(cutout);
}

void CutoutTool::place(Cutout cutout)
{
    const Counter* counter = findCounter(*host().document().committed(), counter_);
    if (!counter) return;
    cutout.id = freeCutoutId(*counter);
    const std::string part = counter_;
    anchor_.reset();
    ghost_.reset();
    host().clearGuides();
    host().sayAtPointer({});
    host().document().cancelPreview();
    host().document().apply(tr("Cut %1").arg(purposeName(purpose_).toLower()),
                            [&](const Plan& plan) { return addCutout(plan, part, cutout); });
    host().finishedCutout(part, cutout.id);
}

void CutoutTool::press(const PointerEvent& event)
{
    if (event.button != Qt::LeftButton) return;
    ghost_.reset();
    if (!takeCounter(event.at)) {
        host().say(tr("A cutout goes through a counter: press inside one."));
        return;
    }
    // Where a click would put it is decided on release; a drag starts where the button went down.
    anchor_ = snapOwn(event.at, event.modifiers);
    to_ = *anchor_;
    targets_.gridOrigin = *anchor_;
    host().hintChanged();
}

void CutoutTool::move(const PointerEvent& event)
{
    if (!anchor_) {
        ghost_.reset();
        if (takeCounter(event.at)) {
            ghost_ = usualAt(snapUsual(event.at, event.modifiers));
            tell(*ghost_);
        } else {
            host().clearGuides();
            host().sayAtPointer({});
            host().say(tr("A cutout goes through a counter: point inside one."));
        }
        host().repaintOverlay();
        return;
    }
    if (!event.dragged) return;
    to_ = snapOwn(event.at, event.modifiers);
    preview(dragged());
}

void CutoutTool::release(const PointerEvent& event)
{
    if (!anchor_) return;
    if (!event.dragged) {
        anchor_.reset();
        targets_.gridOrigin = {};
        place(usualAt(snapUsual(event.pressedAt, event.modifiers)));
        return;
    }
    move(event);
    const Cutout cutout = dragged();
    const double least = shape_ == CutoutShape::circle ? cutout.diameterMm
                                                       : std::min(cutout.size.width, cutout.size.depth);
    if (least < kLeastCutoutMm) {
        cancel();
        host().say(tr("That is too small for a cutout. Drag farther, or click to place the usual size."));
        return;
    }
    place(cutout);
}

void CutoutTool::leave()
{
    if (anchor_) return;
    ghost_.reset();
    host().clearGuides();
    host().sayAtPointer({});
    host().repaintOverlay();
}

QString CutoutTool::currentSize() const
{
    return cutoutSizeText(anchor_ && !(to_ == *anchor_) ? dragged() : defaultCutout(purpose_, shape_));
}

QString CutoutTool::typed(const TypedSize& size)
{
    Cutout cutout = ghost_.value_or(usualAt(anchor_.value_or(Point{})));
    if (anchor_ && !(to_ == *anchor_)) cutout = dragged();
    if (!anchor_ && !ghost_) return tr("Point inside a counter first.");
    if (shape_ == CutoutShape::circle) {
        if (size.secondMm) return tr("A round cutout has one size: its diameter.");
        if (size.firstMm < kLeastCutoutMm) return tr("A cutout is at least 8 mm.");
        cutout.diameterMm = size.firstMm;
        place(cutout);
        return {};
    }
    const Size wanted{size.firstMm, size.secondMm.value_or(cutout.size.depth)};
    if (std::min(wanted.width, wanted.depth) < kLeastCutoutMm) return tr("A cutout is at least 8 mm each way.");
    if (anchor_) {
        // The corner that was pressed stays.
        const Point way{to_.x < anchor_->x ? -1.0 : 1.0, to_.y < anchor_->y ? -1.0 : 1.0};
        cutout.centre = *anchor_ + Point{way.x * wanted.width / 2.0, way.y * wanted.depth / 2.0};
    }
    cutout.size = wanted;
    if (purpose_ == CutoutPurpose::sink) {
        cutout.cornerRadiusMm = std::min(20.0, std::min(wanted.width, wanted.depth) / 2.0);
    }
    place(cutout);
    return {};
}

bool CutoutTool::cancel()
{
    if (!anchor_) return false;
    anchor_.reset();
    host().clearGuides();
    host().sayAtPointer({});
    host().document().cancelPreview();
    host().hintChanged();
    return true;
}

void CutoutTool::paint(QPainter& painter, const PaintStyle& style)
{
    if (!ghost_ || anchor_) return;
    const Part* part = findPart(*host().document().plan(), counter_);
    if (!part) return;
    QColor fill = style.ink.chosen;
    fill.setAlphaF(0.14f);
    painter.setPen(style.pen(style.ink.chosen, 1.5, Qt::DashLine));
    painter.setBrush(fill);
    painter.drawPath(cutoutShape(*part, *ghost_, host().projection()));
}

QRectF CutoutTool::paintBounds() const
{
    const Part* part = ghost_ && !anchor_ ? findPart(*host().document().plan(), counter_) : nullptr;
    return part ? cutoutShape(*part, *ghost_, host().projection()).boundingRect() : QRectF();
}

}  // namespace yardcast::ui
