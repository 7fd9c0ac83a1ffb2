#include "core/handling/lifting.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>
#include <string_view>
#include <tuple>
#include <unordered_map>

namespace yardcast {

/// Kept by casting: the object it was found for (a part that changes gives new ones), and what else it depends on.
struct LiftMemo::Known {
    struct Entry {
        CastingPtr casting;
        double limitKg = 0.0;
        std::vector<Box> rests;
        std::optional<JointProposal> joint;
        std::optional<CoreProposal> core;
    };
    std::unordered_map<std::string, Entry> entries;
};

LiftMemo::LiftMemo() : known_(std::make_unique<Known>()) {}
LiftMemo::~LiftMemo() = default;
LiftMemo::LiftMemo(LiftMemo&&) noexcept = default;
LiftMemo& LiftMemo::operator=(LiftMemo&&) noexcept = default;

namespace {

constexpr double kReferenceKg = 25.0;
constexpr double kReferenceAtHomeKg = 15.0;
/// Castings whose masses differ by less are alike, kg.
constexpr double kAlikeKg = 0.05;
/// With a trolley somebody holds the piece upright and somebody pushes: never alone (judgement).
constexpr int kFewestAtTrolley = 2;

std::vector<RuleLimit> limitsOf(double massKg, int people, double ownEachKg)
{
    const auto team = [&](LimitRule rule, double eachKg) {
        return RuleLimit{rule, eachKg, teamLimitKg(people, eachKg), peopleNeeded(massKg, eachKg), eachKg == ownEachKg};
    };
    std::vector<RuleLimit> limits;
    if (ownEachKg != kReferenceKg && ownEachKg != kReferenceAtHomeKg) {
        limits.push_back(team(LimitRule::plan, ownEachKg));
        limits.back().inUse = true;
    }
    limits.push_back(team(LimitRule::reference25, kReferenceKg));
    limits.push_back(team(LimitRule::reference15, kReferenceAtHomeKg));
    const double each = nioshLimit(pieceLift()).limitKg;
    const double needed = std::max(1.0, std::ceil(massKg / each - 1e-9));
    limits.push_back({LimitRule::niosh, each, std::max(0, people) * each,
                      needed <= kMostPeople ? static_cast<int>(needed) : 0, false});
    return limits;
}

Point centroidOf(const Casting& casting)
{
    // An upright lies on its large face when it is carried flat; its core is in its middle.
    if (casting.kind == PartKind::counter) return {casting.centroidMm[0], casting.centroidMm[1]};
    return {casting.centroidMm[0], casting.boundsMm.centre().y};
}

/// Edits of several parts as one: RFC 6902 patches are lists.
std::string joined(const std::vector<std::string>& patches)
{
    std::string text;
    for (const std::string& patch : patches) {
        if (patch.size() <= 2) continue;
        if (!text.empty()) text += ",";
        text += patch.substr(1, patch.size() - 2);
    }
    return text.empty() ? text : "[" + text + "]";
}

}  // namespace

/// Lifts of all castings, then findings about those that are too heavy, alike ones together.
class LiftPlanner {
public:
    LiftPlanner(const Plan& plan, const std::vector<CastingPtr>& castings, LiftMemo* memo)
        : plan_(plan), castings_(castings), memo_(memo != nullptr ? memo->known_.get() : nullptr)
    {
        for (std::size_t i = 0; i < plan.parts.size(); ++i) indexOf_.try_emplace(plan.parts[i]->id, i);
    }

    std::vector<CastingLift> plan(std::vector<Finding>& findings)
    {
        for (const CastingPtr& casting : castings_) lifts_.push_back(lift(*casting));
        group();
        for (const std::vector<std::size_t>& alike : groups_) findings.push_back(heavy(alike));
        for (std::size_t i = 0; i < lifts_.size(); ++i) gripHeavy(i, findings);
        if (memo_ != nullptr) memo_->entries = std::move(fresh_);
        return std::move(lifts_);
    }

private:
    const Part* partOf(const Casting& casting) const
    {
        const auto found = indexOf_.find(casting.part);
        return found == indexOf_.end() ? nullptr : plan_.parts[found->second].get();
    }

    bool isTooHeavy(const CastingLift& lift) const { return lift.massKg > lift.limitKg; }

    CastingLift lift(const Casting& casting) const
    {
        CastingLift lift;
        lift.casting = casting.id;
        lift.massKg = casting.massKg;
        lift.crewPeople = std::max(0, plan_.crew.people);
        const Part* part = partOf(casting);
        const auto* counter = part != nullptr ? std::get_if<Counter>(&part->body) : nullptr;
        if (counter != nullptr && counter->lift) {
            lift.crewPeople = std::max(0, counter->lift->people.value_or(plan_.crew.people));
            // Where joints divide the counter, each piece is held by those on it.
            for (const Point grip : counter->lift->grips) {
                if (casting.outline.empty() || contains(casting.outline, grip)) lift.grips.push_back(grip);
            }
        }
        const double each = plan_.crew.liftLimitKg;
        lift.people = peopleNeeded(lift.massKg, each);
        lift.guidelinePeople = peopleByGuideline(lift.massKg, each);
        lift.limitKg = teamLimitKg(lift.crewPeople, each);
        lift.centroid = centroidOf(casting);
        lift.eachKg = lift.crewPeople > 0 ? lift.massKg / lift.crewPeople : 0.0;
        lift.tiltKg = tiltKg(casting);
        lift.loads = gripLoads(lift.grips, lift.centroid, lift.massKg);
        lift.limits = limitsOf(lift.massKg, lift.crewPeople, each);
        return lift;
    }

    void group()
    {
        // By kind and who lifts it first, so that only what can be alike is compared.
        using Key = std::tuple<PartKind, long long, long long>;
        std::map<Key, std::vector<std::size_t>> byMass;
        for (std::size_t i = 0; i < lifts_.size(); ++i) {
            if (!isTooHeavy(lifts_[i])) continue;
            const auto whole = [](double value) { return std::isfinite(value) ? std::llround(std::min(value, 1e9)) : -1; };
            const Key key{castings_[i]->kind, whole(lifts_[i].massKg / kAlikeKg), whole(lifts_[i].limitKg * 100)};
            std::vector<std::size_t>& group = byMass[key];
            group.push_back(i);
        }
        for (auto& [key, group] : byMass) groups_.push_back(std::move(group));
        std::sort(groups_.begin(), groups_.end());
        for (const std::vector<std::size_t>& alike : groups_) {
            for (const std::size_t i : alike) {
                for (const std::size_t other : alike) {
                    if (other != i) lifts_[i].alike.push_back(lifts_[other].casting);
                }
            }
        }
    }

    /// Whether another casting, dealt with before, is this one again with its rests in the same places.
    bool isSameTask(const Part& part, const Casting& casting, const LiftMemo::Known::Entry& entry,
                    const LiftMemo::Known::Entry& before) const
    {
        const Part* other = partOf(*before.casting);
        if (other == nullptr || before.limitKg != entry.limitKg || before.rests.size() != entry.rests.size()) return false;
        const auto isNear = [](Point a, Point b) { return distance(a, b) < 1e-3; };
        for (std::size_t i = 0; i < entry.rests.size(); ++i) {
            if (!isNear(entry.rests[i].low, before.rests[i].low) || !isNear(entry.rests[i].high, before.rests[i].high)) {
                return false;
            }
        }
        return casting.boundsMm == before.casting->boundsMm && casting.outline == before.casting->outline
            && other->body == part.body;
    }

    /// The joints or the core that bring this casting to the limit; looked up where nothing they depend on has changed.
    const LiftMemo::Known::Entry& proposals(std::size_t i, const LiftMemo::Known::Entry* before)
    {
        const CastingPtr& casting = castings_[i];
        const Part* part = partOf(*casting);
        LiftMemo::Known::Entry entry;
        entry.casting = casting;
        entry.limitKg = lifts_[i].limitKg;
        if (part != nullptr) entry.rests = rests().under(*part);
        if (memo_ != nullptr) {
            const auto known = memo_->entries.find(casting->id);
            if (known != memo_->entries.end() && known->second.casting == casting
                && known->second.limitKg == entry.limitKg && known->second.rests == entry.rests) {
                return fresh_.insert_or_assign(casting->id, std::move(known->second)).first->second;
            }
        }
        if (part != nullptr && before != nullptr && isSameTask(*part, *casting, entry, *before)) {
            entry.joint = before->joint;
            entry.core = before->core;
        } else if (part != nullptr) {
            entry.joint = proposeJoints(*part, *casting, entry.limitKg, entry.rests);
            entry.core = proposeCore(*part, entry.limitKg);
        }
        return fresh_.insert_or_assign(casting->id, std::move(entry)).first->second;
    }

    const Rests& rests()
    {
        if (!rests_) rests_.emplace(plan_);
        return *rests_;
    }

    const LiftMemo::Known::Entry* addMeans(std::size_t i, const LiftMemo::Known::Entry* before)
    {
        CastingLift& lift = lifts_[i];
        const Casting& casting = *castings_[i];
        const double each = plan_.crew.liftLimitKg;
        const auto found = indexOf_.find(casting.part);
        const LiftMemo::Known::Entry& entry = proposals(i, before);
        if (lift.people > 0) {
            MeansAdvice more;
            more.means = LiftMeans::morePeople;
            more.massKg = lift.massKg;
            more.people = lift.people;
            more.kgEach = lift.massKg / lift.people;
            lift.means.push_back(more);
        }
        if (entry.joint && found != indexOf_.end()) {
            const auto& counter = std::get<Counter>(plan_.parts[found->second]->body);
            MeansAdvice joint;
            joint.means = LiftMeans::joint;
            joint.massKg = entry.joint->heaviestKg;
            joint.people = peopleNeeded(joint.massKg, each);
            joint.kgEach = lift.crewPeople > 0 ? joint.massKg / lift.crewPeople : 0.0;
            joint.enough = true;
            joint.joints = static_cast<int>(entry.joint->joints.size());
            joint.overSupport = entry.joint->overSupport;
            joint.edit = jointPatch(found->second, counter, entry.joint->joints);
            lift.means.push_back(std::move(joint));
        }
        if (entry.core && found != indexOf_.end()) {
            const PartBody& body = plan_.parts[found->second]->body;
            const auto* support = std::get_if<Support>(&body);
            const auto* panel = std::get_if<Panel>(&body);
            const bool cored = support != nullptr ? support->core.has_value() : panel != nullptr && panel->core.has_value();
            MeansAdvice core;
            core.means = LiftMeans::foamCore;
            core.massKg = entry.core->massKg;
            core.people = peopleNeeded(core.massKg, each);
            core.kgEach = lift.crewPeople > 0 ? core.massKg / lift.crewPeople : 0.0;
            core.enough = core.massKg <= lift.limitKg;
            core.foamMm = entry.core->core.thicknessMm;
            core.edit = corePatch(found->second, cored, entry.core->core);
            lift.means.push_back(std::move(core));
        }
        MeansAdvice trolley;
        trolley.means = LiftMeans::trolley;
        trolley.massKg = lift.massKg;
        const int tilters = peopleNeeded(lift.tiltKg, each);
        trolley.people = tilters > 0 ? std::max(kFewestAtTrolley, tilters) : 0;
        trolley.kgEach = lift.tiltKg;
        trolley.enough = trolley.people > 0 && trolley.people <= lift.crewPeople;
        lift.means.push_back(trolley);

        MeansAdvice straps;
        straps.means = LiftMeans::straps;
        straps.massKg = lift.massKg;
        const double withHandles = nioshLimit(pieceLift(true)).limitKg;
        const double handles = std::ceil(lift.massKg / withHandles - 1e-9);
        straps.people = handles <= kMostPeople ? static_cast<int>(handles) : 0;
        straps.kgEach = straps.people > 0 ? lift.massKg / straps.people : withHandles;
        straps.enough = straps.people > 0 && straps.people <= lift.crewPeople;
        if (straps.people > 0) lift.means.push_back(straps);

        MeansAdvice hoist;
        hoist.means = LiftMeans::hoist;
        hoist.massKg = lift.massKg;
        hoist.people = kFewestAtTrolley;
        hoist.kgEach = lift.massKg / 2 * slingFactor(kSlingSpreadDeg);
        hoist.enough = lift.crewPeople >= hoist.people;
        lift.means.push_back(hoist);
        return &entry;
    }

    Finding heavy(const std::vector<std::size_t>& alike)
    {
        const LiftMemo::Known::Entry* before = nullptr;
        for (const std::size_t i : alike) before = addMeans(i, before);
        const CastingLift& first = lifts_[alike.front()];
        const bool twice = first.massKg > 2 * first.limitKg;
        // Twice nothing is no figure: a crew of nobody, or a limit of nothing, is another matter.
        const bool nobody = !(first.limitKg > 0.0);
        Finding finding{nobody ? "nobody_lifts" : twice ? "too_heavy" : "heavy", twice ? Severity::stop : Severity::caution, {}, "", {}, {}};
        for (const std::size_t i : alike) finding.subjects.push_back(lifts_[i].casting);
        for (const std::size_t i : alike) {
            const std::string& part = castings_[i]->part;
            if (std::find(finding.subjects.begin(), finding.subjects.end(), part) == finding.subjects.end()) {
                finding.subjects.push_back(part);
            }
        }
        const auto found = indexOf_.find(castings_[alike.front()]->part);
        if (found != indexOf_.end()) finding.pointer = "/parts/" + std::to_string(found->second);
        finding.values = {{"mass_kg", first.massKg},
                          {"limit_kg", first.limitKg},
                          {"people", static_cast<double>(first.people)},
                          {"crew", static_cast<double>(first.crewPeople)},
                          {"count", static_cast<double>(alike.size())}};
        finding.remedies = remedies(alike);
        return finding;
    }

    /// The edit for all that are alike, where it is possible for each of them.
    std::optional<Remedy> forAll(const std::vector<std::size_t>& alike, LiftMeans means) const
    {
        Remedy remedy;
        std::vector<std::string> patches;
        std::map<std::size_t, std::vector<Joint>> joints;
        double heaviest = 0.0;
        double count = 0.0;
        bool over = true;
        const MeansAdvice* last = nullptr;
        for (const std::size_t i : alike) {
            const auto& all = lifts_[i].means;
            const auto found =
                std::find_if(all.begin(), all.end(), [&](const MeansAdvice& advice) { return advice.means == means; });
            if (found == all.end() || found->edit.empty()) return std::nullopt;
            last = &*found;
            heaviest = std::max(heaviest, found->massKg);
            count = std::max(count, static_cast<double>(found->joints));
            over = over && found->overSupport;
            if (means == LiftMeans::joint) {
                auto& ofPart = joints[indexOf_.at(castings_[i]->part)];
                const auto& proposed = fresh_.at(castings_[i]->id).joint->joints;
                ofPart.insert(ofPart.end(), proposed.begin(), proposed.end());
            } else {
                patches.push_back(found->edit);
            }
        }
        for (const auto& [part, ofPart] : joints) {
            patches.push_back(jointPatch(part, std::get<Counter>(plan_.parts[part]->body), ofPart));
        }
        remedy.edit = joined(patches);
        remedy.values = {{"piece_kg", heaviest},
                         {"people", static_cast<double>(peopleNeeded(heaviest, plan_.crew.liftLimitKg))},
                         {"castings", static_cast<double>(alike.size())}};
        if (means == LiftMeans::joint) {
            remedy.code = "joint_added";
            remedy.values["joints"] = count;
            remedy.values["over_support"] = over ? 1.0 : 0.0;
        } else {
            remedy.code = "core_added";
            remedy.values["foam_mm"] = last->foamMm;
            remedy.values["enough"] = heaviest <= lifts_[alike.front()].limitKg ? 1.0 : 0.0;
        }
        return remedy;
    }

    std::vector<Remedy> remedies(const std::vector<std::size_t>& alike) const
    {
        std::vector<Remedy> remedies;
        if (auto joint = forAll(alike, LiftMeans::joint)) remedies.push_back(std::move(*joint));
        if (auto core = forAll(alike, LiftMeans::foamCore)) remedies.push_back(std::move(*core));
        for (const MeansAdvice& advice : lifts_[alike.front()].means) {
            Remedy remedy;
            if (advice.means == LiftMeans::trolley && advice.people > 0) remedy.code = "trolley_used";
            if (advice.means == LiftMeans::hoist) remedy.code = "hoist_used";
            if (remedy.code.empty()) continue;
            remedy.values = {{"people", static_cast<double>(advice.people)},
                             {"mass_kg", advice.massKg},
                             {"each_kg", advice.kgEach}};
            remedies.push_back(std::move(remedy));
        }
        return remedies;
    }

    void gripHeavy(std::size_t i, std::vector<Finding>& findings) const
    {
        const CastingLift& lift = lifts_[i];
        if (isTooHeavy(lift) || lift.loads.empty()) return;
        // Where it tips out of the hands, strength says so.
        if (std::any_of(lift.loads.begin(), lift.loads.end(), [](const GripLoad& load) { return load.kg < 0.0; })) return;
        const std::vector<double> shares = personLoads(lift.loads, lift.crewPeople);
        if (shares.empty()) return;
        const double most = *std::max_element(shares.begin(), shares.end());
        const double each = plan_.crew.liftLimitKg;
        if (!(most > each + 1e-9)) return;
        Finding finding{"grip_heavy", Severity::caution, {lift.casting}, "", {}, {}};
        if (castings_[i]->part != lift.casting) finding.subjects.push_back(castings_[i]->part);
        const auto found = indexOf_.find(castings_[i]->part);
        if (found != indexOf_.end()) finding.pointer = "/parts/" + std::to_string(found->second) + "/lift/grips";
        const auto heaviest = std::max_element(lift.loads.begin(), lift.loads.end(),
                                               [](const GripLoad& a, const GripLoad& b) { return a.kg < b.kg; });
        finding.values = {{"person_kg", most},
                          {"each_kg", each},
                          {"people", static_cast<double>(lift.crewPeople)},
                          {"grip", static_cast<double>(heaviest - lift.loads.begin()) + 1},
                          {"grip_kg", heaviest->kg},
                          {"grips_over", static_cast<double>(gripsOver(lift.loads, each).size())}};
        findings.push_back(std::move(finding));
    }

    const Plan& plan_;
    const std::vector<CastingPtr>& castings_;
    LiftMemo::Known* memo_;
    std::optional<Rests> rests_;
    std::unordered_map<std::string_view, std::size_t> indexOf_;
    std::vector<CastingLift> lifts_;
    std::vector<std::vector<std::size_t>> groups_;
    std::unordered_map<std::string, LiftMemo::Known::Entry> fresh_;
};

std::vector<CastingLift> liftings(const Plan& plan, const std::vector<CastingPtr>& castings,
                                  std::vector<Finding>& findings, LiftMemo* memo)
{
    return LiftPlanner(plan, castings, memo).plan(findings);
}

}  // namespace yardcast
