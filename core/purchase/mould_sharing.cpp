#include "core/purchase/mould_sharing.h"

#include <algorithm>
#include <map>
#include <numeric>
#include <set>
#include <unordered_map>

#include "core/io/plan_patch.h"
#include "core/mould/mould_parts.h"
#include "core/plan/shared_moulds.h"
#include "core/pour/mould_hours.h"
#include "core/purchase/currency.h"

namespace yardcast {

namespace {

constexpr double kM2PerMm2 = 1e-6;

/// Castings by sameness: those whose moulds are twins of the same hand.
std::vector<std::vector<std::string>> sameCastings(const std::vector<MouldPtr>& moulds)
{
    std::map<std::string, std::size_t> indexOf;
    for (std::size_t i = 0; i < moulds.size(); ++i) {
        if (moulds[i]) indexOf.emplace(moulds[i]->casting, i);
    }
    std::vector<std::size_t> leader(moulds.size());
    std::iota(leader.begin(), leader.end(), std::size_t{0});
    const auto root = [&](std::size_t i) {
        while (leader[i] != i) i = leader[i];
        return i;
    };
    for (const auto& [casting, i] : indexOf) {
        for (const Twin& twin : moulds[i]->twins) {
            const auto other = indexOf.find(twin.casting);
            if (twin.kind != TwinKind::same || other == indexOf.end()) continue;
            const std::size_t a = root(i);
            const std::size_t b = root(other->second);
            leader[std::max(a, b)] = std::min(a, b);
        }
    }
    std::map<std::size_t, std::vector<std::string>> groups;
    for (std::size_t i = 0; i < moulds.size(); ++i) {
        if (moulds[i]) groups[root(i)].push_back(moulds[i]->casting);
    }
    std::vector<std::vector<std::string>> result;
    for (auto& [first, castings] : groups) {
        if (castings.size() > 1) result.push_back(std::move(castings));
    }
    return result;
}

double boardsM2(const std::vector<MouldPtr>& moulds, const std::set<std::string>& later)
{
    double m2 = 0.0;
    for (const MouldPtr& mould : moulds) {
        if (!mould || later.count(mould->casting) > 0) continue;
        for (const MouldPart& part : mould->parts) {
            if (isMouldBoard(part)) m2 += part.lengthMm * part.widthMm * part.count * kM2PerMm2;
        }
    }
    return m2;
}

int daysOf(const PourPlan& pour)
{
    int days = 1;
    for (const PourDay& day : pour.days) days += day.afterDays;
    return days;
}

void checkLists(const Plan& plan, const std::vector<MouldPtr>& moulds,
                const std::vector<std::vector<std::string>>& groups, std::vector<Finding>& findings)
{
    std::set<std::string> known;
    for (const MouldPtr& mould : moulds) {
        if (mould) known.insert(mould->casting);
    }
    const auto same = [&](const std::string& a, const std::string& b) {
        return std::any_of(groups.begin(), groups.end(), [&](const std::vector<std::string>& group) {
            return std::count(group.begin(), group.end(), a) > 0 && std::count(group.begin(), group.end(), b) > 0;
        });
    };
    const int usual = usualUses(assumptionsOf(plan).mouldSurface);
    const std::vector<SharedMould> shared = mouldingOf(plan).shared;
    for (std::size_t i = 0; i < shared.size(); ++i) {
        std::vector<std::string> there;
        for (std::size_t k = 0; k < shared[i].castings.size(); ++k) {
            const std::string& id = shared[i].castings[k];
            const std::string pointer = "/mould/shared/" + std::to_string(i) + "/" + std::to_string(k);
            if (known.count(id) == 0) {
                Finding finding{"shared_unknown", Severity::note, {}, pointer, {}, {}};
                finding.values["id"] = id;
                findings.push_back(std::move(finding));
                continue;
            }
            if (!there.empty() && !same(there.front(), id)) {
                Finding finding{"shared_not_same", Severity::caution, {id}, pointer, {}, {}};
                finding.values["casting"] = id;
                finding.values["with"] = there.front();
                findings.push_back(std::move(finding));
            }
            there.push_back(id);
        }
        if (int(there.size()) <= usual) continue;
        Finding finding{"mould_worn", Severity::note, {there.front()}, "/mould/shared/" + std::to_string(i), {}, {}};
        finding.values["uses"] = double(there.size());
        finding.values["usual"] = double(usual);
        findings.push_back(std::move(finding));
    }
}

/// Fewer moulds worth showing: all numbers of a small group, the telling ones of a large one.
std::vector<int> countsWorthTrying(int castings, int now)
{
    std::vector<int> counts;
    for (const int count : {castings, castings - 1, (castings + 1) / 2, 1}) {
        if (count >= 1 && count != now && std::count(counts.begin(), counts.end(), count) == 0) counts.push_back(count);
    }
    return counts;
}

}  // namespace

int usualUses(MouldSurface surface)
{
    switch (surface) {
    case MouldSurface::coated: return 5;
    case MouldSurface::planed: return 3;
    case MouldSurface::rough: break;
    }
    return 2;
}

Plan withMoulds(const Plan& plan, const std::vector<std::string>& castings, int count)
{
    Plan after = plan;
    Moulding moulding = plan.moulding.value_or(Moulding{});
    std::vector<SharedMould> lists;
    for (SharedMould list : moulding.shared) {
        std::erase_if(list.castings, [&](const std::string& id) {
            return std::count(castings.begin(), castings.end(), id) > 0;
        });
        if (list.castings.size() > 1) lists.push_back(std::move(list));
    }
    const std::size_t moulds = std::size_t(std::max(1, count));
    for (std::size_t k = 0; k < std::min(moulds, castings.size()); ++k) {
        SharedMould list;
        for (std::size_t i = k; i < castings.size(); i += moulds) list.castings.push_back(castings[i]);
        if (list.castings.size() > 1) lists.push_back(std::move(list));
    }
    moulding.shared = std::move(lists);
    after.moulding = std::move(moulding);
    return after;
}

MouldSharing mouldSharing(const Plan& plan, const PourGround& ground, const std::vector<MouldPtr>& moulds,
                          const PourPlan& pour, const BoardsPrice& price, std::vector<Finding>& findings)
{
    std::vector<std::vector<std::string>> groups = sameCastings(moulds);
    checkLists(plan, moulds, groups, findings);
    MouldSharing sharing;
    sharing.days = daysOf(pour);
    const auto places = pourPlaces(pour);
    const auto numberOf = [&](const std::string& casting) {
        const auto found = places.find(casting);
        return found == places.end() ? 1 << 20 : found->second.number;
    };
    std::unordered_map<std::string, const Casting*> castingOf;
    for (const CastingPtr& casting : ground.castings) castingOf[casting->id] = casting.get();
    MouldHours mouldHours(plan);
    const std::set<std::string> laterNow = laterCastings(plan);
    const double nowM2 = boardsM2(moulds, laterNow);
    const int usual = usualUses(assumptionsOf(plan).mouldSurface);
    std::optional<std::int64_t> nowMinor;

    for (std::vector<std::string>& castings : groups) {
        std::stable_sort(castings.begin(), castings.end(), [&](const std::string& a, const std::string& b) {
            return numberOf(a) < numberOf(b);
        });
        SharingGroup group;
        for (const std::string& casting : castings) {
            group.mouldsNow += laterNow.count(casting) == 0 ? 1 : 0;
            const auto one = castingOf.find(casting);
            const Part* part = one == castingOf.end() ? nullptr : findPart(plan, one->second->part);
            if (part) group.waitH = std::max(group.waitH, mouldHours.of(*part, one->second->mix));
        }
        for (const int count : countsWorthTrying(int(castings.size()), group.mouldsNow)) {
            SharingOption option;
            option.after = withMoulds(plan, castings, count);
            for (int k = 0; k < count; ++k) {
                std::vector<std::string>& list = option.moulds.emplace_back();
                for (std::size_t i = std::size_t(k); i < castings.size(); i += std::size_t(count))
                    list.push_back(castings[i]);
                option.uses = std::max(option.uses, int(list.size()));
            }
            option.worn = option.uses > usual;
            std::vector<Finding> ignored;
            option.days =
                daysOf(pourPlan(option.after, ground.castings, ground.quantities, ground.weather, ignored));
            option.moreDays = option.days - sharing.days;
            option.savesM2 = nowM2 - boardsM2(moulds, laterCastings(option.after));
            if (price) {
                if (!nowMinor) nowMinor = price(plan);
                option.savesMinor = *nowMinor - price(option.after);
            }
            group.options.push_back(std::move(option));
        }
        group.castings = std::move(castings);
        if (!group.options.empty()) sharing.groups.push_back(std::move(group));
    }
    std::stable_sort(sharing.groups.begin(), sharing.groups.end(), [&](const SharingGroup& a, const SharingGroup& b) {
        return numberOf(a.castings.front()) < numberOf(b.castings.front());
    });
    return sharing;
}

std::optional<Remedy> sharingRemedy(const Plan& plan, const MouldSharing& sharing, std::int64_t wantedMinor)
{
    const SharingGroup* bestGroup = nullptr;
    const SharingOption* best = nullptr;
    const auto better = [&](const SharingOption& a, const SharingOption& b) {
        const bool aEnough = *a.savesMinor >= wantedMinor;
        const bool bEnough = *b.savesMinor >= wantedMinor;
        if (aEnough != bEnough) return aEnough;
        if (aEnough && a.moreDays != b.moreDays) return a.moreDays < b.moreDays;
        if (*a.savesMinor != *b.savesMinor) return *a.savesMinor > *b.savesMinor;
        return a.moreDays < b.moreDays;
    };
    for (const SharingGroup& group : sharing.groups) {
        for (const SharingOption& option : group.options) {
            if (!option.savesMinor || *option.savesMinor <= 0 || option.worn) continue;
            if (best && !better(option, *best)) continue;
            best = &option;
            bestGroup = &group;
        }
    }
    if (!best) return {};
    return optionRemedy(plan, *bestGroup, *best);
}

Remedy optionRemedy(const Plan& plan, const SharingGroup& group, const SharingOption& option)
{
    const bool more = int(option.moulds.size()) > group.mouldsNow;
    Remedy remedy;
    remedy.code = "share_mould";
    if (more) remedy.code = "more_moulds";
    std::string names;
    for (const std::string& casting : group.castings) names += (names.empty() ? "" : ", ") + casting;
    remedy.values["castings"] = names;
    remedy.values["moulds"] = double(option.moulds.size());
    remedy.values["uses"] = double(option.uses);
    remedy.values["more_days"] = double(option.moreDays);
    remedy.edit = patchBetween(plan, option.after);
    if (option.savesMinor) {
        const std::int64_t saved = *option.savesMinor;
        remedy.values[more ? "costs" : "saves"] = fromMinor(more ? -saved : saved, plan.currency);
        remedy.values["currency"] = plan.currency;
        remedy.effect = plainMoney(-saved, plan.currency) + " " + plan.currency;
    }
    return remedy;
}

}  // namespace yardcast
