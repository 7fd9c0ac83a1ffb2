#include "ui/wording/finding_table.h"
#include "ui/wording/words.h"

namespace yardcast::ui {

namespace {

constexpr const char* kSection =
    WORDS("EN 1992-1-1 6.1 and section 12 with the factors of EN 1990 (from memory), for a slab outside the code's scope: what its "
          "equations give, not what the code vouches for.");

}  // namespace

const std::vector<FindingSentence> kSteelWorthSentences{
    {"steel_weak",
     WORDS("{subject}: once cracked, its steel does not carry what is asked of it ({place}): {design_nm} are asked, "
           "{resistance_nm} are there with the steel and {plain_nm} without it."),
     kSection,
     WORDS("More steel on the side that is pulled, a deeper section, or a shorter span.")},
    {"steel_missing",
     WORDS("{subject} has no steel, and as plain concrete it does not carry what is asked of it ({place}): "
           "{design_nm} are asked, {plain_nm} are there."),
     kSection,
     WORDS("Mesh or bars on the side that is pulled, a deeper section, or a shorter span. Fibres are not counted on.")},
    {"steel_absent",
     WORDS("{subject}: no steel that counts runs across ({place}), and as plain concrete it does not carry what is asked "
           "of it there: {design_nm} are asked, {plain_nm} are there."),
     kSection,
     WORDS("Bars on the side that is pulled, long enough beyond the place on both sides, a deeper section, or a shorter "
           "span. Glass, basalt and fibres are not counted on.")},
    {"steel_wrong_side",
     WORDS("{subject}: the steel lies where it does little ({place}): {resistance_nm} there, {best_nm} near the side "
           "that is pulled; {design_nm} are asked."),
     kSection,
     WORDS("Between rests the underside is pulled: the upper part of the pour when cast face down. Over rests and overhangs the "
           "face is: the mould bottom.")},
    {"steel_wide_crack",
     WORDS("{subject}: if it cracks, the crack opens to about {crack_mm} ({place}); 0.3 mm is the limit outdoors."),
     WORDS("EN 1992-1-1 7.3.4 and Table 7.1N."),
     WORDS("Thinner bars closer together, nearer to the side that is pulled.")},
    {"steel_brittle",
     WORDS("{subject} would break without warning ({place}): it cracks at {cracking_nm}, and with the steel where it "
           "lies the cracked section carries less."),
     kSection,
     WORDS("Keep it uncracked: everything then rests on the concrete. More steel on the side that is pulled makes a crack a warning.")},
};

}  // namespace yardcast::ui
