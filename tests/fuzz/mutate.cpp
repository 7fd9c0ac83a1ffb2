#include "tests/fuzz/mutate.h"

#include <algorithm>
#include <cctype>
#include <vector>

#include "core/io/json_text.h"

namespace yardcast::fuzz {

namespace {

/// Numbers that break things: none, negative, tiny, huge, at the ends of integer types, and no numbers.
const std::vector<std::string>& extremes()
{
    static const std::vector<std::string> all{
        "0",         "-0.0",       "-1",         "1",           "0.5",        "1e-9",        "5e-324",
        "1e-308",    "1e5",        "1e6",        "1e15",        "1e18",       "1e300",       "1e308",
        "-1e308",    "1e309",      "2147483647", "2147483648",  "-2147483649", "4294967296",
        "9223372036854775807",     "18446744073709551616",      "0.1",        "39.999999",   "NaN",
        "1e",        "--1",        "null",       "true",        "\"900\"",    "[]",          "{}"};
    return all;
}

std::vector<std::string> tokensOf(const std::string& text)
{
    std::vector<std::string> tokens;
    for (std::size_t i = 0; i < text.size();) {
        const std::size_t start = i;
        if (text[i] == '"') {
            ++i;
            while (i < text.size() && text[i] != '"') i += text[i] == '\\' ? 2 : 1;
            i = std::min(i + 1, text.size());
        } else if (std::isalnum(static_cast<unsigned char>(text[i])) || text[i] == '-') {
            while (i < text.size()
                   && (std::isalnum(static_cast<unsigned char>(text[i])) || text[i] == '.' || text[i] == '-'
                       || text[i] == '+')) {
                ++i;
            }
        } else {
            ++i;
        }
        tokens.push_back(text.substr(start, i - start));
    }
    return tokens;
}

bool isNumber(const std::string& token)
{
    return !token.empty() && (std::isdigit(static_cast<unsigned char>(token[0])) || token[0] == '-');
}

void gather(Json& value, std::vector<Json*>& all)
{
    all.push_back(&value);
    if (!value.is_structured()) return;
    for (Json& member : value) gather(member, all);
}

}  // namespace

void Mutator::damageBytes(std::string& text)
{
    if (text.empty()) return;
    const std::size_t at = below(text.size());
    const std::size_t span = std::min<std::size_t>(1 + below(chance(80) ? 20 : 2000), text.size() - at);
    switch (below(8)) {
    case 0: text[at] = static_cast<char>(static_cast<unsigned char>(text[at]) ^ (1U << below(8))); break;
    case 1: text[at] = static_cast<char>(below(256)); break;
    case 2: text.erase(at, span); break;
    case 3: text.insert(at, text.substr(at, span)); break;
    case 4: text.resize(at); break;
    case 5: text.insert(below(text.size()), text.substr(at, span)); break;
    case 6: text.insert(at, 1 + below(200), "[{\"\0 1,"[below(7)]); break;
    default: std::reverse(text.begin() + static_cast<std::ptrdiff_t>(at),
                          text.begin() + static_cast<std::ptrdiff_t>(at + span)); break;
    }
}

std::string Mutator::damageTokens(const std::string& text)
{
    std::vector<std::string> tokens = tokensOf(text);
    std::vector<std::size_t> numbers;
    std::vector<std::size_t> words;
    for (std::size_t i = 0; i < tokens.size(); ++i) {
        if (isNumber(tokens[i])) numbers.push_back(i);
        if (tokens[i].size() > 1 && tokens[i][0] == '"') words.push_back(i);
    }
    for (std::uint32_t n = 1 + below(4); n > 0; --n) {
        const auto any = [&](const std::vector<std::size_t>& of) { return of[below(of.size())]; };
        switch (below(5)) {
        case 0:
        case 1:
            if (!numbers.empty()) tokens[any(numbers)] = extremes()[below(extremes().size())];
            break;
        case 2:
            if (!numbers.empty()) std::swap(tokens[any(numbers)], tokens[any(numbers)]);
            break;
        case 3:
            if (!words.empty()) std::swap(tokens[any(words)], tokens[any(words)]);
            break;
        default:
            if (!tokens.empty()) std::swap(tokens[below(tokens.size())], tokens[below(tokens.size())]);
            break;
        }
    }
    std::string damaged;
    for (const std::string& token : tokens) damaged += token;
    return damaged;
}

std::string Mutator::damageStructure(const std::string& text)
{
    JsonReading reading = readJson(text, text.size());
    if (!reading.complete) return damageTokens(text);
    Json json = std::move(reading.value);
    for (std::uint32_t n = 1 + below(6); n > 0; --n) {
        std::vector<Json*> all;
        gather(json, all);
        Json& node = *all[below(all.size())];
        if (node.is_number()) {
            const double was = node.get<double>();
            const double factors[] = {-1.0, 0.0, 0.01, 0.5, 0.999, 1.001, 1.5, 2.0, 10.0, 100.0, 1e6, 1e300};
            node = was * factors[below(std::size(factors))] + (chance(30) ? static_cast<double>(below(100)) : 0.0);
        } else if (node.is_string()) {
            const Json& other = *all[below(all.size())];
            node = other.is_string() ? other.get<std::string>() : std::to_string(below(10));
        } else if (node.is_array() && !node.empty()) {
            const std::size_t at = below(node.size());
            if (chance(40)) {
                node.erase(at);
            } else {
                // Ids would stand twice; a number behind each keeps what is repeated readable.
                for (std::uint32_t copies = 1 + below(chance(90) ? 4 : 60); copies > 0; --copies) {
                    Json copy = node[at];
                    if (copy.is_object() && copy.contains("id") && copy["id"].is_string()) {
                        copy["id"] = copy["id"].get<std::string>() + "." + std::to_string(below(1'000'000));
                    }
                    node.push_back(std::move(copy));
                }
            }
        } else if (node.is_object() && !node.empty()) {
            if (chance(50)) {
                auto at = node.begin();
                std::advance(at, below(node.size()));
                node.erase(at.key());
            } else {
                node["x" + std::to_string(below(5))] = Json(*all[below(all.size())]);
            }
        } else if (chance(20)) {
            node = Json(*all[below(all.size())]);
        }
    }
    return json.dump(-1, ' ', false, Json::error_handler_t::replace);
}

std::string Mutator::mutate(const std::string& text)
{
    const std::uint32_t way = below(100);
    if (way < 55) return damageStructure(text);
    if (way < 75) return damageTokens(text);
    std::string damaged = text;
    for (std::uint32_t n = 1 + below(4); n > 0; --n) damageBytes(damaged);
    return damaged;
}

}  // namespace yardcast::fuzz
