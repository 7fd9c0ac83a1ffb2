#pragma once

#include <algorithm>
#include <string>
#include <vector>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/plan/edits.h"
#include "core/plan/validation.h"
#include "tests/core/plan/plan_samples.h"

namespace yardcast::samples {

/// Codes found, each with its pointer: "cutout_outside /parts/0/cutouts/0".
inline std::vector<std::string> foundIn(const Plan& plan)
{
    std::vector<std::string> found;
    for (const Finding& finding : validate(plan).findings) found.push_back(finding.code + " " + finding.pointer);
    return found;
}

/// The one finding with this code; a failure where there is none or more than one.
inline Finding sole(const Plan& plan, const std::string& code)
{
    std::vector<Finding> matching;
    for (const Finding& finding : validate(plan).findings) {
        if (finding.code == code) matching.push_back(finding);
    }
    EXPECT_EQ(matching.size(), 1u) << code;
    return matching.empty() ? Finding{} : matching.front();
}

inline bool has(const Plan& plan, const std::string& code)
{
    const auto findings = validate(plan).findings;
    return std::any_of(findings.begin(), findings.end(), [&](const Finding& f) { return f.code == code; });
}

inline double mm(const Finding& finding, const std::string& key)
{
    const auto found = finding.values.find(key);
    if (found == finding.values.end() || !std::holds_alternative<double>(found->second)) {
        ADD_FAILURE() << finding.code << " has no number " << key;
        return std::nan("");
    }
    return std::get<double>(found->second);
}

inline std::string word(const Finding& finding, const std::string& key)
{
    const auto found = finding.values.find(key);
    return found != finding.values.end() && std::holds_alternative<std::string>(found->second)
        ? std::get<std::string>(found->second)
        : "(none)";
}

inline bool usable(const Plan& plan, const std::string& id) { return !validate(plan).unusableParts.contains(id); }

/// The sound plan with its counter, support or the like changed.
inline Plan counterChanged(const std::function<void(Counter&)>& change)
{
    return changeCounter(twoSupports(), "C1", change);
}

template <class Body>
Plan with(Part part, const std::function<void(Body&)>& change)
{
    change(std::get<Body>(part.body));
    Plan plan = twoSupports();
    put(plan, std::move(part));
    return plan;
}

inline Plan supportChanged(const std::function<void(Support&)>& change)
{
    return changePart(twoSupports(), "S1", [&](Part& part) { change(std::get<Support>(part.body)); });
}

inline Plan panelWith(const std::function<void(Panel&)>& change)
{
    return with<Panel>(panelPart("P1", {0, 700}), change);
}

inline Plan frontWith(const std::function<void(Front&)>& change)
{
    return with<Front>(frontPart("F1", {0, 0}), change);
}

inline Plan applianceWith(const std::function<void(Appliance&)>& change)
{
    return with<Appliance>(appliancePart("A1", {3000, 0}), change);
}

}  // namespace yardcast::samples
