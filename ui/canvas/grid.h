#pragma once

namespace yardcast::ui {

/// Pitches of the grid that suit a zoom, mm.
struct GridPitch {
    double fineMm = 50.0;    ///< thin lines, at least kLeastLinePx apart
    double coarseMm = 500.0; ///< stronger lines
    double snapMm = 10.0;    ///< what sizes are rounded to; may be finer than the lines
};

inline constexpr double kLeastLinePx = 9.0;

/// Steps of 1, 5, 10, 50, 100 ... mm. Nothing finer than a millimetre: no mould is built to less.
GridPitch gridPitch(double mmPerPixel);

/// Marks of a ruler: figures (in cm) at `labelMm`, long and short ticks between.
struct RulerPitch {
    double labelMm = 500.0;
    double tickMm = 100.0;
};
RulerPitch rulerPitch(double mmPerPixel);

/// The longest of 1, 2, 5, 10 ... mm that is at most `mostPx` long.
double scaleBarMm(double mmPerPixel, double mostPx);

}  // namespace yardcast::ui
