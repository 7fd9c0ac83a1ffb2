#pragma once

#include <array>
#include <memory>
#include <optional>
#include <vector>

#include "core/fem/shell.h"
#include "core/materials/gravity.h"
#include "core/structure/strength.h"
#include "core/structure/triangle_index.h"

/// A casting as a body of shells, for all cases it goes through. mm, N, MPa, own frame of the part (uprights: own x and
/// height above the base; the front is the face). z = 0 is the face, everything hangs from it (z < 0).
namespace yardcast {

/// One kind of section in a casting: all concrete zones of the same depths.
struct SectionKind {
    ZoneKind kind = ZoneKind::field;  ///< of the first zone of its sort
    double depthMm = 0.0;             ///< of the concrete that bends as one piece: strength depends on it (eq. 3.23)
    double undersideMm = 0.0;         ///< z of the underside, negative
    /// A cored upright has two skins of `depthMm`: they stretch together but each bends by itself (the foam between
    /// them carries no shear). That is on the safe side for its stiffness and for the solid border.
    bool skins = false;
    ShellSection section;
    double massKgMm2 = 0.0;           ///< concrete, steel smeared over all, foam that stays
    double massZMm = 0.0;             ///< height of its centroid
};

/// What the corners of a triangle count for in a weighted mean over a kind of section.
struct TriangleWeight {
    int triangle = 0;
    int kind = 0;
    std::array<double, 3> weight{};
};

/// A line on which a crack would run from a re-entrant corner into the concrete, one thickness long.
struct CrackLine {
    Point from;
    Point inward;                       ///< unit direction
    std::vector<PlaceInMesh> samples;   ///< evenly along it
    /// Weights of sum 1 over a strip about it; none in a coarse body, nor where there is no concrete.
    std::vector<TriangleWeight> strip{};
    int stripKind = 0;                  ///< the kind of section that most of the strip is
};

/// A re-entrant corner of the boundary, sharp or rounded: where cracks begin. A thin shell's stress grows without end
/// at a sharp one, and at a rounded one it means little within a thickness; so what counts there is the principal
/// tension of the stress averaged over a length of one thickness, along the worst crack line. For the answer
/// (`DesignStress`) that mean is taken over a strip 0.8 thicknesses wide about the line, 1.15 long, with weights that
/// fade to its sides and its end: as much as along the line itself, but with triangles enough in it not to depend on
/// how they lie (in 1,200 steps of a drag the line alone moved by up to 12 %).
struct InnerCorner {
    std::vector<Point> along;       ///< the arc; one point where it is sharp
    std::vector<CrackLine> lines;
    double thicknessMm = 0.0;
    std::string of;                 ///< id of the cutout; empty for the outline
};

/// A place where stress is looked at whatever the mesh: on an edge of the body or of a kind of section, on the edge of a
/// rest, on the circle about an inner corner within which the corner itself counts.
struct StressMark {
    Point at;
    int kind = 0;
    PlaceInMesh place;
};

/// A casting meshed and weighed. What it is held by and loaded with is the business of the case.
struct Body {
    StrengthInput input;
    Refinement refinement = Refinement::draft;
    ShellModel model;                 ///< elasticMpa is that of 28 days: change it in a copy for another age
    std::vector<SectionKind> kinds;   ///< one to three
    std::vector<double> share;        ///< of each triangle's area: triangle * kinds.size() + kind, sum 1
    std::vector<std::array<double, 3>> angle;  ///< of each triangle's corners, rad: what they count for at their nodes
    std::vector<double> massKgMm2;    ///< of each triangle
    std::vector<double> massZMm;
    std::vector<InnerCorner> corners;
    std::vector<int> cornerOfNode;    ///< the corner that a node lies so near to that its own stress means nothing; -1
    std::vector<StressMark> marks;    ///< none in a coarse body
    TriangleIndex index;              ///< which triangle lies where
    Point centroid;                   ///< of its mass
    double massKg = 0.0;              ///< that of the casting, exactly

    const TriangleMesh& mesh() const { return model.mesh; }
    int kindCount() const { return static_cast<int>(kinds.size()); }
    /// Whether a triangle has so much of a kind of section that its stress tells that kind's: a sliver of a deep strip
    /// in a triangle of thin slab bends as the slab does. Of up to three kinds one always has as much.
    bool tells(int triangle, int kind) const
    {
        return share[static_cast<std::size_t>(triangle) * kinds.size() + static_cast<std::size_t>(kind)] >= 0.33;
    }
};

/// Meshes a casting. Rests, loads, zones and `alsoLines`/`alsoPoints` (grips, edges it is set down on) are followed by
/// the mesh; `alsoFine` refines it. Null where it cannot be meshed.
std::shared_ptr<const Body> makeBody(const StrengthInput& input, Refinement refinement,
                                     const std::vector<Ring>& alsoLines = {}, const std::vector<Point>& alsoPoints = {},
                                     const std::vector<FinePlace>& alsoFine = {});

/// The same, coarse: for telling the worst of many loads or ways quickly. Its figures are no answers.
std::shared_ptr<const Body> makeCoarseBody(const StrengthInput& input, const std::vector<Ring>& alsoLines = {},
                                           const std::vector<Point>& alsoPoints = {});

/// Own weight (N) along `down` (a unit vector), times `factor`, acting where the mass is.
NodeVector ownWeightLoad(const Body& body, std::array<double, 3> down, double factor);
/// Three springs in the plane that hold it from sliding and turning there and from nothing else: statically
/// determinate, so without a load in the plane there is no force in them.
std::vector<NodeSpring> inPlaneHold(const Body& body);
/// Contact springs under a region: bed (N/mm3) times the area that falls to each node, exact.
std::vector<ContactSpring> bedUnder(const Body& body, const Region& region, double bedNMm3);
/// The node nearest to a point.
int nearestNode(const Body& body, Point at);

/// Strength and stiffness in a case.
struct CaseSetting {
    StrengthCase which = StrengthCase::ownWeight;
    double ageH = kFullAgeH;
    double factor = 1.0;
    double suctionKpa = 0.0;
    std::array<double, 3> down{0.0, 0.0, -1.0};  ///< which way gravity acts, in the frame of the body
    bool faceUp = true;
};

/// Bending stress per mm of depth (x, y, xy) of moments per width. A compact strip's greatest shear stress in torsion,
/// at a given twist, is less than a plate's by about the root of its factor (a square bar: 0.68 for a factor of 0.42;
/// Roark, from memory).
std::array<double, 3> stressPerMm(const ShellSection& section, const std::array<double, 3>& moment);

/// Stress at the extreme fibres over the mesh: averaged at the nodes within each kind of section, never over a step
/// in thickness. It depends on how the triangles lie; what an answer says is `DesignStress`.
struct StressField {
    /// Stress at the face and how fast it grows downwards (x, y, xy): node * kinds + kind. `there` tells whether the
    /// node has that kind at all.
    std::vector<std::array<double, 3>> atFace;
    std::vector<std::array<double, 3>> perMm;
    std::vector<char> there;
};
StressField stressField(const Body& body, const std::vector<std::array<ShellForces, 3>>& forces);
/// Largest principal tension (0 where there is none) at face and underside of a kind of section at a node.
struct FibreTension {
    double topMpa = 0.0;
    double bottomMpa = 0.0;
};
FibreTension fibreTension(const Body& body, const StressField& field, int node, int kind);

/// A straight cut across the body, to be named in the answer.
struct NamedCut {
    PlaceName name;
    Point from;
    Point to;
};
/// In front of, behind, left and right of each cutout: across the strip at the middle of the cutout.
std::vector<NamedCut> stripCuts(const Body& body);
/// Between neighbouring rests, over each of them, and where the slab overhangs them.
std::vector<NamedCut> restCuts(const Body& body);
/// What passes through a cut, by the equilibrium of the nodes on its left; it must end at free edges.
/// `strengthMpa` by kind of section. Nothing where it crosses no concrete.
std::optional<SectionForces> sectionForces(const Body& body, const ShellSystem& system, const ShellSolution& solution,
                                           const StressField& field, const NamedCut& cut,
                                           const std::vector<double>& strengthMpa);

/// Flexural strength that may be used, by kind of section: (1.6 - h/1000) fctk,0.05(t) / crack safety.
std::vector<double> usableStrengthMpa(const Body& body, double ageH);

/// Everything of a case that follows from its displacements: deflection, tensions, use and where, the cuts' forces,
/// the field for the drawing. `held` is left to the caller; `holds` is false where the solution has not settled, and
/// then nothing else is filled. `also` are places to look at besides those of `DesignStress`: under single loads.
CaseResult caseResult(const Body& body, const ShellSystem& system, const ShellSolution& solution,
                      const CaseSetting& setting, const std::vector<NamedCut>& cuts,
                      const std::vector<Point>& also = {});
/// The greatest use in percent and where.
struct GreatestUse {
    double percent = 0.0;
    Point at;
    bool onFace = false;
    int kind = 0;
    double tensionMpa = 0.0;
    int corner = -1;            ///< index of the inner corner where it is, or -1
};
/// By the bare nodes: for comparing many loads, not for answers.
GreatestUse greatestUse(const Body& body, const StressField& field, const std::vector<double>& strengthMpa);

}  // namespace yardcast
