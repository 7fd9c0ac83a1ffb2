#include "ui/wording/finding_table.h"
#include "ui/wording/words.h"

namespace yardcast::ui {

namespace {

constexpr const char* kGeometry = WORDS("Geometry.");
constexpr const char* kPractice = WORDS("Common practice, no source.");
constexpr const char* kLimits = WORDS("The limits of this program, far beyond what is sensible for a kitchen.");
constexpr const char* kFormat = WORDS("The plan file's format, version 1.");

}  // namespace

const std::vector<FindingSentence> kPlanSentences{
    // numbers and lists
    {"not_a_number", WORDS("{subject}: {key:key} is no number."), kLimits, WORDS("Type a number.")},
    {"number_out_of_range",
     WORDS("{subject}: {key:key} is {value:unit}; it has to be from {least:unit} to {most:unit}."), kLimits,
     WORDS("Check the number and its unit.")},
    {"too_many", WORDS("{subject}: {key:key} has {count} members; at most {most} are computed."), kLimits,
     WORDS("Remove what is not needed.")},

    // outline of a counter
    {"outline_few_corners", WORDS("{subject}: the outline has {count} corners; a slab needs at least three."),
     kGeometry,
     WORDS("Draw the outline again.")},
    {"outline_too_large", WORDS("{subject}: the outline is {width_mm} by {depth_mm}, beyond {most_mm}."), kLimits,
     WORDS("Check the unit: sizes are mm.")},
    {"outline_crosses_itself", WORDS("{subject}: the outline crosses itself (edges {edge} and {other_edge})."),
     kGeometry,
     WORDS("Move a corner so that no two edges cross.")},
    {"outline_no_area", WORDS("{subject}: the outline encloses no area."), kGeometry, WORDS("Move its corners apart.")},
    {"line_no_length", WORDS("{subject}: a line begins and ends at one point."), kGeometry,
     WORDS("Move one of its ends, or remove it.")},

    // rim, ribs, filler
    {"rim_shallower_than_slab",
     WORDS("{subject}: the rim is {depth_mm} deep, less than the slab's own {thickness_mm}."), kGeometry,
     WORDS("Make the rim deeper or the slab thinner.")},
    {"rim_too_wide", WORDS("{subject}: a rim of {width_mm} fills the whole width of {most_mm}; no field is left."),
     kGeometry,
     WORDS("Make the rim narrower, or the whole slab thicker.")},
    {"rim_edge_unknown", WORDS("{subject}: the rim names edge {edge}; the last edge is {last_edge}."), kFormat,
     WORDS("Edges count from 0, the one from the first corner to the second.")},
    {"needs_rim", WORDS("{subject}: {what:rimless} without a rim, which gives the depth."), kGeometry,
     WORDS("Give the counter a rim, or take this away.")},
    {"rib_outside", WORDS("{subject}: rib {rib} reaches {outside_mm} beyond the outline."), kGeometry,
     WORDS("Let it end inside the slab.")},

    // cutouts
    {"cutout_outside", WORDS("{subject}: cutout {cutout} does not lie inside the slab."), kGeometry,
     WORDS("Move it in, make it smaller, or enlarge the slab.")},
    {"cutouts_overlap", WORDS("{subject}: cutouts {cutout} and {other_cutout} overlap."), kGeometry,
     WORDS("Move them apart.")},
    {"strip_narrow",
     WORDS("{subject}: only {strip_mm} of concrete are left between cutout {cutout} and the edge; at least {least_mm} "
           "are wanted, and 75 to 80 mm are better."),
     kPractice, WORDS("Move the cutout, make it smaller, or make the slab deeper from front to back.")},
    {"strip_between_narrow",
     WORDS("{subject}: only {strip_mm} of concrete are left between cutouts {cutout} and {other_cutout}; at least "
           "{least_mm} are wanted."),
     kPractice, WORDS("Move them apart, or make one opening of both.")},
    {"corner_radius_large",
     WORDS("{subject}: a corner radius of {radius_mm} does not fit cutout {cutout}; {most_mm} is used."), kGeometry,
     WORDS("Reduce the radius, or make the cutout round.")},

    // joints
    {"joint_not_through", WORDS("{subject}: joint {joint} ends {short_mm} short of the edge and divides nothing."),
     kGeometry,
     WORDS("Draw it from edge to edge.")},
    {"joint_outside", WORDS("{subject}: joint {joint} misses the slab."), kGeometry, WORDS("Move it, or remove it.")},
    {"joint_through_cutout",
     WORDS("{subject}: joint {joint} runs through cutout {cutout}, where the slab is weakest to handle."), kPractice,
     WORDS("Move the joint to where a support can carry both sides.")},
    {"joint_near_cutout",
     WORDS("{subject}: joint {joint} leaves only {strip_mm} beside cutout {cutout}; at least {least_mm} are wanted."),
     kPractice, WORDS("Move the joint away from the cutout.")},

    // steel, loads, hands
    {"cover_beyond_slab",
     WORDS("{subject}: with {cover_mm} of cover, a bar of {bar_mm} would stick out of {thickness_mm} of concrete."),
     kGeometry, WORDS("Reduce the cover, or make the slab thicker.")},
    {"load_outside", WORDS("{subject}: the load \"{load}\" reaches {outside_mm} beyond the slab."), kGeometry,
     WORDS("Move it onto the slab.")},
    {"grip_outside", WORDS("{subject}: hand place {grip} lies {outside_mm} outside the slab."), kGeometry,
     WORDS("Move it to the slab's edge.")},

    // supports and panels
    {"core_too_large", WORDS("{subject}: the core of {core_mm} does not fit in {part_mm}."), kGeometry,
     WORDS("Make the core smaller.")},
    {"core_wall_thin", WORDS("{subject}: only {wall_mm} of concrete are left beside the core; at least {least_mm} are "
                             "wanted."),
     kPractice, WORDS("Make the core thinner, or the part thicker.")},
    {"support_inside_slab", WORDS("{subject} ends {inside_mm} inside {other}."), kGeometry,
     WORDS("Lower the support to the underside of the slab, or raise the slab.")},
    {"support_short",
     WORDS("{subject} ends {gap_mm} below {other}; pads and bedding fill about {allowed_mm}."), kPractice,
     WORDS("Raise the support, or lower the slab.")},
    {"counter_unsupported", WORDS("{subject} rests on nothing: no support or panel ends under it, {underside_mm} above "
                                  "the datum."),
     kGeometry, WORDS("Stand supports under it.")},

    // fronts
    {"front_no_height", WORDS("{subject}: its top at {top_mm} is not above its foot at {bottom_mm}."), kGeometry,
     WORDS("Raise the top, or lower the foot.")},
    {"door_no_width", WORDS("{subject}: door {door} has no width."), kGeometry,
     WORDS("Give it a width, or remove it.")},
    {"door_outside", WORDS("{subject}: door {door} reaches {outside_mm} beyond the ends of the front."), kGeometry,
     WORDS("Move the door in, or make the front longer.")},
    {"doors_overlap", WORDS("{subject}: doors {door} and {other_door} overlap by {overlap_mm}."), kGeometry,
     WORDS("Move one of them.")},

    // references and neighbours
    {"mix_unknown", WORDS("{subject}: there is no mix \"{mix}\"."), kFormat,
     WORDS("Choose one of the plan's mixes, or add this one.")},
    {"on_unknown", WORDS("{subject}: there is no counter \"{on}\" for it to stand on."), kFormat,
     WORDS("Choose a counter of this plan.")},
    {"appliance_off_counter", WORDS("{subject} reaches {outside_mm} beyond {counter}, on which it stands."), kGeometry,
     WORDS("Move it, or enlarge the counter.")},
    {"part_outside_site", WORDS("{subject} reaches {outside_mm} beyond the site."), kGeometry,
     WORDS("Move it in, or correct the site's outline.")},
    {"part_meets_fixture", WORDS("{subject} reaches {overlap_mm} into {fixture}."), kGeometry, WORDS("Move it away.")},
    {"parts_collide", WORDS("{subject} and {other} are in one place: they overlap by {overlap_mm} over a height of "
                            "{height_mm}."),
     kGeometry, WORDS("Move one of them.")},
    {"not_all_compared", WORDS("Too many parts lie in one place: not all were compared with each other."), kLimits,
     WORDS("Spread the parts out.")},

    // settings
    {"cement_above_bag", WORDS("Mix {subject}: {cement_kg} of cement in a bag of {bag_kg} cannot be."), kGeometry,
     WORDS("Type what the bag's maker states.")},
    {"high_below_low", WORDS("The day's high of {high_c} is below its low of {low_c}."), kGeometry,
     WORDS("Exchange the two.")},
    {"measured_not_rising", WORDS("A reading at {h} comes after one at {before_h}."), kGeometry,
     WORDS("Put the readings in the order of their hours, one for each hour.")},
    {"currency_unknown", WORDS("\"{currency}\" is no currency code; two decimals are assumed."), WORDS("ISO 4217."),
     WORDS("Use the code of three capital letters, such as EUR.")},
    {"site_few_corners", WORDS("The site's outline has {count} corners; it needs at least three."), kGeometry,
     WORDS("Draw the site again, or remove it.")},
    {"site_crosses_itself", WORDS("The site's outline crosses itself (edges {edge} and {other_edge})."), kGeometry,
     WORDS("Move a corner so that no two edges cross.")},
};

}  // namespace yardcast::ui
