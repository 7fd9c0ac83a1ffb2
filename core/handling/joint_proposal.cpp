#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <optional>
#include <string>
#include <utility>

#include "core/handling/lift_means.h"
#include "core/materials/materials.h"
#include "core/plan/validation.h"

namespace yardcast {

namespace {

/// No piece is shorter than this along the slab, mm: judgement.
constexpr double kShortestPieceMm = 150.0;
/// Joints are looked for at whole multiples of this, mm, coarser on a piece longer than kMostPlaces of them.
constexpr double kStepMm = 10.0;
constexpr double kMostPlaces = 160.0;
/// More cutouts and inner corners than this give no places of their own.
constexpr std::size_t kMostSpans = 16;
/// A rest bears both pieces where the joint lies over it with this much left on either side, mm: judgement.
constexpr double kBearingEachMm = 30.0;
/// So much of a piece on a rest bears it, mm: half a joint's gap less than that.
constexpr double kBearsMm = kBearingEachMm - 5.0;
/// A rest longer than this across the joint is no place for one, but a wall along the slab, mm.
constexpr double kWidestRestMm = 400.0;

/// The way across which joints run: own x (joints from front to back) or own y.
enum class Axis { x, y };
double alongOf(Point p, Axis axis) { return axis == Axis::x ? p.x : p.y; }
double acrossOf(Point p, Axis axis) { return axis == Axis::x ? p.y : p.x; }
Point pointOf(double along, double across, Axis axis)
{
    return axis == Axis::x ? Point{along, across} : Point{across, along};
}

/// Area of the ring before `t` along the axis, signed as the ring runs: by Green's theorem the integral of min(along, t)
/// over its boundary.
double areaBefore(const Ring& ring, Axis axis, double t)
{
    double area = 0.0;
    for (std::size_t i = 0; i < ring.size(); ++i) {
        const Point a = ring[i];
        const Point b = ring[i + 1 < ring.size() ? i + 1 : 0];
        const double da = alongOf(a, axis);
        const double db = alongOf(b, axis);
        const double rise = acrossOf(b, axis) - acrossOf(a, axis);
        if (da <= t && db <= t) {
            area += (da + db) / 2 * rise;
        } else if (da >= t && db >= t) {
            area += t * rise;
        } else {
            const double share = (t - da) / (db - da);
            const double inside = da < t ? share : 1.0 - share;
            area += (std::min(da, db) + t) / 2 * rise * inside + t * rise * (1.0 - inside);
        }
    }
    return axis == Axis::x ? area : -area;
}

/// Mass of the casting before each place, kg: by its zones, scaled to its whole mass (steel as spread evenly).
std::vector<double> massesBefore(const Casting& casting, double foamKgM3, Axis axis, const std::vector<double>& places)
{
    std::vector<double> masses(places.size(), 0.0);
    double whole = 0.0;
    for (const Zone& zone : casting.zones) {
        const double kgPerMm2 = zone.depthMm() * (zone.isConcrete() ? kHardenedConcreteKgM3 : foamKgM3) * 1e-9;
        if (kgPerMm2 == 0.0) continue;
        whole += areaMm2(zone.region) * kgPerMm2;
        for (const Polygon& polygon : zone.region) {
            for (std::size_t i = 0; i < places.size(); ++i) {
                double area = areaBefore(polygon.outer, axis, places[i]);
                for (const Ring& hole : polygon.holes) area += areaBefore(hole, axis, places[i]);
                masses[i] += area * kgPerMm2;
            }
        }
    }
    for (double& mass : masses) mass *= whole > 0.0 ? casting.massKg / whole : 0.0;
    return masses;
}

/// Where a joint may lie: along the axis, with whether a rest is under it.
struct Place {
    double along = 0.0;
    bool over = false;
};

class Places {
public:
    Places(const Casting& casting, const Counter& counter, const std::vector<Box>& rests, Axis axis)
        : casting_(casting), axis_(axis), low_(alongOf(casting.boundsMm.low, axis)),
          high_(alongOf(casting.boundsMm.high, axis))
    {
        closeCutouts(counter);
        closeInnerCorners();
        const double step = std::max(kStepMm, std::ceil((high_ - low_) / kMostPlaces / kStepMm) * kStepMm);
        for (double at = std::ceil((low_ + kShortestPieceMm) / step) * step; at <= high_ - kShortestPieceMm; at += step) {
            add(at, false);
        }
        // Right beside what is closed pieces are as even as they can be.
        const std::size_t spans = closed_.size();
        for (std::size_t i = 0; i < spans && i < kMostSpans; ++i) {
            addWithin(std::floor(closed_[i].from), false);
            addWithin(std::ceil(closed_[i].to), false);
        }
        for (const Box& rest : rests) addRest(rest);
        std::sort(places_.begin(), places_.end(), [](const Place& a, const Place& b) {
            return a.along != b.along ? a.along < b.along : a.over && !b.over;
        });
        places_.erase(std::unique(places_.begin(), places_.end(),
                                  [](const Place& a, const Place& b) { return a.along == b.along; }),
                      places_.end());
    }

    const std::vector<Place>& all() const { return places_; }

private:
    struct Span {
        double from;
        double to;
    };

    void closeCutouts(const Counter& counter)
    {
        // A little more than validation asks, so that rounding to a tenth of a millimetre cannot bring a caution.
        const double clear = kLeastStripMm + kDefaultJointGapMm / 2 + 0.2;
        for (const Cutout& cutout : counter.cutouts) {
            const auto box = boundsOf(cutoutRing(cutout));
            if (!box || acrossOf(box->high, axis_) + clear < acrossOf(casting_.boundsMm.low, axis_)
                || acrossOf(box->low, axis_) - clear > acrossOf(casting_.boundsMm.high, axis_)) {
                continue;
            }
            closed_.push_back({alongOf(box->low, axis_) - clear, alongOf(box->high, axis_) + clear});
        }
    }

    /// A joint right beside an inner corner of the outline leaves a nib that breaks off.
    void closeInnerCorners()
    {
        for (const Polygon& polygon : casting_.outline) {
            const Ring& ring = polygon.outer;
            for (std::size_t i = 0; i < ring.size(); ++i) {
                const Point a = ring[(i + ring.size() - 1) % ring.size()];
                const Point b = ring[i];
                const Point c = ring[(i + 1) % ring.size()];
                if (cross(b - a, c - b) >= -1e-6 * distance(a, b) * distance(b, c)) continue;
                const double at = alongOf(b, axis_);
                closed_.push_back({at - kLeastStripMm, at + kLeastStripMm});
            }
        }
    }

    void add(double at, bool over)
    {
        const bool shut = std::any_of(closed_.begin(), closed_.end(),
                                      [&](const Span& span) { return at > span.from && at < span.to; });
        if (!shut) places_.push_back({at, over});
    }

    void addRest(const Box& rest)
    {
        const double from = alongOf(rest.low, axis_);
        const double to = alongOf(rest.high, axis_);
        if (to - from < 2 * kBearingEachMm || to - from > kWidestRestMm) return;
        // It must bear most of the joint's length, not one end of it.
        const double low = std::max(acrossOf(rest.low, axis_), acrossOf(casting_.boundsMm.low, axis_));
        const double high = std::min(acrossOf(rest.high, axis_), acrossOf(casting_.boundsMm.high, axis_));
        const double across = acrossOf(casting_.boundsMm.high, axis_) - acrossOf(casting_.boundsMm.low, axis_);
        if (high - low < across / 2) return;
        addWithin(std::round((from + to) / 2 * 10) / 10, true);
    }

    void addWithin(double at, bool over)
    {
        if (at >= low_ + kShortestPieceMm && at <= high_ - kShortestPieceMm) add(at, over);
    }

    const Casting& casting_;
    Axis axis_;
    double low_;
    double high_;
    std::vector<Span> closed_;
    std::vector<Place> places_;
};

struct Division {
    std::vector<std::size_t> at;   ///< of the places
    std::size_t notOver = 0;
    double heaviestKg = 0.0;
};

/// Rests along the axis, for pieces that must stand on two of them.
class Footing {
public:
    Footing(const std::vector<Box>& rests, Axis axis, bool asked) : asked_(asked)
    {
        for (const Box& rest : rests) spans_.push_back({alongOf(rest.low, axis), alongOf(rest.high, axis)});
    }
    bool bears(double from, double to) const
    {
        if (!asked_) return true;
        const auto count = std::count_if(spans_.begin(), spans_.end(), [&](const std::pair<double, double>& span) {
            return std::min(span.second, to) - std::max(span.first, from) >= kBearsMm;
        });
        return count >= 2;
    }

private:
    std::vector<std::pair<double, double>> spans_;
    bool asked_;
};

/// The best division into `joints` + 1 pieces within the limit: most joints over rests, then the heaviest piece least.
std::optional<Division> divide(const std::vector<Place>& places, const std::vector<double>& before, const Box& bounds,
                               Axis axis, const Footing& footing, double massKg, double limitKg, std::size_t joints)
{
    const double lowMm = alongOf(bounds.low, axis);
    const double highMm = alongOf(bounds.high, axis);
    struct State {
        double heaviestKg = std::numeric_limits<double>::infinity();
        std::size_t last = 0;
    };
    const std::size_t count = places.size();
    const std::size_t wide = joints + 1;  // of how many joints are not over a rest
    const auto reached = [](const State& state) { return std::isfinite(state.heaviestKg); };
    std::vector<std::vector<State>> best(joints, std::vector<State>(count * wide));
    for (std::size_t j = 0; j < joints; ++j) {
        for (std::size_t i = 0; i < count; ++i) {
            const std::size_t more = places[i].over ? 0 : 1;
            if (j == 0) {
                if (before[i] <= limitKg && footing.bears(lowMm, places[i].along)) best[0][i * wide + more] = {before[i], 0};
                continue;
            }
            for (std::size_t k = i; k-- > 0;) {
                const double piece = before[i] - before[k];
                if (piece > limitKg) break;
                if (places[i].along - places[k].along < kShortestPieceMm) continue;
                if (!footing.bears(places[k].along, places[i].along)) continue;
                for (std::size_t off = 0; off + more < wide; ++off) {
                    const State& from = best[j - 1][k * wide + off];
                    if (!reached(from)) continue;
                    State& to = best[j][i * wide + off + more];
                    const double heaviest = std::max(from.heaviestKg, piece);
                    if (heaviest < to.heaviestKg - 1e-9) to = {heaviest, k};
                }
            }
        }
    }
    for (std::size_t off = 0; off < wide; ++off) {
        Division division;
        division.notOver = off;
        division.heaviestKg = std::numeric_limits<double>::infinity();
        std::size_t end = count;
        for (std::size_t i = 0; i < count; ++i) {
            const State& state = best[joints - 1][i * wide + off];
            const double rest = massKg - before[i];
            if (!reached(state) || rest > limitKg || !footing.bears(places[i].along, highMm)) continue;
            const double heaviest = std::max(state.heaviestKg, rest);
            if (heaviest < division.heaviestKg - 1e-9) {
                division.heaviestKg = heaviest;
                end = i;
            }
        }
        if (end == count) continue;
        std::size_t left = off;
        for (std::size_t j = joints; j-- > 0;) {
            division.at.push_back(end);
            const std::size_t last = best[j][end * wide + left].last;
            left -= places[end].over ? 0 : 1;
            end = last;
        }
        std::reverse(division.at.begin(), division.at.end());
        return division;
    }
    return std::nullopt;
}

/// From the first concrete on the line to the last; nothing where it misses the piece.
std::optional<Joint> jointAcross(const Casting& casting, Axis axis, double at)
{
    double low = std::numeric_limits<double>::infinity();
    double high = -low;
    for (const Polygon& polygon : casting.outline) {
        const Ring& ring = polygon.outer;
        for (std::size_t i = 0; i < ring.size(); ++i) {
            const Point a = ring[i];
            const Point b = ring[i + 1 < ring.size() ? i + 1 : 0];
            const double da = alongOf(a, axis) - at;
            const double db = alongOf(b, axis) - at;
            if ((da < 0.0) == (db < 0.0)) continue;
            const double across = acrossOf(a, axis) + (acrossOf(b, axis) - acrossOf(a, axis)) * da / (da - db);
            low = std::min(low, across);
            high = std::max(high, across);
        }
    }
    if (!(high - low > 0.0)) return std::nullopt;
    const auto tenth = [](double mm) { return std::round(mm * 10) / 10; };
    Joint joint;
    joint.from = pointOf(at, tenth(low), axis);
    joint.to = pointOf(at, tenth(high), axis);
    return joint;
}

/// What a piece lies on at least this far, mm, bears it: as a joint over a rest leaves on either side.
bool bears(const Box& rest, const Box& piece)
{
    return std::min(rest.high.x, piece.high.x) - std::max(rest.low.x, piece.low.x) >= kBearsMm
        && std::min(rest.high.y, piece.high.y) - std::max(rest.low.y, piece.low.y) >= kBearsMm;
}

/// On two rests at least, its centre of gravity between the outermost of them.
bool standsOn(const Casting& piece, const std::vector<Box>& rests)
{
    std::optional<Box> all;
    std::size_t count = 0;
    for (const Box& rest : rests) {
        if (!bears(rest, piece.boundsMm)) continue;
        ++count;
        const Box part{{std::max(rest.low.x, piece.boundsMm.low.x), std::max(rest.low.y, piece.boundsMm.low.y)},
                       {std::min(rest.high.x, piece.boundsMm.high.x), std::min(rest.high.y, piece.boundsMm.high.y)}};
        if (!all) {
            all = part;
            continue;
        }
        all->low = {std::min(all->low.x, part.low.x), std::min(all->low.y, part.low.y)};
        all->high = {std::max(all->high.x, part.high.x), std::max(all->high.y, part.high.y)};
    }
    const double x = piece.centroidMm[0];
    const double y = piece.centroidMm[1];
    return count >= 2 && x >= all->low.x && x <= all->high.x && y >= all->low.y && y <= all->high.y;
}

/// What validation stops at in a plan of this part alone, by code.
std::map<std::string, std::size_t> stopsOf(const std::vector<Finding>& findings)
{
    std::map<std::string, std::size_t> stops;
    for (const Finding& finding : findings) {
        if (finding.severity == Severity::stop) ++stops[finding.code];
    }
    return stops;
}

/// Casts the part with the joints and weighs what became of the casting. Nothing where validation has something to say about
/// the joints or stops at anything that it did not stop at before, where a piece would not stand on the rests, or where
/// they do not divide the casting as meant.
std::optional<double> heaviestWith(const Part& part, const Casting& casting, const std::vector<Joint>& joints,
                                   const std::vector<Box>& rests)
{
    const auto& counter = std::get<Counter>(part.body);
    Part after = part;
    auto& changed = std::get<Counter>(after.body);
    changed.joints.insert(changed.joints.end(), joints.begin(), joints.end());
    Plan alone;
    alone.parts = {std::make_shared<const Part>(after)};
    const std::size_t known = counter.joints.size();
    const std::vector<Finding> found = validate(alone).findings;
    Plan whole;
    whole.parts = {std::make_shared<const Part>(part)};
    const auto before = stopsOf(validate(whole).findings);
    for (const auto& [code, count] : stopsOf(found)) {
        const auto had = before.find(code);
        if (had == before.end() || had->second < count) return std::nullopt;
    }
    for (const Finding& finding : found) {
        if (finding.code.rfind("joint_", 0) != 0) continue;
        if (numberAt(finding.values, "joint").value_or(0.0) > static_cast<double>(known)) return std::nullopt;
    }
    const bool mustStand = standsOn(casting, rests);
    std::size_t pieces = 0;
    double heaviest = 0.0;
    for (const CastingPtr& piece : castingsOf(after)) {
        // What is left of the casting lies in its box; a neighbour that is cut too would not.
        const Point middle = piece->boundsMm.centre();
        const Box& box = casting.boundsMm;
        if (middle.x < box.low.x || middle.x > box.high.x || middle.y < box.low.y || middle.y > box.high.y) continue;
        if (mustStand && !standsOn(*piece, rests)) return std::nullopt;
        ++pieces;
        heaviest = std::max(heaviest, piece->massKg);
    }
    if (pieces < joints.size() + 1) return std::nullopt;
    return heaviest;
}

}  // namespace

std::optional<JointProposal> proposeJoints(const Part& part, const Casting& casting, double limitKg,
                                           const std::vector<Box>& rests)
{
    const auto* counter = std::get_if<Counter>(&part.body);
    if (counter == nullptr || casting.outline.empty() || !(limitKg > 0.0) || !(casting.massKg > limitKg)) return std::nullopt;
    const double foamKgM3 =
        counter->filler && counter->filler->stays ? counter->filler->densityKgM3 : 0.0;
    struct Way {
        Axis axis;
        std::vector<Place> places;
        std::vector<double> before;
    };
    std::vector<Way> ways;
    for (const Axis axis : {Axis::x, Axis::y}) {
        Way way{axis, Places(casting, *counter, rests, axis).all(), {}};
        std::vector<double> at;
        for (const Place& place : way.places) at.push_back(place.along);
        way.before = massesBefore(casting, foamKgM3, axis, at);
        ways.push_back(std::move(way));
    }
    // What does not stand whole, because the plan has no supports yet, cannot be asked to in pieces.
    const bool mustStand = standsOn(casting, rests);
    const std::size_t fewest = static_cast<std::size_t>(std::min(100.0, std::ceil(casting.massKg / limitKg - 1e-9))) - 1;
    for (std::size_t joints = std::max<std::size_t>(fewest, 1); joints <= kMostJoints; ++joints) {
        std::optional<JointProposal> best;
        std::size_t leastNotOver = 0;
        double leastLengthMm = 0.0;
        for (const Way& way : ways) {
            const auto division = divide(way.places, way.before, casting.boundsMm, way.axis,
                                         Footing(rests, way.axis, mustStand), casting.massKg, limitKg, joints);
            if (!division) continue;
            JointProposal proposal;
            for (const std::size_t at : division->at) {
                const auto joint = jointAcross(casting, way.axis, way.places[at].along);
                if (joint) proposal.joints.push_back(*joint);
            }
            if (proposal.joints.size() != joints) continue;
            double lengthMm = 0.0;
            for (const Joint& joint : proposal.joints) lengthMm += distance(joint.from, joint.to);
            const bool better = !best || division->notOver < leastNotOver
                || (division->notOver == leastNotOver && lengthMm < leastLengthMm - 1e-6);
            if (!better) continue;
            const auto heaviest = heaviestWith(part, casting, proposal.joints, rests);
            if (!heaviest || *heaviest > limitKg) continue;
            proposal.heaviestKg = *heaviest;
            proposal.overSupport = division->notOver == 0;
            leastNotOver = division->notOver;
            leastLengthMm = lengthMm;
            best = std::move(proposal);
        }
        if (best) return best;
    }
    return std::nullopt;
}

}  // namespace yardcast
