#pragma once

#include <array>

#include "ui/panels/live_card.h"

class QLabel;
class QToolButton;

namespace yardcast::ui {

class RemedyList;

/// What the program has to say about the plan, gravest first: what, where, why, what would help.
class FindingsCard : public LiveCard {
    Q_OBJECT

public:
    FindingsCard(PlanDocument& document, Selection& selection, LiveAssessment& live, QWidget* parent = nullptr);

    bool isShown(Severity severity) const;
    void setShown(Severity severity, bool shown);
    /// Opens the card on this finding (index in the assessment) and chooses its part.
    void showFinding(int index);

protected:
    CardSummary summarise(const Plan& plan, const Assessment& assessment) const override;
    void fillTables(const Plan& plan, const Assessment& assessment) override;
    QList<FigureValue> valuesBehind(const QString& code, const Plan& plan, const Assessment& assessment) const override;
    void visitSubjects(const LineView& view, const Line& line, const Assessment& assessment,
                       const std::function<void(const std::string&)>& visit) const override;
    void figureClicked(const QString& code, const QWidget& beside) override;
    void lineBecameCurrent(const LineView& view, int row) override;
    void staleChanged(bool stale) override;
    bool isStale() const override;

private:
    void explain(int row);
    void take(const Remedy& remedy);

    LineView* list_;
    std::array<QToolButton*, 3> filters_{};
    QLabel* explanation_;
    RemedyList* remedies_;
};

}  // namespace yardcast::ui
