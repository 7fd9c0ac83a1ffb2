#include "ui/drawing/projection.h"

namespace yardcast::ui {

Projection Projection::above()
{
    return Projection();
}

Projection Projection::front(double lookDeg)
{
    Projection projection;
    projection.above_ = false;
    projection.lookDeg_ = lookDeg;
    return projection;
}

Point Projection::rightwards() const
{
    if (above_) {
        return {1.0, 0.0};
    }
    const SineCosine look = sineCosineDeg(lookDeg_);
    return {look.sine, -look.cosine};
}

QPointF Projection::map(Point plan, double zMm) const
{
    if (above_) {
        return {plan.x, -plan.y};
    }
    return {dot(plan, rightwards()), -zMm};
}

QPolygonF Projection::map(const Ring& ring, double zMm) const
{
    QPolygonF polygon;
    polygon.reserve(static_cast<qsizetype>(ring.size()));
    for (const Point& point : ring) {
        polygon.append(map(point, zMm));
    }
    return polygon;
}

Point Projection::unmap(QPointF drawing) const
{
    return {drawing.x(), -drawing.y()};
}

double Projection::depth(Point plan) const
{
    if (above_) {
        return 0.0;
    }
    const SineCosine look = sineCosineDeg(lookDeg_);
    return dot(plan, Point{look.cosine, look.sine});
}

}  // namespace yardcast::ui
