#pragma once

#include <functional>

#include <QPainterPath>
#include <QPointF>

#include "core/geometry/region.h"

namespace yardcast::ui {

/// From a casting's own frame to the drawing.
using OwnMap = std::function<QPointF(Point)>;

/// Outer rings and holes, to be filled by the odd-even rule.
QPainterPath regionPath(const Region& region, const OwnMap& map);

}  // namespace yardcast::ui
