#include <algorithm>
#include <cmath>
#include <map>
#include <unordered_map>

#include "core/mould/mould_making.h"

namespace yardcast {

using namespace mould_making;

namespace {

struct Known {
    CastingPtr casting;
    Filling filling;
    std::shared_ptr<const Mould> alone;   ///< without what its neighbours say
    Shape shape;
    MouldPtr whole;
};

/// Gaps wider than this, mm, are no joints between two pieces.
constexpr double kWidestGapMm = 20.0;
/// Faces that lie further apart in height belong to different worktops.
constexpr double kSameLevelMm = 5.0;

Filling fillingOf(const Plan& plan)
{
    const Mixer mixer = plan.mixer.value_or(Mixer{});
    Filling filling;
    filling.concreteC = plan.conditions.concreteC;
    if (mixer.batchMinutes > 0.0)
        filling.riseLPerH = std::max(0.0, mixer.drumL * mixer.usablePercent / 100 / mixer.batchMinutes * 60);
    return filling;
}

/// A counter's piece where it stands.
struct Placed {
    const Casting* casting;
    double topMm;
    Ring ring;
    Box box;
};

std::vector<Placed> placedCounters(const Plan& plan, const std::vector<CastingPtr>& castings)
{
    std::unordered_map<std::string, const Part*> parts;
    for (const PartPtr& part : plan.parts) parts.emplace(part->id, part.get());
    std::vector<Placed> placed;
    for (const CastingPtr& casting : castings) {
        const auto found = parts.find(casting->part);
        const auto* counter = found == parts.end() ? nullptr : std::get_if<Counter>(&found->second->body);
        if (!counter) continue;
        Ring ring = transformed(casting->outline[0].outer, found->second->place);
        const Box box = boundsOf(ring).value_or(Box{});
        placed.push_back({casting.get(), counter->topMm, std::move(ring), box});
    }
    return placed;
}

/// Corner to edge, both ways; rings that do not cross.
double gapBetween(const Ring& a, const Ring& b)
{
    double least = HUGE_VAL;
    for (const Point p : a) least = std::min(least, distanceToRing(b, p));
    for (const Point p : b) least = std::min(least, distanceToRing(a, p));
    return least;
}

struct Gap {
    std::string across;
    double mm = 0.0;
};

/// The widest gap to a neighbour takes up what a piece is larger or smaller.
std::unordered_map<std::string, Gap> gapsOf(const std::vector<Placed>& placed)
{
    std::unordered_map<std::string, Gap> gaps;
    // By their left ends, so that each is compared with those beside it only.
    std::vector<const Placed*> order;
    for (const Placed& one : placed) order.push_back(&one);
    std::stable_sort(order.begin(), order.end(),
                     [](const Placed* a, const Placed* b) { return a->box.low.x < b->box.low.x; });
    for (std::size_t i = 0; i < order.size(); ++i) {
        for (std::size_t j = i + 1; j < order.size(); ++j) {
            const Placed& a = *order[i];
            const Placed& b = *order[j];
            if (b.box.low.x > a.box.high.x + kWidestGapMm) break;
            if (std::abs(a.topMm - b.topMm) > kSameLevelMm || b.box.low.y > a.box.high.y + kWidestGapMm ||
                a.box.low.y > b.box.high.y + kWidestGapMm)
                continue;
            const double mm = gapBetween(a.ring, b.ring);
            if (mm > kWidestGapMm) continue;
            const auto note = [&](const Placed& of, const Placed& other) {
                Gap& known = gaps[of.casting->id];
                if (known.across.empty() || mm > known.mm) known = {other.casting->id, mm};
            };
            note(a, b);
            note(b, a);
        }
    }
    return gaps;
}

bool sameTwins(const std::vector<Twin>& a, const std::vector<Twin>& b)
{
    return a.size() == b.size() && std::equal(a.begin(), a.end(), b.begin(), [](const Twin& x, const Twin& y) {
               return x.casting == y.casting && x.kind == y.kind;
           });
}

std::vector<std::vector<Twin>> twinsOf(const std::vector<const Known*>& all)
{
    std::vector<std::vector<Twin>> twins(all.size());
    std::map<std::vector<long long>, std::vector<std::size_t>> alike;
    for (std::size_t i = 0; i < all.size(); ++i) alike[all[i]->shape.sizes].push_back(i);
    for (const auto& [sizes, members] : alike) {
        for (std::size_t i = 0; i < members.size(); ++i) {
            for (std::size_t j = i + 1; j < members.size(); ++j) {
                const Known& a = *all[members[i]];
                const Known& b = *all[members[j]];
                const bool same = isSame(a.shape, b.shape);
                if (!same && !isMirrorImage(a.shape, b.shape)) continue;
                const TwinKind kind = same ? TwinKind::same : TwinKind::mirror;
                twins[members[i]].push_back({b.casting->id, kind});
                twins[members[j]].push_back({a.casting->id, kind});
            }
        }
    }
    return twins;
}

}  // namespace

struct MouldMemo {
    Moulding how;
    std::unordered_map<std::string, Known> moulds;
};

namespace mould_making {

Mould makeMould(const Casting& casting, const Part& part, const Moulding& how, const Filling& filling)
{
    Making making{casting, part, how, filling, {}, {}, {}, {}, false};
    layDown(making);
    addBaseAndSides(making);
    addInside(making);
    addHolding(making);
    reckonSurfaces(making);
    Mould& mould = making.mould;
    mould.leastWidthMm = mould.widthMm - how.toleranceMm;
    mould.mostWidthMm = mould.widthMm + how.toleranceMm;
    mould.leastDepthMm = mould.depthMm - how.toleranceMm;
    mould.mostDepthMm = mould.depthMm + how.toleranceMm;
    mould.check = checkOf(casting, part, mould);
    roundBlanks(mould);
    putInOrder(mould);
    mould.volumeL = mouldVolumeL(mould);
    return std::move(mould);
}

}  // namespace mould_making

std::vector<MouldPtr> mouldsOf(const Plan& plan, const std::vector<CastingPtr>& castings,
                               std::vector<Finding>& findings, std::shared_ptr<MouldMemo>* known)
{
    const Moulding how = mouldingOf(plan);
    const Filling filling = fillingOf(plan);
    auto memo = std::make_shared<MouldMemo>();
    memo->how = how;
    std::shared_ptr<MouldMemo> before = known ? *known : nullptr;
    if (before && !(before->how == how)) before.reset();

    std::unordered_map<std::string, const Part*> parts;
    for (const PartPtr& part : plan.parts) parts.emplace(part->id, part.get());
    for (const CastingPtr& casting : castings) {
        if (before) {
            const auto found = before->moulds.find(casting->id);
            if (found != before->moulds.end() && found->second.casting == casting && found->second.filling == filling) {
                memo->moulds.insert(*found);
                continue;
            }
        }
        const auto part = parts.find(casting->part);
        if (part == parts.end() || casting->outline.empty()) continue;
        Known one{casting, filling, nullptr, shapeOf(*casting, *part->second), nullptr};
        Mould mould = makeMould(*casting, *part->second, how, filling);
        mould.handed = !isMirrorImage(one.shape, one.shape);
        one.alone = std::make_shared<const Mould>(std::move(mould));
        memo->moulds.insert_or_assign(casting->id, std::move(one));
    }

    std::vector<const Known*> all;
    for (const CastingPtr& casting : castings) {
        const auto found = memo->moulds.find(casting->id);
        if (found != memo->moulds.end()) all.push_back(&found->second);
    }
    const std::vector<std::vector<Twin>> twins = twinsOf(all);
    const auto gaps = gapsOf(placedCounters(plan, castings));
    std::vector<MouldPtr> moulds;
    for (std::size_t i = 0; i < all.size(); ++i) {
        Known& one = memo->moulds.at(all[i]->casting->id);
        const auto found = gaps.find(one.casting->id);
        const Gap gap = found == gaps.end() ? Gap{} : found->second;
        if (!one.whole || !sameTwins(one.whole->twins, twins[i]) || one.whole->takenUpBy != gap.across ||
            one.whole->gapMm != gap.mm) {
            auto whole = std::make_shared<Mould>(*one.alone);
            whole->twins = twins[i];
            whole->takenUpBy = gap.across;
            whole->gapMm = gap.mm;
            one.whole = std::move(whole);
        }
        moulds.push_back(one.whole);
    }
    addMouldFindings(plan, how, castings, moulds, findings);
    if (known) *known = std::move(memo);
    return moulds;
}

}  // namespace yardcast
