#pragma once

#include <string>
#include <vector>

#include "ui/panels/live_card.h"

class QLabel;

namespace yardcast::ui {

class HoursView;

/// The heaviest piece, whether those who lift each piece can, what each of them bears, what helps where they cannot, and
/// from when on it may be handled.
class LiftingCard : public LiveCard {
    Q_OBJECT

public:
    LiftingCard(PlanDocument& document, Selection& selection, LiveAssessment& live, QWidget* parent = nullptr);

protected:
    CardSummary summarise(const Plan& plan, const Assessment& assessment) const override;
    void fillTables(const Plan& plan, const Assessment& assessment) override;
    QList<FigureValue> valuesBehind(const QString& code, const Plan& plan, const Assessment& assessment) const override;
    void visitSubjects(const LineView& view, const Line& line, const Assessment& assessment,
                       const std::function<void(const std::string&)>& visit) const override;
    LineNote noteOf(const LineView& view, const Line& line, const Plan& plan,
                    const Assessment& assessment) const override;
    /// The chart of hours stands above their table only.
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    static QList<FigureValue> massValues(const CastingLift& lift, const Plan& plan, const Assessment& assessment);

    void fillRules(const Plan& plan, const Assessment& assessment);
    void fillHands(const Plan& plan, const Assessment& assessment);
    void fillMeans(const Plan& plan, const Assessment& assessment);
    void fillWhen(const Plan& plan, const Assessment& assessment);
    void showChart();

    LineView* pieces_;
    LineView* hands_;
    LineView* rules_;
    LineView* means_;
    LineView* when_;
    HoursView* hours_;
    std::vector<std::vector<std::string>> whenSubjects_;
    QLabel* team_;
};

}  // namespace yardcast::ui
