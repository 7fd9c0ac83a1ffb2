#pragma once

#include "core/fem/mesh.h"
#include "tests/property/random_plan.h"

namespace yardcast::random {

/// A slab as the mesher gets it, with one cutout that is dragged.
class DraggedSlab {
public:
    explicit DraggedSlab(Source& source);

    /// The slab with the cutout `step` steps along.
    MeshRequest at(int step) const;
    double stepMm() const { return stepMm_; }
    /// What is thicker than the field: the rim and the rim of the cutout, at that step.
    Region thick(int step) const;
    /// What the slab rests on.
    const Region& rests() const { return rests_; }

private:
    Ring hole(int step) const;

    Region outline_;                ///< with the holes that stay
    Region rim_;
    Region rests_;
    std::vector<Ring> lines_;
    std::vector<FinePlace> fine_;
    double sizeMm_ = 30.0;

    bool round_ = false;
    Size cutout_;                   ///< its width is the diameter of a round one
    double turnDeg_ = 0.0;
    double radiusMm_ = 0.0;
    double rimMm_ = 0.0;
    Point from_;
    Point along_;
    double stepMm_ = 0.5;
};

/// Anything at all: crossing, empty, far off, no numbers.
MeshRequest anyMeshRequest(Source& source);

}  // namespace yardcast::random
