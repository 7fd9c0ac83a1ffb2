#pragma once

#include <memory>

#include <nlohmann/json_fwd.hpp>

namespace yardcast {

/// The JSON object a value was read from, kept so that unknown keys, and the order of known ones, are written back
/// in place. Empty for what was made in the program. What belongs to a value of its own inside it (a rim in a
/// counter, the parts in a plan) stands here as null: it keeps its place, and its own source has the rest.
struct FileSource {
    std::shared_ptr<const nlohmann::ordered_json> object;
    /// The keys of `object` this version does not know; null when there are none.
    std::shared_ptr<const nlohmann::ordered_json> unknown;

    /// Equal when the unknown keys are: the order of keys and the way a number is written say nothing about a plan.
    friend bool operator==(const FileSource& a, const FileSource& b);
};

}  // namespace yardcast
