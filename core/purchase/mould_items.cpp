#include "core/purchase/mould_items.h"

#include <algorithm>
#include <cmath>

#include "core/io/number_text.h"
#include "core/purchase/needs.h"

namespace yardcast {

namespace {

constexpr double kSameMm = 0.05;
constexpr int kMostLayers = 50;

bool isSheet(const PlanPrices& prices, const std::string& key)
{
    const PlanPrices::Entry* entry = prices.find(key);
    return entry && std::any_of(entry->packs.begin(), entry->packs.end(),
                                [](const Pack& pack) { return pack.sheet.has_value(); });
}

/// Thicknesses of foam that are sold as sheets, from the thinnest.
std::vector<double> foamThicknesses(const PlanPrices& prices)
{
    std::vector<double> all;
    // Whole millimetres, as the keys are.
    for (int mm = 2; mm <= 200; ++mm) {
        if (isSheet(prices, foamItem(mm))) all.push_back(mm);
    }
    return all;
}

MouldItem foamOf(const PlanPrices& prices, double thicknessMm)
{
    MouldItem item;
    item.thicknessMm = thicknessMm;
    item.keys = {foamItem(thicknessMm)};
    const bool whole = std::abs(thicknessMm - std::round(thicknessMm)) < kSameMm;
    if (whole && isSheet(prices, item.keys[0])) return item;
    const std::vector<double> sold = foamThicknesses(prices);
    if (!sold.empty() && thicknessMm > 0.0) {
        item.layers = std::clamp(static_cast<int>(std::ceil(std::min(thicknessMm / sold.back(), 1e3) - 1e-6)), 1, kMostLayers);
        const double each = thicknessMm / item.layers;
        const auto next = std::find_if(sold.begin(), sold.end(), [&](double mm) { return mm >= each - kSameMm; });
        item.thicknessMm = next == sold.end() ? sold.back() : *next;
        if (item.thicknessMm - each > kSameMm) item.cutDownToMm = each;
    }
    item.keys = {foamItem(item.thicknessMm)};
    return item;
}

}  // namespace

MouldItem mouldItemOf(const PlanPrices& prices, MouldPartKind kind, MouldStuff stuff, bool bent, double widthMm,
                      double thicknessMm)
{
    MouldItem item;
    item.thicknessMm = thicknessMm;
    const std::string thickness = shortestText(thicknessMm);
    const std::string section = shortestText(std::round(widthMm)) + "x" + shortestText(std::round(thicknessMm));
    switch (stuff) {
    case MouldStuff::board:
        if (bent) {
            item.keys = {"bend_board_" + thickness, "bend_board"};
        } else {
            item.keys = {"mould_board_" + thickness, "mould_board"};
        }
        break;
    case MouldStuff::foam: return foamOf(prices, thicknessMm);
    case MouldStuff::batten: item.keys = {"batten_" + section, "frame_timber"}; break;
    case MouldStuff::strip: {
        const std::string sort = kind != MouldPartKind::chamfer ? "strip" : bent ? "chamfer_soft" : "chamfer_strip";
        item.keys = {sort + "_" + (kind == MouldPartKind::chamfer ? thickness : section), sort};
        item.detail = shortestText(std::round(widthMm)) + " x " + shortestText(std::round(thicknessMm));
        break;
    }
    case MouldStuff::rod: item.keys = {"tie_rod_" + thickness}; break;
    case MouldStuff::block: break;
    }
    return item;
}

}  // namespace yardcast
