#include "ui/panels/fields/number_field.h"

#include <cmath>

#include "ui/look/number_text.h"

namespace yardcast::ui {

NumberField::NumberField(FieldHost& host, const QString& path, const QString& label, Binding<Number> binding,
                         const NumberRules& rules, QWidget* parent)
    : TypedField(host, path, label, rules.unit, parent), binding_(std::move(binding)), rules_(rules)
{
}

void NumberField::showPlan(const Plan& plan)
{
    const Reading<Number> reading = binding_.read(plan);
    setThere(reading.there);
    if (!reading.there) return;
    if (reading.mixed) {
        showText({}, tr("different"));
    } else {
        showText(reading.value ? formatNumber(*reading.value, rules_.decimals) : QString(), rules_.emptyText);
    }
}

QString NumberField::boundsFault(double value) const
{
    const bool tooLow = value < rules_.least || (rules_.aboveLeast && value == rules_.least);
    if (!tooLow && value <= rules_.most) return {};
    const QString least = formatNumber(rules_.least, rules_.decimals);
    const QString most = formatNumber(rules_.most, rules_.decimals);
    const QString unit = rules_.unit.isEmpty() ? QString() : QChar::Nbsp + rules_.unit;
    if (tooLow && rules_.aboveLeast) return tr("This has to be more than %1%2.").arg(least, unit);
    if (tooLow) return tr("This has to be at least %1%2.").arg(least, unit);
    return tr("This can be at most %1%2.").arg(most, unit);
}

NumberField::Parsed NumberField::parse(const QString& text) const
{
    const NumberReading reading = parseNumber(text);
    return {reading.value, reading ? QString() : numberFaultText(*reading.fault)};
}

TypedField::Outcome NumberField::read(const QString& text) const
{
    if (text.trimmed().isEmpty() && rules_.mayBeEmpty) {
        return {{}, [write = binding_.write](const Plan& plan) { return write(plan, std::nullopt); }};
    }
    const Parsed parsed = parse(text);
    if (!parsed.fault.isEmpty()) return {parsed.fault, {}};
    if (rules_.whole && parsed.value != std::floor(parsed.value)) return {tr("Only whole numbers here."), {}};
    if (QString fault = boundsFault(parsed.value); !fault.isEmpty()) return {fault, {}};
    return {{}, [write = binding_.write, value = parsed.value](const Plan& plan) { return write(plan, value); }};
}

namespace {

NumberRules inMillimetres(NumberRules rules)
{
    rules.unit = LengthField::tr("mm");
    return rules;
}

}  // namespace

LengthField::LengthField(FieldHost& host, const QString& path, const QString& label, Binding<Number> binding,
                         NumberRules rules, QWidget* parent)
    : NumberField(host, path, label, std::move(binding), inMillimetres(std::move(rules)), parent)
{
}

NumberField::Parsed LengthField::parse(const QString& text) const
{
    const NumberReading reading = parseLengthMm(text);
    return {reading.value, reading ? QString() : numberFaultText(*reading.fault)};
}

}  // namespace yardcast::ui
