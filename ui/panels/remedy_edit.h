#pragma once

#include <optional>

#include "core/plan/finding.h"

namespace yardcast::ui {

class PlanDocument;

/// The edit of a remedy as one entry of the undo list, named by its sentence. Where it does not fit the plan the plan
/// stays, and what is wrong with it comes back.
std::optional<Finding> takeRemedy(PlanDocument& document, const Remedy& remedy);

}  // namespace yardcast::ui
