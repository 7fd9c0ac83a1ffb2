#include "ui/drawing/own_map.h"

#include <QPolygonF>

namespace yardcast::ui {

QPainterPath regionPath(const Region& region, const OwnMap& map)
{
    QPainterPath path;
    const auto add = [&](const Ring& ring) {
        QPolygonF polygon;
        for (const Point& point : ring) {
            polygon.append(map(point));
        }
        path.addPolygon(polygon);
        path.closeSubpath();
    };
    for (const Polygon& polygon : region) {
        add(polygon.outer);
        for (const Ring& hole : polygon.holes) {
            add(hole);
        }
    }
    return path;
}

}  // namespace yardcast::ui
