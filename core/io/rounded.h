#pragma once

#include <cmath>

namespace yardcast {

/// For JSON, to a millionth: far below what any figure is known to, without the noise of the last binary digits. No "-0".
inline double rounded(double value)
{
    if (!std::isfinite(value) || std::abs(value) > 1e9) return value;
    const double result = std::round(value * 1e6) / 1e6;
    return result == 0.0 ? 0.0 : result;
}

}  // namespace yardcast
