#pragma once

#include <vector>

/// The sentences, one table a floor of core. Texts hold places: "{subject}" is the name of the first subject,
/// "{other}" that of the second, "{subjects}" all names; "{strip_mm}" a value of the finding, written by the ending of
/// its key ("_mm", "_kg", "_l", "_m2", "_percent", "_h", "_c"), any other number in its shortest form; "{amount:money}"
/// an amount in the finding's own "currency"; "{item:item}" an item key in words; "{expected:type}"
/// the kind of a JSON value; "{people:people}" how many people it takes; "{limit:2}" a number with two decimals.
namespace yardcast::ui {

struct FindingSentence {
    const char* code;
    const char* text;
    const char* source;
    const char* help;  ///< may be empty
};

extern const std::vector<FindingSentence> kPurchaseSentences;
extern const std::vector<FindingSentence> kPriceFileSentences;
extern const std::vector<FindingSentence> kFileSentences;
extern const std::vector<FindingSentence> kPlanSentences;
extern const std::vector<FindingSentence> kDisciplineSentences;

}  // namespace yardcast::ui
