#include <QtGlobal>

#include "ui/wording/finding_table.h"
#include "ui/wording/remedy_table.h"
#include "ui/wording/words.h"

namespace yardcast::ui {

const std::vector<FindingSentence> kDisciplineSentences{};

const std::vector<RemedySentence> kRemedySentences{};

}  // namespace yardcast::ui
