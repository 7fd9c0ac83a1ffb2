#include "ui/wording/finding_table.h"
#include "ui/wording/words.h"

namespace yardcast::ui {

namespace {

constexpr const char* kCoverSource = WORDS("EN 1992-1-1 Table 4.4N, structural class S4, and 4.4.1.3: 10 mm allowed "
                                           "for how it is laid.");
constexpr const char* kTimberPractice = WORDS("Common practice, no source.");

}  // namespace

const std::vector<FindingSentence> kDisciplineSentences{
    // pour
    {"water_cement_over",
     WORDS("Mix {subject}: the ratio of water to cement is {water_binder:2} (silica fume counted), over the limit of "
           "{limit:2}."),
     WORDS("This plan's limit; the ratio after EN 206 5.2.5.2.3."),
     WORDS("At most {most_water_l} from the tap for a bag keeps the limit; more plasticiser or extra cement helps the mix "
           "flow.")},
    {"fume_over",
     WORDS("Mix {subject}: of the silica fume ({fume_percent} of the cement) only {counted_percent} count."),
     WORDS("EN 206 5.2.5.2.3."), WORDS("Use less silica fume: 5 to 10 % is usual.")},
    {"aggregate_large",
     WORDS("Mix {subject}: stones of up to {aggregate_mm} are too large for the {thickness_mm} of {other}; at most "
           "{limit_mm} would fit."),
     WORDS("Usual rule: at most a third of the least thickness (from memory)."),
     WORDS("Take a finer mix, or make the piece thicker.")},
    {"strength_class_unknown",
     WORDS("Mix {subject}: no strength class is called \"{class}\". Every figure is reckoned with {taken}, the lowest that "
           "it can mean; what the bag holds is not known."),
     WORDS("EN 1992-1-1 Table 3.1 (from memory)."),
     WORDS("Write the class as the bag has it, with both figures: \"C30/37\", not \"C30\".")},
    {"mixer_small",
     WORDS("Mix {subject}: one bag gives {bag_l}, but the mixer's drum of {drum_l} takes only {usable_l} at once."),
     WORDS("The share of the drum this plan fills; 50 to 80 % is common practice, no source."),
     WORDS("Weigh out part bags, or use a larger mixer.")},

    // reinforcement
    {"bar_outside", WORDS("{subject}: a bar does not lie inside the concrete with its cover on all sides."),
     WORDS("Geometry."), WORDS("Move it inside the outline and away from cutouts, or reduce its cover.")},
    {"cover_outside",
     WORDS("{subject}: with {cover_mm} of cover, {steel_mm} of steel does not fit in {thickness_mm} of concrete."),
     WORDS("Geometry."), WORDS("Reduce the cover, take thinner steel, or make the slab thicker.")},
    {"bars_close", WORDS("{subject}: only {clear_mm} are clear between bars; at least {least_mm} are wanted."),
     WORDS("EN 1992-1-1 8.2(2): the bar's diameter, the largest stone and 5 mm, and 20 mm."),
     WORDS("Space them wider, or take fewer and thicker bars.")},
    {"cover_thin",
     WORDS("The least cover of plain steel is {least_mm}; the code asks for {asked_mm} in {exposure}. It will rust "
           "early. In: {subjects}."),
     kCoverSource,
     WORDS("Take stainless or well galvanised steel, a grid of AR glass or basalt, or more concrete over it; seal the "
           "piece and keep it dry, and expect a shorter life.")},
    {"cover_zinc",
     WORDS("The least cover of galvanised steel is {least_mm}; the code asks for {asked_mm} in {exposure}. Zinc puts "
           "rust off for years, it does not take cover's place. In: {subjects}."),
     kCoverSource, WORDS("Seal the piece and keep it dry; stainless steel is better where that is not sure.")},
    {"slab_thin",
     WORDS("Concrete of {thickness_mm} has no room for the code's cover on both faces: that takes {asked_mm} with the "
           "steel, in {exposure}. Such a piece is outside the code and is no structure, whatever the figures say. "
           "In: {subjects}."),
     kCoverSource,
     WORDS("Let nothing depend on it that could hurt somebody. Support it closely, take steel that does not rust, seal "
           "it, keep it dry and look at it every year.")},
    {"fibres_not_counted",
     WORDS("Bars and grids of glass or basalt do not rust and are not counted for strength: they have no yield, and no "
           "published value holds for what a store sells. In: {subjects}."),
     WORDS("EN 1992-1-1 covers steel only."),
     WORDS("They keep a broken piece together and cracks fine. Count on the concrete alone, or add steel.")},
    {"mesh_wide",
     WORDS("{subject}: a mesh of {pitch_mm} is too wide for {thickness_mm} of concrete; at most {most_mm}."),
     WORDS("EN 1992-1-1 9.3.1.1(3): three times the thickness, at most 400 mm (from memory)."),
     WORDS("Take a mesh with a smaller pitch.")},
    {"bars_short",
     WORDS("Some bars are too short to reach their strength: {length_mm} holds {share_percent} of it, {anchorage_mm} "
           "would be wanted on either side of a crack. In: {subjects}."),
     WORDS("EN 1992-1-1 8.4."),
     WORDS("Lengthen them where the piece allows, or take more and thinner bars.")},

    // front
    {"front_unsolved",
     WORDS("{subject}: no number of battens {batten_mm} wide divides {length_mm} with even gaps of {least_gap_mm} to "
           "{most_gap_mm}; {battens} battens would leave gaps of {gap_mm}."),
     WORDS("Open battens with gaps of 4 to 15 mm: common practice, no source."),
     WORDS("Take another batten width, or change the front's length a little.")},
    {"doors_no_room",
     WORDS("{subject}: {doors} doors have no room in a front of {battens} battens; each needs one at least."),
     kTimberPractice, WORDS("Take doors away, or make the front longer.")},
    {"door_moved",
     WORDS("{subject}: door {door} was moved by {shift_mm} so that its edges fall in gaps; it now runs from {from_mm} "
           "to {to_mm}."),
     kTimberPractice, WORDS("Accept it, or change the gap.")},
    {"opening_out_of_square",
     WORDS("{subject}: the diagonals of the measured opening differ by {difference_mm}; past {limit_mm} a door shows "
           "it."),
     kTimberPractice, WORDS("Pack the frame square, or cut the door to the opening.")},
};

}  // namespace yardcast::ui
