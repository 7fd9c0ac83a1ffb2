#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <set>

#include <nlohmann/json.hpp>

#include "core/assess/assess.h"
#include "core/assess/assessment_json.h"
#include "core/assess/mould_savings.h"
#include "core/assess/with_cuts.h"
#include "core/io/plan_patch.h"
#include "core/purchase/price_book.h"
#include "tests/samples/sample_files.h"

namespace yardcast {
namespace {

AssessmentPtr assessed(const Plan& plan, const PriceBook& prices)
{
    const AssessmentPtr base = assess(plan, prices);
    return withCuts(plan, base, prices, CutSolver().solve(cutJobs(plan, prices, *base)));
}

std::int64_t boardsMinor(const Assessment& assessment)
{
    std::int64_t minor = 0;
    for (const SheetCutsPtr& one : assessment.cuts->sheets) {
        if (one->job.item.rfind("mould_board", 0) == 0) minor += one->sheetsMinor + one->cutsMinor;
    }
    return minor;
}

int daysOf(const Assessment& assessment)
{
    int days = 1;
    for (const PourDay& day : assessment.pour.days) days += day.afterDays;
    return days;
}

/// What an option says is what its plan gives when it is assessed for itself.
TEST(MouldSavings, OptionsOfTheLargeSampleAreTrueOfTheirPlans)
{
    const PriceBook prices = exampleBook();
    const Plan plan = test::sample("two-level-bar");
    const AssessmentPtr now = assessed(plan, prices);
    const std::optional<MouldSavings> savings = mouldSavings(plan, prices, *now);
    ASSERT_TRUE(savings);
    ASSERT_FALSE(savings->sharing.groups.empty());
    EXPECT_EQ(savings->sharing.days, daysOf(*now));
    int tried = 0;
    for (const SharingGroup& group : savings->sharing.groups) {
        for (const SharingOption& option : group.options) {
            if (tried >= 2) break;
            ++tried;
            const AssessmentPtr after = assessed(option.after, prices);
            EXPECT_EQ(option.days, daysOf(*after));
            ASSERT_TRUE(option.savesMinor);
            EXPECT_EQ(*option.savesMinor, boardsMinor(*now) - boardsMinor(*after));
            EXPECT_GT(option.savesM2, 0.0);
            // Mostly more; but where castings wait for a mould, others go first, which may also gain a day.
            EXPECT_EQ(option.moreDays, option.days - daysOf(*now));
        }
    }
    EXPECT_EQ(tried, 2);
}

TEST(MouldSavings, OldBoardsComeOutOfWhatIsFreeAndAreWantedOnce)
{
    const PriceBook prices = exampleBook();
    for (const std::string& name : test::kSamples) {
        SCOPED_TRACE(name);
        Plan plan = test::sample(name);
        if (!plan.pouring) plan.pouring = Pouring{};
        plan.pouring->moulds = 2;  // so that there are many days
        const AssessmentPtr now = assessed(plan, prices);
        const LaterBoards later = laterBoards(plan, now->moulds, now->pour);
        EXPECT_FALSE(later.cuts.empty());
        std::map<std::string, int> made;
        for (const MouldPtr& mould : now->moulds) {
            for (const MouldPart& part : mould->parts) made[part.name] = part.count;
        }
        const auto places = pourPlaces(now->pour);
        std::set<std::string> cutNames;
        for (const LaterCut& cut : later.cuts) {
            EXPECT_LT(places.at(cut.casting).calendarDay, cut.freeDay);
            EXPECT_LE(cut.freeDay, cut.day);
            for (const LaterPiece& piece : cut.pieces) {
                EXPECT_EQ(places.at(piece.casting).calendarDay, cut.day + 1);
                EXPECT_LE(later.countOf(piece.name), made.at(piece.name));
            }
        }
        const CutJobs jobs = cutJobs(plan, prices, *now);
        const auto boardsM2 = [](const CutJobs& of) {
            double m2 = 0.0;
            for (const SheetJob& job : of.sheets) {
                if (job.item.rfind("mould_board", 0) != 0) continue;
                for (const SheetPiece& piece : job.list.pieces)
                    m2 += piece.count * piece.size.width * piece.size.depth * 1e-6;
            }
            return m2;
        };
        EXPECT_NEAR(boardsM2(jobs) - boardsM2(withoutLater(jobs, later)), later.savesM2, 1e-6);
    }
}

TEST(MouldSavings, OverBudgetSharingAMouldIsOfferedAndItsEditSaves)
{
    const PriceBook prices = exampleBook();
    Plan plan = test::sample("two-level-bar");
    const AssessmentPtr before = assessed(plan, prices);
    plan.budget = Budget{};
    plan.budget->limit = double(before->shopping.totalMinor) / 100 - 1;
    const AssessmentPtr now = assessed(plan, prices);
    const std::optional<MouldSavings> savings = mouldSavings(plan, prices, *now);
    ASSERT_TRUE(savings);
    const AssessmentPtr with = withMouldSavings(plan, now, *savings);
    const auto over = std::find_if(with->findings.begin(), with->findings.end(),
                                   [](const Finding& finding) { return finding.code == "over_budget"; });
    ASSERT_NE(over, with->findings.end());
    const auto remedy = std::find_if(over->remedies.begin(), over->remedies.end(),
                                     [](const Remedy& one) { return one.code == "share_mould"; });
    bool saves = false;
    for (const SharingGroup& group : savings->sharing.groups) {
        for (const SharingOption& option : group.options)
            saves = saves || (!option.worn && option.savesMinor.value_or(0) > 0);
    }
    ASSERT_EQ(remedy != over->remedies.end(), saves);
    if (saves) {
        const PlanReading after = applyPatch(plan, remedy->edit);
        ASSERT_TRUE(after.plan);
        EXPECT_LT(boardsMinor(*assessed(*after.plan, prices)), boardsMinor(*now));
    }

    const FindingWords words{[](const Finding& f) { return f.code; }, [](const Finding&) { return std::string(); },
                             [](const Remedy& r) { return r.code; }, [](const Remedy&) { return std::string(); }};
    const auto json = nlohmann::json::parse(assessmentJson(plan, *with, words, &*savings));
    ASSERT_EQ(json.at("mould").at("sharing").size(), savings->sharing.groups.size());
    EXPECT_EQ(json.at("mould").at("sharing").at(0).at("castings").size(), savings->sharing.groups[0].castings.size());
    EXPECT_TRUE(json.at("mould").at("later_boards").contains("saves_m2"));
    EXPECT_FALSE(nlohmann::json::parse(assessmentJson(plan, *now, words)).at("mould").contains("sharing"));
}

}  // namespace
}  // namespace yardcast
