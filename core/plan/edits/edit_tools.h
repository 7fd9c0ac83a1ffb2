#pragma once

#include <cmath>
#include <functional>
#include <set>
#include <string>

#include "core/plan/edits.h"

/// What the edits share. For core/plan/edits only.
namespace yardcast::edit_tools {

/// To the nearest millionth: what an edit writes stays as short as what was typed (100.1 + 0.2 is 100.3), and
/// mirroring twice gives the same bytes. Never gives -0; leaves what is huge or no number alone.
inline double tidy(double value)
{
    constexpr double kMillion = 1e6;
    if (!(std::abs(value) < 1e9)) return value;
    return std::round(value * kMillion) / kMillion + 0.0;
}
inline Point tidy(Point p) { return {tidy(p.x), tidy(p.y)}; }

/// Into [0, 360).
inline double tidyTurn(double degrees)
{
    const double turn = tidy(std::fmod(degrees, 360.0));
    const double positive = turn < 0.0 ? tidy(turn + 360.0) : turn;
    return positive == 360.0 ? 0.0 : positive;
}

/// The plan with `change` applied to copies of the parts of these ids; every other part stays shared.
Plan withEach(const Plan& plan, const Ids& ids, const std::function<void(Part&)>& change);

/// The letter the ids of a kind begin with: C, S, P, F, A.
char letterOf(PartKind kind);
/// `letter` and the lowest number from 1 that is not in `taken`.
std::string freeId(char letter, const std::set<std::string>& taken);
std::set<std::string> partIds(const Plan& plan);

/// Calls `change` with every list of edges that the counter has: of its rim, drip groove and rebate.
template <class Change>
void forEachEdgeList(Counter& counter, const Change& change)
{
    if (counter.rim && counter.rim->edges) change(*counter.rim->edges);
    if (counter.drip) change(counter.drip->edges);
    if (counter.rebate) change(counter.rebate->edges);
}

/// The part moved by a vector in plan axes.
inline void moveBy(Part& part, Point byMm) { part.place.at = tidy(part.place.at + byMm); }

}  // namespace yardcast::edit_tools
