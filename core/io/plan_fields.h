#pragma once

#include "core/plan/plan.h"

/// The keys of the plan file, once for everything that goes through them: `describe(visitor, type)` names every key
/// of an object in the contract's order. Visitors are the reader, the writer and the check against the schema.
///
/// A visitor has
///   needed(key, member)            the file must have the key; says whether a value could be read
///   id(member)                     the needed key "id", which must not be empty
///   neededIf(condition, ...)       likewise where the condition holds, else the key may stand there or not
///   defaulted(key, member)         absent means the member's own initial value
///   optional(key, member)          absent means an empty std::optional
///   list(key, member)              absent means an empty list
///   within(member, function)       members of a value whose keys stand in the same object
///   kind(), body()                 the word that says which kind of part it is, and the keys of that kind
///   value()                        what is being read or written
namespace yardcast {

template <class V>
void describe(V& v, const Rim*)
{
    v.defaulted("depth_mm", &Rim::depthMm);
    v.defaulted("width_mm", &Rim::widthMm);
    v.optional("edges", &Rim::edges);
}

template <class V>
void describe(V& v, const Filler*)
{
    v.defaulted("density_kg_m3", &Filler::densityKgM3);
    v.defaulted("stays", &Filler::stays);
}

template <class V>
void describe(V& v, const Rib*)
{
    v.needed("from", &Rib::from);
    v.needed("to", &Rib::to);
    v.defaulted("width_mm", &Rib::widthMm);
}

template <class V>
void describe(V& v, const Cutout*)
{
    v.id(&Cutout::id);
    v.defaulted("purpose", &Cutout::purpose);
    const bool known = v.needed("shape", &Cutout::shape);
    v.needed("centre", &Cutout::centre);
    v.neededIf(known && v.value().shape == CutoutShape::rectangle, "size", &Cutout::size);
    v.neededIf(known && v.value().shape == CutoutShape::circle, "diameter_mm", &Cutout::diameterMm);
    v.optional("turn_deg", &Cutout::turnDeg);
    v.optional("corner_radius_mm", &Cutout::cornerRadiusMm);
    v.optional("rim_mm", &Cutout::rimMm);
}

template <class V>
void describe(V& v, const Joint*)
{
    v.needed("from", &Joint::from);
    v.needed("to", &Joint::to);
    v.optional("gap_mm", &Joint::gapMm);
}

template <class V>
void describe(V& v, const Mesh*)
{
    v.defaulted("bar_mm", &Mesh::barMm);
    v.defaulted("pitch_mm", &Mesh::pitchMm);
    v.defaulted("cover_mm", &Mesh::coverMm);
    v.defaulted("material", &Mesh::material);
}

template <class V>
void describe(V& v, const BarGroup*)
{
    v.needed("from", &BarGroup::from);
    v.needed("to", &BarGroup::to);
    v.defaulted("diameter_mm", &BarGroup::diameterMm);
    v.defaulted("count", &BarGroup::count);
    v.optional("spacing_mm", &BarGroup::spacingMm);
    v.defaulted("cover_mm", &BarGroup::coverMm);
    v.defaulted("material", &BarGroup::material);
}

template <class V>
void describe(V& v, const Steel*)
{
    v.optional("mesh", &Steel::mesh);
    v.list("bars", &Steel::bars);
}

template <class V>
void describe(V& v, const PlacedLoad*)
{
    v.defaulted("name", &PlacedLoad::name);
    v.needed("centre", &PlacedLoad::centre);
    v.needed("size", &PlacedLoad::size);
    v.needed("mass_kg", &PlacedLoad::massKg);
}

template <class V>
void describe(V& v, const Lift*)
{
    v.optional("age_h", &Lift::ageH);
    v.list("grips", &Lift::grips);
    v.optional("people", &Lift::people);
    v.defaulted("carry", &Lift::carry);
}

template <class V>
void describe(V& v, const Drip*)
{
    v.list("edges", &Drip::edges);
    v.defaulted("from_edge_mm", &Drip::fromEdgeMm);
    v.defaulted("width_mm", &Drip::widthMm);
    v.defaulted("depth_mm", &Drip::depthMm);
}

template <class V>
void describe(V& v, const Rebate*)
{
    v.list("edges", &Rebate::edges);
    v.defaulted("width_mm", &Rebate::widthMm);
    v.defaulted("depth_mm", &Rebate::depthMm);
}

template <class V>
void describe(V& v, const Counter*)
{
    v.defaulted("top_mm", &Counter::topMm);
    v.needed("outline", &Counter::outline);
    v.needed("thickness_mm", &Counter::thicknessMm);
    v.optional("rim", &Counter::rim);
    v.optional("filler", &Counter::filler);
    v.list("ribs", &Counter::ribs);
    v.list("cutouts", &Counter::cutouts);
    v.list("joints", &Counter::joints);
    v.defaulted("mix", &Counter::mix);
    v.defaulted("cast", &Counter::cast);
    v.optional("steel", &Counter::steel);
    v.list("loads", &Counter::loads);
    v.optional("imposed", &Counter::imposed);
    v.optional("lift", &Counter::lift);
    v.optional("drip", &Counter::drip);
    v.optional("rebate", &Counter::rebate);
}

template <class V>
void describe(V& v, const Core*)
{
    v.needed("length_mm", &Core::lengthMm);
    v.needed("height_mm", &Core::heightMm);
    v.needed("thickness_mm", &Core::thicknessMm);
    v.defaulted("density_kg_m3", &Core::densityKgM3);
}

template <class V>
void describe(V& v, const Pads*)
{
    v.defaulted("count", &Pads::count);
    v.defaulted("size", &Pads::size);
    v.optional("thickness_mm", &Pads::thicknessMm);
}

template <class V>
void describe(V& v, const Support*)
{
    v.needed("length_mm", &Support::lengthMm);
    v.needed("width_mm", &Support::widthMm);
    v.defaulted("base_mm", &Support::baseMm);
    v.needed("height_mm", &Support::heightMm);
    v.optional("core", &Support::core);
    v.defaulted("mix", &Support::mix);
    v.defaulted("cast", &Support::cast);
    v.optional("pads", &Support::pads);
}

template <class V>
void describe(V& v, const Panel*)
{
    v.needed("length_mm", &Panel::lengthMm);
    v.needed("thickness_mm", &Panel::thicknessMm);
    v.defaulted("base_mm", &Panel::baseMm);
    v.needed("height_mm", &Panel::heightMm);
    v.optional("core", &Panel::core);
    v.defaulted("mix", &Panel::mix);
    v.defaulted("cast", &Panel::cast);
    v.optional("steel", &Panel::steel);
}

template <class V>
void describe(V& v, const Batten*)
{
    v.defaulted("width_mm", &Batten::widthMm);
    v.defaulted("thickness_mm", &Batten::thicknessMm);
    v.defaulted("gap_mm", &Batten::gapMm);
    v.defaulted("run", &Batten::run);
    v.defaulted("bevel_deg", &Batten::bevelDeg);
    v.defaulted("species", &Batten::species);
}

template <class V>
void describe(V& v, const Door*)
{
    v.needed("from_mm", &Door::fromMm);
    v.needed("to_mm", &Door::toMm);
    v.defaulted("hinges", &Door::hinges);
}

template <class V>
void describe(V& v, const MeasuredOpening*)
{
    v.needed("bottom_mm", &MeasuredOpening::bottomMm);
    v.needed("top_mm", &MeasuredOpening::topMm);
    v.needed("left_mm", &MeasuredOpening::leftMm);
    v.needed("right_mm", &MeasuredOpening::rightMm);
    v.needed("diagonal_rising_mm", &MeasuredOpening::diagonalRisingMm);
    v.needed("diagonal_falling_mm", &MeasuredOpening::diagonalFallingMm);
}

template <class V>
void describe(V& v, const Front*)
{
    v.needed("from", &Front::from);
    v.needed("to", &Front::to);
    v.defaulted("bottom_mm", &Front::bottomMm);
    v.defaulted("top_mm", &Front::topMm);
    v.defaulted("batten", &Front::batten);
    v.list("doors", &Front::doors);
    v.optional("measured", &Front::measured);
}

template <class V>
void describe(V& v, const Appliance*)
{
    v.optional("on", &Appliance::on);
    v.needed("size", &Appliance::size);
    v.defaulted("height_mm", &Appliance::heightMm);
    v.defaulted("mass_kg", &Appliance::massKg);
    v.optional("surface_c", &Appliance::surfaceC);
    v.optional("clearance_mm", &Appliance::clearanceMm);
}

template <class V>
void describe(V& v, const Part*)
{
    v.id(&Part::id);
    v.kind();
    v.optional("name", &Part::name);
    v.within(&Part::place, [](auto& place) {
        place.defaulted("at", &Placement::at);
        place.defaulted("turn_deg", &Placement::turnDeg);
    });
    v.body();
}

template <class V>
void describe(V& v, const Ground*)
{
    v.defaulted("level_mm", &Ground::levelMm);
    v.defaulted("fall_percent", &Ground::fallPercent);
    v.defaulted("fall_towards_deg", &Ground::fallTowardsDeg);
}

template <class V>
void describe(V& v, const Fixture*)
{
    v.id(&Fixture::id);
    v.defaulted("kind", &Fixture::kind);
    v.needed("at", &Fixture::at);
    v.optional("size", &Fixture::size);
}

template <class V>
void describe(V& v, const Site*)
{
    v.optional("outline", &Site::outline);
    v.optional("ground", &Site::ground);
    v.list("fixtures", &Site::fixtures);
}

template <class V>
void describe(V& v, const Conditions*)
{
    v.defaulted("air_c", &Conditions::airC);
    v.optional("high_c", &Conditions::highC);
    v.optional("low_c", &Conditions::lowC);
    v.defaulted("humidity_percent", &Conditions::humidityPercent);
    v.defaulted("wind_kmh", &Conditions::windKmh);
    v.defaulted("concrete_c", &Conditions::concreteC);
    v.defaulted("water_c", &Conditions::waterC);
    v.defaulted("ice_percent", &Conditions::icePercent);
    v.optional("materials_c", &Conditions::materialsC);
    v.list("measured", &Conditions::measured);
}

template <class V>
void describe(V& v, const MeasuredTemperature*)
{
    v.needed("h", &MeasuredTemperature::h);
    v.needed("c", &MeasuredTemperature::c);
}

template <class V>
void describe(V& v, const Pouring*)
{
    v.defaulted("start_h", &Pouring::startH);
    v.defaulted("hours", &Pouring::hours);
    v.list("order", &Pouring::order);
    v.optional("moulds", &Pouring::moulds);
    v.defaulted("laying_minutes", &Pouring::layingMinutes);
    v.defaulted("working_minutes", &Pouring::workingMinutes);
}

template <class V>
void describe(V& v, const MonthWeather*)
{
    v.needed("month", &MonthWeather::month);
    v.needed("low_c", &MonthWeather::lowC);
    v.needed("high_c", &MonthWeather::highC);
    v.defaulted("humidity_percent", &MonthWeather::humidityPercent);
    v.defaulted("wind_kmh", &MonthWeather::windKmh);
}

template <class V>
void describe(V& v, const Crew*)
{
    v.defaulted("people", &Crew::people);
    v.defaulted("lift_limit_kg", &Crew::liftLimitKg);
}

template <class V>
void describe(V& v, const Mixer*)
{
    v.defaulted("drum_l", &Mixer::drumL);
    v.defaulted("batch_minutes", &Mixer::batchMinutes);
    v.defaulted("usable_percent", &Mixer::usablePercent);
}

template <class V>
void describe(V& v, const Budget*)
{
    v.needed("limit", &Budget::limit);
    v.optional("quote", &Budget::quote);
}

template <class V>
void describe(V& v, const Bag*)
{
    v.needed("mass_kg", &Bag::massKg);
    v.optional("fresh_density_kg_m3", &Bag::freshDensityKgM3);
    v.neededIf(!v.value().freshDensityKgM3, "yield_l", &Bag::yieldL);
    v.needed("water_l", &Bag::waterL);
    v.needed("cement_kg", &Bag::cementKg);
    v.defaulted("max_aggregate_mm", &Bag::maxAggregateMm);
    v.defaulted("yield_spread_percent", &Bag::yieldSpreadPercent);
}

template <class V>
void describe(V& v, const Aggregate*)
{
    v.defaulted("density_kg_m3", &Aggregate::densityKgM3);
    v.defaulted("absorption_percent", &Aggregate::absorptionPercent);
    v.defaulted("moisture_percent", &Aggregate::moisturePercent);
}

template <class V>
void describe(V& v, const Recipe*)
{
    v.needed("cement_kg_m3", &Recipe::cementKgM3);
    v.needed("water_l_m3", &Recipe::waterLM3);
    v.defaulted("sand_percent", &Recipe::sandPercent);
    v.defaulted("sand", &Recipe::sand);
    v.defaulted("gravel", &Recipe::gravel);
    v.defaulted("max_aggregate_mm", &Recipe::maxAggregateMm);
    v.defaulted("cement_bag_kg", &Recipe::cementBagKg);
}

template <class V>
void describe(V& v, const TrialBatch*)
{
    v.needed("bucket_l", &TrialBatch::bucketL);
    v.needed("concrete_kg", &TrialBatch::concreteKg);
    v.optional("water_l", &TrialBatch::waterL);
}

template <class V>
void describe(V& v, const Fibre*)
{
    v.needed("kind", &Fibre::kind);
    v.needed("kg_per_m3", &Fibre::kgPerM3);
}

template <class V>
void describe(V& v, const Mix*)
{
    v.id(&Mix::id);
    v.optional("recipe", &Mix::recipe);
    v.neededIf(!v.value().recipe, "bag", &Mix::bag);
    v.defaulted("strength_class", &Mix::strengthClass);
    v.defaulted("cement_speed", &Mix::cementSpeed);
    v.defaulted("extra_cement_percent", &Mix::extraCementPercent);
    v.defaulted("silica_fume_percent", &Mix::silicaFumePercent);
    v.defaulted("plasticiser_percent", &Mix::plasticiserPercent);
    v.defaulted("pigment_percent", &Mix::pigmentPercent);
    v.list("fibres", &Mix::fibres);
    v.defaulted("max_water_cement", &Mix::maxWaterCement);
    v.optional("air_percent", &Mix::airPercent);
    v.defaulted("allowance_percent", &Mix::allowancePercent);
    v.optional("trial", &Mix::trial);
}

template <class V>
void describe(V& v, const Assumptions*)
{
    v.defaulted("bed_n_mm3", &Assumptions::bedNMm3);
    v.defaulted("stripping_factor", &Assumptions::strippingFactor);
    v.defaulted("handling_factor", &Assumptions::handlingFactor);
    v.defaulted("mould_surface", &Assumptions::mouldSurface);
    v.optional("suction_kpa", &Assumptions::suctionKpa);
    v.defaulted("crack_safety", &Assumptions::crackSafety);
    v.defaulted("even_load_kpa", &Assumptions::evenLoadKpa);
    v.optional("person_n", &Assumptions::personN);
    v.defaulted("exposure", &Assumptions::exposure);
    v.defaulted("late_corner_mm", &Assumptions::lateCornerMm);
    v.defaulted("frost", &Assumptions::frost);
    v.defaulted("curing_class", &Assumptions::curingClass);
    v.defaulted("strip_mpa", &Assumptions::stripMpa);
}

template <class V>
void describe(V& v, const Offcut*)
{
    v.needed("size", &Offcut::size);
    v.defaulted("thickness_mm", &Offcut::thicknessMm);
    v.defaulted("count", &Offcut::count);
}

template <class V>
void describe(V& v, const SharedMould*)
{
    v.list("castings", &SharedMould::castings);
}

template <class V>
void describe(V& v, const Moulding*)
{
    v.defaulted("board_mm", &Moulding::boardMm);
    v.defaulted("sides", &Moulding::sides);
    v.defaulted("edge", &Moulding::edge);
    v.defaulted("edge_mm", &Moulding::edgeMm);
    v.defaulted("former", &Moulding::former);
    v.defaulted("draft_deg", &Moulding::draftDeg);
    v.defaulted("tolerance_mm", &Moulding::toleranceMm);
    v.defaulted("bow_mm", &Moulding::bowMm);
    v.optional("bracket_mm", &Moulding::bracketMm);
    v.defaulted("saw_mm", &Moulding::sawMm);
    v.defaulted("trim_mm", &Moulding::trimMm);
    v.defaulted("least_strip_mm", &Moulding::leastStripMm);
    v.list("offcuts", &Moulding::offcuts);
    v.list("shared", &Moulding::shared);
}

template <class V>
void describe(V& v, const Owned*)
{
    v.needed("item", &Owned::item);
    v.needed("amount", &Owned::amount);
}

template <class V>
void describe(V& v, const OwnPrice*)
{
    v.needed("item", &OwnPrice::item);
    v.needed("pack_size", &OwnPrice::packSize);
    v.needed("price", &OwnPrice::price);
}

/// All but the version, which stands first and is no part of the value.
template <class V>
void describe(V& v, const Plan*)
{
    v.defaulted("title", &Plan::title);
    v.defaulted("currency", &Plan::currency);
    v.defaulted("site", &Plan::site);
    v.defaulted("conditions", &Plan::conditions);
    v.defaulted("crew", &Plan::crew);
    v.optional("mixer", &Plan::mixer);
    v.optional("budget", &Plan::budget);
    v.defaulted("mixes", &Plan::mixes);
    v.optional("pour", &Plan::pouring);
    v.optional("mould", &Plan::moulding);
    v.list("season", &Plan::season);
    v.optional("assumptions", &Plan::assumptions);
    v.defaulted("parts", &Plan::parts);
    v.list("owned", &Plan::owned);
    v.list("prices", &Plan::prices);
}

}  // namespace yardcast
