#include "ui/wording/finding_table.h"
#include "ui/wording/words.h"

namespace yardcast::ui {

namespace {

constexpr const char* kExposureSource = WORDS("EN 206 Table F.1 (informative: 50 years, CEM I, stones of 20 to 32 mm), "
                                              "for {exposure} of this plan.");
constexpr const char* kTrialSource = WORDS("The trial batch of this plan: mass of a full bucket over its litres.");
constexpr const char* kRecipeSource = WORDS("Absolute volumes, ACI 211.1.");

}  // namespace

const std::vector<FindingSentence> kMixSentences{
    {"recipe_ratio_over",
     WORDS("Mix {subject}: the ratio of water to cement is {water_binder:2} (silica fume counted), over the limit of "
           "{limit:2}."),
     WORDS("This plan's limit; the ratio after EN 206 5.2.5.2.3."),
     WORDS("At most {most_water_l} from the tap in a cubic metre keeps the limit; plasticiser helps the mix flow.")},
    {"recipe_no_room",
     WORDS("Mix {subject}: {cement_kg} of cement, {water_l} of water in all, the air and the additions leave no room for sand "
           "and gravel in a cubic metre."),
     kRecipeSource, WORDS("Take less cement or water.")},
    {"recipe_too_wet",
     WORDS("Mix {subject}: sand and gravel bring {brought_l} of water to a cubic metre, more than the recipe has "
           "({water_l} in all)."),
     kRecipeSource, WORDS("Look at the moisture typed, or let sand and gravel drain under a sheet.")},
    {"exposure_ratio",
     WORDS("Mix {subject}: the ratio of water to cement is {water_binder:2} (silica fume counted); {exposure} asks for "
           "at most {limit:2}."),
     kExposureSource, WORDS("Less water with more plasticiser, or more cement.")},
    {"exposure_cement",
     WORDS("Mix {subject}: a cubic metre holds {cement_kg} of cement; {exposure} asks for {least_kg} at least."),
     kExposureSource, WORDS("Add cement.")},
    {"exposure_class",
     WORDS("Mix {subject}: its strength class is {class}; {exposure} asks for {least_class}."),
     kExposureSource,
     WORDS("Take a stronger bag, where the piece gets wet. Pieces that stay dry or are sealed live longer than the "
           "table says of bare ones.")},
    {"exposure_air",
     WORDS("Mix {subject}: it holds {air_percent} of air; {exposure} asks for {least_percent}, or frost scales the "
           "surface."),
     kExposureSource,
     WORDS("An air-entraining agent is hard to dose by hand. Seal the surface, give it a fall that sheds water, and "
           "cover it in winter.")},
    {"exposure_air_unknown",
     WORDS("Whether the concrete stands frost is not known: {exposure} asks for {least_percent} of air and none is "
           "stated. Mixes: {subjects}."),
     kExposureSource,
     WORDS("Bags rarely state their air. Seal the surface, give it a fall that sheds water, and cover it in winter; or "
           "have the air measured and type it in.")},
    {"ratio_class",
     WORDS("Mix {subject}: a ratio of water to cement of {water_binder:2} gives about {mean_mpa:0} MPa; {class} has "
           "{wanted_mpa:0} MPa on average."),
     WORDS("ACI 211.1, strength by ratio (from memory); an estimate, no test."),
     WORDS("Take less water. Cautious hours are reckoned with the lower figure, whether it cracks with the class: a test "
           "would tell.")},
    {"plasticiser_over",
     WORDS("Mix {subject}: {plasticiser_percent} of plasticiser is more than the {limit_percent} of the cement that "
           "admixtures may have."),
     WORDS("EN 206 5.2.6: 50 g to a kg of cement."),
     WORDS("0.3 to 1.5 % is usual (from memory); its maker's sheet counts.")},
    {"pigment_over",
     WORDS("Mix {subject}: {pigment_percent} of pigment; past {limit_percent} of the cement it colours no deeper and "
           "takes water."),
     WORDS("Common practice (from memory); EN 12878 has its maker state the most."),
     WORDS("Take less pigment, or white cement for a clearer colour.")},
    {"scoop_small",
     WORDS("Mix {subject}: {scoop_g:0} g of {item:item} for a batch of {batch_l} is hard to weigh on a kitchen scale; "
           "{least_g:0} g is the least that is within 5 %."),
     WORDS("A scale that reads to 1 g; our choice."),
     WORDS("Weigh it for several batches at once and divide that by volume, or take a finer scale.")},
    {"too_wet_by_density",
     WORDS("Mix {subject}: the trial bucket weighs {trial_density:0} kg/m³, {short_percent} less than it should. That "
           "is {extra_l} of water too much in {in:unitofmix} (water to cement then {water_cement:2}), or air. Do not pour it."),
     kTrialSource,
     WORDS("Mix again, the water from the tap measured: {planned_l} for {in:unitofmix}, {extra_l} less than is in it. Weigh that before "
           "any of it goes into the mould.")},
    {"trial_impossible",
     WORDS("Mix {subject}: {concrete_kg} in a bucket of {bucket_l} is no concrete; the trial batch is not used."),
     kTrialSource, WORDS("Weigh the full bucket and take off what it weighs empty.")},
    {"yield_low",
     WORDS("Mix {subject}: the trial batch yields {is_percent} of what was planned: {volume_l} take {bags} bags."),
     kTrialSource, WORDS("Buy the bags that lack before the next pour.")},
};

}  // namespace yardcast::ui
