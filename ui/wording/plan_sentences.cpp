#include <QtGlobal>

#include "ui/wording/finding_table.h"
#include "ui/wording/words.h"

namespace yardcast::ui {

const std::vector<FindingSentence> kPlanSentences{};

}  // namespace yardcast::ui
