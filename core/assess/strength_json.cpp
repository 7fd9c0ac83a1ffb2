#include "core/assess/strength_json.h"

namespace yardcast {

namespace {

const char* refinementWord(Refinement refinement)
{
    switch (refinement) {
    case Refinement::draft: return "draft";
    case Refinement::working: return "working";
    case Refinement::printed: return "printed";
    }
    return "";
}

const char* sideWord(bool face)
{
    return face ? "face" : "underside";
}

Json placeJson(Point at, const PlaceName& name)
{
    return {{"at", pointJson(at)}, {"name", placeWords(name)}};
}

Json sectionJson(const SectionForces& section)
{
    return {{"name", placeWords(section.name)},
            {"cut", {{"from", pointJson(section.from)}, {"to", pointJson(section.to)}}},
            {"mean_moment_n", rounded(section.meanMomentN)},
            {"mean_force_n_per_mm", rounded(section.meanForceNMm)},
            {"mean_shear_n_per_mm", rounded(section.meanShearNMm)},
            {"width_mm", rounded(section.widthMm)},
            {"tension_mpa", rounded(section.tensionMpa)},
            {"use_percent", rounded(section.usePercent)}};
}

Json caseJson(const CastingStrength& casting, const CaseResult& result)
{
    Json sections = Json::array();
    for (const SectionForces& section : result.sections) sections.push_back(sectionJson(section));
    Json reactions = Json::array();
    Json lifted = Json::array();
    for (const HeldAt& held : result.held) {
        reactions.push_back({{"under", held.under},
                             {"n", rounded(held.forceN)},
                             {"at", pointJson(held.centre)},
                             {"touching_share", rounded(held.touchingShare)}});
        if (held.liftedOff) lifted.push_back(held.under);
    }
    return {{"casting", casting.casting},
            {"part", casting.part},
            {"case", strengthCaseWord(result.which)},
            {"refinement", refinementWord(casting.refinement)},
            {"age_h", rounded(result.ageH)},
            {"factor", rounded(result.factor)},
            {"suction_kpa", rounded(result.suctionKpa)},
            {"elastic_mpa", rounded(result.elasticMpa)},
            {"deflection_mm", rounded(result.deflectionMm)},
            {"tension_top_mpa", rounded(result.tensionTopMpa)},
            {"tension_bottom_mpa", rounded(result.tensionBottomMpa)},
            {"strength_mpa", rounded(result.strengthMpa)},
            {"use_percent", rounded(result.usePercent)},
            {"where", placeJson(result.at, result.place)},
            {"governs", sideWord(result.onFace)},
            {"holds", result.holds},
            {"face_up", result.faceUp},
            {"edge", result.edge < 0 ? Json() : Json(result.edge)},
            {"person_at", result.personGoverns ? pointJson(result.personAt) : Json()},
            {"sections", sections},
            {"reactions", reactions},
            {"lifts_off", lifted}};
}

Json checkJson(const CastingStrength& casting, const SteelCheck& check)
{
    return {{"casting", casting.casting},
            {"case", strengthCaseWord(check.which)},
            {"name", placeWords(check.name)},
            {"needed_at", sideWord(check.tensionAtFace)},
            {"design_moment_n", rounded(check.designMomentN)},
            {"cracking_moment_n", rounded(check.crackingMomentN)},
            {"resistance_n", rounded(check.resistanceN)},
            {"resistance_plain_n", rounded(check.resistancePlainN)},
            {"resistance_best_n", rounded(check.resistanceBestN)},
            {"steel_area_mm2_m", rounded(check.steelAreaMm2M)},
            {"effective_depth_mm", rounded(check.effectiveDepthMm)},
            {"shear_n_per_mm", rounded(check.shearNMm)},
            {"shear_resistance_n_per_mm", rounded(check.shearResistanceNMm)},
            {"crack_width_mm", rounded(check.crackWidthMm)},
            {"deflection_cracked_mm", rounded(check.deflectionCrackedMm)},
            {"breaks_without_warning", check.breaksWithoutWarning}};
}

}  // namespace

Json strengthJson(const std::vector<CastingStrengthPtr>& strength)
{
    Json list = Json::array();
    for (const CastingStrengthPtr& casting : strength) {
        if (!casting) continue;
        for (const CaseResult& result : casting->cases) list.push_back(caseJson(*casting, result));
    }
    return list;
}

Json strengthCastingsJson(const std::vector<CastingStrengthPtr>& strength)
{
    Json list = Json::array();
    for (const CastingStrengthPtr& casting : strength) {
        if (!casting) continue;
        Json grips = Json::array();
        for (const Point& grip : casting->grips) grips.push_back(pointJson(grip));
        const CaseResult* worst = casting->worst();
        list.push_back({{"casting", casting->casting},
                        {"part", casting->part},
                        {"refinement", refinementWord(casting->refinement)},
                        {"holds", !worst || worst->holds},
                        {"worst_case", worst ? Json(strengthCaseWord(worst->which)) : Json()},
                        {"use_percent", worst ? Json(rounded(worst->usePercent)) : Json()},
                        {"where", worst ? placeJson(worst->at, worst->place) : Json()},
                        {"grips", grips},
                        {"grips_proposed", casting->gripsProposed},
                        {"why_not", casting->whyNot.empty() ? Json() : Json(casting->whyNot)}});
    }
    return list;
}

Json steelChecksJson(const std::vector<CastingStrengthPtr>& strength)
{
    Json list = Json::array();
    for (const CastingStrengthPtr& casting : strength) {
        if (!casting) continue;
        for (const SteelCheck& check : casting->steel) list.push_back(checkJson(*casting, check));
    }
    return list;
}

}  // namespace yardcast
