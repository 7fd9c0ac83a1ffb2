#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "core/purchase/later_boards.h"
#include "tests/core/purchase/mould_fixture.h"
#include "tests/property/random_plan.h"

namespace yardcast {
namespace {

using mould_fixture::plainMould;
using mould_fixture::pourOn;
using mould_fixture::shared;

Plan planWith(const std::vector<std::string>& ids)
{
    Plan plan;
    for (const std::string& id : ids) plan.parts.push_back(pour_fixture::slab(id, 20));
    return plan;
}

TEST(LaterBoards, ALargeBaseBecomesASmallerOneAndThenSides)
{
    const Plan plan = planWith({"A", "B", "C"});
    const std::vector<MouldPtr> moulds{shared(plainMould("A", 1600, 700)), shared(plainMould("B", 900, 400)),
                                       shared(plainMould("C", 500, 150))};
    // A lies till day 3 at nine, is sawn the day before B is poured, and so is B for C.
    const LaterBoards later = laterBoards(plan, moulds, pourOn({{"A", 1}, {"B", 5}, {"C", 9}}));
    ASSERT_FALSE(later.cuts.empty());
    const LaterCut& first = later.cuts[0];
    EXPECT_EQ(first.board, "A-1");
    EXPECT_EQ(first.freeDay, 3);
    EXPECT_EQ(first.day, 4);
    EXPECT_DOUBLE_EQ(first.clean.width, 1600 - 2 * kOldEdgeMm);
    EXPECT_DOUBLE_EQ(first.clean.depth, 700 - 2 * kOldEdgeMm);
    EXPECT_DOUBLE_EQ(first.cleanAt.x, kOldEdgeMm);
    EXPECT_EQ(later.countOf("B-1"), 1);
    EXPECT_TRUE(std::any_of(later.cuts.begin(), later.cuts.end(), [](const LaterCut& cut) { return cut.day == 8; }));
    EXPECT_EQ(later.countOf("C-1"), 1);
    EXPECT_EQ(later.countOf("A-1"), 0);
    double m2 = 0.0;
    for (const LaterCut& cut : later.cuts) {
        for (const LaterPiece& piece : cut.pieces) m2 += piece.size.width * piece.size.depth * 1e-6;
    }
    EXPECT_NEAR(later.savesM2, m2, 1e-12);
}

TEST(LaterBoards, NothingIsSawnBeforeItIsFree)
{
    const Plan plan = planWith({"A", "B"});
    const std::vector<MouldPtr> moulds{shared(plainMould("A", 1600, 700)), shared(plainMould("B", 900, 400))};
    EXPECT_TRUE(laterBoards(plan, moulds, pourOn({{"A", 1}, {"B", 1}})).cuts.empty());
    EXPECT_TRUE(laterBoards(plan, moulds, pourOn({{"A", 1}, {"B", 3}})).cuts.empty());   // free that very morning
    EXPECT_FALSE(laterBoards(plan, moulds, pourOn({{"A", 1}, {"B", 4}})).cuts.empty());

    // 15 of 25 MPa of C25/30 at 20 deg C: 3.0232 / 0.9981 days (EN 1992-1-1 eq. 3.2, B.10), so day 4 in the forenoon.
    Plan slow = plan;
    slow.mixes = {pour_fixture::mixNamed("body")};
    slow.mixes.front().bag.waterL = 1.8;  // the class stands: 0.43
    slow.conditions.airC = 20;
    EXPECT_TRUE(laterBoards(slow, moulds, pourOn({{"A", 1}, {"B", 4}})).cuts.empty());
    EXPECT_FALSE(laterBoards(slow, moulds, pourOn({{"A", 1}, {"B", 5}})).cuts.empty());

    Plan sharing = plan;
    sharing.parts.push_back(pour_fixture::slab("A2", 20));
    sharing.moulding = Moulding{};
    sharing.moulding->shared = {{{"A", "A2"}, {}}};
    std::vector<MouldPtr> three = moulds;
    three.push_back(shared(plainMould("A2", 1600, 700)));
    // The base of A serves A2 on the third day and is free on the fifth.
    EXPECT_TRUE(laterBoards(sharing, three, pourOn({{"A", 1}, {"A2", 3}, {"B", 4}})).cuts.empty());
    const LaterBoards later = laterBoards(sharing, three, pourOn({{"A", 1}, {"A2", 3}, {"B", 6}}));
    ASSERT_FALSE(later.cuts.empty());
    EXPECT_EQ(later.cuts[0].freeDay, 5);
    EXPECT_EQ(later.cuts[0].uses, 2);
    EXPECT_EQ(later.countOf("A2-1"), 0);
}

TEST(LaterBoards, WhereAFormerStoodNothingIsTaken)
{
    const Plan plan = planWith({"A", "B"});
    Mould a = plainMould("A", 1600, 700);
    a.inside = subtract(a.inside, regionOf({{700, 100}, {1500, 100}, {1500, 600}, {700, 600}}));
    const LaterBoards later =
        laterBoards(plan, {shared(a), shared(plainMould("B", 400, 300))}, pourOn({{"A", 1}, {"B", 9}}));
    ASSERT_FALSE(later.cuts.empty());
    // Left of the cutout: from 15 to 700 less 15, all the depth.
    EXPECT_NEAR(later.cuts[0].clean.width, 700 - 2 * kOldEdgeMm, 1e-3);
    EXPECT_NEAR(later.cuts[0].clean.depth, 700 - 2 * kOldEdgeMm, 1e-3);
    a.screws.foam = 12;
    const std::vector<MouldPtr> drilled{shared(a), shared(plainMould("B", 400, 300))};
    EXPECT_TRUE(laterBoards(plan, drilled, pourOn({{"A", 1}, {"B", 9}})).cuts.empty());
}

TEST(LaterBoards, AWornFaceServesOnlyWhatIsNotSeen)
{
    Plan plan = planWith({"A", "B"});
    plan.assumptions = Assumptions{};
    plan.assumptions->mouldSurface = MouldSurface::rough;  // stands two uses
    plan.moulding = Moulding{};
    std::vector<std::pair<std::string, int>> pours{{"A", 1}};
    SharedMould list{{"A"}, {}};
    std::vector<MouldPtr> moulds{shared(plainMould("A", 1600, 700))};
    plan.parts.push_back(pour_fixture::slab("A2", 20));
    list.castings.push_back("A2");
    moulds.push_back(shared(plainMould("A2", 1600, 700)));
    pours.push_back({"A2", 4});
    plan.moulding->shared = {list};
    Mould b = plainMould("B", 900, 400);
    mould_fixture::addBoard(b, MouldPartKind::former, 300, 200, false, 3);
    moulds.push_back(shared(b));
    pours.push_back({"B", 12});
    const LaterBoards later = laterBoards(plan, moulds, pourOn(pours));
    EXPECT_EQ(later.countOf("B-1"), 0);
    EXPECT_EQ(later.countOf("B-4"), 3);
}

TEST(LaterBoards, JobsLoseWhatComesOutOfOldBoards)
{
    CutJobs jobs;
    SheetJob job;
    job.item = "mould_board";
    for (const auto& [name, count] : std::vector<std::pair<std::string, int>>{{"B-1", 1}, {"B-2", 2}, {"A-1", 1}}) {
        job.pieces.push_back({"B", name, "side", true, false});
        job.list.pieces.push_back({name, {100, 50}, count, true});
    }
    jobs.sheets = {job};
    LaterBoards later;
    later.cuts.push_back({});
    later.cuts[0].pieces = {{"B-1", "B", MouldPartKind::base, {}, {100, 50}},
                            {"B-2", "B", MouldPartKind::side, {}, {50, 100}}};
    const CutJobs left = withoutLater(jobs, later);
    ASSERT_EQ(left.sheets.size(), 1u);
    ASSERT_EQ(left.sheets[0].pieces.size(), 2u);
    EXPECT_EQ(left.sheets[0].pieces[0].name, "B-2");
    EXPECT_EQ(left.sheets[0].list.pieces[0].count, 1);
    EXPECT_EQ(left.sheets[0].pieces[1].name, "A-1");
}

/// No board is in two places at one time: what is sawn out of one base lies apart in it, saw width between, within its
/// clean part, on a day after it is free and before it is wanted; no board is made twice.
TEST(LaterBoards, NoBoardIsUsedTwiceAtOneTime)
{
    int cuts = 0;
    for (const std::uint32_t seed : random::seeds(60)) {
        SCOPED_TRACE(seed);
        random::Source source(seed);
        const int count = 3 + int(source.below(9));
        std::vector<std::string> ids;
        std::vector<MouldPtr> moulds;
        std::vector<std::pair<std::string, int>> pours;
        std::map<std::string, int> pourDay;
        std::map<std::string, int> made;
        int day = 1;
        for (int i = 0; i < count; ++i) {
            const std::string id = "P" + std::to_string(i);
            ids.push_back(id);
            Mould mould = plainMould(id, source.between(200, 2200, 10), source.between(150, 800, 10));
            if (source.chance(40)) mould_fixture::addBoard(mould, MouldPartKind::former, 300, 200, false, 2);
            for (const MouldPart& part : mould.parts) made[part.name] = part.count;
            moulds.push_back(shared(std::move(mould)));
            day += int(source.below(4));
            pours.push_back({id, day});
            pourDay[id] = day;
        }
        const LaterBoards later = laterBoards(planWith(ids), moulds, pourOn(pours));
        std::map<std::string, std::vector<LaterPiece>> outOf;
        std::map<std::string, int> out;
        for (const LaterCut& cut : later.cuts) {
            ++cuts;
            EXPECT_GE(cut.day, cut.freeDay);
            EXPECT_GE(cut.freeDay, pourDay.at(cut.casting) + 2);
            for (const LaterPiece& piece : cut.pieces) {
                EXPECT_EQ(cut.day, pourDay.at(piece.casting) - 1);
                EXPECT_GE(piece.at.x, -1e-3);
                EXPECT_GE(piece.at.y, -1e-3);
                EXPECT_LE(piece.at.x + piece.size.width, cut.clean.width + 1e-3);
                EXPECT_LE(piece.at.y + piece.size.depth, cut.clean.depth + 1e-3);
                for (const LaterPiece& other : outOf[cut.board]) {
                    const double gapX = std::max(piece.at.x - other.at.x - other.size.width,
                                                 other.at.x - piece.at.x - piece.size.width);
                    const double gapY = std::max(piece.at.y - other.at.y - other.size.depth,
                                                 other.at.y - piece.at.y - piece.size.depth);
                    // Lengths count in thousandths of a millimetre.
                    EXPECT_GE(std::max(gapX, gapY), kHomeSawMm - 2e-3);
                }
                outOf[cut.board].push_back(piece);
                ++out[piece.name];
            }
        }
        for (const auto& [name, number] : out) EXPECT_LE(number, made.at(name)) << name;
    }
    EXPECT_GT(cuts, 40);
}

}  // namespace
}  // namespace yardcast
