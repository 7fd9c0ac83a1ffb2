#include <algorithm>

#include <QCoreApplication>

#include "core/purchase/price_book.h"
#include "ui/look/number_text.h"
#include "ui/panels/fields/property_sheet.h"
#include "ui/panels/properties/properties.h"
#include "ui/panels/properties/shared_fields.h"
#include "ui/wording/names.h"

namespace yardcast::ui {

namespace {

QString tr(const char* text) { return QCoreApplication::translate("Properties", text); }

void addMoney(PropertySheet& sheet, const Scope<Plan>& plan)
{
    FieldColumn& column = sheet.group(tr("Budget"));
    const Scope<std::optional<Budget>> budget = plan.member([](auto& p) { return &p.budget; });
    const Scope<Budget> content = contentOf(budget);
    Budget fresh;
    fresh.limit = 1000.0;
    Binding<QString> currency = bindText(plan.member([](auto& p) { return &p.currency; }));
    currency.write = [](const Plan& p, const QString& text) {
        return changePlan(p, [&](Plan& changed) { changed.currency = text.toUpper().toStdString(); });
    };
    TextRules code;
    code.fault = [](const QString& text) {
        const bool letters = text.size() == 3 && std::ranges::all_of(text, [](QChar c) {
                                 return c.toUpper() >= QLatin1Char('A') && c.toUpper() <= QLatin1Char('Z');
                             });
        return letters ? QString() : tr("Three letters, such as EUR (ISO 4217).");
    };
    column.textBound(QStringLiteral("plan.currency"), tr("Currency"), currency, code);
    column.check(QStringLiteral("plan.budget"), tr("Budget"), tr("has a limit"), bindPresence(budget, fresh));
    column.number(QStringLiteral("plan.budget.limit"), tr("Limit"), content.member([](auto& b) { return &b.limit; }),
                  rules({}, 0, 1e9));
    column.number(QStringLiteral("plan.budget.quote"), tr("Builder's quote"),
                  content.member([](auto& b) { return &b.quote; }), optional(rules({}, 0, 1e9), tr("none")));
}

void addPeopleAndMixer(PropertySheet& sheet, const Scope<Plan>& plan)
{
    FieldColumn& crew = sheet.group(tr("Crew"));
    crew.number(QStringLiteral("plan.crew.people"), tr("People"), plan.member([](auto& p) { return &p.crew.people; }),
                rules({}, 1, 50, 0));
    crew.number(QStringLiteral("plan.crew.lift_limit_kg"), tr("Each may lift"),
                plan.member([](auto& p) { return &p.crew.liftLimitKg; }), rules(tr("kg"), 1, 200))
        .setHint(tr("25 kg is a usual guide figure; a team lifts less than the sum."));

    FieldColumn& mixer = sheet.group(tr("Mixer"));
    const Scope<std::optional<Mixer>> scope = plan.member([](auto& p) { return &p.mixer; });
    const Scope<Mixer> content = contentOf(scope);
    mixer.check(QStringLiteral("plan.mixer"), tr("Mixer"), tr("there is one"), bindPresence(scope, Mixer()));
    NumberRules drum = rules(tr("l"), 0, 1e4);
    drum.aboveLeast = true;
    mixer
        .number(QStringLiteral("plan.mixer.drum_l"), tr("Drum"), content.member([](auto& m) { return &m.drumL; }), drum)
        .setHint(tr("As its maker names it."));
    mixer
        .number(QStringLiteral("plan.mixer.usable_percent"), tr("Of it filled"),
                content.member([](auto& m) { return &m.usablePercent; }), rules(tr("%"), 5, 100))
        .setHint(tr("Common practice 50 to 80 %, no source."));
    mixer.number(QStringLiteral("plan.mixer.batch_minutes"), tr("A batch takes"),
                 content.member([](auto& m) { return &m.batchMinutes; }), rules(tr("min"), 0, 600));
}

QString itemText(const PriceBook* prices, const std::string& item)
{
    const PricedItem* priced = prices ? prices->find(item) : nullptr;
    return priced ? QString::fromStdString(priced->name) : itemWord(item);
}

/// Every item of the price book, under its name and unit.
ChoiceField::OptionsOf itemOptions(const PriceBook* prices)
{
    QList<Option> options;
    if (prices) {
        for (const PricedItem& item : prices->items) {
            options.append({QString::fromStdString(item.item),
                            tr("%1, %2").arg(QString::fromStdString(item.name), unitName(item.unit))});
        }
    }
    return [options](const Plan&) { return options; };
}

std::string firstItem(const PriceBook* prices) { return prices && !prices->items.empty() ? prices->items[0].item : ""; }

}  // namespace

void describeOwned(PropertySheet& sheet, const PropertyContext& context)
{
    const PriceBook* prices = context.prices;
    const Scope<std::vector<Owned>> owned = planScope().member([](auto& p) { return &p.owned; });
    sheet.group(tr("Already there"))
        .list(QStringLiteral("plan.owned"),
              {tr("What need not be bought"), tr("Add something"), tr("Remove it"),
               tr("What is here is taken off the shopping list.")},
              {{tr("Item"), false}, {tr("amount"), true}},
              listAccess<Owned>(
                  owned,
                  [prices](const Owned& o, int) {
                      return QStringList{itemText(prices, o.item), formatNumber(o.amount)};
                  },
                  [prices](const Plan&) { return Owned{firstItem(prices), 1.0, {}}; }),
              [owned, prices](FieldColumn& form, const std::shared_ptr<const int>& index) {
                  const Scope<Owned> one = elementOf(owned, index);
                  form.choiceBound(QStringLiteral("plan.owned.item"), tr("Item"),
                                   bindText(one.member([](auto& o) { return &o.item; })), itemOptions(prices));
                  form.number(QStringLiteral("plan.owned.amount"), tr("Amount"),
                              one.member([](auto& o) { return &o.amount; }), rules({}, 0, 1e6));
              });

    const Scope<std::vector<OwnPrice>> own = planScope().member([](auto& p) { return &p.prices; });
    sheet.group(tr("Own prices"))
        .list(QStringLiteral("plan.prices"),
              {tr("Prices you were given"), tr("Add a price"), tr("Remove the price"),
               tr("A price of your own stands in for that of the price book.")},
              {{tr("Item"), false}, {tr("pack"), true}, {tr("price"), true}},
              listAccess<OwnPrice>(
                  own,
                  [prices](const OwnPrice& p, int) {
                      return QStringList{itemText(prices, p.item), formatNumber(p.packSize), formatNumber(p.price)};
                  },
                  [prices](const Plan&) {
                      OwnPrice price{firstItem(prices), 1.0, 0.0, {}};
                      const PricedItem* item = prices ? prices->find(price.item) : nullptr;
                      if (item && !item->packs.empty()) price.packSize = item->packs[0].size;
                      return price;
                  }),
              [own, prices](FieldColumn& form, const std::shared_ptr<const int>& index) {
                  const Scope<OwnPrice> one = elementOf(own, index);
                  NumberRules pack = rules({}, 0, 1e6);
                  pack.aboveLeast = true;
                  form.choiceBound(QStringLiteral("plan.prices.item"), tr("Item"),
                                   bindText(one.member([](auto& p) { return &p.item; })), itemOptions(prices));
                  form.number(QStringLiteral("plan.prices.pack_size"), tr("In a pack"),
                              one.member([](auto& p) { return &p.packSize; }), pack);
                  form.number(QStringLiteral("plan.prices.price"), tr("Price a pack"),
                              one.member([](auto& p) { return &p.price; }), rules({}, 0, 1e7));
              });
}

void describePlan(PropertySheet& sheet, const PropertyContext& context)
{
    const Scope<Plan> plan = planScope();
    sheet.group(tr("Plan")).text(QStringLiteral("plan.title"), tr("Title"), plan.member([](auto& p) {
        return &p.title;
    }));
    addPeopleAndMixer(sheet, plan);
    addMoney(sheet, plan);
    describeMixes(sheet);
    describeWeather(sheet);
    describeSite(sheet);
    describePouring(sheet);
    describeMoulding(sheet);
    describeAssumptions(sheet);
    describeOwned(sheet, context);
}

}  // namespace yardcast::ui
