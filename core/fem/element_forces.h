#pragma once

#include <array>

#include "core/fem/membrane_strain.h"
#include "core/fem/triangle_shape.h"

namespace yardcast::fem {

/// From displacements of a triangle to its resultants. What depends on its shape is worked out once, for any number of
/// displacements.
class ElementRecovery {
public:
    ElementRecovery(const Corners& corners, double poisson);

    /// As `elementForces`; `displacement` of corner k begins at `displacement[k]`.
    std::array<ShellForces, 3> forces(const ShellSection& section, double elasticMpa, double poisson,
                                      const std::array<const double*, 3>& displacement) const;

private:
    TriangleShape shape_;
    double bubble_[3];
    StrainsOfTurns ofTurns_;
};

}  // namespace yardcast::fem
