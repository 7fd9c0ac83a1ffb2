#include "core/assess/strength_assessor.h"

#include <algorithm>
#include <atomic>
#include <functional>
#include <memory>
#include <new>

#include <gmock/gmock.h>

#include "core/assess/assess.h"
#include "core/plan/edits.h"
#include "tests/core/assess/plans_for_tests.h"

namespace yardcast {
namespace {

/// Counts what it is asked for; its answers carry nothing that a solver would have to find out.
struct Counting {
    std::shared_ptr<std::atomic<int>> calls = std::make_shared<std::atomic<int>>(0);
    CastingStrengthPtr operator()(const StrengthInput& input, Refinement refinement, CaseChoice choice,
                                  std::stop_token stop) const
    {
        if (stop.stop_requested()) return nullptr;
        ++*calls;
        auto answer = std::make_shared<CastingStrength>();
        answer->casting = input.casting->id;
        answer->part = input.casting->part;
        answer->refinement = refinement;
        if (choice.inUse) answer->cases.emplace_back().which = StrengthCase::inPlace;
        if (choice.handling) answer->cases.emplace_back().which = StrengthCase::tilt;
        return answer;
    }
};

Plan thickened(const Plan& plan, const std::string& id)
{
    Plan changed = plan;
    for (PartPtr& part : changed.parts) {
        if (part->id != id) continue;
        Part copy = *part;
        std::get<Counter>(copy.body).thicknessMm += 10.0;
        part = std::make_shared<const Part>(copy);
    }
    return changed;
}

std::string firstCounter(const Plan& plan)
{
    for (const PartPtr& part : plan.parts) {
        if (part->kind() == PartKind::counter) return part->id;
    }
    return {};
}

class StrengthAssessorTest : public testing::Test {
protected:
    Plan plan = test::samplePlan(test::sampleNames().back());
    Assessor bases{PriceBook()};
    AssessmentPtr base = bases.assess(plan);
    Counting solver;
    StrengthAssessor assessor{solver};

    int solved() const { return *solver.calls; }
};

TEST_F(StrengthAssessorTest, GivesOneForEachCastingInTheirOrder)
{
    const auto strength = assessor.assess(plan, *base, Refinement::working);
    ASSERT_TRUE(strength);
    ASSERT_EQ(strength->size(), base->castings.size());
    ASSERT_GT(strength->size(), 3u);
    for (std::size_t i = 0; i < strength->size(); ++i) {
        EXPECT_EQ((*strength)[i]->casting, base->castings[i].casting->id);
    }
}

TEST_F(StrengthAssessorTest, SolvesOnlyWhatChanged)
{
    const auto before = assessor.assess(plan, *base, Refinement::working);
    const int all = solved();
    EXPECT_EQ(all, static_cast<int>(base->castings.size()));
    EXPECT_EQ(assessor.assess(plan, *base, Refinement::working), before);
    EXPECT_EQ(solved(), all);

    const std::string id = firstCounter(plan);
    const Plan changed = thickened(plan, id);
    const AssessmentPtr changedBase = bases.assess(changed);
    const auto after = assessor.assess(changed, *changedBase, Refinement::working);
    ASSERT_TRUE(after);
    int others = 0;
    for (std::size_t i = 0; i < after->size(); ++i) {
        const bool same = (*after)[i] == (*before)[i];
        if ((*after)[i]->part == id) {
            EXPECT_FALSE(same);
        } else {
            others += same ? 1 : 0;
        }
    }
    // A thicker counter weighs more on its supports; everything else is as before.
    EXPECT_GE(others, 1);
    EXPECT_LT(solved(), 2 * all);

    // Undo: known from before.
    const int calls = solved();
    EXPECT_EQ(assessor.assess(plan, *base, Refinement::working), before);
    EXPECT_EQ(solved(), calls);
}

TEST_F(StrengthAssessorTest, KeepsFinenessAndCasesApart)
{
    const auto fine = assessor.assess(plan, *base, Refinement::working);
    const auto coarse = assessor.assess(plan, *base, Refinement::draft, {.inUse = true, .handling = false});
    ASSERT_TRUE(coarse);
    EXPECT_NE(coarse->front(), fine->front());
    EXPECT_EQ(coarse->front()->refinement, Refinement::draft);
    EXPECT_EQ(coarse->front()->cases.size(), 1u);
}

TEST_F(StrengthAssessorTest, TakesAFinerAnswerWhereOneIsKnown)
{
    const auto fine = assessor.assess(plan, *base, Refinement::working);
    const int all = solved();
    EXPECT_EQ(assessor.assessAtLeast(plan, *base, Refinement::draft, {.inUse = true, .handling = false}), fine);
    EXPECT_EQ(solved(), all);

    StrengthAssessor fresh{solver};
    const auto coarse = fresh.assess(plan, *base, Refinement::draft, {.inUse = true, .handling = false});
    // Neither coarser nor fewer cases will do.
    const auto finer = fresh.assessAtLeast(plan, *base, Refinement::working, {.inUse = true, .handling = false});
    EXPECT_NE(finer->front(), coarse->front());
    const auto more = fresh.assessAtLeast(plan, *base, Refinement::draft);
    EXPECT_NE(more->front(), coarse->front());
    EXPECT_EQ(more->front()->cases.size(), 2u);
}

TEST_F(StrengthAssessorTest, ADragDoesNotPushOutTheFineAnswer)
{
    const auto fine = assessor.assess(plan, *base, Refinement::working);
    Plan moving = plan;
    for (int step = 0; step < 20; ++step) {
        moving = thickened(moving, firstCounter(plan));
        ASSERT_TRUE(assessor.assess(moving, *bases.assess(moving), Refinement::draft));
    }
    const int calls = solved();
    EXPECT_EQ(assessor.assess(plan, *base, Refinement::working), fine);
    EXPECT_EQ(solved(), calls);
}

TEST_F(StrengthAssessorTest, GivesNothingWhenStopped)
{
    std::stop_source source;
    source.request_stop();
    EXPECT_FALSE(assessor.assess(plan, *base, Refinement::working, {}, source.get_token()));
    EXPECT_EQ(solved(), 0);
}

TEST_F(StrengthAssessorTest, KeepsWhatWasDoneBeforeTheStop)
{
    std::stop_source source;
    std::atomic<int> calls = 0;
    StrengthAssessor stopping{[&](const StrengthInput& input, Refinement refinement, CaseChoice choice,
                                  std::stop_token) {
        if (++calls == 2) source.request_stop();
        return Counting()(input, refinement, choice, {});
    }};
    EXPECT_FALSE(stopping.assess(plan, *base, Refinement::working, {}, source.get_token()));
    const int first = calls;
    EXPECT_LE(first, 3);
    ASSERT_TRUE(stopping.assess(plan, *base, Refinement::working));
    EXPECT_EQ(calls, static_cast<int>(base->castings.size()));
}

TEST_F(StrengthAssessorTest, PassesOnWhatASolverThrows)
{
    std::atomic<int> calls = 0;
    StrengthAssessor failing{[&](const StrengthInput&, Refinement, CaseChoice, std::stop_token) -> CastingStrengthPtr {
        if (++calls > 1) throw std::bad_alloc();
        return nullptr;
    }};
    EXPECT_THROW(failing.assess(plan, *base, Refinement::working), std::bad_alloc);
}

Finding finding(const char* code, Severity severity, std::vector<std::string> subjects)
{
    Finding made;
    made.code = code;
    made.severity = severity;
    made.subjects = std::move(subjects);
    return made;
}

CastingStrengthPtr strengthWith(const PlacedCasting& placed, std::vector<Finding> findings)
{
    auto strength = std::make_shared<CastingStrength>();
    strength->casting = placed.casting->id;
    strength->part = placed.casting->part;
    strength->findings = std::move(findings);
    return strength;
}

TEST_F(StrengthAssessorTest, MergesFindingsInOrderWithPointersFromTheTop)
{
    const PlacedCasting& last = base->castings.back();
    const PlacedCasting& first = base->castings.front();
    const Finding stop = finding("strength_a", Severity::stop, {last.casting->id});
    Finding caution = finding("strength_b", Severity::caution, {first.casting->id, first.casting->part});
    caution.pointer = "/cutouts/0";
    const AssessmentPtr whole =
        withStrength(plan, base, {strengthWith(last, {stop}), nullptr, strengthWith(first, {caution})});
    ASSERT_EQ(whole->findings.size(), base->findings.size() + 2);
    EXPECT_TRUE(std::ranges::is_sorted(whole->findings, std::greater(), &Finding::severity));
    // In the order of the castings, whatever the order they were given in.
    ASSERT_EQ(whole->strength.size(), 2u);
    EXPECT_EQ(whole->strength.front()->casting, first.casting->id);
    EXPECT_EQ(whole->strengthOf(last.casting->id), whole->strength.back().get());
    EXPECT_EQ(whole->strengthOf("nothing"), nullptr);

    const auto found = [&](const char* code) {
        return *std::ranges::find(whole->findings, code, &Finding::code);
    };
    const auto pointer = [&](const PlacedCasting& placed) {
        return "/parts/" + std::to_string(indexOfPart(plan, placed.casting->part));
    };
    EXPECT_EQ(found("strength_a").pointer, pointer(last));
    EXPECT_EQ(found("strength_b").pointer, pointer(first) + "/cutouts/0");
    // What was known before is as it was.
    EXPECT_TRUE(base->strength.empty());
    std::vector<Finding> rest = whole->findings;
    std::erase_if(rest, [](const Finding& one) { return one.code.starts_with("strength_"); });
    EXPECT_EQ(rest, base->findings);
}

TEST_F(StrengthAssessorTest, SaysOnceWhatAllUprightsPressWith)
{
    const PlacedCasting& last = base->castings.back();
    const PlacedCasting& first = base->castings.front();
    const auto pressing = [&](const PlacedCasting& placed, Severity severity, double kpa) {
        Finding made = finding("ground_pressure", severity, {placed.casting->id});
        made.values["pressure_kpa"] = kpa;
        return made;
    };
    const auto said = [](const AssessmentPtr& whole) {
        std::vector<Finding> found = whole->findings;
        std::erase_if(found, [](const Finding& one) { return one.code != "ground_pressure"; });
        return found;
    };
    const auto notes = said(withStrength(plan, base, {strengthWith(first, {pressing(first, Severity::note, 60)}),
                                                      strengthWith(last, {pressing(last, Severity::note, 90)})}));
    ASSERT_EQ(notes.size(), 1u);
    EXPECT_THAT(notes[0].subjects, testing::ElementsAre(first.casting->id, last.casting->id));
    EXPECT_EQ(std::get<double>(notes[0].values.at("pressure_kpa")), 90);
    EXPECT_EQ(notes[0].pointer, "/parts/" + std::to_string(indexOfPart(plan, last.casting->part)));
    // A caution is not lost among notes.
    EXPECT_EQ(said(withStrength(plan, base, {strengthWith(first, {pressing(first, Severity::note, 60)}),
                                             strengthWith(last, {pressing(last, Severity::caution, 200)})}))
                  .size(),
              2u);
}

TEST_F(StrengthAssessorTest, LeavesOutWhatIsNoLongerThere)
{
    auto gone = std::make_shared<CastingStrength>();
    gone->casting = "C99";
    gone->part = "C99";
    gone->findings = {finding("strength_a", Severity::stop, {"C99"})};
    const AssessmentPtr whole = withStrength(plan, base, {gone});
    EXPECT_TRUE(whole->strength.empty());
    EXPECT_EQ(whole->findings, base->findings);
}

CastingStrengthPtr strengthOfCases(std::vector<StrengthCase> cases, double use)
{
    auto strength = std::make_shared<CastingStrength>();
    strength->casting = "C1";
    for (const StrengthCase which : cases) {
        CaseResult& one = strength->cases.emplace_back();
        one.which = which;
        one.usePercent = use;
        strength->steel.emplace_back().which = which;
        Finding about = finding(strengthCaseWord(which), Severity::caution, {"C1"});
        about.values["case"] = std::string(strengthCaseWord(which));
        about.values["use"] = use;
        strength->findings.push_back(about);
    }
    return strength;
}

TEST(CompletedFrom, TakesOnlyWhatIsMissing)
{
    const auto older = strengthOfCases({StrengthCase::ownWeight, StrengthCase::inPlace, StrengthCase::tilt}, 1.0);
    const auto newer = strengthOfCases({StrengthCase::ownWeight, StrengthCase::inPlace}, 2.0);
    const CastingStrengthPtr whole = completedFrom(newer, older);
    ASSERT_EQ(whole->cases.size(), 3u);
    EXPECT_EQ(whole->find(StrengthCase::ownWeight)->usePercent, 2.0);
    EXPECT_EQ(whole->find(StrengthCase::tilt)->usePercent, 1.0);
    EXPECT_TRUE(std::ranges::is_sorted(whole->cases, {}, &CaseResult::which));
    EXPECT_EQ(whole->steel.size(), 3u);
    ASSERT_EQ(whole->findings.size(), 3u);
    EXPECT_EQ(std::get<double>(whole->findings.front().values.at("use")), 2.0);
    EXPECT_EQ(whole->findings.back().code, "tilt");
}

TEST(CompletedFrom, KeepsWhatNamesNoCaseUnlessItWasFoundAgain)
{
    auto older = std::make_shared<CastingStrength>(
        *strengthOfCases({StrengthCase::inPlace, StrengthCase::tilt}, 1.0));
    older->findings.push_back(finding("bearing", Severity::caution, {"C1"}));
    older->findings.push_back(finding("curls", Severity::note, {"C1"}));
    auto newer = std::make_shared<CastingStrength>(*strengthOfCases({StrengthCase::tilt}, 2.0));
    newer->findings.push_back(finding("curls", Severity::note, {"C1"}));
    const CastingStrengthPtr whole = completedFrom(newer, older);
    std::vector<std::string> codes;
    for (const Finding& one : whole->findings) codes.push_back(one.code);
    EXPECT_THAT(codes, testing::UnorderedElementsAre("tilt", "curls", "in_place", "bearing"));
}

TEST(CompletedFrom, GivesTheNewOneWhereNothingIsMissing)
{
    const auto older = strengthOfCases({StrengthCase::ownWeight}, 1.0);
    const auto newer = strengthOfCases({StrengthCase::ownWeight, StrengthCase::tilt}, 2.0);
    EXPECT_EQ(completedFrom(newer, older), newer);
    EXPECT_EQ(completedFrom(newer, nullptr), newer);
    auto other = std::make_shared<CastingStrength>(*strengthOfCases({StrengthCase::suction}, 1.0));
    other->casting = "C2";
    EXPECT_EQ(completedFrom(newer, other), newer);
}

}  // namespace
}  // namespace yardcast
