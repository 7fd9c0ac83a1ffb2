#pragma once

#include <string>

#include <QWidget>

#include "core/plan/finding.h"
#include "core/plan/plan.h"
#include "core/remedy/remedies.h"

class QLabel;
class QProgressBar;
class QPushButton;

namespace yardcast::ui {

class LiveAssessment;
class PlanDocument;
class RemedyList;
class SearchRunner;

/// Asks for the lightest or cheapest form of a counter that holds, shows how far the search is, and offers what it
/// found as one edit.
class SearchBox : public QWidget {
    Q_OBJECT

public:
    SearchBox(PlanDocument& document, LiveAssessment& live, QWidget* parent = nullptr);

    /// The part looked at; only counters can be searched. Another part leaves what was found for the one before.
    void setPart(const std::string& id);
    bool isSearching() const;

private:
    void start(SearchGoal goal);
    void cancel();
    void tell(const PlanPtr& plan, const std::string& counter, const std::optional<SearchAnswer>& answer);
    void take(const Remedy& remedy);
    void update();

    PlanDocument& document_;
    LiveAssessment& live_;
    SearchRunner* runner_;
    QPushButton* lightest_;
    QPushButton* cheapest_;
    QPushButton* cancel_;
    QProgressBar* progress_;
    QLabel* answer_;
    RemedyList* offered_;
    std::string part_;
    PlanPtr searched_;  ///< the plan the answer is for
};

}  // namespace yardcast::ui
