#include "core/structure/steel_worth.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <tuple>

#include "core/materials/concrete_strength.h"
#include "core/reinforcement/section_check.h"
#include "core/structure/body.h"

namespace yardcast {

namespace {

/// EN 1990 Table A1.2(B): unfavourable (from memory).
constexpr double kPermanentFactor = 1.35;
constexpr double kVariableFactor = 1.5;
/// EN 1992-1-1 Table 7.1N, reinforced members outdoors.
constexpr double kWidestCrackMm = 0.3;
/// Steel that bears less than this share of what it could on the pulled side lies on the wrong one. Judgement.
constexpr double kWrongSideShare = 0.5;
/// Moments below this share of what cracks the section say nothing about its steel.
constexpr double kWorthAsking = 0.05;
constexpr int kSamplesAlongCut = 200;

/// The cut as one section: a plate with what hangs below it, flush at the face.
struct CutSection {
    double widthMm = 0.0;
    double deepestMm = 0.0;
    double deepWidthMm = 0.0;    ///< of what is deepest
    double modulusFaceMm2 = 0.0; ///< elastic, per mm of width
    double modulusBottomMm2 = 0.0;
};

CutSection sectionOf(const std::vector<CutDepth>& depths)
{
    CutSection section;
    double area = 0.0;
    double first = 0.0;
    double second = 0.0;
    for (const CutDepth& part : depths) {
        section.widthMm += part.widthMm;
        area += part.widthMm * part.depthMm;
        first += part.widthMm * part.depthMm * part.depthMm / 2;
        second += part.widthMm * part.depthMm * part.depthMm * part.depthMm / 3;
        section.deepestMm = part.depthMm;
        section.deepWidthMm = part.widthMm;
    }
    if (!(area > 0.0)) return section;
    const double centre = first / area;
    const double inertia = second - area * centre * centre;
    section.modulusFaceMm2 = inertia / centre / section.widthMm;
    section.modulusBottomMm2 = inertia / (section.deepestMm - centre) / section.widthMm;
    return section;
}

/// What of an action in use is lasting is known from the case of own weight at the same cut.
const SectionForces* sameCut(const CaseResult& other, const SectionForces& section)
{
    for (const SectionForces& one : other.sections) {
        if (one.name == section.name && one.from == section.from && one.to == section.to) return &one;
    }
    return nullptr;
}

SectionAction actionOf(const CaseResult& result, const SectionForces& section, const CaseResult* own)
{
    SectionAction action;
    action.serviceMomentN = section.meanMomentN;
    const SectionForces* lasting = result.which == StrengthCase::inPlace && own ? sameCut(*own, section) : nullptr;
    if (lasting) {
        action.designMomentN = kPermanentFactor * lasting->meanMomentN
            + kVariableFactor * (section.meanMomentN - lasting->meanMomentN);
        action.designShearNMm = kPermanentFactor * lasting->meanShearNMm
            + kVariableFactor * (section.meanShearNMm - lasting->meanShearNMm);
    } else {
        action.designMomentN = kPermanentFactor * section.meanMomentN;
        action.designShearNMm = kPermanentFactor * section.meanShearNMm;
        action.lasting = result.which == StrengthCase::ownWeight;
    }
    return action;
}

/// The cuts are the same in all cases.
using KnownCuts = std::map<std::array<double, 4>, CutSection>;

SteelCheck checkOf(const StrengthInput& input, const CaseResult& result, const SectionForces& section,
                   const SectionAction& action, KnownCuts& known)
{
    const auto [place, isNew] = known.try_emplace({section.from.x, section.from.y, section.to.x, section.to.y});
    if (isNew) place->second = sectionOf(cutDepths(*input.casting, section.from, section.to));
    const CutSection& cut = place->second;
    const StrengthAtAge concrete = concreteAtAge(input, result.ageH);
    SteelCheck check;
    check.which = result.which;
    check.name = section.name;
    check.tensionAtFace = action.designMomentN < 0.0;
    check.designMomentN = std::abs(action.designMomentN);
    check.shearNMm = std::abs(action.designShearNMm);
    if (!(cut.widthMm > 0.0) || !(concrete.fcmMpa > 0.0)) return check;

    // Pulled at the face, only what reaches the underside is pressed there: all the steel works on that width.
    const double share = check.tensionAtFace ? cut.deepWidthMm / cut.widthMm : 1.0;
    std::vector<SteelLayer> layers;
    if (const Steel* steel = steelOf(input.body)) {
        layers = layersAcross(*steel, input.casting->outline, section.from, section.to, cut.widthMm,
                              concrete.fctk005Mpa);
    }
    for (SteelLayer& layer : layers) layer.areaMm2Mm /= share;
    SectionAction scaled = action;
    scaled.designMomentN /= share;
    scaled.serviceMomentN /= share;
    scaled.designShearNMm /= share;
    const SectionCheck found = checkSection(cut.deepestMm, layers, concrete, scaled);

    const double modulus = check.tensionAtFace ? cut.modulusFaceMm2 : cut.modulusBottomMm2;
    const double rectangle = cut.deepestMm * cut.deepestMm / 6 * share;
    const double form = rectangle > 0.0 ? modulus / rectangle : 1.0;
    check.crackingMomentN = found.crackingMomentN * share * form;
    check.resistanceN = found.resistanceN * share;
    check.resistancePlainN = found.resistancePlainN * share * form;
    check.resistanceBestN = found.resistanceBestN * share;
    check.steelAreaMm2M = found.steelAreaMm2M * share;
    check.effectiveDepthMm = found.effectiveDepthMm;
    check.shearResistanceNMm = found.shearResistanceNMm * share;
    const bool cracks = std::abs(action.serviceMomentN) > check.crackingMomentN;
    check.crackWidthMm = cracks ? found.crackWidthMm : 0.0;
    if (cracks) check.deflectionCrackedMm = result.deflectionMm * found.softening;
    const SafetyFactors likely{1.0, 1.0, 1.0};
    const double fck = concrete.fckMpa.value_or(std::max(concrete.fcmMpa - 8.0, 0.0));
    const TensionSide side = check.tensionAtFace ? TensionSide::face : TensionSide::underside;
    check.breaksWithoutWarning = breaksWithoutWarning(
        bendingResistance(cut.deepestMm, fck, layers, side, likely).momentN * share, check.crackingMomentN);
    return check;
}

/// How much of what the section bears is asked of it; without steel that serves, as plain concrete.
double askedOf(const SteelCheck& check)
{
    const double bears = std::max(check.resistanceN, check.resistancePlainN);
    return bears > 0.0 ? check.designMomentN / bears : (check.designMomentN > 0.0 ? HUGE_VAL : 0.0);
}

Finding about(const StrengthInput& input, const SteelCheck& check, const char* code, Severity severity)
{
    Finding finding = findingAbout(input, code, severity);
    finding.values = {{"case", std::string(strengthCaseWord(check.which))},
                      {"place", placeWords(check.name)},
                      {"design_nm", check.designMomentN},
                      {"resistance_nm", check.resistanceN},
                      {"best_nm", check.resistanceBestN},
                      {"plain_nm", check.resistancePlainN},
                      {"cracking_nm", check.crackingMomentN},
                      {"crack_mm", check.crackWidthMm},
                      {"tension_at_face", check.tensionAtFace ? 1.0 : 0.0}};
    return finding;
}

}  // namespace

std::vector<CutDepth> cutDepths(const Casting& casting, Point from, Point to)
{
    std::map<double, double> widths;
    const double step = distance(from, to) / kSamplesAlongCut;
    for (int i = 0; i < kSamplesAlongCut; ++i) {
        const Point p = from + (to - from) * ((i + 0.5) / kSamplesAlongCut);
        for (const Zone& zone : casting.zones) {
            if (zone.isConcrete() && contains(zone.region, p)) {
                widths[zone.toMm - zone.fromMm] += step;
                break;
            }
        }
    }
    std::vector<CutDepth> depths;
    for (const auto& [depth, width] : widths) depths.push_back({depth, width});
    return depths;
}

std::vector<SteelCheck> steelWorth(const StrengthInput& input, const std::vector<CaseResult>& cases)
{
    if (input.casting->kind == PartKind::support) return {};
    const auto own = std::find_if(cases.begin(), cases.end(),
                                  [](const CaseResult& result) { return result.which == StrengthCase::ownWeight; });
    std::vector<SteelCheck> checks;
    KnownCuts cuts;
    for (const CaseResult& result : cases) {
        if (!result.holds) continue;
        for (const SectionForces& section : result.sections) {
            const SectionAction action = actionOf(result, section, own == cases.end() ? nullptr : &*own);
            if (action.designMomentN == 0.0) continue;
            const bool atFace = action.designMomentN < 0.0;
            const auto known = std::find_if(checks.begin(), checks.end(), [&](const SteelCheck& check) {
                return check.name == section.name && check.tensionAtFace == atFace;
            });
            SteelCheck check = checkOf(input, result, section, action, cuts);
            if (check.designMomentN < kWorthAsking * check.crackingMomentN) continue;
            if (known == checks.end()) {
                checks.push_back(std::move(check));
            } else if (askedOf(check) > askedOf(*known)) {
                *known = std::move(check);
            }
        }
    }
    return checks;
}

void addSteelFindings(const StrengthInput& input, const std::vector<SteelCheck>& checks,
                      std::vector<Finding>& findings)
{
    const Steel* steel = steelOf(input.body);
    const bool hasSteel = steel && (steel->mesh || !steel->bars.empty());
    const SteelCheck* weak = nullptr;
    const SteelCheck* wrong = nullptr;
    const SteelCheck* wide = nullptr;
    const SteelCheck* brittle = nullptr;
    for (const SteelCheck& check : checks) {
        const double asked = askedOf(check);
        const bool plainBears = check.designMomentN <= check.resistancePlainN;
        const bool onWrongSide = hasSteel && !plainBears && check.designMomentN > check.resistanceN
            && check.designMomentN <= check.resistanceBestN
            && check.resistanceN < kWrongSideShare * check.resistanceBestN;
        if (onWrongSide && (!wrong || asked > askedOf(*wrong))) wrong = &check;
        if (asked > 1.0 && !onWrongSide && (!weak || asked > askedOf(*weak))) weak = &check;
        if (check.crackWidthMm > kWidestCrackMm && (!wide || check.crackWidthMm > wide->crackWidthMm)) wide = &check;
        if (hasSteel && check.breaksWithoutWarning && (!brittle || asked > askedOf(*brittle))) brittle = &check;
    }
    if (weak && !hasSteel) {
        findings.push_back(about(input, *weak, "steel_missing", Severity::caution));
    } else if (weak && weak->steelAreaMm2M <= 0.0) {
        findings.push_back(about(input, *weak, "steel_absent", Severity::caution));
    } else if (weak) {
        findings.push_back(about(input, *weak, "steel_weak", Severity::caution));
    }
    if (wrong) findings.push_back(about(input, *wrong, "steel_wrong_side", Severity::caution));
    if (wide) findings.push_back(about(input, *wide, "steel_wide_crack", Severity::caution));
    if (brittle) findings.push_back(about(input, *brittle, "steel_brittle", Severity::note));
}

}  // namespace yardcast
