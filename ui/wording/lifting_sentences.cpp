#include "ui/wording/finding_table.h"
#include "ui/wording/words.h"

namespace yardcast::ui {

namespace {

constexpr const char* kTeam = WORDS("HSE L23, team handling: two lift two thirds of the sum of their limits, three one "
                                    "half (kept for more: judgement); the limit each is this plan's own.");
constexpr const char* kLiftHelp = WORDS("Divide the piece by a joint, make it thinner, take more people, or use a "
                                        "trolley, ramp or hoist.");

}  // namespace

const std::vector<FindingSentence> kLiftingSentences{
    {"heavy", WORDS("{each}: a mass of {mass_kg}. The {crew} who lift it can lift {limit_kg} ({people:people})."), kTeam,
     kLiftHelp},
    {"nobody_lifts",
     WORDS("{each}: a mass of {mass_kg}, and by this plan nobody is there to lift it ({people:people})."), kTeam,
     WORDS("Say in the plan how many people lift, and how much each of them may.")},
    {"too_heavy",
     WORDS("{each}: a mass of {mass_kg}, more than twice the {limit_kg} that the {crew} who lift it can lift "
           "({people:people})."),
     kTeam, kLiftHelp},
    {"grip_heavy",
     WORDS("{subject}: held where its grips are drawn, one of the {people} who lift it bears {person_kg}, more than the "
           "{each_kg} of one person. The heaviest grip is no. {grip:0} with {grip_kg}."),
     WORDS("Levers of the grips about the centre of gravity; the limit each is this plan's own."),
     WORDS("Draw the grips so that the centre of gravity lies in the middle between them.")},
};

}  // namespace yardcast::ui
