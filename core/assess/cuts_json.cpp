#include "core/assess/cuts_json.h"

#include "core/io/cut_list.h"

namespace yardcast {

namespace {

Json pairJson(double x, double y)
{
    return Json::array({rounded(x), rounded(y)});
}

Json pieceJson(const CutPiece& piece)
{
    Json json{{"for", piece.subject},
              {"name", piece.name},
              {"kind", piece.what},
              {"good_face", piece.goodFace},
              {"shaped", piece.shaped}};
    if (piece.parts > 1) json["parts"] = piece.parts;
    if (piece.cutDownToMm > 0.0) json["cut_down_to_mm"] = rounded(piece.cutDownToMm);
    if (piece.mitreDeg[0] != 0.0 || piece.mitreDeg[1] != 0.0)
        json["mitre_deg"] = {rounded(piece.mitreDeg[0]), rounded(piece.mitreDeg[1])};
    return json;
}

CutPieceJson piecesOf(const std::vector<CutPiece>& pieces)
{
    return [&pieces](int piece) { return pieceJson(pieces[static_cast<std::size_t>(piece)]); };
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
    Json json{{"item", cuts.job.item},
              {"name", cuts.job.name},
              {"thickness_mm", rounded(cuts.job.thicknessMm)},
              {"saw_mm", rounded(cuts.job.list.sawMm)},
              {"trim_mm", rounded(cuts.job.list.trimMm)},
              {"least_strip_mm", rounded(cuts.job.list.leastStripMm)},
              {"at_store", cuts.job.atStore},
              {"price_minor", cuts.sheetsMinor + cuts.cutsMinor},
              {"cuts_minor", cuts.cutsMinor},
              {"bound_minor", rounded(cuts.plan.bound)},
              {"stock", stock}};
    json.update(cutPlanJson(cuts.job.list, cuts.plan, piecesOf(cuts.job.pieces)));
    return json;
}

Json barsJson(const BarCuts& cuts)
{
    Json stock = Json::array();
    for (std::size_t s = 0; s < cuts.job.stock.size(); ++s) {
        const BarStock& one = cuts.job.list.stock[s];
        stock.push_back({{"length_mm", rounded(one.lengthMm)}, {"price_minor", cuts.job.stock[s].priceMinor},
                         {"at_hand", cuts.job.stock[s].atHand}, {"count", one.count ? Json(*one.count) : Json()}});
    }
    Json json{{"item", cuts.job.item},
              {"name", cuts.job.name},
              {"saw_mm", rounded(cuts.job.list.sawMm)},
              {"price_minor", cuts.priceMinor},
              {"bound_minor", rounded(cuts.plan.bound)},
              {"stock", stock}};
    json.update(cutPlanJson(cuts.job.list, cuts.plan, piecesOf(cuts.job.pieces)));
    return json;
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
