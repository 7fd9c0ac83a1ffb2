#include "ui/panels/fields/field_column.h"

#include <QVBoxLayout>

#include "ui/look/theme.h"

namespace yardcast::ui {

FieldColumn::FieldColumn(FieldHost& host, QWidget* parent)
    : QWidget(parent), host_(host), layout_(new QVBoxLayout(this))
{
    layout_->setContentsMargins(0, 0, 0, 0);
    layout_->setSpacing(kStepPx);
}

void FieldColumn::add(Field* field)
{
    field->setParent(this);
    layout_->addWidget(field);
    fields_.append(field);
}

LengthField& FieldColumn::lengthBound(const QString& path, const QString& label, const Binding<Number>& binding,
                                      const NumberRules& rules)
{
    return put(new LengthField(host_, path, label, binding, rules, this));
}

TextField& FieldColumn::textBound(const QString& path, const QString& label, const Binding<QString>& binding,
                                  const TextRules& rules)
{
    return put(new TextField(host_, path, label, binding, rules, this));
}

ChoiceField& FieldColumn::choiceBound(const QString& path, const QString& label, const Binding<QString>& binding,
                                      const ChoiceField::OptionsOf& options)
{
    return put(new ChoiceField(host_, path, label, binding, options, this));
}

CheckField& FieldColumn::check(const QString& path, const QString& label, const QString& text,
                               const Binding<bool>& binding)
{
    return put(new CheckField(host_, path, label, text, binding, this));
}

ListField& FieldColumn::list(const QString& path, const ListWords& words, const QList<LineColumn>& columns,
                             const ListAccess& access, const ListField::Describe& describe)
{
    return put(new ListField(host_, path, words, columns, access, describe, this));
}

void FieldColumn::showPlan(const Plan& plan)
{
    for (Field* field : std::as_const(fields_)) field->showPlan(plan);
}

bool FieldColumn::commit()
{
    bool all = true;
    for (Field* field : std::as_const(fields_)) {
        if (field->isThere()) all = field->commit() && all;
    }
    return all;
}

void FieldColumn::restore()
{
    for (Field* field : std::as_const(fields_)) field->restore();
}

bool FieldColumn::hasAnythingThere() const { return std::ranges::any_of(fields_, &Field::isThere); }

}  // namespace yardcast::ui
