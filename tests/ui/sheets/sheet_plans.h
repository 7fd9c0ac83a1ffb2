#pragma once

#include "core/assess/assess.h"
#include "core/purchase/price_book.h"
#include "tests/ui/drawing/sample_plans.h"
#include "ui/sheets/print_pack.h"

namespace yardcast::ui {

inline AssessmentPtr assessed(const Plan& plan)
{
    return assess(plan, exampleBook());
}

inline SheetOptions onFixedDay()
{
    SheetOptions options;
    options.date = QDate(2025, 5, 3);
    return options;
}

/// One straight counter with a sink, 1800 x 600, and a mix for it.
inline Plan counterPlan()
{
    Plan plan;
    plan.title = "One counter";
    Mix mix;
    mix.id = "worktop";
    plan.mixes = {mix};
    Counter counter = sinkCounter();
    counter.mix = "worktop";
    plan.parts = {makePart("C1", counter)};
    return plan;
}

}  // namespace yardcast::ui
