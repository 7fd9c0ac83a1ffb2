#pragma once

#include <memory>
#include <optional>
#include <stop_token>
#include <string>
#include <vector>

#include "core/fem/mesh.h"
#include "core/geometry/region.h"
#include "core/structure/strength_input.h"

/// What a casting goes through and whether it holds: the answer of the solver for one casting. mm, N, MPa, own frame of
/// the part (uprights: own x and height above the base).
namespace yardcast {

/// How fine the mesh is: while dragging, at rest, for paper.
enum class Refinement { draft, working, printed };
/// 50, 30, 20 mm away from corners, strips and rests.
double meshSizeMm(Refinement refinement);

/// The words of the contract are in `strengthCaseWord`.
enum class StrengthCase {
    ownWeight,      ///< own weight and `loads`, 28 days, on its rests, every factor 1
    inPlace,        ///< with appliances and imposed load, worst of even load and a person's load on many spots
    suction,        ///< breaking loose from the mould base, lifted at the grips
    tilt,           ///< from flat about a long edge
    carriedFlat,    ///< by the grips
    carriedOnEdge,
    setDown,        ///< on two rests near its ends
    cornerLate,     ///< the same, one corner let down last
    standing        ///< uprights: on pads
};
/// "own_weight", "in_place", ...
const char* strengthCaseWord(StrengthCase which);
/// The case of a word; nothing for other words.
std::optional<StrengthCase> strengthCaseOf(const std::string& word);

/// Where a named section or the worst place lies, in a form that wording can speak.
enum class PlaceKind {
    stripInFront, stripBehind, stripLeft, stripRight,  ///< beside cutout `a`; left and right as seen from the front
    middleOfSpan,                                      ///< between rests `a` and `b`
    over,                                              ///< over rest `a`
    overhang,                                          ///< beyond rest `a`
    corner,                                            ///< inner corner of cutout `a`, or of the outline (`a` empty)
    field, rim, body                                   ///< none of these
};
struct PlaceName {
    PlaceKind kind = PlaceKind::field;
    std::string a;
    std::string b;
    friend bool operator==(const PlaceName&, const PlaceName&) = default;
};
/// The contract's English words: "strip in front of K1", "strip behind K1", "strip left of K1", "middle of span S1-S2",
/// "over S1", "overhang beyond S1", "corner of K1", "field".
std::string placeWords(const PlaceName& place);

/// A straight cut right across a strip or the slab, and what passes through it. Per width of the cut in concrete.
struct SectionForces {
    PlaceName name;
    Point from;
    Point to;
    double meanMomentN = 0.0;       ///< Nmm per mm, about the centroid of the cut; positive: underside in tension
    double meanForceNMm = 0.0;      ///< N per mm, tension positive
    double meanShearNMm = 0.0;      ///< out of plane, N per mm
    double widthMm = 0.0;           ///< of concrete along the cut
    double tensionMpa = 0.0;        ///< largest extreme fibre tension along the cut
    double usePercent = 0.0;
};

/// Where a body is held in a case, and with how much.
struct HeldAt {
    std::string under;              ///< id of the support or panel below; "hand 1", "edge" ... in handling
    Region region;                  ///< area or strip it is held on
    Point centre;                   ///< of the force
    double forceN = 0.0;
    bool liftedOff = false;         ///< nothing presses here; where only a part is touched, `touchingShare` says it
    double touchingShare = 1.0;
};

/// For the drawing: figures at the nodes of the mesh.
struct StrengthField {
    TriangleMesh mesh;
    std::vector<double> usePercent;       ///< extreme fibre tension in the worse of both faces against strength
    std::vector<double> downMm;           ///< displacement, positive the way gravity acts in this case
    std::vector<double> tensionTopMpa;    ///< largest principal stress at the face (0 where in compression)
    std::vector<double> tensionBottomMpa; ///< at the underside in use
};

struct CaseResult {
    StrengthCase which = StrengthCase::ownWeight;
    double ageH = kFullAgeH;
    double factor = 1.0;            ///< of own weight
    double suctionKpa = 0.0;
    double elasticMpa = 0.0;
    double deflectionMm = 0.0;
    double tensionTopMpa = 0.0;     ///< face
    double tensionBottomMpa = 0.0;  ///< underside in use
    double strengthMpa = 0.0;       ///< flexural strength that may be used at that age, safety taken off
    double usePercent = 0.0;
    Point at;                       ///< of the greatest use
    PlaceName place;
    bool onFace = false;            ///< the greatest tension is at the face (else the underside)
    bool holds = true;              ///< false: it tips or nothing holds it; figures are then 0
    Point personAt;                 ///< inPlace: worst spot of the person's load, where that governs
    bool personGoverns = false;
    int edge = -1;                  ///< tilt, carriedOnEdge: edge of the outline it stands on
    bool faceUp = true;             ///< which way round it lay in this case
    std::vector<SectionForces> sections;
    std::vector<HeldAt> held;
    std::shared_ptr<const StrengthField> field;
};

/// What steel is worth at a section, in one case, per metre of width.
struct SteelCheck {
    StrengthCase which = StrengthCase::inPlace;
    PlaceName name;
    bool tensionAtFace = false;         ///< where steel is needed: at the face (else near the underside)
    double designMomentN = 0.0;         ///< with the factors of EN 1990, absolute
    double crackingMomentN = 0.0;
    double resistanceN = 0.0;           ///< of the cracked section with its steel where it lies
    double resistancePlainN = 0.0;      ///< EN 1992-1-1 section 12, no steel
    double resistanceBestN = 0.0;       ///< the same steel at its least cover on the side in tension
    double steelAreaMm2M = 0.0;
    double effectiveDepthMm = 0.0;
    double shearNMm = 0.0;
    double shearResistanceNMm = 0.0;
    double crackWidthMm = 0.0;          ///< 0 where it does not crack
    double deflectionCrackedMm = 0.0;
    bool breaksWithoutWarning = false;  ///< the cracked section carries less than the section that cracks
};

struct CastingStrength {
    std::string casting;
    std::string part;
    Refinement refinement = Refinement::draft;
    std::vector<CaseResult> cases;      ///< in the order of StrengthCase; a casting has those that make sense for it
    std::vector<SteelCheck> steel;
    std::vector<Point> grips;           ///< those of the plan, or the proposed ones
    bool gripsProposed = false;
    std::vector<Point> tiltHands;       ///< where hands lift it in the case tilt
    std::vector<Finding> findings;      ///< subjects: casting, part; pointer empty or within the part ("/cutouts/0")
    std::string whyNot;                 ///< code of why it was not solved; empty when it was

    const CaseResult* find(StrengthCase which) const;
    const CaseResult* worst() const;    ///< of the greatest use; null without cases
};

using CastingStrengthPtr = std::shared_ptr<const CastingStrength>;

/// Which cases to solve: while dragging, only those on the screen.
struct CaseChoice {
    bool inUse = true;      ///< ownWeight, inPlace, standing
    bool handling = true;   ///< all others
};

/// Solves a casting. Null when `stop` was asked meanwhile. Pure: equal inputs give equal answers.
CastingStrengthPtr solveStrength(const StrengthInput& input, Refinement refinement, CaseChoice choice = {},
                                 std::stop_token stop = {});

}  // namespace yardcast
