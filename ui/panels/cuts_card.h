#pragma once

#include <vector>

#include "ui/panels/live_card.h"

namespace yardcast::ui {

class CutView;

/// What is cut from whole sheets and lengths: how many to buy, how far from the least money, what the store's cuts cost, what
/// is left; and the picture of the chosen sheet.
class CutsCard : public LiveCard {
    Q_OBJECT

public:
    CutsCard(PlanDocument& document, Selection& selection, LiveAssessment& live, QWidget* parent = nullptr);

protected:
    CardSummary summarise(const Plan& plan, const Assessment& assessment) const override;
    void fillTables(const Plan& plan, const Assessment& assessment) override;
    QList<FigureValue> valuesBehind(const QString& code, const Plan& plan, const Assessment& assessment) const override;
    void visitSubjects(const LineView& view, const Line& line, const Assessment& assessment,
                       const std::function<void(const std::string&)>& visit) const override;
    LineNote noteOf(const LineView& view, const Line& line, const Plan& plan,
                    const Assessment& assessment) const override;
    void lineBecameCurrent(const LineView& view, int row) override;

private:
    /// What a line of the tables is about.
    struct Source {
        int sheets = -1;   ///< index into CutPlans::sheets
        int bars = -1;
        int row = -1;      ///< sheet of the plan, or pattern; -1 for the whole list
        int piece = -1;    ///< piece of the job
    };
    void addSheetLines(const Plan& plan, const CutPlans& cuts, int job, QList<Line>& lines);
    void addBarLines(const Plan& plan, const CutPlans& cuts, int job, QList<Line>& lines);
    int keep(const Source& source);
    void showPicture(int source);
    void showChosen();

    LineView* stock_;
    LineView* pieces_;
    CutView* picture_;
    std::vector<Source> sources_;
};

}  // namespace yardcast::ui
