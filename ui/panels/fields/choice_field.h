#pragma once

#include <QList>

#include "ui/panels/fields/binding.h"
#include "ui/panels/fields/field.h"

class QComboBox;

namespace yardcast::ui {

struct Option {
    QString word;  ///< what the binding reads and writes
    QString text;
    friend bool operator==(const Option&, const Option&) = default;
};

/// One of several. What the plan says stays in the list even where it is none of them.
class ChoiceField : public Field {
    Q_OBJECT

public:
    using OptionsOf = std::function<QList<Option>(const Plan&)>;
    ChoiceField(FieldHost& host, const QString& path, const QString& label, Binding<QString> binding,
                OptionsOf optionsOf, QWidget* parent);

    void showPlan(const Plan& plan) override;
    QComboBox& box() const { return *box_; }

private:
    void choose(int index);

    Binding<QString> binding_;
    OptionsOf optionsOf_;
    QComboBox* box_;
    QList<Option> options_;
};

/// Options of an enum: one text for each enumerator, in order.
ChoiceField::OptionsOf fixedOptions(const QStringList& texts);
/// The same with a first one that leaves the value to its default.
ChoiceField::OptionsOf optionalOptions(const QString& defaultText, const QStringList& texts);

}  // namespace yardcast::ui
