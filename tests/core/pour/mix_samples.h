#pragma once

#include <memory>
#include <string>

#include "core/castings/casting.h"
#include "core/plan/plan.h"

/// Mixes of our own invention for tests of core/pour.
namespace yardcast {

inline Mix bagMix()
{
    Mix mix;
    mix.id = "worktop";
    mix.bag = Bag{25, 12.0, 2.6, 4.2, 8, {}, 4, {}};
    mix.extraCementPercent = 4;
    mix.silicaFumePercent = 8;
    mix.plasticiserPercent = 1;
    mix.pigmentPercent = 2;
    mix.fibres = {Fibre{"AR glass", 3, {}}, Fibre{"PP", 0.9, {}}};
    return mix;
}

inline Mix recipeMix()
{
    Mix mix;
    mix.id = "own";
    Recipe recipe;
    recipe.cementKgM3 = 400;
    recipe.waterLM3 = 180;
    recipe.sandPercent = 50;
    recipe.sand = Aggregate{2640, 0.7, 5, {}};
    recipe.gravel = Aggregate{2680, 0.5, 2, {}};
    mix.recipe = recipe;
    mix.silicaFumePercent = 5;
    mix.plasticiserPercent = 0.8;
    mix.pigmentPercent = 3;
    mix.fibres = {Fibre{"PP", 0.9, {}}};
    return mix;
}

inline CastingPtr castingOf(const std::string& id, double litres, const std::string& mix)
{
    auto casting = std::make_shared<Casting>();
    casting->id = id;
    casting->part = id;
    casting->mix = mix;
    casting->volumeL = litres;
    casting->zones = {{ZoneKind::field, {}, 0, 50}};
    return casting;
}

}  // namespace yardcast
