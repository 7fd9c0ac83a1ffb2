#include <algorithm>

#include <gtest/gtest.h>

#include "core/castings/casting.h"
#include "core/io/json_text.h"
#include "core/io/plan_file.h"
#include "core/plan/edits.h"
#include "core/plan/validation.h"
#include "tests/property/random_plan.h"

namespace yardcast {
namespace {

Ids everyId(const Plan& plan)
{
    Ids ids;
    for (const PartPtr& part : plan.parts) ids.push_back(part->id);
    return ids;
}

TEST(ValidationProperty, PointersLeadIntoTheFile)
{
    for (const auto seed : random::seeds(200)) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        random::Source source(seed);
        Plan plan = random::plan(source);
        for (int i = 0; i < 10; ++i) {
            std::string name;
            plan = random::edited(plan, source, name);
        }
        const Json json = Json::parse(writePlan(plan));
        for (const Finding& finding : validate(plan).findings) {
            ASSERT_TRUE(json.contains(Json::json_pointer(finding.pointer))) << finding.code << " " << finding.pointer;
        }
    }
}

TEST(ValidationProperty, EveryUnusablePartHasAStopThatSaysSo)
{
    for (const auto seed : random::seeds(200)) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        random::Source source(seed);
        Plan plan = random::plan(source);
        for (int i = 0; i < 40; ++i) {
            std::string name;
            plan = random::edited(plan, source, name);
        }
        const Validation validation = validate(plan);
        for (const std::string& id : validation.unusableParts) {
            const bool said = std::any_of(
                validation.findings.begin(), validation.findings.end(), [&](const Finding& f) {
                    return f.severity == Severity::stop && !f.subjects.empty() && f.subjects.front() == id;
                });
            ASSERT_TRUE(said) << id;
        }
    }
}

TEST(ValidationProperty, UsableConcretePartsHaveCastings)
{
    for (const auto seed : random::seeds(200)) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        random::Source source(seed);
        const Plan plan = random::plan(source);
        const Validation validation = validate(plan);
        for (const PartPtr& part : plan.parts) {
            const bool concrete = part->kind() == PartKind::counter || part->kind() == PartKind::support
                || part->kind() == PartKind::panel;
            if (!concrete || validation.unusableParts.contains(part->id)) continue;
            const auto castings = castingsOf(*part);
            ASSERT_FALSE(castings.empty()) << part->id;
            for (const CastingPtr& casting : castings) ASSERT_GT(casting->volumeL, 0.0) << casting->id;
        }
    }
}

TEST(ValidationProperty, WhereTheKitchenStandsDoesNotMatter)
{
    for (const auto seed : random::seeds(200)) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        random::Source source(seed);
        Plan plan = random::plan(source);
        plan.site = Site{};
        const auto codes = [](const Plan& p) {
            std::vector<std::string> found;
            for (const Finding& f : validate(p).findings) found.push_back(f.code + " " + f.pointer);
            std::sort(found.begin(), found.end());
            return found;
        };
        const Ids ids = everyId(plan);
        // A quarter turn is exact; another angle would move what touches by a hair.
        const Plan moved = turnParts(moveParts(plan, ids, {1234.5, -987}), ids, 90, {40, 60});
        ASSERT_EQ(codes(moved), codes(plan));
    }
}

}  // namespace
}  // namespace yardcast
