#include <algorithm>
#include <cmath>
#include <map>

#include "core/structure/in_use.h"
#include "core/structure/places.h"

namespace yardcast {

namespace {

/// Common practice, no source: a bearing of 40 mm is wanted for a slab's end (a 60 mm panel shared by two slabs leaves
/// 27 or 28). EN 1992-1-1 10.9.5.2 has the same order: 40 mm for light loads on concrete (from memory).
constexpr double kWantedBearingMm = 40.0;
/// Where less than this share of a rest is touched by concrete the rest is as good as foam.
constexpr double kHardlyTouched = 0.05;
/// Common practice, no source: a free overhang of at most a third of the slab's length that way; short ones never
/// matter.
constexpr double kOverhangShare = 1.0 / 3.0;
constexpr double kShortOverhangMm = 150.0;
/// A bow of less is not seen, mm. Our choice.
constexpr double kSeenBowMm = 1.0;
constexpr double kFullPercent = 100.0;

/// Grooves and rebates are not meshed (core/structure/body.cpp): says so, and by how much bending stress grows where the
/// concrete is thinnest for them, as the square of the thickness. The notch itself is in no figure.
void addGrooveFinding(const StrengthInput& input, std::vector<Finding>& findings)
{
    const Casting& casting = *input.casting;
    if (casting.kind != PartKind::counter) return;
    double wholeMm = 0.0;
    double leftMm = 0.0;
    double most = 1.0;
    for (const Zone& zone : casting.zones) {
        if (!zone.isConcrete() || !(zone.grooveMm > 0.0 || zone.fromMm > 0.0)) continue;
        const double whole = zone.toMm + zone.grooveMm;
        const double factor = (whole / zone.depthMm()) * (whole / zone.depthMm());
        if (!(factor > most)) continue;
        most = factor;
        wholeMm = whole;
        leftMm = zone.depthMm();
    }
    if (!(most > 1.0)) return;
    Finding finding = findingAbout(input, "grooves_not_solved", Severity::note);
    finding.values = {{"thickness_mm", wholeMm}, {"left_mm", leftMm}, {"more_percent", (most - 1.0) * 100}};
    findings.push_back(std::move(finding));
}

}  // namespace

double curlMm(double lengthMm, double thicknessMm)
{
    return thicknessMm > 0.0 ? kOneSidedShrinkage / thicknessMm * lengthMm * lengthMm / 8 : 0.0;
}

void addBearingFindings(const StrengthInput& input, std::vector<Finding>& findings)
{
    const Casting& casting = *input.casting;
    for (const Rest& rest : input.rests) {
        const double whole = areaMm2(rest.footprint);
        const double touched = areaMm2(rest.bearing);
        if (touched < (1.0 - 1e-6) * whole) {
            const bool hardly = touched < kHardlyTouched * whole;
            Finding finding = findingAbout(input, "rest_on_foam", hardly ? Severity::caution : Severity::note);
            finding.values = {{"under", rest.under}, {"touched_percent", 100 * touched / whole}};
            findings.push_back(std::move(finding));
        }
        if (touched > 0.0 && rest.lengthMm < kWantedBearingMm) {
            Finding finding = findingAbout(input, "bearing_short", Severity::caution);
            finding.values = {{"under", rest.under}, {"bearing_mm", rest.lengthMm}, {"wanted_mm", kWantedBearingMm}};
            findings.push_back(std::move(finding));
        }
    }
    // A post is overhung on all its sides: the worst of them says it.
    std::map<std::size_t, Overhang> worstOverhang;
    for (const Overhang& o : overhangsOf(input)) {
        if (o.lengthMm <= kShortOverhangMm || o.lengthMm <= kOverhangShare * o.slabMm) continue;
        const auto [worst, first] = worstOverhang.try_emplace(static_cast<std::size_t>(o.rest), o);
        if (!first && o.lengthMm / o.slabMm > worst->second.lengthMm / worst->second.slabMm) worst->second = o;
    }
    for (const auto& [rest, o] : worstOverhang) {
        Finding finding = findingAbout(input, "overhang_long", Severity::caution);
        finding.values = {{"under", input.rests[rest].under},
                          {"overhang_mm", o.lengthMm},
                          {"usual_mm", kOverhangShare * o.slabMm}};
        findings.push_back(std::move(finding));
    }
    double thinnest = casting.deepestMm;
    for (const Zone& zone : casting.zones) {
        if (zone.isConcrete()) thinnest = std::min(thinnest, zone.depthMm());
    }
    const double longest = std::max(casting.boundsMm.width(), casting.boundsMm.height());
    const double bow = curlMm(longest, thinnest);
    if (bow > kSeenBowMm) {
        Finding finding = findingAbout(input, "curls", Severity::note);
        finding.values = {{"bow_mm", bow}, {"length_mm", longest}};
        findings.push_back(std::move(finding));
    }
    addGrooveFinding(input, findings);
}

void addInUseFindings(const StrengthInput& input, const std::vector<CaseResult>& cases,
                      std::vector<Finding>& findings)
{
    const CaseResult* worst = nullptr;
    for (const CaseResult& result : cases) {
        if (!result.holds) {
            // Leant on it tips; by itself it does not even lie still. One says it for both.
            const bool byItself = result.which == StrengthCase::ownWeight;
            Finding finding = findingAbout(input, byItself ? "tips" : "tips_in_use", Severity::stop);
            if (!byItself && result.personGoverns) {
                finding.values = {{"x_mm", result.personAt.x}, {"y_mm", result.personAt.y}};
            }
            findings.push_back(std::move(finding));
            if (byItself) return;
            continue;
        }
        if (!worst || result.usePercent > worst->usePercent) worst = &result;
    }
    for (const CaseResult& result : cases) {
        if (result.which != StrengthCase::ownWeight) continue;
        for (const HeldAt& held : result.held) {
            // What rests on foam has its own sentence.
            const bool onFoam = held.touchingShare == 0.0 && areaMm2(held.region) <= 0.0;
            if (!held.liftedOff || onFoam) continue;
            Finding finding = findingAbout(input, "lifts_off", Severity::caution);
            finding.values = {{"under", held.under}};
            findings.push_back(std::move(finding));
        }
    }
    const double safety = input.assumptions.crackSafety;
    for (const CaseResult& result : cases) {
        if (result.which != StrengthCase::ownWeight || !result.holds || result.usePercent <= kFullPercent) continue;
        const bool surely = result.usePercent > kFullPercent * safety;
        Finding finding = findingAbout(input, "cracks_by_itself", surely ? Severity::stop : Severity::caution);
        finding.values = {{"case", std::string(strengthCaseWord(result.which))},
                          {"use_percent", result.usePercent},
                          {"tension_mpa", std::max(result.tensionTopMpa, result.tensionBottomMpa)},
                          {"strength_mpa", result.strengthMpa},
                          {"place", placeWords(result.place)}};
        findings.push_back(std::move(finding));
    }
    if (!worst || worst->which == StrengthCase::ownWeight || worst->usePercent <= kFullPercent) return;
    const bool surely = worst->usePercent > kFullPercent * safety;
    Finding finding = findingAbout(input, surely ? "cracks_surely_in_place" : "cracks_in_place",
                            surely ? Severity::stop : Severity::caution);
    finding.values = {{"case", std::string(strengthCaseWord(worst->which))},
                      {"use_percent", worst->usePercent},
                      {"tension_mpa", std::max(worst->tensionTopMpa, worst->tensionBottomMpa)},
                      {"strength_mpa", worst->strengthMpa},
                      {"safety", safety},
                      {"place", placeWords(worst->place)},
                      {"load", std::string(worst->personGoverns ? "person" : "even")}};
    finding.values["person_kg"] = personLoadN(input) / kGravityMS2;
    finding.values["even_kpa"] = input.assumptions.evenLoadKpa;
    findings.push_back(std::move(finding));
}

}  // namespace yardcast
