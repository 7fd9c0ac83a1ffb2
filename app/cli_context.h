#pragma once

#include <optional>
#include <string>

#include "core/assess/assessment.h"
#include "core/assess/mould_savings.h"
#include "core/plan/plan.h"
#include "core/purchase/price_book.h"
#include "core/structure/strength.h"

/// What the commands of yardcast-cli share.
namespace yardcast::cli {

/// Exit codes of the contract.
inline constexpr int kDone = 0;
inline constexpr int kStopFound = 1;  ///< only of `check`
inline constexpr int kNothingFound = 1;  ///< only of `best`
inline constexpr int kUnusable = 2;   ///< unreadable plan or wrong usage

struct Job {
    std::string planPath;
    std::string pricesPath;  ///< empty: the example book
    std::string outPath;
    std::string view;
    std::string part;
    std::string sheets;
    std::string goal;        ///< of `best`: "lightest" or "cheapest"
    double airC = 0.0;       ///< of `weather`, likewise what follows
    double concreteC = 0.0;
    double humidityPercent = 0.0;
    double windKmh = 0.0;
    std::string strengthClass;  ///< of `gain`, likewise what follows
    std::string cementSpeed;    ///< S, N or R
    std::string logPath;
    std::string listPath;    ///< of `cut`
    bool json = false;
    bool noRemedies = false;
    bool csv = false;
    bool formers = false;    ///< of `model`
};

struct Loaded {
    Plan plan;
    PriceBook prices;
    AssessmentPtr assessment;  ///< with what reading the file had to say
};

/// Reads the plan and the price book and assesses. Nothing where one of them cannot be used: then every reason was
/// written to standard error, each with its pointer, what is wrong, and what would mend it.
std::optional<Loaded> load(const Job& job);
/// Solves the strength of every casting and the hours from which it may be handled; what that finds is among the
/// findings from then on.
void solve(Loaded& loaded, Refinement refinement);
/// Cuts the plan's boards, foam, mesh, bars and timber from whole sheets and lengths; the shopping list and what is said of
/// money go by them from then on.
void solveCuts(Loaded& loaded);
/// Weighs fewer moulds against more days and saws old bases to later boards; findings and remedies stand in the
/// assessment from then on.
MouldSavings saveMoulds(Loaded& loaded);
/// Tries edits for the findings of strength; those that clear one stand among its remedies from then on. Solve first.
void tryRemedies(Loaded& loaded);

/// True, and said, when the result would be written over the plan it is made from.
bool wouldOverwritePlan(const Job& job);
/// False, and said, when the plan has no part with this id. Empty: all parts, true.
bool knowsPart(const Loaded& loaded, const std::string& part);

/// "yardcast-cli: TEXT" and a newline on standard error.
void complain(const std::string& text);
/// Text to standard output; false (and a complaint) when it could not all be written.
bool print(const std::string& text);

}  // namespace yardcast::cli
