#include "core/structure/handling_search.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>
#include <variant>

namespace yardcast {

namespace {

/// Places are tried at these shares of the length from an end.
constexpr double kFirst = 0.05;
constexpr double kStep = 0.075;
constexpr int kSteps = 5;
/// Places between the outer ones lie on a grid of this share, so that few loads serve many patterns.
constexpr double kBetween = 0.05;
/// A place that is not this much better is not taken: noise of the mesh must not move hands.
constexpr double kBetter = 0.998;
/// Hand places no farther than this off a line are on it.
constexpr double kOneLineMm = 20.0;
constexpr int kMostRounds = 6;
/// Near a square both ways count as long.
constexpr double kNearlySquare = 0.8;

/// People side by side on an edge, hands of the outer ones near its ends.
int roomFor(double lengthMm) { return 1 + static_cast<int>(lengthMm / kRoomForOneMm); }

double share(int step) { return kFirst + kStep * step; }

/// Distances from the two ends of a line, as shares of its length: first front left and right, then back.
using Insets = std::vector<double>;

/// `count` places from `left` to 1 - `right`; those between the ends on a grid.
std::vector<double> spread(double left, double right, int count)
{
    std::vector<double> shares;
    for (int i = 0; i < count; ++i) {
        const double even = left + (1.0 - left - right) * i / std::max(1, count - 1);
        const bool end = i == 0 || i == count - 1;
        shares.push_back(end ? even : std::round(even / kBetween) * kBetween);
    }
    return shares;
}

Point insetFrom(const std::pair<Point, Point>& ends, bool atSecond)
{
    const Point across = ends.second - ends.first;
    const double inset = std::min(kHandInsetMm, length(across) / 4);
    const Point step = across * (inset / length(across));
    return atSecond ? ends.second - step : ends.first + step;
}

/// Looks for insets with the least use: a grid of pairs first, then each by itself, then half steps.
class InsetSearch {
public:
    struct Rules {
        int lines = 1;            ///< 2: front and back
        bool sameEnds = false;    ///< left as right
        bool sameLines = true;    ///< front as back
    };
    /// Greatest use, or anything above `bound` where it is above that.
    using Use = std::function<double(const Insets&, double bound)>;
    /// Called with all insets that the next calls of `use` may ask for.
    using Prepare = std::function<void(const std::vector<double>&)>;

    InsetSearch(Rules rules, Use use, Prepare prepare, std::stop_token stop)
        : rules_(rules), use_(std::move(use)), prepare_(std::move(prepare)), stop_(std::move(stop))
    {
    }

    std::optional<std::pair<Insets, double>> run()
    {
        std::vector<double> grid;
        for (int i = 0; i < kSteps; ++i) grid.push_back(share(i));
        prepare_(grid);
        for (const double both : grid) take(filled(both, both));
        for (const double left : grid) {
            for (const double right : grid) {
                if (left != right && !rules_.sameEnds) take(filled(left, right));
            }
        }
        if (rules_.lines == 2 && !rules_.sameLines) takeAllOf({grid.begin() + 1, grid.end() - 1});
        if (best_.empty()) return std::nullopt;
        if (rules_.lines == 2 && !rules_.sameLines) improve(kStep, kMostRounds);
        prepare_(around(kStep / 2));
        improve(kStep / 2, 2);
        if (stop_.stop_requested()) return std::nullopt;
        return std::pair{best_, bestUse_};
    }

private:
    Insets filled(double left, double right) const
    {
        Insets insets;
        for (int line = 0; line < rules_.lines; ++line) insets.insert(insets.end(), {left, right});
        return insets;
    }

    /// Every inset at each of these: there are several valleys, and walking finds only the nearest.
    void takeAllOf(const std::vector<double>& levels)
    {
        const int n = static_cast<int>(levels.size());
        const auto firstOf = [&](std::size_t i) {
            std::size_t j = i;
            if (rules_.sameEnds) j -= j % 2;
            if (rules_.sameLines) j %= 2;
            return j;
        };
        Insets insets(static_cast<std::size_t>(2 * rules_.lines));
        const int all = static_cast<int>(std::lround(std::pow(n, insets.size())));
        for (int code = 0; code < all; ++code) {
            int rest = code;
            for (double& inset : insets) {
                inset = levels[static_cast<std::size_t>(rest % n)];
                rest /= n;
            }
            bool alike = true;
            for (std::size_t i = 0; i < insets.size(); ++i) alike = alike && insets[i] == insets[firstOf(i)];
            if (alike) take(insets);
        }
    }

    void take(const Insets& insets)
    {
        if (stop_.stop_requested()) return;
        const double use = use_(insets, bestUse_);
        if (!(use < bestUse_ * kBetter)) return;
        bestUse_ = use;
        best_ = insets;
    }

    /// Moves insets one or two at a time, with those that have to be alike, always the move that gains most: so neither
    /// the order of hands nor the side of the slab chooses.
    void improve(double step, int rounds)
    {
        const std::vector<Insets> moves = movesBy(step);
        for (int round = 0; round < rounds; ++round) {
            const Insets from = best_;
            for (const Insets& move : moves) {
                Insets insets = from;
                for (std::size_t i = 0; i < insets.size(); ++i) insets[i] += move[i];
                const auto [least, most] = std::minmax_element(insets.begin(), insets.end());
                if (*least >= kFirst / 2 - 1e-9 && *most <= share(kSteps - 1) + 1e-9) take(insets);
            }
            if (best_ == from) break;
        }
    }

    std::vector<Insets> movesBy(double step) const
    {
        // Groups of insets that move as one.
        std::vector<std::vector<std::size_t>> groups;
        for (std::size_t i = 0; i < best_.size(); ++i) {
            if ((rules_.sameEnds && i % 2 == 1) || (rules_.sameLines && i >= 2)) continue;
            groups.emplace_back();
            for (std::size_t j = 0; j < best_.size(); ++j) {
                const bool sameEnd = i % 2 == j % 2 || rules_.sameEnds;
                const bool sameLine = i / 2 == j / 2 || rules_.sameLines;
                if (sameEnd && sameLine) groups.back().push_back(j);
            }
        }
        std::vector<Insets> moves;
        for (std::size_t g = 0; g < groups.size(); ++g) {
            for (std::size_t h = g; h < groups.size(); ++h) {
                for (const double first : {-step, step}) {
                    for (const double second : {-step, step}) {
                        if (g == h && first != second) continue;
                        Insets move(best_.size(), 0.0);
                        for (const std::size_t i : groups[g]) move[i] = first;
                        for (const std::size_t i : groups[h]) move[i] = second;
                        moves.push_back(std::move(move));
                    }
                }
            }
        }
        return moves;
    }

    std::vector<double> around(double step) const
    {
        std::vector<double> all;
        for (const double inset : best_) all.insert(all.end(), {inset - step, inset + step});
        return all;
    }

    Rules rules_;
    Use use_;
    Prepare prepare_;
    std::stop_token stop_;
    Insets best_;
    double bestUse_ = kTips;
};

/// Hands on both long edges.
class GripLines {
public:
    GripLines(const Region& outline, const SlabAxes& axes, int count) : outline_(outline), axes_(axes), count_(count) {}

    /// Empty where a line across misses the outline.
    std::vector<Point> at(const Insets& insets) const
    {
        std::vector<Point> points;
        for (int line = 0; line < 2; ++line) {
            for (const double s : spread(insets[2 * line], insets[2 * line + 1], count_ / 2)) {
                const std::vector<Point> both = across(s);
                if (both.empty()) return {};
                points.push_back(both[line]);
            }
        }
        return points;
    }

    /// Front and back at a share of the length.
    std::vector<Point> across(double share) const
    {
        const auto ends = endsOfLine(outline_, axes_.at(share * axes_.lengthMm, 0.0), axes_.across);
        if (!ends) return {};
        return {insetFrom(*ends, false), insetFrom(*ends, true)};
    }

private:
    const Region& outline_;
    const SlabAxes& axes_;
    int count_;
};

/// Hands opposite an edge.
std::vector<Point> handsOpposite(const Region& outline, const StandingEdge& edge, const Insets& insets, int count)
{
    std::vector<Point> points;
    for (const double s : spread(insets[0], insets[1], count)) {
        const auto ends = endsOfLine(outline, edge.from + (edge.to - edge.from) * s, edge.inward());
        if (!ends) return {};
        points.push_back(insetFrom(*ends, true));
    }
    return points;
}

bool isParallel(Point a, Point b) { return std::abs(cross(a, b)) < 1e-3 * length(a) * length(b); }

std::optional<FoundGrips> gripsAlong(HandledBody& handled, const SlabAxes& axes, std::stop_token stop)
{
    const StrengthInput& input = handled.body().input;
    const Region& outline = input.casting->outline;
    const int count = gripCount(input.people, axes.lengthMm);
    const GripLines lines(outline, axes, count);
    const SlabSymmetry symmetry = slabSymmetry(*input.casting, axes);
    const auto prepare = [&](const std::vector<double>& insets) {
        for (const double inset : insets) {
            for (const Point p : lines.at({inset, inset, inset, inset})) handled.hand(p, axes.along);
        }
        if (count > 4) {
            for (int i = 1; i * kBetween < 1.0; ++i) {
                for (const Point p : lines.across(i * kBetween)) handled.hand(p, axes.along);
            }
        }
        handled.solveAdded();
    };
    const auto use = [&](const Insets& insets, double bound) {
        const std::vector<Point> points = lines.at(insets);
        return points.empty() ? kTips : liftingUse(handled, points, bound);
    };
    handled.expectMany(!(symmetry.along && symmetry.across));
    InsetSearch search({2, symmetry.along, symmetry.across}, use, prepare, stop);
    const auto found = search.run();
    if (!found) return std::nullopt;
    return FoundGrips{lines.at(found->first), found->second};
}

}  // namespace

bool liesOnFace(const StrengthInput& input)
{
    const auto* counter = std::get_if<Counter>(&input.body);
    return counter == nullptr || counter->cast == CounterCast::faceDown;
}

bool hasSuction(const StrengthInput& input)
{
    return !std::holds_alternative<Support>(input.body) && !isCastUpright(input.body);
}

int gripCount(int people, double lengthMm)
{
    const int wanted = people <= 4 ? 4 : std::min(8, people + people % 2);
    return 2 * std::min(wanted / 2, std::max(2, roomFor(lengthMm)));
}

int tiltHandCount(int people, double lengthMm)
{
    return std::min(std::clamp(people, 2, 6), std::max(2, roomFor(lengthMm)));
}

std::vector<Point> handsOfGrips(const std::vector<Point>& grips, const Region& outline)
{
    if (grips.empty()) return {};
    const auto far = *std::max_element(grips.begin(), grips.end(), [&](Point a, Point b) {
        return distance(a, grips.front()) < distance(b, grips.front());
    });
    const double span = distance(far, grips.front());
    const Point along = span > 1.0 ? (far - grips.front()) * (1.0 / span) : Point{1.0, 0.0};
    const Point across = leftNormal(along);
    double off = 0.0;
    for (const Point p : grips) off = std::max(off, std::abs(dot(p - grips.front(), across)));
    if (off > kOneLineMm) return grips;
    std::vector<Point> hands;
    for (const Point p : grips) {
        double low = -kTwoHandsMm / 2;
        double high = kTwoHandsMm / 2;
        if (const auto ends = endsOfLine(outline, p, across)) {
            const double from = dot(ends->first - p, across);
            const double to = dot(ends->second - p, across);
            const double inset = std::min(kHandInsetMm, (to - from) / 4);
            low = std::max(low, from + inset);
            high = std::min(high, to - inset);
        }
        hands.push_back(p + across * low);
        hands.push_back(p + across * high);
    }
    return hands;
}

double liftingUse(HandledBody& handled, const std::vector<Point>& hands, double bound)
{
    const StrengthInput& input = handled.body().input;
    const Point along = slabAxes(input.casting->outline).along;
    std::vector<FreeBody::Place> places;
    for (const Point p : hands) places.push_back(handled.hand(p, along));
    handled.solveAdded();
    const bool onFace = liesOnFace(input);
    using Side = HandledBody::Side;
    double worst = 0.0;
    if (hasSuction(input)) {
        const auto loose = handled.free().hold({{handled.weight(), 1.0},
                                                {handled.suction(), suctionKpa(input.assumptions)}},
                                               places, {});
        if (!loose.holds) return kTips;
        const HandledBody::Uses uses = handled.usesOf(loose, onFace ? Side::onFace : Side::faceUp);
        worst = onFace ? uses.onFacePercent : uses.faceUpPercent;
        if (worst > bound) return worst;
    }
    const auto carried = handled.free().hold({{handled.weight(), input.assumptions.handlingFactor}}, places, {});
    if (!carried.holds) return kTips;
    const HandledBody::Uses uses = handled.usesOf(carried, onFace ? Side::both : Side::faceUp);
    worst = std::max(worst, uses.faceUpPercent);
    return onFace ? std::max(worst, uses.onFacePercent) : worst;
}

std::optional<FoundGrips> findGrips(HandledBody& handled, std::stop_token stop)
{
    const SlabAxes axes = slabAxes(handled.body().input.casting->outline);
    std::optional<FoundGrips> best = gripsAlong(handled, axes, stop);
    if (axes.widthMm > kNearlySquare * axes.lengthMm) {
        SlabAxes turned{axes.at(axes.lengthMm, 0.0), axes.across, axes.along * -1.0, axes.widthMm, axes.lengthMm};
        const auto other = gripsAlong(handled, turned, stop);
        if (other && (!best || other->usePercent < best->usePercent * kBetter)) best = other;
    }
    if (stop.stop_requested()) return std::nullopt;
    return best;
}

double tiltUse(HandledBody& handled, const StandingEdge& edge, const std::vector<Point>& hands)
{
    const StrengthInput& input = handled.body().input;
    std::vector<FreeBody::Place> places = handled.edge(edge).places;
    const Point along = (edge.to - edge.from) * (1.0 / edge.lengthMm());
    for (const Point p : hands) places.push_back(handled.hand(p, along));
    handled.solveAdded();
    const auto state = handled.free().hold({{handled.weight(), input.assumptions.strippingFactor}}, places, {});
    if (!state.holds) return kTips;
    const bool onFace = liesOnFace(input);
    const auto uses = handled.usesOf(state, onFace ? HandledBody::Side::onFace : HandledBody::Side::faceUp);
    return onFace ? uses.onFacePercent : uses.faceUpPercent;
}

std::optional<FoundTilt> findTilt(HandledBody& handled, std::stop_token stop)
{
    const StrengthInput& input = handled.body().input;
    const Region& outline = input.casting->outline;
    const SlabAxes axes = slabAxes(outline);
    const SlabSymmetry symmetry = slabSymmetry(*input.casting, axes);
    std::vector<StandingEdge> edges;
    if (input.casting->kind == PartKind::counter) {
        edges = standingEdges(outline);
    } else if (const auto base = baseEdge(outline)) {
        edges = {*base};
    }
    // Of two edges that are mirror images of each other one is enough.
    std::vector<StandingEdge> tried;
    std::optional<FoundTilt> best;
    for (const StandingEdge& edge : edges) {
        const Point along = (edge.to - edge.from) * (1.0 / edge.lengthMm());
        const bool isLong = isParallel(along, axes.along);
        const bool isShort = isParallel(along, axes.across);
        const bool sameEnds = (isLong && symmetry.along) || (isShort && symmetry.across);
        const bool twins = (isLong && symmetry.across) || (isShort && symmetry.along);
        if (twins && std::any_of(tried.begin(), tried.end(), [&](const StandingEdge& other) {
                return isParallel(other.to - other.from, edge.to - edge.from);
            })) {
            continue;
        }
        tried.push_back(edge);
        const int count = tiltHandCount(input.people, edge.lengthMm());
        const auto prepare = [&](const std::vector<double>& insets) {
            for (const double inset : insets) {
                for (const Point p : handsOpposite(outline, edge, {inset, inset}, count)) handled.hand(p, along);
            }
        };
        const auto use = [&](const Insets& insets, double) {
            const std::vector<Point> hands = handsOpposite(outline, edge, insets, count);
            return hands.empty() ? kTips : tiltUse(handled, edge, hands);
        };
        handled.expectMany(!sameEnds);
        InsetSearch search({1, sameEnds, true}, use, prepare, stop);
        const auto found = search.run();
        if (!found || (best && !(found->second < best->usePercent * kBetter))) continue;
        best = FoundTilt{edge, handsOpposite(outline, edge, found->first, count), found->second};
    }
    if (stop.stop_requested()) return std::nullopt;
    return best;
}

}  // namespace yardcast
