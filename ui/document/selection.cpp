#include "ui/document/selection.h"

#include <algorithm>

#include "ui/document/plan_document.h"

namespace yardcast::ui {

Selection::Selection(PlanDocument& document, QObject* parent) : QObject(parent), document_(document)
{
    connect(&document, &PlanDocument::documentReset, this, &Selection::clear);
    connect(&document, &PlanDocument::committedChanged, this, &Selection::dropMissing);
}

void Selection::setParts(const QStringList& ids)
{
    if (parts_ == ids && cutout_.isEmpty() && fixture_.isEmpty()) return;
    parts_ = ids;
    parts_.removeDuplicates();
    cutout_ = {};
    fixture_.clear();
    emit chosenChanged();
}

void Selection::toggle(const QString& id)
{
    QStringList ids = parts_;
    if (!ids.removeOne(id)) ids.append(id);
    setParts(ids);
}

void Selection::setCutout(const CutoutRef& ref)
{
    if (cutout_ == ref) return;
    cutout_ = ref;
    parts_ = ref.isEmpty() ? QStringList() : QStringList{ref.part};
    fixture_.clear();
    emit chosenChanged();
}

void Selection::setFixture(const QString& id)
{
    if (fixture_ == id && parts_.isEmpty()) return;
    fixture_ = id;
    parts_.clear();
    cutout_ = {};
    emit chosenChanged();
}

void Selection::clear()
{
    if (isEmpty()) return;
    parts_.clear();
    cutout_ = {};
    fixture_.clear();
    emit chosenChanged();
}

void Selection::setHovered(const QString& part)
{
    if (hovered_ == part) return;
    hovered_ = part;
    emit hoveredChanged();
}

void Selection::setHighlighted(const QStringList& parts)
{
    if (highlighted_ == parts) return;
    highlighted_ = parts;
    emit highlightedChanged();
}

void Selection::dropMissing()
{
    const Plan& plan = *document_.plan();
    const auto missing = [&](const QString& id) { return findPart(plan, id.toStdString()) == nullptr; };
    bool changed = parts_.removeIf(missing) > 0;
    if (!cutout_.isEmpty()) {
        const Part* part = findPart(plan, cutout_.part.toStdString());
        const auto* counter = part ? std::get_if<Counter>(&part->body) : nullptr;
        const std::string id = cutout_.cutout.toStdString();
        const bool there = counter && std::ranges::any_of(counter->cutouts, [&](const Cutout& c) { return c.id == id; });
        if (!there) {
            cutout_ = {};
            changed = true;
        }
    }
    if (!fixture_.isEmpty()) {
        const std::string id = fixture_.toStdString();
        if (std::ranges::none_of(plan.site.fixtures, [&](const Fixture& f) { return f.id == id; })) {
            fixture_.clear();
            changed = true;
        }
    }
    if (highlighted_.removeIf(missing) > 0) emit highlightedChanged();
    if (!hovered_.isEmpty() && missing(hovered_)) setHovered({});
    if (changed) emit chosenChanged();
}

}  // namespace yardcast::ui
