#include <algorithm>
#include <cmath>

#include <QCoreApplication>

#include "core/materials/materials.h"
#include "core/pour/charge.h"
#include "core/pour/mix_limits.h"
#include "core/pour/proportioning.h"
#include "ui/look/number_text.h"
#include "ui/panels/fields/property_sheet.h"
#include "ui/panels/properties/properties.h"
#include "ui/panels/properties/shared_fields.h"
#include "ui/wording/names.h"

namespace yardcast::ui {

namespace {

QString tr(const char* text) { return QCoreApplication::translate("Properties", text); }

std::string freeMixId(const Plan& plan)
{
    const std::string stem = tr("mix").toStdString();
    std::string id = stem;
    for (int number = 2; findMix(plan, id); ++number) id = stem + " " + std::to_string(number);
    return id;
}

/// The parts that are cast from it go with it.
Plan renameMix(const Plan& plan, int index, const std::string& name)
{
    return changePlan(plan, [&](Plan& changed) {
        if (index < 0 || index >= static_cast<int>(changed.mixes.size())) return;
        const std::string before = std::exchange(changed.mixes[static_cast<std::size_t>(index)].id, name);
        for (PartPtr& part : changed.parts) {
            Part own = *part;
            std::string* mix = nullptr;
            if (auto* counter = std::get_if<Counter>(&own.body)) mix = &counter->mix;
            if (auto* support = std::get_if<Support>(&own.body)) mix = &support->mix;
            if (auto* panel = std::get_if<Panel>(&own.body)) mix = &panel->mix;
            if (!mix || *mix != before) continue;
            *mix = name;
            part = std::make_shared<const Part>(std::move(own));
        }
    });
}

void addName(FieldColumn& form, const Scope<Mix>& mix, const std::shared_ptr<const int>& index)
{
    Binding<QString> name = bindText(mix.member([](auto& m) { return &m.id; }));
    name.write = [index](const Plan& plan, const QString& text) {
        return renameMix(plan, *index, text.toStdString());
    };
    TextRules own;
    own.fault = [index, &host = form.host()](const QString& text) {
        if (text.isEmpty()) return tr("A mix needs a name.");
        const std::vector<Mix>& mixes = host.plan()->mixes;
        for (int i = 0; i < static_cast<int>(mixes.size()); ++i) {
            if (i != *index && mixes[static_cast<std::size_t>(i)].id == text.toStdString()) {
                return tr("Another mix has this name.");
            }
        }
        return QString();
    };
    form.textBound(QStringLiteral("plan.mixes.id"), tr("Name"), name, own);
}

/// What a recipe begins as: for the mix's own class and ratio, and an outdoor slab in frost (XF3: 320 kg of cement).
Recipe firstRecipe(const Mix& mix)
{
    const ExposureLimits outdoors = limitsOf(Assumptions().frost);
    return startingRecipe(mix, mix.maxWaterCement > 0.0 ? std::min(mix.maxWaterCement, outdoors.maxWaterCement)
                                                        : outdoors.maxWaterCement,
                          outdoors.minCementKgM3);
}

void addKind(FieldColumn& form, const Scope<Mix>& mix)
{
    const Binding<bool> hasRecipe = bindAs<bool>(
        mix, [](const Mix& m) { return m.recipe.has_value(); },
        [](Mix& m, bool there) {
            if (there == m.recipe.has_value()) return;
            m.recipe = there ? std::optional<Recipe>(firstRecipe(m)) : std::nullopt;
        });
    form.check(QStringLiteral("plan.mixes.recipe"), tr("Mixed from"), tr("sand and gravel"), hasRecipe)
        .setHint(tr("Without a tick: from bags of dry mix. A recipe begins as ACI 211.1 would for the class; make a "
                    "trial batch."));
}

/// Bag fields are there while there is no recipe.
Scope<Bag> bagInUse(const Scope<Mix>& mix)
{
    return mix.member([](auto& m) { return m.recipe ? nullptr : &m.bag; });
}

void addAggregate(FieldColumn& form, const Scope<Aggregate>& aggregate, const QString& path, const QString& moisture,
                  const QString& absorption, const QString& density)
{
    form.number(path + QStringLiteral(".moisture_percent"), moisture,
                aggregate.member([](auto& a) { return &a.moisturePercent; }), rules(tr("%"), 0, 50))
        .setHint(tr("Water by dry mass: weigh a kilogram, dry it in a pan, weigh it again."));
    form.number(path + QStringLiteral(".absorption_percent"), absorption,
                aggregate.member([](auto& a) { return &a.absorptionPercent; }), rules(tr("%"), 0, 50));
    form.number(path + QStringLiteral(".density_kg_m3"), density,
                aggregate.member([](auto& a) { return &a.densityKgM3; }), rules(tr("kg/m³"), 300, 8000));
}

void addRecipeContent(FieldColumn& form, const Scope<Mix>& mix)
{
    const Scope<Recipe> recipe = contentOf(mix.member([](auto& m) { return &m.recipe; }));
    const QString path = QStringLiteral("plan.mixes.recipe");
    form.number(path + QStringLiteral(".cement_kg_m3"), tr("Cement in a m³"),
                recipe.member([](auto& r) { return &r.cementKgM3; }), rules(tr("kg"), 10, 2000));
    form.number(path + QStringLiteral(".water_l_m3"), tr("All water in a m³"),
                recipe.member([](auto& r) { return &r.waterLM3; }), rules(tr("l"), 10, 900))
        .setHint(tr("All of it outside the grains: from the tap, on the sand, in the plasticiser."));
    form.number(path + QStringLiteral(".sand_percent"), tr("Sand of the grains"),
                recipe.member([](auto& r) { return &r.sandPercent; }), rules(tr("%"), 0, 100));
    addAggregate(form, recipe.member([](auto& r) { return &r.sand; }), path + QStringLiteral(".sand"),
                 tr("Sand, moisture"), tr("Sand, absorption"), tr("Sand, density"));
    addAggregate(form, recipe.member([](auto& r) { return &r.gravel; }), path + QStringLiteral(".gravel"),
                 tr("Gravel, moisture"), tr("Gravel, absorption"), tr("Gravel, density"));
    form.length(path + QStringLiteral(".max_aggregate_mm"), tr("Largest stones"),
                recipe.member([](auto& r) { return &r.maxAggregateMm; }), sizeRules());
    form.number(path + QStringLiteral(".cement_bag_kg"), tr("Bag of cement"),
                recipe.member([](auto& r) { return &r.cementBagKg; }), rules(tr("kg"), 0.5, 2000));
}

void addTrial(FieldColumn& form, const Scope<Mix>& mix)
{
    const Scope<std::optional<TrialBatch>> trial = mix.member([](auto& m) { return &m.trial; });
    const QString path = QStringLiteral("plan.mixes.trial");
    // Begun as planned, so that a tick alone changes nothing.
    const Binding<bool> weighed = bindAs<bool>(
        mix, [](const Mix& m) { return m.trial.has_value(); },
        [](Mix& m, bool there) {
            if (there == m.trial.has_value()) return;
            m.trial.reset();
            if (!there) return;
            constexpr double kBucketL = 10.0;
            const double density = isUsable(m) ? plannedChargeOf(m).densityKgM3() : 2300.0;
            m.trial = TrialBatch{kBucketL, std::round(density * kBucketL / 100) / 10, {}, {}};
        });
    form.check(path, tr("Trial batch"), tr("weighed"), weighed)
        .setHint(tr("The first full bucket, weighed: its density gives the true yield."));
    const Scope<TrialBatch> content = contentOf(trial);
    form.number(path + QStringLiteral(".bucket_l"), tr("Bucket holds"),
                content.member([](auto& t) { return &t.bucketL; }), rules(tr("l"), 0.1, 1000));
    form.number(path + QStringLiteral(".concrete_kg"), tr("Concrete in it"),
                content.member([](auto& t) { return &t.concreteKg; }), rules(tr("kg"), 0.1, 5000, 3))
        .setHint(tr("Without the bucket."));
    form.number(path + QStringLiteral(".water_l"), tr("Tap water put in"),
                content.member([](auto& t) { return &t.waterL; }), optional(rules(tr("l"), 0.01, 1000, 3), tr("as planned")))
        .setHint(tr("For one bag, or for one m³ of a recipe."));
}

void addBag(FieldColumn& form, const Scope<Mix>& mix)
{
    const Scope<Bag> bag = bagInUse(mix);
    const QString path = QStringLiteral("plan.mixes.bag");
    NumberRules kilograms = rules(tr("kg"), 0, 2000, 3);
    kilograms.aboveLeast = true;
    NumberRules litres = rules(tr("l"), 0, 2000, 3);
    litres.aboveLeast = true;
    form.number(path + QStringLiteral(".mass_kg"), tr("Dry bag"), bag.member([](auto& b) { return &b.massKg; }),
                kilograms);
    form.number(path + QStringLiteral(".yield_l"), tr("A bag gives"), bag.member([](auto& b) { return &b.yieldL; }),
                litres)
        .setHint(tr("What its maker prints on it; not used where a density is stated."));
    form.number(path + QStringLiteral(".yield_spread_percent"), tr("Yield may be off by"),
                bag.member([](auto& b) { return &b.yieldSpreadPercent; }), rules(tr("%"), 0, 50))
        .setHint(tr("Either way: 4 % is common practice, no source. Spare bags cover it."));
    form.number(path + QStringLiteral(".fresh_density_kg_m3"), tr("Density instead"),
                bag.member([](auto& b) { return &b.freshDensityKgM3; }),
                optional(rules(tr("kg/m³"), 300, 5000), tr("yield is stated")))
        .setHint(tr("Of the fresh concrete, where the bag states no yield."));
    form.number(path + QStringLiteral(".water_l"), tr("Tap water a bag"), bag.member([](auto& b) { return &b.waterL; }),
                litres);
    form.number(path + QStringLiteral(".cement_kg"), tr("Cement in a bag"),
                bag.member([](auto& b) { return &b.cementKg; }), kilograms)
        .setHint(tr("Rarely printed: ask the maker."));
    form.length(path + QStringLiteral(".max_aggregate_mm"), tr("Largest stones"),
                bag.member([](auto& b) { return &b.maxAggregateMm; }), sizeRules());
}

void addDoses(FieldColumn& form, const Scope<Mix>& mix)
{
    const QString path = QStringLiteral("plan.mixes");
    TextRules strength;
    strength.fault = [](const QString& text) {
        return concreteClass(text.toStdString()) ? QString()
                                                 : tr("A strength class of EN 206, such as C25/30, is needed.");
    };
    form.text(path + QStringLiteral(".strength_class"), tr("Strength class"),
              mix.member([](auto& m) { return &m.strengthClass; }), strength);
    form.choice(path + QStringLiteral(".cement_speed"), tr("Cement hardens"),
                mix.member([](auto& m) { return &m.cementSpeed; }),
                fixedOptions({cementSpeedName(CementSpeed::slow), cementSpeedName(CementSpeed::normal),
                              cementSpeedName(CementSpeed::rapid)}));
    const NumberRules percent = rules(tr("%"), 0, 100);
    form.number(path + QStringLiteral(".extra_cement_percent"), tr("Extra cement"),
                mix.member([](auto& m) { return m.recipe ? nullptr : &m.extraCementPercent; }), percent)
        .setHint(tr("Of the mass of the dry bag."));
    form.number(path + QStringLiteral(".silica_fume_percent"), tr("Silica fume"),
                mix.member([](auto& m) { return &m.silicaFumePercent; }), percent)
        .setHint(tr("Of the cement, in the bag and extra."));
    form.number(path + QStringLiteral(".plasticiser_percent"), tr("Plasticiser"),
                mix.member([](auto& m) { return &m.plasticiserPercent; }), percent)
        .setHint(tr("Of the cement, in the bag and extra. The label decides."));
    form.number(path + QStringLiteral(".pigment_percent"), tr("Pigment"),
                mix.member([](auto& m) { return &m.pigmentPercent; }), percent)
        .setHint(tr("Of the cement: 2 to 5 % is usual, past 10 % it colours no deeper (from memory)."));
    form.number(path + QStringLiteral(".air_percent"), tr("Air"), mix.member([](auto& m) { return &m.airPercent; }),
                optional(rules(tr("%"), 0, 50), tr("not known")))
        .setHint(tr("Of the volume, as declared or measured. Frost asks for 4 % (EN 206 Table F.1)."));
    NumberRules ratio = rules({}, 0, 2);
    ratio.aboveLeast = true;
    form.number(path + QStringLiteral(".max_water_cement"), tr("Water-cement at most"),
                mix.member([](auto& m) { return &m.maxWaterCement; }), ratio);
    form.number(path + QStringLiteral(".allowance_percent"), tr("Allowance"),
                mix.member([](auto& m) { return &m.allowancePercent; }), percent)
        .setHint(tr("More than the moulds hold: 8 to 12 % is common practice, no source."));
}

void addFibres(FieldColumn& form, const Scope<Mix>& mix)
{
    const Scope<std::vector<Fibre>> fibres = mix.member([](auto& m) { return &m.fibres; });
    const QString path = QStringLiteral("plan.mixes.fibres");
    form.list(path, {tr("Fibres"), tr("Add fibres"), tr("Remove the fibres"), {}},
              {{tr("Fibres"), false}, {tr("kg/m³"), true}},
              listAccess<Fibre>(
                  fibres,
                  [](const Fibre& fibre, int) {
                      return QStringList{QString::fromStdString(fibre.kind), formatNumber(fibre.kgPerM3)};
                  },
                  [](const Plan&) { return Fibre{"AR glass", 3.0, {}}; }),
              [fibres, path](FieldColumn& own, const std::shared_ptr<const int>& index) {
                  const Scope<Fibre> fibre = elementOf(fibres, index);
                  own.text(path + QStringLiteral(".kind"), tr("Kind"), fibre.member([](auto& f) { return &f.kind; }))
                      .setHint(tr("AR glass, PP, PVA, basalt and steel are known with their density."));
                  own.number(path + QStringLiteral(".kg_per_m3"), tr("Dose"),
                             fibre.member([](auto& f) { return &f.kgPerM3; }), rules(tr("kg/m³"), 0, 200));
              });
}

}  // namespace

void describeMixes(PropertySheet& sheet)
{
    const Scope<std::vector<Mix>> mixes = planScope().member([](auto& p) { return &p.mixes; });
    sheet.group(tr("Mixes"))
        .list(QStringLiteral("plan.mixes"),
              {tr("What is mixed"), tr("Add a mix"), tr("Remove the mix"),
               tr("A casting needs a mix: the dry bag and what is added to it, or cement, sand and gravel.")},
              {{tr("Mix"), false}, {tr("class"), true}},
              listAccess<Mix>(
                  mixes,
                  [](const Mix& mix, int) {
                      return QStringList{QString::fromStdString(mix.id), QString::fromStdString(mix.strengthClass)};
                  },
                  [](const Plan& plan) {
                      Mix mix;
                      mix.id = freeMixId(plan);
                      return mix;
                  }),
              [mixes](FieldColumn& form, const std::shared_ptr<const int>& index) {
                  const Scope<Mix> mix = elementOf(mixes, index);
                  addName(form, mix, index);
                  addKind(form, mix);
                  addBag(form, mix);
                  addRecipeContent(form, mix);
                  addDoses(form, mix);
                  addFibres(form, mix);
                  addTrial(form, mix);
              });
}

}  // namespace yardcast::ui
