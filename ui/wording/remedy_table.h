#pragma once

#include <vector>

namespace yardcast::ui {

/// Sentences for remedies; places as in finding_table.h, without subjects.
struct RemedySentence {
    const char* code;
    const char* text;
};

extern const std::vector<RemedySentence> kRemedySentences;
extern const std::vector<RemedySentence> kPourRemedySentences;

}  // namespace yardcast::ui
