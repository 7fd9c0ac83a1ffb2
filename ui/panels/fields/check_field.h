#pragma once

#include "ui/panels/fields/binding.h"
#include "ui/panels/fields/field.h"

class QCheckBox;

namespace yardcast::ui {

/// Yes or no; between the two where several differ.
class CheckField : public Field {
    Q_OBJECT

public:
    CheckField(FieldHost& host, const QString& path, const QString& label, const QString& text, Binding<bool> binding,
               QWidget* parent);

    void showPlan(const Plan& plan) override;
    QCheckBox& box() const { return *box_; }

private:
    Binding<bool> binding_;
    QCheckBox* box_;
};

}  // namespace yardcast::ui
