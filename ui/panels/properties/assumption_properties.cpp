#include <QCoreApplication>

#include "ui/look/number_text.h"
#include "ui/panels/fields/property_sheet.h"
#include "ui/panels/properties/properties.h"
#include "ui/panels/properties/shared_fields.h"
#include "ui/wording/names.h"

namespace yardcast::ui {

namespace {

QString tr(const char* text) { return QCoreApplication::translate("Properties", text); }

QStringList exposures()
{
    QStringList names;
    for (int i = 0; i <= static_cast<int>(Exposure::xs3); ++i) names << exposureName(static_cast<Exposure>(i));
    return names;
}

QStringList frosts()
{
    QStringList names;
    for (int i = 0; i <= static_cast<int>(Frost::xf4); ++i) names << frostName(static_cast<Frost>(i));
    return names;
}

}  // namespace

void describeAssumptions(PropertySheet& sheet)
{
    FieldColumn& column = sheet.group(tr("Assumptions of strength"));
    const Scope<std::optional<Assumptions>> own = planScope().member([](auto& p) { return &p.assumptions; });
    const Scope<Assumptions> content = contentOf(own);
    const QString path = QStringLiteral("plan.assumptions");
    column.check(path, tr("Assumptions"), tr("its own"), bindPresence(own, Assumptions()))
        .setHint(tr("What nobody has measured: factors, loads, surroundings. Without a tick the usual ones hold."));
    column
        .number(path + QStringLiteral(".stripping_factor"), tr("Stripping factor"),
                content.member([](auto& a) { return &a.strippingFactor; }), within({}, kFactorLimits))
        .setHint(tr("Own weight counts this much when the mould comes off and the piece is turned."));
    column
        .number(path + QStringLiteral(".handling_factor"), tr("Handling factor"),
                content.member([](auto& a) { return &a.handlingFactor; }), within({}, kFactorLimits))
        .setHint(tr("Likewise while it is carried and set down."));
    column.choice(path + QStringLiteral(".mould_surface"), tr("Mould base"),
                  content.member([](auto& a) { return &a.mouldSurface; }),
                  fixedOptions({mouldSurfaceName(MouldSurface::coated), mouldSurfaceName(MouldSurface::planed),
                                mouldSurfaceName(MouldSurface::rough)}));
    column
        .number(path + QStringLiteral(".suction_kpa"), tr("Suction"),
                content.member([](auto& a) { return &a.suctionKpa; }),
                optional(within(tr("kN/m²"), kSuctionLimits), tr("by the mould base")))
        .setHint(tr("How hard the casting sticks to the mould base: 1, 2 or 3 kN/m² by its surface."));
    column
        .number(path + QStringLiteral(".crack_safety"), tr("Crack safety"),
                content.member([](auto& a) { return &a.crackSafety; }), within({}, kFactorLimits))
        .setHint(tr("Strength over tension of a piece that must not crack when handled."));
    column.number(path + QStringLiteral(".even_load_kpa"), tr("Even load"),
                  content.member([](auto& a) { return &a.evenLoadKpa; }), within(tr("kN/m²"), kEvenLoadLimits));
    column
        .number(path + QStringLiteral(".person_n"), tr("A person"), content.member([](auto& a) { return &a.personN; }),
                optional(within(tr("N"), kPersonLimits), tr("by the counter")))
        .setHint(tr("At the worst spot: 1000 N on a worktop, 1500 N where a person may stand."));
    column
        .number(path + QStringLiteral(".bed_n_mm3"), tr("Stiffness of rests"),
                content.member([](auto& a) { return &a.bedNMm3; }), within(tr("N/mm³"), kBedLimits))
        .setHint(tr("Of what lies between a slab and its supports."));
    column.length(path + QStringLiteral(".late_corner_mm"), tr("Late corner"),
                  content.member([](auto& a) { return &a.lateCornerMm; }), within({}, kLateCornerLimits))
        .setHint(tr("How far above its rest one corner still hangs when the others are down."));
    column.choice(path + QStringLiteral(".exposure"), tr("Surroundings"),
                  content.member([](auto& a) { return &a.exposure; }), fixedOptions(exposures()));
    column.choice(path + QStringLiteral(".frost"), tr("Frost"), content.member([](auto& a) { return &a.frost; }),
                  fixedOptions(frosts()));
    column
        .number(path + QStringLiteral(".curing_class"), tr("Curing class"),
                content.member([](auto& a) { return &a.curingClass; }), within({}, kCuringClassLimits))
        .setHint(tr("EN 13670: keep moist until the surface has 35, 50 or 70 % of its strength (2, 3, 4)."));
    column
        .number(path + QStringLiteral(".strip_mpa"), tr("Strip at"), content.member([](auto& a) { return &a.stripMpa; }),
                within(tr("MPa"), kStripLimits))
        .setHint(tr("Mean compressive strength at which the mould may come off."));
}

}  // namespace yardcast::ui
