#include "ui/wording/finding_table.h"
#include "ui/wording/remedy_table.h"
#include "ui/wording/words.h"

namespace yardcast::ui {

namespace {

constexpr const char* kWorkingTime =
    WORDS("Working time at the concrete's temperature, half as long for each 10 K more (from memory); batches, people and "
          "mixer as this plan has them.");
constexpr const char* kColdJoint =
    WORDS("Where two layers have not bound, the slab breaks and water gets in. Concrete that has begun to set is not made "
          "workable again with water. Begin each layer where the one below was begun, and let the vibration reach "
          "into it.");

}  // namespace

const std::vector<FindingSentence> kPourSentences{
    {"cold_joint_certain",
     WORDS("{subject} gets a cold joint as planned: its concrete waits {gap_min} for what covers it, but begun at "
           "{start_clock} it can be worked for {working_min} only ({batches} batches of {batch_min})."),
     kWorkingTime, kColdJoint},
    {"cold_joint_likely",
     WORDS("{subject}: a cold joint in {chance_percent:0} % of {plays:0} pours played through (between {low_percent:0} and "
           "{high_percent:0} % by their count), for batches and setting vary from day to day."),
     WORDS("Played with spreads of the batches' minutes, of slips, of the working time and of the day's temperature that are "
           "our estimates, no source."),
     kColdJoint},
    {"day_too_long", WORDS("{subject} alone takes {takes_h} to pour; the plan works {hours_h} a day."),
     WORDS("Arithmetic: batches and their minutes."),
     WORDS("A casting is poured in one go. Work longer that day, take a larger mixer, or divide it with a joint.")},
    {"uplift",
     WORDS("Foam wants to float: that in {subject} with {lift_n} ({foam_l} of foam). Hold it down with {fixings:0} screws "
           "through battens; {fixings_in_all:0} in all, in {subjects}."),
     WORDS("Archimedes: volume of the foam times the difference of the densities; held for 1.5 times that with 300 N a screw "
           "(our choice, no source)."),
     WORDS("Battens across the mould, screwed to its sides, press the foam down until the concrete has set. Glue "
           "and tape let go in wet concrete; solvents dissolve the foam. See that the cover of the steel stays.")},
    {"order_unknown", WORDS("The order of pouring names “{name}”, which is no casting of this plan."),
     WORDS("The plan file."), ""},
    {"order_twice", WORDS("The order of pouring names “{name}” twice; its first place counts."),
     WORDS("The plan file."), ""},
    {"table_load",
     WORDS("{subject} lies on the mould table with {table_kg} when it is filled, {table_kpa} on average."),
     WORDS("Fresh concrete with 2500 kg/m³ (EN 1991-1-1 Table A.1), steel and foam."),
     WORDS("Set the table up level and braced before the first batch, on ground that does not give, and never reach "
           "under it while it is filled. A base that sags between its rests makes the slab sag as well.")},
};

const std::vector<RemedySentence> kPourRemedySentences{
    {"pour_earlier", WORDS("Begin at {start_clock}.")},
    {"pour_more_hands", WORDS("Pour with {people:0} people: a batch then takes some {batch_min}.")},
    {"pour_larger_mixer", WORDS("Take a mixer of {drum_l}: a batch then takes some {batch_min}.")},
    {"pour_cooler_concrete",
     WORDS("Keep the concrete at {concrete_c} or below: materials in the shade, cold water, ice.")},
    {"pour_divide", WORDS("Divide it with a joint, and pour one part after the other.")},
    {"pour_longer_day", WORDS("Work {hours_h} that day.")},
    {"pour_order_clean", WORDS("Take out of the order what is no casting or stands there twice.")},
    {"play_cooler_water", WORDS("Mix with water of {water_c}.")},
    {"play_ice_water",
     WORDS("Put ice in the place of a fifth of the water: the concrete gets some {cooler_k:0} K cooler.")},
    {"play_earlier_start", WORDS("Begin at {start_clock}.")},
    {"play_split_days", WORDS("Pour on {days:0} days, each shorter.")},
    {"play_other_order", WORDS("Pour in another order.")},
    {"play_one_more_hand", WORDS("Pour with {people:0} people, so that batches follow one another faster.")},
    {"play_larger_mixer", WORDS("Take a mixer of {drum_l}, with fewer batches.")},
};

}  // namespace yardcast::ui
