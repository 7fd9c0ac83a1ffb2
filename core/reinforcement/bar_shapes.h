#pragma once

#include <optional>
#include <string>

/// Cut lengths of bent bars after BS 8666:2005 (the shapes of ISO 3766 by their usual codes). mm, outside dimensions.
namespace yardcast {

/// Outside dimensions by the letters of the shape; those a shape does not have are not looked at.
struct BarDimensions {
    double a = 0.0;
    double b = 0.0;
    double c = 0.0;
    double d = 0.0;
    double e = 0.0;
};

/// Least radius that a bar is bent to: 2 diameters up to 16 mm, 3.5 above (mandrel of 4 and 7, EN 1992-1-1 Table 8.1N).
double leastBendRadiusMm(double diameterMm);

/// Length along the bar before it is bent, not rounded; bends at the least radius. Codes 00, 11, 12, 13, 15, 21 to 33,
/// 47, 51, 63; nothing for others.
std::optional<double> bentBarLengthMm(const std::string& shapeCode, double diameterMm, const BarDimensions& outside);

/// Rounded up to the next 25 mm, as a schedule has it (from memory).
double scheduledLengthMm(double lengthMm);
/// What a straight bar between two covers is cut to: down to whole 5 mm, so that no cover gets thinner. What is shorter
/// than 5 mm stays as it is.
double cutLengthMm(double lengthMm);

}  // namespace yardcast
