#pragma once

#include <string>

#include "ui/panels/live_card.h"
#include "ui/panels/saving_rows.h"

class QComboBox;
class QToolButton;

namespace yardcast::ui {

class MouldView;
class RemedyList;
struct MouldSubject;

/// The mould of one casting as one stands in front of it, small beside it the casting as it stands, its parts with
/// their numbers; all moulds with their hands and twins; and what fewer moulds and old boards would save, each with the
/// edit that does it. Choosing a part marks it in the picture.
class MouldCard : public LiveCard {
    Q_OBJECT

public:
    MouldCard(PlanDocument& document, Selection& selection, LiveAssessment& live, QWidget* parent = nullptr);

    /// The casting whose mould is shown; empty without one.
    const std::string& shownCasting() const { return casting_; }
    void showCasting(const std::string& casting);
    /// The picture in a window of its own, as large as one likes.
    void showLarge();

protected:
    CardSummary summarise(const Plan& plan, const Assessment& assessment) const override;
    void fillTables(const Plan& plan, const Assessment& assessment) override;
    QList<FigureValue> valuesBehind(const QString& code, const Plan& plan, const Assessment& assessment) const override;
    void visitSubjects(const LineView& view, const Line& line, const Assessment& assessment,
                       const std::function<void(const std::string&)>& visit) const override;
    LineNote noteOf(const LineView& view, const Line& line, const Plan& plan,
                    const Assessment& assessment) const override;
    void lineBecameCurrent(const LineView& view, int row) override;
    void staleChanged(bool stale) override;
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void followSelection();
    void fillSavings(const Plan& plan);
    /// What can be done with the current line of the savings, while they are seen.
    void offerSaving();
    void take(const Remedy& remedy);
    /// Keeps what is shown, or takes the first of what is chosen, or the first there is.
    void settleCasting(const Assessment& assessment);
    void fillPicker(const Plan& plan, const Assessment& assessment);
    QList<Line> stepLines(const MouldSubject& subject) const;
    QList<Line> partLines(const Mould& mould) const;
    QList<Line> mouldLines(const Plan& plan, const Assessment& assessment) const;

    std::string casting_;
    QComboBox* picker_;
    MouldView* picture_;
    MouldView* standing_;
    QLabel* check_;
    LineView* steps_;
    LineView* parts_;
    LineView* heights_;
    LineView* moulds_;
    LineView* fewer_;
    std::vector<SavingRow> savings_;
    RemedyList* offered_;
    QLabel* told_;
    MouldView* large_ = nullptr;
    bool choosing_ = false;
};

}  // namespace yardcast::ui
