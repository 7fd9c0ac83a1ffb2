#include "core/fem/layout.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace yardcast::fem {

namespace {

/// Sides of a boundary shorter than this share of the size asked for are merged into one point.
constexpr double kShortSideShare = 0.08;
/// Sine of the least angle at which paths that cross share a node (30 degrees).
constexpr double kSteepSine = 0.5;
/// Two places on paths belong to one corner or crossing, not to a strip between them, when the way along the paths is
/// shorter than this many times the way across (corners of 45 degrees and more).
constexpr double kWayRound = 2.6;

/// A turn at a point of a path that is a corner, not part of an arc.
constexpr double kCornerDeg = 30.0;
/// The most that an arc turns from one end of an edge to the other.
constexpr double kArcStepDeg = 50.0;
/// An edge may cut off this share of the squared size from an arc; two or more are pushed out to keep the area.
constexpr double kCutOffShare = 0.002;
/// Sides of an arc are shorter than this share of the size wanted.
constexpr double kShortShare = 0.8;

struct Side {
    int path = 0;
    Point a;
    Point b;
    double alongMm = 0.0;  ///< of a
};

struct Foot {
    double share = 0.0;
    double distanceMm = 0.0;
};

Foot footOn(const Side& side, Point p)
{
    const Point run = side.b - side.a;
    const double share = std::clamp(dot(p - side.a, run) / dot(run, run), 0.0, 1.0);
    return {share, distance(p, side.a + run * share)};
}

class LayoutMaker {
public:
    LayoutMaker(const MeshRequest& request, Box bounds, bool plain)
        : layout_{{}, {}, {}, SizeField(bounds, request.sizeMm, request.growth),
                  SizeField(bounds, request.sizeMm, request.growth)},
          grid_(bounds, request.sizeMm),
          plain_(plain)
    {
        std::vector<FinePlace> fine = request.fine;
        std::ranges::stable_sort(fine, {}, &FinePlace::sizeMm);
        const double leastMm = kLeastShare * request.sizeMm;
        for (const FinePlace& place : fine) {
            layout_.asked.add(place.at, std::max(place.sizeMm, leastMm));
            layout_.sizes.add(place.at, std::max(place.sizeMm, leastMm));
        }
        for (const Polygon& polygon : request.domain) {
            addPath(boundaryOf(polygon.outer));
            for (const Ring& hole : polygon.holes) addPath(boundaryOf(hole));
        }
        for (const Ring& line : request.lines) {
            const bool closed = line.size() > 3 && distance(line.front(), line.back()) < 0.02;
            addPath(pathOf(line, closed, false));
        }
    }

    Layout make()
    {
        findCrossings();
        findCornersOnPaths();
        findCloseFeatures();
        findShortSections();
        return std::move(layout_);
    }

private:
    Path boundaryOf(const Ring& ring) const
    {
        Path cleaned = pathOf(ring, true, true);
        cleaned.everyPoint = plain_;
        if (plain_) return cleaned;
        return pathOf(withoutShortSides(cleaned.points, kShortSideShare,
                                        [&](Point p) { return layout_.asked.at(p); }), true, true);
    }

    void addPath(Path path)
    {
        if (path.sides() == 0) return;
        const int number = int(layout_.paths.size());
        for (int i = 0; i < path.sides(); ++i) {
            grid_.add(int(sides_.size()), path.from(i), path.to(i));
            sides_.push_back({number, path.from(i), path.to(i), path.along[std::size_t(i)]});
        }
        layout_.paths.push_back(std::move(path));
        layout_.meetingsOf.emplace_back();
    }

    bool boundaries(int a, int b) const
    {
        return layout_.paths[std::size_t(a)].boundary && layout_.paths[std::size_t(b)].boundary;
    }

    void findCrossings()
    {
        for (int i = 0; i < int(sides_.size()); ++i) {
            const Side& s = sides_[std::size_t(i)];
            grid_.near(s.a, s.b, 0.0, [&](int j) {
                const Side& o = sides_[std::size_t(j)];
                if (j <= i || o.path == s.path || boundaries(s.path, o.path)) return;
                const Point u = s.b - s.a, v = o.b - o.a;
                const double sine = cross(u, v);
                if (std::abs(sine) < kSteepSine * length(u) * length(v)) return;
                const double along = cross(o.a - s.a, v) / sine;
                const double otherAlong = cross(o.a - s.a, u) / sine;
                if (along < 0.0 || along > 1.0 || otherAlong < 0.0 || otherAlong > 1.0) return;
                addMeeting(s, along, o, otherAlong);
            });
        }
    }

    void addMeeting(const Side& s, double share, const Side& o, double otherShare)
    {
        const Meeting made{s.path, o.path, s.alongMm + share * distance(s.a, s.b),
                           o.alongMm + otherShare * distance(o.a, o.b), -1};
        for (const int m : layout_.meetingsOf[std::size_t(made.path)]) {
            const Meeting& old = layout_.meetings[std::size_t(m)];  // at a corner of either path it is found twice
            if (old.path == made.path && old.otherPath == made.otherPath &&
                layout_.paths[std::size_t(s.path)].between(old.alongMm, made.alongMm) < 0.1)
                return;
        }
        add(made);
    }

    void add(const Meeting& meeting)
    {
        const int number = int(layout_.meetings.size());
        layout_.meetings.push_back(meeting);
        layout_.meetingsOf[std::size_t(meeting.path)].push_back(number);
        layout_.meetingsOf[std::size_t(meeting.otherPath)].push_back(number);
    }

    /// Ends and corners of lines that lie nearly on another path, which one of their sides meets steeply.
    void findCornersOnPaths()
    {
        for (int number = 0; number < int(layout_.paths.size()); ++number) {
            const Path& path = layout_.paths[std::size_t(number)];
            if (path.boundary) continue;
            for (int i = 0; i < int(path.points.size()); ++i)
                if (isStation(path, i, layout_.asked)) findPathsAt(number, i);
        }
    }

    void findPathsAt(int number, int point)
    {
        struct Near {
            int side = 0;
            Foot foot;
        };
        const Path& path = layout_.paths[std::size_t(number)];
        const int count = int(path.points.size());
        const Point corner = path.points[std::size_t(point)];
        const double nearMm = kSameShare * layout_.asked.at(corner);
        std::vector<Near> found;  // the nearest side of each other path
        grid_.near(corner, corner, nearMm, [&](int j) {
            const Side& o = sides_[std::size_t(j)];
            if (o.path == number) return;
            const Foot foot = footOn(o, corner);
            if (foot.distanceMm >= nearMm) return;
            bool steep = false;
            for (const int next : {point - 1, point + 1}) {
                if (!path.closed && (next < 0 || next >= count)) continue;
                const Point run = o.b - o.a, in = corner - path.points[std::size_t((next + count) % count)];
                steep = steep || std::abs(cross(run, in)) >= kSteepSine * length(run) * length(in);
            }
            if (!steep) return;
            const auto same = std::ranges::find_if(
                found, [&](const Near& n) { return sides_[std::size_t(n.side)].path == o.path; });
            if (same == found.end()) found.push_back({j, foot});
            else if (foot.distanceMm < same->foot.distanceMm) *same = {j, foot};
        });
        const double alongMm = path.along[std::size_t(point)];
        for (const Near& n : found) {
            const Side& o = sides_[std::size_t(n.side)];
            const bool known = std::ranges::any_of(layout_.meetingsOf[std::size_t(number)], [&](int index) {
                const Meeting& m = layout_.meetings[std::size_t(index)];
                if (m.path == number && m.otherPath == o.path) return path.between(m.alongMm, alongMm) < 2 * nearMm;
                return m.otherPath == number && m.path == o.path && path.between(m.otherAlongMm, alongMm) < 2 * nearMm;
            });
            if (!known) add({number, o.path, alongMm, o.alongMm + n.foot.share * distance(o.a, o.b), -1});
        }
    }

    bool sameFeature(int path, double alongMm, int otherPath, double otherAlongMm, double apartMm) const
    {
        const double reach = kWayRound * apartMm;
        if (path == otherPath) return layout_.paths[std::size_t(path)].between(alongMm, otherAlongMm) < reach;
        return std::ranges::any_of(layout_.meetingsOf[std::size_t(path)], [&](int index) {
            const Meeting& m = layout_.meetings[std::size_t(index)];
            const bool same = m.path == path && m.otherPath == otherPath;
            const bool turned = m.path == otherPath && m.otherPath == path;
            if (!same && !turned) return false;
            const double mine = same ? m.alongMm : m.otherAlongMm;
            const double theirs = same ? m.otherAlongMm : m.alongMm;
            return layout_.paths[std::size_t(path)].between(mine, alongMm) +
                       layout_.paths[std::size_t(otherPath)].between(theirs, otherAlongMm) <
                   reach;
        });
    }

    void findCloseFeatures()
    {
        struct Lowered {
            Point at;
            double sizeMm = 0.0;
        };
        std::vector<Lowered> lowered;
        const double sizeMm = layout_.asked.sizeMm();
        for (const Side& s : sides_) {
            const int pieces = std::max(1, int(std::ceil(distance(s.a, s.b) / (0.6 * sizeMm))));
            for (int k = 0; k < pieces; ++k) {
                const Point p = s.a + (s.b - s.a) * (double(k) / pieces);
                const double alongMm = s.alongMm + distance(s.a, s.b) * k / pieces;
                const double size = sizeNear(p, s, alongMm);
                if (size < 0.95 * layout_.asked.at(p)) lowered.push_back({p, size});
            }
        }
        std::ranges::stable_sort(lowered, {}, &Lowered::sizeMm);
        for (const Lowered& place : lowered) layout_.sizes.add(place.at, place.sizeMm);
    }

    /// Lowers the size where stations of a boundary are closer to each other than it.
    void findShortSections()
    {
        for (int number = 0; number < int(layout_.paths.size()); ++number) {
            const Path& path = layout_.paths[std::size_t(number)];
            if (!path.boundary) break;
            std::vector<double> stations;
            for (int i = 0; i < int(path.points.size()); ++i)
                if (isStation(path, i, layout_.sizes)) stations.push_back(path.along[std::size_t(i)]);
            for (const int index : layout_.meetingsOf[std::size_t(number)]) {
                const Meeting& m = layout_.meetings[std::size_t(index)];
                const double alongMm = m.path == number ? m.alongMm : m.otherAlongMm;
                const double sameMm = kSameShare * layout_.asked.at(path.at(alongMm));
                // Those next to a corner or to each other will share its node.
                if (std::ranges::none_of(stations, [&](double s) { return path.between(s, alongMm) < sameMm; }))
                    stations.push_back(alongMm);
            }
            if (stations.empty()) continue;
            std::ranges::sort(stations);
            stations.push_back(stations.front() + path.lengthMm);
            for (std::size_t k = 0; k + 1 < stations.size(); ++k) {
                const double fromMm = stations[k], toMm = stations[k + 1];
                const Point middle = path.at(0.5 * (fromMm + toMm));
                const double sideMm = (toMm - fromMm) / leastEdges(path, fromMm, toMm, layout_.sizes.at(middle));
                if (sideMm > 0.8 * layout_.sizes.at(middle)) continue;
                for (const Point p : {path.at(fromMm), middle, path.at(toMm)})
                    layout_.sizes.add(p, std::max(sideMm, kLeastShare * layout_.asked.sizeMm()));
            }
        }
    }

    /// The size that the nearest other features leave room for at p on side s.
    double sizeNear(Point p, const Side& s, double alongMm)
    {
        const double askedMm = layout_.asked.at(p);
        const double sameMm = kSameShare * askedMm;
        double size = askedMm;
        grid_.near(p, p, 2.0 * askedMm, [&](int j) {
            const Side& o = sides_[std::size_t(j)];
            const bool strip = boundaries(s.path, o.path);
            const Foot foot = footOn(o, p);
            const double wantedMm = strip ? 0.5 * foot.distanceMm : foot.distanceMm;
            if (wantedMm >= size || (!strip && foot.distanceMm < sameMm)) return;
            const Point across = o.a + (o.b - o.a) * foot.share - p;
            // Only through the material, which lies on the left: not across a hole.
            if (strip && dot(across, leftNormal(s.b - s.a)) <= 0.0) return;
            if (strip && dot(across, leftNormal(o.b - o.a)) >= 0.0) return;
            const double otherAlong = o.alongMm + foot.share * distance(o.a, o.b);
            if (sameFeature(s.path, alongMm, o.path, otherAlong, foot.distanceMm)) return;
            size = wantedMm;
        });
        return std::max(size, kLeastShare * layout_.asked.sizeMm());
    }

    Layout layout_;
    Grid grid_;
    std::vector<Side> sides_;
    bool plain_ = false;
};

}  // namespace

bool isStation(const Path& path, int point, const SizeField& sizes)
{
    const int count = int(path.points.size());
    if (!path.closed && (point == 0 || point == count - 1)) return true;
    if (path.everyPoint || std::abs(path.turnDeg(point)) > kCornerDeg) return true;
    if (!path.boundary) return false;
    const Point p = path.points[std::size_t(point)];
    const double shortMm = kShortShare * sizes.at(p);
    return distance(p, path.to(point)) > shortMm || distance(p, path.from((point + count - 1) % count)) > shortMm;
}

int leastEdges(const Path& path, double fromMm, double toMm, double sizeMm)
{
    double turnedDeg = 0.0;
    for (std::size_t i = 0; i < path.points.size(); ++i) {
        const double turnDeg = std::abs(path.turnDeg(int(i)));
        for (const double lap : {0.0, path.lengthMm}) {
            const double alongMm = path.along[i] + lap;
            if (alongMm > fromMm + 1e-9 && alongMm < toMm - 1e-9) turnedDeg += turnDeg;
            // An arc turns by half a step where it begins and ends.
            const bool end = std::abs(alongMm - fromMm) <= 1e-9 || std::abs(alongMm - toMm) <= 1e-9;
            if (end && turnDeg < kCornerDeg) turnedDeg += 0.5 * turnDeg;
        }
    }
    const double cutOffMm2 = (toMm - fromMm) * (toMm - fromMm) * turnedDeg * (std::numbers::pi / 180.0) / 12.0;
    const int least = cutOffMm2 > kCutOffShare * sizeMm * sizeMm ? 2 : 1;
    return std::max(least, int(std::ceil(turnedDeg / kArcStepDeg - 1e-6)));
}

Layout layoutOf(const MeshRequest& request, Box bounds, bool plain)
{
    return LayoutMaker(request, bounds, plain).make();
}

}  // namespace yardcast::fem
