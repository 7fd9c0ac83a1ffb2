#pragma once

#include <array>
#include <string>
#include <vector>

#include "tests/reference/slab.h"

namespace yardcast::reference {

/// How finely a slab is cut into bricks.
struct SolidMeshing {
    double sizeMm = 60.0;    ///< greatest length of a brick in plan
    double fineMm = 6.0;     ///< beside the edges of rests and cutouts
    double growth = 0.4;
    int fieldLayers = 1;     ///< bricks through the field
    int deepLayers = 1;      ///< bricks through what rims and ribs are deeper
};

/// Bricks of 20 nodes (C3D20R) on three families of planes, x and y as the slab's own frame, z = 0 at the face, up.
class SolidMesh {
public:
    SolidMesh(const Slab& slab, const SolidMeshing& meshing);

    struct Brick {
        std::array<int, 3> cell;      ///< column in x, in y, layer from the face down
        std::array<int, 20> nodes;    ///< ids from 1
    };
    const std::vector<std::array<double, 3>>& nodes() const { return nodes_; }
    const std::vector<Brick>& bricks() const { return bricks_; }
    const std::vector<double>& xs() const { return xs_; }
    const std::vector<double>& ys() const { return ys_; }
    const std::vector<double>& zs() const { return zs_; }  ///< downwards from 0
    /// Index of the brick in a cell, -1 for none.
    int brickAt(int i, int j, int k) const;

private:
    std::vector<double> xs_, ys_, zs_;
    std::vector<std::array<double, 3>> nodes_;
    std::vector<Brick> bricks_;
    std::vector<int> brickOfCell_;
};

struct SolidAnswer {
    std::string trouble;               ///< empty when ccx finished and the contact settled
    int runs = 0;
    double seconds = 0.0;              ///< of all runs
    double deflectionMm = 0.0;         ///< largest downward
    double pressN = 0.0;               ///< sum of the bed's forces; equals the weight
    std::vector<double> restN;         ///< one a rest
    std::vector<CutForce> cuts;
    std::vector<FibreSample> fibres;   ///< one a column of bricks
    std::size_t bricks = 0;
    std::size_t nodes = 0;
    std::vector<std::array<double, 3>> bed;  ///< x, y, w of every node over a rest
};

/// Own weight on rests that press only: springs under the nodes over a rest, let go where they pull, until none does
/// and none that was let go would press. `first` says where to begin: a coarser answer of the same slab.
SolidAnswer solveSolid(const Slab& slab, const SolidMeshing& meshing, const SolidAnswer* first = nullptr);

}  // namespace yardcast::reference
