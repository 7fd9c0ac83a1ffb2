#pragma once

#include <optional>

#include "core/plan/file_source.h"
#include "core/plan/number_limits.h"
#include "core/plan/parts.h"

namespace yardcast {

/// What the mould base is covered with: it decides how hard the casting sticks to it.
enum class MouldSurface { coated, planed, rough };

/// EN 1992-1-1 Table 4.1: X0 dry; XC carbonation (1 dry or always wet, 2 wet, 3 sheltered, 4 wet and dry); XD chlorides
/// not from the sea (1 damp, 2 wet, 3 wet and dry); XS from the sea (1 air, 2 under water, 3 splash).
enum class Exposure { x0, xc1, xc2, xc3, xc4, xd1, xd2, xd3, xs1, xs2, xs3 };

/// EN 206 Table 1, attack by freezing and thawing: 1 moderately wet, 2 the same with de-icing salt, 3 very wet, 4 the
/// same with salt.
enum class Frost { none, xf1, xf2, xf3, xf4 };

/// What the figures of strength rest on where nobody has measured. None is hidden and all may be changed.
struct Assumptions {
    double bedNMm3 = 10.0;          ///< stiffness of what a slab rests on; our choice, no source
    double strippingFactor = 1.3;   ///< on own weight when the mould is stripped and turned: PCI (from memory)
    double handlingFactor = 1.3;    ///< on own weight when it is carried and set down by people; our choice, PCI has 1.2
    MouldSurface mouldSurface = MouldSurface::coated;
    std::optional<double> suctionKpa;  ///< default by the surface, see `suctionKpa`
    double crackSafety = 1.5;       ///< strength over tension when handled uncracked: precast practice (from memory)
    double evenLoadKpa = 2.0;       ///< on a counter in place; EN 1991-1-1 has 2.0 for floors and nothing for worktops
    std::optional<double> personN;  ///< default by `Counter::imposed`, see `personN`
    Exposure exposure = Exposure::xc4;
    double lateCornerMm = 10.0;     ///< how much later than the others one corner comes down; our choice, no source
    Frost frost = Frost::xf3;       ///< a level slab in rain and frost
    int curingClass = 3;            ///< EN 13670 table F.1 to F.3: 2, 3 or 4 (35, 50, 70 % of the strength at the surface)
    double stripMpa = 15.0;         ///< mean compressive strength to strip the mould at (from memory, trade)
    FileSource source;
    friend bool operator==(const Assumptions&, const Assumptions&) = default;
};

inline constexpr NumberLimits kBedLimits{0.01, 1000.0};
inline constexpr NumberLimits kFactorLimits{1.0, 5.0};
inline constexpr NumberLimits kSuctionLimits{0.0, 20.0};
inline constexpr NumberLimits kEvenLoadLimits{0.0, 50.0};
inline constexpr NumberLimits kPersonLimits{0.0, 10'000.0};
inline constexpr NumberLimits kLateCornerLimits{0.0, 200.0};
inline constexpr NumberLimits kCuringClassLimits{2, 4};
inline constexpr NumberLimits kStripLimits{1.0, 60.0};
/// With every number outside its limits put back to its default.
Assumptions withinLimits(const Assumptions& assumptions);

/// The plan's own, or by the mould's surface: coated 1, planed 2, rough 3 kN/m2 (VDI/BV-BS 6205 and CEN/TR 15728, from
/// memory).
double suctionKpa(const Assumptions& assumptions);
/// The plan's own, or 1000 N for a worktop (somebody leans or sits on it) and 1500 N where a person may stand. No
/// Eurocode gives a load for worktops: judgement.
double personN(const Assumptions& assumptions, Imposed imposed);

}  // namespace yardcast
