#pragma once

#include "ui/panels/live_card.h"

namespace yardcast::ui {

/// The total against the budget and a builder's quote, by aisle.
class MoneyCard : public LiveCard {
    Q_OBJECT

public:
    MoneyCard(PlanDocument& document, Selection& selection, LiveAssessment& live, QWidget* parent = nullptr);

    /// What should be kept back for the unforeseen, share of the total: common practice 10 to 15 %, no source.
    static constexpr double kContingencyShare = 0.10;

protected:
    CardSummary summarise(const Plan& plan, const Assessment& assessment) const override;
    void fillTables(const Plan& plan, const Assessment& assessment) override;
    QList<FigureValue> valuesBehind(const QString& code, const Plan& plan, const Assessment& assessment) const override;
    void visitSubjects(const LineView& view, const Line& line, const Assessment& assessment,
                       const std::function<void(const std::string&)>& visit) const override;
    LineNote noteOf(const LineView& view, const Line& line, const Plan& plan,
                    const Assessment& assessment) const override;

private:
    LineView* aisles_;
};

}  // namespace yardcast::ui
