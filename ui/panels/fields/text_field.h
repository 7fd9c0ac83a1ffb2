#pragma once

#include "ui/panels/fields/binding.h"
#include "ui/panels/fields/typed_field.h"

namespace yardcast::ui {

struct TextRules {
    QString emptyText{};                                    ///< shown while empty
    std::function<QString(const QString& text)> fault{};    ///< why not, in words; empty text is passed too
    std::function<void(const QString& text)> committed{};   ///< after it was taken over
};

/// Words as they are; spaces around them are taken off.
class TextField : public TypedField {
    Q_OBJECT

public:
    TextField(FieldHost& host, const QString& path, const QString& label, Binding<QString> binding, TextRules rules,
              QWidget* parent);

    void showPlan(const Plan& plan) override;

protected:
    Outcome read(const QString& text) const override;
    void committed(const QString& text) override;

private:
    Binding<QString> binding_;
    TextRules rules_;
};

}  // namespace yardcast::ui
