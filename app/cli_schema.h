#pragma once

#include <string_view>

namespace yardcast::cli {

/// resources/yardplan.schema.json, as built in.
std::string_view planSchemaText();

}  // namespace yardcast::cli
