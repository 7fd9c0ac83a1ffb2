#pragma once

#include <string>
#include <unordered_map>

#include "core/plan/plan.h"

namespace yardcast {

/// The plan's own hour at which a piece of the part is lifted out of its mould: its age of lifting.
double liftHours(const Part& part);

/// How long castings lie in their moulds: to the plan's hour of lifting, or until their concrete can be counted on to be
/// strong enough (`cautiousStripDays` by the plan's course of temperatures), whichever is later. The one answer that pour
/// plan, shared moulds and boards of old moulds use. Where a mix never gets so strong (readiness says so) the hour of
/// lifting is all there is. The plan must live as long as this; a mix is reckoned once, when it is asked for.
class MouldHours {
public:
    explicit MouldHours(const Plan& plan) : plan_(plan) {}
    double of(const Part& part, const std::string& mix);

private:
    const Plan& plan_;
    std::unordered_map<std::string, double> strongEnoughH_;  ///< by mix
};

}  // namespace yardcast
