#include <algorithm>
#include <cmath>

#include "core/purchase/cut_lists.h"

namespace yardcast {

namespace {

template <class Cuts, class Job>
std::shared_ptr<const Cuts> known(const std::vector<std::shared_ptr<const Cuts>>& before, const Job& job)
{
    for (const auto& cuts : before) {
        if (cuts->job == job) return cuts;
    }
    return nullptr;
}

SheetCutsPtr solved(const SheetJob& job, const std::stop_token& stop)
{
    auto cuts = std::make_shared<SheetCuts>();
    cuts->job = job;
    cuts->plan = cutSheets(job.list, {}, stop);
    cuts->sheetsMinor = std::llround(cuts->plan.sheetsPrice);
    cuts->cutsMinor = std::llround(cuts->plan.cutsPrice);
    for (const SheetPiece& piece : job.list.pieces)
        cuts->needM2 += piece.count * piece.size.width * piece.size.depth / 1e6;
    return cuts;
}

BarCutsPtr solved(const BarJob& job, const std::stop_token& stop)
{
    auto cuts = std::make_shared<BarCuts>();
    cuts->job = job;
    cuts->plan = cutBars(job.list, stop);
    cuts->priceMinor = std::llround(cuts->plan.price);
    for (const BarPiece& piece : job.list.pieces) cuts->needM += piece.count * piece.lengthMm / 1000.0;
    return cuts;
}

}  // namespace

CutPlansPtr CutSolver::solve(const CutJobs& jobs, std::stop_token stop)
{
    auto plans = std::make_shared<CutPlans>();
    plans->withoutStock = jobs.withoutStock;
    const auto all = [&](const auto& wanted, auto& before, auto& out) {
        for (const auto& job : wanted) {
            auto cuts = known(before, job);
            if (!cuts) {
                if (stop.stop_requested()) return false;
                cuts = solved(job, stop);
                // One that was cut short is not worth keeping.
                if (stop.stop_requested()) return false;
                before.push_back(cuts);
            }
            out.push_back(cuts);
        }
        return true;
    };
    if (!all(jobs.sheets, sheets_, plans->sheets) || !all(jobs.bars, bars_, plans->bars)) return nullptr;
    sheets_ = plans->sheets;
    bars_ = plans->bars;
    return plans;
}

}  // namespace yardcast
