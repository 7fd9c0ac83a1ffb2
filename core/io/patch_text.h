#pragma once

#include <string>

/// Edits that are known to the letter, written as RFC 6902 JSON Patch. Others are the difference of two plans: see
/// `patchBetween`.
namespace yardcast {

/// One operation: "add" replaces a member that is there and writes one that is not. `value` is JSON text.
inline std::string addOperation(const std::string& pointer, const std::string& value)
{
    return R"({"op":"add","path":")" + pointer + R"(","value":)" + value + "}";
}

/// The patch of one such operation.
inline std::string addPatch(const std::string& pointer, const std::string& value)
{
    return "[" + addOperation(pointer, value) + "]";
}

}  // namespace yardcast
