#pragma once

#include <vector>

#include "ui/panels/live_card.h"

namespace yardcast::ui {

/// Mesh with laps and bars by diameter, the bar list, what the mesh is cut into, and what the steel is worth where the
/// strength of the castings is known.
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
    /// A row of the bar list, a piece of mesh (of those alike), a check: where they stand in the assessment.
    struct BarRow {
        CastingSteelLayoutPtr layout;
        std::size_t row = 0;
    };
    struct PieceRow {
        CastingSteelLayoutPtr layout;
        std::size_t mesh = 0;
        std::size_t piece = 0;
        int count = 0;
    };
    struct CheckRow {
        CastingStrengthPtr strength;
        std::size_t check = 0;
    };
    static std::vector<BarRow> barRows(const Assessment& assessment);
    static std::vector<PieceRow> pieceRows(const Assessment& assessment);
    static std::vector<CheckRow> checkRows(const Assessment& assessment);

    QList<Line> barLines(const Plan& plan, const Assessment& assessment) const;
    QList<Line> meshLines(const Plan& plan, const Assessment& assessment) const;
    QList<Line> checkLines(const Plan& plan, const Assessment& assessment) const;

    LineView* byDiameter_;
    LineView* bars_;
    LineView* meshes_;
    LineView* worth_;
};

}  // namespace yardcast::ui
