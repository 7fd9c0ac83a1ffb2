#pragma once

#include <cmath>
#include <memory>
#include <string>
#include <utility>
#include <vector>

#include "core/structure/handled_body.h"
#include "core/structure/handling_cases.h"

/// Pieces for the tests of handling, through the same door as the program's: a plan of one part.
namespace yardcast {

inline constexpr const char* kMixId = "m";

inline StrengthInput inputOf(Part part, int people = 4)
{
    Plan plan;
    Mix mix;
    mix.id = kMixId;
    mix.bag.waterL = 1.8;  // a ratio that its class stands by
    plan.mixes.push_back(mix);
    plan.crew.people = people;
    plan.parts.push_back(std::make_shared<const Part>(std::move(part)));
    return strengthInputs(plan, castingsOf(*plan.parts.front())).front();
}

inline StrengthInput inputOf(Counter counter, int people = 4)
{
    counter.mix = kMixId;
    Part part;
    part.id = "C1";
    part.body = std::move(counter);
    return inputOf(std::move(part), people);
}

/// A plain slab.
inline Counter slab(double lengthMm, double widthMm, double thicknessMm)
{
    Counter counter;
    counter.outline = {{0, 0}, {lengthMm, 0}, {lengthMm, widthMm}, {0, widthMm}};
    counter.thicknessMm = thicknessMm;
    return counter;
}

/// With a rim of 60 x 60 mm and one opening off the middle.
inline Counter sinkSlab(double lengthMm, double widthMm, double centreMm)
{
    Counter counter = slab(lengthMm, widthMm, 38);
    counter.rim = Rim{};
    Cutout sink;
    sink.id = "K1";
    sink.purpose = CutoutPurpose::sink;
    sink.centre = {centreMm, widthMm / 2 - 40};
    sink.size = {460, 400};
    sink.cornerRadiusMm = 20;
    sink.rimMm = 60;
    counter.cutouts.push_back(sink);
    return counter;
}

inline HandlingAnswer handle(const StrengthInput& input, Refinement refinement = Refinement::working)
{
    auto answer = handlingCases(input, makeBody(input, refinement), refinement);
    return answer.value_or(HandlingAnswer{});
}

inline const CaseResult* caseIn(const HandlingAnswer& answer, StrengthCase which)
{
    for (const CaseResult& result : answer.cases) {
        if (result.which == which) return &result;
    }
    return nullptr;
}

/// Own weight as the solver counts it, N.
inline double weightN(const StrengthInput& input) { return input.casting->massKg * kGravityMS2; }

}  // namespace yardcast
