#include "ui/panels/fields/edges_field.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <numeric>

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

std::vector<int> allEdges(const Counter& counter)
{
    std::vector<int> all(counter.outline.size());
    std::iota(all.begin(), all.end(), 0);
    return all;
}

/// Of what lists its edges and has none where none are named.
template <class T>
EdgesAccess listedEdges(std::optional<T> Counter::* member)
{
    return {[member](const Counter& counter) -> std::optional<std::vector<int>> {
                if (!(counter.*member)) return std::nullopt;
                return (counter.*member)->edges;
            },
            [member](Counter& counter, const std::vector<int>& edges) {
                if (counter.*member) (counter.*member)->edges = edges;
            }};
}

}  // namespace

EdgesAccess rimEdges()
{
    return {[](const Counter& counter) -> std::optional<std::vector<int>> {
                if (!counter.rim) return std::nullopt;
                return counter.rim->edges.value_or(allEdges(counter));
            },
            [](Counter& counter, const std::vector<int>& edges) {
                if (!counter.rim) return;
                counter.rim->edges = edges.size() == counter.outline.size() ? std::nullopt : std::optional(edges);
            }};
}

EdgesAccess dripEdges() { return listedEdges(&Counter::drip); }
EdgesAccess rebateEdges() { return listedEdges(&Counter::rebate); }

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
                       EdgesAccess access, QWidget* parent)
    : Field(host, path, label, parent), scope_(std::move(scope)), access_(std::move(access)),
      list_(new QWidget(this)), column_(new QVBoxLayout(list_))
{
    column_->setContentsMargins(0, 0, 0, 0);
    column_->setSpacing(0);
    setEditor(list_);
}

void EdgesField::showPlan(const Plan& plan)
{
    const std::vector<const Counter*> counters = scope_.read(plan);
    const std::optional<std::vector<int>> edges =
        counters.size() == 1 ? access_.read(*counters[0]) : std::optional<std::vector<int>>();
    setThere(edges.has_value());
    if (!edges) return;
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
        const bool on = std::ranges::find(*edges, i) != edges->end();
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
    const Edit edit = [change = scope_.change, write = access_.write, ticked](const Plan& plan) {
        return change(plan, [&](Counter& counter) { write(counter, ticked); });
    };
    host().apply(editName(), edit);
}

}  // namespace yardcast::ui
