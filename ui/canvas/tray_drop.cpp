#include "ui/canvas/tray_drop.h"

#include <cmath>
#include <map>

#include <QCoreApplication>
#include <QMimeData>

#include "core/plan/edits.h"
#include "ui/canvas/gestures/move_gesture.h"
#include "ui/canvas/lookups.h"
#include "ui/canvas/new_parts.h"
#include "ui/canvas/piece_text.h"
#include "ui/canvas/snap_targets.h"
#include "ui/document/plan_document.h"
#include "ui/wording/names.h"

namespace yardcast::ui {

namespace {

QString tr(const char* text) { return QCoreApplication::translate("TrayDrop", text); }

TrayThing partThing(PartKind kind)
{
    TrayThing thing;
    thing.part = kind;
    return thing;
}

TrayThing cutoutThing(CutoutPurpose purpose, CutoutShape shape)
{
    TrayThing thing;
    thing.what = TrayThing::What::cutout;
    thing.purpose = purpose;
    thing.shape = shape;
    return thing;
}

TrayThing fixtureThing(FixtureKind kind)
{
    TrayThing thing;
    thing.what = TrayThing::What::fixture;
    thing.fixture = kind;
    return thing;
}

}  // namespace

std::optional<TrayThing> trayThing(const QString& word)
{
    static const std::map<QString, TrayThing> things{
        {"counter", partThing(PartKind::counter)},
        {"support", partThing(PartKind::support)},
        {"panel", partThing(PartKind::panel)},
        {"front", partThing(PartKind::front)},
        {"appliance", partThing(PartKind::appliance)},
        {"sink", cutoutThing(CutoutPurpose::sink, CutoutShape::rectangle)},
        {"hob", cutoutThing(CutoutPurpose::hob, CutoutShape::rectangle)},
        {"tap", cutoutThing(CutoutPurpose::tap, CutoutShape::circle)},
        {"drain", cutoutThing(CutoutPurpose::drain, CutoutShape::circle)},
        {"opening", cutoutThing(CutoutPurpose::other, CutoutShape::rectangle)},
        {"water", fixtureThing(FixtureKind::water)},
        {"waste", fixtureThing(FixtureKind::waste)},
        {"power", fixtureThing(FixtureKind::power)},
        {"gas", fixtureThing(FixtureKind::gas)},
        {"wall", fixtureThing(FixtureKind::wall)},
        {"tree", fixtureThing(FixtureKind::tree)},
        {"door", fixtureThing(FixtureKind::door)},
    };
    const auto found = things.find(word);
    if (found == things.end()) return std::nullopt;
    return found->second;
}

std::optional<TrayThing> trayThing(const QMimeData* data)
{
    if (!data || !data->hasFormat(QLatin1String(kPartKindMime))) return std::nullopt;
    return trayThing(QString::fromUtf8(data->data(QLatin1String(kPartKindMime))));
}

TrayDrop::TrayDrop(ToolHost& host, TrayThing thing) : host_(host), thing_(thing), targets_(host.snapTargets({})) {}

void TrayDrop::moveTo(Point at, Qt::KeyboardModifiers modifiers)
{
    switch (thing_.what) {
    case TrayThing::What::part: movePart(at, modifiers); break;
    case TrayThing::What::cutout: moveCutout(at, modifiers); break;
    case TrayThing::What::fixture: moveFixture(at, modifiers); break;
    }
}

void TrayDrop::movePart(Point at, Qt::KeyboardModifiers modifiers)
{
    const Plan& plan = *host_.document().committed();
    const Part* counter = counterAt(plan, at);
    const bool fitsItself = counter && (thing_.part == PartKind::support || thing_.part == PartKind::panel);
    Part part;
    if (fitsItself) {
        // Along the counter it is free, across it is given.
        const Placement& frame = counter->place;
        const SnapTargets within = inFrame(targets_, frame);
        const Point own = host_.snapAlong(within, frame.toOwn(at), {1.0, 0.0}, modifiers, frame).at;
        part = defaultPart(plan, thing_.part, frame.toPlan(own));
    } else {
        part = defaultPart(plan, thing_.part, at);
        const Box box = boundsOf(footprint(part)).value_or(Box{at, at});
        const Point by = host_.snapMove(targets_, movingOf(box), {}, modifiers).at;
        part.place.at = part.place.at + by;
        // What it stands on may be another counter there.
        if (thing_.part == PartKind::appliance) part = newPart(plan, thing_.part, {box.low + by, box.high + by});
    }
    made_ = part.id;
    host_.document().preview([part](const Plan& p) { return withNewPart(p, part); });
    const QString text = massAndPeople(*host_.document().plan(), part);
    host_.sayAtPointer(text);
    host_.say(text);
    canDrop_ = true;
}

void TrayDrop::moveCutout(Point at, Qt::KeyboardModifiers modifiers)
{
    const Plan& plan = *host_.document().committed();
    const Part* part = counterAt(plan, at);
    canDrop_ = part != nullptr;
    if (!part) {
        host_.clearGuides();
        host_.document().cancelPreview();
        host_.sayAtPointer({});
        host_.say(tr("A cutout goes through a counter: drop it on one."));
        return;
    }
    counter_ = part->id;
    Cutout cutout = defaultCutout(thing_.purpose, thing_.shape);
    cutout.id = freeCutoutId(std::get<Counter>(part->body));
    Moving moving = movingOf(*boundsOf(cutoutRing(cutout)));
    if (thing_.shape == CutoutShape::circle) moving.corners.clear();
    const SnapTargets within = targetsWithin(*part, {});
    cutout.centre = host_.snapMove(within, moving, part->place.toOwn(at), modifiers, {}, part->place).at;
    made_ = cutout.id;
    host_.document().preview([id = counter_, cutout](const Plan& p) { return addCutout(p, id, cutout); });
    const Part* now = findPart(*host_.document().plan(), counter_);
    const QString text = joined({stripsText(std::get<Counter>(now->body), cutout),
                                 massAndPeople(*host_.document().plan(), *now)});
    host_.sayAtPointer(text);
    host_.say(text);
}

void TrayDrop::moveFixture(Point at, Qt::KeyboardModifiers modifiers)
{
    const Plan& plan = *host_.document().committed();
    Fixture fixture;
    fixture.id = freeFixtureId(plan, thing_.fixture);
    fixture.kind = thing_.fixture;
    const Size size = hasExtent(thing_.fixture) ? defaultFixtureSize(thing_.fixture) : Size{};
    const Point half{size.width / 2.0, size.depth / 2.0};
    const Box box{at - half, at + half};
    fixture.at = box.low + host_.snapMove(targets_, movingOf(box), {}, modifiers).at;
    if (hasExtent(thing_.fixture)) fixture.size = size;
    made_ = fixture.id;
    host_.document().preview([fixture](const Plan& p) { return addFixture(p, fixture); });
    canDrop_ = true;
}

void TrayDrop::drop()
{
    host_.clearGuides();
    host_.sayAtPointer({});
    if (!canDrop_) {
        cancel();
        return;
    }
    QString what;
    switch (thing_.what) {
    case TrayThing::What::part: what = tr("Add %1").arg(kindName(thing_.part).toLower()); break;
    case TrayThing::What::cutout: what = tr("Cut %1").arg(purposeName(thing_.purpose).toLower()); break;
    case TrayThing::What::fixture: what = tr("Add %1").arg(fixtureName(thing_.fixture).toLower()); break;
    }
    host_.document().commitPreview(what);
    switch (thing_.what) {
    case TrayThing::What::part: host_.finished({QString::fromStdString(made_)}); break;
    case TrayThing::What::cutout: host_.finishedCutout(counter_, made_); break;
    case TrayThing::What::fixture: host_.finishedFixture(made_); break;
    }
}

void TrayDrop::cancel()
{
    host_.clearGuides();
    host_.sayAtPointer({});
    host_.document().cancelPreview();
}

}  // namespace yardcast::ui
