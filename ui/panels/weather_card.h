#pragma once

#include "ui/panels/live_card.h"

class QLabel;

namespace yardcast::ui {

class WeatherChartView;

/// The pour day: when to begin, how much water fresh concrete loses, how long it can be worked, frost, curing.
class WeatherCard : public LiveCard {
    Q_OBJECT

public:
    WeatherCard(PlanDocument& document, Selection& selection, LiveAssessment& live, QWidget* parent = nullptr);

protected:
    CardSummary summarise(const Plan& plan, const Assessment& assessment) const override;
    void fillTables(const Plan& plan, const Assessment& assessment) override;
    QList<FigureValue> valuesBehind(const QString& code, const Plan& plan, const Assessment& assessment) const override;
    void visitSubjects(const LineView& view, const Line& line, const Assessment& assessment,
                       const std::function<void(const std::string&)>& visit) const override;
    LineNote noteOf(const LineView& view, const Line& line, const Plan& plan,
                    const Assessment& assessment) const override;

private:
    WeatherChartView* chart_;
    LineView* hours_;
    LineView* curing_;
    QLabel* foot_;
};

}  // namespace yardcast::ui
