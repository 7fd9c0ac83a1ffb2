#pragma once

#include <string>
#include <vector>

#include "core/mould/mould.h"
#include "core/plan/moulding.h"

/// The steps by which a mould is made of a casting. For core/mould only.
namespace yardcast::mould_making {

/// A straight or bent stretch of the outline that one side stands along, counter-clockwise in the mould frame.
struct Stretch {
    Ring points;           ///< two where it is straight; closed where it is the whole outline
    bool bent = false;
    bool closed = false;
    double lengthMm() const;
};

/// How fast a mould fills, and how warm.
struct Filling {
    double riseLPerH = 0.0;      ///< what the mixer gives
    double concreteC = 20.0;
    friend bool operator==(const Filling&, const Filling&) = default;
};

/// What the steps share. `parts` of the mould are appended in no order; `ordered` brings them into it.
struct Making {
    const Casting& casting;
    const Part& part;
    Moulding how;
    Filling filling;
    Mould mould;
    Ring outline;                ///< counter-clockwise, as if no cutout came through the edge
    Region outlineRegion;
    std::vector<Stretch> stretches;
    bool faceUp = false;

    const Counter* counter() const { return std::get_if<Counter>(&part.body); }
    /// Heights above the base of what lies from `fromMm` to `toMm` below the face.
    double lowMm(double fromMm, double toMm) const { return faceUp ? mould.heightMm - toMm : fromMm; }
    double highMm(double fromMm, double toMm) const { return faceUp ? mould.heightMm - fromMm : toMm; }
};

/// Whether it is drawn mirrored.
bool isMirrored(const Part& part);
Ring ringInMould(const Casting& casting, const Part& part, const Ring& ring);
Region regionInMould(const Casting& casting, const Part& part, const Region& region);

/// Outline, inside, zones, sizes.
void layDown(Making& making);
/// Base, sides, chamfer strips.
void addBaseAndSides(Making& making);
/// Base boards: one, or several on cleats where no usual sheet is as large.
void addBase(Making& making);
/// Formers, fillers, cores with their spacers, strips for drip grooves and rebates.
void addInside(Making& making);
/// Pressure, brackets, ties, hold-downs, screws.
void addHolding(Making& making);
/// Of a mould that stands, once its brackets are there: ties from stud to stud, and the battens along its foot.
void addTies(Making& making);
/// Sizes to saw as one measures them off; see MouldPart::lengthMm.
void roundBlanks(Mould& mould);
/// Silicone, wax, release agent, diagonals, what the edges keep free.
void reckonSurfaces(Making& making);
/// Parts in the order of assembly, with their steps and names.
void putInOrder(Mould& mould);

/// "front", "back", "left", "right" of the mould by a direction that points out of it.
const char* sideWord(Point outwards);
/// Counter-clockwise, without points that say nothing.
Ring tidied(Ring ring);
/// The smallest size that an axis-parallel rectangle must have; `shaped` tells whether the region is another shape.
struct Blank {
    double lengthMm = 0.0;
    double widthMm = 0.0;
    bool shaped = false;
};
Blank blankOf(const Region& region);
Region rectangle(Point low, Point high);
/// Of a region that runs along the axes, holes left out of account: rectangles over its whole depth or width between its
/// corners, the way that takes fewer. Empty of any other.
std::vector<Box> rectanglesOf(const Region& region);
/// The usual sheet, mm; longer bases are joined. Common practice, no source.
inline constexpr double kUsualSheetLengthMm = 2500.0;
inline constexpr double kUsualSheetWidthMm = 1250.0;

/// How the casting looks to one who tells left from right; see Mould::check and Mould::handed.
MouldCheck checkOf(const Casting& casting, const Part& part, const Mould& mould);
/// What a casting looks like from its face, in four turns, and its mirror image. Cutouts count, and where steel lies;
/// what the steel is made of does not.
struct Shape {
    std::vector<long long> sizes;                 ///< what turning and mirroring keep
    std::vector<std::vector<long long>> turned;
    std::vector<long long> mirrored;
};
Shape shapeOf(const Casting& casting, const Part& part);
bool isSame(const Shape& a, const Shape& b);
bool isMirrorImage(const Shape& a, const Shape& b);

/// Everything of a mould that its casting alone decides.
Mould makeMould(const Casting& casting, const Part& part, const Moulding& how, const Filling& filling);

/// What the moulds of a plan have to say.
void addMouldFindings(const Plan& plan, const Moulding& how, const std::vector<CastingPtr>& castings,
                      const std::vector<MouldPtr>& moulds, std::vector<Finding>& findings);

}  // namespace yardcast::mould_making
