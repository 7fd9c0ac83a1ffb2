#pragma once

#include <string>
#include <vector>

#include "core/castings/casting.h"
#include "core/exports/dxf.h"
#include "core/mould/mould.h"
#include "core/plan/plan.h"

namespace yardcast {

/// The sentences on a drawing, in the person's language.
struct DrawingWords {
    std::string plan;           ///< "seen from above, as it stands; mm"
    std::string mould;          ///< "as it lies in the mould; mm"
    std::string mirrored;       ///< "MIRRORED: left and right are swapped, because it is cast face down"
    std::string notMirrored;    ///< "not mirrored: left and right as in the kitchen"
    std::string frontEdge;      ///< "front edge: stand here"
};

/// The plan from above in plan axes, or one part of it: every casting by its outer edge, cutouts (arcs as arcs), deep
/// strips of the underside dashed, supports, panels, fronts with upright battens, appliances, the site.
/// Layers: "Counters", "Cutouts", "Rims and ribs", "Supports", "Panels", "Fronts", "Battens", "Appliances", "Site",
/// "Connections", "Names".
DxfDrawing planDrawing(const Plan& plan, const std::vector<CastingPtr>& castings, const DrawingWords& words,
                       const std::string& onlyPart = {});

/// The moulds as one stands in front of them, beside each other along x, or those of one part: every board, block and
/// strip from above with its number, the casting dashed, diagonals to measure, and a line that says whether it is
/// mirrored. Layers: "Base boards", "Sides", "Formers", "Foam fillers", "Foam cores", "Chamfer strips", "Drip strips",
/// "Rebate strips", "Hold-downs", "Brackets", "Spacers", "Casting", "Diagonals", "Numbers", "Notes".
DxfDrawing mouldDrawing(const std::vector<MouldPtr>& moulds, const DrawingWords& words,
                        const std::string& onlyPart = {});

}  // namespace yardcast
