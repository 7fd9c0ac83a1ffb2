#include "core/structure/handling_cases.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/structure/handling_search.h"
#include "tests/core/structure/handling_samples.h"

namespace yardcast {
namespace {

using enum StrengthCase;

std::vector<StrengthCase> kinds(const HandlingAnswer& answer)
{
    std::vector<StrengthCase> all;
    for (const CaseResult& result : answer.cases) all.push_back(result.which);
    return all;
}

bool hasFinding(const HandlingAnswer& answer, const std::string& code)
{
    for (const Finding& finding : answer.findings) {
        if (finding.code == code) return true;
    }
    return false;
}

/// A load as the mesh has it: force towards the underside, and where it acts.
struct Resultant {
    double forceN = 0.0;
    Point at;
};

Resultant resultantOf(const HandledBody& handled, int load)
{
    const std::array<double, 6> sum = handled.free().resultant(load);
    return {-sum[2], {-sum[4] / sum[2], sum[3] / sum[2]}};
}

Resultant weightOf(const StrengthInput& input)
{
    const auto handled = HandledBody::make(makeBody(input, Refinement::working));
    return resultantOf(*handled, handled->weight());
}

Resultant suctionOf(const StrengthInput& input)
{
    const auto handled = HandledBody::make(makeBody(input, Refinement::working));
    return resultantOf(*handled, handled->suction());
}

/// Largest tension of a plain slab on two battens at these distances from its ends, times 1.3.
double onBattensMpa(const StrengthInput& input, double firstMm, double secondMm)
{
    const auto handled = HandledBody::make(makeBody(input, Refinement::printed));
    const double width = input.casting->boundsMm.height();
    std::vector<FreeBody::Place> places;
    for (const double x : {firstMm, secondMm}) {
        for (const Region& piece : stripPieces(input.casting->outline, {x, 0}, {x, width}, kBattenMm, 5)) {
            places.push_back(handled->bed(piece));
        }
    }
    handled->solveAdded();
    const auto state = handled->free().hold({{handled->weight(), 1.3}}, places, {});
    EXPECT_TRUE(state.holds);
    return handled->usesOf(state).faceUpPercent / 100 * handled->strengthMpa()[0];
}

TEST(Handling, TwoLineLiftAsByHand)
{
    // Two lines at 0.207 L make both moments 0.0214 w L2; by its ends w L2 / 8. For L 1.8 m, 50 mm, 25 kN/m3 and 1.3
    // that is 0.270 and 1.579 MPa. The solver's weight is 2400 kg/m3 x 9.81.
    const StrengthInput input = inputOf(slab(1800, 600, 50));
    const double weight = 2400 * 9.81 / 25000;
    // 4 %: a plate 600 wide bends a little more at its edges than a beam (Poisson), less over battens 50 wide.
    EXPECT_NEAR(onBattensMpa(input, 0.207 * 1800, 0.793 * 1800), 0.270 * weight, 0.04 * 0.270);
    // The battens' middles lie 25 mm inside: the moment is w L2 / 8 (1 - 4 x 25 / L).
    EXPECT_NEAR(onBattensMpa(input, 25, 1775), 1.579 * weight * (1 - 100.0 / 1800), 0.04 * 1.579);
}

TEST(Handling, SetDownIsAtTheFifthPointsWhereNothingElseIsKnown)
{
    const StrengthInput input = inputOf(slab(1800, 600, 50));
    const HandlingAnswer answer = handle(input);
    const CaseResult* down = caseIn(answer, setDown);
    ASSERT_NE(down, nullptr);
    ASSERT_EQ(down->held.size(), 2u);
    EXPECT_NEAR(down->held[0].centre.x, 0.207 * 1800, 1.0);
    EXPECT_NEAR(down->held[1].centre.x, 0.793 * 1800, 1.0);
    EXPECT_NEAR(std::max(down->tensionTopMpa, down->tensionBottomMpa), 0.270 * 2400 * 9.81 / 25000, 0.05 * 0.270);
    EXPECT_EQ(down->factor, 1.3);
    EXPECT_EQ(down->ageH, 48.0);
}

TEST(Handling, SetDownIsUnderTheRestsWhereThereAreTwo)
{
    StrengthInput input = inputOf(slab(1800, 600, 50));
    for (const double x : {150.0, 900.0, 1650.0}) {
        Rest rest;
        rest.under = "S";
        rest.footprint = rest.bearing = regionOf(rectangleRing({x, 300}, {60, 600}));
        rest.lengthMm = 60;
        input.rests.push_back(rest);
    }
    const HandlingAnswer answer = handle(input);
    const CaseResult* down = caseIn(answer, setDown);
    ASSERT_NE(down, nullptr);
    EXPECT_NEAR(down->held[0].centre.x, 150, 1.0);
    EXPECT_NEAR(down->held[1].centre.x, 1650, 1.0);
}

TEST(Handling, SuctionAddsToTheWeightOfAThinSlab)
{
    // 40 mm weigh 0.942 kPa; a coated mould holds with 1 kPa: 2.06 times the weight. Carried flat is the same lift
    // with 1.3 times the weight, so the ratio is exact for a plain slab.
    const StrengthInput input = inputOf(slab(1200, 600, 40));
    const HandlingAnswer answer = handle(input);
    const CaseResult* loose = caseIn(answer, suction);
    const CaseResult* flat = caseIn(answer, carriedFlat);
    ASSERT_TRUE(loose && flat);
    const double weightKpa = 0.040 * 2400 * 9.81 * 1e-3;
    const double ratio = (weightKpa + 1.0) / (1.3 * weightKpa);
    EXPECT_NEAR(loose->tensionTopMpa, ratio * (flat->faceUp ? flat->tensionBottomMpa : flat->tensionTopMpa),
                1e-6 * loose->tensionTopMpa);
    EXPECT_FALSE(loose->faceUp) << "it lies on its face in the mould";
    EXPECT_EQ(loose->suctionKpa, 1.0);
    EXPECT_EQ(loose->factor, 1.0);
}

TEST(Handling, TiltCarriesHalfOnItsEdgeAndBendsAcrossTheShortWay)
{
    // Edge line 5 mm from the edge, hands 40 mm inside the other: by statics of a beam across.
    const double width = 700;
    const StrengthInput input = inputOf(slab(1400, width, 40), 6);
    const auto handled = HandledBody::make(makeBody(input, Refinement::working));
    const auto edges = standingEdges(input.casting->outline);
    const auto isFront = [](const StandingEdge& e) { return e.inward().y > 0.9; };
    const auto front = std::find_if(edges.begin(), edges.end(), isFront);
    ASSERT_NE(front, edges.end());
    std::vector<FreeBody::Place> places = handled->edge(*front).places;
    const std::size_t pieces = places.size();
    for (int i = 0; i < 6; ++i) places.push_back(handled->hand({1400.0 * (i + 0.5) / 6, width - 40}, {1, 0}));
    handled->solveAdded();
    const auto state = handled->free().hold({{handled->weight(), 1.3}}, places, {});
    ASSERT_TRUE(state.holds);
    const double total = 1.3 * weightN(input);
    double onEdge = 0;
    for (std::size_t i = 0; i < pieces; ++i) onEdge += state.forceN[i];
    const double hands = total * (width / 2 - 5) / (width - 40 - 5);
    EXPECT_NEAR(onEdge, total - hands, 1e-6 * total);

    const NodeVector displacement = handled->free().displacement(state);
    const auto forces = handled->free().system().forces(displacement);
    // A hair beside the middle: a cut along an edge of the mesh lies in no triangle.
    const double y = width / 2 + 0.37;
    const auto middle = sectionForces(handled->body(), handled->free().system(), {displacement, {}, 0, true},
                                      stressField(handled->body(), forces), {{}, {0, y}, {1400, y}},
                                      handled->strengthMpa());
    ASSERT_TRUE(middle);
    const double perMm = total / width;
    const double byHand = (hands * (width - 40 - y) - perMm * (width - y) * (width - y) / 2) / 1400;
    // About w b2 / 8 of the width between the lines, less what hangs over. 2 %: finite elements.
    EXPECT_NEAR(middle->meanMomentN, byHand, 0.02 * byHand);
    EXPECT_NEAR(byHand, total / 1400 * width / 8, 0.2 * byHand);
}

TEST(Handling, OnEdgeIsFarKinderThanFlat)
{
    // The ratio is that of width to thickness for one way of holding (600 / 40 = 15); hands and spans differ, so more
    // than half of it is asked.
    const HandlingAnswer answer = handle(inputOf(slab(1800, 600, 40)));
    const CaseResult* edge = caseIn(answer, carriedOnEdge);
    const CaseResult* ends = caseIn(answer, cornerLate);
    ASSERT_TRUE(edge && ends);
    EXPECT_LT(edge->usePercent * 8, ends->usePercent);
    EXPECT_GT(edge->usePercent, 0.0);
    EXPECT_EQ(edge->edge, caseIn(answer, tilt)->edge);
}

TEST(Handling, OnEdgeBendsAsADeepBeam)
{
    // Two hands at 0.207 of 1800: 0.0214 w L2 over (thickness x 300^2 / 6). A wall three times as long as high bends
    // nearly as a beam; Navier's stresses are wrong by some 10 % there, and hands press locally.
    const StrengthInput input = inputOf(slab(1800, 300, 40), 2);
    const HandlingAnswer answer = handle(input);
    const CaseResult* edge = caseIn(answer, carriedOnEdge);
    ASSERT_NE(edge, nullptr);
    const double total = 1.3 * weightN(input);
    const double beamMpa = 0.0214 * total * 1800 / (40.0 * 300 * 300 / 6);
    const double tension = std::max(edge->tensionTopMpa, edge->tensionBottomMpa);
    EXPECT_NEAR(tension, beamMpa, 0.35 * beamMpa);
    EXPECT_NEAR(edge->tensionTopMpa, edge->tensionBottomMpa, 0.02 * tension) << "no bending out of its plane";
}

TEST(Handling, ACornerLetDownLateLeavesTheDiagonal)
{
    const StrengthInput input = inputOf(slab(1400, 600, 40));
    const HandlingAnswer answer = handle(input);
    const CaseResult* late = caseIn(answer, cornerLate);
    ASSERT_NE(late, nullptr);
    ASSERT_EQ(late->held.size(), 4u);
    const double total = 1.3 * weightN(input);
    std::vector<double> forces;
    for (const HeldAt& held : late->held) {
        forces.push_back(held.forceN);
        if (held.under == "late corner") {
            EXPECT_EQ(held.forceN, 0.0);
        }
    }
    std::sort(forces.begin(), forces.end());
    // The centre of gravity lies on the diagonal: the third of three points carries nothing.
    EXPECT_NEAR(forces[1], 0.0, 1e-6 * total);
    EXPECT_NEAR(forces[2], total / 2, 1e-6 * total);
    EXPECT_NEAR(forces[3], total / 2, 1e-6 * total);
    EXPECT_GT(late->usePercent, 1.3 * caseIn(answer, setDown)->usePercent);
}

TEST(Handling, ACornerOffTheDiagonalCarriesByThreePointStatics)
{
    const StrengthInput input = inputOf(sinkSlab(1500, 650, 600));
    const HandlingAnswer answer = handle(input);
    const CaseResult* late = caseIn(answer, cornerLate);
    ASSERT_NE(late, nullptr);
    std::vector<const HeldAt*> three;
    for (const HeldAt& held : late->held) {
        if (held.forceN > 0.0) three.push_back(&held);
    }
    ASSERT_EQ(three.size(), 3u);
    // Moments about the line of two of them, with the weight as the mesh has it.
    const Resultant weight = weightOf(input);
    const Point g = weight.at;
    for (int i = 0; i < 3; ++i) {
        const Point a = three[(i + 1) % 3]->centre;
        const Point b = three[(i + 2) % 3]->centre;
        const double share = cross(b - a, g - a) / cross(b - a, three[i]->centre - a);
        EXPECT_NEAR(three[i]->forceN, share * 1.3 * weight.forceN, 1e-6 * weight.forceN);
    }
}

TEST(Handling, EveryCaseIsInBalance)
{
    for (const Counter& counter : {sinkSlab(1500, 650, 600), slab(1100, 900, 50)}) {
        StrengthInput input = inputOf(counter);
        const HandlingAnswer answer = handle(input);
        EXPECT_THAT(kinds(answer),
                    testing::ElementsAre(suction, tilt, carriedFlat, carriedOnEdge, setDown, cornerLate));
        const Resultant weight = weightOf(input);
        const Resultant stuck = suctionOf(input);
        // The mesh follows arcs within a hundredth of a millimetre.
        EXPECT_NEAR(weight.forceN, weightN(input), 1e-9 * weight.forceN);
        EXPECT_LT(distance(weight.at, {input.casting->centroidMm[0], input.casting->centroidMm[1]}), 0.1);
        EXPECT_NEAR(stuck.forceN, 1e-3 * areaMm2(input.casting->outline), 5e-4 * stuck.forceN);
        for (const CaseResult& result : answer.cases) {
            SCOPED_TRACE(strengthCaseWord(result.which));
            ASSERT_TRUE(result.holds);
            const double loadN = result.factor * weight.forceN + result.suctionKpa * stuck.forceN;
            const Point loadMoment = weight.at * (result.factor * weight.forceN) +
                                     stuck.at * (result.suctionKpa * stuck.forceN);
            Point moment;
            double sum = 0.0;
            for (const HeldAt& held : result.held) {
                sum += held.forceN;
                moment = moment + held.centre * held.forceN;
            }
            EXPECT_NEAR(sum, loadN, 1e-9 * loadN);
            // In the plane the forces act along y only. 1e-6 of the slab's length: centres of regions are computed on
            // the lattice of booleans, 1e-4 mm.
            const double lengthMm = input.casting->boundsMm.width();
            if (result.which == carriedOnEdge) {
                EXPECT_NEAR(moment.x, loadMoment.x, 1e-6 * lengthMm * loadN);
            } else {
                EXPECT_LT(distance(moment, loadMoment), 1e-6 * lengthMm * loadN);
            }
        }
    }
}

TEST(Handling, CarriedFlatTakesTheWorseWayRound)
{
    // A rim makes the section unlike top and bottom: face down the thin side of it is pulled elsewhere than face up.
    const StrengthInput input = inputOf(sinkSlab(1500, 650, 600));
    const HandlingAnswer answer = handle(input);
    const CaseResult* flat = caseIn(answer, carriedFlat);
    ASSERT_NE(flat, nullptr);
    StrengthInput up = input;
    std::get<Counter>(up.body).cast = CounterCast::faceUp;
    up.grips = answer.grips;
    const HandlingAnswer faceUp = handle(up);
    const CaseResult* flatUp = caseIn(faceUp, carriedFlat);
    ASSERT_NE(flatUp, nullptr);
    EXPECT_TRUE(flatUp->faceUp);
    EXPECT_GE(flat->usePercent, flatUp->usePercent * (1 - 1e-9));
    EXPECT_TRUE(caseIn(faceUp, suction)->faceUp);
    EXPECT_TRUE(caseIn(faceUp, tilt)->faceUp);
}

TEST(Handling, TakesThePlansGrips)
{
    StrengthInput input = inputOf(slab(1800, 600, 40));
    input.grips = {{60, 100}, {60, 500}, {1740, 100}, {1740, 500}};
    const HandlingAnswer answer = handle(input);
    EXPECT_EQ(answer.grips, input.grips);
    EXPECT_FALSE(answer.gripsProposed);
    StrengthInput none = input;
    none.grips.clear();
    const HandlingAnswer proposed = handle(none);
    EXPECT_TRUE(proposed.gripsProposed);
    EXPECT_LT(caseIn(proposed, suction)->usePercent, 0.5 * caseIn(answer, suction)->usePercent)
        << "by its ends a long slab suffers far more";
}

TEST(Handling, TwoGripsAreTwoPeopleWithTwoHandsEach)
{
    StrengthInput input = inputOf(slab(1800, 600, 40), 2);
    input.grips = {{60, 300}, {1740, 300}};
    const HandlingAnswer answer = handle(input);
    const CaseResult* flat = caseIn(answer, carriedFlat);
    ASSERT_NE(flat, nullptr);
    EXPECT_TRUE(flat->holds);
    ASSERT_EQ(flat->held.size(), 4u);
    for (const HeldAt& held : flat->held) EXPECT_NEAR(held.forceN, 1.3 * weightN(input) / 4, 1e-6 * weightN(input));
}

TEST(Handling, WhatPressesHasNotLiftedOff)
{
    for (const CaseResult& result : handle(inputOf(slab(1800, 600, 40))).cases) {
        if (!result.holds) continue;
        for (const HeldAt& held : result.held) {
            EXPECT_EQ(held.liftedOff, held.forceN == 0.0) << strengthCaseWord(result.which) << ' ' << held.under;
        }
    }
}

TEST(Handling, GripsBesideTheWeightTip)
{
    StrengthInput input = inputOf(slab(1800, 600, 40));
    input.grips = {{60, 100}, {60, 500}, {600, 100}, {600, 500}};
    const HandlingAnswer answer = handle(input);
    const CaseResult* flat = caseIn(answer, carriedFlat);
    ASSERT_NE(flat, nullptr);
    EXPECT_FALSE(flat->holds);
    EXPECT_TRUE(hasFinding(answer, "grips_tip"));
}

TEST(Handling, SupportsAreTiltedAboutTheirBaseAndCarried)
{
    Support support;
    support.mix = kMixId;
    support.lengthMm = 600;
    support.heightMm = 840;
    Part part;
    part.id = "S1";
    part.body = support;
    const StrengthInput flat = inputOf(part, 2);
    const HandlingAnswer answer = handle(flat);
    EXPECT_THAT(kinds(answer), testing::ElementsAre(tilt, carriedFlat, carriedOnEdge));
    const CaseResult* tilted = caseIn(answer, tilt);
    ASSERT_NE(tilted, nullptr);
    EXPECT_NEAR(tilted->held.front().centre.y, kEdgeStripMm / 2, 1e-3) << "about its base";

    support.cast = UprightCast::upright;
    part.body = support;
    const HandlingAnswer upright = handle(inputOf(part, 2));
    EXPECT_THAT(kinds(upright), testing::ElementsAre(carriedOnEdge));
    EXPECT_TRUE(upright.grips.empty());
}

TEST(Handling, SaysWhatCracksAndHowSurely)
{
    StrengthInput input = inputOf(sinkSlab(1800, 620, 900));
    input.grips = {{40, 150}, {40, 470}, {1760, 150}, {1760, 470}};
    const HandlingAnswer answer = handle(input);
    int found = 0;
    for (const Finding& finding : answer.findings) {
        if (finding.code != "cracks_handling") continue;
        ++found;
        const double use = std::get<double>(finding.values.at("use_percent"));
        EXPECT_GT(use, 100.0);
        const bool loose = std::get<std::string>(finding.values.at("case")) == strengthCaseWord(suction);
        EXPECT_EQ(finding.severity, use > 150.0 && !loose ? Severity::stop : Severity::caution);
        EXPECT_NEAR(std::get<double>(finding.values.at("tension_mpa")),
                    use / 100 * std::get<double>(finding.values.at("strength_mpa")), 1e-9);
    }
    int over = 0;
    for (const CaseResult& result : answer.cases) over += result.usePercent > 100.0 ? 1 : 0;
    EXPECT_EQ(found, over);
    EXPECT_GT(found, 0);
    EXPECT_GT(caseIn(answer, suction)->usePercent, 150.0) << "no stop, since it can be tilted";
    EXPECT_LT(caseIn(answer, tilt)->usePercent, 100.0);
    EXPECT_TRUE(hasFinding(answer, "suction_strong")) << "tilting it is within its strength, lifting it flat is not";
}

TEST(Handling, IsStrongerLater)
{
    StrengthInput early = inputOf(slab(1500, 600, 40));
    early.liftAgeH = 24;
    StrengthInput late = early;
    late.liftAgeH = 96;
    const HandlingAnswer young = handle(early);
    const HandlingAnswer old = handle(late);
    const CaseResult* a = caseIn(young, suction);
    const CaseResult* b = caseIn(old, suction);
    ASSERT_TRUE(a && b);
    EXPECT_GT(a->usePercent, 1.3 * b->usePercent);
    EXPECT_LT(a->elasticMpa, b->elasticMpa);
    EXPECT_GT(a->deflectionMm, b->deflectionMm);
}

TEST(Handling, StopsWhenAsked)
{
    const StrengthInput input = inputOf(slab(1500, 600, 40));
    std::stop_source stop;
    stop.request_stop();
    EXPECT_FALSE(handlingCases(input, makeBody(input, Refinement::draft), Refinement::draft, stop.get_token()));
}

}  // namespace
}  // namespace yardcast
