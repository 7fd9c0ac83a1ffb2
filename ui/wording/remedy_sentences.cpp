#include "ui/wording/remedy_table.h"
#include "ui/wording/words.h"

namespace yardcast::ui {

const std::vector<RemedySentence> kRemedySentences{
    {"reuse_mould_base",
     WORDS("Cast {castings} one after the other on one mould base: that saves {saves:money} of board (an estimate).")},
    {"share_mould",
     WORDS("Cast {castings} one after the other in {moulds:moulds}: that saves {saves:money} of boards and cuts, takes "
           "{more_days:moredays}, and uses one mould {uses:times}.")},
    {"more_moulds",
     WORDS("Cast {castings} in {moulds:moulds}: that costs {costs:money} more of boards and cuts, takes "
           "{more_days:moredays}, and uses one mould {uses:times}.")},

    // tried on the mix itself (core/pour)
    {"less_water", WORDS("Add {water_l:2} l of water from the tap to a bag.")},
    {"less_water_recipe", WORDS("Take {water_l:1} l of water from the tap for a cubic metre ({all_water_l:1} l of water in all).")},
    {"more_cement", WORDS("Add {extra_percent} of the bag as extra cement.")},
    {"more_cement_recipe", WORDS("Take {cement_kg} of cement for a cubic metre.")},
    {"less_plasticiser", WORDS("Take {percent} of plasticiser.")},
    {"class_meant", WORDS("Write {class}, if the bag says so.")},
    {"less_pigment", WORDS("Take {percent} of pigment.")},

    // tried by the solver before they are offered (core/remedy)
    {"lift_later", WORDS("Lift it {age_h:wait} after casting, not earlier.")},
    {"wait_longer", WORDS("Leave it in the mould until it is {age_h:wait} old.")},
    {"grips_proposed", WORDS("Hold it where the program proposes instead of at the grips drawn.")},
    {"more_people", WORDS("Lift it with {people} people, each with a hold of their own.")},
    {"carry_on_edge", WORDS("Carry it standing on edge, not flat.")},
    {"thicker", WORDS("Make the slab {by_mm} thicker: {thickness_mm}.")},
    {"rim_added", WORDS("Give it a rim {depth_mm} deep and {width_mm} wide.")},
    {"rim_deeper", WORDS("Make the rim {by_mm} deeper: {depth_mm}.")},
    {"cutout_rim", WORDS("Give cutout {cutout} a rim {width_mm} wide.")},
    {"rib_added", WORDS("Cast a rib {width_mm} wide from front to back, {x_mm} from the left end.")},
    {"rib_over", WORDS("Cast a rib {width_mm} wide where it lies on {under}.")},
    {"cutout_moved", WORDS("Move cutout {cutout} by {by_mm}, away from the narrow strip.")},
    {"support_added", WORDS("Put one more support under it, {x_mm} from its left end.")},
    {"support_moved", WORDS("Move support {support} {by_mm:way}.")},
    {"bars_added", WORDS("Lay {count} bars of {diameter_mm} along the strip, on the side that is pulled.")},
    {"steel_to_side", WORDS("Lay the mesh on the side that is pulled: {cover_mm} from the face.")},

    // weather: worked out by the formulas of the pour day
    {"start_at_hour", WORDS("Begin at {start_h:clock}: the worst hour of the work then has {evaporation:rate}.")},
    {"water_colder", WORDS("Mix with water of {water_c}: the concrete is then at {concrete_c} and loses {evaporation:rate}.")},
    {"windbreak", WORDS("A windbreak that leaves {wind:0} km/h over the concrete brings it down to {evaporation:rate}.")},
    {"cover_at_once", WORDS("Cover each piece with sheeting as soon as it is struck off: under it next to nothing is lost.")},
    {"water_cold_for", WORDS("Mix with water of {water_c}: the concrete then has {concrete_c}.")},
    {"ice_for",
     WORDS("Put {ice_kg} of ice ({ice_percent:0} % of the water) into each batch in place of as much water: the concrete "
           "then has {concrete_c}.")},
    {"water_warm_for", WORDS("Mix with water of {water_c}: the concrete then has {concrete_c}.")},
    {"concrete_as_mixed", WORDS("Take {concrete_c}, as the ingredients give it.")},
    {"keep_warm", WORDS("Keep it at {mats_c} or more under insulating mats for {warm_h}: then frost does no harm.")},

    // weighed before they are offered (core/handling)
    {"joint_added",
     WORDS("Divide {castings:ofthem} by {joints:joints}: the heaviest piece then has {piece_kg}. {over_support:bearing}")},
    {"core_added", WORDS("Cast {castings:ofthem} about a foam core {foam_mm} thick: that leaves {piece_kg}{enough:still}.")},
    {"trolley_used",
     WORDS("Move it on a trolley or skates, standing on its long edge: to tilt it up takes {each_kg} ({people:people}).")},
    {"hoist_used",
     WORDS("Lift it with a hoist rated for {mass_kg} or more: each of two slings 60° apart pulls {each_kg}.")},

    // found by a search
    {"form_lightest", WORDS("The lightest form that holds in every case: {thickness_mm:form}. The counter itself then has {counter_kg}.")},
    {"form_cheapest", WORDS("The cheapest form that holds in every case: {thickness_mm:form}. The counter itself then has {counter_kg}.")},
};

}  // namespace yardcast::ui
