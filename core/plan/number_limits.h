#pragma once

#include <optional>

namespace yardcast {

/// What a number of the plan may be, both ends allowed.
struct NumberLimits {
    double least;
    double most;
};

inline bool isWithin(double value, NumberLimits limits) { return value >= limits.least && value <= limits.most; }

/// Put back to `otherwise` where it is out of them.
inline void keepWithin(double& value, NumberLimits limits, double otherwise)
{
    if (!isWithin(value, limits)) value = otherwise;
}

/// Likewise to nothing.
inline void keepWithin(std::optional<double>& value, NumberLimits limits)
{
    if (value && !isWithin(*value, limits)) value.reset();
}

}  // namespace yardcast
