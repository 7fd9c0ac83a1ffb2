#include "ui/panels/remedy_edit.h"

#include "core/io/plan_patch.h"
#include "ui/document/plan_document.h"
#include "ui/wording/finding_words.h"

namespace yardcast::ui {

std::optional<Finding> takeRemedy(PlanDocument& document, const Remedy& remedy)
{
    std::optional<Finding> problem;
    document.apply(remedyText(remedy), [&](const Plan& plan) {
        PlanReading changed = applyPatch(plan, remedy.edit);
        if (changed.plan) return std::move(*changed.plan);
        problem = changed.problems.front();
        return plan;
    });
    return problem;
}

}  // namespace yardcast::ui
