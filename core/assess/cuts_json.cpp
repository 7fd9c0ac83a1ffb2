#include "core/assess/cuts_json.h"

#include <cmath>

namespace yardcast {

namespace {

Json pairJson(double x, double y)
{
    return Json::array({rounded(x), rounded(y)});
}

Json pieceJson(const CutPiece& piece)
{
    return {{"for", piece.subject},
            {"name", piece.name},
            {"kind", piece.what},
            {"good_face", piece.goodFace},
            {"shaped", piece.shaped}};
}

Json areaJson(const SheetArea& area)
{
    return {{"at", pairJson(area.at.x, area.at.y)}, {"size", pairJson(area.size.width, area.size.depth)}};
}

Json sheetJson(const SheetCuts& cuts, const CutSheet& sheet)
{
    Json pieces = Json::array();
    for (const PlacedPiece& placed : sheet.pieces) {
        Json piece = pieceJson(cuts.job.pieces[static_cast<std::size_t>(placed.piece)]);
        piece["at"] = pairJson(placed.at.x, placed.at.y);
        piece["size"] = pairJson(placed.size.width, placed.size.depth);
        piece["turned"] = placed.turned;
        piece["blank"] = placed.blank >= 0 ? Json(placed.blank) : Json();
        pieces.push_back(std::move(piece));
    }
    Json steps = Json::array();
    for (const SawStep& step : sheet.steps) {
        steps.push_back({{"part", step.part},
                         {"along", step.run == SawRun::alongX ? "x" : "y"},
                         {"at_mm", rounded(step.atMm)},
                         {"at_home", step.atHome}});
    }
    Json blanks = Json::array();
    for (const SheetArea& blank : sheet.blanks) blanks.push_back(areaJson(blank));
    Json rests = Json::array();
    for (const SheetArea& rest : sheet.remainders) rests.push_back(areaJson(rest));
    return {{"stock", sheet.stock}, {"times", sheet.times}, {"pieces", pieces}, {"saw", steps}, {"cuts", sheet.cuts},
            {"blanks", blanks}, {"remainders", rests}};
}

Json sheetsJson(const SheetCuts& cuts)
{
    Json stock = Json::array();
    for (std::size_t s = 0; s < cuts.job.stock.size(); ++s) {
        const SheetStock& one = cuts.job.list.stock[s];
        stock.push_back({{"size", pairJson(one.size.width, one.size.depth)},
                         {"price_minor", cuts.job.stock[s].priceMinor},
                         {"at_hand", cuts.job.stock[s].atHand},
                         {"count", one.count ? Json(*one.count) : Json()}});
    }
    Json plan = Json::array();
    for (const CutSheet& sheet : cuts.plan.sheets) plan.push_back(sheetJson(cuts, sheet));
    Json unplaced = Json::array();
    for (const UnplacedPieces& one : cuts.plan.unplaced) {
        Json piece = pieceJson(cuts.job.pieces[static_cast<std::size_t>(one.piece)]);
        const Size size = cuts.job.list.pieces[static_cast<std::size_t>(one.piece)].size;
        piece["size"] = pairJson(size.width, size.depth);
        piece["count"] = one.count;
        unplaced.push_back(std::move(piece));
    }
    return {{"item", cuts.job.item},
            {"name", cuts.job.name},
            {"thickness_mm", rounded(cuts.job.thicknessMm)},
            {"saw_mm", rounded(cuts.job.list.sawMm)},
            {"trim_mm", rounded(cuts.job.list.trimMm)},
            {"least_strip_mm", rounded(cuts.job.list.leastStripMm)},
            {"at_store", cuts.job.atStore},
            {"count", cuts.plan.count},
            {"price_minor", cuts.sheetsMinor + cuts.cutsMinor},
            {"cuts", cuts.plan.cuts},
            {"cuts_minor", cuts.cutsMinor},
            {"bound_minor", rounded(cuts.plan.bound)},
            {"bound_count", cuts.plan.boundCount},
            {"proven", cuts.plan.proven},
            {"stock", stock},
            {"plan", plan},
            {"unplaced", unplaced}};
}

Json barsJson(const BarCuts& cuts)
{
    Json stock = Json::array();
    for (std::size_t s = 0; s < cuts.job.stock.size(); ++s) {
        const BarStock& one = cuts.job.list.stock[s];
        stock.push_back({{"length_mm", rounded(one.lengthMm)}, {"price_minor", cuts.job.stock[s].priceMinor},
                         {"at_hand", cuts.job.stock[s].atHand}, {"count", one.count ? Json(*one.count) : Json()}});
    }
    const auto jsonOf = [&](int index) {
        Json piece = pieceJson(cuts.job.pieces[static_cast<std::size_t>(index)]);
        piece["length_mm"] = rounded(cuts.job.list.pieces[static_cast<std::size_t>(index)].lengthMm);
        return piece;
    };
    Json plan = Json::array();
    for (const BarPattern& pattern : cuts.plan.patterns) {
        Json pieces = Json::array();
        for (const int piece : pattern.pieces) pieces.push_back(jsonOf(piece));
        plan.push_back({{"stock", pattern.stock}, {"times", pattern.times}, {"pieces", pieces},
                        {"remainder_mm", rounded(pattern.remainderMm)}});
    }
    Json unplaced = Json::array();
    for (const BarUnplaced& one : cuts.plan.unplaced) {
        Json piece = jsonOf(one.piece);
        piece["count"] = one.count;
        unplaced.push_back(std::move(piece));
    }
    return {{"item", cuts.job.item},
            {"name", cuts.job.name},
            {"saw_mm", rounded(cuts.job.list.sawMm)},
            {"count", cuts.plan.count},
            {"price_minor", cuts.priceMinor},
            {"bound_minor", rounded(cuts.plan.bound)},
            {"proven", cuts.plan.proven},
            {"stock", stock},
            {"plan", plan},
            {"unplaced", unplaced}};
}

}  // namespace

Json cutsJson(const CutPlans& cuts)
{
    Json sheets = Json::array();
    for (const SheetCutsPtr& one : cuts.sheets) sheets.push_back(sheetsJson(*one));
    Json bars = Json::array();
    for (const BarCutsPtr& one : cuts.bars) bars.push_back(barsJson(*one));
    Json without = Json::array();
    for (const CutWithoutStock& one : cuts.withoutStock) {
        Json pieces = Json::array();
        for (const CutPiece& piece : one.pieces) pieces.push_back(pieceJson(piece));
        without.push_back({{"item", one.item}, {"pieces", pieces}});
    }
    return {{"sheets", sheets}, {"bars", bars}, {"without_stock", without}};
}

}  // namespace yardcast
