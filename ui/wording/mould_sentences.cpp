#include "ui/wording/finding_table.h"
#include "ui/wording/words.h"

namespace yardcast::ui {

namespace {

constexpr const char* kPractice = WORDS("Common practice, no source.");
constexpr const char* kFormat = WORDS("The plan file.");
constexpr const char* kBeam =
    WORDS("Pressure of fresh concrete of 25 kN/m³ (EN 1991-1-1 Table A.1); the board as a beam from bracket to "
          "bracket, coated chipboard of 2500 MPa and 11 MPa (an estimate after EN 312 and EN 12369-1, from memory).");
constexpr const char* kCountFromNought = WORDS("Edges count from 0, the one from the first corner to the second.");

}  // namespace

const std::vector<FindingSentence> kMouldSentences{
    // drip grooves and rebates in the plan
    {"drip_edge_unknown", WORDS("{subject}: the drip groove names edge {edge}; the last edge is {last_edge}."), kFormat,
     kCountFromNought},
    {"rebate_edge_unknown", WORDS("{subject}: the rebate names edge {edge}; the last edge is {last_edge}."), kFormat,
     kCountFromNought},
    {"drip_deep", WORDS("{subject}: a drip groove of {depth_mm} leaves less than half of {thickness_mm}."), kPractice,
     WORDS("5 mm are enough to make water fall off.")},
    {"rebate_deep", WORDS("{subject}: a rebate of {depth_mm} leaves less than half of {thickness_mm}."), kPractice,
     WORDS("Make it shallower, or the slab thicker.")},
    {"drip_in_foam",
     WORDS("{subject}: the drip groove reaches {reach_mm} in from edge {edge}, where the rim is {rim_mm} wide; in "
           "the foam behind it there is no groove."),
     WORDS("Geometry of the plan."), WORDS("Bring it nearer to the edge, or make the rim wider.")},
    {"grooves_not_solved",
     WORDS("{subject}: its strength is reckoned without drip groove and rebate. Where they leave {left_mm} of "
           "{thickness_mm}, bending across them stresses the concrete up to {more_percent} more."),
     WORDS("Bending stress grows as the square of the thickness lost; the notch of the groove is in no figure."),
     WORDS("Keep grooves out of the narrow strips beside cutouts, and bars away from them.")},

    // moulds that are shared
    {"shared_not_same",
     WORDS("{casting} is to come out of the mould of {with}, but it is not the same piece."), WORDS("Geometry of the plan."),
     WORDS("Take it off the list, or make both pieces alike. A mirror twin needs a mould of its own.")},
    {"shared_unknown", WORDS("A shared mould names {id}, and there is no such casting."), kFormat,
     WORDS("Take it off the list.")},
    {"mould_worn",
     WORDS("{subject}: {uses:0} castings out of one mould; a face of this kind usually stands {usual:0}."), kPractice,
     WORDS("Seal the edges, wax and oil it well, put the pieces that are seen most first, or build a second mould.")},

    // moulds
    {"former_no_draft",
     WORDS("{subjects}: formers of board with {draft_deg:1}° of draft will hardly come out; {wanted_deg:0}° are "
           "usual."),
     kPractice,
     WORDS("Let formers taper by 2 to 4°, seal and wax them, or build them of foam, which is broken out.")},
    {"draft_narrows_cutout",
     WORDS("Formers taper by {draft_deg:1}°: cutouts have their drawn size at the face and are up to {draft_mm} "
           "narrower on each side underneath ({subjects})."),
     WORDS("Arithmetic: depth times the tangent of the draft."),
     WORDS("What goes through from below must fit the narrower end. Draw the cutout so much larger, or take less "
           "draft and foam.")},
    {"side_bows",
     WORDS("{subject}: the sides bow out by {bow_mm} between brackets {bracket_mm} apart; {most_mm} are allowed at "
           "{pressure_kpa}. Set them every {wanted_mm}."),
     kBeam, WORDS("More brackets, a thicker board, or a slower pour in layers.")},
    {"side_breaks",
     WORDS("{subject}: the side boards are stressed with {stress_mpa:1} MPa between brackets {bracket_mm} apart; a "
           "board of {strength_mpa:0} MPa may be asked for half of that."),
     kBeam, WORDS("A mould that opens cannot be closed again. Set brackets closer or take a thicker board.")},
    {"edge_below_board",
     WORDS("{subject}: its outline has a step of {edge_mm}, less than the mould board's {board_mm}: no board fits in "
           "it."),
     WORDS("Geometry of the mould."), WORDS("Move the joint or the corner, or make the step of a thin strip by hand.")},
    {"base_longer_than_sheet",
     WORDS("{subjects}: the base of the mould is up to {length_mm} × {width_mm}, more than a usual sheet of "
           "{sheet_mm} × {sheet_width_mm}. It has to be joined."),
     kPractice,
     WORDS("Join it over a batten, level and glued; the seam shows in the face. Or divide the counter with a joint.")},
    {"strip_below_store",
     WORDS("{strips:0} pieces of board are narrower than the {least_mm} that the store cuts; the narrowest measures "
           "{narrowest_mm}."),
     kPractice, WORDS("Order multiples of them and rip these at home.")},
    {"foam_not_held",
     WORDS("{subject}: it is cast face up, its foam lies on the base and wants up with {uplift_n}. No batten can "
           "hold it from above: screw it from below with {screws:0} screws and wide washers."),
     WORDS("Archimedes: volume of the foam times the difference of the densities; held for 1.5 times that with 300 N "
           "a screw (our choice, no source)."),
     WORDS("Foam is a poor ground for screws: glue it as well, and try one piece under load before the pour.")},
    {"mirror_twins",
     WORDS("{subject} and {other} are mirror images of each other: neither comes out of the other's mould."),
     WORDS("Outline, zones, cutouts and bars compared in every turn."),
     WORDS("Write the number and the front edge on each mould, and read the sentence of its drawing aloud before the "
           "pour.")},
    {"gap_within_tolerance",
     WORDS("Between {subject} and {other} {gap_mm} are drawn; a piece may come out {tolerance_mm} larger."),
     WORDS("The boards' tolerance of this plan."), WORDS("Leave 4 to 6 mm for a soft joint, which takes it up.")},
    {"rebate_near_steel",
     WORDS("{subject}: a rebate of {depth_mm} leaves {cover_mm} of concrete above the steel; {least_mm} are wanted."),
     kPractice, WORDS("Keep bars out of the rebate, or lay the steel deeper.")},
};

}  // namespace yardcast::ui
