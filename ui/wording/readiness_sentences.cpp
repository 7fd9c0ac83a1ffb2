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
    {"never_strong",
     WORDS("{each}: {fck_mpa:0} MPa are all that is to be counted on after 28 days, with class and water; a mould is taken "
           "off at {strip_mpa:0} MPa. No hour for it can be given."),
     WORDS("EN 1992-1-1 3.1.2 (fck below the mean); ACI 211.1, strength by ratio (from memory)."),
     WORDS("Take less water or a mix of a higher class. Where it is cast already, leave it in the mould until a test says "
           "how strong it is.")},
    {"readings_end",
     WORDS("The temperatures read end {last_h} after the pour, at {last_c}; hours asked for go on to {asked_h:wait}. From there "
           "the weather of the plan is taken on, {low_c} to {high_c} by day and night."),
     WORDS("The readings of this plan; each holds until the next."),
     WORDS("Read the logger again before anything is lifted.")},
    {"never_holds",
     WORDS("{each}: does not hold when it is {way:handledway}, however old it is: {tension_mpa:2} MPa of tension "
           "({place}) are more than its class bears with the safety kept."),
     WORDS("EN 1992-1-1 3.1.2(9), 3.1.8 (flexural strength) and the safety against cracking of precast practice (from "
           "memory)."),
     WORDS("Waiting does not help. Carry it on edge instead of flat, hold it at more places or strap planks along it, "
           "divide it by a joint, make it thicker or its rims deeper, or take a mix of a higher class.")},
};

}  // namespace yardcast::ui
