#include "ui/wording/figure_notes.h"

#include "ui/wording/words.h"

namespace yardcast::ui {

namespace {

struct Note {
    const char* code;
    const char* title;
    const char* formula;
    const char* source;
    const char* assumption;
};

const std::vector<Note> kNotes{
    {"concrete_volume", WORDS("Concrete to mix"),
     WORDS("volume of all castings × (1 + allowance); each casting is the sum over its zones of area × depth"),
     WORDS("Plane geometry; the allowance is this plan's own (8 to 12 % is common practice, no source)."),
     WORDS("Arcs are drawn as chords within 0.1 mm. The steel inside is not taken off, which is safe by about 1 %.")},
    {"best_start", WORDS("Best hour to begin"),
     WORDS("of all half hours between 06:00 and 21:00 in which the day's work fits, the one whose worst hour loses least "
           "water; where it is cold, first the one that stays above 5 °C"),
     WORDS("Our own search over the hours; evaporation by Uno (1998)."),
     WORDS("The day runs between its coldest (05:00) and warmest hour (15:00) in half waves, the dew point and wind stay "
           "the same: common practice, no source. Look at the sky as well.")},
    {"evaporation", WORDS("Water that fresh concrete loses"),
     WORDS("5 × ((concrete °C + 18)^2.5 − humidity × (air °C + 18)^2.5) × (wind km/h + 4) × 10^-6"),
     WORDS("Uno (1998), ACI Materials Journal 95-M34. Limits: ACI 305R (from memory), 1.0, and 0.5 with silica fume or "
           "fibres."),
     WORDS("Real rates lie up to 40 % to either side. By the hour the concrete is as stated, warmer or colder by half of "
           "what the air is (our estimate).")},
    {"working_time", WORDS("Time in which it can be worked"),
     WORDS("minutes at 20 °C × 2^((20 − concrete °C) ÷ 10)"),
     WORDS("From memory; that setting halves with 10 K more is published for finishing."),
     WORDS("Cement and plasticiser shift it by a lot: try a small batch.")},
    {"frost", WORDS("Frost on young concrete"),
     WORDS("mean strength at the first hour below 0 °C, by the age of the course of temperatures"),
     WORDS("EN 13670 8.5 (from memory): no frost before 5 MPa; EN 1992-1-1 eq. B.10, 3.1, 3.2."),
     WORDS("The concrete is taken as cold as the air, which is on the safe side.")},
    {"curing", WORDS("How long to keep it moist"),
     WORDS("days of the table by class, mean temperature of the surface and r = strength at 2 ÷ at 28 days; hours below "
           "5 °C do not count"),
     WORDS("EN 13670 tables F.1 to F.3 (from memory), between columns along the row."),
     WORDS("The surface is taken as warm as the air. Sheeting lies 150 mm over on every side.")},
    {"mass", WORDS("Mass of a casting"),
     WORDS("(volume − steel volume) × 2400 kg/m³ + steel × 7850 kg/m³ + foam that stays in it"),
     WORDS("EN 1991-1-1:2002 Table A.1 (24 kN/m³ for hardened normal concrete); EN 10080 for steel."),
     WORDS("Bagged mixes weigh some 2250 to 2350 kg/m³ (from memory): the figure is on the heavy, safe side.")},
    {"centroid", WORDS("Centre of gravity"), WORDS("sum of mass × place ÷ mass, over concrete, steel and foam"),
     WORDS("Statics."), WORDS("Every zone is taken as of one density.")},
    {"people", WORDS("People to lift it"),
     WORDS("least number of people n with n × limit each × team factor ≥ mass"),
     WORDS("HSE L23: two people lift two thirds of the sum of what each can, three one half."),
     WORDS("For four and more no factor is published: one half is kept (judgement). Steps, slopes and a poor grip "
           "lower it. More than eight people cannot get their hands on one piece: take a hoist or a trolley.")},
    {"team_limit", WORDS("What the team can lift"), WORDS("people × limit each × team factor (1, 2/3, 1/2)"),
     WORDS("HSE L23; the limit each is this plan's own (25 kg is a usual guide figure)."),
     WORDS("On level ground, close to the body, now and then. It is no promise that a lift is safe.")},
    {"bags", WORDS("Bags of dry mix"), WORDS("litres to mix ÷ litres a bag gives, rounded up for each mix"),
     WORDS("The yield of a bag is what its maker prints on it."),
     WORDS("A yield is known to some 4 % only (common practice, no source): keep one sealed bag where it is tight.")},
    {"litres_per_bag", WORDS("Litres a bag gives"),
     WORDS("(printed yield + extra cement ÷ 3.15 + silica fume ÷ 2.2 + plasticiser ÷ 1.07 + pigment ÷ 4.6) ÷ (1 − "
           "share of the fibres)"),
     WORDS("Absolute volumes; densities from memory (usual handbook values)."),
     WORDS("The air in the mix is taken as that of the printed yield.")},
    {"extra_cement", WORDS("Extra cement"), WORDS("bags × bag mass × share of the dry mix"),
     WORDS("Common practice 3 to 5 % of the dry mass, no source."),
     WORDS("For the exact number of bags, not the whole.")},
    {"silica_fume", WORDS("Silica fume"), WORDS("share × cement (in the bags and extra)"),
     WORDS("EN 206 5.2.5.2.3 counts at most 11 % of the cement."),
     WORDS("For the exact number of bags, not the whole.")},
    {"plasticiser", WORDS("Plasticiser"), WORDS("share × cement (in the bags and extra); litres = kg ÷ 1.07"),
     WORDS("The dose is this plan's own: the label decides. Density from memory."),
     WORDS("Too much makes stones sink and delays setting.")},
    {"fibres", WORDS("Fibres"), WORDS("kg per m³ × litres to mix ÷ 1000"),
     WORDS("The dose is this plan's own: the maker's sheet decides."), ""},
    {"water", WORDS("Water from the tap"), WORDS("exact number of bags × water printed on the bag"),
     WORDS("What the bag's maker prints; water in the plasticiser counts too."),
     WORDS("Add the last tenth only if the mix needs it.")},
    {"water_cement", WORDS("Water-cement ratio"),
     WORDS("(water from the tap + water in the plasticiser) ÷ (cement in the bags + extra cement)"),
     WORDS("EN 206: ratio of effective water to cement by mass."),
     WORDS("The cement in a bag is rarely printed: ask its maker. Water that clings to the stones is not known.")},
    {"water_binder", WORDS("Water to cement and silica fume"), WORDS("water ÷ (cement + k × silica fume)"),
     WORDS("EN 206 5.2.5.2.3, k-value concept for silica fume."),
     WORDS("The standard's k holds for its own cements and limits; silica fume beyond 11 % of the cement does not "
           "count.")},
    {"pigment", WORDS("Pigment"), WORDS("share × cement (all of it)"),
     WORDS("2 to 5 % is usual, past 10 % it colours no deeper (from memory)."), ""},
    {"yield_spread", WORDS("Yield of a bag"), WORDS("litres a bag gives ∓ spread × yield of the bag alone"),
     WORDS("The spread is this plan's own; 4 % is common practice, no source."),
     WORDS("A weighed trial batch tells the true yield; half of the spread stays for bags that differ, and not less than 2 % "
           "where it was more (our choice).")},
    {"grains", WORDS("Sand and gravel"),
     WORDS("what cement, water, air and additions leave of a m³, × density ÷ (1 + absorption) × (1 + moisture)"),
     WORDS("Absolute volumes, ACI 211.1; densities and moisture are this plan's own."),
     WORDS("Weighed as they lie, with the water on them; that much less comes from the tap.")},
    {"mix_limit", WORDS("A limit of the mix"), WORDS("ratio, cement and air of the fresh concrete against the limit"),
     WORDS("EN 206 Table F.1 (informative: 50 years, CEM I, stones of 20 to 32 mm), 5.2.5.2.3, 5.2.6; strength by the "
           "table of ACI 211.1 (from memory)."),
     WORDS("Not known is not failed: a bag rarely states its air.")},
    {"mix_step", WORDS("What goes into a batch"), WORDS("what one charge holds × litres of the batch ÷ litres of the charge"),
     WORDS("This plan's own doses; the order and the minutes are common practice, no source."),
     WORDS("All batches together are the quantities by mix.")},
    {"batches", WORDS("Fillings of the mixer"),
     WORDS("bags ÷ whole bags that fit in the share of the drum that can be filled"),
     WORDS("Common practice 50 to 80 % of the drum, no source."), WORDS("A drum turned steeply takes less.")},
    {"steel_mass", WORDS("Steel"), WORDS("bars: length × π/4 d² × 7850 kg/m³; mesh: two layers of bars at their pitch"),
     WORDS("EN 10080 nominal masses."), WORDS("Ties, spacers and hooks are not in it.")},
    {"mesh_area", WORDS("Mesh with laps"), WORDS("area within the cover + laps where a piece is longer than a sheet"),
     WORDS("Laps of two pitches, at least 150 mm: common practice, no source."),
     WORDS("Sheets of 2000 × 1000 mm; loss from cutting comes on top.")},
    {"bar_length", WORDS("Bars"), WORDS("sum of count × length for each diameter"), WORDS("This plan's own bars."),
     WORDS("Cuts from stock lengths are allowed for with 10 % until the saw plans exist: an estimate.")},
    {"bar_cut", WORDS("Length to cut"), WORDS("room between the covers, down to whole 5 mm"),
     WORDS("BS 8666 (shape 00, straight; on a schedule up to whole 25 mm: from memory)."),
     WORDS("Down, so that no end comes nearer to a side than the cover.")},
    {"steel_worth", WORDS("What the steel is worth"),
     WORDS("moment of the cracked section: rectangular block of concrete, steel where it lies; plain: strength in "
           "bending of uncracked concrete"),
     WORDS("EN 1992-1-1 3.1.7, 6.1 and 12.6; cracks at: 3.1.8."),
     WORDS("A slab of a few centimetres is outside the code's scope. B500 is assumed for steel of every kind; bars and "
           "grids of glass or basalt are not counted, nor are fibres.")},
    {"board_area", WORDS("Mould board"), WORDS("(base with margin + sides + formers) × 1.15"),
     WORDS("Estimate, common practice, no source."),
     WORDS("Holds until the saw plans exist; boards of 18 mm; no board is used twice.")},
    {"silicone", WORDS("Silicone for fillets"), WORDS("(1 − π/4) r² × length of the edges, r = 6 mm, with loss"),
     WORDS("Geometry; a cartridge does about half of what it could in theory: common practice, no source."), ""},
    {"foam", WORDS("Foam"), WORDS("area of fillers and cores × 1.10 for cuts"),
     WORDS("Estimate, common practice, no source."),
     WORDS("Foam wants to float: hold it down, some 2.3 kg for each litre.")},
    {"release_agent", WORDS("Release agent"), WORDS("mould area ÷ what a litre covers"),
     WORDS("Estimate, common practice, no source: the label decides."), ""},
    {"sheeting", WORDS("Sheeting for curing"), WORDS("box of each casting with 150 mm over on every side"),
     WORDS("Common practice, no source."), WORDS("Sheeting that touches the face leaves marks.")},
    {"sealer", WORDS("Sealer"), WORDS("faces × coats ÷ what a litre covers"),
     WORDS("Estimate, common practice, no source: the label decides."),
     WORDS("Sealed is not acid-proof: lemon etches.")},
    {"batten_gap", WORDS("Gap between battens"),
     WORDS("(length − n × batten width) ÷ (n + 1), n such that it is nearest to the wish"),
     WORDS("Geometry; gaps of 4 to 15 mm: common practice, no source."),
     WORDS("Dry timber swells outdoors: measure the opening, not the drawing.")},
    {"front_timber", WORDS("Timber of the front"), WORDS("sum of count × length of all pieces × 1.10 for cuts"),
     WORDS("Estimate, common practice, no source."), WORDS("Holds until the cut plans exist.")},
    {"packs", WORDS("Packs to buy"), WORDS("the cheapest whole packs that cover need − owned; on equal price the least "
                                           "left over"),
     WORDS("Exact search over all combinations."), WORDS("Only sizes in the price book or the plan's own prices.")},
    {"cut_sheets", WORDS("Sheets and lengths to buy"),
     WORDS("sheets: combinations of sheets by rising price that no bound rules out, each filled by straight cuts; lengths: "
           "column generation and branching"),
     WORDS("Bounds of sheets: area and dual feasible functions (Fekete and Schepers 2004). Bounds of lengths: the linear "
           "programme over all ways of cutting (Gilmore and Gomory 1961). The searches are ours."),
     WORDS("A saw width is lost at every cut; no cut after a piece that ends where the sheet ends. \"Proven\" is said of the "
           "money for sheets and lengths, not of the number of cuts.")},
    {"store_cuts", WORDS("Cuts at the store"), WORDS("sum over sheets of (cuts − free cuts) × price a cut"),
     WORDS("The plan's own prices."),
     WORDS("Each straight cut through a part counts once, trimming too. What is ripped at home is not counted.")},
    {"money", WORDS("Money"), WORDS("sum over the list of packs × price, in whole minor units"),
     WORDS("The price book named on the list, and this plan's own prices."),
     WORDS("Tools for hire, delivery, trades, sink, appliances and your hours are not in it.")},
    {"strength_use", WORDS("Use of the strength"),
     WORDS("largest tension at an extreme fibre ÷ flexural strength that may be used at that age, over the whole piece"),
     WORDS("Tension: thin shells with bending and membrane action, gravity at the true mass times the factor of the "
           "case. Strength: EN 1992-1-1:2004 3.1.8 (flexure) and 3.1.2(9) (age), lower fractile, ÷ 1.5 against cracking "
           "when handled (precast practice, from memory)."),
     WORDS("Uncracked concrete without any help from steel or fibres. At sharp inner corners it is averaged over one "
           "thickness of the slab. The class of the mix and its temperature while it hardens are taken from this plan: "
           "nobody has broken a cube.")},
    {"strength_tension", WORDS("Tension in the concrete"),
     WORDS("force ÷ thickness ± moment × distance ÷ second moment of area, largest principal value at face and "
           "underside"),
     WORDS("Shell theory (flat triangles, bending and membrane); checked against published plates and a general "
           "solver."),
     WORDS("Shrinkage, sun and frost pull as well and are not in it.")},
    {"strength_deflection", WORDS("Bending of a piece"),
     WORDS("largest displacement along gravity of the uncracked slab, with the elastic modulus at that age"),
     WORDS("EN 1992-1-1:2004 3.1.3 for the modulus."),
     WORDS("At once, without creep: over years it may become some two to three times as much (common practice, no "
           "source).")},
    {"strength_section", WORDS("What passes through a cut"),
     WORDS("mean over the concrete along the cut of moment and force per width; tension is the largest along it"),
     WORDS("Statics. Positive moments pull the underside in use."),
     WORDS("Cuts lie across the strips beside each cutout, between rests, over each rest and where the slab overhangs.")},
    {"earliest_hour", WORDS("From when on it holds"),
     WORDS("first hour at which the tension of that way, own weight times its factor, is no more than the strength in "
           "bending at that age; not before the mean strength at which the mould comes off"),
     WORDS("EN 1992-1-1:2004 3.1.2 and 3.1.8, age by temperature eq. B.10; tension: thin shells, as on the card of "
           "strength."),
     WORDS("Likely: mean strength, the safety taken off. With safety: lower fractile ÷ safety. The casting is taken as "
           "warm as the air. Before about one day at 20 °C the strength is stretched beyond its equation: test a piece.")},
    {"strength_gain", WORDS("Share of the strength at 28 days"),
     WORDS("e^(s × (1 − √(28 ÷ age))); age in days = sum of hours × e^(13.65 − 4000 ÷ (273 + °C)) ÷ 24"),
     WORDS("EN 1992-1-1:2004 eq. 3.2 and B.10; s by the speed of the cement."),
     WORDS("By the temperatures of the plan's days, or those that were measured. Nobody has broken a cube.")},
    {"season_month", WORDS("How good a month is for casting"),
     WORDS("not fit where it freezes or the wait has no end; of the others those whose worst hour stays under the limit of "
           "drying first, then the shorter wait (of carrying and keeping moist the longer)"),
     WORDS("Our own ranking; drying by Uno (1998), wait by EN 1992-1-1 eq. B.10, curing by EN 13670 (from memory)."),
     WORDS("The weather of the months is this plan's own.")},
    {"pour_days", WORDS("Days of pouring"),
     WORDS("castings one after the other in this order; each begun only where it is finished by the evening, within the "
           "working time, and into a mould that is free"),
     WORDS("Our own schedule; batches come ready one after the other, as many minutes apart as this plan says."),
     WORDS("Times are those to be expected. Who waits for a mould waits up to an hour for those that follow it.")},
    {"cold_joint", WORDS("Chance of a cold joint"),
     WORDS("plays in which some batch is covered later than its concrete can be worked ÷ all plays"),
     WORDS("Our own play of the day: minutes of a batch, slips, setting and air vary. The spreads are our choice, no "
           "source."),
     WORDS("It compares one plan with another better than it foretells a day. The count of plays leaves the bounds that "
           "are stated.")},
    {"poured", WORDS("How a casting is poured"),
     WORDS("litres with allowance ÷ litres of a full batch; it waits for as many batches as come before its concrete is "
           "covered"),
     WORDS("Working time: minutes at 20 °C × 2^((20 − concrete °C) ÷ 10) (from memory)."),
     WORDS("Each layer is begun where the one below was begun.")},
    {"contingency", WORDS("Kept back for the unforeseen"), WORDS("(limit − total) ÷ total, against 10 % of the total"),
     WORDS("Common practice 10 to 15 %, no source."), WORDS("What is not on the list is not in the total either.")},
};

}  // namespace

FigureNote figureNote(const std::string& code)
{
    for (const Note& note : kNotes) {
        if (code != note.code) continue;
        const QString assumption = *note.assumption == '\0' ? QString() : Words::tr(note.assumption);
        return {Words::tr(note.title), Words::tr(note.formula), Words::tr(note.source), assumption};
    }
    return {};
}

std::vector<std::string> figureCodes()
{
    std::vector<std::string> codes;
    for (const Note& note : kNotes) codes.push_back(note.code);
    return codes;
}

}  // namespace yardcast::ui
