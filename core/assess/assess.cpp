#include "core/assess/assess.h"

#include <algorithm>
#include <limits>
#include <unordered_map>
#include <utility>

#include "core/plan/validation.h"

namespace yardcast {

namespace {

/// What is known about one part: it depends on the part's id and body only, not on where it stands.
struct PartMemo {
    PartPtr part;
    std::vector<CastingPtr> castings;
    std::optional<FrontLayout> front;
    std::vector<Finding> findings;
};

bool sameBody(const PartPtr& a, const PartPtr& b)
{
    return a == b || (a->id == b->id && a->body == b->body);
}

PartMemo computePart(const PartPtr& part)
{
    PartMemo memo;
    memo.part = part;
    if (part->kind() == PartKind::front) {
        memo.front = layOutFront(*part, memo.findings);
    } else {
        memo.castings = castingsOf(*part);
    }
    return memo;
}

/// Place of a finding in the list: that of the part it speaks about; what speaks about no part comes last.
class FindingOrder {
public:
    FindingOrder(const Plan& plan, const std::vector<PlacedCasting>& castings)
    {
        for (std::size_t i = 0; i < plan.parts.size(); ++i) placeOf_.try_emplace(plan.parts[i]->id, i);
        for (const PlacedCasting& placed : castings) {
            const auto part = placeOf_.find(placed.casting->part);
            if (part != placeOf_.end()) placeOf_.try_emplace(placed.casting->id, part->second);
        }
    }

    void sort(std::vector<Finding>& findings) const
    {
        std::stable_sort(findings.begin(), findings.end(), [this](const Finding& a, const Finding& b) {
            if (a.severity != b.severity) return a.severity > b.severity;
            return place(a) < place(b);
        });
    }

private:
    std::size_t place(const Finding& finding) const
    {
        const auto none = std::numeric_limits<std::size_t>::max();
        if (finding.subjects.empty()) return none;
        const auto found = placeOf_.find(finding.subjects.front());
        return found == placeOf_.end() ? none : found->second;
    }

    std::unordered_map<std::string, std::size_t> placeOf_;
};

}  // namespace

struct Assessor::Memo {
    std::unordered_map<std::string, PartMemo> parts;
    SteelLayouts steel;
};

Assessor::Assessor(PriceBook prices) : prices_(std::move(prices)), memo_(std::make_unique<Memo>()) {}

Assessor::~Assessor() = default;

AssessmentPtr Assessor::assess(const Plan& plan)
{
    auto assessment = std::make_shared<Assessment>();
    Validation validation = validate(plan);
    std::vector<Finding>& findings = assessment->findings;
    findings = std::move(validation.findings);

    std::unordered_map<std::string, PartMemo> known;
    known.reserve(plan.parts.size());
    std::vector<CastingPtr> castings;
    std::vector<CastingPtr> mixable;
    for (std::size_t index = 0; index < plan.parts.size(); ++index) {
        const PartPtr& part = plan.parts[index];
        if (validation.unusableParts.count(part->id) > 0) continue;
        const auto before = memo_->parts.find(part->id);
        const bool reuse = before != memo_->parts.end() && sameBody(before->second.part, part);
        PartMemo memo = reuse ? std::move(before->second) : computePart(part);
        if (reuse) memo_->parts.erase(before);
        memo.part = part;
        for (const CastingPtr& casting : memo.castings) {
            assessment->castings.push_back({casting, centroidInPlan(*casting, *part)});
            castings.push_back(casting);
            if (validation.unusableMixes.count(casting->mix) == 0) mixable.push_back(casting);
        }
        if (memo.front) assessment->fronts.push_back(*memo.front);
        for (Finding finding : memo.findings) {
            // What speaks about one part alone cannot know where in the file it stands.
            if (finding.pointer.empty()) finding.pointer = "/parts/" + std::to_string(index);
            findings.push_back(std::move(finding));
        }
        known.insert_or_assign(part->id, std::move(memo));
    }
    memo_->parts = std::move(known);

    assessment->mixes = mixQuantities(plan, mixable, findings);
    assessment->steel = steelSchedule(plan, castings, findings, &memo_->steel);
    assessment->handling = liftings(plan, castings, findings);
    assessment->mould = estimateMoulds(plan, castings);
    assessment->shopping = shoppingList(plan, prices_, castings, assessment->mixes, assessment->steel,
                                        assessment->fronts, assessment->mould, findings);
    FindingOrder(plan, assessment->castings).sort(findings);
    return assessment;
}

AssessmentPtr assess(const Plan& plan, const PriceBook& prices)
{
    return Assessor(prices).assess(plan);
}

double Assessment::volumeL() const
{
    double volume = 0.0;
    for (const PlacedCasting& placed : castings) volume += placed.casting->volumeL;
    return volume;
}

double Assessment::massKg() const
{
    double mass = 0.0;
    for (const PlacedCasting& placed : castings) mass += placed.casting->massKg;
    return mass;
}

int Assessment::count(Severity severity) const
{
    return static_cast<int>(std::count_if(findings.begin(), findings.end(),
                                          [&](const Finding& finding) { return finding.severity == severity; }));
}

}  // namespace yardcast
