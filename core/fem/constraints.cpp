#include "core/fem/constraints.h"

#include <algorithm>
#include <cmath>

namespace yardcast::fem {

namespace {

/// Stations on a path nearer than this share of the size become one.
constexpr double kMergeShare = 0.35;
/// A node of a line keeps this share of the size away from the edges of other paths.
constexpr double kRoomShare = 0.3;
/// Edges at one node keep this angle apart, unless both belong to boundaries (cosine of 35 degrees).
constexpr double kSteepCosine = 0.82;
double segmentsApart(Point a, Point b, Point c, Point d)
{
    const double side = cross(b - a, c - a) * cross(b - a, d - a);
    const double otherSide = cross(d - c, a - c) * cross(d - c, b - c);
    if (side < 0.0 && otherSide < 0.0) return 0.0;
    return std::min({distanceToSegment(a, c, d), distanceToSegment(b, c, d), distanceToSegment(c, a, b),
                     distanceToSegment(d, a, b)});
}

}  // namespace

Constraints::Constraints(Layout& layout, Triangulation& mesh, Box bounds)
    : layout_(layout), mesh_(mesh), grid_(bounds, layout.sizes.sizeMm())
{
}

int Constraints::siteAt(Point p)
{
    const int site = mesh_.insert(siteOf(p), lastTriangle_);
    if (site >= 0) lastTriangle_ = mesh_.triangleAt(site);
    return site;
}

std::vector<Constraints::Station> Constraints::stationsOf(int number) const
{
    const Path& path = layout_.paths[std::size_t(number)];
    std::vector<Station> stations;
    const int count = int(path.points.size());
    for (int i = 0; i < count; ++i)
        if (isStation(path, i, layout_.sizes)) stations.push_back({path.along[std::size_t(i)], -1, -1});
    for (const int m : layout_.meetingsOf[std::size_t(number)]) {
        const Meeting& meeting = layout_.meetings[std::size_t(m)];
        if (meeting.path == number) stations.push_back({meeting.alongMm, meeting.site, m});
        if (meeting.otherPath == number) stations.push_back({meeting.otherAlongMm, meeting.site, m});
    }
    std::stable_sort(stations.begin(), stations.end(),
                     [](const Station& a, const Station& b) { return a.alongMm < b.alongMm; });
    return stations;
}

void Constraints::mergeStations(int number, std::vector<Station>& stations)
{
    const Path& path = layout_.paths[std::size_t(number)];
    // Rank: a node that is there already, then (on a boundary) a corner, then a crossing, then a line's own corner.
    const auto rank = [&](const Station& s) {
        if (s.site >= 0) return 3;
        if (s.meeting < 0) return path.boundary ? 2 : 0;
        return 1;
    };
    if (path.closed && stations.size() > 1) {  // begin after the widest gap: nothing merges across the seam
        std::size_t first = 0;
        double widestMm = stations.front().alongMm + path.lengthMm - stations.back().alongMm;
        for (std::size_t k = 1; k < stations.size(); ++k) {
            const double gapMm = stations[k].alongMm - stations[k - 1].alongMm;
            if (gapMm <= widestMm) continue;
            widestMm = gapMm;
            first = k;
        }
        for (std::size_t k = 0; k < first; ++k) stations[k].alongMm += path.lengthMm;
        std::rotate(stations.begin(), stations.begin() + std::ptrdiff_t(first), stations.end());
    }
    std::vector<Station> kept;
    for (const Station& s : stations) {
        const double nearMm = kMergeShare * layout_.sizes.at(path.at(s.alongMm));
        if (!kept.empty() && path.between(kept.back().alongMm, s.alongMm) < nearMm) {
            const bool bothStay = path.boundary && s.meeting < 0 && kept.back().meeting < 0;
            const bool bothAreNodes = s.site >= 0 && kept.back().site >= 0;
            if (!bothStay && !bothAreNodes) {
                Station& old = kept.back();
                int site = std::max(s.site, old.site);  // at most one of them has one
                if (site < 0) site = siteAt(path.at(rank(s) > rank(old) ? s.alongMm : old.alongMm));
                for (const int m : {old.meeting, s.meeting})
                    if (m >= 0) layout_.meetings[std::size_t(m)].site = site;
                if (rank(s) > rank(old)) old = s;
                old.site = site;
                continue;
            }
        }
        kept.push_back(s);
    }
    for (Station& s : kept) {
        if (s.site < 0) s.site = siteAt(path.at(s.alongMm));
        if (s.meeting >= 0) layout_.meetings[std::size_t(s.meeting)].site = s.site;
    }
    stations = std::move(kept);
}

std::vector<Point> Constraints::divided(const Path& path, double fromMm, double toMm) const
{
    const double lengthMm = toMm - fromMm;
    const int steps = std::clamp(int(lengthMm / (0.2 * layout_.sizes.sizeMm())), 8, 4000);
    std::vector<double> sum{0.0};
    for (int k = 0; k < steps; ++k) {
        const double alongMm = fromMm + lengthMm * (k + 0.5) / steps;
        sum.push_back(sum.back() + lengthMm / steps / layout_.sizes.at(path.at(alongMm)));
    }
    const double middleMm = layout_.sizes.at(path.at(fromMm + 0.5 * lengthMm));
    const int count = std::max(int(std::lround(sum.back())), leastEdges(path, fromMm, toMm, middleMm));
    std::vector<Point> points;
    for (int k = 1; k < count; ++k) {
        const double wanted = sum.back() * k / count;
        const std::size_t i = std::size_t(std::ranges::upper_bound(sum, wanted) - sum.begin()) - 1;
        const double share = i + 1 < sum.size() ? (wanted - sum[i]) / (sum[i + 1] - sum[i]) : 0.0;
        points.push_back(path.at(fromMm + lengthMm * (double(i) + share) / steps));
    }
    return points;
}

bool Constraints::ringSites(int number, std::vector<int>& sites)
{
    const Path& path = layout_.paths[std::size_t(number)];
    std::vector<Station> stations = stationsOf(number);
    if (stations.empty()) stations.push_back({0.0, -1, -1});
    mergeStations(number, stations);
    // A point that found no place in the triangulation: there is no ring to be made of these.
    if (std::ranges::any_of(stations, [](const Station& station) { return station.site < 0; })) return false;
    for (std::size_t k = 0; k < stations.size(); ++k) {
        const double fromMm = stations[k].alongMm;
        const double toMm = k + 1 < stations.size() ? stations[k + 1].alongMm : stations[0].alongMm + path.lengthMm;
        sites.push_back(stations[k].site);
        std::vector<Point> between = divided(path, fromMm, toMm);
        // The same area as the arc that the edges stand for: push the nodes between out by as much as they lack.
        std::vector<Point> chain{pointOf(mesh_.site(stations[k].site))};
        chain.insert(chain.end(), between.begin(), between.end());
        chain.push_back(pointOf(mesh_.site(stations[(k + 1) % stations.size()].site)));
        if (!between.empty()) {
            double lacking = 0.0;  // twice the area between the arc and the chain, positive where the arc is outside
            std::vector<Point> arc{chain.front()};
            for (int lap = 0; lap < 2; ++lap)
                for (std::size_t i = 0; i < path.points.size(); ++i) {
                    const double alongMm = path.along[i] + lap * path.lengthMm;
                    if (alongMm > fromMm + 1e-9 && alongMm < toMm - 1e-9) arc.push_back(path.points[i]);
                }
            arc.push_back(chain.back());
            for (std::size_t i = 0; i + 1 < arc.size(); ++i) lacking += cross(arc[i] - arc[0], arc[i + 1] - arc[0]);
            for (std::size_t i = 0; i + 1 < chain.size(); ++i)
                lacking -= cross(chain[i] - chain[0], chain[i + 1] - chain[0]);
            double perMm = 0.0;
            std::vector<Point> outward(chain.size());
            for (std::size_t i = 1; i + 1 < chain.size(); ++i) {
                const Point run = chain[i + 1] - chain[i - 1];
                outward[i] = leftNormal(run) * (-1.0 / std::max(length(run), 1e-9));
                perMm += length(run);
            }
            const double pushMm = perMm > 0.0 ? lacking / perMm : 0.0;
            for (std::size_t i = 0; i < between.size(); ++i) between[i] = between[i] + outward[i + 1] * pushMm;
        }
        for (const Point p : between) sites.push_back(siteAt(p));
    }
    return std::ranges::find(sites, -1) == sites.end();
}

bool Constraints::addBoundaries()
{
    for (int number = 0; number < int(layout_.paths.size()); ++number) {
        if (!layout_.paths[std::size_t(number)].boundary) break;
        std::vector<int> sites;
        if (!ringSites(number, sites)) return false;
        rings_.push_back(std::move(sites));
    }
    for (const std::vector<int>& ring : rings_) {
        for (std::size_t i = 0; i < ring.size(); ++i) {
            const int a = ring[i], b = ring[(i + 1) % ring.size()];
            if (a == b) continue;
            if (!mesh_.constrain(a, b, EdgeKind::boundary)) return false;
            noteEdge(a, b);
        }
    }
    std::vector<Ring> rings;
    for (const std::vector<int>& sites : rings_) {
        Ring ring;
        for (const int site : sites) ring.push_back(pointOf(mesh_.site(site)));
        rings.push_back(std::move(ring));
    }
    mesh_.markInside([&](const Triangle& t) {
        const Point centre = (pointOf(mesh_.site(t.corner[0])) + pointOf(mesh_.site(t.corner[1])) +
                              pointOf(mesh_.site(t.corner[2]))) * (1.0 / 3.0);
        int around = 0;
        for (const Ring& ring : rings) around += contains(ring, centre) ? 1 : 0;
        return around % 2 == 1;
    });
    return true;
}

void Constraints::noteEdge(int a, int b)
{
    grid_.add(int(edges_.size()), pointOf(mesh_.site(a)), pointOf(mesh_.site(b)));
    edges_.push_back({a, b});
}

bool Constraints::isInside(Point p)
{
    const Site site = siteOf(p);
    if (!mesh_.insideRectangle(site)) return false;
    const int in = mesh_.locate(site, lastTriangle_);
    if (in < 0) return false;
    lastTriangle_ = in;
    return mesh_.triangle(in).inside;
}

bool Constraints::hasRoom(Point p, int exceptA, int exceptB)
{
    const double roomMm = kRoomShare * layout_.sizes.at(p);
    bool room = true;
    grid_.near(p, p, roomMm, [&](int number) {
        const Edge& e = edges_[std::size_t(number)];
        if (!room) return;
        const bool own = e.a == exceptA || e.b == exceptA || e.a == exceptB || e.b == exceptB;
        if (own) return;
        room = distanceToSegment(p, pointOf(mesh_.site(e.a)), pointOf(mesh_.site(e.b))) >= roomMm;
    });
    return room;
}

bool Constraints::edgeHasRoom(int a, int b)
{
    const Point p = pointOf(mesh_.site(a)), q = pointOf(mesh_.site(b));
    const double lengthMm = distance(p, q);
    const double roomMm = 0.25 * std::min(lengthMm, layout_.sizes.at((p + q) * 0.5));
    bool room = true;
    grid_.near(p, q, roomMm, [&](int number) {
        const Edge& e = edges_[std::size_t(number)];
        if (!room) return;
        const Point c = pointOf(mesh_.site(e.a)), d = pointOf(mesh_.site(e.b));
        const bool atA = e.a == a || e.b == a, atB = e.a == b || e.b == b;
        if (atA && atB) {
            room = false;
        } else if (e.a == e.b) {
            room = atA || atB || distanceToSegment(c, p, q) >= roomMm;
        } else if (atA || atB) {
            const Point common = atA ? p : q;
            const Point mine = (atA ? q : p) - common;
            const Point theirs = (e.a == (atA ? a : b) ? d : c) - common;
            room = dot(mine, theirs) < kSteepCosine * length(mine) * length(theirs);
        } else {
            room = segmentsApart(p, q, c, d) >= roomMm;
        }
    });
    return room;
}

void Constraints::addLines()
{
    for (int number = 0; number < int(layout_.paths.size()); ++number) {
        const Path& path = layout_.paths[std::size_t(number)];
        if (path.boundary) continue;
        std::vector<Station> stations = stationsOf(number);
        if (stations.empty()) stations.push_back({0.0, -1, -1});
        // A corner of the line itself needs room; a meeting with a path that was laid before has its node already.
        std::erase_if(stations, [&](const Station& s) {
            if (s.site >= 0) return false;
            const Point p = path.at(s.alongMm);
            return !isInside(p) || !hasRoom(p, -1, -1);
        });
        if (stations.empty()) continue;
        mergeStations(number, stations);
        const std::size_t sections = path.closed ? stations.size() : stations.size() - 1;
        for (std::size_t k = 0; k < sections; ++k) {
            const Station& from = stations[k];
            const Station& to = stations[(k + 1) % stations.size()];
            const double toMm = to.alongMm + (k + 1 < stations.size() ? 0.0 : path.lengthMm);
            int before = from.site;
            for (const Point p : divided(path, from.alongMm, toMm)) {
                int site = -1;
                if (isInside(p) && hasRoom(p, before, -1)) site = siteAt(p);
                if (site >= 0 && before >= 0 && site != before && edgeHasRoom(before, site) &&
                    mesh_.constrain(before, site, EdgeKind::line))
                    noteEdge(before, site);
                before = site;
            }
            const int last = to.site;
            if (before < 0 || last < 0 || before == last) continue;
            const Point middle = (pointOf(mesh_.site(before)) + pointOf(mesh_.site(last))) * 0.5;
            if (isInside(middle) && edgeHasRoom(before, last) && mesh_.constrain(before, last, EdgeKind::line))
                noteEdge(before, last);
        }
    }
}

void Constraints::addPoints(const std::vector<Point>& points)
{
    for (const Point p : points) {
        if (!isInside(p) || !hasRoom(p, -1, -1)) continue;
        const int site = siteAt(p);
        if (site < 0) continue;
        noteEdge(site, site);
        pointSites_.push_back(site);
    }
}

}  // namespace yardcast::fem
