#include "ui/canvas/strength_layer.h"

#include <algorithm>
#include <utility>

#include <QCoreApplication>
#include <QPainter>

#include "ui/canvas/plan_scene.h"
#include "ui/document/selection.h"
#include "ui/drawing/marks.h"
#include "ui/live/live_assessment.h"
#include "ui/live/strength_choice.h"
#include "ui/wording/figures.h"
#include "ui/wording/strength_names.h"

namespace yardcast::ui {

namespace {

struct Canvas {
    Q_DECLARE_TR_FUNCTIONS(yardcast::ui::StrengthLayer)
};

double heightOf(const StrengthItem& item)
{
    const auto* counter = std::get_if<Counter>(&item.part->body);
    return counter ? counter->topMm : 0.0;
}

/// Signs on the edge of a casting reach a little beyond it.
constexpr double kSignPx = 12.0;

}  // namespace

std::vector<StrengthItem> StrengthLayer::itemsNow() const
{
    std::vector<StrengthItem> items;
    const AssessmentPtr& assessment = live_.assessment();
    if (!assessment) return items;
    const Plan& plan = *scene_.plan();
    const StrengthChoice& choice = live_.strengthChoice();
    for (const PlacedCasting& placed : assessment->castings) {
        const int index = indexOfPart(plan, placed.casting->part);
        const auto strength = std::ranges::find(assessment->strength, placed.casting->id, &CastingStrength::casting);
        if (index < 0 || strength == assessment->strength.end()) continue;
        auto item = strengthItem(plan.parts[std::size_t(index)], placed.casting, *strength, choice.of(**strength),
                                 scene_.projection(), scene_.style());
        if (!item || !isSeen(*item)) continue;
        item->saysCase = !choice.which();
        item->chosen = selection_.contains(QString::fromStdString(item->part->id));
        items.push_back(std::move(*item));
    }
    std::ranges::stable_sort(items, {}, heightOf);
    return items;
}

bool StrengthLayer::isSeen(const StrengthItem& item) const
{
    if (scene_.projection().isAbove() || !item.plane) return true;
    // What stands behind something else in elevation is not coloured through it.
    const std::vector<Hit> hits = scene_.hitsAt(item.plane->mapRect(item.outline.boundingRect()).center(), 0.0);
    return hits.empty() || hits.front().part == item.part->id;
}

std::vector<QRectF> StrengthLayer::refresh(bool shown, const std::vector<QRectF>& taken)
{
    const std::vector<StrengthItem> before = std::exchange(items_, shown ? itemsNow() : std::vector<StrengthItem>());
    std::vector<QRectF> changed;
    const auto differs = [&](const std::vector<StrengthItem>& from, const std::vector<StrengthItem>& than) {
        for (const StrengthItem& item : from) {
            const bool same =
                std::ranges::any_of(than, [&](const StrengthItem& other) { return item.shows(other); });
            if (!same) changed.push_back(item.bounds);
        }
    };
    differs(before, items_);
    differs(items_, before);
    const PaintStyle& style = scene_.style();
    const bool sameStyle = style.mmPerUnit == style_.mmPerUnit && style.ink.dark == style_.ink.dark &&
                           style.devicePixels == style_.devicePixels;
    const bool sameRoom = std::exchange(taken_, taken) == taken;
    if (items_.empty() || (changed.empty() && sameStyle && sameRoom)) {
        if (items_.empty()) {
            for (const PlacedLabel& one : placed_) changed.push_back(one.box);
            for (const Name& one : names_) changed.push_back(one.name.box);
            forget();
        }
        return changed;
    }

    const std::optional<double> scaleBefore = std::exchange(scale_, ui::deflectionScale(items_, style));
    if (scale_ != scaleBefore) {
        for (const StrengthItem& item : items_) changed.push_back(item.bounds);
    }
    const std::vector<PlacedLabel> placedBefore = std::exchange(placed_, {});
    const std::vector<Name> namesBefore = std::exchange(names_, {});
    placeWords();
    // The plate behind words reaches a little beyond them.
    const auto plate = [reach = 3.0 * style.mmPerUnit](const QRectF& box) {
        return box.adjusted(-reach, -reach, reach, reach);
    };
    const auto words = [&](const std::vector<PlacedLabel>& from, const std::vector<PlacedLabel>& than) {
        for (const PlacedLabel& one : from) {
            const bool same = std::ranges::any_of(than, [&](const PlacedLabel& other) {
                return one.box == other.box && one.text == other.text;
            });
            if (!same) changed.push_back(plate(one.box));
        }
    };
    words(placedBefore, placed_);
    words(placed_, placedBefore);
    const auto names = [&](const std::vector<Name>& from, const std::vector<Name>& than) {
        for (const Name& one : from) {
            const bool same = std::ranges::any_of(than, [&](const Name& other) {
                return one.name.box == other.name.box && one.name.text == other.name.text;
            });
            if (!same) changed.push_back(plate(one.name.box));
        }
    };
    names(namesBefore, names_);
    names(names_, namesBefore);
    pictures_.sweep();
    return changed;
}

void StrengthLayer::forget()
{
    labels_.clear();
    placed_.clear();
    names_.clear();
    scale_.reset();
    pictures_.sweep();
}

void StrengthLayer::placeWords()
{
    style_ = scene_.style();
    labels_.clear();
    std::vector<QRectF> taken = taken_;
    for (const StrengthItem& item : items_) {
        std::vector<OverlayLabel> labels = strengthLabels(item, pictures_, scene_.projection(), style_);
        std::ranges::move(labels, std::back_inserter(labels_));
        const bool known = std::ranges::any_of(names_, [&](const Name& one) { return one.part == item.part->id; });
        if (known) continue;
        if (auto name = coveredName(*scene_.plan(), item, scene_.projection(), style_)) {
            taken.push_back(name->box);
            names_.push_back({item.part->id, std::move(*name)});
        }
    }
    placed_ = placeLabels(labels_, style_, std::move(taken));
}

void StrengthLayer::paint(QPainter& painter, const QRectF& exposed)
{
    if (items_.empty()) return;
    const PaintStyle& style = scene_.style();
    const Projection& projection = scene_.projection();
    const double reach = kSignPx * style.mmPerUnit;
    const auto inSight = [&](const StrengthItem& item) { return item.bounds.intersects(exposed); };
    painter.save();
    for (const StrengthItem& item : items_) {
        if (inSight(item)) paintUse(painter, item, pictures_, style);
    }
    if (projection.isAbove()) {
        // What stands on the counters is under the colours now.
        painter.setBrush(Qt::NoBrush);
        painter.setPen(phantomPen(style, style.ink.pencil));
        for (const PartPtr& part : scene_.plan()->parts) {
            const QPainterPath* shape = part->kind() == PartKind::appliance ? scene_.shapeOf(part->id) : nullptr;
            if (shape && shape->boundingRect().intersects(exposed)) painter.drawPath(*shape);
        }
    }
    for (const StrengthItem& item : items_) {
        if (inSight(item)) paintStrengthMarks(painter, item, projection, style, scale_.value_or(1.0));
    }
    TextLook bold;
    bold.bold = true;
    for (const Name& one : names_) {
        if (!one.name.box.intersects(exposed)) continue;
        TextLook look = bold;
        look.behind = style.ink.sheet;
        paintText(painter, one.name.box.center(), one.name.text, style, look);
    }
    for (const PlacedLabel& placed : placed_) {
        if (placed.text.isEmpty()) continue;
        if (!placed.box.adjusted(-reach, -reach, reach, reach).intersects(exposed)) continue;
        TextLook look = labels_[placed.label].look;
        look.align = Qt::AlignCenter;
        paintText(painter, placed.box.center(), placed.text, style, look);
    }
    painter.restore();
}

bool StrengthLayer::hasColours() const
{
    return std::ranges::any_of(items_, [](const StrengthItem& item) { return item.plane && item.result->field; });
}

QString StrengthLayer::valuesAt(QPointF drawing) const
{
    const std::vector<Hit> hits = scene_.hitsAt(drawing, 0.0);
    const auto hit = std::ranges::find_if(hits, [](const Hit& one) { return one.what != Hit::What::fixture; });
    if (hit == hits.end() || hit->what != Hit::What::part) return {};
    for (const StrengthItem& item : items_) {
        if (item.part->id != hit->part || !item.plane || !item.result->field) continue;
        const QPointF own = item.plane->inverted().map(drawing);
        const auto values = ui::valuesAt(*item.result->field, {own.x(), own.y()});
        if (!values) continue;
        const bool onFace = values->tensionTopMpa > values->tensionBottomMpa;
        return Canvas::tr("%1 of its strength, tension %2 MPa at the %3, %4 mm down")
            .arg(percentText(values->usePercent),
                 numberText(std::max(values->tensionTopMpa, values->tensionBottomMpa), 2), sideText(onFace),
                 numberText(values->downMm, 2));
    }
    return {};
}

}  // namespace yardcast::ui
