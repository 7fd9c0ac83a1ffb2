#include "core/pour/mix_remedies.h"

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>

#include "core/io/number_text.h"
#include "core/io/patch_text.h"
#include "core/materials/materials.h"
#include "core/pour/charge.h"

namespace yardcast {

namespace {

/// Bounds of what is offered, our choice: more extra cement than this is another mix, and so is such a recipe.
constexpr int kMostExtraTenths = 300;
constexpr int kMostCementKgM3 = 600;

std::string setting(std::size_t index, const std::string& key, double value)
{
    return addPatch("/mixes/" + std::to_string(index) + "/" + key, shortestText(value));
}

bool keepsRatio(const Mix& mix, double mostRatio)
{
    return isUsable(mix) && ratiosOf(mix, chargeOf(mix)).waterBinderK <= mostRatio + 1e-9;
}

Mix withCement(Mix mix, int step)
{
    if (mix.recipe) {
        mix.recipe->cementKgM3 = step;
    } else {
        mix.extraCementPercent = step / 10.0;
    }
    return mix;
}

/// All water outside the pores of the grains, the plasticiser's and that on sand and gravel included.
double mostAllWaterL(const Mix& mix, double mostRatio) { return mostRatio * binderKKg(mix, chargeOf(mix)); }

Mix withAllWater(Mix mix, double waterL)
{
    mix.recipe->waterLM3 = waterL;
    return mix;
}

std::vector<Remedy> waterRemedies(const Mix& mix, std::size_t index, double mostRatio)
{
    if (mix.trial && mix.trial->waterL) return {};
    Mix changed = mix;
    Remedy remedy;
    double water = 0.0;
    if (changed.recipe) {
        const double all = std::floor(mostAllWaterL(mix, mostRatio) * 10 + 1e-9) / 10;
        changed = withAllWater(mix, all);
        if (!(all > 0.0) || !isUsable(changed)) return {};
        water = plannedChargeOf(changed).waterL;
        remedy.code = "less_water_recipe";
        remedy.values["all_water_l"] = all;
        remedy.edit = setting(index, "recipe/water_l_m3", all);
    } else {
        water = std::floor(mostWaterL(mix, mostRatio) * 100 + 1e-9) / 100;
        changed.bag.waterL = water;
        remedy.code = "less_water";
        remedy.edit = setting(index, "bag/water_l", water);
    }
    if (!(water > 0.0) || !keepsRatio(changed, mostRatio)) return {};
    remedy.values["water_l"] = water;
    return {remedy};
}

}  // namespace

double mostWaterL(const Mix& mix, double mostRatio)
{
    const double allL = mostAllWaterL(mix, mostRatio);
    if (!mix.recipe) return std::max(0.0, allL - kPlasticiserWaterShare * chargeOf(mix).plasticiserKg);
    // With less water there is more room for sand and gravel, and for what they bring.
    const Mix changed = withAllWater(mix, allL);
    return allL > 0.0 && isUsable(changed) ? plannedChargeOf(changed).waterL : 0.0;
}

std::vector<Remedy> cementRemedies(const Mix& mix, std::size_t index, const std::function<bool(const Mix&)>& clears)
{
    int low = static_cast<int>(mix.recipe ? std::floor(std::min(mix.recipe->cementKgM3, 1e6))
                                          : std::floor(std::min(mix.extraCementPercent, 1000.0) * 10));
    int high = mix.recipe ? kMostCementKgM3 : kMostExtraTenths;
    const auto works = [&](int step) {
        const Mix changed = withCement(mix, step);
        return isUsable(changed) && clears(changed);
    };
    if (low >= high || !works(high)) return {};
    while (high - low > 1) {
        const int middle = low + (high - low) / 2;
        (works(middle) ? high : low) = middle;
    }
    Remedy remedy;
    if (mix.recipe) {
        remedy.code = "more_cement_recipe";
        remedy.values["cement_kg"] = static_cast<double>(high);
        remedy.edit = setting(index, "recipe/cement_kg_m3", high);
    } else {
        remedy.code = "more_cement";
        remedy.values["extra_percent"] = high / 10.0;
        remedy.edit = setting(index, "extra_cement_percent", high / 10.0);
    }
    return {remedy};
}

std::vector<Remedy> ratioRemedies(const Mix& mix, std::size_t index, double mostRatio)
{
    std::vector<Remedy> remedies = waterRemedies(mix, index, mostRatio);
    for (Remedy& remedy : cementRemedies(mix, index, [&](const Mix& m) { return keepsRatio(m, mostRatio); }))
        remedies.push_back(std::move(remedy));
    return remedies;
}

Remedy plasticiserRemedy(std::size_t index, double percent)
{
    Remedy remedy;
    remedy.code = "less_plasticiser";
    remedy.values["percent"] = percent;
    remedy.edit = setting(index, "plasticiser_percent", percent);
    return remedy;
}

std::vector<Remedy> classRemedies(std::size_t index, const std::vector<std::string>& names)
{
    std::vector<Remedy> remedies;
    for (const std::string& name : names) {
        const std::string path = "/mixes/" + std::to_string(index) + "/strength_class";
        Remedy meant{"class_meant", {{"class", name}}, addPatch(path, '"' + name + '"'), {}};
        remedies.push_back(std::move(meant));
    }
    return remedies;
}

Remedy pigmentRemedy(std::size_t index, double percent)
{
    Remedy remedy;
    remedy.code = "less_pigment";
    remedy.values["percent"] = percent;
    remedy.edit = setting(index, "pigment_percent", percent);
    return remedy;
}

}  // namespace yardcast
