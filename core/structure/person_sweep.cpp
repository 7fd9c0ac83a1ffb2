#include <algorithm>
#include <cmath>

#include "core/fem/element_forces.h"
#include "core/structure/in_use.h"
#include "core/structure/places.h"

namespace yardcast {

namespace {

using Stress = std::array<double, 3>;
constexpr double kWidestStripMm = 200.0;

/// Membrane stress and stress per mm of depth in the middle of a triangle, as a linear map of its 18 displacements:
/// built once, it serves all loads.
struct MiddleMap {
    std::array<std::array<double, 18>, 6> rows{};

    MiddleMap(const Body& body, int triangle)
    {
        const auto& t = body.mesh().triangles[triangle];
        const auto& n = body.mesh().nodes;
        const fem::Corners corners{n[t[0]], n[t[1]], n[t[2]]};
        const ShellSection& s = body.model.sections[triangle];
        const fem::ElementRecovery recovery(corners, body.model.poisson);
        fem::ElementDisplacement one{};
        for (std::size_t i = 0; i < 18; ++i) {
            one[i] = 1.0;
            const auto f = recovery.forces(s, body.model.elasticMpa, body.model.poisson,
                                           {one.data(), one.data() + 6, one.data() + 12});
            one[i] = 0.0;
            for (int c = 0; c < 3; ++c) {
                rows[c][i] = (f[0].force[c] + f[1].force[c] + f[2].force[c]) / (3 * s.areaMm);
                rows[3 + c][i] = (f[0].moment[c] + f[1].moment[c] + f[2].moment[c]) / (3 * s.inertiaMm3);
            }
        }
    }
};

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
        addStrips();
        std::sort(singles_.begin(), singles_.end());
        singles_.erase(std::unique(singles_.begin(), singles_.end()), singles_.end());
        lasting_ = triangles_.size();
        for (const Point p : spots) under_.push_back(addUnder(p));
        for (const int t : triangles_) {
            kind_.push_back(kindOf(t));
            maps_.emplace_back(body, t);
        }
    }

    /// Greatest tension over strength of any probe but those under other spots.
    double measure(std::size_t spot, const NodeVector& displacement, const std::vector<double>& strengthMpa)
    {
        face_.resize(triangles_.size());
        low_.resize(triangles_.size());
        for (std::size_t i = 0; i < lasting_; ++i) fibres(static_cast<int>(i), displacement);
        double most = 0.0;
        for (const int i : under_[spot]) {
            fibres(i, displacement);
            most = std::max(most, std::max(principal(face_[i]), principal(low_[i])) / strengthMpa[kind_[i]]);
        }
        for (const int i : singles_) {
            const double tension = std::max(principal(face_[i]), principal(low_[i]));
            most = std::max(most, tension / strengthMpa[kind_[i]]);
        }
        for (const Line& line : lines_) {
            if (line.places.empty()) continue;
            Stress top{};
            Stress bottom{};
            for (const int i : line.places) {
                for (int c = 0; c < 3; ++c) {
                    top[c] += face_[i][c] / static_cast<double>(line.places.size());
                    bottom[c] += low_[i][c] / static_cast<double>(line.places.size());
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
    bool atCorner(int triangle) const
    {
        const auto& nodes = body_.mesh().triangles[triangle];
        return std::any_of(nodes.begin(), nodes.end(), [&](int node) { return body_.cornerOfNode[node] >= 0; });
    }
    /// All of the strips beside cutouts that are narrow enough to suffer.
    void addStrips()
    {
        const auto* counter = std::get_if<Counter>(&body_.input.body);
        if (!counter) return;
        for (const Cutout& cutout : counter->cutouts) {
            const auto box = boundsOf(cutoutRing(cutout));
            if (!box || std::max(box->width(), box->height()) < kPersonMm) continue;
            for (const PlaceKind side : {PlaceKind::stripInFront, PlaceKind::stripBehind, PlaceKind::stripLeft,
                                         PlaceKind::stripRight}) {
                const auto strip = stripBeside(*body_.input.casting, cutout, side);
                if (!strip || distance(strip->from, strip->to) > kWidestStripMm) continue;
                const bool alongX = side == PlaceKind::stripInFront || side == PlaceKind::stripBehind;
                const Point low = alongX ? Point{box->low.x, strip->from.y} : Point{strip->from.x, box->low.y};
                const Point high = alongX ? Point{box->high.x, strip->to.y} : Point{strip->to.x, box->high.y};
                body_.index.nearBox(low, high, [&](int t) { single(t); });
            }
        }
    }
    /// A place by itself, unless it lies at an inner corner.
    void single(int triangle)
    {
        if (!atCorner(triangle)) singles_.push_back(add(triangle));
    }
    int kindOf(int triangle) const
    {
        const double* share = &body_.share[static_cast<std::size_t>(triangle) * body_.kinds.size()];
        return static_cast<int>(std::max_element(share, share + body_.kinds.size()) - share);
    }

    /// Triangles under a load, those at inner corners left out.
    std::vector<int> addUnder(Point p)
    {
        std::vector<int> probes;
        const double reach = kPersonMm / 2;
        body_.index.nearBox({p.x - reach, p.y - reach}, {p.x + reach, p.y + reach}, [&](int t) {
            const auto& [a, b, c] = body_.mesh().triangles[t];
            const Point d = (body_.mesh().nodes[a] + body_.mesh().nodes[b] + body_.mesh().nodes[c]) * (1.0 / 3.0) - p;
            if (std::max(std::abs(d.x), std::abs(d.y)) < reach && !atCorner(t)) probes.push_back(add(t));
        });
        std::sort(probes.begin(), probes.end());
        probes.erase(std::unique(probes.begin(), probes.end()), probes.end());
        return probes;
    }

    /// Stress at face and underside in the middle of a triangle.
    void fibres(int probe, const NodeVector& displacement)
    {
        const int triangle = triangles_[probe];
        std::array<double, 18> u;
        for (int k = 0; k < 3; ++k)
            std::copy_n(displacement.begin() + 6 * body_.mesh().triangles[triangle][k], 6, u.begin() + 6 * k);
        std::array<double, 6> s{};
        const MiddleMap& map = maps_[probe];
        for (std::size_t row = 0; row < 6; ++row) {
            for (std::size_t i = 0; i < 18; ++i) s[row] += map.rows[row][i] * u[i];
        }
        const SectionKind& kind = body_.kinds[kind_[probe]];
        const double up = kind.skins ? -kind.depthMm / 2 : body_.model.sections[triangle].centreMm;
        for (int c = 0; c < 3; ++c) {
            face_[probe][c] = s[c] + s[3 + c] * up;
            low_[probe][c] = face_[probe][c] + s[3 + c] * kind.depthMm;
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
    std::vector<Stress> low_;
    std::vector<MiddleMap> maps_;
    std::size_t lasting_ = 0;               ///< probes before those that lie under some spot only
    std::vector<std::vector<int>> under_;   ///< probes under each spot
};

}  // namespace

std::vector<Point> worstPersonSpots(const StrengthInput& input, double forceN, std::size_t most, std::stop_token stop)
{
    // A node under each load: then all have the same error of the coarse mesh.
    const std::vector<Point> spots = personSpots(input);
    const std::shared_ptr<const Body> body = makeCoarseBody(input, {}, spots);
    if (!body || stop.stop_requested()) return {};
    const OnRests use(*body, stop);
    if (!use.solvable()) return {};
    const NodeVector dead = use.deadLoad(true);
    std::vector<NodeVector> loads(spots.size(), dead);
    for (std::size_t i = 0; i < spots.size(); ++i) use.addPerson(spots[i], forceN, loads[i]);
    if (stop.stop_requested()) return {};
    const std::vector<ShellSolution> solutions = use.system().solve(loads);

    Probes probes(*body, spots);
    const std::vector<double> strength = usableStrengthMpa(*body, kFullAgeH);
    struct Ranked {
        double use;
        std::size_t spot;
    };
    std::vector<Ranked> ranked;
    for (std::size_t i = 0; i < solutions.size(); ++i) {
        double share = HUGE_VAL;
        if (solutions[i].settled) share = probes.measure(i, solutions[i].displacement, strength);
        // To seven digits, so that the order of spots that press on the same concrete is theirs, not that of rounding.
        ranked.push_back({static_cast<double>(static_cast<float>(share)), i});
    }
    std::stable_sort(ranked.begin(), ranked.end(), [](const Ranked& a, const Ranked& b) { return a.use > b.use; });
    // One spot where it tips says it all; those where it cracks are wanted beside.
    std::vector<Point> worst;
    std::size_t cracking = 0;
    for (std::size_t i = 0; i < ranked.size() && cracking < most; ++i) {
        const bool tips = std::isinf(ranked[i].use);
        if (tips && i > 0) continue;
        if (!tips) ++cracking;
        worst.push_back(spots[ranked[i].spot]);
    }
    return worst;
}

}  // namespace yardcast
