#include "ui/wording/lifting_names.h"

#include "ui/wording/figures.h"
#include "ui/wording/words.h"

namespace yardcast::ui {

namespace {

QString peopleWord(int people)
{
    if (people <= 0) return Words::tr("more than %1 people").arg(kMostPeople);
    return people == 1 ? Words::tr("1 person") : Words::tr("%1 people").arg(people);
}

QString reckoned(const MeansAdvice& advice)
{
    switch (advice.means) {
    case LiftMeans::morePeople:
        return Words::tr("%1 can lift it: %2 each if they share it evenly.")
            .arg(peopleWord(advice.people), massText(advice.kgEach));
    case LiftMeans::joint:
        return advice.overSupport
            ? Words::tr("Divided where the program proposes, over supports, the heaviest piece has %1.")
                  .arg(massText(advice.massKg))
            : Words::tr("Divided where the program proposes, the heaviest piece has %1; a joint that lies over no support "
                        "needs one under it.")
                  .arg(massText(advice.massKg));
    case LiftMeans::foamCore:
        return Words::tr("Cast about a foam core %1 thick it has %2.").arg(lengthText(advice.foamMm), massText(advice.massKg));
    case LiftMeans::trolley:
        return Words::tr("On a trolley or skates, standing on its long edge: tilting it up pulls %1, for %2. Somebody "
                         "steadies it all the way.")
            .arg(massText(advice.kgEach), peopleWord(advice.people));
    case LiftMeans::straps:
        return Words::tr("With lifting straps or handles, %1 by the NIOSH equation with good grips: %2 each.")
            .arg(peopleWord(advice.people), massText(advice.kgEach));
    case LiftMeans::hoist:
        return Words::tr("With a hoist rated for %1 or more; two slings %2\u00b0 apart pull %3 each, and both must be rated "
                         "for that.")
            .arg(massText(advice.massKg), shortNumberText(kSlingSpreadDeg, 0), massText(advice.kgEach));
    }
    return {};
}

}  // namespace

QString limitRuleName(LimitRule rule)
{
    switch (rule) {
    case LimitRule::plan: return Words::tr("this plan's own");
    case LimitRule::reference25: return Words::tr("25 kg each");
    case LimitRule::reference15: return Words::tr("15 kg each");
    case LimitRule::niosh: return Words::tr("NIOSH equation");
    }
    return {};
}

QString limitRuleSource(LimitRule rule)
{
    switch (rule) {
    case LimitRule::plan:
        return Words::tr("This plan's own limit each; team factor of HSE L23: two lift two thirds of their sum, three and "
                         "more half.");
    case LimitRule::reference25:
        return Words::tr("EN 1005-2, ISO 11228-1: the reference mass for the general working population; team factor of "
                         "HSE L23.");
    case LimitRule::reference15:
        return Words::tr("EN 1005-2: the reference mass for the general population at home (from memory); team factor of "
                         "HSE L23.");
    case LimitRule::niosh:
        return Words::tr("Revised NIOSH lifting equation: hands 40 cm before the ankles, from a bench 75 cm high, 25 cm up, "
                         "no twist, no handles, now and then. It is written for one lifter: that each of a team lifts as "
                         "much is assumed.");
    }
    return {};
}

QString meansName(const MeansAdvice& advice)
{
    switch (advice.means) {
    case LiftMeans::morePeople: return Words::tr("more people");
    case LiftMeans::joint:
        return advice.joints == 1 ? Words::tr("one joint") : Words::tr("%1 joints").arg(advice.joints);
    case LiftMeans::foamCore: return Words::tr("foam core %1").arg(lengthText(advice.foamMm));
    case LiftMeans::trolley: return Words::tr("trolley, skates");
    case LiftMeans::straps: return Words::tr("lifting straps");
    case LiftMeans::hoist: return Words::tr("hoist");
    }
    return {};
}

QString meansSentence(const MeansAdvice& advice)
{
    if (advice.means == LiftMeans::morePeople || advice.enough) return reckoned(advice);
    return Words::tr("%1 That is still more than those who lift it can do.").arg(reckoned(advice));
}

QString heavyGripsText(const std::vector<GripLoad>& loads, double limitEachKg)
{
    QStringList grips;
    for (const std::size_t i : gripsOver(loads, limitEachKg)) {
        const QString one = grips.isEmpty() ? Words::tr("Grip %1 bears %2") : Words::tr("grip %1 bears %2", "in a list");
        grips << one.arg(i + 1).arg(massText(loads[i].kg));
    }
    if (grips.isEmpty()) return {};
    return Words::tr("%1: more than the %2 of one person. Two take such a grip, or move the grips.")
        .arg(grips.join(QStringLiteral(", ")), massText(limitEachKg));
}

}  // namespace yardcast::ui
