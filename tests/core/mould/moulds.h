#pragma once

#include "core/mould/mould.h"
#include "tests/core/castings/counters.h"

/// Plans of parts and their moulds.
namespace yardcast {

struct MouldsOfPlan {
    Plan plan;
    std::vector<CastingPtr> castings;
    std::vector<MouldPtr> moulds;
    std::vector<Finding> findings;

    const Finding* finding(const std::string& code) const
    {
        for (const Finding& one : findings) {
            if (one.code == code) return &one;
        }
        return nullptr;
    }
};

inline MouldsOfPlan mouldsOfParts(const std::vector<Part>& parts, std::optional<Moulding> how = {})
{
    MouldsOfPlan all;
    all.plan.moulding = std::move(how);
    for (const Part& part : parts) {
        all.plan.parts.push_back(std::make_shared<const Part>(part));
        for (const CastingPtr& casting : castingsOf(part)) all.castings.push_back(casting);
    }
    all.moulds = mouldsOf(all.plan, all.castings, all.findings);
    return all;
}

inline std::vector<MouldPart> partsOfKind(const Mould& mould, MouldPartKind kind)
{
    std::vector<MouldPart> found;
    for (const MouldPart& part : mould.parts) {
        if (part.kind == kind) found.push_back(part);
    }
    return found;
}

}  // namespace yardcast
