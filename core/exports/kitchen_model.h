#pragma once

#include <string>
#include <vector>

#include "core/castings/casting.h"
#include "core/exports/solid.h"
#include "core/mould/mould.h"
#include "core/plan/plan.h"

namespace yardcast {

/// Something that stands in the kitchen, in plan axes: x to the right, y away from the person, z up from the datum.
struct ModelPiece {
    std::string id;         ///< of the casting, or of the part
    std::string part;
    Solid solid;
};

/// The concrete of one casting where it stands: rims, ribs, cutouts and the hollow underside as they are. What a core
/// takes up is a hollow too, so that the volume is that of the concrete. Steel is concrete here. Where its borders
/// are too close to make one body, one body a zone.
ModelPiece modelOf(const Casting& casting, const Part& part);

/// All of the kitchen, or of one part: castings, the battens of fronts (frames and doors not), appliances as boxes.
/// `castings` as in the assessment.
std::vector<ModelPiece> kitchenModel(const Plan& plan, const std::vector<CastingPtr>& castings,
                                     const std::string& onlyPart = {});

/// The formers of moulds as they stand on the base board, those of one cutout as one body with its draft; the moulds
/// beside each other along x. Their id is that of casting and cutout: "C1 K1".
std::vector<ModelPiece> formersModel(const std::vector<MouldPtr>& moulds, const std::string& onlyPart = {});

}  // namespace yardcast
