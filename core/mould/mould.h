#pragma once

#include <array>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "core/castings/casting.h"
#include "core/geometry/region.h"
#include "core/plan/finding.h"
#include "core/plan/plan.h"

/// The mould of one casting, as one stands in front of it.
///
/// The mould frame: x to the right and y away from whoever stands at the front edge (of an upright casting: at its
/// foot), z up from the upper face of the base board; the origin is the left front corner of the casting's bounds. It
/// is the own frame mirrored left to right where the casting lies face down (`mirrored`): then what is on the right in
/// the kitchen is on the left in the mould.
namespace yardcast {

enum class MouldPartKind {
    base,       ///< board under the casting
    side,       ///< board along one edge
    former,     ///< one ply of the block that makes a cutout
    filler,     ///< foam that lies in the casting or makes its hollow underside
    core,       ///< foam inside a support or panel
    chamfer,    ///< triangular strip along an edge of the face
    drip,       ///< strip that makes the drip groove, held from above
    rebate,     ///< strip on the base that makes the splash rebate
    holdDown,   ///< batten across the mould that keeps foam from floating, or from which a strip hangs (about "drip")
    bracket,    ///< what holds a side upright, on the base; of a mould that stands the stud that its ties hold
    spacer,     ///< block of mortar that holds a core off the base; it stays in the casting
    cleat,      ///< batten under the joint of two boards of the base
    foot,       ///< batten on the base along the foot of a mould that stands; the studs lean against it
    tie         ///< threaded rod from stud to stud across a mould that stands
};
/// The last of them.
inline constexpr MouldPartKind kLastMouldPart = MouldPartKind::tie;
/// "base", "side", "former", "filler", "core", "chamfer", "drip", "rebate", "hold_down", "bracket", "spacer", "cleat",
/// "foot", "tie".
const char* mouldPartWord(MouldPartKind kind);

enum class MouldStuff { board, foam, batten, strip, block, rod };
/// "board", "foam", "batten", "strip", "block", "rod".
const char* mouldStuffWord(MouldStuff stuff);

/// One piece to saw and put in, or several alike beside each other (`places`).
struct MouldPart {
    MouldPartKind kind = MouldPartKind::base;
    MouldStuff stuff = MouldStuff::board;
    std::string name;           ///< its number on the mould and on the saw list: "C1-4"; unique in the plan
    std::string about;          ///< cutout id; "front", "back", "left", "right" (of the mould); or empty
    int step = 0;               ///< order of assembly, from 1
    /// Of all `count` of them, where they lie in the mould frame (from above), at `fromMm`. A curved side lies bent
    /// there; its developed length is `lengthMm`.
    Region outline;
    Region topOutline;          ///< at `toMm`, where draft makes it another; else empty
    double fromMm = 0.0;        ///< above the base board; below 0 for the base and what stands around it
    double toMm = 0.0;
    /// To saw, the longer way: to half a millimetre, or in whole millimetres, rounded up, where it is trimmed to a line
    /// afterwards (`shaped`, bent strips) or its end lies free (battens across the mould).
    double lengthMm = 0.0;
    double widthMm = 0.0;
    double thicknessMm = 0.0;
    int count = 1;              ///< how many to saw; all are drawn in `outline`
    bool goodFace = false;      ///< one face touches what one sees of the casting
    bool shaped = false;        ///< trimmed at home out of this rectangle: to a shape, to a mitre, or to lean
    bool bent = false;          ///< bent round a curve: a thin board, or a soft strip
    /// How both ends lean against a square cut, degrees; above 0 where the side away from the concrete is the longer
    /// one (at an outer corner). Of sides and chamfer strips.
    std::array<double, 2> mitreDeg{};
    double edgeMm = 0.0;        ///< chamfer: its leg
    double insideMm = 0.0;      ///< side: length of concrete along it
};

/// How many screws go where.
struct MouldScrews {
    int sides = 0;
    int formers = 0;
    int holdDowns = 0;
    int foam = 0;               ///< through the base into foam that lies on it (cast face up)
};

/// Fresh concrete against the sides.
struct MouldPressure {
    double heightMm = 0.0;          ///< of the concrete above the base
    double pressureKpa = 0.0;       ///< at the base: hydrostatic; of what stands the smaller of that and `codeKpa`
    double bracketMm = 0.0;         ///< spacing
    double bowMm = 0.0;             ///< of the worst side between two brackets, beam theory
    double stressMpa = 0.0;         ///< bending stress of the board there
    std::string rule;               ///< "hydrostatic" or "DIN 18218", whichever gave `pressureKpa`
    double hydrostaticKpa = 0.0;
    double codeKpa = 0.0;           ///< DIN 18218 (from memory); 0 where it lies
    double riseMPerH = 0.0;         ///< taken for it: what the mixer gives over the area; 0 where it lies
    std::string concreteClass;      ///< taken for it, "F3"
    double aciKpa = 0.0;            ///< ACI 347, for comparison; 0 where it lies or outside its scope
    double ciriaKpa = 0.0;          ///< CIRIA 108, for comparison; 0 where it lies
};

/// Both faces of a mould that stands are held together by rods from stud to stud. A stud bends over its rows of ties
/// as a simple span under the pressure at the foot of each span.
struct MouldTies {
    struct Row {
        double heightMm = 0.0;      ///< above the base; 0: the foot, which the base holds and no rod
        double forceN = 0.0;        ///< at one stud
        bool through = false;       ///< through the concrete, in a sleeve
    };
    std::vector<Row> rows;          ///< from the foot up; none of a mould that lies
    int across = 0;                 ///< pairs of studs: rods in each row above the foot
    double longestMm = 0.0;         ///< between two rows
    double bowMm = 0.0;             ///< of the worst stud
    double stressMpa = 0.0;
    int footScrews = 0;             ///< at each stud
};

/// How one casting relates to others that look alike: outline, zones, cutouts, where steel lies and how thick it is.
/// What the steel is made of does not count.
enum class TwinKind { same, mirror };
struct Twin {
    std::string casting;
    TwinKind kind = TwinKind::same;  ///< same: it may come out of this mould; mirror: it may not
};

/// What one can check standing at the mould: "stand at the front edge: the sink is on your right".
struct MouldCheck {
    /// Cutout id, "outline", "rib", "rim", "drip", "rebate", or empty: nothing tells left from right.
    std::string about;
    std::string what;               ///< purpose of the cutout, or the word of the feature
    std::string side;               ///< "left" or "right" of the mould
    double leftMm = 0.0;            ///< from the inside of the left side to the nearer edge of it
    double rightMm = 0.0;
    double frontMm = 0.0;
    double backMm = 0.0;
};

struct Mould {
    std::string casting;
    std::string part;
    bool mirrored = false;          ///< drawn as the mirror image of what one sees from above in the kitchen
    bool standing = false;          ///< the casting is poured standing; else lying
    Region inside;                  ///< of the casting in the mould frame, cutouts open
    double widthMm = 0.0;           ///< bounds of `inside`
    double depthMm = 0.0;
    double heightMm = 0.0;          ///< of the concrete
    std::vector<Zone> zones;        ///< of the casting in the mould frame, fromMm and toMm above the base
    double cutoutDraftMm = 0.0;     ///< how much narrower a former is at its top, each side
    /// Both diagonals of the largest rectangle of straight outer edges: what one measures to check square, mm. Of an
    /// outline that is no rectangle, between the corners listed.
    struct Diagonal { Point from; Point to; double lengthMm = 0.0; };
    std::vector<Diagonal> diagonals;
    std::vector<MouldPart> parts;   ///< in the order of assembly
    MouldPressure pressure;
    MouldTies ties;
    MouldScrews screws;
    /// Inside, from the parts alone (see mouldVolumeL). Less `draftL`, it equals the casting's; `edgesL`, which fillets
    /// and chamfers keep free of concrete, is not taken off.
    double volumeL = 0.0;
    double draftL = 0.0;            ///< more concrete than drawn, for formers are narrower at one end; may be negative
    double edgesL = 0.0;
    double sealedMm = 0.0;          ///< length of edges with silicone
    double siliconeMl = 0.0;
    double waxedMm = 0.0;           ///< edges of formers and strips
    double touchedM2 = 0.0;         ///< that release agent goes on
    double releaseMl = 0.0;
    /// Size range of the piece by the boards' tolerance, and where it is taken up.
    double leastWidthMm = 0.0, mostWidthMm = 0.0;
    double leastDepthMm = 0.0, mostDepthMm = 0.0;
    std::string takenUpBy;          ///< casting across the gap that takes it up, or empty
    double gapMm = 0.0;             ///< that gap as drawn
    double upliftN = 0.0;           ///< of the foam in fresh concrete, without its weight (F = V (fresh - foam) g)
    double holdDownN = 0.0;         ///< what it is held with: 1.5 times that
    bool handed = false;            ///< its mirror image is another piece, however turned
    std::vector<Twin> twins;
    MouldCheck check;
};

using MouldPtr = std::shared_ptr<const Mould>;

/// A memo of moulds by casting, for `mouldsOf`.
struct MouldMemo;

/// One mould a casting, same order. Pure. Findings: "former_no_draft", "side_bows", "mirror_twins",
/// "side_breaks", "edge_below_board", "base_longer_than_sheet", "strip_below_store", "foam_not_held",
/// "gap_within_tolerance", "draft_narrows_cutout", "rebate_near_steel".
std::vector<MouldPtr> mouldsOf(const Plan& plan, const std::vector<CastingPtr>& castings,
                               std::vector<Finding>& findings, std::shared_ptr<MouldMemo>* known = nullptr);

/// What the parts of a mould leave free between base and the top of the casting, l: from the parts alone, not from
/// `inside` or `zones`. 0 where its sides do not close.
double mouldVolumeL(const Mould& mould);

/// From the own frame of the casting's part to the mould frame, and back: from above for counters and for what is cast
/// standing (own x and y); own x and height above the base for supports and panels that are cast lying. `part` is the
/// casting's own.
Point toMould(const Casting& casting, const Part& part, Point own);
Point fromMould(const Casting& casting, const Part& part, Point mould);

}  // namespace yardcast
