#pragma once

#include "ui/panels/live_card.h"

namespace yardcast::ui {

/// Mesh with laps and bars by diameter.
class ReinforcementCard : public LiveCard {
    Q_OBJECT

public:
    ReinforcementCard(PlanDocument& document, Selection& selection, LiveAssessment& live, QWidget* parent = nullptr);

protected:
    CardSummary summarise(const Plan& plan, const Assessment& assessment) const override;
    void fillTables(const Plan& plan, const Assessment& assessment) override;
    QList<FigureValue> valuesBehind(const QString& code, const Plan& plan, const Assessment& assessment) const override;
    void visitSubjects(const LineView& view, const Line& line, const Assessment& assessment,
                       const std::function<void(const std::string&)>& visit) const override;
    LineNote noteOf(const LineView& view, const Line& line, const Plan& plan,
                    const Assessment& assessment) const override;

private:
    LineView* byDiameter_;
    LineView* bars_;
    LineView* meshes_;
};

}  // namespace yardcast::ui
