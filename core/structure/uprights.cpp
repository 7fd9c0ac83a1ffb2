#include "core/structure/uprights.h"

#include <algorithm>
#include <cmath>
#include <string>
#include <variant>

#include "core/materials/concrete_strength.h"
#include "core/structure/body.h"
#include "core/structure/handling_contact.h"

namespace yardcast {

namespace {

/// An upright longer than this many pads rocks on one.
constexpr double kOnePadReach = 2.0;

struct UprightSizes {
    double lengthMm = 0.0;
    double thicknessMm = 0.0;
    double heightMm = 0.0;
    double baseMm = 0.0;
    const Pads* pads = nullptr;
};

UprightSizes sizesOf(const StrengthInput& input)
{
    if (const auto* support = std::get_if<Support>(&input.body)) {
        return {support->lengthMm, support->widthMm, support->heightMm, support->baseMm,
                support->pads ? &*support->pads : nullptr};
    }
    if (const auto* panel = std::get_if<Panel>(&input.body)) {
        return {panel->lengthMm, panel->thicknessMm, panel->heightMm, panel->baseMm, nullptr};
    }
    return {};
}

bool isUpright(const StrengthInput& input)
{
    const UprightSizes sizes = sizesOf(input);
    return input.casting && sizes.lengthMm > 0.0 && sizes.thicknessMm > 0.0 && sizes.heightMm > 0.0;
}

double areaOf(const Box& box) { return box.width() * box.height(); }

/// Where the weight acts, seen from above.
Point resultant(const StrengthInput& input, const UprightSizes& sizes, double ownN, double totalN)
{
    const Casting& casting = *input.casting;
    const Point moment = Point{casting.centroidMm[0], casting.centroidMm[1]} * ownN +
                         Point{input.carriedAtMm, sizes.thicknessMm / 2} * input.carriedN;
    return moment * (1.0 / totalN);
}

/// Greatest pressure below one block under a force off its middle, along its length: linear, pressed only.
double pressureUnder(const Box& block, double forceN, double offMm)
{
    const double length = block.width();
    const double off = std::abs(offMm);
    if (off <= length / 6) return forceN / areaOf(block) * (1.0 + 6.0 * off / length);
    return off < length / 2 ? 2.0 * forceN / (3.0 * (length / 2 - off) * block.height()) : 0.0;
}

/// Forces of equal springs at the middles of the pads under a rigid body.
PressingAnswer onPads(const StandingPads& pads, Point at, double forceN)
{
    const bool twoRows = pads.around.height() > pads.pads.front().height() + 1e-9;
    const double reach = std::max(1.0, pads.around.width());
    // Between the middle of an outer pad and its edge that pad carries all.
    Point low = pads.pads.front().centre();
    Point high = low;
    for (const Box& pad : pads.pads) {
        const Point p = pad.centre();
        low = {std::min(low.x, p.x), std::min(low.y, p.y)};
        high = {std::max(high.x, p.x), std::max(high.y, p.y)};
    }
    at = {std::clamp(at.x, low.x, high.x), std::clamp(at.y, low.y, high.y)};
    PressingPlaces places;
    places.count = static_cast<int>(pads.pads.size());
    places.modes = places.count == 1 ? 1 : (twoRows ? 3 : 2);
    const auto lever = [&](Point p) {
        const Point arm = p - pads.around.centre();
        std::vector<double> row{1.0, arm.x / reach, arm.y / reach};
        row.resize(static_cast<std::size_t>(places.modes));
        return row;
    };
    places.flexibility.assign(pads.pads.size() * pads.pads.size(), 0.0);
    places.giveMmN.assign(pads.pads.size(), 1.0);
    places.gapMm.assign(pads.pads.size(), 0.0);
    places.movedMm.assign(pads.pads.size(), 0.0);
    for (const Box& pad : pads.pads) {
        for (const double value : lever(pad.centre())) places.lever.push_back(value);
    }
    for (const double value : lever(at)) places.load.push_back(-forceN * value);
    return press(places);
}

CaseResult caseOf(const StrengthInput& input, const Standing& standing)
{
    const UprightSizes sizes = sizesOf(input);
    CaseResult result;
    result.which = StrengthCase::standing;
    const StrengthAtAge concrete = concreteAtAge(input, result.ageH);
    result.elasticMpa = concrete.elasticMpa;
    result.strengthMpa = flexuralFactor(sizes.thicknessMm) * concrete.fctk005Mpa / input.assumptions.crackSafety;
    result.holds = standing.holds;
    result.place.kind = PlaceKind::body;
    const StandingPads pads = standingPads(input);
    for (std::size_t i = 0; i < pads.pads.size(); ++i) {
        const Box& pad = pads.pads[i];
        const double below = std::max(1.0, pads.thicknessMm);
        HeldAt held;
        held.under = "pad " + std::to_string(i + 1);
        held.centre = {pad.centre().x, 0.0};
        held.region = regionOf(rectangleRing({pad.centre().x, -below / 2}, {pad.width(), below}));
        held.forceN = standing.padN[i];
        held.liftedOff = !(held.forceN > 0.0);
        held.touchingShare = held.liftedOff ? 0.0 : 1.0;
        result.held.push_back(std::move(held));
    }
    return result;
}

}  // namespace

double dryBearingMpa(double fckMpa)
{
    constexpr double kPlain = 0.8;
    constexpr double kGammaC = 1.5;
    return 0.4 * kPlain * fckMpa / kGammaC;
}

StandingPads standingPads(const StrengthInput& input)
{
    const UprightSizes sizes = sizesOf(input);
    StandingPads standing;
    const Pads* pads = sizes.pads;
    if (!pads || pads->count <= 0 || !(pads->size.width > 0.0) || !(pads->size.depth > 0.0)) {
        standing.around = {{0.0, 0.0}, {sizes.lengthMm, sizes.thicknessMm}};
        standing.pads = {standing.around};
        return standing;
    }
    standing.thicknessMm = pads->thicknessMm.value_or(kDefaultPadMm);
    const bool twoRows = pads->count >= 4 && pads->count % 2 == 0 && 2 * pads->size.depth <= sizes.thicknessMm;
    const int rows = twoRows ? 2 : 1;
    const int inRow = pads->count / rows;
    const double width = std::min(pads->size.width, sizes.lengthMm / inRow);
    const double depth = std::min(pads->size.depth, sizes.thicknessMm);
    for (int row = 0; row < rows; ++row) {
        const double middle = !twoRows ? sizes.thicknessMm / 2
                                       : (row == 0 ? depth / 2 : sizes.thicknessMm - depth / 2);
        for (int i = 0; i < inRow; ++i) {
            const double at = inRow == 1 ? sizes.lengthMm / 2
                                         : width / 2 + (sizes.lengthMm - width) * i / (inRow - 1);
            standing.pads.push_back({{at - width / 2, middle - depth / 2}, {at + width / 2, middle + depth / 2}});
        }
    }
    standing.around = standing.pads.front();
    for (const Box& pad : standing.pads) {
        standing.around.low = {std::min(standing.around.low.x, pad.low.x), std::min(standing.around.low.y, pad.low.y)};
        standing.around.high = {std::max(standing.around.high.x, pad.high.x),
                                std::max(standing.around.high.y, pad.high.y)};
    }
    return standing;
}

Standing standing(const StrengthInput& input)
{
    Standing result;
    if (!isUpright(input)) return result;
    const UprightSizes sizes = sizesOf(input);
    const StandingPads pads = standingPads(input);
    const double ownN = input.casting->massKg * kGravityMS2;
    result.weightN = ownN + input.carriedN;
    result.slenderness = sizes.heightMm / sizes.thicknessMm;
    result.padN.assign(pads.pads.size(), 0.0);
    if (!(result.weightN > 0.0)) return result;
    const Point at = resultant(input, sizes, ownN, result.weightN);

    const bool within = at.x > pads.around.low.x && at.x < pads.around.high.x && at.y > pads.around.low.y &&
                        at.y < pads.around.high.y;
    const PressingAnswer answer = onPads(pads, at, result.weightN);
    result.holds = within && answer.holds;
    if (!result.holds) return result;
    result.padN = answer.forceN;
    if (pads.pads.size() == 1) {
        result.padMpa = pressureUnder(pads.around, result.weightN, at.x - pads.around.centre().x);
    } else {
        for (std::size_t i = 0; i < pads.pads.size(); ++i) {
            result.padMpa = std::max(result.padMpa, result.padN[i] / areaOf(pads.pads[i]));
        }
    }
    if (sizes.baseMm <= kGroundReachMm) result.groundKpa = result.padMpa * 1000.0;
    const double leverMm = std::min(at.y - pads.around.low.y, pads.around.high.y - at.y);
    result.leanN = result.weightN * leverMm / sizes.heightMm;
    result.tipFactor = result.leanN / kLeanN;
    return result;
}

StandingAnswer standingCase(const StrengthInput& input)
{
    StandingAnswer answer;
    if (!isUpright(input)) return answer;
    const UprightSizes sizes = sizesOf(input);
    const StandingPads pads = standingPads(input);
    const Standing stands = standing(input);
    answer.cases.push_back(caseOf(input, stands));

    const bool leanedOn = !(input.carriedN > 0.0) || sizes.baseMm + sizes.heightMm >= kBarTopMm;
    const bool squat = sizes.heightMm <= kSquatRatio * pads.around.height();
    if (!stands.holds || (leanedOn && !squat && stands.tipFactor < kLeanFactor)) {
        Finding finding = findingAbout(input, "upright_tips", stands.holds ? Severity::caution : Severity::stop);
        finding.values = {{"lean_n", std::round(stands.leanN)},
                          {"push_n", kLeanN},
                          {"factor", stands.tipFactor},
                          {"wanted", kLeanFactor},
                          {"weight_n", std::round(stands.weightN)}};
        answer.findings.push_back(std::move(finding));
    }
    const auto concrete = concreteOf(input);
    const double bearing = dryBearingMpa(concrete ? concrete->fckMpa : 0.0);
    if (stands.padMpa > bearing && bearing > 0.0) {
        Finding finding = findingAbout(input, "pad_pressure", Severity::caution);
        finding.values = {{"pressure_mpa", stands.padMpa}, {"limit_mpa", bearing}};
        answer.findings.push_back(std::move(finding));
    }
    if (std::round(stands.groundKpa) > kSoilKpa) {
        const bool firm = stands.groundKpa > kFirmGroundKpa;
        Finding finding = findingAbout(input, "ground_pressure", firm ? Severity::caution : Severity::note);
        finding.values = {{"pressure_kpa", std::round(stands.groundKpa)}, {"soil_kpa", kSoilKpa},
                          {"area_cm2", std::round(stands.weightN / kSoilKpa * 10.0)}};
        answer.findings.push_back(std::move(finding));
    }
    if (sizes.pads && pads.pads.size() == 1 && sizes.lengthMm > kOnePadReach * pads.around.width()) {
        Finding finding = findingAbout(input, "pads_few", Severity::caution);
        finding.values = {{"count", 1.0}, {"length_mm", sizes.lengthMm}};
        answer.findings.push_back(std::move(finding));
    }
    if (stands.slenderness > kMostSlender) {
        Finding finding = findingAbout(input, "upright_slender", Severity::caution);
        finding.values = {{"ratio", stands.slenderness}, {"limit", kMostSlender},
                          {"height_mm", sizes.heightMm}, {"thickness_mm", sizes.thicknessMm}};
        answer.findings.push_back(std::move(finding));
    }
    return answer;
}

}  // namespace yardcast
