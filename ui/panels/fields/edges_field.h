#pragma once

#include <QList>

#include "ui/panels/fields/field.h"
#include "ui/panels/fields/scope.h"

class QCheckBox;
class QVBoxLayout;

namespace yardcast::ui {

/// Names of the edges of an outline by the side they face: "front", "right", "back", "left", "front left"; numbered
/// where several face the same way. The front is the side towards the person (small y of the own frame).
QStringList edgeNames(const std::vector<Point>& outline);

/// The edges a rim runs along, to be ticked one by one.
class EdgesField : public Field {
    Q_OBJECT

public:
    EdgesField(FieldHost& host, const QString& path, const QString& label, Scope<Counter> scope, QWidget* parent);

    void showPlan(const Plan& plan) override;
    const QList<QCheckBox*>& boxes() const { return boxes_; }

private:
    void take();

    Scope<Counter> scope_;
    QWidget* list_;
    QVBoxLayout* column_;
    QList<QCheckBox*> boxes_;
};

}  // namespace yardcast::ui
