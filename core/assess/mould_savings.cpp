#include "core/assess/mould_savings.h"

#include <algorithm>
#include <cmath>

#include "core/assess/finding_order.h"
#include "core/assess/with_cuts.h"
#include "core/purchase/currency.h"

namespace yardcast {

namespace {

constexpr const char* kBoardItems = "mould_board";  // and those of one thickness, "mould_board_18"

std::optional<std::int64_t> boardsMinor(CutJobs jobs, CutSolver& solver, const std::stop_token& stop)
{
    std::erase_if(jobs.sheets, [](const SheetJob& job) { return job.item.rfind(kBoardItems, 0) != 0; });
    jobs.bars.clear();
    const CutPlansPtr cuts = solver.solve(jobs, stop);
    if (!cuts) return {};
    std::int64_t minor = 0;
    for (const SheetCutsPtr& one : cuts->sheets) minor += one->sheetsMinor + one->cutsMinor;
    return minor;
}

std::optional<Remedy> remedyFor(const Plan& plan, const Finding& over, const MouldSharing& sharing)
{
    const auto amount = over.values.find("amount");
    if (amount == over.values.end() || !std::holds_alternative<double>(amount->second)) return {};
    return sharingRemedy(plan, sharing, toMinor(std::get<double>(amount->second), plan.currency));
}

}  // namespace

std::optional<MouldSavings> mouldSavings(const Plan& plan, const PriceBook& prices, const Assessment& assessment,
                                         std::stop_token stop)
{
    std::vector<CastingPtr> castings;
    for (const PlacedCasting& placed : assessment.castings) castings.push_back(placed.casting);
    CutSolver solver;
    const auto jobsOf = [&](const Plan& of) {
        return cutJobs(of, prices, assessment.moulds, assessment.steel, assessment.fronts);
    };
    const BoardsPrice price = [&](const Plan& of) { return boardsMinor(jobsOf(of), solver, stop).value_or(0); };

    MouldSavings savings;
    savings.sharing = mouldSharing(plan, {castings, assessment.mixes, assessment.weather}, assessment.moulds,
                                   assessment.pour, price, savings.findings);
    savings.later = laterBoards(plan, assessment.moulds, assessment.pour);
    if (!savings.later.cuts.empty()) {
        const CutJobs jobs = jobsOf(plan);
        const auto now = boardsMinor(jobs, solver, stop);
        const auto less = boardsMinor(withoutLater(jobs, savings.later), solver, stop);
        if (now && less) savings.later.savesMinor = *now - *less;
    }
    if (stop.stop_requested()) return {};
    return savings;
}

AssessmentPtr withMouldSavings(const Plan& plan, const AssessmentPtr& assessment, const MouldSavings& savings)
{
    auto answer = std::make_shared<Assessment>(*assessment);
    for (Finding& finding : answer->findings) {
        if (finding.code != "over_budget") continue;
        std::optional<Remedy> remedy = remedyFor(plan, finding, savings.sharing);
        if (!remedy) continue;
        std::erase_if(finding.remedies, [](const Remedy& other) { return other.code == "reuse_mould_base"; });
        finding.remedies.push_back(std::move(*remedy));
    }
    std::vector<Finding> added = savings.findings;
    const FindingOrder order(plan, answer->castings);
    order.sort(added);
    order.merge(answer->findings, std::move(added));
    return answer;
}

}  // namespace yardcast
