#pragma once

#include <vector>

/// The sentences, one table a floor of core. Texts hold places:
/// - "{subject}" is the name of the first subject, "{other}" that of the second, "{subjects}" all names,
///   "{each}" those of the castings that are alike (its "count" first ones);
/// - "{strip_mm}" is a value of the finding, written by the ending of its key ("_mm", "_kg", "_l", "_m2", "_percent",
///   "_h", "_c", "_min", "_n", "_kpa", "_clock" for an hour of the day); any other number in its shortest form;
/// - after a colon, how to write it: "money" (in the finding's own "currency"), "amount" and "unit" (in its own
///   "unit"), "item" (an item key in words), "type" (the kind of a JSON value), "key" (a key of the plan file in
///   words), "people" (how many it takes), "form" (of a counter, from all values), "load" (on a counter), "sure" (of a crack), "way" (left or right), "handled" (what is done to a casting), "rimless" (what has no depth without
///   a rim), "clock" (an hour of the day as 07:30), "rate" (kg of water a m2 and hour),
///   "joints" (how many), "ofthem" (it, or each of so many), "bearing" (whether joints lie over a support), "still" (whether it
///   is enough), "hours" (from when on it holds, empty where not known), "early" (why an hour is), "handledway" (what is
///   done to it), a digit (so many decimals).
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
extern const std::vector<FindingSentence> kMixSentences;
extern const std::vector<FindingSentence> kSteelWorthSentences;
extern const std::vector<FindingSentence> kHandlingSentences;
extern const std::vector<FindingSentence> kLiftingSentences;
extern const std::vector<FindingSentence> kInUseSentences;
extern const std::vector<FindingSentence> kWeatherSentences;
extern const std::vector<FindingSentence> kPourSentences;
extern const std::vector<FindingSentence> kReadinessSentences;
extern const std::vector<FindingSentence> kMouldSentences;

}  // namespace yardcast::ui
