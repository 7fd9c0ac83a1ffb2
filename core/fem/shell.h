#pragma once

#include <array>
#include <memory>
#include <stop_token>
#include <vector>

#include "core/fem/mesh.h"

/// Flat shells of 6 degrees of freedom a node (u, v, w, turns about x, y, z): thin-plate bending and a membrane with
/// drilling freedom. x and y lie in the plane of the mesh, z points out of the face; nodes lie in the plane z = 0, the
/// face. mm, N, MPa.
namespace yardcast {

/// What one triangle is made of, per width: a single material between z = -depth and the face, holes between them
/// allowed. Where zones meet within a triangle, the three integrals are weighed by area.
struct ShellSection {
    double areaMm = 0.0;       ///< thickness of concrete: integral of dz, mm
    double centreMm = 0.0;     ///< z of its centroid (negative: below the face)
    double inertiaMm3 = 0.0;   ///< second moment about the centroid, mm4 per mm (t^3/12 for a solid one)
    double twistFactor = 1.0;  ///< reduces the twisting stiffness of compact strips (torsion of a bar, not a plate)
    /// Unit direction of the strip: the twist that is reduced is that along and across it.
    std::array<double, 2> twistAlong{1.0, 0.0};

    /// Sine and cosine of twice the angle of the strip.
    double twistSine() const { return 2 * twistAlong[0] * twistAlong[1]; }
    double twistCosine() const { return twistAlong[0] * twistAlong[0] - twistAlong[1] * twistAlong[1]; }
};

struct ShellModel {
    TriangleMesh mesh;
    std::vector<ShellSection> sections;  ///< one a triangle
    double elasticMpa = 30000.0;
    double poisson = 0.2;
};

/// A linear spring to the ground at a node, one stiffness a freedom (N/mm, Nmm/rad).
struct NodeSpring {
    int node = 0;
    std::array<double, 6> stiffness{};
};

/// A bed under a region of the plane, N/mm per mm2.
struct ContactBed {
    Region region;
    double bedNMm3 = 0.0;
};

/// A bed under a node that presses (along +z) and never pulls. It takes hold when w goes below -gap.
struct ContactSpring {
    int node = 0;
    double stiffnessNMm = 0.0;
    double gapMm = 0.0;
    /// The bed that this spring is the node's share of: it then presses where the slab between its nodes goes into
    /// it, to the fraction of a triangle. (A slab that turns over the edge of its rest bears on some 10 mm there.
    /// Springs at nodes 14 mm apart put that force onto the edge: spans, and moments by 2 %, come out too small.)
    /// Springs of all nodes with a share must be there, with one stiffness per area.
    std::shared_ptr<const ContactBed> bed = nullptr;
};
/// Springs of a bed for all nodes that it has a share of.
std::vector<ContactSpring> contactSprings(const TriangleMesh& mesh, const Region& region, double bedNMm3,
                                          double gapMm = 0.0);

/// Forces and moments on the nodes, 6 a node, in the order of the freedoms.
using NodeVector = std::vector<double>;

struct ShellSolution {
    NodeVector displacement;               ///< 6 a node
    std::vector<double> contactN;          ///< one a contact spring, >= 0
    int contactSteps = 0;
    /// False: too little holds it (it tips); displacements and contact forces are all zero then.
    bool settled = false;
};

/// Stress resultants per width in the frame of the mesh, at one place of a triangle. Moments are about the centroid of
/// the section and positive where the underside (low z) is in tension, N (Nmm per mm); forces N/mm, tension positive.
/// `shear` is the out-of-plane shear force per width, the integral of the stresses xz and yz; it follows from the
/// change of the moments, which is constant in a triangle: a coarse figure.
struct ShellForces {
    std::array<double, 3> force{};   ///< x, y, xy
    std::array<double, 3> moment{};  ///< x, y, xy
    std::array<double, 2> shear{};   ///< xz, yz
};

/// One body, factorised once with all its contact springs in, for any number of load cases.
class ShellSystem {
public:
    /// Linear springs must hold the body (in the plane too); null where they do not or a section is no section.
    /// Null as well when `stop` is asked meanwhile.
    static std::unique_ptr<ShellSystem> make(ShellModel model, std::vector<NodeSpring> springs,
                                             std::vector<ContactSpring> contacts, std::stop_token stop = {});
    ~ShellSystem();

    /// Displacements and contact under the load. Contacts that would pull are let go (active set on the flexibility of
    /// the contact nodes; no refactorisation).
    ShellSolution solve(const NodeVector& load) const;
    /// Many loads at once: the same answers, faster than one by one.
    std::vector<ShellSolution> solve(const std::vector<NodeVector>& loads) const;

    /// Resultants at the three corners of each triangle.
    std::vector<std::array<ShellForces, 3>> forces(const NodeVector& displacement) const;
    /// The same for some triangles only, in their order.
    std::vector<std::array<ShellForces, 3>> forces(const NodeVector& displacement,
                                                   const std::vector<int>& triangles) const;
    /// Sum of forces (N) and moments about the origin (Nmm) that springs and contacts put on the body: equilibrium is
    /// this plus the load being zero.
    std::array<double, 6> reaction(const ShellSolution& solution) const;

    const ShellModel& model() const;
    const std::vector<ContactSpring>& contacts() const;

private:
    struct Parts;
    explicit ShellSystem(std::unique_ptr<Parts> parts);
    std::unique_ptr<Parts> parts_;
};

/// Consistent nodal loads of a force per area (three components, MPa) on each triangle; the force acts at height
/// `zMm[i]` of triangle i (its lever about the nodes is included). Sizes as the mesh's triangles.
NodeVector surfaceLoad(const ShellModel& model, const std::vector<std::array<double, 3>>& pressureMpa,
                       const std::vector<double>& zMm);
/// A force spread evenly over a region of the plane (exactly by the area of each triangle within it); its z lever as
/// above. Where no part of the region lies on the mesh it goes to the nearest node.
NodeVector patchLoad(const ShellModel& model, const Region& region, std::array<double, 3> forceN, double zMm);
/// Area of the region that falls to each node (mm2), exact by clipping: the sum is the area common to both.
std::vector<double> nodeAreas(const TriangleMesh& mesh, const Region& region);

}  // namespace yardcast
