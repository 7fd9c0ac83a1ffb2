#include "ui/canvas/gestures/grip_gesture.h"

#include <cmath>
#include <utility>

#include <QCoreApplication>

#include "core/plan/edits.h"
#include "ui/canvas/lookups.h"
#include "ui/canvas/piece_text.h"
#include "ui/document/plan_document.h"
#include "ui/wording/figures.h"

namespace yardcast::ui {

namespace {
QString tr(const char* text) { return QCoreApplication::translate("Gestures", text); }
}  // namespace

GripGesture::GripGesture(ToolHost& host, std::string part, std::vector<Point> grips, int index, Point from)
    : Gesture(host), part_(std::move(part)), grips_(std::move(grips)), index_(static_cast<std::size_t>(index))
{
    const Plan& plan = *host.document().committed();
    const Part* found = findPart(plan, part_);
    if (!found || index_ >= grips_.size()) return;
    called_ = partsCalled(plan, {QString::fromStdString(part_)});
    place_ = found->place;
    off_ = from - place_.toPlan(grips_[index_]);
    targets_ = host.snapTargets({});
}

QString GripGesture::name() const { return tr("Move a grip of %1").arg(called_); }

void GripGesture::preview(Point own)
{
    if (index_ >= grips_.size()) return;
    // Whole mm: nobody takes hold more exactly.
    std::vector<Point> grips = grips_;
    for (Point& grip : grips) grip = {std::round(grip.x), std::round(grip.y)};
    grips[index_] = {std::round(own.x), std::round(own.y)};
    host().document().preview([part = part_, grips](const Plan& plan) {
        return changeCounter(plan, part, [&](Counter& counter) {
            if (!counter.lift) counter.lift.emplace();
            counter.lift->grips = grips;
        });
    });
    const QString text = tr("%1 from the left, %2 from the front")
                             .arg(lengthText(grips[index_].x), lengthText(grips[index_].y));
    host().sayAtPointer(text);
    host().say(joined({called_, text}));
}

void GripGesture::move(const PointerEvent& event)
{
    preview(place_.toOwn(host().snapPoint(targets_, event.at - off_, event.modifiers).at));
}

QString GripGesture::typed(const TypedSize& size)
{
    if (!size.secondMm) return tr("A grip has two figures: from the left and from the front.");
    preview({size.firstMm, *size.secondMm});
    return {};
}

}  // namespace yardcast::ui
