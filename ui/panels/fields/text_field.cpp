#include "ui/panels/fields/text_field.h"

namespace yardcast::ui {

TextField::TextField(FieldHost& host, const QString& path, const QString& label, Binding<QString> binding,
                     TextRules rules, QWidget* parent)
    : TypedField(host, path, label, {}, parent), binding_(std::move(binding)), rules_(std::move(rules))
{
}

void TextField::showPlan(const Plan& plan)
{
    const Reading<QString> reading = binding_.read(plan);
    setThere(reading.there);
    if (!reading.there) return;
    if (reading.mixed) {
        showText({}, tr("different"));
    } else {
        showText(reading.value, rules_.emptyText);
    }
}

TypedField::Outcome TextField::read(const QString& text) const
{
    const QString trimmed = text.trimmed();
    if (rules_.fault) {
        if (QString fault = rules_.fault(trimmed); !fault.isEmpty()) return {fault, {}};
    }
    return {{}, [write = binding_.write, trimmed](const Plan& plan) { return write(plan, trimmed); }};
}

void TextField::committed(const QString& text)
{
    if (rules_.committed) rules_.committed(text.trimmed());
}

}  // namespace yardcast::ui
