#pragma once

#include <array>
#include <optional>
#include <vector>

#include "core/structure/body.h"
#include "core/structure/fibres.h"

namespace yardcast {

/// Stress at face and underside (x, y, xy), MPa.
struct FibreStress {
    std::array<double, 3> face{};
    std::array<double, 3> underside{};
};

/// The stress that a design counts with, from the forces in the triangles. At a place it is that of the plane which
/// fits the stress best, by weighted least squares, within one and a half thicknesses about it (at least
/// `kLeastReachMm`), within the body and within one kind of section. What a single node has depends on the triangles
/// that happen to meet there; over a length that is the slab's own it does not, and a plane loses nothing of a stress
/// that grows evenly towards an edge. Beside a deeper section, where a thin shell's stress has a step or grows without
/// end, the plane is followed only so far that the value is the mean over the reach: there it counts as at inner
/// corners, averaged.
///
/// Looked for the greatest are places that belong to the body and not to its mesh (its edges, steps in depth, edges of
/// rests, circles about inner corners, and what the caller adds), and the nodes between them.
class DesignStress {
public:
    /// `also` are places to look at besides. The others must live as long as this does.
    DesignStress(const Body& body, const std::vector<std::array<ShellForces, 3>>& forces, const StressField& field,
                 const std::vector<Point>& also = {});

    /// Of a kind of section at a place in it or on its edge; the kind must be there.
    FibreStress at(Point place, int kind);
    /// The design value of an inner corner, see `InnerCorner`: of each face the greatest of its crack lines.
    FibreTension atCorner(int corner);

    /// The greatest use in percent and where.
    GreatestUse greatestUse(const std::vector<double>& strengthMpa);
    /// The greatest tension at the face and at the underside.
    FibreTension greatestTension();

    /// What counts at a node for a drawing: as at any place where that is known already; else what the triangles that
    /// meet there have, but no more than the greatest.
    FibreTension drawnAt(int node, int kind);

    static constexpr double kLeastReachMm = 40.0;

private:
    /// Face stress and stress per mm of depth of a kind of section at the corners of a triangle.
    struct CornerStress {
        std::array<double, 6> at[3];
        bool known = false;
    };
    /// A place to look at, with the tension that the nodes about it have.
    struct Candidate {
        Point at;
        int kind = 0;
        FibreTension bare;
        FibreTension told;
        bool isTold = false;
    };
    fibres::CornerTension alongLines(int corner);
    void gather(Point low, Point high);
    const std::vector<fibres::CornerTension>& corners();
    void fillCandidates(const std::vector<Point>& also);
    FibreTension bareTension(const PlaceInMesh& place, int kind) const;
    const CornerStress& stressOf(int triangle, int kind);
    template <typename Measure, typename Visit>
    void seek(double least, Measure measure, Visit visit);

    const Body& body_;
    const std::vector<std::array<ShellForces, 3>>& forces_;
    const StressField& field_;
    std::vector<CornerStress> stresses_;
    std::vector<Candidate> candidates_;
    std::vector<int> candidateOf_;   ///< node * kinds + kind; -1 where there is none
    std::vector<fibres::CornerTension> corners_;
    std::optional<FibreTension> greatest_;
    std::vector<int> seen_;   ///< of each triangle, the place it was last gathered for
    int places_ = 0;
    std::vector<int> near_;
};

}  // namespace yardcast
