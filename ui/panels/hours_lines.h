#pragma once

#include <string>
#include <vector>

#include <QList>

#include "core/assess/assessment.h"
#include "core/plan/plan.h"
#include "ui/panels/figure_popover.h"
#include "ui/panels/line_model.h"

namespace yardcast::ui {

/// The table "When" of the lifting card, of three columns: castings with the likely and the cautious hour of each way;
/// mixes with the share of their strength and its mean after days; months with the wait until carried and their rank.
/// The source of a line is the index of what it is about in `subjects`, or -1.
struct HoursLines {
    QList<Line> lines;
    std::vector<std::vector<std::string>> subjects;  ///< castings or mixes
};
HoursLines hoursLines(const Plan& plan, const Assessment& assessment);

/// What stands behind the figures of such a line; an empty code where it has none.
struct HoursNote {
    QString code;
    QList<FigureValue> values;
};
HoursNote hoursNote(const Plan& plan, const Assessment& assessment, const Line& line);

}  // namespace yardcast::ui
