#include "ui/canvas/tools/draw_rect_tool.h"

#include <algorithm>
#include <cmath>

#include <QCoreApplication>

#include "core/plan/edits.h"
#include "ui/canvas/new_parts.h"
#include "ui/canvas/piece_text.h"
#include "ui/document/plan_document.h"
#include "ui/look/number_text.h"
#include "ui/wording/figures.h"
#include "ui/wording/names.h"

namespace yardcast::ui {

namespace {

QString tr(const char* text) { return QCoreApplication::translate("DrawRectTool", text); }

bool isThin(PartKind kind) { return kind == PartKind::support || kind == PartKind::panel; }

double thickness(PartKind kind) { return std::min(defaultSize(kind).width, defaultSize(kind).depth); }

}  // namespace

DrawRectTool::DrawRectTool(ToolHost& host, PartKind kind) : Tool(host), kind_(kind) {}

QString DrawRectTool::name() const { return tr("Draw %1").arg(kindName(kind_).toLower()); }

QString DrawRectTool::hint() const
{
    if (anchor_) return tr("Let go where the opposite corner is to be, or type the size: 1850 x 620.");
    switch (kind_) {
    case PartKind::counter: return tr("Drag from corner to corner. A click or Enter places 1800 x 620 mm; digits open its size.");
    case PartKind::support:
        return tr("Click in a counter: the support reaches from front to back, up to its underside.");
    case PartKind::panel: return tr("Click in a counter: the panel stands along its back edge. Or drag.");
    case PartKind::appliance: return tr("Click to place, or drag to size. Over a counter, the appliance stands on it.");
    case PartKind::front: break;
    }
    return {};
}

void DrawRectTool::activate() { targets_ = host().snapTargets({}); }

Box DrawRectTool::boxTo(Point corner) const
{
    Box box{{std::min(anchor_->x, corner.x), std::min(anchor_->y, corner.y)},
            {std::max(anchor_->x, corner.x), std::max(anchor_->y, corner.y)}};
    if (!isThin(kind_)) return box;
    // Drawn as a line, a thin part gets its usual thickness.
    const double usual = thickness(kind_);
    const bool along = box.width() >= box.height();
    const double across = along ? box.height() : box.width();
    if (across >= kLeastSizeMm) return box;
    if (along) {
        box.high.y = box.low.y + usual;
    } else {
        box.high.x = box.low.x + usual;
    }
    return box;
}

void DrawRectTool::preview(const Box& box)
{
    const Plan& plan = *host().document().committed();
    const Part part = newPart(plan, kind_, box);
    host().document().preview([part](const Plan& p) { return withNewPart(p, part); });
    const QString text = joined({sizeText(box.width(), box.height()), massAndPeople(*host().document().plan(), part)});
    host().sayAtPointer(text);
    host().say(text);
}

void DrawRectTool::place(const Box& box) { place(newPart(*host().document().committed(), kind_, box)); }

void DrawRectTool::place(const Part& part)
{
    anchor_.reset();
    host().clearGuides();
    host().sayAtPointer({});
    host().document().cancelPreview();
    host().document().apply(tr("Add %1").arg(kindName(kind_).toLower()),
                            [part](const Plan& p) { return withNewPart(p, part); });
    host().finished({QString::fromStdString(part.id)});
}

void DrawRectTool::press(const PointerEvent& event)
{
    if (event.button != Qt::LeftButton) return;
    targets_ = host().snapTargets({});
    targets_.gridOrigin = {};
    anchor_ = host().snapPoint(targets_, event.at, event.modifiers).at;
    corner_ = *anchor_;
    targets_.gridOrigin = *anchor_;
    host().hintChanged();
}

void DrawRectTool::move(const PointerEvent& event)
{
    hover_ = event.at;
    if (!anchor_) {
        targets_.gridOrigin = {};
        hover_ = host().snapPoint(targets_, event.at, event.modifiers).at;
        return;
    }
    if (!event.dragged) return;
    corner_ = host().snapPoint(targets_, event.at, event.modifiers).at;
    if (event.modifiers & Qt::ShiftModifier) {
        const Point way = corner_ - *anchor_;
        const double side = std::max(std::abs(way.x), std::abs(way.y));
        corner_ = *anchor_ + Point{std::copysign(side, way.x), std::copysign(side, way.y)};
    }
    preview(boxTo(corner_));
}

void DrawRectTool::release(const PointerEvent& event)
{
    if (!anchor_) return;
    if (!event.dragged) {
        place(defaultPart(*host().document().committed(), kind_, *anchor_));
        return;
    }
    move(event);
    const Box box = boxTo(corner_);
    if (std::min(box.width(), box.height()) < kLeastSizeMm) {
        cancel();
        host().say(tr("That is too small for a part. Drag farther, or click to place the usual size."));
        return;
    }
    place(box);
}

QString DrawRectTool::currentSize() const
{
    if (!anchor_ || corner_ == *anchor_) {
        const Size size = defaultSize(kind_);
        return formatNumber(size.width, 1) + u' ' + formatNumber(size.depth, 1);
    }
    const Box box = boxTo(corner_);
    return formatNumber(box.width(), 1) + u' ' + formatNumber(box.height(), 1);
}

QString DrawRectTool::typed(const TypedSize& size)
{
    const double first = size.firstMm;
    double second = size.secondMm.value_or(0.0);
    const bool downwards = anchor_ && corner_.y < anchor_->y;
    const bool leftwards = anchor_ && corner_.x < anchor_->x;
    Size wanted{first, second};
    if (!size.secondMm) {
        // One figure: the length; what is across keeps what was dragged, or the usual.
        const Size usual = defaultSize(kind_);
        const Point way = anchor_ ? corner_ - *anchor_ : Point{};
        const Size dragged{std::abs(way.x), std::abs(way.y)};
        wanted.depth = dragged.depth >= kLeastSizeMm ? dragged.depth : std::min(usual.width, usual.depth);
        if (isThin(kind_) && dragged.depth > dragged.width) {
            wanted = {dragged.width >= kLeastSizeMm ? dragged.width : thickness(kind_), first};
        }
    }
    if (wanted.width < kLeastSizeMm || wanted.depth < kLeastSizeMm) {
        return tr("A %1 is at least %2 mm each way.").arg(kindName(kind_).toLower()).arg(kLeastSizeMm);
    }
    const Point at = anchor_ ? *anchor_ : hover_.value_or(host().viewCentre());
    Box box{at, at + Point{wanted.width, wanted.depth}};
    if (leftwards) box = {{at.x - wanted.width, box.low.y}, {at.x, box.high.y}};
    if (downwards) box = {{box.low.x, at.y - wanted.depth}, {box.high.x, at.y}};
    place(box);
    return {};
}

bool DrawRectTool::cancel()
{
    if (!anchor_) return false;
    anchor_.reset();
    host().clearGuides();
    host().sayAtPointer({});
    host().document().cancelPreview();
    host().hintChanged();
    return true;
}

}  // namespace yardcast::ui
