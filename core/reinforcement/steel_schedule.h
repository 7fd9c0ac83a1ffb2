#pragma once

#include <string>
#include <vector>

#include "core/castings/casting.h"
#include "core/plan/finding.h"
#include "core/reinforcement/steel_layout.h"

namespace yardcast {

struct MeshNeed {
    std::string casting;
    double barMm = 0.0;
    double pitchMm = 0.0;
    double netAreaM2 = 0.0;
    double withLapsM2 = 0.0;  ///< what has to be bought before cutting losses
    double massKg = 0.0;
    SteelMaterial material = SteelMaterial::steel;
};

struct BarNeed {
    std::string casting;
    double diameterMm = 0.0;
    double lengthMm = 0.0;
    int count = 0;
    double massKg = 0.0;
    SteelMaterial material = SteelMaterial::steel;
};

struct DiameterTotal {
    double diameterMm = 0.0;
    double lengthM = 0.0;
    double massKg = 0.0;
    SteelMaterial material = SteelMaterial::steel;
};

struct SteelSchedule {
    std::vector<MeshNeed> meshes;
    std::vector<BarNeed> bars;
    std::vector<DiameterTotal> barTotals;   ///< by diameter, ascending, then material
    double meshAreaM2 = 0.0;                ///< with laps
    double massKg = 0.0;
    std::vector<CastingSteelLayoutPtr> layouts;  ///< of castings that have steel, in the order of the parts
};

/// Mesh sheets lap where a piece is longer than a sheet (2000 x 1000 mm unless said otherwise) by two pitches, at
/// least 150 mm (common practice for welded mesh, no source). `findings`: see
/// `SteelChecks`. `known`
/// saves working out the layouts of castings that did not change.
SteelSchedule steelSchedule(const Plan& plan, const std::vector<CastingPtr>& castings,
                            std::vector<Finding>& findings, SteelLayouts* known = nullptr);

}  // namespace yardcast
