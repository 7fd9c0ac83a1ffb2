#include "core/io/json_text.h"

namespace yardcast {

namespace {

constexpr std::size_t kLongestLine = 110;

bool holdsObjects(const Json& value)
{
    if (value.is_object()) return true;
    if (!value.is_array()) return false;
    for (const Json& element : value) {
        if (holdsObjects(element)) return true;
    }
    return false;
}

class Writer {
public:
    explicit Writer(std::string& out) : out_(out) {}

    void write(const Json& value, std::size_t indent)
    {
        if (value.is_object()) {
            writeObject(value, indent);
        } else if (value.is_array()) {
            writeList(value, indent);
        } else {
            out_ += scalar(value);
        }
    }

private:
    static std::string scalar(const Json& value)
    {
        return value.dump(-1, ' ', false, Json::error_handler_t::replace);
    }

    void newLine(std::size_t indent)
    {
        out_ += '\n';
        out_.append(indent, ' ');
    }

    void writeObject(const Json& value, std::size_t indent)
    {
        if (value.empty()) {
            out_ += "{}";
            return;
        }
        out_ += '{';
        bool first = true;
        for (const auto& [key, member] : value.get_ref<const Json::object_t&>()) {
            if (!first) out_ += ',';
            first = false;
            newLine(indent + 2);
            out_ += scalar(Json(key));
            out_ += ": ";
            write(member, indent + 2);
        }
        newLine(indent);
        out_ += '}';
    }

    void writeList(const Json& value, std::size_t indent)
    {
        if (!holdsObjects(value) && writeInline(value)) return;
        out_ += '[';
        bool first = true;
        for (const Json& element : value) {
            if (!first) out_ += ',';
            first = false;
            newLine(indent + 2);
            write(element, indent + 2);
        }
        newLine(indent);
        out_ += ']';
    }

    /// On the line that was begun; takes everything back and says false where it does not fit.
    bool writeInline(const Json& value)
    {
        const std::size_t begin = out_.size();
        const std::size_t lineStart = out_.rfind('\n') == std::string::npos ? 0 : out_.rfind('\n') + 1;
        if (appendInline(value, lineStart)) return true;
        out_.resize(begin);
        return false;
    }

    bool appendInline(const Json& value, std::size_t lineStart)
    {
        if (!value.is_array()) {
            out_ += scalar(value);
            return out_.size() - lineStart <= kLongestLine;
        }
        out_ += '[';
        bool first = true;
        for (const Json& element : value) {
            if (!first) out_ += ", ";
            first = false;
            if (!appendInline(element, lineStart)) return false;
        }
        out_ += ']';
        return out_.size() - lineStart <= kLongestLine;
    }

    std::string& out_;
};

}  // namespace

std::string writeJson(const Json& value)
{
    std::string text;
    Writer(text).write(value, 0);
    text += '\n';
    return text;
}

}  // namespace yardcast
