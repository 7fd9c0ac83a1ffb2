#pragma once

#include <QRectF>

#include "core/pour/weather.h"
#include "ui/drawing/part_painter.h"

class QPainter;

namespace yardcast::ui {

/// Evaporation through the pour day, for the screen, paper and SVG: the curve with the band in which real rates lie,
/// the limit and twice the limit, hatched the hours in which nobody works, the day's work as the plan has it and from
/// the best start, the air below. Told apart without colour. `rect` in the painter's units; `style` says whether these
/// are pixels or mm of paper (mmPerUnit 1).
void paintWeatherChart(QPainter& painter, const QRectF& rect, const PourWeather& weather, const PaintStyle& style);
/// Height that shows everything at a width, in the units of the style.
double weatherChartHeight(const PaintStyle& style);

}  // namespace yardcast::ui
