#pragma once

#include <cmath>

#include <nlohmann/json.hpp>

#include "core/geometry/point.h"

/// Inner seam of the JSON of an assessment: how figures are written.
namespace yardcast {

using Json = nlohmann::ordered_json;

/// Figures to a millionth: far below what any of them is known to, without the noise of the last binary digits.
inline double rounded(double value)
{
    if (!std::isfinite(value) || std::abs(value) > 1e9) return value;
    const double result = std::round(value * 1e6) / 1e6;
    return result == 0.0 ? 0.0 : result;
}

inline Json pointJson(const Point& point)
{
    return {rounded(point.x), rounded(point.y)};
}

}  // namespace yardcast
