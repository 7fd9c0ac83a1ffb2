#pragma once

#include "core/assess/assessment.h"
#include "core/plan/plan.h"
#include "core/purchase/cut_lists.h"
#include "core/purchase/price_book.h"

namespace yardcast {

/// What an assessment's plan has to be cut into.
CutJobs cutJobs(const Plan& plan, const PriceBook& prices, const Assessment& assessment);

/// The assessment with its cuts solved: the shopping list takes whole sheets and lengths from them (such a line is no
/// estimate any more, unless some of its pieces found no stock), the cuts that cost money are a line of their own
/// ("store_cut"), and the findings about budget and quote are those of the new sum. Adds piece_larger_than_sheet.
/// The assessment itself where `cuts` is null.
AssessmentPtr withCuts(const Plan& plan, const AssessmentPtr& assessment, const PriceBook& prices,
                       const CutPlansPtr& cuts);

}  // namespace yardcast
