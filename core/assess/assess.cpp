#include "core/assess/assess.h"

#include <algorithm>
#include <unordered_map>
#include <utility>

#include "core/assess/finding_order.h"
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

}  // namespace

struct Assessor::Memo {
    std::unordered_map<std::string, PartMemo> parts;
    SteelLayouts steel;
    LiftMemo lifts;
    std::shared_ptr<MouldMemo> moulds;
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
    assessment->cards = mixingCards(plan, assessment->mixes, findings);
    std::vector<std::string> mixesInUse;
    for (const MixQuantities& mix : assessment->mixes) mixesInUse.push_back(mix.mix);
    assessment->weather = pourWeather(plan, mixesInUse, findings, assessment->mixes);
    assessment->curing = curing(plan, mixable, findings);
    assessment->pour = pourPlan(plan, castings, assessment->mixes, assessment->weather, findings);
    assessment->steel = steelSchedule(plan, castings, findings, &memo_->steel);
    assessment->handling = liftings(plan, castings, findings, &memo_->lifts);
    assessment->moulds = mouldsOf(plan, castings, findings, &memo_->moulds);
    assessment->mould = estimateMoulds(plan, castings, assessment->moulds);
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

const CastingStrength* Assessment::strengthOf(const std::string& casting) const
{
    for (const CastingStrengthPtr& one : strength) {
        if (one->casting == casting) return one.get();
    }
    return nullptr;
}

}  // namespace yardcast
