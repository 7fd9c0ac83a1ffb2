#pragma once

#include <functional>
#include <optional>
#include <vector>

#include <QList>

#include "ui/panels/fields/field.h"
#include "ui/panels/fields/scope.h"

class QCheckBox;
class QVBoxLayout;

namespace yardcast::ui {

/// Names of the edges of an outline by the side they face: "front", "right", "back", "left", "front left"; numbered
/// where several face the same way. The front is the side towards the person (small y of the own frame).
QStringList edgeNames(const std::vector<Point>& outline);

/// Which edges of a counter something runs along.
struct EdgesAccess {
    /// None: the counter has no such thing.
    std::function<std::optional<std::vector<int>>(const Counter&)> read;
    std::function<void(Counter&, const std::vector<int>&)> write;
};
EdgesAccess rimEdges();
EdgesAccess dripEdges();
EdgesAccess rebateEdges();

/// The edges a rim, a groove or a rebate runs along, to be ticked one by one.
class EdgesField : public Field {
    Q_OBJECT

public:
    EdgesField(FieldHost& host, const QString& path, const QString& label, Scope<Counter> scope, EdgesAccess access,
               QWidget* parent);

    void showPlan(const Plan& plan) override;
    const QList<QCheckBox*>& boxes() const { return boxes_; }

private:
    void take();

    Scope<Counter> scope_;
    EdgesAccess access_;
    QWidget* list_;
    QVBoxLayout* column_;
    QList<QCheckBox*> boxes_;
};

}  // namespace yardcast::ui
