#include "ui/panels/fields/edges_field.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include <QCheckBox>
#include <QMap>
#include <QSignalBlocker>
#include <QVBoxLayout>

#include "core/geometry/region.h"
#include "ui/look/number_text.h"
#include "ui/look/theme.h"

namespace yardcast::ui {

namespace {

QString sideFacing(Point outwards)
{
    const double angle = std::atan2(outwards.y, outwards.x) * 180.0 / std::numbers::pi;
    switch ((static_cast<int>(std::lround(angle / 45.0)) + 8) % 8) {
    case 0: return EdgesField::tr("right");
    case 1: return EdgesField::tr("back right");
    case 2: return EdgesField::tr("back");
    case 3: return EdgesField::tr("back left");
    case 4: return EdgesField::tr("left");
    case 5: return EdgesField::tr("front left");
    case 6: return EdgesField::tr("front");
    default: return EdgesField::tr("front right");
    }
}

}  // namespace

QStringList edgeNames(const std::vector<Point>& outline)
{
    QStringList sides;
    QMap<QString, int> count;
    const double turn = signedArea(outline) >= 0.0 ? -1.0 : 1.0;  // outwards lies right of a counter-clockwise edge
    for (std::size_t i = 0; i < outline.size(); ++i) {
        const Point along = outline[(i + 1) % outline.size()] - outline[i];
        sides.append(sideFacing(leftNormal(along) * turn));
        ++count[sides.last()];
    }
    QMap<QString, int> number;
    for (QString& side : sides) {
        const QString name = side;
        if (count[name] > 1) side = EdgesField::tr("%1 %2").arg(name).arg(++number[name]);
    }
    return sides;
}

EdgesField::EdgesField(FieldHost& host, const QString& path, const QString& label, Scope<Counter> scope,
                       QWidget* parent)
    : Field(host, path, label, parent), scope_(std::move(scope)), list_(new QWidget(this)),
      column_(new QVBoxLayout(list_))
{
    column_->setContentsMargins(0, 0, 0, 0);
    column_->setSpacing(0);
    setEditor(list_);
}

void EdgesField::showPlan(const Plan& plan)
{
    const std::vector<const Counter*> counters = scope_.read(plan);
    const bool there = counters.size() == 1 && counters[0]->rim.has_value();
    setThere(there);
    if (!there) return;
    const Counter& counter = *counters[0];
    const QStringList names = edgeNames(counter.outline);
    while (boxes_.size() > names.size()) delete boxes_.takeLast();
    while (boxes_.size() < names.size()) {
        auto* box = new QCheckBox(list_);
        box->setMinimumHeight(kTargetPx);
        connect(box, &QCheckBox::clicked, this, &EdgesField::take);
        column_->addWidget(box);
        boxes_.append(box);
    }
    if (!boxes_.isEmpty()) setFocusProxy(boxes_.first());
    for (int i = 0; i < names.size(); ++i) {
        const double lengthMm = distance(counter.outline[i], counter.outline[(i + 1) % counter.outline.size()]);
        boxes_[i]->setText(tr("%1, %2 mm").arg(names[i], formatNumber(lengthMm, 0)));
        const bool on = !counter.rim->edges || std::ranges::find(*counter.rim->edges, i) != counter.rim->edges->end();
        const QSignalBlocker quiet(boxes_[i]);
        boxes_[i]->setChecked(on);
    }
}

void EdgesField::take()
{
    std::vector<int> ticked;
    for (int i = 0; i < boxes_.size(); ++i) {
        if (boxes_[i]->isChecked()) ticked.push_back(i);
    }
    const bool all = static_cast<qsizetype>(ticked.size()) == boxes_.size();
    const Edit edit = [change = scope_.change, ticked, all](const Plan& plan) {
        return change(plan, [&](Counter& counter) {
            if (counter.rim) counter.rim->edges = all ? std::nullopt : std::optional(ticked);
        });
    };
    host().apply(editName(), edit);
}

}  // namespace yardcast::ui
