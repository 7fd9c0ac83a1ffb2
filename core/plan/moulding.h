#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/geometry/point.h"
#include "core/plan/file_source.h"
#include "core/plan/number_limits.h"

/// How the moulds are to be built and sawn.
namespace yardcast {

/// The sides stand on the base board, or around it.
enum class SideJoint { onBase, besideBase };
/// What the mould gives the edges of the face: a fillet of silicone, a chamfer of a triangular strip, or neither.
enum class EdgeFinish { fillet, chamfer, sharp };
/// What the blocks that make cutouts are built up from.
enum class FormerStuff { board, foam };

/// A piece of board that is already there; it is used before a sheet is bought.
struct Offcut {
    Size size;
    double thicknessMm = 18.0;
    int count = 1;
    FileSource source;
    friend bool operator==(const Offcut&, const Offcut&) = default;
};

/// Castings that come out of one mould, one after the other, in this order.
struct SharedMould {
    std::vector<std::string> castings;
    FileSource source;
    friend bool operator==(const SharedMould&, const SharedMould&) = default;
};

struct Moulding {
    double boardMm = 18.0;              ///< thickness of the mould board, as measured
    SideJoint sides = SideJoint::onBase;
    EdgeFinish edge = EdgeFinish::fillet;
    double edgeMm = 6.0;                ///< radius of the fillet, leg of the chamfer
    FormerStuff former = FormerStuff::board;
    double draftDeg = 3.0;              ///< of formers, for release: narrower where they leave the casting
    double toleranceMm = 1.0;           ///< a sawn board may be so much longer or shorter
    double bowMm = 1.0;                 ///< how far a side may bow out between its brackets
    std::optional<double> bracketMm;    ///< spacing of brackets; default: the largest that keeps within `bowMm`
    double sawMm = 4.0;                 ///< width of the saw cut: of the store's panel saw
    double trimMm = 0.0;                ///< cut off all around a sheet before it is used
    double leastStripMm = 80.0;         ///< the narrowest strip that the store cuts
    std::vector<Offcut> offcuts;
    std::vector<SharedMould> shared;
    FileSource source;
    friend bool operator==(const Moulding&, const Moulding&) = default;
};

inline constexpr NumberLimits kBoardLimits{3.0, 60.0};
inline constexpr NumberLimits kEdgeLimits{0.0, 50.0};
inline constexpr NumberLimits kDraftLimits{0.0, 30.0};
inline constexpr NumberLimits kToleranceLimits{0.0, 20.0};
inline constexpr NumberLimits kBowLimits{0.05, 20.0};
inline constexpr NumberLimits kBracketLimits{50.0, 5000.0};
inline constexpr NumberLimits kSawLimits{0.0, 20.0};
inline constexpr NumberLimits kTrimLimits{0.0, 200.0};
inline constexpr NumberLimits kLeastStripLimits{0.0, 1000.0};
/// With every number outside its limits put back to its default, and offcuts that are no boards left out.
Moulding withinLimits(const Moulding& moulding);

/// A groove in the underside of a counter that keeps water from running back, along edges of the outline.
struct Drip {
    std::vector<int> edges;             ///< edge i runs from outline point i to i+1
    double fromEdgeMm = 20.0;           ///< from the edge to the groove's nearer side
    double widthMm = 8.0;
    double depthMm = 5.0;
    FileSource source;
    friend bool operator==(const Drip&, const Drip&) = default;
};

/// A step in the face along edges of the outline, in which a splash panel stands.
struct Rebate {
    std::vector<int> edges;
    double widthMm = 44.0;
    double depthMm = 8.0;
    FileSource source;
    friend bool operator==(const Rebate&, const Rebate&) = default;
};

}  // namespace yardcast
