#include "core/reinforcement/steel_checks.h"

#include <algorithm>
#include <cmath>

#include "core/castings/steel_in_casting.h"
#include "core/io/plan_words.h"
#include "core/materials/concrete_strength.h"
#include "core/materials/materials.h"
#include "core/reinforcement/detailing_rules.h"
#include "core/reinforcement/section.h"
#include "core/reinforcement/steel_depths.h"

namespace yardcast {

namespace {

constexpr double kEps = 1e-9;
/// A bar shorter than this share of what its anchorage needs on both sides is said.
constexpr double kShortShare = 0.995;

bool isFibre(SteelMaterial material) { return !reinforcementStrength(material).counted; }

/// The thinnest zone that a bar of the group runs through, the longest bar, and whether there is any at all.
struct Passage {
    double thicknessMm = std::numeric_limits<double>::infinity();
    double longestMm = 0.0;
    bool any = false;
};

Passage passageOf(const BarGroup& group, const std::vector<CastingPtr>& castings)
{
    Passage passage;
    for (const CastingPtr& casting : castings) {
        for (const BarStretch& bar : barPieces(group, casting->outline)) {
            passage.any = true;
            passage.thicknessMm = std::min(passage.thicknessMm, thinnestAlongMm(*casting, bar));
            passage.longestMm = std::max(passage.longestMm, bar.lengthMm());
        }
    }
    return passage;
}

}  // namespace

double fctk005Mpa(const Plan& plan, const std::string& mixId)
{
    const Mix* mix = findMix(plan, mixId);
    const auto concrete = concreteProperties(readClass(mix != nullptr ? mix->strengthClass : Mix{}.strengthClass).taken);
    return concrete.value_or(concreteProperties(25.0)).fctk005Mpa;
}

void SteelChecks::Shared::see(const std::string& part, double measure, const std::string& where,
                              std::map<std::string, FindingValue> own)
{
    if (parts.empty() || parts.back() != part) parts.push_back(part);
    if (!(measure < least)) return;
    least = measure;
    pointer = where;
    values = std::move(own);
}

SteelChecks::SteelChecks(const Plan& plan, std::vector<Finding>& findings)
    : plan_(plan), findings_(findings), exposure_(assumptionsOf(plan).exposure),
      exposureWord_(wordFor(exposure_))
{
}

void SteelChecks::check(std::size_t index, const Steel& steel, const std::vector<CastingPtr>& castings)
{
    part_ = plan_.parts[index]->id;
    castings_ = &castings;
    thinnestMm_ = std::numeric_limits<double>::infinity();
    for (const CastingPtr& casting : castings) thinnestMm_ = std::min(thinnestMm_, thinnestAtFaceMm(*casting));
    const std::string mixId = castings.empty() ? std::string() : castings.front()->mix;
    const Mix* mix = findMix(plan_, mixId);
    aggregateMm_ = mix != nullptr && std::isfinite(maxAggregateMm(*mix)) ? maxAggregateMm(*mix) : 0.0;
    fctk005Mpa_ = fctk005Mpa(plan_, mixId);
    const std::string pointer = "/parts/" + std::to_string(index) + "/steel";
    if (steel.mesh) checkMesh(*steel.mesh, pointer + "/mesh");
    for (std::size_t i = 0; i < steel.bars.size(); ++i)
        checkBars(steel.bars[i], pointer + "/bars/" + std::to_string(i));
}

void SteelChecks::checkMesh(const Mesh& mesh, const std::string& pointer)
{
    checkCover(mesh.coverMm, mesh.barMm, 2 * mesh.barMm, thinnestMm_, mesh.material, pointer);
    checkClear(mesh.pitchMm - mesh.barMm, mesh.barMm, pointer + "/pitch_mm");
    const double most = mostSpacingMm(thinnestMm_, true);
    if (mesh.pitchMm > most + kEps) {
        add("mesh_wide", Severity::note, pointer + "/pitch_mm",
            {{"pitch_mm", mesh.pitchMm}, {"most_mm", most}, {"thickness_mm", thinnestMm_}});
    }
}

void SteelChecks::checkBars(const BarGroup& group, const std::string& pointer)
{
    const Passage passage = passageOf(group, *castings_);
    if (!passage.any) {
        add("bar_outside", Severity::caution, pointer, {{"cover_mm", group.coverMm}});
        return;
    }
    checkCover(group.coverMm, group.diameterMm, group.diameterMm, passage.thicknessMm, group.material, pointer);
    if (group.count > 1) {
        const double spacing = std::abs(group.spacingMm.value_or(kDefaultBarSpacingMm));
        checkClear(spacing - group.diameterMm, group.diameterMm, pointer + "/spacing_mm");
    }
    checkLength(group, passage.longestMm, pointer);
}

void SteelChecks::checkCover(double coverMm, double barMm, double steelMm, double thicknessMm, SteelMaterial material,
                             const std::string& pointer)
{
    const std::string at = pointer + "/cover_mm";
    if (coverMm + steelMm > thicknessMm + kEps) {
        add("cover_outside", Severity::stop, at,
            {{"cover_mm", coverMm}, {"steel_mm", steelMm}, {"thickness_mm", thicknessMm}});
        return;
    }
    if (isFibre(material)) {
        fibres_.see(part_, 0.0, pointer, {});
        return;
    }
    const double asked = coverAsked(exposure_, barMm, aggregateMm_).nominalMm;
    const double both = 2 * asked + steelMm;
    if (thicknessMm < both - kEps) {
        thinSlabs_.see(part_, thicknessMm, at,
                       {{"thickness_mm", thicknessMm}, {"asked_mm", both}, {"exposure", exposureWord_}});
    }
    const double least = std::min(coverMm, thicknessMm - coverMm - steelMm);
    if (!(least < asked - kEps) || material == SteelMaterial::stainless) return;
    Shared& shared = material == SteelMaterial::galvanised ? zincCover_ : plainCover_;
    shared.see(part_, least, at, {{"least_mm", least}, {"asked_mm", asked}, {"exposure", exposureWord_}});
}

void SteelChecks::checkClear(double clearMm, double diameterMm, const std::string& pointer)
{
    const double least = leastClearMm(diameterMm, aggregateMm_);
    if (clearMm >= least - kEps) return;
    add("bars_close", Severity::caution, pointer, {{"clear_mm", clearMm}, {"least_mm", least}});
}

void SteelChecks::checkLength(const BarGroup& group, double longestMm, const std::string& pointer)
{
    if (isFibre(group.material)) return;
    BarInConcrete held;
    held.diameterMm = group.diameterMm;
    held.coverMm = group.coverMm;
    const double anchorage = anchorageMm(held, fctk005Mpa_);
    const double share = longestMm / (2 * anchorage);
    if (!(share < kShortShare)) return;
    shortBars_.see(part_, share, pointer,
                   {{"length_mm", longestMm}, {"anchorage_mm", anchorage}, {"share_percent", 100 * share}});
}

void SteelChecks::add(const char* code, Severity severity, const std::string& pointer,
                      std::map<std::string, FindingValue> values)
{
    findings_.push_back({code, severity, {part_}, pointer, std::move(values), {}});
}

void SteelChecks::say(const char* code, const Shared& shared)
{
    if (shared.parts.empty()) return;
    findings_.push_back({code, Severity::note, shared.parts, shared.pointer, shared.values, {}});
}

void SteelChecks::sayWholePlan()
{
    say("cover_thin", plainCover_);
    say("cover_zinc", zincCover_);
    say("slab_thin", thinSlabs_);
    say("fibres_not_counted", fibres_);
    say("bars_short", shortBars_);
}

}  // namespace yardcast
