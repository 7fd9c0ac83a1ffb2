#pragma once

#include "ui/panels/fields/binding.h"
#include "ui/panels/fields/typed_field.h"

namespace yardcast::ui {

/// What a number may be.
struct NumberRules {
    QString unit{};
    double least = -1e6;
    double most = 1e6;
    bool aboveLeast = false;              ///< the least itself is refused
    int decimals = 2;                     ///< shown at most
    bool whole = false;                   ///< only whole numbers
    bool mayBeEmpty = false;              ///< empty: left to its default
    QString emptyText{};                  ///< shown while empty: what the default is
};

class NumberField : public TypedField {
    Q_OBJECT

public:
    NumberField(FieldHost& host, const QString& path, const QString& label, Binding<Number> binding,
                const NumberRules& rules, QWidget* parent);

    void showPlan(const Plan& plan) override;

protected:
    Outcome read(const QString& text) const override;
    struct Parsed {
        double value = 0.0;
        QString fault;
    };
    virtual Parsed parse(const QString& text) const;

private:
    QString boundsFault(double value) const;

    Binding<Number> binding_;
    NumberRules rules_;
};

/// A length in mm that may be typed as "185 cm" or "1.85 m" too.
class LengthField : public NumberField {
    Q_OBJECT

public:
    LengthField(FieldHost& host, const QString& path, const QString& label, Binding<Number> binding, NumberRules rules,
                QWidget* parent);

protected:
    Parsed parse(const QString& text) const override;
};

}  // namespace yardcast::ui
