#include "core/structure/handling_findings.h"

#include <algorithm>
#include <cmath>
#include <variant>

namespace yardcast {

namespace {

const CaseResult* find(const HandlingAnswer& answer, StrengthCase which)
{
    const auto found = std::find_if(answer.cases.begin(), answer.cases.end(),
                                    [&](const CaseResult& result) { return result.which == which; });
    return found == answer.cases.end() ? nullptr : &*found;
}

/// A casting that is to be carried on edge is not carried flat, and the other way round.
bool isPlanned(const StrengthInput& input, StrengthCase which)
{
    const auto* counter = std::get_if<Counter>(&input.body);
    if (counter == nullptr) return true;
    const CarryWay way = counter->lift ? counter->lift->carry : CarryWay::flat;
    return which != (way == CarryWay::flat ? StrengthCase::carriedOnEdge : StrengthCase::carriedFlat);
}

bool exceeds(const CaseResult* result) { return result && result->holds && result->usePercent > 100.0; }

}  // namespace

std::vector<Finding> handlingFindings(const StrengthInput& input, const HandlingAnswer& answer,
                                      const HandlingFacts& facts)
{
    std::vector<Finding> findings;
    const double safety = input.assumptions.crackSafety;
    const CaseResult* loose = find(answer, StrengthCase::suction);
    const CaseResult* tilt = find(answer, StrengthCase::tilt);
    // It need not be lifted off flat where it can be tilted off: no reason to stop, and a note says so.
    const bool tiltedOff = exceeds(loose) && tilt && tilt->holds && !exceeds(tilt);
    for (const CaseResult& result : answer.cases) {
        if (!exceeds(&result) || !isPlanned(input, result.which)) continue;
        const bool avoidable = result.which == StrengthCase::suction && tiltedOff;
        const bool stop = result.usePercent > 100.0 * safety && !avoidable;
        Finding finding = findingAbout(input, "cracks_handling", stop ? Severity::stop : Severity::caution);
        finding.values = {{"case", std::string(strengthCaseWord(result.which))},
                          {"place", placeWords(result.place)},
                          {"age_h", result.ageH},
                          {"tension_mpa", result.strengthMpa * result.usePercent / 100.0},
                          {"strength_mpa", result.strengthMpa},
                          {"characteristic_mpa", result.strengthMpa * safety},
                          {"use_percent", result.usePercent}};
        findings.push_back(std::move(finding));
    }

    const CaseResult* flat = find(answer, StrengthCase::carriedFlat);
    if (!answer.gripsProposed && ((flat && !flat->holds) || (loose && !loose->holds))) {
        Finding finding = findingAbout(input, "grips_tip", Severity::stop);
        finding.values = {{"grips", static_cast<double>(answer.grips.size())}};
        findings.push_back(std::move(finding));
    }
    if (tiltedOff) {
        Finding finding = findingAbout(input, "suction_strong", Severity::note);
        const double suctionKg = loose->suctionKpa * 1000.0 * areaMm2(input.casting->outline) * 1e-6 / kGravityMS2;
        finding.values = {{"suction_kg", suctionKg},
                          {"mass_kg", input.casting->massKg},
                          {"flat_percent", loose->usePercent},
                          {"tilt_percent", tilt->usePercent}};
        findings.push_back(std::move(finding));
    }
    const CaseResult* down = find(answer, StrengthCase::setDown);
    if (down && down->holds && !exceeds(down) && facts.endsUsePercent > 100.0 && std::isfinite(facts.endsUsePercent)) {
        Finding finding = findingAbout(input, "set_down_ends", Severity::note);
        finding.values = {{"ends_percent", facts.endsUsePercent},
                          {"use_percent", down->usePercent},
                          {"inset_mm", std::round(facts.battenInsetMm)}};
        findings.push_back(std::move(finding));
    }
    return findings;
}

}  // namespace yardcast
