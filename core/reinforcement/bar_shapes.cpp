#include "core/reinforcement/bar_shapes.h"

#include <algorithm>
#include <cmath>

namespace yardcast {

double leastBendRadiusMm(double diameterMm) { return (diameterMm <= 16.0 ? 2.0 : 3.5) * diameterMm; }

std::optional<double> bentBarLengthMm(const std::string& shapeCode, double diameterMm, const BarDimensions& o)
{
    const double dia = diameterMm;
    const double r = leastBendRadiusMm(dia);
    const auto is = [&](const char* code) { return shapeCode == code; };
    if (is("00")) return o.a;
    if (is("11")) return o.a + o.b - 0.5 * r - dia;
    if (is("12")) return o.a + o.b - 0.43 * r - 1.2 * dia;
    if (is("13")) return o.a + 0.57 * o.b + o.c - 1.6 * dia;
    if (is("15")) return o.a + o.c;
    if (is("21") || is("23") || is("29")) return o.a + o.b + o.c - r - 2 * dia;
    if (is("22") || is("31") || is("32")) return o.a + o.b + o.c + o.d - 1.5 * r - 3 * dia;
    if (is("24") || is("26")) return o.a + o.b + o.c;
    if (is("25")) return o.a + o.b + o.e;
    if (is("27") || is("28")) return o.a + o.b + o.c - 0.5 * r - dia;
    if (is("33")) return 2 * o.a + 1.7 * o.b + 2 * o.c - 4 * dia;
    if (is("47")) return 2 * o.a + o.b + std::max(21 * dia, 240.0);
    if (is("51")) return 2 * o.a + 2 * o.b + std::max(16 * dia, 160.0);
    if (is("63")) return 2 * o.a + 3 * o.b + std::max(14 * dia, 150.0);
    return std::nullopt;
}

double scheduledLengthMm(double lengthMm) { return std::ceil(lengthMm / 25 - 1e-9) * 25; }

double cutLengthMm(double lengthMm)
{
    return lengthMm < 5.0 ? lengthMm : std::floor(lengthMm / 5 + 1e-9) * 5;
}

}  // namespace yardcast
