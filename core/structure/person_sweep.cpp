#include <algorithm>
#include <cmath>

#include "core/structure/in_use.h"

namespace yardcast {

namespace {

using Stress = std::array<double, 3>;
constexpr double kAgeH = 672.0;

/// The triangles whose stress is looked at, each once.
class Probes {
public:
    Probes(const Body& body, const std::vector<Point>& spots) : body_(body), indexOf_(body.mesh().triangles.size(), -1)
    {
        for (const InnerCorner& corner : body.corners) {
            for (const CrackLine& line : corner.lines) {
                Line probe;
                for (const PlaceInMesh& place : line.samples) probe.places.push_back(add(place.triangle));
                lines_.push_back(std::move(probe));
            }
        }
        std::vector<NamedCut> cuts = stripCuts(body);
        for (NamedCut& cut : restCuts(body)) cuts.push_back(std::move(cut));
        for (const NamedCut& cut : cuts) {
            for (const PieceOfLine& piece : body.index.crossed(body.mesh(), cut.from, cut.to)) single(piece.triangle);
        }
        for (const Point p : spots) {
            const PlaceInMesh place = body.index.find(body.mesh(), p);
            if (place.triangle >= 0) single(place.triangle);
        }
        std::sort(singles_.begin(), singles_.end());
        singles_.erase(std::unique(singles_.begin(), singles_.end()), singles_.end());
        kind_.reserve(triangles_.size());
        for (const int t : triangles_) {
            int most = 0;
            for (int k = 1; k < body.kindCount(); ++k) {
                if (body.share[t * body.kindCount() + k] > body.share[t * body.kindCount() + most]) most = k;
            }
            kind_.push_back(most);
        }
    }

    const std::vector<int>& triangles() const { return triangles_; }

    /// Greatest tension over strength of any probe, from the resultants of `triangles()`.
    double measure(const std::vector<std::array<ShellForces, 3>>& forces, const std::vector<double>& strengthMpa)
    {
        face_.resize(triangles_.size());
        under_.resize(triangles_.size());
        for (std::size_t i = 0; i < triangles_.size(); ++i) fibres(i, forces[i]);
        double most = 0.0;
        for (const int i : singles_) {
            const double tension = std::max(principal(face_[i]), principal(under_[i]));
            most = std::max(most, tension / strengthMpa[kind_[i]]);
        }
        for (const Line& line : lines_) {
            if (line.places.empty()) continue;
            Stress top{};
            Stress bottom{};
            for (const int i : line.places) {
                for (int c = 0; c < 3; ++c) {
                    top[c] += face_[i][c] / static_cast<double>(line.places.size());
                    bottom[c] += under_[i][c] / static_cast<double>(line.places.size());
                }
            }
            const double tension = std::max(principal(top), principal(bottom));
            most = std::max(most, tension / strengthMpa[kind_[line.places.front()]]);
        }
        return most;
    }

private:
    struct Line {
        std::vector<int> places;
    };

    int add(int triangle)
    {
        if (indexOf_[triangle] < 0) {
            indexOf_[triangle] = static_cast<int>(triangles_.size());
            triangles_.push_back(triangle);
        }
        return indexOf_[triangle];
    }
    /// A place by itself, unless it lies at an inner corner.
    void single(int triangle)
    {
        for (const int node : body_.mesh().triangles[triangle]) {
            if (body_.cornerOfNode[node] >= 0) return;
        }
        singles_.push_back(add(triangle));
    }

    /// Stress at face and underside in the middle of a triangle.
    void fibres(std::size_t i, const std::array<ShellForces, 3>& corners)
    {
        const SectionKind& kind = body_.kinds[kind_[i]];
        const ShellSection& s = body_.model.sections[triangles_[i]];
        const double up = kind.skins ? -kind.depthMm / 2 : s.centreMm;
        for (int c = 0; c < 3; ++c) {
            const double n = (corners[0].force[c] + corners[1].force[c] + corners[2].force[c]) / 3;
            const double m = (corners[0].moment[c] + corners[1].moment[c] + corners[2].moment[c]) / 3;
            const double perMm = m / s.inertiaMm3;
            face_[i][c] = n / s.areaMm + perMm * up;
            under_[i][c] = face_[i][c] + perMm * kind.depthMm;
        }
    }
    static double principal(const Stress& s)
    {
        const double half = (s[0] - s[1]) / 2;
        return (s[0] + s[1]) / 2 + std::sqrt(half * half + s[2] * s[2]);
    }
    const Body& body_;
    std::vector<int> indexOf_;
    std::vector<int> triangles_;
    std::vector<int> kind_;
    std::vector<int> singles_;
    std::vector<Line> lines_;
    std::vector<Stress> face_;
    std::vector<Stress> under_;
};

}  // namespace

std::vector<Point> worstPersonSpots(const StrengthInput& input, double forceN, std::size_t most, std::stop_token stop)
{
    const std::shared_ptr<const Body> body = makeCoarseBody(input);
    if (!body || stop.stop_requested()) return {};
    const OnRests use(*body, stop);
    if (!use.solvable()) return {};
    const std::vector<Point> spots = personSpots(input);
    const NodeVector dead = use.deadLoad(true);
    std::vector<NodeVector> loads(spots.size(), dead);
    for (std::size_t i = 0; i < spots.size(); ++i) use.addPerson(spots[i], forceN, loads[i]);
    if (stop.stop_requested()) return {};
    const std::vector<ShellSolution> solutions = use.system().solve(loads);

    Probes probes(*body, spots);
    const std::vector<double> strength = usableStrengthMpa(*body, kAgeH);
    struct Ranked {
        double use;
        std::size_t spot;
    };
    std::vector<Ranked> ranked;
    for (std::size_t i = 0; i < solutions.size(); ++i) {
        double share = HUGE_VAL;
        if (solutions[i].settled)
            share = probes.measure(use.system().forces(solutions[i].displacement, probes.triangles()), strength);
        ranked.push_back({share, i});
    }
    std::stable_sort(ranked.begin(), ranked.end(), [](const Ranked& a, const Ranked& b) { return a.use > b.use; });
    std::vector<Point> worst;
    for (std::size_t i = 0; i < ranked.size() && i < most; ++i) worst.push_back(spots[ranked[i].spot]);
    return worst;
}

}  // namespace yardcast
