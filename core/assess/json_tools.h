#pragma once

#include <nlohmann/json.hpp>

#include "core/geometry/point.h"
#include "core/io/rounded.h"

/// Inner seam of the JSON of an assessment: how figures are written.
namespace yardcast {

using Json = nlohmann::ordered_json;

inline Json pointJson(const Point& point)
{
    return {rounded(point.x), rounded(point.y)};
}

}  // namespace yardcast
