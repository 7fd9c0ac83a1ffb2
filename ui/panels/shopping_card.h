#pragma once

#include "ui/panels/live_card.h"

namespace yardcast::ui {

/// What to buy, aisle by aisle, in whole packs.
class ShoppingCard : public LiveCard {
    Q_OBJECT

public:
    ShoppingCard(PlanDocument& document, Selection& selection, LiveAssessment& live, QWidget* parent = nullptr);

protected:
    CardSummary summarise(const Plan& plan, const Assessment& assessment) const override;
    void fillTables(const Plan& plan, const Assessment& assessment) override;
    QList<FigureValue> valuesBehind(const QString& code, const Plan& plan, const Assessment& assessment) const override;
    void visitSubjects(const LineView& view, const Line& line, const Assessment& assessment,
                       const std::function<void(const std::string&)>& visit) const override;
    LineNote noteOf(const LineView& view, const Line& line, const Plan& plan,
                    const Assessment& assessment) const override;

private:
    LineView* list_;
};

}  // namespace yardcast::ui
