#include "core/assess/finding_order.h"

#include <algorithm>
#include <iterator>
#include <limits>
#include <utility>

namespace yardcast {

FindingOrder::FindingOrder(const Plan& plan, const std::vector<PlacedCasting>& castings)
{
    for (std::size_t i = 0; i < plan.parts.size(); ++i) placeOf_.try_emplace(plan.parts[i]->id, i);
    for (const PlacedCasting& placed : castings) {
        const auto part = placeOf_.find(placed.casting->part);
        if (part != placeOf_.end()) placeOf_.try_emplace(placed.casting->id, part->second);
    }
}

void FindingOrder::sort(std::vector<Finding>& findings) const
{
    std::stable_sort(findings.begin(), findings.end(),
                     [this](const Finding& a, const Finding& b) { return before(a, b); });
}

void FindingOrder::merge(std::vector<Finding>& findings, std::vector<Finding> added) const
{
    const auto middle = static_cast<std::ptrdiff_t>(findings.size());
    std::ranges::move(added, std::back_inserter(findings));
    std::inplace_merge(findings.begin(), findings.begin() + middle, findings.end(),
                       [this](const Finding& a, const Finding& b) { return before(a, b); });
}

bool FindingOrder::before(const Finding& a, const Finding& b) const
{
    if (a.severity != b.severity) return a.severity > b.severity;
    return place(a) < place(b);
}

std::size_t FindingOrder::place(const Finding& finding) const
{
    const auto none = std::numeric_limits<std::size_t>::max();
    if (finding.subjects.empty()) return none;
    const auto found = placeOf_.find(finding.subjects.front());
    return found == placeOf_.end() ? none : found->second;
}

}  // namespace yardcast
