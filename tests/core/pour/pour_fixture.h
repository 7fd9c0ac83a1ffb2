#pragma once

#include <memory>
#include <string>
#include <vector>

#include "core/castings/casting.h"
#include "core/pour/pour_plan.h"

/// Plans to pour, made in the test.
namespace yardcast::pour_fixture {

inline Mix mixNamed(const std::string& id, double allowancePercent = 8.0)
{
    Mix mix;
    mix.id = id;
    mix.allowancePercent = allowancePercent;
    return mix;
}

/// A slab of so many litres, one whole layer: 1 m deep from front to back, 50 mm thick.
inline PartPtr slab(const std::string& id, double litres, const std::string& mix = "body")
{
    Part part;
    part.id = id;
    Counter counter;
    const double widthMm = litres / 0.05;  // litres are mm over 1 m x 1 mm
    counter.outline = {{0, 0}, {widthMm, 0}, {widthMm, 1000}, {0, 1000}};
    counter.thicknessMm = 50;
    counter.mix = mix;
    part.body = counter;
    return std::make_shared<const Part>(part);
}

inline std::vector<CastingPtr> castingsOfPlan(const Plan& plan)
{
    std::vector<CastingPtr> castings;
    for (const PartPtr& part : plan.parts) {
        for (const CastingPtr& casting : castingsOf(*part)) castings.push_back(casting);
    }
    return castings;
}

/// As `mixQuantities` would have them, but with batches of just so many litres.
inline std::vector<MixQuantities> quantitiesOf(const Plan& plan, const std::vector<CastingPtr>& castings, double batchL)
{
    std::vector<MixQuantities> all;
    for (const Mix& mix : plan.mixes) {
        MixQuantities q;
        q.mix = mix.id;
        q.litresPerBag = batchL;
        q.bagsPerBatch = 1;
        q.freshDensityKgM3 = 2300;
        for (const CastingPtr& casting : castings) {
            if (casting->mix != mix.id) continue;
            q.castingLitres.emplace_back(casting->id, casting->volumeL * (1 + mix.allowancePercent / 100));
            q.netL += casting->volumeL;
            q.volumeL += q.castingLitres.back().second;
        }
        if (!q.castingLitres.empty()) all.push_back(std::move(q));
    }
    return all;
}

/// The same working time at every hour.
inline PourWeather evenWeather(double workingMinutes)
{
    PourWeather weather;
    for (int h = 0; h < 24; ++h) weather.hours.push_back({static_cast<double>(h), 20, 60, 20, 0.3, workingMinutes});
    weather.workingMinutes = workingMinutes;
    return weather;
}

struct Poured {
    std::vector<CastingPtr> castings;
    std::vector<MixQuantities> quantities;
    PourPlan pour;
    std::vector<Finding> findings;

    const Finding* find(const std::string& code) const
    {
        for (const Finding& finding : findings) {
            if (finding.code == code) return &finding;
        }
        return nullptr;
    }
    std::vector<std::string> order() const
    {
        std::vector<std::string> ids;
        for (const PourDay& day : pour.days) {
            for (const PouredCasting& casting : day.castings) ids.push_back(casting.casting);
        }
        return ids;
    }
};

inline Poured poured(const Plan& plan, const PourWeather& weather, double batchL = 20.0)
{
    Poured result;
    result.castings = castingsOfPlan(plan);
    result.quantities = quantitiesOf(plan, result.castings, batchL);
    result.pour = pourPlan(plan, result.castings, result.quantities, weather, result.findings);
    return result;
}

/// Mixer of `batchMinutes` and slabs of body; what a batch holds is told to `poured`.
inline Plan planOf(std::vector<PartPtr> parts, double batchMinutes = 10.0, double allowancePercent = 0.0)
{
    Plan plan;
    plan.mixes = {mixNamed("body", allowancePercent), mixNamed("worktop", allowancePercent)};
    plan.mixer = Mixer{};
    plan.mixer->batchMinutes = batchMinutes;
    plan.pouring = Pouring{};
    plan.parts = std::move(parts);
    return plan;
}

}  // namespace yardcast::pour_fixture
