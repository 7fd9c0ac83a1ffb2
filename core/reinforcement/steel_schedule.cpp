#include "core/reinforcement/steel_schedule.h"

#include <algorithm>
#include <map>
#include <string_view>
#include <unordered_map>

#include "core/reinforcement/detailing_rules.h"
#include "core/reinforcement/mesh_sheets.h"
#include "core/reinforcement/steel_checks.h"

namespace yardcast {

namespace {

/// How much more than the net area has to be laid because sheets lap; the sheets lie the better way round.
double lapFactor(double lengthMm, double widthMm, double barMm, double pitchMm)
{
    if (!(lengthMm > 0.0 && widthMm > 0.0)) return 1.0;
    const double lap = meshLapMm(barMm, pitchMm);
    const auto laid = [&](double sheetLength, double sheetWidth) {
        return lappedSpan(lengthMm, sheetLength, lap).laidMm * lappedSpan(widthMm, sheetWidth, lap).laidMm;
    };
    const double along = laid(kMeshSheet.width, kMeshSheet.depth);
    const double across = laid(kMeshSheet.depth, kMeshSheet.width);
    return std::min(along, across) / (lengthMm * widthMm);
}

using BarTotals = std::map<std::pair<double, SteelMaterial>, DiameterTotal>;

void addCasting(SteelSchedule& schedule, const Casting& casting, const Steel& steel,
                BarTotals& totals)
{
    for (const SteelItem& item : casting.steel) {
        schedule.massKg += item.massKg;
        if (item.mesh) {
            const double cover = steel.mesh ? steel.mesh->coverMm : 0.0;
            const Box& box = casting.boundsMm;
            const double factor = lapFactor(box.width() - 2 * cover, box.height() - 2 * cover,
                                            item.diameterMm, item.pitchMm);
            MeshNeed need{casting.id, item.diameterMm, item.pitchMm, item.meshAreaM2, item.meshAreaM2 * factor,
                          item.massKg, item.material};
            schedule.meshAreaM2 += need.withLapsM2;
            schedule.meshes.push_back(std::move(need));
        } else {
            schedule.bars.push_back(
                {casting.id, item.diameterMm, item.lengthMm, item.count, item.massKg, item.material});
            DiameterTotal& total = totals[{item.diameterMm, item.material}];
            total.material = item.material;
            total.diameterMm = item.diameterMm;
            total.lengthM += item.lengthMm * item.count / 1000;
            total.massKg += item.massKg;
        }
    }
}

}  // namespace

SteelSchedule steelSchedule(const Plan& plan, const std::vector<CastingPtr>& castings,
                            std::vector<Finding>& findings, SteelLayouts* known)
{
    std::unordered_map<std::string_view, std::vector<CastingPtr>> ofPart;
    for (const CastingPtr& casting : castings) ofPart[casting->part].push_back(casting);

    SteelSchedule schedule;
    SteelLayouts fresh;
    SteelLayouts& layouts = known != nullptr ? *known : fresh;
    BarTotals totals;
    SteelChecks checks(plan, findings);
    for (std::size_t i = 0; i < plan.parts.size(); ++i) {
        const Steel* steel = steelOf(plan.parts[i]->body);
        const auto own = ofPart.find(plan.parts[i]->id);
        if (steel == nullptr || own == ofPart.end()) continue;
        checks.check(i, *steel, own->second);
        for (const CastingPtr& casting : own->second) {
            addCasting(schedule, *casting, *steel, totals);
            schedule.layouts.push_back(layouts.of(casting, *plan.parts[i], fctk005Mpa(plan, casting->mix)));
        }
        ofPart.erase(own);  // an id that comes twice must not count twice
    }
    layouts.endRound();
    for (const auto& [kind, total] : totals) schedule.barTotals.push_back(total);
    checks.sayWholePlan();
    return schedule;
}

}  // namespace yardcast
