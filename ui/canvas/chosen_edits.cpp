#include "ui/canvas/chosen_edits.h"

#include <QCoreApplication>

#include "core/plan/edits.h"
#include "ui/canvas/lookups.h"
#include "ui/canvas/piece_text.h"
#include "ui/canvas/snap_targets.h"
#include "ui/document/plan_document.h"
#include "ui/document/selection.h"
#include "ui/drawing/projection.h"

namespace yardcast::ui {

namespace {

constexpr int kNudgeMergeId = 4711;

QString tr(const char* text) { return QCoreApplication::translate("ChosenEdits", text); }

Ids idsOf(const Selection& selection)
{
    Ids ids;
    for (const QString& id : selection.parts()) ids.push_back(id.toStdString());
    return ids;
}

Box boundsOfChosen(const Plan& plan, const Selection& selection)
{
    return movingOf(plan, selection.parts(), Projection::above()).box;
}

struct ChosenCutout {
    std::string part;
    std::string id;
    const Part* counter = nullptr;
    const Cutout* cutout = nullptr;
    explicit operator bool() const { return counter && cutout; }
};

ChosenCutout chosenCutout(const Plan& plan, const Selection& selection)
{
    ChosenCutout chosen;
    chosen.part = selection.cutout().part.toStdString();
    chosen.id = selection.cutout().cutout.toStdString();
    chosen.counter = findPart(plan, chosen.part);
    chosen.cutout = findCutout(plan, chosen.part, chosen.id);
    return chosen;
}

}  // namespace

void nudgeChosen(PlanDocument& document, const Selection& selection, const Projection& projection, int corner,
                 Point by)
{
    const Plan& plan = *document.committed();
    if (!selection.fixture().isEmpty()) {
        if (!projection.isAbove()) return;
        const std::string id = selection.fixture().toStdString();
        document.apply(tr("Move %1").arg(selection.fixture()), [&](const Plan& p) {
            return changeFixture(p, id, [&](Fixture& f) { f.at = f.at + by; });
        }, kNudgeMergeId);
        return;
    }
    if (!selection.cutout().isEmpty()) {
        const ChosenCutout chosen = chosenCutout(plan, selection);
        if (!chosen || !projection.isAbove()) return;
        const Point own = chosen.counter->place.directionToOwn(by);
        document.apply(tr("Move %1").arg(cutoutCalled(*chosen.cutout)), [&](const Plan& p) {
            return changeCutout(p, chosen.part, chosen.id, [&](Cutout& c) { c.centre = c.centre + own; });
        }, kNudgeMergeId);
        return;
    }
    if (selection.parts().isEmpty()) return;
    const QString called = partsCalled(plan, selection.parts());
    const Counter* counter = corner >= 0 ? findCounter(plan, selection.parts().front().toStdString()) : nullptr;
    if (counter && static_cast<std::size_t>(corner) < counter->outline.size() && projection.isAbove()) {
        const std::string id = selection.parts().front().toStdString();
        const Point to = counter->outline[static_cast<std::size_t>(corner)]
            + findPart(plan, id)->place.directionToOwn(by);
        document.apply(tr("Reshape %1").arg(called),
                       [&](const Plan& p) { return moveOutlineCorner(p, id, corner, to); }, kNudgeMergeId);
        return;
    }
    const Ids ids = withRiders(plan, idsOf(selection));
    document.apply(tr("Move %1").arg(called), [&](const Plan& p) {
        if (projection.isAbove()) return moveParts(p, ids, by);
        return raiseParts(moveParts(p, ids, projection.rightwards() * by.x), ids, by.y);
    }, kNudgeMergeId);
}

void deleteChosen(PlanDocument& document, Selection& selection)
{
    const Plan& plan = *document.committed();
    if (!selection.fixture().isEmpty()) {
        const std::string id = selection.fixture().toStdString();
        document.apply(tr("Delete %1").arg(selection.fixture()), [&](const Plan& p) { return removeFixture(p, id); });
    } else if (!selection.cutout().isEmpty()) {
        const ChosenCutout chosen = chosenCutout(plan, selection);
        if (!chosen) return;
        document.apply(tr("Delete %1").arg(cutoutCalled(*chosen.cutout)),
                       [&](const Plan& p) { return removeCutout(p, chosen.part, chosen.id); });
        // Its counter stays in hand.
        selection.setParts({QString::fromStdString(chosen.part)});
    } else if (!selection.parts().isEmpty()) {
        const Ids ids = idsOf(selection);
        document.apply(tr("Delete %1").arg(partsCalled(plan, selection.parts())),
                       [&](const Plan& p) { return removeParts(p, ids); });
    }
}

void turnChosen(PlanDocument& document, const Selection& selection, double byDeg)
{
    const Plan& plan = *document.committed();
    if (!selection.cutout().isEmpty()) {
        const ChosenCutout chosen = chosenCutout(plan, selection);
        if (!chosen || chosen.cutout->shape == CutoutShape::circle) return;
        document.apply(tr("Turn %1").arg(cutoutCalled(*chosen.cutout)), [&](const Plan& p) {
            return changeCutout(p, chosen.part, chosen.id, [&](Cutout& c) {
                const double turned = c.turnDeg.value_or(0.0) + byDeg;
                c.turnDeg = turned >= 360.0 ? turned - 360.0 : turned <= -360.0 ? turned + 360.0 : turned;
            });
        });
        return;
    }
    if (selection.parts().isEmpty()) return;
    const Ids ids = withRiders(plan, idsOf(selection));
    const Point about = boundsOfChosen(plan, selection).centre();
    document.apply(tr("Turn %1").arg(partsCalled(plan, selection.parts())),
                   [&](const Plan& p) { return turnParts(p, ids, byDeg, about); });
}

void mirrorChosen(PlanDocument& document, const Selection& selection)
{
    if (selection.parts().isEmpty() || !selection.cutout().isEmpty()) return;
    const Plan& plan = *document.committed();
    const Ids ids = idsOf(selection);
    const double x = boundsOfChosen(plan, selection).centre().x;
    document.apply(tr("Mirror %1").arg(partsCalled(plan, selection.parts())),
                   [&](const Plan& p) { return mirrorParts(p, ids, x); });
}

void duplicateChosen(PlanDocument& document, Selection& selection)
{
    const Plan& plan = *document.committed();
    if (!selection.cutout().isEmpty()) {
        const ChosenCutout chosen = chosenCutout(plan, selection);
        if (!chosen) return;
        Cutout copy = *chosen.cutout;
        copy.id = freeCutoutId(std::get<Counter>(chosen.counter->body));
        const auto box = boundsOf(cutoutRing(copy));
        copy.centre.x += (box ? box->width() : 0.0) + 100.0;
        copy.source = {};
        document.apply(tr("Duplicate %1").arg(cutoutCalled(*chosen.cutout)),
                       [&](const Plan& p) { return addCutout(p, chosen.part, copy); });
        selection.setCutout({QString::fromStdString(chosen.part), QString::fromStdString(copy.id)});
        return;
    }
    if (selection.parts().isEmpty()) return;
    const Ids ids = idsOf(selection);
    const Box box = boundsOfChosen(plan, selection);
    Ids made;
    document.apply(tr("Duplicate %1").arg(partsCalled(plan, selection.parts())), [&](const Plan& p) {
        made.clear();
        return duplicateParts(p, ids, {box.width() + 200.0, 0.0}, &made);
    });
    QStringList chosen;
    for (const std::string& id : made) chosen << QString::fromStdString(id);
    selection.setParts(chosen);
}

}  // namespace yardcast::ui
