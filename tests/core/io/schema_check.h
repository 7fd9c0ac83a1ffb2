#pragma once

#include <algorithm>
#include <cmath>
#include <set>
#include <string>
#include <vector>

#include "core/io/json_text.h"

namespace yardcast::samples {

/// Checks a value against a JSON Schema (draft 2020-12), as far as our schemas use it. Problems as "pointer: keyword";
/// a keyword it does not know is a problem too, so that no rule is passed over in silence.
class SchemaCheck {
public:
    explicit SchemaCheck(const Json& schema) : root_(schema) {}

    std::vector<std::string> problems(const Json& value) const
    {
        std::vector<std::string> found;
        check(root_, value, "", found);
        return found;
    }

private:
    void check(const Json& schema, const Json& value, const std::string& at, std::vector<std::string>& found) const
    {
        static const std::set<std::string> silent{"$schema", "$defs", "title", "description", "default"};
        for (const auto& [keyword, rule] : schema.items()) {
            if (silent.contains(keyword)) continue;
            if (!holds(keyword, rule, value, at, found)) found.push_back(at + ": " + keyword);
        }
    }

    bool holds(const std::string& keyword, const Json& rule, const Json& value, const std::string& at,
               std::vector<std::string>& found) const
    {
        if (keyword == "$ref") {
            check(root_.at(Json::json_pointer(rule.get<std::string>().substr(1))), value, at, found);
            return true;
        }
        if (keyword == "type") return isType(rule.get<std::string>(), value);
        if (keyword == "const") return value == rule;
        if (keyword == "enum") return std::find(rule.begin(), rule.end(), value) != rule.end();
        if (keyword == "oneOf") return countMatching(rule, value) == 1;
        if (keyword == "anyOf") return countMatching(rule, value) > 0;
        if (keyword == "minLength") {
            return !value.is_string() || value.get<std::string>().size() >= rule.get<std::size_t>();
        }
        if (keyword == "minItems") return !value.is_array() || value.size() >= rule.get<std::size_t>();
        if (keyword == "maxItems") return !value.is_array() || value.size() <= rule.get<std::size_t>();
        if (keyword == "minimum") return !value.is_number() || value.get<double>() >= rule.get<double>();
        if (keyword == "maximum") return !value.is_number() || value.get<double>() <= rule.get<double>();
        if (keyword == "exclusiveMinimum") return !value.is_number() || value.get<double>() > rule.get<double>();
        if (keyword == "required") {
            return !value.is_object()
                || std::all_of(rule.begin(), rule.end(), [&](const Json& k) { return value.contains(k); });
        }
        if (keyword == "items") {
            for (std::size_t i = 0; value.is_array() && i < value.size(); ++i) {
                check(rule, value[i], at + "/" + std::to_string(i), found);
            }
            return true;
        }
        if (keyword == "properties") {
            for (const auto& [key, member] : rule.items()) {
                if (value.is_object() && value.contains(key)) check(member, value[key], at + "/" + key, found);
            }
            return true;
        }
        return false;
    }

    int countMatching(const Json& schemas, const Json& value) const
    {
        int matching = 0;
        for (const Json& schema : schemas) {
            std::vector<std::string> found;
            check(schema, value, "", found);
            if (found.empty()) ++matching;
        }
        return matching;
    }

    static bool isType(const std::string& type, const Json& value)
    {
        if (type == "object") return value.is_object();
        if (type == "array") return value.is_array();
        if (type == "string") return value.is_string();
        if (type == "boolean") return value.is_boolean();
        if (type == "number") return value.is_number();
        if (type == "integer") return value.is_number() && value.get<double>() == std::floor(value.get<double>());
        return false;
    }

    const Json& root_;
};

}  // namespace yardcast::samples
