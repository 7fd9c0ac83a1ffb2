#pragma once

#include <string>
#include <vector>

#include "core/purchase/shopping.h"

namespace yardcast {

/// What one item of the list has to cover, before prices, packs and what is owned.
struct Need {
    std::vector<std::string> keys;  ///< item keys, the most particular first; the first that is priced serves
    std::string unit;
    std::string group;
    std::string detail;             ///< joined to the name, e.g. "46 x 27 larch"; may be empty
    double amount = 0.0;
    bool estimate = false;
    double packSize = 0.0;          ///< not 0: only packs of this size (a dry bag) serve
    double atLeast = 0.0;           ///< what the packs have to cover where that is more than `amount`
    double longestMm = 0.0;         ///< longest single piece to be cut from a pack; 0 where it does not matter
    std::vector<ShoppingOrigin> origins;
};

/// Added to bars, mesh, foam, battens and frame timber for cuts until the saw plans exist: estimate, no source.
inline constexpr double kCutAllowanceShare = 0.10;
/// Common practice, no source: spacers and ties for the steel, the face one set of grinding discs does (where the price
/// book has no coverage).
inline constexpr double kSpacersPerM2 = 8.0;
inline constexpr double kTiesPerM2 = 4.0;
inline constexpr double kBarSpacerPitchMm = 500.0;
inline constexpr double kDiscSetM2 = 4.0;
/// Sealant fills a joint to half its width, at least 6 mm (from memory, the usual rule beside ISO 11600).
inline constexpr double kLeastSealantDepthMm = 6.0;

/// All needs of the plan; sealed bags more where the spread of the bag's yield asks for them (`MixQuantities::spareBags`);
/// cement, sand and gravel of recipes by weight. Each amount above 0; the same item may occur twice (two sorts of dry bag).
std::vector<Need> gatherNeeds(const Plan& plan, const PriceBook& prices, const std::vector<CastingPtr>& castings,
                              const std::vector<MixQuantities>& mixes, const SteelSchedule& steel,
                              const std::vector<FrontLayout>& fronts, const MouldEstimate& mould);

/// "batten_larch_46x27", "batten_46x27", "batten": the most particular first; and what the list adds to the name.
std::vector<std::string> battenKeys(const Front& front);
std::string battenDetail(const Front& front);
/// "foam_20".
std::string foamItem(double thicknessMm);
/// "AR glass" -> "ar_glass": lower case ASCII, everything else one underscore.
std::string itemSlug(const std::string& words);
/// "mesh_4_50" and "bar_8": shortest decimals, as in the price book.
std::string meshItem(double barMm, double pitchMm, SteelMaterial material = SteelMaterial::steel);
std::string barItem(double diameterMm, SteelMaterial material = SteelMaterial::steel);

}  // namespace yardcast
