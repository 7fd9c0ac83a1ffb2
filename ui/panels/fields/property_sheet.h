#pragma once

#include <QSet>
#include <QWidget>

#include "ui/panels/fields/field_column.h"

class QToolButton;
class QVBoxLayout;

namespace yardcast::ui {

/// A heading that opens and closes the fields below it.
class FieldGroup : public QWidget {
    Q_OBJECT

public:
    FieldGroup(FieldHost& host, const QString& title, QWidget* parent);

    FieldColumn& fields() const { return *fields_; }
    QString title() const;
    bool isOpened() const { return opened_; }
    void setOpened(bool opened);
    /// Hidden while it has no property that the plan has.
    void showPlan(const Plan& plan);

signals:
    void openedChanged(bool opened);

private:
    QToolButton* heading_;
    FieldColumn* fields_;
    bool opened_ = true;
};

/// All groups of what is chosen.
class PropertySheet : public QWidget {
    Q_OBJECT

public:
    /// `closed`: titles of groups that begin closed; kept up to date.
    PropertySheet(FieldHost& host, QSet<QString>& closed, QWidget* parent = nullptr);

    /// A new group; it begins as the person left one of this title.
    FieldColumn& group(const QString& title);
    const QList<FieldGroup*>& groups() const { return groups_; }

    void showPlan(const Plan& plan);
    bool commit();
    /// The field of a key, null where this sheet has none.
    Field* find(const QString& path) const;

private:
    FieldHost& host_;
    QSet<QString>& closed_;
    QVBoxLayout* layout_;
    QList<FieldGroup*> groups_;
};

}  // namespace yardcast::ui
