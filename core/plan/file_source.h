#pragma once

#include <memory>

#include <nlohmann/json_fwd.hpp>

namespace yardcast {

/// The JSON object a value was read from, kept so that unknown keys, and the order of known ones, are written back
/// in place. Empty for what was made in the program. Two sources are equal when their JSON is.
struct FileSource {
    std::shared_ptr<const nlohmann::ordered_json> object;

    friend bool operator==(const FileSource& a, const FileSource& b);
};

}  // namespace yardcast
