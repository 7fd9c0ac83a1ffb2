#include <algorithm>

#include <QCoreApplication>

#include "core/materials/materials.h"
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

void addBag(FieldColumn& form, const Scope<Mix>& mix)
{
    const Scope<Bag> bag = mix.member([](auto& m) { return &m.bag; });
    const QString path = QStringLiteral("plan.mixes.bag");
    NumberRules kilograms = rules(tr("kg"), 0, 2000, 3);
    kilograms.aboveLeast = true;
    NumberRules litres = rules(tr("l"), 0, 2000, 3);
    litres.aboveLeast = true;
    form.number(path + QStringLiteral(".mass_kg"), tr("Dry bag"), bag.member([](auto& b) { return &b.massKg; }),
                kilograms);
    form.number(path + QStringLiteral(".yield_l"), tr("A bag gives"), bag.member([](auto& b) { return &b.yieldL; }),
                litres)
        .setHint(tr("What its maker prints on it; known to some 4 % only."));
    form.number(path + QStringLiteral(".water_l"), tr("Water a bag"), bag.member([](auto& b) { return &b.waterL; }),
                litres);
    form.number(path + QStringLiteral(".cement_kg"), tr("Cement in a bag"),
                bag.member([](auto& b) { return &b.cementKg; }), kilograms)
        .setHint(tr("Rarely printed: ask the maker."));
    form.length(path + QStringLiteral(".max_aggregate_mm"), tr("Largest stones"),
                bag.member([](auto& b) { return &b.maxAggregateMm; }), sizeRules());
}

void addRecipe(FieldColumn& form, const Scope<Mix>& mix)
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
                mix.member([](auto& m) { return &m.extraCementPercent; }), percent)
        .setHint(tr("Of the mass of the dry bag."));
    form.number(path + QStringLiteral(".silica_fume_percent"), tr("Silica fume"),
                mix.member([](auto& m) { return &m.silicaFumePercent; }), percent)
        .setHint(tr("Of the cement, in the bag and extra."));
    form.number(path + QStringLiteral(".plasticiser_percent"), tr("Plasticiser"),
                mix.member([](auto& m) { return &m.plasticiserPercent; }), percent)
        .setHint(tr("Of the cement, in the bag and extra. The label decides."));
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
               tr("A casting needs a mix: the dry bag and what is added to it.")},
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
                  addBag(form, mix);
                  addRecipe(form, mix);
                  addFibres(form, mix);
              });
}

}  // namespace yardcast::ui
