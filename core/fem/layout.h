#pragma once

#include <vector>

#include "core/fem/grid.h"
#include "core/fem/mesh.h"
#include "core/fem/path.h"
#include "core/fem/size_field.h"

namespace yardcast::fem {

/// Features nearer to each other than this share of the size asked for count as one.
inline constexpr double kSameShare = 0.2;
/// No edge is asked to be shorter than this share of the size asked for away from everything.
inline constexpr double kLeastShare = 0.04;

/// What the mesh has to follow, and how long its edges should be: the request, thought through.
struct Layout {
    std::vector<Path> paths;        ///< boundaries of the domain first; an earlier path has precedence
    std::vector<Meeting> meetings;
    std::vector<std::vector<int>> meetingsOf;  ///< a path: the meetings it takes part in
    SizeField asked;                ///< by the request alone
    SizeField sizes;                ///< lowered where features are close to each other
};

/// Whether a point of a path has to be a node: a corner, an end, or the end of a long side of a boundary. The others
/// are points of arcs, which may be divided anew.
bool isStation(const Path& path, int point, const SizeField& sizes);
/// The fewest edges that may stand for a part of a path where the size is `sizeMm`, by how far it turns and by the area
/// that a single one would cut off.
int leastEdges(const Path& path, double fromMm, double toMm, double sizeMm);

/// The request must be sound (finite, in reach). `plain`: boundaries are left as they are given, with no sides merged
/// and no arcs divided anew.
Layout layoutOf(const MeshRequest& request, Box bounds, bool plain);

}  // namespace yardcast::fem
