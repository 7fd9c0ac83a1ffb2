#include "ui/canvas/grid.h"

#include <cmath>
#include <initializer_list>

namespace yardcast::ui {

namespace {

constexpr double kLeastSnapPx = 2.4;
constexpr double kLeastLabelPx = 52.0;

/// The smallest of base * 10^n (n >= 0) that is at least `leastMm`.
double atLeast(double leastMm, std::initializer_list<double> bases)
{
    for (double decade = 1.0; decade < 1e9; decade *= 10.0) {
        for (const double base : bases) {
            if (base * decade >= leastMm) return base * decade;
        }
    }
    return 1e9;
}

}  // namespace

GridPitch gridPitch(double mmPerPixel)
{
    GridPitch pitch;
    pitch.fineMm = atLeast(kLeastLinePx * mmPerPixel, {1.0, 5.0});
    pitch.coarseMm = pitch.fineMm * 10.0;
    pitch.snapMm = atLeast(kLeastSnapPx * mmPerPixel, {1.0, 5.0});
    return pitch;
}

RulerPitch rulerPitch(double mmPerPixel)
{
    RulerPitch pitch;
    pitch.labelMm = atLeast(kLeastLabelPx * mmPerPixel, {10.0, 20.0, 50.0});
    pitch.tickMm = pitch.labelMm / 10.0;
    if (pitch.tickMm < 4.0 * mmPerPixel) pitch.tickMm = pitch.labelMm / 5.0;
    return pitch;
}

double scaleBarMm(double mmPerPixel, double mostPx)
{
    const double most = mostPx * mmPerPixel;
    double best = 1.0;
    for (double decade = 1.0; decade <= most; decade *= 10.0) {
        for (const double base : {1.0, 2.0, 5.0}) {
            if (base * decade <= most) best = base * decade;
        }
    }
    return best;
}

}  // namespace yardcast::ui
