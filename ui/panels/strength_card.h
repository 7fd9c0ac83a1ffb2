#pragma once

#include <string>

#include "ui/panels/live_card.h"

class QComboBox;
class QLabel;

namespace yardcast::ui {

class SearchBox;

/// How much of its strength each piece uses, in each case it goes through. The case that is looked at is that of the
/// drawing; the piece is the chosen one, or the one that uses most.
class StrengthCard : public LiveCard {
    Q_OBJECT

public:
    StrengthCard(PlanDocument& document, Selection& selection, LiveAssessment& live, QWidget* parent = nullptr);

protected:
    CardSummary summarise(const Plan& plan, const Assessment& assessment) const override;
    void fillTables(const Plan& plan, const Assessment& assessment) override;
    QList<FigureValue> valuesBehind(const QString& code, const Plan& plan, const Assessment& assessment) const override;
    void visitSubjects(const LineView& view, const Line& line, const Assessment& assessment,
                       const std::function<void(const std::string&)>& visit) const override;
    LineNote noteOf(const LineView& view, const Line& line, const Plan& plan,
                    const Assessment& assessment) const override;
    void lineBecameCurrent(const LineView& view, int row) override;
    bool isStale() const override;

private:
    struct Shown {
        const CastingStrength* strength = nullptr;
        const CaseResult* result = nullptr;
    };
    Shown shown(const Assessment& assessment) const;
    void fillChooser(const CastingStrength* strength);
    void fillCases(const CastingStrength& strength);
    void fillSections(const CaseResult& result, const Part* part);
    QString footnote(const Shown& shown, const Plan& plan) const;

    QComboBox* chooser_;
    LineView* pieces_;
    LineView* cases_;
    LineView* sections_;
    QLabel* about_;
    SearchBox* search_;
    double safety_ = 1.5;  ///< of the plan that is shown
    std::string casting_;  ///< looked at last in the table of pieces
    QList<StrengthCase> chosenFrom_;
};

}  // namespace yardcast::ui
