#include "ui/canvas/gestures/box_gesture.h"

#include <algorithm>
#include <cmath>

#include <QCoreApplication>

#include "core/plan/edits.h"
#include "ui/canvas/gestures/move_gesture.h"
#include "ui/canvas/handles.h"
#include "ui/canvas/lookups.h"
#include "ui/canvas/piece_text.h"
#include "ui/canvas/snap_targets.h"
#include "ui/document/plan_document.h"
#include "ui/look/number_text.h"
#include "ui/wording/figures.h"

namespace yardcast::ui {

namespace {

QString tr(const char* text) { return QCoreApplication::translate("Gestures", text); }

constexpr double kLeastBoxMm = 10.0;

}  // namespace

BoxGesture::Subject BoxGesture::partSubject(ToolHost& host, const std::string& id)
{
    Subject subject;
    const Plan& plan = *host.document().committed();
    const Part* part = findPart(plan, id);
    if (!part) return subject;
    const QString qid = QString::fromStdString(id);
    const Size size = boxSizeOf(*part);
    subject.called = partsCalled(plan, {qid});
    subject.frame = part->place;
    subject.box = {{0, 0}, {size.width, size.depth}};
    subject.targets = inFrame(host.snapTargets({qid}), part->place);
    subject.write = [id](const Plan& p, const Box& box) {
        const Plan moved = changePart(p, id, [&](Part& changed) {
            changed.place.at = changed.place.toPlan(box.low);
        });
        return resizePart(moved, id, {box.width(), box.height()});
    };
    subject.figures = [id](const Plan& p) {
        const Part* now = findPart(p, id);
        return now ? massAndPeople(p, *now) : QString();
    };
    return subject;
}

BoxGesture::Subject BoxGesture::cutoutSubject(ToolHost& host, const std::string& id, const std::string& cutoutId)
{
    Subject subject;
    const Plan& plan = *host.document().committed();
    const Part* part = findPart(plan, id);
    const Cutout* cutout = findCutout(plan, id, cutoutId);
    if (!part || !cutout) return subject;
    const double turn = cutout->turnDeg.value_or(0.0);
    const Point half{cutout->size.width / 2.0, cutout->size.depth / 2.0};
    // The frame of the cutout, within the counter's and within the plan's.
    const Placement own{cutout->centre - Placement{{}, turn}.toPlan(half), turn};
    subject.called = cutoutCalled(*cutout);
    subject.frame = {part->place.toPlan(own.at), part->place.turnDeg + turn};
    subject.box = {{0, 0}, half * 2.0};
    subject.targets = inFrame(targetsWithin(*part, cutoutId), own);
    subject.write = [id, cutoutId, own](const Plan& p, const Box& box) {
        return changeCutout(p, id, cutoutId, [&](Cutout& c) {
            c.centre = own.toPlan(box.centre());
            c.size = {box.width(), box.height()};
        });
    };
    subject.figures = [id, cutoutId](const Plan& p) {
        const Part* now = findPart(p, id);
        const Cutout* hole = findCutout(p, id, cutoutId);
        if (!now || !hole) return QString();
        return joined({stripsText(std::get<Counter>(now->body), *hole), massAndPeople(p, *now)});
    };
    return subject;
}

BoxGesture::Subject BoxGesture::fixtureSubject(ToolHost& host, const std::string& id)
{
    Subject subject;
    const Plan& plan = *host.document().committed();
    const Fixture* found = findFixture(plan, id);
    if (!found || !found->size) return subject;
    subject.called = QString::fromStdString(id);
    subject.frame = {found->at, 0.0};
    subject.box = {{0, 0}, {found->size->width, found->size->depth}};
    subject.targets = inFrame(without(host.snapTargets({}), id), subject.frame);
    subject.write = [id, at = found->at](const Plan& p, const Box& box) {
        return changeFixture(p, id, [&](Fixture& f) {
            f.at = at + box.low;
            f.size = Size{box.width(), box.height()};
        });
    };
    subject.figures = [](const Plan&) { return QString(); };
    return subject;
}

BoxGesture::BoxGesture(ToolHost& host, Subject subject, int sides, Point from)
    : Gesture(host), subject_(std::move(subject)), sides_(sides), now_(subject_.box)
{
    const Box& box = subject_.box;
    const Point at = subject_.frame.toOwn(from);
    const Point grip{sides & kLeft ? box.low.x : sides & kRight ? box.high.x : at.x,
                     sides & kFront ? box.low.y : sides & kBack ? box.high.y : at.y};
    off_ = at - grip;
    // Sizes come out round when counted from the side that stays.
    subject_.targets.gridOrigin = {sides & kLeft ? box.high.x : box.low.x, sides & kFront ? box.high.y : box.low.y};
}

QString BoxGesture::name() const { return tr("Resize %1").arg(subject_.called); }

void BoxGesture::preview(const Box& box)
{
    if (!subject_.write) return;
    now_ = box;
    host().document().preview([write = subject_.write, box](const Plan& plan) { return write(plan, box); });
    const QString text = joined({sizeText(box.width(), box.height()),
                                 subject_.figures(*host().document().plan())});
    host().sayAtPointer(text);
    host().say(joined({subject_.called, text}));
}

void BoxGesture::move(const PointerEvent& event)
{
    const Point at = subject_.frame.toOwn(event.at) - off_;
    const bool sideways = sides_ & (kLeft | kRight);
    const bool lengthways = sides_ & (kFront | kBack);
    Point to = at;
    if (sideways && lengthways) {
        to = host().snapPoint(subject_.targets, at, event.modifiers, subject_.frame).at;
    } else {
        const Point direction = sideways ? Point{1.0, 0.0} : Point{0.0, 1.0};
        to = host().snapAlong(subject_.targets, at, direction, event.modifiers, subject_.frame).at;
    }
    Box box = subject_.box;
    if (sides_ & kLeft) box.low.x = std::min(to.x, box.high.x - kLeastBoxMm);
    if (sides_ & kRight) box.high.x = std::max(to.x, box.low.x + kLeastBoxMm);
    if (sides_ & kFront) box.low.y = std::min(to.y, box.high.y - kLeastBoxMm);
    if (sides_ & kBack) box.high.y = std::max(to.y, box.low.y + kLeastBoxMm);
    preview(box);
}

QString BoxGesture::typed(const TypedSize& size)
{
    const bool sideways = sides_ & (kLeft | kRight);
    const bool lengthways = sides_ & (kFront | kBack);
    double width = now_.width();
    double depth = now_.height();
    if (size.secondMm || sideways) {
        width = size.firstMm;
        if (size.secondMm) depth = *size.secondMm;
    } else if (lengthways) {
        depth = size.firstMm;
    }
    if (!(width >= 1.0) || !(depth >= 1.0)) return tr("A size must be at least 1 mm.");
    Box box = subject_.box;
    if (sides_ & kLeft) {
        box.low.x = box.high.x - width;
    } else {
        box.high.x = box.low.x + width;
    }
    if (sides_ & kFront) {
        box.low.y = box.high.y - depth;
    } else {
        box.high.y = box.low.y + depth;
    }
    preview(box);
    return {};
}

QString BoxGesture::currentSize() const
{
    return formatNumber(now_.width(), 1) + u' ' + formatNumber(now_.height(), 1);
}

DiameterGesture::DiameterGesture(ToolHost& host, std::string part, std::string cutout, Point from)
    : Gesture(host), part_(std::move(part)), cutout_(std::move(cutout))
{
    const Plan& plan = *host.document().committed();
    const Part* found = findPart(plan, part_);
    const Cutout* hole = findCutout(plan, part_, cutout_);
    if (!found || !hole) return;
    called_ = cutoutCalled(*hole);
    centre_ = found->place.toPlan(hole->centre);
    wasMm_ = hole->diameterMm;
    fromMm_ = distance(from, centre_);
}

QString DiameterGesture::name() const { return tr("Resize %1").arg(called_); }

void DiameterGesture::preview(double diameterMm)
{
    host().document().preview([part = part_, cutout = cutout_, diameterMm](const Plan& plan) {
        return changeCutout(plan, part, cutout, [&](Cutout& c) { c.diameterMm = diameterMm; });
    });
    const QString text = tr("%1 across").arg(lengthText(diameterMm));
    host().sayAtPointer(text);
    host().say(joined({called_, text}));
}

void DiameterGesture::move(const PointerEvent& event)
{
    // The handle of a small hole sits outside it: the way it is dragged counts.
    const double wanted = wasMm_ + 2.0 * (distance(event.at, centre_) - fromMm_);
    const double step = event.modifiers & Qt::AltModifier ? 1.0 : wasMm_ < 100.0 ? 1.0 : 5.0;
    preview(std::max(step, std::round(wanted / step) * step));
}

QString DiameterGesture::typed(const TypedSize& size)
{
    if (size.secondMm) return tr("A round cutout has one size: its diameter.");
    if (!(size.firstMm >= 1.0)) return tr("A size must be at least 1 mm.");
    preview(size.firstMm);
    return {};
}

FrontEndGesture::FrontEndGesture(ToolHost& host, std::string part, int end, Point from)
    : Gesture(host), part_(std::move(part)), end_(end)
{
    const Plan& plan = *host.document().committed();
    const Part* found = findPart(plan, part_);
    const auto* front = found ? std::get_if<Front>(&found->body) : nullptr;
    if (!front) return;
    const QString id = QString::fromStdString(part_);
    called_ = partsCalled(plan, {id});
    moved_ = found->place.toPlan(end == 0 ? front->from : front->to);
    still_ = found->place.toPlan(end == 0 ? front->to : front->from);
    now_ = moved_;
    off_ = from - moved_;
    targets_ = host.snapTargets({id});
    targets_.gridOrigin = still_;
}

QString FrontEndGesture::name() const { return tr("Resize %1").arg(called_); }

void FrontEndGesture::preview(Point inPlan)
{
    now_ = inPlan;
    host().document().preview([part = part_, end = end_, inPlan](const Plan& plan) {
        return changePart(plan, part, [&](Part& changed) {
            auto& front = std::get<Front>(changed.body);
            (end == 0 ? front.from : front.to) = changed.place.toOwn(inPlan);
        });
    });
    const QString text = lengthText(distance(now_, still_));
    host().sayAtPointer(text);
    host().say(joined({called_, text}));
}

void FrontEndGesture::move(const PointerEvent& event)
{
    Point at = event.at - off_;
    if (event.modifiers & Qt::ShiftModifier) {
        // Kept on the front's own line.
        const Point along = moved_ - still_;
        const double span = length(along);
        if (span > 0.0) {
            const Point unit = along * (1.0 / span);
            const Point on = still_ + unit * dot(at - still_, unit);
            preview(host().snapAlong(targets_, on, unit, event.modifiers).at);
            return;
        }
    }
    preview(host().snapPoint(targets_, at, event.modifiers).at);
}

QString FrontEndGesture::typed(const TypedSize& size)
{
    if (size.secondMm) return tr("A front has one size from above: its length.");
    if (!(size.firstMm >= 1.0)) return tr("A size must be at least 1 mm.");
    const Point along = now_ - still_;
    const double span = length(along);
    preview(still_ + (span > 0.0 ? along * (size.firstMm / span) : Point{size.firstMm, 0.0}));
    return {};
}

}  // namespace yardcast::ui
