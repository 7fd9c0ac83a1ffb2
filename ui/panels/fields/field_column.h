#pragma once

#include "ui/panels/fields/check_field.h"
#include "ui/panels/fields/choice_field.h"
#include "ui/panels/fields/list_field.h"
#include "ui/panels/fields/number_field.h"
#include "ui/panels/fields/text_field.h"

class QVBoxLayout;

namespace yardcast::ui {

/// Fields one below the other; each is told what the plan says and hides where the plan has no such property.
class FieldColumn : public QWidget {
    Q_OBJECT

public:
    explicit FieldColumn(FieldHost& host, QWidget* parent = nullptr);

    template <class T>
    LengthField& length(const QString& path, const QString& label, const Scope<T>& scope, const NumberRules& rules = {})
    {
        return lengthBound(path, label, bindNumber(scope), rules);
    }
    template <class T>
    NumberField& number(const QString& path, const QString& label, const Scope<T>& scope, const NumberRules& rules = {})
    {
        NumberRules own = rules;
        own.whole = own.whole || std::is_same_v<T, int> || std::is_same_v<T, std::optional<int>>;
        return put(new NumberField(host_, path, label, bindNumber(scope), own, this));
    }
    template <class T>
    TextField& text(const QString& path, const QString& label, const Scope<T>& scope, const TextRules& rules = {})
    {
        return textBound(path, label, bindText(scope), rules);
    }
    template <class T>
    ChoiceField& choice(const QString& path, const QString& label, const Scope<T>& scope,
                        const ChoiceField::OptionsOf& options)
    {
        return choiceBound(path, label, bindChoice(scope), options);
    }
    LengthField& lengthBound(const QString& path, const QString& label, const Binding<Number>& binding,
                             const NumberRules& rules = {});
    TextField& textBound(const QString& path, const QString& label, const Binding<QString>& binding,
                         const TextRules& rules = {});
    ChoiceField& choiceBound(const QString& path, const QString& label, const Binding<QString>& binding,
                             const ChoiceField::OptionsOf& options);
    CheckField& check(const QString& path, const QString& label, const QString& text, const Binding<bool>& binding);
    ListField& list(const QString& path, const ListWords& words, const QList<LineColumn>& columns,
                    const ListAccess& access, const ListField::Describe& describe);
    /// Any other field; the column owns it.
    template <class F>
    F& put(F* field)
    {
        add(field);
        return *field;
    }
    FieldHost& host() const { return host_; }

    void showPlan(const Plan& plan);
    /// What was typed in any of them; false where one cannot be taken over.
    bool commit();
    void restore();
    bool hasAnythingThere() const;

private:
    void add(Field* field);

    FieldHost& host_;
    QVBoxLayout* layout_;
    QList<Field*> fields_;
};

}  // namespace yardcast::ui
