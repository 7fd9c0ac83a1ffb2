#pragma once

#include <string>
#include <vector>

#include <QRectF>
#include <QString>

#include "core/assess/assessment.h"
#include "ui/drawing/part_painter.h"

class QPainter;

/// From when on castings may be stripped, tilted and carried: bars on the hours after the pour, with the nights. Told
/// apart without colour: hatched is likely, filled is with the safety kept.
namespace yardcast::ui {

struct HoursBar {
    HandlingWay way = HandlingWay::strip;
    double likelyH = 0.0;
    double cautiousH = 0.0;
    bool possible = true;
    bool planned = true;      ///< one of the ways that the plan needs
};

/// Castings whose hours are the same are one group.
struct HoursGroup {
    std::vector<std::string> castings;
    QString title;
    double planH = 0.0;       ///< the plan's own hour of lifting
    std::vector<HoursBar> bars;
};

struct HoursChart {
    std::vector<HoursGroup> groups;
    double startH = 8.0;      ///< hour of the day at which the pour begins
    double endH = 72.0;       ///< of the axis
};

/// Of all castings that were solved, or of those of one part.
HoursChart hoursChart(const Plan& plan, const Assessment& assessment, const std::string& part = {});
/// Of the groups `from` up to `to` only, on the same axis: for pages.
HoursChart chartOfGroups(const HoursChart& chart, std::size_t from, std::size_t to);

/// What it takes in the units of the style (pixels, mm of paper); nothing of it is cut off at less than `leastWidth`.
double hoursChartHeight(const HoursChart& chart, const PaintStyle& style);
double hoursChartLeastWidth(const HoursChart& chart, const PaintStyle& style);
/// In the box, from its top; `style.mmPerUnit` is 1. Nothing where there are no groups.
void paintHoursChart(QPainter& painter, const QRectF& box, const HoursChart& chart, const PaintStyle& style);
/// The same in words, for those who cannot see it.
QString hoursChartWords(const HoursChart& chart);

}  // namespace yardcast::ui
