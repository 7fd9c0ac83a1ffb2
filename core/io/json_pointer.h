#pragma once

#include <string>
#include <string_view>

namespace yardcast {

/// Where a reader is in a document: a chain of keys and indices that lives on the stack.
struct JsonPath {
    const JsonPath* up = nullptr;
    std::string_view key;
    std::size_t index = 0;
    bool isIndex = false;

    JsonPath at(std::string_view k) const { return {this, k, 0, false}; }
    JsonPath at(std::size_t i) const { return {this, {}, i, true}; }

    /// RFC 6901: "" for the whole document, "/parts/0/outline" and so on.
    std::string pointer() const
    {
        if (!up) return {};
        std::string text = up->pointer();
        text += '/';
        text += isIndex ? std::to_string(index) : escaped(key);
        return text;
    }

    static std::string escaped(std::string_view token)
    {
        std::string text;
        for (const char c : token) {
            if (c == '~') {
                text += "~0";
            } else if (c == '/') {
                text += "~1";
            } else {
                text += c;
            }
        }
        return text;
    }
};

}  // namespace yardcast
