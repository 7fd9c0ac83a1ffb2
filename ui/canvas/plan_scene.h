#pragma once

#include <unordered_map>
#include <vector>

#include <QGraphicsScene>
#include <QPainterPath>

#include "core/plan/plan.h"
#include "ui/canvas/hit.h"
#include "ui/drawing/part_painter.h"

namespace yardcast::ui {

class PartItem;
class SiteItem;

/// The plan as items, in drawing mm. An item belongs to one part id; when the plan changes, only items whose part is
/// another object are touched.
class PlanScene : public QGraphicsScene {
    Q_OBJECT

public:
    explicit PlanScene(QObject* parent = nullptr);
    ~PlanScene() override;

    void show(const PlanPtr& plan, const Projection& projection);
    void setInk(const Ink& ink);
    /// The zoom: lines and names are sized in pixels.
    void setMmPerPixel(double mmPerPixel);
    /// Of the screen it is shown on: pens keep their width on a fine one.
    void setDevicePixels(double ratio);
    /// Off where words over the drawing name what is cast.
    void setNamesCastings(bool named);
    /// While a gesture runs the site keeps still, though its ground line reaches as far as the parts do.
    void setGesturing(bool gesturing);

    const PlanPtr& plan() const { return plan_; }
    const Projection& projection() const { return projection_; }
    const PaintStyle& style() const { return style_; }

    /// Uppermost first: cutouts before their counter; what is thinner than twice `reachMm` is widened to it.
    std::vector<Hit> hitsAt(QPointF drawing, double reachMm) const;
    /// Ids of the parts whose shape the rectangle touches, in the order of the plan.
    std::vector<std::string> partsIn(const QRectF& drawing) const;
    /// Null for a part that is not there.
    const QPainterPath* shapeOf(const std::string& part) const;
    /// Bounds of everything drawn.
    QRectF contentBounds() const;
    /// How many items the last `show` touched (for tests and the bench).
    int touched() const { return touched_; }

private:
    PlanPtr plan_;
    Projection projection_ = Projection::above();
    PaintStyle style_;
    std::unordered_map<std::string, PartItem*> items_;
    SiteItem* site_;
    int touched_ = 0;
    bool gesturing_ = false;
};

}  // namespace yardcast::ui
