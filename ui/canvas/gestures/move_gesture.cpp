#include "ui/canvas/gestures/move_gesture.h"

#include <cmath>

#include <QCoreApplication>

#include "core/plan/edits.h"
#include "ui/canvas/lookups.h"
#include "ui/canvas/new_parts.h"
#include "ui/canvas/piece_text.h"
#include "ui/canvas/snap_targets.h"
#include "ui/document/plan_document.h"
#include "ui/wording/figures.h"

namespace yardcast::ui {

namespace {

QString tr(const char* text) { return QCoreApplication::translate("Gestures", text); }

Ids idsOf(const QStringList& parts)
{
    Ids ids;
    for (const QString& part : parts) ids.push_back(part.toStdString());
    return ids;
}

}  // namespace

Point typedWay(const TypedSize& size, Point dragged)
{
    if (size.secondMm) return {size.firstMm, *size.secondMm};
    // Straight along the axis that was dragged along most.
    if (std::abs(dragged.x) >= std::abs(dragged.y)) return {dragged.x < 0.0 ? -size.firstMm : size.firstMm, 0.0};
    return {0.0, dragged.y < 0.0 ? -size.firstMm : size.firstMm};
}

AxisLock lockFor(Point by, Qt::KeyboardModifiers modifiers)
{
    if (!(modifiers & Qt::ShiftModifier)) return {};
    const bool alongX = std::abs(by.x) >= std::abs(by.y);
    return {!alongX, alongX};
}

QString stripsText(const Counter& counter, const Cutout& cutout)
{
    const auto box = boundsOf(cutoutRing(cutout));
    if (!box) return {};
    struct Strip {
        Point side;
        Point direction;
        QString text;
    };
    const Point c = box->centre();
    const Strip strips[] = {{{box->low.x, c.y}, {-1, 0}, tr("%1 left of it")},
                            {{box->high.x, c.y}, {1, 0}, tr("%1 right of it")},
                            {{c.x, box->low.y}, {0, -1}, tr("%1 in front of it")},
                            {{c.x, box->high.y}, {0, 1}, tr("%1 behind it")}};
    double least = 1e12;
    QString text;
    for (const Strip& strip : strips) {
        const auto chord = chordThrough(counter.outline, strip.side, strip.direction);
        if (!chord) return tr("outside the counter");
        const double room = distance(strip.side, chord->second);
        if (room >= least) continue;
        least = room;
        text = strip.text.arg(lengthText(room));
    }
    return text;
}

MoveGesture::MoveGesture(ToolHost& host, QStringList parts, Point from)
    : Gesture(host), parts_(std::move(parts)), from_(from)
{
    const Plan& plan = *host.document().committed();
    called_ = partsCalled(plan, parts_);
    moving_ = movingOf(plan, parts_, host.projection());
    moved_ = withRiders(plan, idsOf(parts_));
    QStringList still = parts_;
    for (const std::string& id : moved_) still << QString::fromStdString(id);
    targets_ = host.snapTargets(still);
}

QString MoveGesture::name() const { return tr("Move %1").arg(called_); }

void MoveGesture::preview(Point by)
{
    by_ = by;
    const Ids ids = moved_;
    const Projection projection = host().projection();
    host().document().preview([ids, by, projection](const Plan& plan) {
        if (projection.isAbove()) return moveParts(plan, ids, by);
        return raiseParts(moveParts(plan, ids, projection.rightwards() * by.x), ids, by.y);
    });
    const QString way = wayText(by, projection.isAbove());
    host().sayAtPointer(way);
    host().say(joined({called_, way}));
}

void MoveGesture::move(const PointerEvent& event)
{
    Point by = event.at - from_;
    const AxisLock lock = lockFor(by, event.modifiers);
    if (lock.x) by.x = 0.0;
    if (lock.y) by.y = 0.0;
    preview(host().snapMove(targets_, moving_, by, event.modifiers, lock).at);
}

QString MoveGesture::typed(const TypedSize& size)
{
    preview(typedWay(size, by_));
    return {};
}

CutoutMoveGesture::CutoutMoveGesture(ToolHost& host, std::string part, std::string cutout, Point from)
    : Gesture(host), part_(std::move(part)), cutout_(std::move(cutout)), from_(from)
{
    const Plan& plan = *host.document().committed();
    const Part* found = findPart(plan, part_);
    const Cutout* hole = findCutout(plan, part_, cutout_);
    if (!found || !hole) return;
    frame_ = found->place;
    called_ = cutoutCalled(*hole);
    targets_ = targetsWithin(*found, cutout_);
    if (const auto box = boundsOf(cutoutRing(*hole))) moving_ = movingOf(*box);
    if (hole->shape == CutoutShape::circle) moving_.corners.clear();
}

QString CutoutMoveGesture::name() const { return tr("Move %1").arg(called_); }

void CutoutMoveGesture::preview(Point ownBy)
{
    by_ = ownBy;
    host().document().preview([part = part_, cutout = cutout_, ownBy](const Plan& plan) {
        return changeCutout(plan, part, cutout, [&](Cutout& c) { c.centre = c.centre + ownBy; });
    });
    const Plan& plan = *host().document().plan();
    const Part* found = findPart(plan, part_);
    const Cutout* hole = findCutout(plan, part_, cutout_);
    if (!found || !hole) return;
    const QString strip = stripsText(std::get<Counter>(found->body), *hole);
    host().sayAtPointer(joined({wayText(ownBy, true), strip}));
    host().say(joined({called_, wayText(ownBy, true), strip, massAndPeople(plan, *found)}));
}

void CutoutMoveGesture::move(const PointerEvent& event)
{
    Point by = frame_.directionToOwn(event.at - from_);
    const AxisLock lock = lockFor(by, event.modifiers);
    if (lock.x) by.x = 0.0;
    if (lock.y) by.y = 0.0;
    preview(host().snapMove(targets_, moving_, by, event.modifiers, lock, frame_).at);
}

QString CutoutMoveGesture::typed(const TypedSize& size)
{
    preview(typedWay(size, by_));
    return {};
}

FixtureMoveGesture::FixtureMoveGesture(ToolHost& host, std::string fixture, Point from)
    : Gesture(host), fixture_(std::move(fixture)), from_(from)
{
    const Plan& plan = *host.document().committed();
    const Fixture* found = findFixture(plan, fixture_);
    if (!found) return;
    const Size size = found->size.value_or(Size{});
    moving_ = movingOf(Box{found->at, found->at + Point{size.width, size.depth}});
    targets_ = without(host.snapTargets({}), fixture_);
}

QString FixtureMoveGesture::name() const { return tr("Move %1").arg(QString::fromStdString(fixture_)); }

void FixtureMoveGesture::preview(Point by)
{
    by_ = by;
    host().document().preview([id = fixture_, by](const Plan& plan) {
        return changeFixture(plan, id, [&](Fixture& f) { f.at = f.at + by; });
    });
    host().sayAtPointer(wayText(by, true));
    host().say(joined({QString::fromStdString(fixture_), wayText(by, true)}));
}

void FixtureMoveGesture::move(const PointerEvent& event)
{
    Point by = event.at - from_;
    const AxisLock lock = lockFor(by, event.modifiers);
    if (lock.x) by.x = 0.0;
    if (lock.y) by.y = 0.0;
    preview(host().snapMove(targets_, moving_, by, event.modifiers, lock).at);
}

QString FixtureMoveGesture::typed(const TypedSize& size)
{
    preview(typedWay(size, by_));
    return {};
}

}  // namespace yardcast::ui
