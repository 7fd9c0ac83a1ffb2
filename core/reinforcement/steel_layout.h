#pragma once

#include <memory>
#include <string>
#include <unordered_map>
#include <vector>

#include "core/castings/casting.h"

/// Where every sheet of mesh and every bar of a casting lies and what it is cut to. mm, in the own frame of the part
/// (counter: plan as it stands, seen from above; panel: own x and height above its base, seen from the front).
namespace yardcast {

/// What distances are measured from while the steel is laid.
enum class SteelDatum {
    mouldBase,  ///< cast flat: height above the mould base, to the nearest side of the steel
    frontWall   ///< cast upright: from the mould wall at the front
};

/// Where in the thickness a layer lies, by its axis: nearer to the face than 0.4 of the thickness, farther than 0.6, or
/// between, where steel is worth next to nothing in bending.
enum class SteelSide { face, middle, underside };

/// How far a layer lies off when the piece is poured, and where that is in use.
struct SteelHeight {
    double distanceMm = 0.0;  ///< from the datum to the nearest side of the steel
    double spacerMm = 0.0;    ///< from the steel to what is below it while poured: the base, or the foam of a filler
    double coverFaceMm = 0.0;  ///< from the face to the steel: what the plan says
    double coverBackMm = 0.0;  ///< what is left behind it in the thinnest concrete it lies in
    double thicknessMm = 0.0;  ///< that thinnest concrete
    SteelSide side = SteelSide::middle;
};

/// A piece cut from a sheet of mesh and laid.
struct MeshPiece {
    int mark = 1;              ///< from 1; pieces cut alike share one
    Box at;                    ///< as laid, laps included
    Region shape;              ///< what of it stays: within the cover, cutouts open
    std::vector<Ring> notches; ///< what is cut away from the rectangle: corners, cutouts
    int sheet = 0;             ///< from which sheet of the casting, from 0
    Point onSheet;             ///< low corner on that sheet
    bool turnedOnSheet = false;  ///< laid a quarter turn from how it lies on the sheet
};

struct MeshLayout {
    double barMm = 0.0;
    double pitchMm = 0.0;
    SteelMaterial material = SteelMaterial::steel;
    Size sheet{2000.0, 1000.0};
    int sheets = 0;            ///< cut into `pieces`; offcuts of one casting are not used for another
    double lapMm = 0.0;        ///< where pieces meet
    SteelHeight height;
    std::vector<MeshPiece> pieces;
};

/// One straight bar as laid.
struct LaidBar {
    int mark = 1;
    Point from;
    Point to;
    double diameterMm = 0.0;
    SteelMaterial material = SteelMaterial::steel;
    SteelHeight height;
    int group = -1;            ///< index in the plan's `bars`; -1 for a suggested corner bar
};

/// A bar that the program suggests across the crack that would begin at an inner corner, where the plan has none.
struct CornerBar {
    LaidBar bar;
    Point corner;
    std::string of;            ///< id of the cutout; empty for the outline
    double anchorageMm = 0.0;  ///< wanted on either side of the crack (EN 1992-1-1 8.4)
    double anchoredShare = 0.0;  ///< of that which the shorter side has; below 1 the slab is too narrow there
};

/// A line of the bar list: bars that are the same.
struct BarListRow {
    int mark = 1;
    SteelMaterial material = SteelMaterial::steel;
    double diameterMm = 0.0;
    std::string shapeCode = "00";  ///< BS 8666: straight
    int count = 0;
    double lengthMm = 0.0;          ///< the room it has between its covers
    double cutLengthMm = 0.0;       ///< down to whole 5 mm, so that no cover gets thinner
    double scheduledLengthMm = 0.0; ///< up to whole 25 mm, as a schedule for ordering has it (BS 8666)
    double massKg = 0.0;            ///< of all, by `cutLengthMm`
    bool suggested = false;         ///< corner bars: not in the plan, so not in its masses nor bought
};

struct CastingSteelLayout {
    std::string casting;
    std::string part;
    SteelDatum datum = SteelDatum::mouldBase;
    bool faceDown = true;           ///< the face (front of a panel) lies on the mould base
    std::vector<MeshLayout> meshes; ///< none or one
    std::vector<LaidBar> bars;      ///< in the order of the plan
    std::vector<CornerBar> cornerBars;
    std::vector<BarListRow> barList;  ///< by mark: bars of the plan, then the suggested ones
};

using CastingSteelLayoutPtr = std::shared_ptr<const CastingSteelLayout>;

/// `fctk005Mpa`: of the concrete at 28 days, for anchorage. `part` is the casting's part: a counter or panel; for
/// others, and for those without steel, nothing is laid. Suggested corner bars only where the plan has any steel: a
/// maker who wants none is told elsewhere what that means.
CastingSteelLayout castingSteelLayout(const Casting& casting, const Part& part, double fctk005Mpa);

/// Layouts that were worked out before, by casting: one that is the same object belongs to a part that did not change.
class SteelLayouts {
public:
    CastingSteelLayoutPtr of(const CastingPtr& casting, const Part& part, double fctk005Mpa);
    /// Forgets those that were not asked for since the last call.
    void endRound();

private:
    struct Known {
        CastingPtr casting;
        double fctk005Mpa = 0.0;
        CastingSteelLayoutPtr layout;
    };
    std::unordered_map<const Casting*, Known> before_;
    std::unordered_map<const Casting*, Known> now_;
};

}  // namespace yardcast
