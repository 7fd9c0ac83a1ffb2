#pragma once

#include <string>
#include <vector>

#include "core/castings/casting.h"
#include "core/plan/finding.h"
#include "core/plan/plan.h"

namespace yardcast {

struct CastingLift {
    std::string casting;
    double massKg = 0.0;
    int people = 0;          ///< needed by the plan's limit each and the team factor; 0 where more than kMostPeople
    int guidelinePeople = 0; ///< the same without that bound; 0 where the limit is no number
    int crewPeople = 0;      ///< who lift it: lift.people, or the crew
    double limitKg = 0.0;    ///< what those can lift
    std::vector<Point> grips;  ///< own frame, as in the plan
};

/// Share of the summed limits a team can lift: 1, 2/3 for two, 1/2 for three (HSE L23). For four and more no factor
/// is published; 1/2 is kept (judgement).
double teamFactor(int people);
double teamLimitKg(int people, double limitEachKg);
/// Least number of people whose team limit carries the mass; 0 when more than `kMostPeople` would be needed.
int peopleNeeded(double massKg, double limitEachKg);
inline constexpr int kMostPeople = 8;
/// The same without that bound: by the factor for many. 0 when the limit is not positive or the count is no number.
int peopleByGuideline(double massKg, double limitEachKg);

/// A caution past what those who lift can lift, a stop past twice that.
std::vector<CastingLift> liftings(const Plan& plan, const std::vector<CastingPtr>& castings,
                                  std::vector<Finding>& findings);

}  // namespace yardcast
