#include "ui/canvas/plan_scene.h"

#include <algorithm>
#include <cmath>
#include <unordered_set>

#include "ui/canvas/plan_items.h"

namespace yardcast::ui {

namespace {

PartPtr baseOf(const Plan& plan, const Part& part)
{
    const auto* appliance = std::get_if<Appliance>(&part.body);
    if (!appliance || !appliance->on) return nullptr;
    const int index = indexOfPart(plan, *appliance->on);
    return index < 0 ? nullptr : plan.parts[static_cast<std::size_t>(index)];
}

}  // namespace

PlanScene::PlanScene(QObject* parent)
    : QGraphicsScene(parent), plan_(std::make_shared<const Plan>()), site_(new SiteItem(*this))
{
    // Items move all the time and are few: an index costs more than it saves.
    setItemIndexMethod(NoIndex);
    style_.ink = lightInk();
    site_->setZValue(-1.0);
    addItem(site_);
    site_->show(plan_);
}

PlanScene::~PlanScene() = default;

void PlanScene::show(const PlanPtr& plan, const Projection& projection)
{
    const bool viewChanged = projection != projection_;
    plan_ = plan;
    projection_ = projection;
    touched_ = 0;

    std::unordered_set<std::string> present;
    for (const PartPtr& part : plan->parts) {
        if (!part || !present.insert(part->id).second) continue;
        PartItem*& item = items_[part->id];
        const PartPtr base = baseOf(*plan, *part);
        if (item && !viewChanged && item->shows(part, base)) continue;
        if (!item) {
            item = new PartItem(*this);
            item->show(part, base);
            addItem(item);
        } else {
            item->show(part, base);
        }
        ++touched_;
    }
    for (auto it = items_.begin(); it != items_.end();) {
        if (present.contains(it->first)) {
            ++it;
            continue;
        }
        delete it->second;
        it = items_.erase(it);
        ++touched_;
    }
    if (touched_ > 0) {
        double z = 0.0;
        for (const Part* part : paintOrder(*plan, projection_)) {
            const auto found = items_.find(part->id);
            z += 1.0;
            if (found != items_.end() && found->second->zValue() != z) found->second->setZValue(z);
        }
    }
    const bool siteChanged = !(site_->plan()->site == plan->site);
    if (viewChanged || siteChanged || (!gesturing_ && site_->plan() != plan)) site_->show(plan);
}

void PlanScene::setInk(const Ink& ink)
{
    style_.ink = ink;
    update();
}

void PlanScene::setMmPerPixel(double mmPerPixel)
{
    if (style_.mmPerUnit == mmPerPixel) return;
    style_.mmPerUnit = mmPerPixel;
    for (const auto& [id, item] : items_) item->refresh();
    site_->refresh();
}

void PlanScene::setDevicePixels(double ratio)
{
    if (style_.devicePixels == ratio) return;
    style_.devicePixels = ratio;
    update();
}

void PlanScene::setNamesCastings(bool named)
{
    if (style_.nameCastings == named) return;
    style_.nameCastings = named;
    update();
}

void PlanScene::setGesturing(bool gesturing)
{
    if (gesturing_ == gesturing) return;
    gesturing_ = gesturing;
    if (!gesturing && site_->plan() != plan_) site_->show(plan_);
}

namespace {

/// Width of a strip of the same area and perimeter: how thin a thing is, however it is turned.
double widthOf(const QPainterPath& shape)
{
    double area = 0.0;
    double perimeter = 0.0;
    for (const QPolygonF& polygon : shape.toSubpathPolygons()) {
        for (qsizetype i = 0; i < polygon.size(); ++i) {
            const QPointF a = polygon[i];
            const QPointF b = polygon[(i + 1) % polygon.size()];
            area += (a.x() * b.y() - a.y() * b.x()) / 2.0;
            perimeter += std::hypot(b.x() - a.x(), b.y() - a.y());
        }
    }
    return perimeter > 0.0 ? 2.0 * std::abs(area) / perimeter : 0.0;
}

/// True when the point is within `reach` of the shape: near its box first, then exactly.
bool isNear(const QPainterPath& shape, QPointF at, double reach)
{
    const QRectF box = shape.boundingRect();
    if (!box.adjusted(-reach, -reach, reach, reach).contains(at)) return false;
    if (shape.contains(at)) return true;
    // Only thin and small things are widened; the rim of a large shape is exact.
    if (widthOf(shape) >= 2.0 * reach) return false;
    return shape.intersects(QRectF(at - QPointF(reach, reach), QSizeF(2 * reach, 2 * reach)));
}

}  // namespace

std::vector<Hit> PlanScene::hitsAt(QPointF drawing, double reachMm) const
{
    struct Found {
        Hit hit;
        double z;
    };
    std::vector<Found> found;
    const auto add = [&](Hit::What what, std::string part, std::string cutout, double z) {
        Hit hit;
        hit.what = what;
        hit.part = std::move(part);
        hit.cutout = std::move(cutout);
        found.push_back({hit, z});
    };
    for (const auto& [id, item] : items_) {
        for (std::size_t i = 0; i < item->cutouts().size(); ++i) {
            if (!isNear(item->cutouts()[i], drawing, reachMm)) continue;
            add(Hit::What::cutout, id, std::get<Counter>(item->part()->body).cutouts[i].id, item->zValue() + 0.5);
        }
        if (isNear(item->outline(), drawing, reachMm)) add(Hit::What::part, id, {}, item->zValue());
    }
    double z = -1.0;
    for (const Fixture& fixture : plan_->site.fixtures) {
        z += 1e-4;
        if (!isNear(fixtureShape(fixture, projection_), drawing, reachMm)) continue;
        Hit hit;
        hit.what = Hit::What::fixture;
        hit.fixture = fixture.id;
        found.push_back({hit, z});
    }
    std::ranges::sort(found, [](const Found& a, const Found& b) { return a.z > b.z; });
    std::vector<Hit> hits;
    hits.reserve(found.size());
    for (Found& one : found) hits.push_back(std::move(one.hit));
    return hits;
}

std::vector<std::string> PlanScene::partsIn(const QRectF& drawing) const
{
    std::vector<std::string> ids;
    for (const PartPtr& part : plan_->parts) {
        const QPainterPath* shape = shapeOf(part->id);
        if (shape && shape->intersects(drawing)) ids.push_back(part->id);
    }
    return ids;
}

const QPainterPath* PlanScene::shapeOf(const std::string& part) const
{
    const auto found = items_.find(part);
    return found == items_.end() ? nullptr : &found->second->outline();
}

QRectF PlanScene::contentBounds() const { return drawingBounds(*plan_, projection_); }

}  // namespace yardcast::ui
