#include "ui/canvas/plan_items.h"

#include <algorithm>
#include <cmath>

#include <QPainter>

#include "ui/canvas/plan_scene.h"

namespace yardcast::ui {

namespace {

/// Lines, names beside thin parts and door swings reach beyond the shape by no more than this, pixels.
constexpr double kMarginPx = 6.0;
constexpr double kSiteMarginPx = 140.0;

/// What a part covers beyond its outline: the swing of doors, the clearance of an appliance.
double overhangMm(const Part& part)
{
    double most = 0.0;
    if (const auto* front = std::get_if<Front>(&part.body)) {
        for (const Door& door : front->doors) most = std::max(most, door.toMm - door.fromMm);
    }
    if (const auto* appliance = std::get_if<Appliance>(&part.body)) most = appliance->clearanceMm.value_or(0.0);
    return std::max(most, 0.0);
}

}  // namespace

void PartItem::show(const PartPtr& part, const PartPtr& base)
{
    part_ = part;
    base_ = base;
    measure();
    update();
}

void PartItem::refresh()
{
    measure();
}

void PartItem::measure()
{
    prepareGeometryChange();
    outline_ = partShape(*scene_.plan(), *part_, scene_.projection());
    cutouts_.clear();
    const auto* counter = std::get_if<Counter>(&part_->body);
    if (counter && scene_.projection().isAbove()) {
        for (const Cutout& cutout : counter->cutouts) {
            cutouts_.push_back(cutoutShape(*part_, cutout, scene_.projection()));
        }
    }
    QRectF covered = outline_.boundingRect();
    for (const QPainterPath& cutout : cutouts_) covered |= cutout.boundingRect();
    const double margin = kMarginPx * scene_.style().mmPerUnit + overhangMm(*part_);
    bounds_ = covered.adjusted(-margin, -margin, margin, margin);
}

void PartItem::paint(QPainter* painter, const QStyleOptionGraphicsItem*, QWidget*)
{
    paintPart(*painter, *scene_.plan(), *part_, scene_.projection(), scene_.style());
}

void SiteItem::show(const PlanPtr& plan)
{
    plan_ = plan;
    measure();
    update();
}

void SiteItem::refresh()
{
    if (plan_) measure();
}

void SiteItem::measure()
{
    prepareGeometryChange();
    QRectF covered = drawingBounds(*plan_, scene_.projection());
    const double margin = kSiteMarginPx * scene_.style().mmPerUnit;
    // The ground line runs past what stands on it.
    const double along = scene_.projection().isAbove() ? margin : margin + 0.06 * covered.width() + 100.0;
    const double slope = plan_->site.ground ? std::abs(plan_->site.ground->levelMm)
            + std::abs(plan_->site.ground->fallPercent) / 100.0 * (covered.width() + covered.height() + 2 * along)
                                            : 0.0;
    const double upright = scene_.projection().isAbove() ? margin : margin + slope;
    bounds_ = covered.adjusted(-along, -upright, along, upright);
}

void SiteItem::paint(QPainter* painter, const QStyleOptionGraphicsItem*, QWidget*)
{
    paintSite(*painter, *plan_, scene_.projection(), scene_.style());
}

}  // namespace yardcast::ui
