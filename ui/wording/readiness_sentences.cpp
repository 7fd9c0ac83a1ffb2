#include "ui/wording/finding_table.h"
#include "ui/wording/words.h"

namespace yardcast::ui {

const std::vector<FindingSentence> kReadinessSentences{
    {"lifted_early", WORDS("{each}: to be lifted {plan_h} after casting, too early. {way:early}"),
     WORDS("EN 1992-1-1 3.1.2 and B.10 (strength with age and temperature), found by the solver of strength; safety "
           "against cracking and the strength to strip at from practice (from memory)."),
     WORDS("Leave it in the mould, covered and out of the cold; a warm night is worth more than a warm noon. The hours "
           "rest on the class that the bag promises and on the weather of the plan: knock on the edge and scratch it "
           "with a nail first, and where either goes in, wait.")},
    {"never_holds",
     WORDS("{each}: does not hold when it is {way:handledway}, however old it is: {tension_mpa:2} MPa of tension "
           "({place}) are more than its class bears with the safety kept."),
     WORDS("EN 1992-1-1 3.1.2(9), 3.1.8 (flexural strength) and the safety against cracking of precast practice (from "
           "memory)."),
     WORDS("Waiting does not help. Carry it on edge instead of flat, hold it at more places or strap planks along it, "
           "divide it by a joint, make it thicker or its rims deeper, or take a mix of a higher class.")},
};

}  // namespace yardcast::ui
