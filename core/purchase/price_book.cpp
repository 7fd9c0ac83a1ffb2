#include "core/purchase/price_book.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <set>

#include <nlohmann/json.hpp>

#include "core/cutting/sheet_cutting.h"
#include "core/io/number_text.h"
#include "core/purchase/currency.h"

namespace yardcast {

namespace {

using Json = nlohmann::json;

constexpr double kMostSize = 1e6;
constexpr double kSheetAreaTolerance = 0.01;  ///< sizes in books are rounded

/// Collects problems while the JSON is walked; every reader returns a usable value even after a problem.
class Reader {
public:
    std::vector<Finding> problems;

    void problem(const std::string& code, const std::string& pointer, const std::string& expected)
    {
        Finding finding;
        finding.code = code;
        finding.severity = Severity::stop;
        finding.pointer = pointer;
        finding.values["expected"] = expected;
        problems.push_back(std::move(finding));
    }

    const Json* member(const Json& object, const std::string& pointer, const char* key, const std::string& expected)
    {
        const auto it = object.find(key);
        if (it != object.end()) return &*it;
        problem("prices_missing", pointer + "/" + key, expected);
        return nullptr;
    }

    std::string text(const Json& object, const std::string& pointer, const char* key)
    {
        const Json* value = member(object, pointer, key, "text");
        if (!value) return {};
        if (value->is_string() && !value->get_ref<const std::string&>().empty()) return value->get<std::string>();
        problem("prices_wrong", pointer + "/" + key, "text");
        return {};
    }

    std::string word(const Json& object, const std::string& pointer, const char* key,
                     const std::vector<std::string>& words)
    {
        std::string all;
        for (const std::string& known : words) all += (all.empty() ? "" : ", ") + known;
        const Json* value = member(object, pointer, key, all);
        if (!value) return {};
        if (value->is_string()) {
            auto given = value->get<std::string>();
            if (std::find(words.begin(), words.end(), given) != words.end()) return given;
        }
        problem("prices_wrong", pointer + "/" + key, all);
        return {};
    }

    double number(const Json& object, const std::string& pointer, const char* key, double least, double most,
                  const std::string& expected)
    {
        const Json* value = member(object, pointer, key, expected);
        if (!value) return 0.0;
        if (value->is_number()) {
            const double given = value->get<double>();
            if (given >= least && given <= most) return given;
        }
        problem("prices_wrong", pointer + "/" + key, expected);
        return 0.0;
    }
};

/// A sheet's sides; its area is the pack's size where that is in m2.
std::optional<Size> readSheet(Reader& reader, const Json& json, const std::string& pointer, const Pack& pack,
                              const std::string& unit)
{
    const std::string expected = "[length, width] in mm";
    const auto isSide = [](const Json& side) {
        return side.is_number() && side.get<double>() >= 1.0 && side.get<double>() <= kLargestSheetMm;
    };
    if (!json.is_array() || json.size() != 2 || !isSide(json[0]) || !isSide(json[1])) {
        reader.problem("prices_wrong", pointer, expected);
        return {};
    }
    const Size sheet{json[0].get<double>(), json[1].get<double>()};
    const double areaM2 = sheet.width * sheet.depth / 1e6;
    if (unit == "m2" && std::abs(areaM2 - pack.size) > kSheetAreaTolerance * pack.size) {
        reader.problem("prices_wrong", pointer, expected + ", " + shortestText(pack.size) + " m2");
        return {};
    }
    return sheet;
}

Pack readPack(Reader& reader, const Json& json, const std::string& pointer, const std::string& currency,
              const std::string& unit)
{
    Pack pack;
    if (!json.is_object()) {
        reader.problem("prices_wrong", pointer, "{\"size\", \"price\"}");
        return pack;
    }
    pack.size = reader.number(json, pointer, "size", 1e-6, kMostSize, "number above 0");
    pack.priceMinor = toMinor(reader.number(json, pointer, "price", 0.0, kLargestPrice, "number, 0 or more"), currency);
    if (json.contains("sheet")) pack.sheet = readSheet(reader, json["sheet"], pointer + "/sheet", pack, unit);
    return pack;
}

CutTariff readCuts(Reader& reader, const Json& json, const std::string& pointer, const std::string& currency)
{
    CutTariff cuts;
    if (!json.is_object()) {
        reader.problem("prices_wrong", pointer, "{\"free\", \"price\"}");
        return cuts;
    }
    cuts.freeASheet = static_cast<int>(reader.number(json, pointer, "free", 0.0, kMostSize, "whole number, 0 or more"));
    cuts.priceMinor = toMinor(reader.number(json, pointer, "price", 0.0, kLargestPrice, "number, 0 or more"), currency);
    return cuts;
}

PricedItem readItem(Reader& reader, const Json& json, const std::string& pointer, const std::string& currency)
{
    PricedItem item;
    if (!json.is_object()) {
        reader.problem("prices_wrong", pointer, "{\"item\", \"name\", \"unit\", \"group\", \"packs\"}");
        return item;
    }
    item.item = reader.text(json, pointer, "item");
    item.name = reader.text(json, pointer, "name");
    item.unit = reader.word(json, pointer, "unit", priceUnits());
    item.group = reader.word(json, pointer, "group", priceGroups());
    const Json* packs = reader.member(json, pointer, "packs", "[{\"size\", \"price\"}]");
    if (packs && (!packs->is_array() || packs->empty())) {
        reader.problem("prices_wrong", pointer + "/packs", "[{\"size\", \"price\"}]");
    } else if (packs) {
        for (std::size_t i = 0; i < packs->size(); ++i) {
            item.packs.push_back(
                readPack(reader, (*packs)[i], pointer + "/packs/" + std::to_string(i), currency, item.unit));
        }
    }
    if (json.contains("coverage")) {
        item.coverageM2 = reader.number(json, pointer, "coverage", 1e-6, kMostSize, "number above 0");
    }
    if (json.contains("cuts")) item.cuts = readCuts(reader, json["cuts"], pointer + "/cuts", currency);
    return item;
}

std::string readCurrency(Reader& reader, const Json& root)
{
    std::string currency = reader.text(root, "", "currency");
    const bool isCode = currency.size() == 3 && std::all_of(currency.begin(), currency.end(),
                                                            [](char c) { return c >= 'A' && c <= 'Z'; });
    if (!currency.empty() && !isCode) reader.problem("prices_wrong", "/currency", "ISO 4217");
    return currency;
}

void readRoot(Reader& reader, const Json& root, PriceBook& book)
{
    const Json* version = reader.member(root, "", "yardprices", "1");
    if (version && (!version->is_number_integer() || version->get<double>() < 1)) {
        reader.problem("prices_wrong", "/yardprices", "1");
    } else if (version && version->get<double>() > 1) {
        reader.problem("prices_newer", "/yardprices", "1");
    }
    book.title = reader.text(root, "", "title");
    book.currency = readCurrency(reader, root);
    const Json* items = reader.member(root, "", "items", "[...]");
    if (!items) return;
    if (!items->is_array()) {
        reader.problem("prices_wrong", "/items", "[...]");
        return;
    }
    std::set<std::string> seen;
    for (std::size_t i = 0; i < items->size(); ++i) {
        const std::string pointer = "/items/" + std::to_string(i);
        PricedItem item = readItem(reader, (*items)[i], pointer, book.currency);
        if (!item.item.empty() && !seen.insert(item.item).second) {
            reader.problem("prices_twice", pointer + "/item", item.item);
        }
        book.items.push_back(std::move(item));
    }
}

/// Refuses what is nested deeper than a price book ever is, so that the parser's own recursion stays small.
bool tooDeep(const std::string& text)
{
    int depth = 0;
    bool inString = false;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const char c = text[i];
        if (inString) {
            if (c == '\\') ++i;
            if (c == '"') inString = false;
        } else if (c == '"') {
            inString = true;
        } else if (c == '{' || c == '[') {
            if (++depth > 64) return true;
        } else if (c == '}' || c == ']') {
            --depth;
        }
    }
    return false;
}

void parseInto(Reader& reader, const std::string& text, PriceBook& book)
{
    try {
        const Json root = Json::parse(text);
        if (root.is_object()) {
            readRoot(reader, root, book);
        } else {
            reader.problem("prices_wrong", "", "{\"yardprices\": 1, \"title\", \"currency\", \"items\"}");
        }
    } catch (const Json::parse_error& error) {
        reader.problem("prices_not_json", "", "JSON");
        const auto end = text.begin() + static_cast<std::ptrdiff_t>(std::min(error.byte, text.size()));
        const auto lineStart = std::find(std::make_reverse_iterator(end), text.rend(), '\n').base();
        reader.problems.back().values["line"] = 1.0 + static_cast<double>(std::count(text.begin(), end, '\n'));
        reader.problems.back().values["column"] = static_cast<double>(std::max<std::ptrdiff_t>(end - lineStart, 1));
    }
}

}  // namespace

const PricedItem* PriceBook::find(std::string_view item) const
{
    const auto it = std::find_if(items.begin(), items.end(), [&](const PricedItem& i) { return i.item == item; });
    return it == items.end() ? nullptr : &*it;
}

const std::vector<std::string>& priceUnits()
{
    static const std::vector<std::string> units{"kg", "l", "ml", "m", "m2", "piece"};
    return units;
}

const std::vector<std::string>& priceGroups()
{
    static const std::vector<std::string> groups{"concrete", "steel",    "boards", "timber",
                                                 "sealing",  "fixings", "tools",  "safety"};
    return groups;
}

PriceBookReading readPriceBook(const std::string& text)
{
    PriceBookReading reading;
    Reader reader;
    if (text.size() > kLargestPriceBookBytes) {
        reader.problem("prices_too_large", "", std::to_string(kLargestPriceBookBytes));
    } else if (tooDeep(text)) {
        reader.problem("prices_not_json", "", "JSON");
    } else {
        parseInto(reader, text, reading.book);
    }
    reading.problems = std::move(reader.problems);
    if (!reading.problems.empty()) reading.book = {};
    return reading;
}

}  // namespace yardcast
