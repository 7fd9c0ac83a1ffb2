#include "ui/wording/finding_table.h"
#include "ui/wording/words.h"

namespace yardcast::ui {

namespace {

constexpr const char* kCrackSource =
    WORDS("EN 1992-1-1 3.1.2(9), 3.1.8 (flexural strength at that age) and the safety against cracking of precast "
          "practice (from memory); factors and hands as assumed in this plan.");
constexpr const char* kGround = WORDS("Presumed bearing of 50 kPa on garden soil: a cautious judgement, no source.");

}  // namespace

const std::vector<FindingSentence> kHandlingSentences{
    {"cracks_handling",
     WORDS("{subject} {tension_mpa:sure} {case:handled}, {age_h} after casting: {tension_mpa:2} MPa of tension ({place}) against "
           "{strength_mpa:2} MPa that may be used and {characteristic_mpa:2} MPa without any safety ({use_percent:0} %).{case:hours}"),
     kCrackSource,
     WORDS("Wait longer and keep it warmer where a higher age would do, hold it where it suffers least, tilt it and carry it on edge, strap planks "
           "along it, or make it thicker. Nobody stands where a slab can fall or tilt to; wear gloves and safety shoes, keep "
           "feet and fingers clear, and lower it onto battens, never onto a hand.")},
    {"grips_tip", WORDS("{subject} tips when it is held at its hand places ({grips}): its weight does not lie between them."),
     WORDS("Statics."),
     WORDS("Take hold on both sides of its centre of gravity, or let the program propose the places. A slab that tips "
           "cannot be caught: step back and let it go.")},
    {"suction_strong",
     WORDS("{subject}: the mould base holds it down with as much as {suction_kg}, beside its own {mass_kg}. Lifted flat "
           "it would bear {flat_percent} of what it may; tilted up about an edge, only {tilt_percent}."),
     WORDS("Suction by the mould's surface: CEN/TR 15728 and VDI/BV-BS 6205 (from memory)."),
     WORDS("Take the sides off, loosen one long edge all along with wedges until air gets in, and tilt it; never jerk. "
           "Oil the base well before the next pour.")},
    {"set_down_ends",
     WORDS("{subject}: laid on battens at its very ends it would bear {ends_percent} of what it may. Lay them "
           "{inset_mm} from its ends."),
     WORDS("A beam on two rests suffers least at 0.207 of its length from the ends (statics)."),
     WORDS("Mark the places on the edge before it is lifted, and lay the battens beforehand, level with each other.")},
    {"upright_tips",
     WORDS("{subject} alone tips at a push of {lean_n:0} N at its top; somebody who leans on it pushes with some "
           "{push_n:0} N, and {wanted:1} times that should not move it."),
     WORDS("Statics; the push and its factor are a judgement, no source."),
     WORDS("Never leave it standing loose: brace it while it is set up, then tie it to the counter, to its neighbours "
           "or to a wall, or give it a wider foot. Keep children away until that is done.")},
    {"pad_pressure",
     WORDS("{subject}: its pads press with {pressure_mpa:1} MPa; a dry bearing should take at most {limit_mpa:1} MPa."),
     WORDS("EN 1992-1-1 10.9.5.2(2) and 12.3.1 (from memory)."), WORDS("Take larger pads, or more of them.")},
    {"ground_pressure",
     WORDS("As much as {pressure_kpa:0} kPa press on the ground below a pad; garden soil is presumed to bear "
           "{soil_kpa:0} kPa, for which {area_cm2:0} cm² would be needed below it. In: {subjects}."),
     kGround,
     WORDS("On a concrete base or firm slabs this is no matter. On soil or loose paving set it on a slab or a "
           "foundation of its own, below frost where the ground freezes.")},
    {"pads_few", WORDS("{subject}, {length_mm} long, rocks on one pad."), WORDS("Statics."),
     WORDS("Give it two pads, one at each end.")},
    {"upright_slender",
     WORDS("{subject} is {ratio:0} times as high as thick ({height_mm} and {thickness_mm}); at most {limit:0} times is "
           "usual for plain concrete."),
     WORDS("EN 1992-1-1 12.6.5.1(5) (from memory)."), WORDS("Make it thicker, or lower.")},
};

}  // namespace yardcast::ui
