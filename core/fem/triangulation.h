#pragma once

#include <array>
#include <cstdint>
#include <vector>

#include "core/fem/predicates.h"

namespace yardcast::fem {

/// What an edge stands for; the higher holds more.
enum class EdgeKind : std::uint8_t { free, line, boundary };

/// A triangle of a triangulation: corners counter-clockwise; edge i and neighbour i lie opposite corner i.
struct Triangle {
    std::array<int, 3> corner{-1, -1, -1};
    std::array<int, 3> neighbour{-1, -1, -1};
    std::array<EdgeKind, 3> kind{};
    bool inside = false;

    bool alive() const { return corner[0] >= 0; }
    int indexOfCorner(int site) const { return corner[0] == site ? 0 : corner[1] == site ? 1 : 2; }
    int indexOfNeighbour(int triangle) const
    {
        return neighbour[0] == triangle ? 0 : neighbour[1] == triangle ? 1 : 2;
    }
};

/// An edge of a cavity, seen from the new point: left of `from` to `to`.
struct RimEdge {
    int from = -1;
    int to = -1;
    int beyond = -1;  ///< the triangle on its other side
    EdgeKind kind = EdgeKind::free;
    bool inside = false;
};

/// What a new point would replace: triangles whose circle holds it and that it sees past no constrained edge.
struct Cavity {
    std::vector<int> triangles;
    std::vector<RimEdge> rim;
};

/// Constrained Delaunay triangulation of a rectangle, its four corners being sites 0 to 3. All decisions are exact.
class Triangulation {
public:
    /// The rectangle from `low` to `high`, which every site must lie in (strictly).
    Triangulation(Site low, Site high, int expectedSites);

    const std::vector<Site>& sites() const { return sites_; }
    const std::vector<Triangle>& triangles() const { return triangles_; }
    Site site(int index) const { return sites_[std::size_t(index)]; }
    const Triangle& triangle(int index) const { return triangles_[std::size_t(index)]; }
    bool insideRectangle(Site p) const;

    /// The triangle that holds p (on an edge: either), walking from triangle `from`.
    int locate(Site p, int from) const;
    /// One triangle at the site; -1 for a site that was removed.
    int triangleAt(int site) const { return atSite_[std::size_t(site)]; }
    /// All triangles at a site that is no corner of the rectangle, counter-clockwise.
    void star(int site, std::vector<int>& out) const;

    /// The cavity of p, which lies in triangle `in`. The rim is star-shaped about p. Reused scratch: valid until the
    /// next call of any member.
    const Cavity& cavity(Site p, int in);
    /// Puts p in, in the cavity just asked for. Returns the index of the new site.
    int fill(Site p);
    /// Puts p in; an edge that it lies on keeps its kind in both halves. Returns the site, an old one if p is there.
    int insert(Site p, int from);
    /// Splits edge `edge` of triangle `in` at its middle; -1 where the lattice or the room does not allow it.
    int split(int in, int edge);
    /// The same at p, a point on that edge but for rounding.
    int splitAt(int in, int edge, Site p);

    /// Makes the straight line from a to b an edge (or edges, where sites lie on it). False, and nothing changed from
    /// there on, where it would cross a constrained edge.
    bool constrain(int a, int b, EdgeKind kind);
    /// Makes an edge free again and the surroundings Delaunay. Boundaries are left alone.
    void release(int in, int edge);

    /// Marks triangles as inside by `isInside`, asked once for each part that boundaries cut off.
    template <typename Ask>
    void markInside(Ask isInside);
    void setInside(int triangle, bool inside) { triangles_[std::size_t(triangle)].inside = inside; }

    /// Moves a site without a change of edges; the caller answers for every triangle at it staying the right way round.
    void move(int site, Site to) { sites_[std::size_t(site)] = to; }
    /// Flips edges until all are Delaunay or constrained.
    void makeDelaunay();
    /// The same for the edges at a site and round it.
    void makeDelaunayAbout(int site);
    /// Takes out a site that no boundary edge touches: its star is filled by a fan from `apex`, one of its neighbours
    /// that sees all of it, and made Delaunay. False, and nothing changed, where it does not see all of it.
    bool remove(int site, int apex);

    /// The edge (triangle and index in it) from a to b; first = -1 where there is none.
    std::pair<int, int> edgeBetween(int a, int b) const;

private:
    bool sees(Site p, const Triangle& t) const;
    void flip(int in, int edge);
    void legalise();
    void setKind(int in, int edge, EdgeKind kind);
    int newTriangle();
    void growCavity(Site p);
    bool rimIsStar(Site p) const;

    std::vector<Site> sites_;
    std::vector<Triangle> triangles_;
    std::vector<int> atSite_;
    std::vector<int> spare_;                      // dead triangles
    std::vector<std::pair<int, int>> suspects_;   // edges as pairs of sites, for legalise
    Cavity cavity_;
    std::vector<std::uint32_t> seen_;             // per triangle: the cavity that it was last looked at for
    std::uint32_t round_ = 0;
    std::vector<int> fanAt_;                      // per site: scratch of fill
    mutable std::vector<int> star_;
};

template <typename Ask>
void Triangulation::markInside(Ask isInside)
{
    std::vector<char> done(triangles_.size(), 0);
    std::vector<int> front;
    for (std::size_t first = 0; first < triangles_.size(); ++first) {
        if (done[first] || !triangles_[first].alive()) continue;
        const bool inside = isInside(triangles_[first]);
        front.assign(1, int(first));
        done[first] = 1;
        while (!front.empty()) {
            Triangle& t = triangles_[std::size_t(front.back())];
            front.pop_back();
            t.inside = inside;
            for (int i = 0; i < 3; ++i) {
                const int next = t.neighbour[std::size_t(i)];
                if (next < 0 || done[std::size_t(next)] || t.kind[std::size_t(i)] == EdgeKind::boundary) continue;
                done[std::size_t(next)] = 1;
                front.push_back(next);
            }
        }
    }
}

}  // namespace yardcast::fem
