#pragma once

#include <string>
#include <vector>

#include "core/structure/strength.h"
#include "tests/reference/slab.h"

namespace yardcast::reference {

/// Our own shells' answer to the same slab.
struct OurAnswer {
    std::string trouble;              ///< empty when it was meshed, held and settled
    double deflectionMm = 0.0;
    double pressN = 0.0;
    std::vector<double> restN;
    std::vector<CutForce> cuts;
    std::vector<FibreSample> fibres;  ///< at the places asked for, in their order; those outside the mesh have none
    std::size_t nodes = 0;
};

/// What core/structure is given for the slab: its casting and its rests.
StrengthInput inputOf(const Slab& slab);

/// The work alone, for timing: from the casting to the stresses at all nodes. Deflection in mm, 0 where it fails.
double solveFromMeshToStresses(const StrengthInput& input, Refinement refinement);

/// Own weight on its rests, by the bodies and shells of core, as the case `own_weight` has it.
OurAnswer solveOurs(const Slab& slab, Refinement refinement, const std::vector<FibreSample>& places);

}  // namespace yardcast::reference
