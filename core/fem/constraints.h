#pragma once

#include <vector>

#include "core/fem/layout.h"
#include "core/fem/triangulation.h"

namespace yardcast::fem {

/// Divides boundaries and lines into edges of about the size wanted, and makes them edges of the triangulation.
class Constraints {
public:
    Constraints(Layout& layout, Triangulation& mesh, Box bounds);

    /// The boundaries, and which triangles are inside. False where boundaries cross each other.
    bool addBoundaries();
    /// Lines and points, as far as they lie inside and leave room for good triangles.
    void addLines();
    void addPoints(const std::vector<Point>& points);
    /// The sites of the points that found room.
    const std::vector<int>& pointSites() const { return pointSites_; }

private:
    struct Station {
        double alongMm = 0.0;
        int site = -1;
        int meeting = -1;   ///< or -1: a corner or an end
    };
    std::vector<Station> stationsOf(int path) const;
    void mergeStations(int path, std::vector<Station>& stations);
    std::vector<Point> divided(const Path& path, double fromMm, double toMm) const;
    bool ringSites(int path, std::vector<int>& sites);
    int siteAt(Point p);
    bool isInside(Point p);
    bool hasRoom(Point p, int exceptA, int exceptB);
    bool edgeHasRoom(int a, int b);
    void noteEdge(int a, int b);

    struct Edge {
        int a = -1;
        int b = -1;
    };
    Layout& layout_;
    Triangulation& mesh_;
    Grid grid_;
    std::vector<Edge> edges_;
    std::vector<std::vector<int>> rings_;  ///< sites of the boundaries
    std::vector<int> pointSites_;
    int lastTriangle_ = 0;
};

}  // namespace yardcast::fem
