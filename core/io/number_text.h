#pragma once

#include <array>
#include <charconv>
#include <string>

namespace yardcast {

/// The shortest text that reads back as this number, in any locale; JSON takes it. The value must be finite.
inline std::string shortestText(double value)
{
    std::array<char, 32> buffer{};
    const auto end = std::to_chars(buffer.data(), buffer.data() + buffer.size(), value).ptr;
    return {buffer.data(), end};
}

}  // namespace yardcast
