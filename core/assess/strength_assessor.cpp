#include "core/assess/strength_assessor.h"

#include <algorithm>
#include <iterator>
#include <utility>

#include "core/assess/finding_order.h"
#include "core/assess/share_out.h"

namespace yardcast {

namespace {

/// So many answers of each fineness are kept of one casting: what undo and redo lead to. A drag passes through many
/// coarse ones; they must not push out the fine ones.
constexpr std::ptrdiff_t kKeptOfEach = 4;

bool same(CaseChoice a, CaseChoice b) { return a.inUse == b.inUse && a.handling == b.handling; }

/// What presses on the ground is said once for all uprights, by the one that presses most: the remedy is one for all.
void sayGroundPressureOnce(std::vector<Finding>& findings)
{
    for (const Severity severity : {Severity::note, Severity::caution, Severity::stop}) {
        const auto isOne = [severity](const Finding& finding) {
            return finding.code == "ground_pressure" && finding.severity == severity;
        };
        const auto pressure = [](const Finding& finding) {
            const auto value = finding.values.find("pressure_kpa");
            const double* kpa = value == finding.values.end() ? nullptr : std::get_if<double>(&value->second);
            return kpa ? *kpa : 0.0;
        };
        const auto first = std::ranges::find_if(findings, isOne);
        if (first == findings.end()) continue;
        Finding whole = *first;
        whole.subjects.clear();
        for (const Finding& one : findings) {
            if (!isOne(one)) continue;
            if (pressure(one) > pressure(whole)) {
                whole.values = one.values;
                whole.pointer = one.pointer;
            }
            whole.subjects.insert(whole.subjects.end(), one.subjects.begin(), one.subjects.end());
        }
        *first = std::move(whole);
        findings.erase(std::remove_if(std::next(first), findings.end(), isOne), findings.end());
    }
}

bool covers(CaseChoice a, CaseChoice b) { return (a.inUse || !b.inUse) && (a.handling || !b.handling); }

}  // namespace

StrengthAssessor::StrengthAssessor(Solver solver) : solver_(std::move(solver)) {}

std::optional<std::vector<CastingStrengthPtr>> StrengthAssessor::assess(const Plan& plan, const Assessment& assessment,
                                                                        Refinement refinement, CaseChoice choice,
                                                                        std::stop_token stop)
{
    return assess(plan, assessment, refinement, choice, std::move(stop),
                  [](const Known& known, Refinement asked, CaseChoice cases) {
                      return known.refinement == asked && same(known.choice, cases);
                  });
}

std::optional<std::vector<CastingStrengthPtr>> StrengthAssessor::assessAtLeast(const Plan& plan,
                                                                               const Assessment& assessment,
                                                                               Refinement refinement, CaseChoice choice,
                                                                               std::stop_token stop)
{
    return assess(plan, assessment, refinement, choice, std::move(stop),
                  [](const Known& known, Refinement asked, CaseChoice cases) {
                      return known.refinement >= asked && covers(known.choice, cases);
                  });
}

std::optional<std::vector<CastingStrengthPtr>> StrengthAssessor::assess(const Plan& plan, const Assessment& assessment,
                                                                        Refinement refinement, CaseChoice choice,
                                                                        std::stop_token stop, Fits fits)
{
    std::vector<CastingPtr> castings;
    castings.reserve(assessment.castings.size());
    for (const PlacedCasting& placed : assessment.castings) castings.push_back(placed.casting);
    std::vector<StrengthInput> inputs = strengthInputs(plan, castings);

    std::vector<CastingStrengthPtr> answers(inputs.size());
    std::vector<std::size_t> unsolved;
    for (std::size_t i = 0; i < inputs.size(); ++i) {
        answers[i] = find(inputs[i], refinement, choice, fits);
        if (!answers[i]) unsolved.push_back(i);
    }

    shareOut(unsolved, stop, [&](std::size_t i) { answers[i] = solver_(inputs[i], refinement, choice, stop); });

    bool complete = true;
    for (const std::size_t i : unsolved) {
        if (!answers[i]) {
            complete = false;
            continue;
        }
        const std::string id = inputs[i].casting->id;
        keep(memo_[id], {std::move(inputs[i]), refinement, choice, answers[i]});
    }
    if (!complete) return std::nullopt;

    forgetOthers(memo_, castings);
    return answers;
}

void StrengthAssessor::keep(std::deque<Known>& known, Known added)
{
    const Refinement refinement = added.refinement;
    known.push_front(std::move(added));
    if (std::ranges::count(known, refinement, &Known::refinement) <= kKeptOfEach) return;
    const auto oldest = std::find_if(known.rbegin(), known.rend(),
                                     [&](const Known& one) { return one.refinement == refinement; });
    known.erase(std::next(oldest).base());
}

CastingStrengthPtr StrengthAssessor::find(const StrengthInput& input, Refinement refinement, CaseChoice choice,
                                          Fits fits)
{
    const auto entry = memo_.find(input.casting->id);
    if (entry == memo_.end()) return nullptr;
    std::deque<Known>& known = entry->second;
    // The finest that fits; of equally fine ones the latest used.
    auto best = known.end();
    for (auto it = known.begin(); it != known.end(); ++it) {
        const bool finer = best == known.end() || it->refinement > best->refinement;
        if (finer && fits(*it, refinement, choice) && it->input == input) best = it;
    }
    if (best == known.end()) return nullptr;
    std::rotate(known.begin(), best, std::next(best));
    return known.front().strength;
}

CastingStrengthPtr completedFrom(const CastingStrengthPtr& newer, const CastingStrengthPtr& older)
{
    if (!newer || !older || older->casting != newer->casting) return newer;
    const auto lacks = [&](StrengthCase which) { return newer->find(which) == nullptr; };
    if (std::ranges::none_of(older->cases, lacks, &CaseResult::which)) return newer;
    auto whole = std::make_shared<CastingStrength>(*newer);
    std::ranges::copy_if(older->cases, std::back_inserter(whole->cases), lacks, &CaseResult::which);
    std::ranges::stable_sort(whole->cases, {}, &CaseResult::which);
    std::ranges::copy_if(older->steel, std::back_inserter(whole->steel), lacks, &SteelCheck::which);
    for (const Finding& finding : older->findings) {
        const std::string word = wordAt(finding.values, "case");
        const bool missing = std::ranges::any_of(older->cases, [&](const CaseResult& one) {
            return lacks(one.which) && (word.empty() || word == strengthCaseWord(one.which));
        });
        // What names no case may have been found again.
        const bool again =
            word.empty() && std::ranges::find(newer->findings, finding.code, &Finding::code) != newer->findings.end();
        if (missing && !again) whole->findings.push_back(finding);
    }
    return whole;
}

AssessmentPtr withStrength(const Plan& plan, const AssessmentPtr& assessment,
                           const std::vector<CastingStrengthPtr>& strength)
{
    auto answer = std::make_shared<Assessment>(*assessment);
    std::vector<Finding> added;
    for (const PlacedCasting& placed : assessment->castings) {
        const auto found = std::ranges::find_if(strength, [&](const CastingStrengthPtr& one) {
            return one && one->casting == placed.casting->id && one->part == placed.casting->part;
        });
        if (found == strength.end()) continue;
        answer->strength.push_back(*found);
        const int index = indexOfPart(plan, placed.casting->part);
        for (Finding finding : (*found)->findings) {
            if (index >= 0) finding.pointer = "/parts/" + std::to_string(index) + finding.pointer;
            added.push_back(std::move(finding));
        }
    }
    const FindingOrder order(plan, answer->castings);
    order.sort(added);
    sayGroundPressureOnce(added);
    order.merge(answer->findings, std::move(added));
    return answer;
}

}  // namespace yardcast
