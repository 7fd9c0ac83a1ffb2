#pragma once

#include <cmath>
#include <memory>
#include <utility>

#include "core/purchase/cut_lists.h"

namespace yardcast::ui {

/// Boards of a kitchen of our own invention, prices too: two sizes of sheet and an offcut, narrow sides as blanks.
inline SheetCutsPtr someBoards(double leastStripMm = 100.0)
{
    auto cuts = std::make_shared<SheetCuts>();
    SheetJob& job = cuts->job;
    job.item = "mould_board";
    job.name = "Mould board 18 mm";
    job.thicknessMm = 18.0;
    job.atStore = true;
    job.stock = {{3.125, 3900, false}, {0.0, 0, true}};
    job.list.sawMm = 4.0;
    job.list.leastStripMm = leastStripMm;
    job.list.cutPrice = 100.0;
    job.list.freeCuts = 5;
    job.list.stock = {{{2500, 1250}, 3900.0, {}}, {{900, 700}, 0.0, 1}};
    const auto add = [&job](const char* name, const char* what, Size size, int count, bool goodFace) {
        job.pieces.push_back({"C1", name, what, goodFace, false});
        job.list.pieces.push_back({name, size, count, true});
    };
    add("C1-1", "base", {1840, 660}, 1, true);
    add("C1-2", "side", {1840, 78}, 2, true);
    add("C1-3", "side", {624, 78}, 2, true);
    add("C1-4", "former", {560, 400}, 2, false);
    add("C2-1", "base", {1240, 660}, 1, true);
    add("C2-2", "side", {1240, 78}, 2, true);
    add("C2-3", "side", {624, 78}, 2, true);
    cuts->plan = cutSheets(job.list, {400'000});
    cuts->sheetsMinor = std::llround(cuts->plan.sheetsPrice);
    cuts->cutsMinor = std::llround(cuts->plan.cutsPrice);
    for (const SheetPiece& piece : job.list.pieces) {
        cuts->needM2 += piece.size.width * piece.size.depth * piece.count * 1e-6;
    }
    return cuts;
}

/// Steel bars, prices invented.
inline BarCutsPtr someBars()
{
    auto cuts = std::make_shared<BarCuts>();
    BarJob& job = cuts->job;
    job.item = "bar_8";
    job.name = "Bar 8 mm";
    job.section = {8, 8};
    job.stock = {{3.0, 450, false}};
    job.list.sawMm = 2.0;
    job.list.stock = {{3000, 450.0, {}}};
    job.pieces = {{"C1", "1", "bar", false, false}, {"C1", "2", "bar", false, false}, {"C2", "3", "bar", false, false}};
    job.list.pieces = {{"1", 1780, 4}, {"2", 590, 6}, {"3", 1180, 2}};
    cuts->plan = cutBars(job.list);
    cuts->priceMinor = std::llround(cuts->plan.price);
    return cuts;
}

inline CutPlansPtr someCuts()
{
    auto plans = std::make_shared<CutPlans>();
    plans->sheets = {someBoards()};
    plans->bars = {someBars()};
    return plans;
}

}  // namespace yardcast::ui
