#pragma once

#include <memory>

#include "core/assess/assessment.h"
#include "core/plan/plan.h"
#include "core/purchase/price_book.h"

namespace yardcast {

/// Plan -> Assessment, with a memo: what did not change since the last call is not computed again. The answer never
/// depends on the memo. Not thread-safe; keep one a thread.
class Assessor {
public:
    explicit Assessor(PriceBook prices);
    ~Assessor();
    Assessor(const Assessor&) = delete;
    Assessor& operator=(const Assessor&) = delete;

    AssessmentPtr assess(const Plan& plan);

private:
    struct Memo;
    PriceBook prices_;
    std::unique_ptr<Memo> memo_;
};

/// The same without a memo.
AssessmentPtr assess(const Plan& plan, const PriceBook& prices);

}  // namespace yardcast
