#pragma once

#include "ui/panels/live_card.h"

namespace yardcast::ui {

/// Litres to mix, bags, water-cement ratio, batches; by mix, its limits and the card of a batch, and by casting.
class ConcreteCard : public LiveCard {
    Q_OBJECT

public:
    ConcreteCard(PlanDocument& document, Selection& selection, LiveAssessment& live, QWidget* parent = nullptr);

protected:
    CardSummary summarise(const Plan& plan, const Assessment& assessment) const override;
    void fillTables(const Plan& plan, const Assessment& assessment) override;
    QList<FigureValue> valuesBehind(const QString& code, const Plan& plan, const Assessment& assessment) const override;
    void visitSubjects(const LineView& view, const Line& line, const Assessment& assessment,
                       const std::function<void(const std::string&)>& visit) const override;
    LineNote noteOf(const LineView& view, const Line& line, const Plan& plan,
                    const Assessment& assessment) const override;

private:
    static QList<FigureValue> valuesOf(const QString& code, const MixQuantities& quantities, const Mix& mix,
                                       const QString& prefix);

    void fillMixCards(const Plan& plan, const Assessment& assessment);

    LineView* byMix_;
    LineView* limits_;
    LineView* batches_;
    LineView* byCasting_;
};

}  // namespace yardcast::ui
