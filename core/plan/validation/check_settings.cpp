#include <algorithm>
#include <cmath>

#include "core/plan/validation/report.h"

namespace yardcast::validation {

namespace {

constexpr Range kPercent{0.0, 100.0, "percent"};
constexpr Range kAirC{-40.0, 60.0, "c"};
constexpr Range kMoney{0.0, 1e9, "money"};

void checkMix(const Mix& mix, Subject& subject)
{
    const bool mass = subject.number("bag/mass_kg", mix.bag.massKg, {0.5, 2000.0, "kg"});
    subject.number("bag/yield_l", mix.bag.yieldL, {0.1, 2000.0, "l"});
    subject.number("bag/water_l", mix.bag.waterL, {0.01, 1000.0, "l"});
    const bool cement = subject.number("bag/cement_kg", mix.bag.cementKg, {0.01, 2000.0, "kg"});
    if (mass && cement && mix.bag.cementKg > mix.bag.massKg) {
        subject.addUnusable("cement_above_bag", "bag/cement_kg",
                            {{"cement_kg", mix.bag.cementKg}, {"bag_kg", mix.bag.massKg}});
    }
    subject.number("bag/max_aggregate_mm", mix.bag.maxAggregateMm, {0.1, 63.0, "mm"});
    subject.number("extra_cement_percent", mix.extraCementPercent, kPercent);
    subject.number("silica_fume_percent", mix.silicaFumePercent, kPercent);
    subject.number("plasticiser_percent", mix.plasticiserPercent, kPercent);
    subject.number("allowance_percent", mix.allowancePercent, kPercent);
    subject.number("max_water_cement", mix.maxWaterCement, {0.1, 2.0, "ratio"});
    if (!subject.count("fibres", mix.fibres.size(), kMostMembers)) return;
    for (std::size_t i = 0; i < mix.fibres.size(); ++i) {
        subject.number(join(join("fibres", i), "kg_per_m3"), mix.fibres[i].kgPerM3, {0.0, 500.0, "kg_m3"});
    }
}

void checkConditions(const Conditions& c, Subject& subject)
{
    subject.number("air_c", c.airC, kAirC);
    const bool high = subject.number("high_c", c.highC.value_or(c.airC), kAirC);
    const bool low = subject.number("low_c", c.lowC.value_or(c.airC), kAirC);
    if (high && low && c.highC && c.lowC && *c.highC < *c.lowC) {
        subject.add("high_below_low", Severity::caution, "high_c", {{"high_c", *c.highC}, {"low_c", *c.lowC}});
    }
    subject.number("humidity_percent", c.humidityPercent, kPercent);
    subject.number("wind_kmh", c.windKmh, {0.0, 250.0, "kmh"});
    subject.number("concrete_c", c.concreteC, {0.0, 60.0, "c"});
}

void checkAssumptions(const Assumptions& a, Subject& subject)
{
    const auto check = [&](const char* key, double value, NumberLimits limits, const char* unit) {
        subject.number(key, value, {limits.least, limits.most, unit});
    };
    check("bed_n_mm3", a.bedNMm3, kBedLimits, "n_mm3");
    check("stripping_factor", a.strippingFactor, kFactorLimits, "ratio");
    check("handling_factor", a.handlingFactor, kFactorLimits, "ratio");
    check("suction_kpa", suctionKpa(a), kSuctionLimits, "kpa");
    check("crack_safety", a.crackSafety, kFactorLimits, "ratio");
    check("even_load_kpa", a.evenLoadKpa, kEvenLoadLimits, "kpa");
    check("person_n", personN(a, Imposed::worktop), kPersonLimits, "n");
    check("late_corner_mm", a.lateCornerMm, kLateCornerLimits, "mm");
}

void checkSite(const Site& site, Subject& subject)
{
    if (site.ground) {
        subject.number("ground/level_mm", site.ground->levelMm, {-kLongestMm, kLongestMm, "mm"});
        subject.number("ground/fall_percent", site.ground->fallPercent, {0.0, 50.0, "percent"});
        subject.number("ground/fall_towards_deg", site.ground->fallTowardsDeg, {-36'000.0, 36'000.0, "deg"});
    }
    for (std::size_t i = 0; i < site.fixtures.size(); ++i) {
        const Fixture& fixture = site.fixtures[i];
        const std::string key = join("fixtures", i);
        subject.point(join(key, "at"), fixture.at);
        if (!fixture.size) continue;
        subject.number(join(key, "size/0"), fixture.size->width, {0.0, kFarthestMm, "mm"});
        subject.number(join(key, "size/1"), fixture.size->depth, {0.0, kFarthestMm, "mm"});
    }
    if (!site.outline) return;
    const Ring& outline = *site.outline;
    if (!subject.count("outline", outline.size(), kMostCorners) || !subject.points("outline", outline)) return;
    if (outline.size() < 3) {
        subject.add("site_few_corners", Severity::caution, "outline", {{"count", static_cast<double>(outline.size())}});
    } else if (const auto crossing = selfCrossing(outline)) {
        subject.add("site_crosses_itself", Severity::caution, "outline",
                    {{"edge", static_cast<double>(crossing->first)},
                     {"other_edge", static_cast<double>(crossing->second)}});
    }
}

void checkMoney(const Plan& plan, Subject& subject)
{
    const auto capital = [](char c) { return c >= 'A' && c <= 'Z'; };
    if (plan.currency.size() != 3 || !std::all_of(plan.currency.begin(), plan.currency.end(), capital)) {
        subject.add("currency_unknown", Severity::caution, "currency", {{"currency", plan.currency}});
    }
    if (plan.budget) {
        subject.number("budget/limit", plan.budget->limit, kMoney);
        subject.number("budget/quote", plan.budget->quote.value_or(0.0), kMoney);
    }
    for (std::size_t i = 0; i < plan.owned.size(); ++i) {
        subject.number(join(join("owned", i), "amount"), plan.owned[i].amount, {0.0, 1e9, "amount"});
    }
    for (std::size_t i = 0; i < plan.prices.size(); ++i) {
        const std::string key = join("prices", i);
        subject.number(join(key, "pack_size"), plan.prices[i].packSize, {1e-6, 1e9, "amount"});
        subject.number(join(key, "price"), plan.prices[i].price, kMoney);
    }
}

}  // namespace

void checkSettings(const Plan& plan, Validation& validation)
{
    auto& findings = validation.findings;
    Subject whole(findings, "", {});
    checkMoney(plan, whole);
    Subject site(findings, "/site", {});
    checkSite(plan.site, site);
    Subject conditions(findings, "/conditions", {});
    checkConditions(plan.conditions, conditions);
    Subject crew(findings, "/crew", {});
    crew.number("people", plan.crew.people, {1.0, 50.0, "people"});
    crew.number("lift_limit_kg", plan.crew.liftLimitKg, {1.0, 200.0, "kg"});
    if (plan.mixer) {
        Subject mixer(findings, "/mixer", {});
        mixer.number("drum_l", plan.mixer->drumL, {5.0, 10'000.0, "l"});
        mixer.number("batch_minutes", plan.mixer->batchMinutes, {0.5, 240.0, "minutes"});
    }
    if (plan.assumptions) {
        Subject assumptions(findings, "/assumptions", {});
        checkAssumptions(*plan.assumptions, assumptions);
    }
    for (std::size_t i = 0; i < plan.mixes.size(); ++i) {
        Subject mix(findings, join("/mixes", i), {plan.mixes[i].id});
        checkMix(plan.mixes[i], mix);
        if (!mix.usable()) validation.unusableMixes.insert(plan.mixes[i].id);
    }
}

}  // namespace yardcast::validation
