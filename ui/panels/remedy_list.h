#pragma once

#include <vector>

#include <QList>
#include <QWidget>

#include "core/plan/finding.h"

class QPushButton;
class QVBoxLayout;

namespace yardcast::ui {

/// What would help with one finding: a sentence each with what it brings, and a button where the program can do it.
class RemedyList : public QWidget {
    Q_OBJECT

public:
    explicit RemedyList(QWidget* parent = nullptr);

    void setRemedies(const std::vector<Remedy>& remedies);
    /// They were worked out for a plan that is no longer the one on the sheet: nothing can be done by them now.
    void setOutdated(bool outdated);
    const QList<QPushButton*>& buttons() const { return buttons_; }

signals:
    void taken(const Remedy& remedy);

private:
    std::vector<Remedy> remedies_;
    QVBoxLayout* column_;
    QList<QPushButton*> buttons_;
    bool outdated_ = false;
};

}  // namespace yardcast::ui
