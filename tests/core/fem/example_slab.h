#pragma once

#include <algorithm>
#include <cmath>

#include "core/fem/shell.h"

/// A counter slab of our own to measure on: 2000 x 600, field 30 thick with a rim 60 wide and 50 deep all round (faces
/// flush), a cutout 560 x 400 with corners of radius 20, a tap hole of 35, on three rests.
namespace yardcast::testing_shells {

enum class Rests {
    lines,  ///< each rest one line of beds
    edges,  ///< each a wall 100 wide that presses with its two edges
    areas   ///< each a wall 100 wide that presses everywhere
};

struct ExampleSlab {
    ShellModel model;
    std::vector<NodeSpring> springs;
    std::vector<ContactSpring> beds;

    /// Own weight at 24 kN/m3 and 3 kPa.
    NodeVector load() const
    {
        std::vector<std::array<double, 3>> pressure;
        for (const ShellSection& s : model.sections) pressure.push_back({0.0, 0.0, -24e-6 * s.areaMm - 3e-3});
        return surfaceLoad(model, pressure, std::vector<double>(pressure.size(), 0.0));
    }
    /// The load and a person of 1 kN on 100 x 100 at each of `count` places along the front and the back.
    std::vector<NodeVector> loadsWithPerson(int count) const
    {
        std::vector<NodeVector> loads;
        const NodeVector even = load();
        for (int i = 0; i < count; ++i) {
            const Point at{60 + 1880.0 * (i / 2) / std::max(1, (count - 1) / 2), i % 2 ? 550.0 : 50.0};
            loads.push_back(patchLoad(model, regionOf(rectangleRing(at, {100, 100})), {0, 0, -1000}, 0.0));
            for (std::size_t k = 0; k < even.size(); ++k) loads.back()[k] += even[k];
        }
        return loads;
    }
};

inline MeshRequest exampleSlabRequest(double sizeMm, bool graded, Rests rests)
{
    MeshRequest request;
    request.domain = {{{{0, 0}, {2000, 0}, {2000, 600}, {0, 600}}, {}}};
    request.domain = subtract(request.domain, regionOf(rectangleRing({750, 300}, {560, 400}, 0, 20)));
    request.domain = subtract(request.domain, regionOf(circleRing({750, 555}, 35)));
    request.lines = {{{60, 60}, {1940, 60}, {1940, 540}, {60, 540}, {60, 60}}};
    for (const double x : {300.0, 1200.0, 1800.0}) {
        if (rests == Rests::lines) {
            request.lines.push_back({{x, 0}, {x, 600}});
        } else {
            request.lines.push_back({{x - 50, 0}, {x - 50, 600}});
            request.lines.push_back({{x + 50, 0}, {x + 50, 600}});
        }
    }
    request.sizeMm = sizeMm;
    if (graded)
        for (const double x : {470.0, 1030.0})
            for (const double y : {100.0, 500.0}) request.fine.push_back({{x, y}, 8});
    return request;
}

inline ExampleSlab exampleSlab(double sizeMm, Rests rests, TriangleMesh mesh)
{
    ExampleSlab slab;
    for (const auto& t : mesh.triangles) {
        const auto at = [&](std::size_t k) { return mesh.nodes[std::size_t(t[k])]; };
        const Point c = (at(0) + at(1) + at(2)) * (1.0 / 3);
        const bool rim = c.x < 60 || c.x > 1940 || c.y < 60 || c.y > 540;
        const double thick = rim ? 50 : 30;
        slab.model.sections.push_back({thick, -thick / 2, std::pow(thick, 3) / 12, rim ? 0.5 : 1.0});
    }
    for (std::size_t i = 0; i < mesh.nodes.size(); ++i) {
        const Point p = mesh.nodes[i];
        for (const double x : {300.0, 1200.0, 1800.0}) {
            const double off = std::abs(p.x - x);
            const bool bears = rests == Rests::lines   ? off < 0.5
                               : rests == Rests::edges ? std::abs(off - 50) < 0.5
                                                       : off < 50.5;
            if (!bears) continue;
            slab.beds.push_back({int(i), 5000.0 * sizeMm / 30, 0.0});
            slab.springs.push_back({int(i), {1, 1, 0, 0, 0, 0}});
        }
    }
    slab.model.mesh = std::move(mesh);
    return slab;
}

}  // namespace yardcast::testing_shells
