#include "ui/panels/strength_values.h"

#include <QCoreApplication>

#include "core/materials/gravity.h"
#include "ui/wording/figures.h"
#include "ui/wording/names.h"
#include "ui/wording/strength_names.h"

namespace yardcast::ui {

namespace {

struct Strength {
    Q_DECLARE_TR_FUNCTIONS(yardcast::ui::StrengthCard)
};


QString mpaText(double mpa, int decimals = 2) { return Strength::tr("%1\u00a0MPa").arg(numberText(mpa, decimals)); }

QString meshText(Refinement refinement)
{
    return Strength::tr("triangles of some %1").arg(lengthText(meshSizeMm(refinement)));
}

}  // namespace

QList<FigureValue> caseValues(const CastingStrength& strength, const CaseResult& result, const Plan& plan)
{
    const Part* part = findPart(plan, strength.part);
    QList<FigureValue> values{{Strength::tr("Casting"), subjectName(&plan, strength.casting)},
                              {Strength::tr("Case"), Strength::tr("%1, %2").arg(strengthCaseName(result.which),
                                                                               ageText(result.ageH))}};
    if (!result.holds) return values;
    values.append({Strength::tr("Place"), placeText(result.place, part)});
    values.append({Strength::tr("Own weight times"), shortNumberText(result.factor, 2)});
    if (result.suctionKpa > 0.0) {
        values.append({Strength::tr("Held by the mould base"),
                       Strength::tr("%1\u00a0kN/m²").arg(shortNumberText(result.suctionKpa, 2))});
    }
    values.append({Strength::tr("Tension at the face"), mpaText(result.tensionTopMpa)});
    values.append({Strength::tr("Tension at the underside"), mpaText(result.tensionBottomMpa)});
    values.append({Strength::tr("Tension that may be asked"), mpaText(result.strengthMpa)});
    values.append({Strength::tr("Use"), percentText(result.usePercent, 1)});
    values.append({Strength::tr("Elastic modulus at that age"), mpaText(result.elasticMpa, 0)});
    values.append({Strength::tr("Largest deflection"),
                   Strength::tr("%1\u00a0mm").arg(numberText(result.deflectionMm, 2))});
    for (const HeldAt& held : result.held) {
        values.append({Strength::tr("Held at %1").arg(heldText(held.under)),
                       held.liftedOff ? Strength::tr("lifts off") : massText(held.forceN / kGravityMS2)});
    }
    values.append({Strength::tr("Computed on"), meshText(strength.refinement)});
    return values;
}

QList<FigureValue> sectionValues(const SectionForces& section, const CaseResult& result, const Part* part)
{
    return {{Strength::tr("Cut"), placeText(section.name, part)},
            {Strength::tr("Case"), strengthCaseName(result.which)},
            {Strength::tr("Concrete along it"), lengthText(section.widthMm)},
            {Strength::tr("Mean moment"), Strength::tr("%1\u00a0Nm/m").arg(numberText(section.meanMomentN, 1))},
            {Strength::tr("Mean force in the plane"), Strength::tr("%1\u00a0N/mm").arg(numberText(section.meanForceNMm, 2))},
            {Strength::tr("Mean shear"), Strength::tr("%1\u00a0N/mm").arg(numberText(section.meanShearNMm, 2))},
            {Strength::tr("Largest tension along it"), mpaText(section.tensionMpa)},
            {Strength::tr("Use"), percentText(section.usePercent, 1)}};
}

}  // namespace yardcast::ui
