#pragma once

#include <optional>
#include <stop_token>
#include <vector>

#include "core/assess/assessment.h"
#include "core/plan/plan.h"
#include "core/purchase/later_boards.h"
#include "core/purchase/mould_sharing.h"
#include "core/purchase/price_book.h"

namespace yardcast {

/// What an assessment's moulds could do without: fewer moulds for castings that are the same, and boards sawn out of
/// old bases. Prices are those of whole sheets and their cuts.
struct MouldSavings {
    MouldSharing sharing;
    LaterBoards later;
    std::vector<Finding> findings;  ///< of `mouldSharing`
};

/// Solves cuts for every option: tenths of a second, not for every frame. Nothing when stopped.
std::optional<MouldSavings> mouldSavings(const Plan& plan, const PriceBook& prices, const Assessment& assessment,
                                         std::stop_token stop = {});

/// The assessment with the findings, and where the plan is over its budget with sharing a mould as the remedy, in place
/// of the estimate "reuse_mould_base".
AssessmentPtr withMouldSavings(const Plan& plan, const AssessmentPtr& assessment, const MouldSavings& savings);

}  // namespace yardcast
