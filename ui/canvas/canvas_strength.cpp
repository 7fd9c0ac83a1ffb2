#include "ui/canvas/canvas_host.h"
#include "ui/canvas/strength_legend.h"
#include "ui/live/live_assessment.h"
#include "ui/live/strength_choice.h"
#include "ui/wording/figures.h"
#include "ui/wording/strength_names.h"

namespace yardcast::ui {

QString CanvasHost::caseText() const
{
    const auto& which = live_.strengthChoice().which();
    return which ? strengthCaseName(*which) : tr("Each piece in its worst case");
}

void CanvasHost::updateLegend()
{
    const bool shown = stage_ == Stage::strength && !overlay_.strength().isEmpty();
    if (shown) {
        QString enlarged;
        if (const auto scale = overlay_.strength().deflectionScale()) {
            enlarged = tr("Bending is drawn %1 times as large").arg(numberText(*scale, 0));
        }
        legend_->setLines({caseText(), enlarged});
        legend_->setRampShown(overlay_.strength().hasColours());
        legend_->setRefining(live_.isRefining());
        placeLegend();
    }
    if (legend_->isHidden() == shown) legend_->setVisible(shown);
}

void CanvasHost::placeLegend() { legend_->place(view_->viewport()->size()); }

}  // namespace yardcast::ui
