#include <algorithm>
#include <cmath>

#include "core/plan/validation/report.h"

namespace yardcast::validation {

namespace {

/// Less than this, mm, between an opening and an edge is none.
constexpr double kNoStripMm = 0.5;
/// A joint is drawn out at its ends by its gap, at least by this, mm, when the slab is divided.
constexpr double kJointExtensionMm = 5.0;

/// A cutout with what the checks ask of it; a circle is kept exact.
struct Opening {
    const Cutout* cutout;
    Ring ring;
    Box box;
    double radiusMm;  ///< 0 for what is no circle

    bool isCircle() const { return radiusMm > 0.0; }
};

/// Distance of p from the ring, positive inside.
double depthInside(const Ring& ring, Point p)
{
    const double away = distanceToRing(ring, p);
    return contains(ring, p) ? away : -away;
}

double distanceBetween(const Ring& a, const Ring& b)
{
    double least = HUGE_VAL;
    for (const Point p : a) least = std::min(least, distanceToRing(b, p));
    for (const Point p : b) least = std::min(least, distanceToRing(a, p));
    return least;
}

/// Concrete between the opening and the edge of the slab, mm; negative by how far it sticks out.
double stripToEdge(const Opening& opening, const Ring& outline)
{
    if (opening.isCircle()) return depthInside(outline, opening.cutout->centre) - opening.radiusMm;
    double strip = HUGE_VAL;
    for (const Point p : opening.ring) strip = std::min(strip, depthInside(outline, p));
    for (const Point p : outline) strip = std::min(strip, -depthInside(opening.ring, p));
    return strip;
}

/// Concrete between two openings, mm; nothing where they overlap.
std::optional<double> stripBetween(const Opening& a, const Opening& b)
{
    if (a.isCircle() && b.isCircle()) {
        const double strip = distance(a.cutout->centre, b.cutout->centre) - a.radiusMm - b.radiusMm;
        return strip > kNoStripMm ? std::optional(strip) : std::nullopt;
    }
    if (a.isCircle()) return stripBetween(b, a);
    if (b.isCircle()) {
        const double strip = -depthInside(a.ring, b.cutout->centre) - b.radiusMm;
        return strip > kNoStripMm ? std::optional(strip) : std::nullopt;
    }
    if (!intersect(regionOf(a.ring), regionOf(b.ring)).empty()) return std::nullopt;
    const double strip = distanceBetween(a.ring, b.ring);
    return strip > kNoStripMm ? std::optional(strip) : std::nullopt;
}

/// The line a joint really cuts along.
struct JointLine {
    Point from;
    Point to;
    double gapMm;
};

JointLine jointLine(const Joint& joint)
{
    const double gap = joint.gapMm.value_or(kDefaultJointGapMm);
    const double extension = std::max(gap, kJointExtensionMm);
    const Point along = (joint.to - joint.from) * (1.0 / distance(joint.from, joint.to));
    return {joint.from - along * extension, joint.to + along * extension, gap};
}

/// Distance from a line to an opening, mm; 0 where it crosses.
double distanceToOpening(const JointLine& line, const Opening& opening)
{
    if (opening.isCircle()) {
        return std::max(0.0, distanceToSegment(opening.cutout->centre, line.from, line.to) - opening.radiusMm);
    }
    double least = HUGE_VAL;
    double left = HUGE_VAL;
    double right = -HUGE_VAL;
    for (const Point p : opening.ring) {
        least = std::min(least, distanceToSegment(p, line.from, line.to));
        const double side = cross(line.to - line.from, p - line.from);
        left = std::min(left, side);
        right = std::max(right, side);
    }
    for (const Point end : {line.from, line.to}) {
        if (contains(opening.ring, end)) return 0.0;
        least = std::min(least, distanceToRing(opening.ring, end));
    }
    if (left >= 0.0 || right <= 0.0) return least;
    // The corners lie on both sides of the line; it crosses if it does so between its ends.
    for (std::size_t i = 0; i < opening.ring.size(); ++i) {
        const Point a = opening.ring[i];
        const Point b = opening.ring[(i + 1) % opening.ring.size()];
        const double sideA = cross(b - a, line.from - a);
        const double sideB = cross(b - a, line.to - a);
        const double endA = cross(line.to - line.from, a - line.from);
        const double endB = cross(line.to - line.from, b - line.from);
        if (sideA * sideB < 0.0 && endA * endB < 0.0) return 0.0;
    }
    return least;
}

class LayoutCheck {
public:
    LayoutCheck(const Counter& counter, Subject& subject) : counter_(counter), subject_(subject)
    {
        for (const Cutout& cutout : counter.cutouts) {
            Ring ring = cutoutRing(cutout);
            const Box box = boundsOf(ring).value_or(Box{});
            const bool circle = cutout.shape == CutoutShape::circle;
            openings_.push_back({&cutout, std::move(ring), box, circle ? cutout.diameterMm / 2 : 0.0});
        }
    }

    void run()
    {
        for (std::size_t i = 0; i < openings_.size(); ++i) edgeStrip(i);
        for (std::size_t i = 0; i < openings_.size(); ++i) {
            for (std::size_t j = i + 1; j < openings_.size(); ++j) pair(i, j);
        }
        for (std::size_t i = 0; i < counter_.joints.size(); ++i) joint(i);
        for (std::size_t i = 0; i < counter_.ribs.size(); ++i) rib(i);
        for (std::size_t i = 0; i < counter_.loads.size(); ++i) load(i);
        if (!counter_.lift) return;
        for (std::size_t i = 0; i < counter_.lift->grips.size(); ++i) grip(i);
    }

private:
    static std::string keyOf(std::size_t opening) { return join("cutouts", opening); }
    const std::string& id(std::size_t opening) const { return openings_[opening].cutout->id; }

    void edgeStrip(std::size_t i)
    {
        const double strip = stripToEdge(openings_[i], counter_.outline);
        if (strip <= kNoStripMm) {
            subject_.add("cutout_outside", Severity::stop, keyOf(i),
                         {{"cutout", id(i)}, {"outside_mm", std::max(0.0, -strip)}});
        } else if (strip < kLeastStripMm) {
            subject_.add("strip_narrow", Severity::caution, keyOf(i),
                         {{"cutout", id(i)}, {"strip_mm", strip}, {"least_mm", kLeastStripMm}});
        }
    }

    void pair(std::size_t i, std::size_t j)
    {
        const Box& a = openings_[i].box;
        const Box& b = openings_[j].box;
        if (a.low.x - b.high.x >= kLeastStripMm || b.low.x - a.high.x >= kLeastStripMm
            || a.low.y - b.high.y >= kLeastStripMm || b.low.y - a.high.y >= kLeastStripMm) {
            return;
        }
        const auto strip = stripBetween(openings_[i], openings_[j]);
        if (!strip) {
            subject_.add("cutouts_overlap", Severity::stop, keyOf(j), {{"cutout", id(j)}, {"other_cutout", id(i)}});
        } else if (*strip < kLeastStripMm) {
            subject_.add("strip_between_narrow", Severity::caution, keyOf(j),
                         {{"cutout", id(j)},
                          {"other_cutout", id(i)},
                          {"strip_mm", *strip},
                          {"least_mm", kLeastStripMm}});
        }
    }

    void joint(std::size_t i)
    {
        if (distance(counter_.joints[i].from, counter_.joints[i].to) < kTouchMm) return;
        const std::string key = join("joints", i);
        const JointLine line = jointLine(counter_.joints[i]);
        const double number = static_cast<double>(i + 1);
        const Ring& outline = counter_.outline;
        const double shortBy = std::max(depthInside(outline, line.from), depthInside(outline, line.to));
        if (shortBy > kTouchMm / 100) {
            subject_.add("joint_not_through", Severity::caution, key,
                         {{"joint", number}, {"short_mm", shortBy + std::max(line.gapMm, kJointExtensionMm)}});
        } else if (!meetsSlab(line.from, line.to)) {
            subject_.add("joint_outside", Severity::caution, key, {{"joint", number}});
            return;
        }
        for (const Opening& opening : openings_) {
            const double strip = distanceToOpening(line, opening) - line.gapMm / 2;
            if (strip <= kNoStripMm) {
                subject_.add("joint_through_cutout", Severity::caution, key,
                             {{"joint", number}, {"cutout", opening.cutout->id}});
            } else if (strip < kLeastStripMm) {
                subject_.add("joint_near_cutout", Severity::caution, key,
                             {{"joint", number},
                              {"cutout", opening.cutout->id},
                              {"strip_mm", strip},
                              {"least_mm", kLeastStripMm}});
            }
        }
    }

    void rib(std::size_t i)
    {
        const Rib& rib = counter_.ribs[i];
        const double outside = outsideAlong(rib.from, rib.to);
        if (outside > kTouchMm) {
            subject_.add("rib_outside", Severity::caution, join("ribs", i),
                         {{"rib", static_cast<double>(i + 1)}, {"outside_mm", outside}});
        }
    }

    void load(std::size_t i)
    {
        const PlacedLoad& load = counter_.loads[i];
        const double halfWidth = load.size.width / 2;
        const double halfDepth = load.size.depth / 2;
        double outside = 0.0;
        for (const Point corner : {Point{-halfWidth, -halfDepth}, Point{halfWidth, -halfDepth},
                                   Point{halfWidth, halfDepth}, Point{-halfWidth, halfDepth}}) {
            outside = std::max(outside, -depthInside(counter_.outline, load.centre + corner));
        }
        if (outside > kTouchMm) {
            subject_.add("load_outside", Severity::caution, join("loads", i),
                         {{"load", load.name}, {"outside_mm", outside}});
        }
    }

    void grip(std::size_t i)
    {
        const double outside = -depthInside(counter_.outline, counter_.lift->grips[i]);
        if (outside > kTouchMm) {
            subject_.add("grip_outside", Severity::caution, join("lift/grips", i),
                         {{"grip", static_cast<double>(i + 1)}, {"outside_mm", outside}});
        }
    }

    /// Farthest that points along the line lie outside of the slab, mm.
    double outsideAlong(Point from, Point to) const
    {
        double outside = 0.0;
        for (int k = 0; k <= kSamples; ++k) {
            const Point p = from + (to - from) * (static_cast<double>(k) / kSamples);
            outside = std::max(outside, -depthInside(counter_.outline, p));
        }
        return outside;
    }

    bool meetsSlab(Point from, Point to) const
    {
        // Finer than outsideAlong: a joint may be drawn far past a small slab.
        for (int k = 0; k <= 16 * kSamples; ++k) {
            const Point p = from + (to - from) * (static_cast<double>(k) / (16 * kSamples));
            if (depthInside(counter_.outline, p) > 0.0) return true;
        }
        return false;
    }

    static constexpr int kSamples = 16;
    const Counter& counter_;
    Subject& subject_;
    std::vector<Opening> openings_;
};

}  // namespace

void checkLayoutOfCounter(const Counter& counter, Subject& subject) { LayoutCheck(counter, subject).run(); }

}  // namespace yardcast::validation
