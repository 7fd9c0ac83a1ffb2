#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/plan/file_source.h"

/// What goes into the mixer, as the maker states it.
namespace yardcast {

/// The dry bag and what its maker prints on it.
struct Bag {
    double massKg = 25.0;
    double yieldL = 12.0;
    double waterL = 2.6;
    double cementKg = 4.2;
    double maxAggregateMm = 8.0;
    /// Where the bag states no yield: kg/m3 of the fresh concrete without additions. Serves in place of `yieldL`.
    std::optional<double> freshDensityKgM3;
    /// By how much the yield of one bag may be off, either way: 4 % (common practice, no source).
    double yieldSpreadPercent = 4.0;
    FileSource source;
    friend bool operator==(const Bag&, const Bag&) = default;
};
/// Litres of fresh concrete from one bag without additions: `yieldL`, or dry mass and water over the fresh density.
double bagYieldL(const Bag& bag);

/// Sand or gravel. Moisture and absorption are water by dry mass; the density is that of the grains with their pores
/// filled but their surface dry, kg/m3.
struct Aggregate {
    double densityKgM3 = 2650.0;
    double absorptionPercent = 0.6;
    double moisturePercent = 0.0;
    FileSource source;
    friend bool operator==(const Aggregate&, const Aggregate&) = default;
};

/// A mix from cement, sand and gravel: for one m3 of concrete; sand and gravel fill what cement, water, air and the
/// additions leave (absolute volumes).
struct Recipe {
    double cementKgM3 = 350.0;
    double waterLM3 = 165.0;       ///< all water outside the pores of the aggregate, that of the plasticiser included
    double sandPercent = 45.0;     ///< of the volume of sand and gravel
    Aggregate sand;
    Aggregate gravel;
    double maxAggregateMm = 8.0;
    double cementBagKg = 25.0;     ///< a batch takes whole bags of cement where they fit
    FileSource source;
    friend bool operator==(const Recipe&, const Recipe&) = default;
};

/// The first full bucket, weighed.
struct TrialBatch {
    double bucketL = 0.0;
    double concreteKg = 0.0;             ///< in it, without the bucket
    std::optional<double> waterL;        ///< that went in: for one bag, or for one m3 of a recipe; default as planned
    FileSource source;
    friend bool operator==(const TrialBatch&, const TrialBatch&) = default;
};

struct Fibre {
    std::string kind;
    double kgPerM3 = 0.0;
    FileSource source;
    friend bool operator==(const Fibre&, const Fibre&) = default;
};

enum class CementSpeed { slow, normal, rapid };

struct Mix {
    std::string id;
    Bag bag;
    std::optional<Recipe> recipe;      ///< then `bag` is not used
    std::string strengthClass = "C25/30";
    CementSpeed cementSpeed = CementSpeed::normal;
    double extraCementPercent = 0.0;   ///< of the dry bag mass; not used with a recipe
    double silicaFumePercent = 0.0;    ///< of the cement, bag and extra
    double plasticiserPercent = 0.0;   ///< of the cement, bag and extra
    double pigmentPercent = 0.0;       ///< of the cement, bag and extra
    std::vector<Fibre> fibres;
    double maxWaterCement = 0.50;
    std::optional<double> airPercent;  ///< of the volume, as declared or measured; default: not known
    double allowancePercent = 8.0;
    std::optional<TrialBatch> trial;
    FileSource source;
    friend bool operator==(const Mix&, const Mix&) = default;
};
/// Largest grain of the bag or the recipe, mm.
double maxAggregateMm(const Mix& mix);

}  // namespace yardcast
