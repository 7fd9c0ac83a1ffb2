#pragma once

#include <set>
#include <string>

#include "core/plan/plan.h"

namespace yardcast {

/// Castings that come out of a mould after another one: for them no boards are bought. Of a casting that is named twice
/// the first time counts.
inline std::set<std::string> laterCastings(const Plan& plan)
{
    std::set<std::string> seen;
    std::set<std::string> later;
    for (const SharedMould& mould : mouldingOf(plan).shared) {
        bool first = true;
        for (const std::string& casting : mould.castings) {
            if (!seen.insert(casting).second) continue;
            if (!first) later.insert(casting);
            first = false;
        }
    }
    return later;
}

}  // namespace yardcast
