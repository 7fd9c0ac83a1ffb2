#pragma once

#include <QAbstractItemModel>
#include <QIcon>
#include <QList>
#include <QMap>

#include "core/plan/plan.h"

namespace yardcast::ui {

struct Ink;

/// Parts with their cutouts, and the fixtures of the site below one heading. Brought from plan to plan by the least
/// change.
class OutlineModel : public QAbstractItemModel {
    Q_OBJECT

public:
    enum class Kind { part, cutout, site, fixture };
    struct Place {
        Kind kind = Kind::part;
        QString id;
        QString part;  ///< of a cutout
    };

    using QAbstractItemModel::QAbstractItemModel;

    void setPlan(const PlanPtr& plan);
    void setInk(const Ink& ink);

    Place placeOf(const QModelIndex& index) const;
    QModelIndex indexOfPart(const QString& part) const;
    QModelIndex indexOfCutout(const QString& part, const QString& cutout) const;
    QModelIndex indexOfFixture(const QString& fixture) const;

    QModelIndex index(int row, int column, const QModelIndex& parent = {}) const override;
    QModelIndex parent(const QModelIndex& index) const override;
    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    bool setData(const QModelIndex& index, const QVariant& value, int role) override;
    Qt::ItemFlags flags(const QModelIndex& index) const override;

signals:
    /// The name of a part was typed over; empty takes it away.
    void renameAsked(const QString& part, const QString& name);

private:
    struct Leaf {
        QString id;
        QString text;
        QString icon;
        friend bool operator==(const Leaf&, const Leaf&) = default;
    };
    struct Node {
        quintptr serial = 0;
        Kind kind = Kind::part;
        QString id;
        QString name;
        QString text;
        QString icon;
        QList<Leaf> leaves;
        PartPtr part;
    };
    QList<Node> nodesOf(const Plan& plan) const;
    void setLeaves(int row, const QList<Leaf>& leaves);
    int rowOf(const QString& id, Kind kind) const;
    QIcon iconNamed(const QString& name) const;

    QList<Node> nodes_;
    quintptr nextSerial_ = 1;
    QMap<QString, QIcon> icons_;
};

}  // namespace yardcast::ui
