#pragma once

#include <array>

#include "core/fem/shell.h"

/// One flat triangle of 18 degrees of freedom: 6 a corner (u, v, w, turns about x, y, z) at the corner in z = 0.
namespace yardcast::fem {

using Corners = std::array<Point, 3>;
/// 18 x 18, symmetric, row by row.
using ElementStiffness = std::array<double, 324>;
using ElementDisplacement = std::array<double, 18>;

/// Bending: discrete Kirchhoff triangle (Batoz, Bathe, Ho, Int. J. Numer. Meth. Engng 15 (1980) 1771-1812). Membrane
/// with drilling freedoms: optimal triangle (Felippa, Comput. Methods Appl. Mech. Engrg. 192 (2003) 2125-2168), alpha_b
/// 3/2 and beta_0 = max((1 - 4 nu^2) / 2, 0.01); both from memory of the papers, held by patch tests. The section's
/// centroid hangs on the corners by rigid links. Corners counter-clockwise.
void elementStiffness(const Corners& corners, const ShellSection& section, double elasticMpa, double poisson,
                      ElementStiffness& stiffness);

/// Resultants at the three corners, all linear in the triangle.
std::array<ShellForces, 3> elementForces(const Corners& corners, const ShellSection& section, double elasticMpa,
                                         double poisson, const ElementDisplacement& displacement);

}  // namespace yardcast::fem
