#include "core/io/cut_list.h"

#include <cmath>
#include <optional>

#include "core/io/json_pointer.h"
#include "core/io/json_text.h"
#include "core/io/number_text.h"
#include "core/io/rounded.h"

namespace yardcast {

namespace {

constexpr int kMostCount = 1'000'000'000;

/// Collects problems while the JSON is walked; every function returns a usable value even after a problem.
class Reader {
public:
    explicit Reader(std::vector<Finding>& problems) : problems_(problems) {}

    void problem(const char* code, const std::string& pointer, std::string expected)
    {
        Finding finding;
        finding.code = code;
        finding.severity = Severity::stop;
        finding.pointer = pointer;
        finding.values["expected"] = std::move(expected);
        problems_.push_back(std::move(finding));
    }

    const Json* needed(const Json& object, const JsonPath& path, const char* key, const char* expected)
    {
        const auto it = object.find(key);
        if (it != object.end()) return &*it;
        problem("cuts_missing", path.at(key).pointer(), expected);
        return nullptr;
    }

    double number(const Json& value, const JsonPath& path, double least, double most)
    {
        const bool good = value.is_number() && value.get<double>() >= least && value.get<double>() <= most;
        if (good) return value.get<double>();
        problem("cuts_wrong", path.pointer(), "a number from " + shortestText(least) + " to " + shortestText(most));
        return least;
    }

    double numberOr(const Json& object, const JsonPath& path, const char* key, double otherwise, double least,
                    double most)
    {
        const auto it = object.find(key);
        return it == object.end() ? otherwise : number(*it, path.at(key), least, most);
    }

    std::optional<int> wholeIn(const Json& object, const JsonPath& path, const char* key, int least)
    {
        const auto it = object.find(key);
        if (it == object.end()) return std::nullopt;
        if (it->is_number()) {
            const double given = it->get<double>();
            if (given >= least && given <= kMostCount && given == std::floor(given)) return static_cast<int>(given);
        }
        problem("cuts_wrong", path.at(key).pointer(), "a whole number from " + std::to_string(least));
        return least;
    }

    std::string textIn(const Json& object, const JsonPath& path, const char* key)
    {
        const auto it = object.find(key);
        if (it == object.end()) return {};
        if (it->is_string()) return it->get<std::string>();
        problem("cuts_wrong", path.at(key).pointer(), "text");
        return {};
    }

    bool yesIn(const Json& object, const JsonPath& path, const char* key, bool otherwise)
    {
        const auto it = object.find(key);
        if (it == object.end()) return otherwise;
        if (it->is_boolean()) return it->get<bool>();
        problem("cuts_wrong", path.at(key).pointer(), "true or false");
        return otherwise;
    }

    Size sizeIn(const Json& object, const JsonPath& path, double most)
    {
        const char* expected = "[length, width] in mm";
        const Json* value = needed(object, path, "size", expected);
        if (!value) return {};
        const JsonPath at = path.at("size");
        if (!value->is_array() || value->size() != 2) {
            problem("cuts_wrong", at.pointer(), expected);
            return {};
        }
        return {number((*value)[0], at.at(std::size_t{0}), 0.01, most),
                number((*value)[1], at.at(std::size_t{1}), 0.01, most)};
    }

    double lengthIn(const Json& object, const JsonPath& path)
    {
        const Json* value = needed(object, path, "length_mm", "a length in mm");
        return value ? number(*value, path.at("length_mm"), 0.01, kLongestBarMm) : 0.01;
    }

    /// Calls `each` with every object of a needed list.
    template <class F>
    void objects(const Json& root, const JsonPath& path, const char* key, bool mayBeEmpty, const char* expected, F each)
    {
        const Json* list = needed(root, path, key, expected);
        if (!list) return;
        const JsonPath at = path.at(key);
        if (!list->is_array() || (list->empty() && !mayBeEmpty)) {
            problem("cuts_wrong", at.pointer(), expected);
            return;
        }
        for (std::size_t i = 0; i < list->size(); ++i) {
            if ((*list)[i].is_object()) {
                each((*list)[i], at.at(i));
            } else {
                problem("cuts_wrong", at.at(i).pointer(), expected);
            }
        }
    }

private:
    std::vector<Finding>& problems_;
};

BarCutting readBars(Reader& reader, const Json& root, const JsonPath& path)
{
    BarCutting out;
    out.sawMm = reader.numberOr(root, path, "saw_mm", 0.0, 0.0, kLongestBarMm);
    out.trimMm = reader.numberOr(root, path, "trim_mm", 0.0, 0.0, kLongestBarMm);
    reader.objects(root, path, "stock", false, "[{\"length_mm\", \"price\"}]",
                   [&](const Json& json, const JsonPath& at) {
                       BarStock stock;
                       stock.lengthMm = reader.lengthIn(json, at);
                       stock.price = reader.numberOr(json, at, "price", 0.0, 0.0, kDearestBar);
                       stock.count = reader.wholeIn(json, at, "count", 0);
                       out.stock.push_back(stock);
                   });
    reader.objects(root, path, "pieces", true, "[{\"name\", \"length_mm\", \"count\"}]",
                   [&](const Json& json, const JsonPath& at) {
                       BarPiece piece;
                       piece.name = reader.textIn(json, at, "name");
                       piece.lengthMm = reader.lengthIn(json, at);
                       piece.count = reader.wholeIn(json, at, "count", 1).value_or(1);
                       out.pieces.push_back(std::move(piece));
                   });
    return out;
}

SheetCutting readSheets(Reader& reader, const Json& root, const JsonPath& path)
{
    SheetCutting out;
    out.sawMm = reader.numberOr(root, path, "saw_mm", 0.0, 0.0, kLargestSheetMm);
    out.trimMm = reader.numberOr(root, path, "trim_mm", 0.0, 0.0, kLargestSheetMm);
    out.leastStripMm = reader.numberOr(root, path, "least_strip_mm", 0.0, 0.0, kLargestSheetMm);
    out.cutPrice = reader.numberOr(root, path, "cut_price", 0.0, 0.0, kDearestSheet);
    out.freeCuts = reader.wholeIn(root, path, "free_cuts", 0).value_or(0);
    reader.objects(root, path, "stock", false, "[{\"size\", \"price\"}]", [&](const Json& json, const JsonPath& at) {
        SheetStock stock;
        stock.size = reader.sizeIn(json, at, kLargestSheetMm);
        stock.price = reader.numberOr(json, at, "price", 0.0, 0.0, kDearestSheet);
        stock.count = reader.wholeIn(json, at, "count", 0);
        out.stock.push_back(stock);
    });
    reader.objects(root, path, "pieces", true, "[{\"name\", \"size\", \"count\"}]",
                   [&](const Json& json, const JsonPath& at) {
                       SheetPiece piece;
                       piece.name = reader.textIn(json, at, "name");
                       piece.size = reader.sizeIn(json, at, kLargestSheetMm);
                       piece.count = reader.wholeIn(json, at, "count", 1).value_or(1);
                       piece.turn = reader.yesIn(json, at, "turn", true);
                       out.pieces.push_back(std::move(piece));
                   });
    return out;
}

/// What only shows in the whole list: all single values are within their limits by then.
void addTooMany(std::vector<Finding>& problems, int pieces, int kinds)
{
    Finding finding;
    finding.code = "cuts_too_many";
    finding.severity = Severity::stop;
    finding.pointer = "/pieces";
    finding.values["limit"] = static_cast<double>(pieces);
    finding.values["kinds_limit"] = static_cast<double>(kinds);
    problems.push_back(std::move(finding));
}

void addGap(Json& json, double price, double bound, bool proven)
{
    if (!proven && price > 0.0) json["gap_percent"] = std::round((price - bound) / price * 1e6) / 1e4;
}

Json pairOf(double x, double y)
{
    return Json::array({rounded(x), rounded(y)});
}

Json areaOf(const SheetArea& area)
{
    return {{"at", pairOf(area.at.x, area.at.y)}, {"size", pairOf(area.size.width, area.size.depth)}};
}

Json sheetJson(const CutSheet& sheet, const CutPieceJson& pieceOf)
{
    Json pieces = Json::array();
    for (const PlacedPiece& placed : sheet.pieces) {
        Json piece = pieceOf(placed.piece);
        piece["at"] = pairOf(placed.at.x, placed.at.y);
        piece["size"] = pairOf(placed.size.width, placed.size.depth);
        piece["turned"] = placed.turned;
        piece["blank"] = placed.blank >= 0 ? Json(placed.blank) : Json();
        pieces.push_back(std::move(piece));
    }
    Json steps = Json::array();
    for (const SawStep& step : sheet.steps) {
        steps.push_back({{"part", step.part}, {"along", step.run == SawRun::alongX ? "x" : "y"},
                         {"at_mm", rounded(step.atMm)}, {"at_home", step.atHome}});
    }
    Json blanks = Json::array();
    for (const SheetArea& blank : sheet.blanks) blanks.push_back(areaOf(blank));
    Json rests = Json::array();
    for (const SheetArea& rest : sheet.remainders) rests.push_back(areaOf(rest));
    return {{"stock", sheet.stock}, {"times", sheet.times}, {"pieces", std::move(pieces)}, {"saw", std::move(steps)},
            {"cuts", sheet.cuts}, {"blanks", std::move(blanks)}, {"remainders", std::move(rests)}};
}

template <class List> CutPieceJson namesOf(const List& list)
{
    return [&list](int piece) { return Json{{"name", list.pieces[static_cast<std::size_t>(piece)].name}}; };
}

}  // namespace

CutListReading readCutList(std::string_view text)
{
    CutListReading out;
    JsonReading json = readJson(text, kLargestCutListBytes);
    out.problems = std::move(json.problems);
    if (!json.complete) return out;
    Reader reader(out.problems);
    const JsonPath root;
    const char* const kinds = "\"bar\" or \"sheet\"";
    if (!json.value.is_object()) {
        reader.problem("cuts_wrong", "", "{\"kind\", \"saw_mm\", \"stock\", \"pieces\"}");
        return out;
    }
    const Json* kind = reader.needed(json.value, root, "kind", kinds);
    if (!kind) return out;
    if (*kind == "bar") {
        BarCutting list = readBars(reader, json.value, root);
        if (out.problems.empty() && !barTroubles(list).empty()) addTooMany(out.problems, kMostPieces, kMostBarKinds);
        out.list = std::move(list);
    } else if (*kind == "sheet") {
        SheetCutting list = readSheets(reader, json.value, root);
        if (out.problems.empty() && !sheetTroubles(list).empty())
            addTooMany(out.problems, kMostSheetPieces, kMostSheetKinds);
        out.list = std::move(list);
    } else {
        reader.problem("cuts_wrong", "/kind", kinds);
    }
    return out;
}

Json cutPlanJson(const BarCutting& list, const BarPlan& plan, const CutPieceJson& pieceOf)
{
    Json json{{"count", plan.count}};
    if (plan.boundCount) json["bound_count"] = rounded(*plan.boundCount);
    json["proven"] = plan.proven;
    addGap(json, plan.price, plan.bound, plan.proven);
    json["patterns"] = plan.differentPatterns;
    const auto jsonOf = [&](int index) {
        Json piece = pieceOf(index);
        piece["length_mm"] = rounded(list.pieces[static_cast<std::size_t>(index)].lengthMm);
        return piece;
    };
    Json& bars = json["plan"] = Json::array();
    for (const BarPattern& pattern : plan.patterns) {
        Json pieces = Json::array();
        for (const int piece : pattern.pieces) pieces.push_back(jsonOf(piece));
        bars.push_back({{"stock", pattern.stock}, {"times", pattern.times}, {"pieces", std::move(pieces)},
                        {"remainder_mm", rounded(pattern.remainderMm)}});
    }
    Json& rests = json["remainders"] = Json::array();
    for (const double mm : plan.remaindersMm) {
        if (rests.empty() || rests.back()["length_mm"] != rounded(mm)) rests.push_back({{"length_mm", rounded(mm)}, {"count", 0}});
        rests.back()["count"] = rests.back()["count"].get<int>() + 1;
    }
    Json& unplaced = json["unplaced"] = Json::array();
    for (const BarUnplaced& one : plan.unplaced) {
        unplaced.push_back(jsonOf(one.piece));
        unplaced.back()["count"] = one.count;
    }
    return json;
}

Json cutPlanJson(const SheetCutting& list, const SheetPlan& plan, const CutPieceJson& pieceOf)
{
    Json json{{"count", plan.count}, {"bound_count", plan.boundCount}, {"proven", plan.proven}};
    addGap(json, plan.sheetsPrice, plan.bound, plan.proven);
    json["cuts"] = plan.cuts;
    Json& sheets = json["plan"] = Json::array();
    for (const CutSheet& sheet : plan.sheets) sheets.push_back(sheetJson(sheet, pieceOf));
    Json& unplaced = json["unplaced"] = Json::array();
    for (const UnplacedPieces& one : plan.unplaced) {
        const Size size = list.pieces[static_cast<std::size_t>(one.piece)].size;
        Json piece = pieceOf(one.piece);
        piece["size"] = pairOf(size.width, size.depth);
        piece["count"] = one.count;
        piece["why"] = one.reason == Unplaced::tooLarge ? "too_large" : "no_sheet_left";
        unplaced.push_back(std::move(piece));
    }
    return json;
}

std::string cutAnswer(const BarCutting& list, const BarPlan& plan)
{
    Json json{{"count", plan.count}, {"price", rounded(plan.price)}, {"bound", rounded(plan.bound)}};
    json.update(cutPlanJson(list, plan, namesOf(list)));
    return writeJson(json);
}

std::string cutAnswer(const SheetCutting& list, const SheetPlan& plan)
{
    Json json{{"count", plan.count}, {"price", rounded(plan.price)}, {"bound", rounded(plan.bound)}};
    json.update(cutPlanJson(list, plan, namesOf(list)));
    json["sheets_price"] = rounded(plan.sheetsPrice);
    json["cuts_price"] = rounded(plan.cutsPrice);
    return writeJson(json);
}

}  // namespace yardcast
