#include "ui/live/strength_choice.h"

namespace yardcast::ui {

void StrengthChoice::setWhich(std::optional<StrengthCase> which)
{
    if (which == which_) return;
    which_ = which;
    emit changed();
}

const CaseResult* StrengthChoice::of(const CastingStrength& strength) const
{
    return which_ ? strength.find(*which_) : strength.worst();
}

bool isHandling(StrengthCase which)
{
    switch (which) {
    case StrengthCase::ownWeight:
    case StrengthCase::inPlace:
    case StrengthCase::standing: return false;
    case StrengthCase::suction:
    case StrengthCase::tilt:
    case StrengthCase::carriedFlat:
    case StrengthCase::carriedOnEdge:
    case StrengthCase::setDown:
    case StrengthCase::cornerLate: return true;
    }
    return true;
}

}  // namespace yardcast::ui
