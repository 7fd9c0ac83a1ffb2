#pragma once

#include <string>
#include <unordered_map>
#include <vector>

#include "core/assess/assessment.h"
#include "core/plan/finding.h"
#include "core/plan/plan.h"

namespace yardcast {

/// Place of a finding in the list: gravest first, then that of the part it speaks about; what speaks about no part
/// comes last. Equal ones keep their order.
class FindingOrder {
public:
    FindingOrder(const Plan& plan, const std::vector<PlacedCasting>& castings);

    void sort(std::vector<Finding>& findings) const;
    /// Puts `added` among `findings`, both in this order; of equal ones those of `findings` come first.
    void merge(std::vector<Finding>& findings, std::vector<Finding> added) const;
    bool before(const Finding& a, const Finding& b) const;

private:
    std::size_t place(const Finding& finding) const;

    std::unordered_map<std::string, std::size_t> placeOf_;
};

}  // namespace yardcast
