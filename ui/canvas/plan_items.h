#pragma once

#include <vector>

#include <QGraphicsItem>
#include <QPainterPath>

#include "core/plan/plan.h"

namespace yardcast::ui {

class PlanScene;

/// One part, painted by the drawing floor; its shapes are kept for hits.
class PartItem : public QGraphicsItem {
public:
    explicit PartItem(const PlanScene& scene) : scene_(scene) {}

    /// `base` is what its level depends on (the counter an appliance stands on), or null.
    void show(const PartPtr& part, const PartPtr& base);
    bool shows(const PartPtr& part, const PartPtr& base) const { return part_ == part && base_ == base; }
    /// The zoom changed: lines cover more or less of the drawing.
    void refresh();

    const PartPtr& part() const { return part_; }
    const QPainterPath& outline() const { return outline_; }
    const std::vector<QPainterPath>& cutouts() const { return cutouts_; }

    QRectF boundingRect() const override { return bounds_; }
    void paint(QPainter* painter, const QStyleOptionGraphicsItem*, QWidget*) override;

private:
    void measure();

    const PlanScene& scene_;
    PartPtr part_;
    PartPtr base_;
    QPainterPath outline_;
    std::vector<QPainterPath> cutouts_;
    QRectF bounds_;
};

/// Site outline, fixtures, ground.
class SiteItem : public QGraphicsItem {
public:
    explicit SiteItem(const PlanScene& scene) : scene_(scene) {}

    void show(const PlanPtr& plan);
    void refresh();
    const PlanPtr& plan() const { return plan_; }

    QRectF boundingRect() const override { return bounds_; }
    void paint(QPainter* painter, const QStyleOptionGraphicsItem*, QWidget*) override;

private:
    void measure();

    const PlanScene& scene_;
    PlanPtr plan_;
    QRectF bounds_;
};

}  // namespace yardcast::ui
