#pragma once

#include <string>
#include <vector>

#include "core/castings/casting.h"
#include "core/geometry/region.h"
#include "core/plan/parts.h"

/// What is put to both solvers.
namespace yardcast::reference {

/// A cut through the slab, parallel to x or y, over which moments are meant.
struct PlaneCut {
    std::string name;
    Point from;
    Point to;
};

struct Slab {
    std::string name;
    Counter counter;                ///< every edge parallel to x or y, corners sharp
    std::vector<Box> rests;
    std::vector<PlaneCut> cuts;
    double elasticMpa = 31000.0;
    double poisson = 0.2;
    double bedNMm3 = 10.0;
};

/// Weight per volume, N/mm3: kHardenedConcreteKgM3 and 9.81 m/s2.
double weightNMm3();
std::vector<Zone> zonesOf(const Slab& slab);
/// Depth of the concrete at a place, 0 outside.
double depthAt(const std::vector<Zone>& zones, Point place);

/// What the solvers are compared by.
struct CutForce {
    double meanMomentN = 0.0;       ///< per width of concrete, about the centroid of its area; underside in tension +
    double meanForceNMm = 0.0;      ///< tension positive
};
/// Stress at the face and at the underside (xx, yy, xy; MPa) at one place of the slab.
struct FibreSample {
    Point at;
    std::array<double, 3> face{};
    std::array<double, 3> underside{};
};

/// Greater principal stress.
double tensionMpa(const std::array<double, 3>& stress);

/// Places where no thin-plate theory can hold, nor a solid converge: within `withinMm` of a re-entrant corner in plan
/// or of the edge of a rest; for the underside as well those of a step in depth.
class CornerZones {
public:
    CornerZones(const Slab& slab, double withinMm);
    bool spoilFace(Point place) const;
    bool spoilUnderside(Point place) const;

private:
    std::vector<Point> corners_;
    std::vector<Ring> rests_;
    std::vector<Ring> steps_;
    double withinMm_;
};

}  // namespace yardcast::reference
