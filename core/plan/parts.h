#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "core/geometry/point.h"
#include "core/geometry/region.h"
#include "core/plan/file_source.h"
#include "core/plan/moulding.h"

/// The five kinds of part a maker draws. Every length is mm in the part's own frame unless the name says otherwise.
/// `std::optional` marks what the file may leave out; the defaults stand beside and in resources/yardplan.schema.json.
namespace yardcast {

enum class PartKind { counter, support, panel, front, appliance };

/// A deeper strip along edges; edge i runs from outline point i to i+1. No `edges`: all of them.
struct Rim {
    double depthMm = 60.0;
    double widthMm = 60.0;
    std::optional<std::vector<int>> edges;
    FileSource source;
    friend bool operator==(const Rim&, const Rim&) = default;
};

/// Foam behind the field, level with the rim.
struct Filler {
    double densityKgM3 = 20.0;
    bool stays = true;
    FileSource source;
    friend bool operator==(const Filler&, const Filler&) = default;
};

/// A strip across the field, as deep as the rim.
struct Rib {
    Point from;
    Point to;
    double widthMm = 80.0;
    FileSource source;
    friend bool operator==(const Rib&, const Rib&) = default;
};

enum class CutoutPurpose { sink, hob, tap, drain, other };
enum class CutoutShape { rectangle, circle };

/// An opening through the slab. `size` serves the rectangle, `diameterMm` the circle.
struct Cutout {
    std::string id;
    CutoutPurpose purpose = CutoutPurpose::other;
    CutoutShape shape = CutoutShape::rectangle;
    Point centre;
    Size size;
    double diameterMm = 0.0;
    std::optional<double> turnDeg;         ///< default 0
    std::optional<double> cornerRadiusMm;  ///< default 0
    std::optional<double> rimMm;           ///< default 0: no rim
    FileSource source;
    friend bool operator==(const Cutout&, const Cutout&) = default;
};

/// Where a counter is divided into castings: a straight gap from edge to edge.
struct Joint {
    Point from;
    Point to;
    std::optional<double> gapMm;  ///< default kDefaultJointGapMm
    FileSource source;
    friend bool operator==(const Joint&, const Joint&) = default;
};
inline constexpr double kDefaultJointGapMm = 4.0;

/// What mesh and bars are made of. Glass (alkali resistant) and basalt stand for bars and grids of fibres in resin.
enum class SteelMaterial { steel, galvanised, stainless, glass, basalt };

struct Mesh {
    double barMm = 4.0;
    double pitchMm = 50.0;
    double coverMm = 20.0;  ///< from the face to the nearer bars
    FileSource source;
    SteelMaterial material = SteelMaterial::steel;
    friend bool operator==(const Mesh&, const Mesh&) = default;
};

/// `count` equal straight bars, `spacingMm` apart about the line from-to.
struct BarGroup {
    Point from;
    Point to;
    double diameterMm = 8.0;
    int count = 1;
    std::optional<double> spacingMm;  ///< default 40
    double coverMm = 20.0;
    FileSource source;
    SteelMaterial material = SteelMaterial::steel;
    friend bool operator==(const BarGroup&, const BarGroup&) = default;
};

struct Steel {
    std::optional<Mesh> mesh;
    std::vector<BarGroup> bars;
    FileSource source;
    friend bool operator==(const Steel&, const Steel&) = default;
};

struct PlacedLoad {
    std::string name;
    Point centre;
    Size size;
    double massKg = 0.0;
    FileSource source;
    friend bool operator==(const PlacedLoad&, const PlacedLoad&) = default;
};

/// How a casting is carried: lying, or standing on a long edge.
enum class CarryWay { flat, onEdge };

struct Lift {
    std::optional<double> ageH;    ///< default kDefaultLiftAgeH
    std::vector<Point> grips;
    std::optional<int> people;     ///< default: the crew
    CarryWay carry = CarryWay::flat;
    FileSource source;
    friend bool operator==(const Lift&, const Lift&) = default;
};
inline constexpr double kDefaultLiftAgeH = 48.0;

enum class CounterCast { faceDown, faceUp };
enum class Imposed { worktop, person };

/// A slab whose face lies at `topMm` above the datum. The outline is a simple ring of at least 3 points.
struct Counter {
    double topMm = 900.0;
    std::vector<Point> outline;
    double thicknessMm = 40.0;
    std::optional<Rim> rim;
    std::optional<Filler> filler;
    std::vector<Rib> ribs;
    std::vector<Cutout> cutouts;
    std::vector<Joint> joints;
    std::string mix;
    CounterCast cast = CounterCast::faceDown;
    std::optional<Steel> steel;
    std::vector<PlacedLoad> loads;
    std::optional<Imposed> imposed;  ///< default worktop
    std::optional<Lift> lift;
    std::optional<Drip> drip;
    std::optional<Rebate> rebate;
    friend bool operator==(const Counter&, const Counter&) = default;
};

/// Foam inside a support or panel, centred in it.
struct Core {
    double lengthMm = 0.0;
    double heightMm = 0.0;
    double thicknessMm = 0.0;
    double densityKgM3 = 20.0;
    FileSource source;
    friend bool operator==(const Core&, const Core&) = default;
};

struct Pads {
    int count = 4;
    Size size{80.0, 80.0};
    std::optional<double> thicknessMm;  ///< default kDefaultPadMm
    FileSource source;
    friend bool operator==(const Pads&, const Pads&) = default;
};
inline constexpr double kDefaultPadMm = 8.0;

enum class UprightCast { flat, upright };

/// Lies from its origin along its own x (length) and y (width); stands from `baseMm` up.
struct Support {
    double lengthMm = 600.0;
    double widthMm = 100.0;
    double baseMm = 0.0;
    double heightMm = 840.0;
    std::optional<Core> core;
    std::string mix;
    UprightCast cast = UprightCast::flat;
    std::optional<Pads> pads;
    friend bool operator==(const Support&, const Support&) = default;
};

/// An upright back or splash panel: along own x (length) and y (thickness).
struct Panel {
    double lengthMm = 1800.0;
    double thicknessMm = 40.0;
    double baseMm = 900.0;
    double heightMm = 300.0;
    std::optional<Core> core;
    std::string mix;
    UprightCast cast = UprightCast::flat;
    std::optional<Steel> steel;
    friend bool operator==(const Panel&, const Panel&) = default;
};

enum class BattenRun { upright, level };

struct Batten {
    double widthMm = 46.0;
    double thicknessMm = 27.0;
    double gapMm = 8.0;
    BattenRun run = BattenRun::upright;
    double bevelDeg = 0.0;
    std::string species;
    FileSource source;
    friend bool operator==(const Batten&, const Batten&) = default;
};

enum class HingeSide { left, right };

/// A door in a front, measured along it from its left end.
struct Door {
    double fromMm = 0.0;
    double toMm = 0.0;
    HingeSide hinges = HingeSide::left;
    FileSource source;
    friend bool operator==(const Door&, const Door&) = default;
};

/// The opening as measured on the day, mm.
struct MeasuredOpening {
    double bottomMm = 0.0;
    double topMm = 0.0;
    double leftMm = 0.0;
    double rightMm = 0.0;
    double diagonalRisingMm = 0.0;
    double diagonalFallingMm = 0.0;
    FileSource source;
    friend bool operator==(const MeasuredOpening&, const MeasuredOpening&) = default;
};

/// A batten front along the line from-to in its own frame; one looks at it from the right-hand side of from->to,
/// so with `from` on the left it faces the person who stands in front of the kitchen.
struct Front {
    Point from;
    Point to;
    double bottomMm = 60.0;
    double topMm = 840.0;
    Batten batten;
    std::vector<Door> doors;
    std::optional<MeasuredOpening> measured;
    friend bool operator==(const Front&, const Front&) = default;
};

/// Something bought that stands in the kitchen. From its origin along own x (width) and y (depth).
struct Appliance {
    std::optional<std::string> on;  ///< the counter it stands on; default: the ground
    Size size;
    double heightMm = 0.0;
    double massKg = 0.0;
    std::optional<double> surfaceC;
    std::optional<double> clearanceMm;
    friend bool operator==(const Appliance&, const Appliance&) = default;
};

using PartBody = std::variant<Counter, Support, Panel, Front, Appliance>;

struct Part {
    std::string id;
    std::optional<std::string> name;
    Placement place;
    PartBody body;
    FileSource source;

    PartKind kind() const { return static_cast<PartKind>(body.index()); }
    friend bool operator==(const Part&, const Part&) = default;
};

}  // namespace yardcast
