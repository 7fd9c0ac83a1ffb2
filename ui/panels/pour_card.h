#pragma once

#include <string>
#include <vector>

#include "ui/panels/live_card.h"

class QAction;

namespace yardcast::ui {

class RemedyList;

/// The pour plan: days, castings in order with their batches and times, the chance of a cold joint, and what lowers it
/// most. Castings are brought forward and back here.
class PourCard : public LiveCard {
    Q_OBJECT

public:
    PourCard(PlanDocument& document, Selection& selection, LiveAssessment& live, QWidget* parent = nullptr);

    /// The casting of the current line one place forward or back in the order of pouring: one entry of the undo list.
    /// Nothing happens without such a line, or at the end of the list.
    void moveEarlier() { move(-1); }
    void moveLater() { move(1); }

protected:
    CardSummary summarise(const Plan& plan, const Assessment& assessment) const override;
    void fillTables(const Plan& plan, const Assessment& assessment) override;
    QList<FigureValue> valuesBehind(const QString& code, const Plan& plan, const Assessment& assessment) const override;
    LineNote noteOf(const LineView& view, const Line& line, const Plan& plan,
                    const Assessment& assessment) const override;
    void visitSubjects(const LineView& view, const Line& line, const Assessment& assessment,
                       const std::function<void(const std::string&)>& visit) const override;
    void staleChanged(bool stale) override;
    void lineBecameCurrent(const LineView& view, int row) override;

private:
    QAction* addMove(const QString& text, const QKeySequence& key, int by, QWidget* row);
    void move(int by);
    void take(const Remedy& remedy);
    void allowMoves();

    LineView* order_;
    LineView* layers_;
    LineView* changes_;
    RemedyList* remedies_;
    QAction* earlier_ = nullptr;
    QAction* later_ = nullptr;
};

}  // namespace yardcast::ui
