#include <algorithm>
#include <map>

#include "core/plan/edits/edit_tools.h"

namespace yardcast {

using namespace edit_tools;

namespace {

struct Bounded {
    std::string id;
    Box box;
};

std::vector<Bounded> boundsOfParts(const Plan& plan, const Ids& ids)
{
    const std::set<std::string> chosen(ids.begin(), ids.end());
    std::vector<Bounded> bounded;
    for (const PartPtr& part : plan.parts) {
        if (!chosen.contains(part->id)) continue;
        if (const auto box = boundsOf(footprint(*part))) bounded.push_back({part->id, *box});
    }
    return bounded;
}

/// What edits round to (`tidy`); a part that has no farther to go stays where it is, and shared.
constexpr double kThere = 1.001e-6;

Plan moveEach(const Plan& plan, const std::map<std::string, Point>& moves)
{
    Ids ids;
    for (const auto& [id, by] : moves) {
        if (length(by) > kThere) ids.push_back(id);
    }
    return withEach(plan, ids, [&](Part& part) { moveBy(part, moves.at(part.id)); });
}

Point moveTo(AlignTo line, const Box& box, const Box& group)
{
    switch (line) {
    case AlignTo::left: return {group.low.x - box.low.x, 0.0};
    case AlignTo::centreX: return {group.centre().x - box.centre().x, 0.0};
    case AlignTo::right: return {group.high.x - box.high.x, 0.0};
    case AlignTo::front: return {0.0, group.low.y - box.low.y};
    case AlignTo::centreY: return {0.0, group.centre().y - box.centre().y};
    case AlignTo::back: return {0.0, group.high.y - box.high.y};
    }
    return {};
}

}  // namespace

Plan alignParts(const Plan& plan, const Ids& ids, AlignTo line)
{
    const auto bounded = boundsOfParts(plan, ids);
    if (bounded.size() < 2) return plan;
    Box group = bounded.front().box;
    for (const Bounded& b : bounded) {
        group.low = {std::min(group.low.x, b.box.low.x), std::min(group.low.y, b.box.low.y)};
        group.high = {std::max(group.high.x, b.box.high.x), std::max(group.high.y, b.box.high.y)};
    }
    std::map<std::string, Point> moves;
    for (const Bounded& b : bounded) moves[b.id] = moveTo(line, b.box, group);
    return moveEach(plan, moves);
}

Plan distributeParts(const Plan& plan, const Ids& ids, Axis axis)
{
    auto bounded = boundsOfParts(plan, ids);
    if (bounded.size() < 3) return plan;
    const auto low = [axis](const Bounded& b) { return axis == Axis::x ? b.box.low.x : b.box.low.y; };
    const auto high = [axis](const Bounded& b) { return axis == Axis::x ? b.box.high.x : b.box.high.y; };

    const auto byLow = [&](const Bounded& a, const Bounded& b) { return low(a) < low(b); };
    const auto byHigh = [&](const Bounded& a, const Bounded& b) { return high(a) < high(b); };
    std::iter_swap(bounded.begin(), std::min_element(bounded.begin(), bounded.end(), byLow));
    std::iter_swap(bounded.end() - 1, std::max_element(bounded.begin() + 1, bounded.end(), byHigh));
    std::stable_sort(bounded.begin() + 1, bounded.end() - 1, [&](const Bounded& a, const Bounded& b) {
        return low(a) + high(a) < low(b) + high(b);
    });

    double free = low(bounded.back()) - high(bounded.front());
    for (std::size_t i = 1; i + 1 < bounded.size(); ++i) free -= high(bounded[i]) - low(bounded[i]);
    const double gap = free / static_cast<double>(bounded.size() - 1);

    std::map<std::string, Point> moves;
    double next = high(bounded.front()) + gap;
    for (std::size_t i = 1; i + 1 < bounded.size(); ++i) {
        const double by = next - low(bounded[i]);
        moves[bounded[i].id] = axis == Axis::x ? Point{by, 0.0} : Point{0.0, by};
        next += high(bounded[i]) - low(bounded[i]) + gap;
    }
    return moveEach(plan, moves);
}

}  // namespace yardcast
