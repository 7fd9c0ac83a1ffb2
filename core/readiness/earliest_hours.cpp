#include "core/readiness/earliest_hours.h"

#include <algorithm>
#include <cmath>
#include <variant>

namespace yardcast {

namespace {

/// The hours are found to this; what is nearer is not earlier.
constexpr double kSameH = 0.05;

HandlingWay plannedCarry(const StrengthInput& input)
{
    if (isCastUpright(input.body)) return HandlingWay::carryOnEdge;
    const auto* counter = std::get_if<Counter>(&input.body);
    const bool onEdge = counter && counter->lift && counter->lift->carry == CarryWay::onEdge;
    return onEdge ? HandlingWay::carryOnEdge : HandlingWay::carryFlat;
}

Finding about(const StrengthInput& input, const CastingHours& hours, const EarliestHour& late, const char* code,
              Severity severity)
{
    Finding finding = findingAbout(input, code, severity);
    finding.values = {{"way", std::string(handlingWayWord(late.way))},
                      {"plan_h", hours.planH},
                      {"place", placeWords(late.place)},
                      {"tension_mpa", late.tensionMpa},
                      {"strip_mpa", input.assumptions.stripMpa},
                      {"by_compression", late.byCompression ? 1.0 : 0.0},
                      {"possible", late.possible ? 1.0 : 0.0}};
    if (std::isfinite(late.cautiousH)) finding.values["cautious_h"] = late.cautiousH;
    if (std::isfinite(late.likelyH)) finding.values["likely_h"] = late.likelyH;
    return finding;
}

std::vector<Finding> findingsOf(const StrengthInput& input, const CastingHours& hours)
{
    const EarliestHour* late = hours.governing();
    if (late == nullptr) return {};
    if (!std::isfinite(late->cautiousDays) && late->byCompression) {
        const bool stop = !std::isfinite(late->likelyDays);
        Finding finding = about(input, hours, *late, "never_strong", stop ? Severity::stop : Severity::caution);
        const auto concrete = concreteProperties(input.strengthClass);
        finding.values["fck_mpa"] = concrete ? concrete->fckMpa * input.cautiousShare : 0.0;
        return {std::move(finding)};
    }
    if (!std::isfinite(late->cautiousDays)) {
        const bool stop = !std::isfinite(late->likelyDays);
        return {about(input, hours, *late, "never_holds", stop ? Severity::stop : Severity::caution)};
    }
    if (late->cautiousH <= hours.planH + kSameH) return {};
    const bool stop = !late->byCompression && late->likelyH > hours.planH + kSameH;
    return {about(input, hours, *late, "lifted_early", stop ? Severity::stop : Severity::caution)};
}

}  // namespace

double shownWaitH(double h)
{
    if (!std::isfinite(h)) return h;
    const double whole = std::ceil(h - kSameH);
    return whole <= kWholeHoursUpToH ? whole : std::ceil((h - kSameH) / 12.0) * 12.0;
}

const EarliestHour* CastingHours::find(HandlingWay way) const
{
    for (const EarliestHour& one : ways) {
        if (one.way == way) return &one;
    }
    return nullptr;
}

const EarliestHour* CastingHours::outOfMould() const
{
    const EarliestHour* flat = find(HandlingWay::strip);
    const EarliestHour* tilted = find(HandlingWay::tilt);
    if (flat == nullptr || tilted == nullptr) return flat ? flat : tilted;
    return tilted->possible && tilted->cautiousDays < flat->cautiousDays ? tilted : flat;
}

const EarliestHour* CastingHours::governing() const
{
    const EarliestHour* turned = find(HandlingWay::tilt);
    if (turned == nullptr || !turned->possible) turned = find(HandlingWay::strip);
    const EarliestHour* carried = find(carry);
    if (turned == nullptr || carried == nullptr) return turned ? turned : carried;
    if (turned->cautiousDays == carried->cautiousDays) {
        return turned->likelyDays > carried->likelyDays ? turned : carried;
    }
    return turned->cautiousDays > carried->cautiousDays ? turned : carried;
}

CastingHoursPtr hoursOf(const StrengthInput& input, const CastingAges& ages)
{
    auto hours = std::make_shared<CastingHours>();
    hours->casting = input.casting ? input.casting->id : std::string();
    hours->part = input.casting ? input.casting->part : std::string();
    hours->mix = input.casting ? input.casting->mix : std::string();
    hours->planH = input.liftAgeH;
    hours->carry = plannedCarry(input);
    hours->whyNot = ages.whyNot;
    // Many ways wait for the same mould.
    double knownDays = -1.0;
    double knownH = 0.0;
    const auto hourOf = [&](double days) {
        if (!std::isfinite(days)) return HUGE_VAL;
        if (days != knownDays) {
            knownH = hoursToEquivalentAge(input.course, days);
            knownDays = days;
        }
        return knownH;
    };
    for (const NeededAge& needed : ages.ways) {
        EarliestHour& hour = hours->ways.emplace_back();
        hour.way = needed.way;
        hour.likelyH = hourOf(needed.likelyDays);
        hour.cautiousH = hourOf(needed.cautiousDays);
        hour.likelyDays = needed.likelyDays;
        hour.cautiousDays = needed.cautiousDays;
        hour.tensionMpa = needed.tensionMpa;
        hour.place = needed.place;
        hour.byCompression = needed.byCompression;
        hour.possible = needed.possible;
    }
    if (input.casting) hours->findings = findingsOf(input, *hours);
    return hours;
}

CastingHoursPtr earliestHours(const StrengthInput& input, Refinement refinement, std::stop_token stop)
{
    const CastingAgesPtr ages = neededAges(input, refinement, {}, std::move(stop));
    return ages ? hoursOf(input, *ages) : nullptr;
}

}  // namespace yardcast
