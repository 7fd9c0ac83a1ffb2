#include "ui/wording/finding_table.h"
#include "ui/wording/words.h"

namespace yardcast::ui {

namespace {

constexpr const char* kCrackSource =
    WORDS("EN 1992-1-1 3.1.2(9), 3.1.8 (flexural strength by the class) and the safety against cracking of precast "
          "practice (from memory); loads as assumed in this plan, since no Eurocode gives any for worktops.");
constexpr const char* kCrackHelp =
    WORDS("Make it thicker, give it a rim or ribs, move the cutout away from the edge, or put a support nearer. Steel "
          "holds a cracked slab together; it does not keep it from cracking.");
constexpr const char* kStatics = WORDS("Statics: what lies on its rests is pressed only, never held down.");
constexpr const char* kPractice = WORDS("Common practice, no source.");

}  // namespace

const std::vector<FindingSentence> kInUseSentences{
    {"cracks_in_place",
     WORDS("{subject} may crack {load:load}: {tension_mpa:2} MPa of tension ({place}) against {strength_mpa:2} MPa "
           "that may be used, with a safety of {safety:1} ({use_percent:0} %)."),
     kCrackSource, kCrackHelp},
    {"cracks_surely_in_place",
     WORDS("{subject} is likely to crack {load:load}: {tension_mpa:2} MPa of tension ({place}), more than its strength "
           "even without any safety ({use_percent:0} % of the {strength_mpa:2} MPa that may be used)."),
     kCrackSource, kCrackHelp},
    {"cracks_by_itself",
     WORDS("{subject} cracks by its own weight and its own loads, with nobody on it: {tension_mpa:2} MPa of tension "
           "({place}), {use_percent:0} % of the {strength_mpa:2} MPa that may be used."),
     kCrackSource, kCrackHelp},
    {"strength_unsolved",
     WORDS("{subject} could not be divided into a mesh: whether it cracks is not known, and nothing is said about it."),
     WORDS("The program's own limits."), WORDS("Look for slivers of concrete and for cutouts, rims or joints that nearly touch.")},
    {"tips", WORDS("{subject} does not lie still by itself: it tips, or nothing bears it."), kStatics,
     WORDS("Put a support on each side of its centre of gravity. A slab that tips cannot be caught: keep clear of "
           "it.")},
    {"tips_in_use",
     WORDS("{subject} tips when somebody leans or sits on it where it overhangs its supports."), kStatics,
     WORDS("Move a support outwards, shorten the overhang, or fix the slab to its supports so that it cannot lift. "
           "Nobody should lean on it before that is done.")},
    {"lifts_off", WORDS("{subject} does not touch {under}: it bends up off it."), kStatics,
     WORDS("That support carries nothing. Move it, or leave it out; do not pack it tight, which would bend the slab.")},
    {"rest_on_foam",
     WORDS("{subject}: no more than {touched_percent} of what lies over {under} is as deep as the rim; the rest is a "
           "thin field over foam or air, which bears nothing."),
     WORDS("Geometry; foam is taken to carry nothing."),
     WORDS("Give the slab a rib over that support, as wide as the support and as deep as the rim.")},
    {"bearing_short",
     WORDS("{subject} bears on {under} over only {bearing_mm}; at least {wanted_mm} are wanted."),
     WORDS("Common practice, no source; EN 1992-1-1 10.9.5.2 asks for the same order (from memory)."),
     WORDS("Take a wider support, give each slab a support of its own, or fix a ledger to it.")},
    {"overhang_long",
     WORDS("{subject} overhangs {under} by {overhang_mm}; more than a third of the slab ({usual_mm}) is not usual."),
     kPractice,
     WORDS("Add brackets or a support under the overhang, or fix the other side down.")},
    {"curls",
     WORDS("{subject} may curl by some {bow_mm} over its {length_mm} if one face dries before the other."),
     WORDS("Curvature of 0.1 mm/m of one-sided shrinkage over the thickness; the figure is a judgement, no source."),
     WORDS("Let both faces dry alike: store it on edge or on battens with air all round, seal both faces or neither, "
           "and turn it early.")},
};

}  // namespace yardcast::ui
