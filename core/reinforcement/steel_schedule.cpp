#include "core/reinforcement/steel_schedule.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <string_view>
#include <unordered_map>

#include "core/castings/steel_in_casting.h"
#include "core/materials/concrete_strength.h"
#include "core/reinforcement/detailing_rules.h"
#include "core/reinforcement/mesh_sheets.h"
#include "core/reinforcement/steel_depths.h"

namespace yardcast {

namespace {

/// EN 1992-1-1 Table 4.4N, structural class S4: 30 mm in XC4, and 10 mm allowed for deviation (4.4.1.3).
constexpr double kOutdoorCoverMm = 40.0;

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

const Steel* steelOf(const Part& part)
{
    if (const auto* counter = std::get_if<Counter>(&part.body)) return counter->steel ? &*counter->steel : nullptr;
    if (const auto* panel = std::get_if<Panel>(&part.body)) return panel->steel ? &*panel->steel : nullptr;
    return nullptr;
}

double thinnestAtFaceMm(const std::vector<CastingPtr>& castings)
{
    double least = std::numeric_limits<double>::infinity();
    for (const CastingPtr& casting : castings) least = std::min(least, thinnestAtFaceMm(*casting));
    return least;
}

/// The thinnest zone that a bar of the group runs through, and whether there is any bar at all.
struct Passage {
    double thicknessMm = std::numeric_limits<double>::infinity();
    bool any = false;
};

Passage passageOf(const BarGroup& group, const std::vector<CastingPtr>& castings)
{
    Passage passage;
    for (const CastingPtr& casting : castings) {
        for (const BarPiece& bar : barPieces(group, casting->outline)) {
            passage.any = true;
            passage.thicknessMm = std::min(passage.thicknessMm, thinnestAlongMm(*casting, bar));
        }
    }
    return passage;
}

/// What is said once for the whole plan.
struct ThinCover {
    std::vector<std::string> parts;
    double leastMm = std::numeric_limits<double>::infinity();
    std::string pointer;

    void see(const std::string& part, double coverMm, const std::string& where)
    {
        if (!(coverMm < kOutdoorCoverMm)) return;
        if (parts.empty() || parts.back() != part) parts.push_back(part);
        if (coverMm < leastMm) {
            leastMm = coverMm;
            pointer = where;
        }
    }
};

class PartChecks {
public:
    PartChecks(const Plan& plan, std::size_t index, const std::vector<CastingPtr>& castings, ThinCover& thin,
               std::vector<Finding>& findings)
        : castings_(castings), thin_(thin), findings_(findings), part_(*plan.parts[index]),
          pointer_("/parts/" + std::to_string(index) + "/steel"), thinnestMm_(thinnestAtFaceMm(castings))
    {
        const Mix* mix = castings.empty() ? nullptr : findMix(plan, castings.front()->mix);
        aggregateMm_ = mix != nullptr && std::isfinite(mix->bag.maxAggregateMm) ? mix->bag.maxAggregateMm : 0.0;
    }

    void check(const Mesh& mesh)
    {
        const std::string at = pointer_ + "/mesh";
        checkCover(mesh.coverMm, 2 * mesh.barMm, thinnestMm_, at);
        checkClear(mesh.pitchMm - mesh.barMm, mesh.barMm, at + "/pitch_mm");
    }

    void check(const BarGroup& group, std::size_t index)
    {
        const std::string at = pointer_ + "/bars/" + std::to_string(index);
        const Passage passage = passageOf(group, castings_);
        if (!passage.any) {
            add("bar_outside", Severity::caution, at, {{"cover_mm", group.coverMm}});
            return;
        }
        checkCover(group.coverMm, group.diameterMm, passage.thicknessMm, at);
        if (group.count > 1) {
            const double spacing = std::abs(group.spacingMm.value_or(kDefaultBarSpacingMm));
            checkClear(spacing - group.diameterMm, group.diameterMm, at + "/spacing_mm");
        }
    }

private:
    /// `steelMm` is how thick the steel lies on its cover; behind it, the cover is what remains.
    void checkCover(double coverMm, double steelMm, double thicknessMm, const std::string& at)
    {
        const std::string pointer = at + "/cover_mm";
        if (coverMm + steelMm > thicknessMm + 1e-9) {
            add("cover_outside", Severity::stop, pointer,
                {{"cover_mm", coverMm}, {"steel_mm", steelMm}, {"thickness_mm", thicknessMm}});
            return;
        }
        thin_.see(part_.id, std::min(coverMm, thicknessMm - coverMm - steelMm), pointer);
    }

    void checkClear(double clearMm, double diameterMm, const std::string& pointer)
    {
        const double least = leastClearMm(diameterMm, aggregateMm_);
        if (clearMm >= least - 1e-9) return;
        add("bars_close", Severity::caution, pointer, {{"clear_mm", clearMm}, {"least_mm", least}});
    }

    void add(const char* code, Severity severity, const std::string& pointer,
             std::map<std::string, FindingValue> values)
    {
        findings_.push_back({code, severity, {part_.id}, pointer, std::move(values), {}});
    }

    const std::vector<CastingPtr>& castings_;
    ThinCover& thin_;
    std::vector<Finding>& findings_;
    const Part& part_;
    std::string pointer_;
    double thinnestMm_;
    double aggregateMm_ = 0.0;
};

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

/// Of the mix at 28 days; of the usual C25/30 where the plan does not say.
double fctk005Mpa(const Plan& plan, const std::string& mixId)
{
    const Mix* mix = findMix(plan, mixId);
    const auto concrete = concreteProperties(mix != nullptr ? mix->strengthClass : Mix{}.strengthClass);
    return concrete.value_or(concreteProperties(25.0)).fctk005Mpa;
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
    ThinCover thin;
    for (std::size_t i = 0; i < plan.parts.size(); ++i) {
        const Steel* steel = steelOf(*plan.parts[i]);
        const auto own = ofPart.find(plan.parts[i]->id);
        if (steel == nullptr || own == ofPart.end()) continue;
        PartChecks checks(plan, i, own->second, thin, findings);
        if (steel->mesh) checks.check(*steel->mesh);
        for (std::size_t k = 0; k < steel->bars.size(); ++k) checks.check(steel->bars[k], k);
        for (const CastingPtr& casting : own->second) {
            addCasting(schedule, *casting, *steel, totals);
            schedule.layouts.push_back(layouts.of(casting, *plan.parts[i], fctk005Mpa(plan, casting->mix)));
        }
        ofPart.erase(own);  // an id that comes twice must not count twice
    }
    layouts.endRound();
    for (const auto& [kind, total] : totals) schedule.barTotals.push_back(total);
    if (!thin.parts.empty()) {
        findings.push_back({"cover_thin",
                            Severity::note,
                            thin.parts,
                            thin.pointer,
                            {{"least_mm", thin.leastMm}, {"asked_mm", kOutdoorCoverMm}},
                            {}});
    }
    return schedule;
}

}  // namespace yardcast
