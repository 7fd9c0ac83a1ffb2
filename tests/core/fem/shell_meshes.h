#pragma once

#include <cmath>
#include <functional>
#include <vector>

#include "core/fem/shell.h"

/// Plain meshes and supports for tests of shells.
namespace yardcast::testing_shells {

enum class Diagonals { same, alternating };

/// Rectangle from the origin, nx x ny cells of two triangles; node (i, j) is j (nx + 1) + i. `shift` moves the nodes.
inline TriangleMesh gridMesh(double width, double depth, int nx, int ny, Diagonals diagonals = Diagonals::same,
                             const std::function<Point(Point)>& shift = {})
{
    TriangleMesh mesh;
    for (int j = 0; j <= ny; ++j)
        for (int i = 0; i <= nx; ++i) {
            const Point p{width * i / nx, depth * j / ny};
            mesh.nodes.push_back(shift ? shift(p) : p);
        }
    for (int j = 0; j < ny; ++j)
        for (int i = 0; i < nx; ++i) {
            const int a = j * (nx + 1) + i;
            const int b = a + 1;
            const int c = b + nx + 1;
            const int d = a + nx + 1;
            if (diagonals == Diagonals::same || (i + j) % 2 == 0) {
                mesh.triangles.push_back({a, b, c});
                mesh.triangles.push_back({a, c, d});
            } else {
                mesh.triangles.push_back({a, b, d});
                mesh.triangles.push_back({b, c, d});
            }
        }
    return mesh;
}

inline ShellSection solid(double thicknessMm, double topMm = 0.0)
{
    return {thicknessMm, topMm - thicknessMm / 2, std::pow(thicknessMm, 3) / 12, 1.0};
}

inline ShellModel uniformModel(TriangleMesh mesh, const ShellSection& section, double elasticMpa, double poisson)
{
    ShellModel model;
    model.sections.assign(mesh.triangles.size(), section);
    model.mesh = std::move(mesh);
    model.elasticMpa = elasticMpa;
    model.poisson = poisson;
    return model;
}

/// Freedoms by name.
enum Freedom { u = 0, v = 1, w = 2, turnX = 3, turnY = 4, turnZ = 5 };

inline std::vector<NodeSpring> held(const TriangleMesh& mesh, const std::function<bool(Point)>& where,
                                    const std::vector<Freedom>& freedoms, double stiffness)
{
    std::vector<NodeSpring> springs;
    for (std::size_t i = 0; i < mesh.nodes.size(); ++i) {
        if (!where(mesh.nodes[i])) continue;
        NodeSpring s{int(i), {}};
        for (const Freedom f : freedoms) s.stiffness[std::size_t(f)] = stiffness;
        springs.push_back(s);
    }
    return springs;
}

inline std::vector<NodeSpring> operator+(std::vector<NodeSpring> a, const std::vector<NodeSpring>& b)
{
    a.insert(a.end(), b.begin(), b.end());
    return a;
}

inline int nodeAt(const TriangleMesh& mesh, Point p)
{
    std::size_t best = 0;
    for (std::size_t i = 0; i < mesh.nodes.size(); ++i)
        if (distance(mesh.nodes[i], p) < distance(mesh.nodes[best], p)) best = i;
    return int(best);
}

inline double at(const NodeVector& d, int node, Freedom f) { return d[std::size_t(node) * 6 + std::size_t(f)]; }

inline NodeVector uniformLoad(const ShellModel& model, std::array<double, 3> mpa, double zMm = 0.0)
{
    return surfaceLoad(model, std::vector<std::array<double, 3>>(model.mesh.triangles.size(), mpa),
                       std::vector<double>(model.mesh.triangles.size(), zMm));
}

/// Mean over the triangles' corners at a node.
inline ShellForces forcesAt(const TriangleMesh& mesh, const std::vector<std::array<ShellForces, 3>>& forces, int node)
{
    ShellForces mean;
    int count = 0;
    for (std::size_t t = 0; t < mesh.triangles.size(); ++t)
        for (std::size_t k = 0; k < 3; ++k) {
            if (mesh.triangles[t][k] != node) continue;
            ++count;
            for (std::size_t i = 0; i < 3; ++i) {
                mean.force[i] += forces[t][k].force[i];
                mean.moment[i] += forces[t][k].moment[i];
            }
        }
    for (std::size_t i = 0; i < 3; ++i) {
        mean.force[i] /= count;
        mean.moment[i] /= count;
    }
    return mean;
}

/// Sum of a load and its moments about the origin.
inline std::array<double, 6> resultant(const TriangleMesh& mesh, const NodeVector& load)
{
    std::array<double, 6> sum{};
    for (std::size_t i = 0; i < mesh.nodes.size(); ++i) {
        const double* const f = &load[i * 6];
        const Point p = mesh.nodes[i];
        for (std::size_t k = 0; k < 6; ++k) sum[k] += f[k];
        sum[3] += p.y * f[2];
        sum[4] -= p.x * f[2];
        sum[5] += p.x * f[1] - p.y * f[0];
    }
    return sum;
}

}  // namespace yardcast::testing_shells
