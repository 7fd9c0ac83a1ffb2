#include <algorithm>
#include <cmath>

#include "core/plan/validation/report.h"

namespace yardcast::validation {

namespace {

constexpr Range kPercent{0.0, 100.0, "percent"};
constexpr Range kAirC{-40.0, 60.0, "c"};
constexpr Range kMoney{0.0, 1e9, "money"};
/// A logger that reads every minute for a month.
constexpr std::size_t kMostReadings = 50'000;

void checkBag(const Bag& bag, Subject& subject)
{
    const bool mass = subject.number("bag/mass_kg", bag.massKg, {0.5, 2000.0, "kg"});
    if (bag.freshDensityKgM3) {
        subject.number("bag/fresh_density_kg_m3", *bag.freshDensityKgM3, {300.0, 5000.0, "kg_m3"});
    } else {
        subject.number("bag/yield_l", bag.yieldL, {0.1, 2000.0, "l"});
    }
    subject.number("bag/water_l", bag.waterL, {0.01, 1000.0, "l"});
    const bool cement = subject.number("bag/cement_kg", bag.cementKg, {0.01, 2000.0, "kg"});
    if (mass && cement && bag.cementKg > bag.massKg) {
        subject.addUnusable("cement_above_bag", "bag/cement_kg",
                            {{"cement_kg", bag.cementKg}, {"bag_kg", bag.massKg}});
    }
    subject.number("bag/max_aggregate_mm", bag.maxAggregateMm, {0.1, 63.0, "mm"});
    subject.number("bag/yield_spread_percent", bag.yieldSpreadPercent, {0.0, 50.0, "percent"});
}

void checkAggregate(const std::string& key, const Aggregate& aggregate, Subject& subject)
{
    subject.number(join(key, "density_kg_m3"), aggregate.densityKgM3, {300.0, 8000.0, "kg_m3"});
    subject.number(join(key, "absorption_percent"), aggregate.absorptionPercent, {0.0, 50.0, "percent"});
    subject.number(join(key, "moisture_percent"), aggregate.moisturePercent, {0.0, 50.0, "percent"});
}

void checkRecipe(const Recipe& recipe, Subject& subject)
{
    subject.number("recipe/cement_kg_m3", recipe.cementKgM3, {10.0, 2000.0, "kg_m3"});
    subject.number("recipe/water_l_m3", recipe.waterLM3, {10.0, 900.0, "l"});
    subject.number("recipe/sand_percent", recipe.sandPercent, kPercent);
    checkAggregate("recipe/sand", recipe.sand, subject);
    checkAggregate("recipe/gravel", recipe.gravel, subject);
    subject.number("recipe/max_aggregate_mm", recipe.maxAggregateMm, {0.1, 63.0, "mm"});
    subject.number("recipe/cement_bag_kg", recipe.cementBagKg, {0.5, 2000.0, "kg"});
}

void checkMix(const Mix& mix, Subject& subject)
{
    if (mix.recipe) {
        checkRecipe(*mix.recipe, subject);
    } else {
        checkBag(mix.bag, subject);
    }
    subject.number("extra_cement_percent", mix.extraCementPercent, kPercent);
    subject.number("silica_fume_percent", mix.silicaFumePercent, kPercent);
    subject.number("plasticiser_percent", mix.plasticiserPercent, kPercent);
    subject.number("pigment_percent", mix.pigmentPercent, kPercent);
    subject.number("allowance_percent", mix.allowancePercent, kPercent);
    subject.number("max_water_cement", mix.maxWaterCement, {0.1, 2.0, "ratio"});
    subject.number("air_percent", mix.airPercent.value_or(0.0), {0.0, 50.0, "percent"});
    if (mix.trial) {
        subject.number("trial/bucket_l", mix.trial->bucketL, {0.1, 1000.0, "l"});
        subject.number("trial/concrete_kg", mix.trial->concreteKg, {0.1, 5000.0, "kg"});
        if (mix.trial->waterL) subject.number("trial/water_l", *mix.trial->waterL, {0.01, 1000.0, "l"});
    }
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
    subject.number("water_c", c.waterC, {0.0, 95.0, "c"});
    // What stays water carries the plasticiser in; up to three quarters as ice: ACI 305R (from memory).
    subject.number("ice_percent", c.icePercent, {0.0, 75.0, "percent"});
    subject.number("materials_c", c.materialsC.value_or(c.airC), {-40.0, 90.0, "c"});
    if (!subject.count("measured", c.measured.size(), kMostReadings)) return;
    for (std::size_t i = 0; i < c.measured.size(); ++i) {
        const std::string key = join("measured", i);
        subject.number(join(key, "h"), c.measured[i].h, {0.0, 10'000.0, "h"});
        subject.number(join(key, "c"), c.measured[i].c, {-40.0, 95.0, "c"});
        if (i > 0 && c.measured[i].h <= c.measured[i - 1].h) {
            subject.add("measured_not_rising", Severity::caution, join(key, "h"),
                        {{"h", c.measured[i].h}, {"before_h", c.measured[i - 1].h}});
        }
    }
}

Range rangeOf(NumberLimits limits, const char* unit) { return {limits.least, limits.most, unit}; }

void checkMoulding(const Moulding& moulding, Subject& subject)
{
    subject.number("board_mm", moulding.boardMm, rangeOf(kBoardLimits, "mm"));
    subject.number("edge_mm", moulding.edgeMm, rangeOf(kEdgeLimits, "mm"));
    subject.number("draft_deg", moulding.draftDeg, rangeOf(kDraftLimits, "deg"));
    subject.number("tolerance_mm", moulding.toleranceMm, rangeOf(kToleranceLimits, "mm"));
    subject.number("bow_mm", moulding.bowMm, rangeOf(kBowLimits, "mm"));
    if (moulding.bracketMm) subject.number("bracket_mm", *moulding.bracketMm, rangeOf(kBracketLimits, "mm"));
    subject.number("saw_mm", moulding.sawMm, rangeOf(kSawLimits, "mm"));
    subject.number("trim_mm", moulding.trimMm, rangeOf(kTrimLimits, "mm"));
    subject.number("least_strip_mm", moulding.leastStripMm, rangeOf(kLeastStripLimits, "mm"));
    subject.count("shared", moulding.shared.size(), kMostReadings);
    subject.count("offcuts", moulding.offcuts.size(), kMostMembers);
    for (std::size_t i = 0; i < std::min(moulding.offcuts.size(), kMostMembers); ++i) {
        const Offcut& offcut = moulding.offcuts[i];
        const std::string key = join("offcuts", i);
        subject.number(join(key, "size/0"), offcut.size.width, {20.0, kLongestMm, "mm"});
        subject.number(join(key, "size/1"), offcut.size.depth, {20.0, kLongestMm, "mm"});
        subject.number(join(key, "thickness_mm"), offcut.thicknessMm, rangeOf(kBoardLimits, "mm"));
        subject.number(join(key, "count"), offcut.count, {1.0, 1000.0, "pieces"});
    }
}

void checkPouring(const Pouring& pouring, Subject& subject)
{
    subject.number("start_h", pouring.startH, {0.0, 24.0, "h"});
    subject.number("hours", pouring.hours, {0.5, 24.0, "h"});
    if (pouring.moulds) subject.number("moulds", *pouring.moulds, {1.0, 10'000.0, "pieces"});
    subject.number("laying_minutes", pouring.layingMinutes, {0.0, 240.0, "minutes"});
    subject.number("working_minutes", pouring.workingMinutes, {5.0, 600.0, "minutes"});
    subject.count("order", pouring.order.size(), kMostReadings);
}

void checkSeason(const std::vector<MonthWeather>& season, Subject& subject)
{
    if (!subject.count("season", season.size(), kMostMembers)) return;
    for (std::size_t i = 0; i < season.size(); ++i) {
        const MonthWeather& month = season[i];
        const std::string key = join("season", i);
        subject.number(join(key, "month"), month.month, {1.0, 12.0, "months"});
        const bool low = subject.number(join(key, "low_c"), month.lowC, kAirC);
        const bool high = subject.number(join(key, "high_c"), month.highC, kAirC);
        if (low && high && month.highC < month.lowC) {
            subject.add("high_below_low", Severity::caution, join(key, "high_c"),
                        {{"high_c", month.highC}, {"low_c", month.lowC}});
        }
        subject.number(join(key, "humidity_percent"), month.humidityPercent, kPercent);
        subject.number(join(key, "wind_kmh"), month.windKmh, {0.0, 250.0, "kmh"});
    }
}

void checkAssumptions(const Assumptions& a, Subject& subject)
{
    const auto check = [&](const char* key, double value, NumberLimits limits, const char* unit) {
        subject.number(key, value, rangeOf(limits, unit));
    };
    check("bed_n_mm3", a.bedNMm3, kBedLimits, "n_mm3");
    check("stripping_factor", a.strippingFactor, kFactorLimits, "ratio");
    check("handling_factor", a.handlingFactor, kFactorLimits, "ratio");
    check("suction_kpa", suctionKpa(a), kSuctionLimits, "kpa");
    check("crack_safety", a.crackSafety, kFactorLimits, "ratio");
    check("even_load_kpa", a.evenLoadKpa, kEvenLoadLimits, "kpa");
    check("person_n", personN(a, Imposed::worktop), kPersonLimits, "n");
    check("late_corner_mm", a.lateCornerMm, kLateCornerLimits, "mm");
    check("curing_class", a.curingClass, kCuringClassLimits, "ratio");
    check("strip_mpa", a.stripMpa, kStripLimits, "mpa");
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
        mixer.number("usable_percent", plan.mixer->usablePercent, {5.0, 100.0, "percent"});
    }
    if (plan.pouring) {
        Subject pouring(findings, "/pour", {});
        checkPouring(*plan.pouring, pouring);
    }
    if (plan.moulding) {
        Subject moulding(findings, "/mould", {});
        checkMoulding(*plan.moulding, moulding);
    }
    Subject season(findings, "", {});
    checkSeason(plan.season, season);
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
