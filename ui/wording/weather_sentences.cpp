#include "ui/wording/finding_table.h"
#include "ui/wording/words.h"

namespace yardcast::ui {

namespace {

constexpr const char* kLogHelp = WORDS("A row holds hours since the pour, or date and time, and deg C: 0,21.5 or 0;21,5 or 2025-07-01 08:30;21,5.");
constexpr const char* kLogSource = WORDS("The table of a temperature logger.");
constexpr const char* kCuringSource = WORDS("EN 13670 tables F.1 to F.3 (from memory).");

}  // namespace

const std::vector<FindingSentence> kWeatherSentences{
    {"evaporation_high",
     WORDS("About {at_h:clock} fresh concrete loses some {evaporation:rate}; from {limit:rate} on its face may "
           "crack before it has set. The formula is a rough one: real rates lie up to 40 % to either side."),
     WORDS("Uno (1998), ACI Materials Journal 95-M34; the limit: ACI 305R (from memory), half of it for mixes with "
           "silica fume or fibres, which hardly bleed."),
     WORDS("Keep sun and wind off, spray a fine mist, and cover each piece as soon as it is struck off.")},
    {"mix_hot",
     WORDS("The fresh concrete comes to {concrete_c}: above {limit_c} it stiffens fast, wants more water and ends "
           "weaker."),
     WORDS("ACI 305R (from memory)."), WORDS("Keep bags and aggregate in the shade, and cool the mixing water.")},
    {"mix_cold",
     WORDS("The fresh concrete has only {concrete_c}: below {limit_c} it hardly hardens and may freeze."),
     WORDS("EN 206 5.2.8: at least 5 deg C when it is placed (from memory)."),
     WORDS("Keep bags indoors the night before, warm the mixing water, and cover the mould.")},
    {"mix_differs",
     WORDS("The plan states fresh concrete of {concrete_c}; from its ingredients it would come to {mix_c}."),
     WORDS("ACI 305R appendix B (from memory): heat of materials, water and ice."),
     WORDS("Measure the first batch with a thermometer, and correct whichever is wrong.")},
    {"ice_unsure",
     WORDS("{ice_percent:0} % of the water as ice: the equation that gives {mix_c} is good up to some {limit_percent:0} % "
           "only, and so much ice may not be gone before the mixing ends."),
     WORDS("A public comparison of the equation of ACI 305R appendix B: increasingly wrong above 20 % of ice."),
     WORDS("Take less ice and colder bags, and measure the first batch with a thermometer.")},
    {"frost_night",
     WORDS("It freezes {frost_h} after the pour (down to {low_c}), when the concrete has about {strength_mpa:1} MPa: "
           "below {limit_mpa:0} MPa frost spoils it for good."),
     WORDS("EN 13670 8.5 (from memory): no frost before 5 MPa."),
     WORDS("Pour on another day, or insulate the mould on all sides.")},
    {"curing_stops",
     WORDS("Mix {subject}: these days are too cold for curing: hours below 5 deg C do not count, and there are too few "
           "warmer ones."),
     kCuringSource, WORDS("Cast indoors, heat the place, or wait for warmer days.")},
    {"curing_stretched",
     WORDS("Mix {subject}: it has to be kept moist for {days:1} days instead of {counted_days:1}, as cold hours do not "
           "count."),
     kCuringSource, WORDS("Insulating mats keep the hours warm.")},
    {"fume_needs_curing",
     WORDS("Mix {subject}: concrete with silica fume hardly bleeds; cover it at once and keep it moist for "
           "{days:1} days."),
     kCuringSource, WORDS("Sheeting goes on as soon as the piece is struck off, weighted at its edges.")},

    // a logger's table
    {"log_row", WORDS("Line {line}: two numbers are wanted, and there is \"{text}\"."), kLogSource, kLogHelp},
    {"log_range", WORDS("Line {line}: {value:unit} lies outside {least} to {most}."), kLogSource, kLogHelp},
    {"log_fahrenheit",
     WORDS("{line:line}{value:0} °C is no temperature of a thin piece of concrete. Degrees Fahrenheit? They would be {as_c:1} "
           "°C."),
     kLogSource, WORDS("Let the logger write degrees Celsius: (°F − 32) / 1.8.")},
    {"log_not_rising", WORDS("Line {line}: {at_h} do not come after {before_h}."), kLogSource,
     WORDS("The hours have to rise from row to row.")},
    {"log_empty", WORDS("There is no row with hours and a temperature."), kLogSource, kLogHelp},
};

}  // namespace yardcast::ui
