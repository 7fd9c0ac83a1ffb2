#include "ui/canvas/tools/front_tool.h"

#include <cmath>

#include <QCoreApplication>

#include "ui/canvas/new_parts.h"
#include "ui/canvas/piece_text.h"
#include "ui/document/plan_document.h"
#include "ui/wording/figures.h"

namespace yardcast::ui {

namespace {

QString tr(const char* text) { return QCoreApplication::translate("FrontTool", text); }

/// Kept level or upright by Shift, whichever is nearer.
Point straight(Point from, Point to)
{
    return std::abs(to.x - from.x) >= std::abs(to.y - from.y) ? Point{to.x, from.y} : Point{from.x, to.y};
}

}  // namespace

FrontTool::FrontTool(ToolHost& host) : Tool(host) {}

QString FrontTool::name() const { return tr("Draw front"); }

QString FrontTool::hint() const
{
    if (from_) return tr("Let go at the other end, or type the length. Shift keeps it straight.");
    return tr("Drag from one end of the front to the other.");
}

void FrontTool::activate() { targets_ = host().snapTargets({}); }

void FrontTool::preview()
{
    const Plan& plan = *host().document().committed();
    if (distance(*from_, to_) < kLeastSizeMm) {
        host().document().cancelPreview();
    } else {
        const Part part = newFront(plan, *from_, to_);
        host().document().preview([part](const Plan& p) { return withNewPart(p, part); });
    }
    const QString text = lengthText(distance(*from_, to_));
    host().sayAtPointer(text);
    host().say(text);
}

void FrontTool::place(Point from, Point to)
{
    const Part part = newFront(*host().document().committed(), from, to);
    from_.reset();
    host().clearGuides();
    host().sayAtPointer({});
    host().document().cancelPreview();
    host().document().apply(tr("Add front"), [part](const Plan& p) { return withNewPart(p, part); });
    host().finished({QString::fromStdString(part.id)});
}

void FrontTool::press(const PointerEvent& event)
{
    if (event.button != Qt::LeftButton) return;
    targets_ = host().snapTargets({});
    from_ = host().snapPoint(targets_, event.at, event.modifiers).at;
    to_ = *from_;
    targets_.gridOrigin = *from_;
    host().hintChanged();
}

void FrontTool::move(const PointerEvent& event)
{
    if (!from_) {
        targets_.gridOrigin = {};
        hover_ = host().snapPoint(targets_, event.at, event.modifiers).at;
        return;
    }
    if (!event.dragged) return;
    to_ = host().snapPoint(targets_, event.at, event.modifiers).at;
    if (event.modifiers & Qt::ShiftModifier) to_ = straight(*from_, to_);
    preview();
}

void FrontTool::release(const PointerEvent& event)
{
    if (!from_) return;
    if (!event.dragged) {
        const double half = defaultSize(PartKind::front).width / 2.0;
        const Point at = *from_;
        place(at - Point{half, 0.0}, at + Point{half, 0.0});
        return;
    }
    move(event);
    if (distance(*from_, to_) < kLeastSizeMm) {
        cancel();
        host().say(tr("That is too short for a front. Drag farther, or click to place one of 1200 mm."));
        return;
    }
    place(*from_, to_);
}

QString FrontTool::typed(const TypedSize& size)
{
    if (size.secondMm) return tr("A front has one size from above: its length.");
    if (size.firstMm < kLeastSizeMm) return tr("A front is at least 20 mm long.");
    const Point from = from_ ? *from_ : hover_.value_or(host().viewCentre());
    Point along{1.0, 0.0};
    if (from_ && distance(*from_, to_) > 0.0) along = (to_ - *from_) * (1.0 / distance(*from_, to_));
    place(from, from + along * size.firstMm);
    return {};
}

bool FrontTool::cancel()
{
    if (!from_) return false;
    from_.reset();
    host().clearGuides();
    host().sayAtPointer({});
    host().document().cancelPreview();
    host().hintChanged();
    return true;
}

}  // namespace yardcast::ui
