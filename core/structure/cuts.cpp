#include <algorithm>
#include <cmath>

#include "core/structure/body.h"
#include "core/structure/places.h"

namespace yardcast {

namespace {

/// A cut along edges of the mesh takes the mean of what lies on both sides: it is read twice, so far to each side.
constexpr double kAsideMm = 0.01;

/// Between rims the force along the middle plane jumps from triangle to triangle about its mean (found: by more than
/// itself). Cuts are therefore read over a band, so many elements to each side: what grows evenly does not notice.
constexpr double kBandShare = 0.75;
constexpr double kMostBandMm = 25.0;

/// An overhang is cut just clear of what bears it.
constexpr double kBeyondRestMm = 1.0;

ShellForces at(const std::array<ShellForces, 3>& corners, const PlaceInMesh& place)
{
    ShellForces sum;
    for (int i = 0; i < 3; ++i) {
        for (int c = 0; c < 3; ++c) {
            sum.force[c] += place.weight[i] * corners[i].force[c];
            sum.moment[c] += place.weight[i] * corners[i].moment[c];
        }
        for (int c = 0; c < 2; ++c) sum.shear[c] += place.weight[i] * corners[i].shear[c];
    }
    return sum;
}

double across(const std::array<double, 3>& s, Point n)
{
    return s[0] * n.x * n.x + s[1] * n.y * n.y + 2 * s[2] * n.x * n.y;
}

PlaceInMesh placeIn(const TriangleMesh& mesh, int triangle, Point p)
{
    const auto& t = mesh.triangles[triangle];
    const double doubled = cross(mesh.nodes[t[1]] - mesh.nodes[t[0]], mesh.nodes[t[2]] - mesh.nodes[t[0]]);
    PlaceInMesh place{triangle, {}};
    for (int i = 0; i < 3; ++i)
        place.weight[i] = cross(mesh.nodes[t[(i + 1) % 3]] - p, mesh.nodes[t[(i + 2) % 3]] - p) / doubled;
    return place;
}

/// Sums along a cut. The moment is about z = 0 until it is brought to the centroid.
struct Sums {
    double widthMm = 0.0;
    double areaMm2 = 0.0;
    double firstMm3 = 0.0;
    double forceN = 0.0;
    double faceMomentNMm = 0.0;
    double shearN = 0.0;
};

void largestTension(const Body& body, const StressField& field, const PlaceInMesh& place,
                    const std::vector<double>& strengthMpa, SectionForces& section)
{
    const auto& nodes = body.mesh().triangles[place.triangle];
    for (const int node : nodes) {
        if (body.cornerOfNode[node] >= 0) return;
    }
    for (int k = 0; k < body.kindCount(); ++k) {
        if (!(body.share[place.triangle * body.kindCount() + k] > 0.0)) continue;
        double top = 0.0;
        double bottom = 0.0;
        for (int i = 0; i < 3; ++i) {
            const FibreTension t = fibreTension(body, field, nodes[i], k);
            top += place.weight[i] * t.topMpa;
            bottom += place.weight[i] * t.bottomMpa;
        }
        const double tension = std::max(top, bottom);
        section.tensionMpa = std::max(section.tensionMpa, tension);
        if (strengthMpa[k] > 0.0) section.usePercent = std::max(section.usePercent, 100 * tension / strengthMpa[k]);
    }
}

}  // namespace

namespace {

/// Sums along parallels to the cut that lie so far from it, each of the same weight.
template <typename Visit>
Sums sumsAlong(const Body& body, const std::vector<std::array<ShellForces, 3>>& forces, const NamedCut& cut,
               const std::vector<double>& sides, Visit visit)
{
    const Point along = (cut.to - cut.from) * (1.0 / distance(cut.from, cut.to));
    const Point normal = leftNormal(along);
    Sums sum;
    for (const double side : sides) {
        const Point from = cut.from + normal * side;
        for (const PieceOfLine& piece : body.index.crossed(body.mesh(), from, cut.to + normal * side)) {
            const double mm = (piece.to - piece.from) / static_cast<double>(sides.size());
            const PlaceInMesh place =
                placeIn(body.mesh(), piece.triangle, from + along * ((piece.from + piece.to) / 2));
            const ShellForces f = at(forces[piece.triangle], place);
            const ShellSection& s = body.model.sections[piece.triangle];
            const double n = across(f.force, normal);
            sum.widthMm += mm;
            sum.areaMm2 += mm * s.areaMm;
            sum.firstMm3 += mm * s.areaMm * s.centreMm;
            sum.forceN += mm * n;
            sum.faceMomentNMm += mm * (across(f.moment, normal) - n * s.centreMm);
            sum.shearN += mm * (f.shear[0] * normal.x + f.shear[1] * normal.y);
            visit(place);
        }
    }
    return sum;
}

/// Where a rest bears, moments have a kink that a mean over a band would cut off.
bool hasKink(PlaceKind kind)
{
    return kind == PlaceKind::over || kind == PlaceKind::overhang || kind == PlaceKind::corner;
}

}  // namespace

std::optional<SectionForces> sectionForces(const Body& body, const std::vector<std::array<ShellForces, 3>>& forces,
                                           const StressField& field, const NamedCut& cut,
                                           const std::vector<double>& strengthMpa)
{
    const double span = distance(cut.from, cut.to);
    if (!(span > 0.0)) return std::nullopt;
    SectionForces section;
    section.name = cut.name;
    section.from = cut.from;
    section.to = cut.to;
    Sums sum = sumsAlong(body, forces, cut, {-kAsideMm, kAsideMm}, [&](const PlaceInMesh& place) {
        largestTension(body, field, place, strengthMpa, section);
    });
    if (!(sum.widthMm > 0.0)) return std::nullopt;
    if (!hasKink(cut.name.kind)) {
        const double half = std::min(kMostBandMm, kBandShare * meshSizeMm(body.refinement));
        const Sums band = sumsAlong(body, forces, cut,
                                    {-half * 5 / 6, -half / 2, -half / 6, half / 6, half / 2, half * 5 / 6},
                                    [](const PlaceInMesh&) {});
        const auto same = [](double a, double b) { return std::abs(a - b) <= 1e-3 * std::abs(b); };
        if (same(band.widthMm, sum.widthMm) && same(band.areaMm2, sum.areaMm2)) sum = band;
    }
    const double centre = sum.firstMm3 / sum.areaMm2;
    section.widthMm = sum.widthMm;
    section.meanForceNMm = sum.forceN / sum.widthMm;
    section.meanMomentN = (sum.faceMomentNMm + sum.forceN * centre) / sum.widthMm;
    section.meanShearNMm = sum.shearN / sum.widthMm;
    return section;
}

std::vector<NamedCut> stripCuts(const Body& body)
{
    std::vector<NamedCut> cuts;
    const auto* counter = std::get_if<Counter>(&body.input.body);
    if (!counter) return cuts;
    for (const Cutout& cutout : counter->cutouts) {
        for (const PlaceKind side : {PlaceKind::stripInFront, PlaceKind::stripBehind, PlaceKind::stripLeft,
                                     PlaceKind::stripRight}) {
            if (const auto strip = stripBeside(*body.input.casting, cutout, side))
                cuts.push_back({{side, cutout.id, {}}, strip->from, strip->to});
        }
    }
    return cuts;
}

std::vector<NamedCut> restCuts(const Body& body)
{
    const StrengthInput& input = body.input;
    std::vector<NamedCut> cuts;
    const auto add = [&](PlaceName name, Point through, Point direction) {
        if (const auto chord = chordThrough(*input.casting, through, direction))
            cuts.push_back({std::move(name), chord->from, chord->to});
    };
    for (const Span& span : spansOf(input)) {
        add({PlaceKind::middleOfSpan, input.rests[span.a].under, input.rests[span.b].under}, span.middle,
            span.alongX ? Point{0, 1} : Point{1, 0});
    }
    for (const Rest& rest : input.rests) {
        if (rest.bearing.empty()) continue;
        // Its long side: the principal axis of what lies under the slab.
        const AreaMoments m = moments(rest.footprint);
        const Point c = m.centroid();
        const double xx = m.secondXxMm4 - c.x * m.firstXMm3;
        const double yy = m.secondYyMm4 - c.y * m.firstYMm3;
        const double xy = m.secondXyMm4 - c.x * m.firstYMm3;
        const double angle = std::atan2(2 * xy, xx - yy) / 2;
        // A rest that lies along an axis has a cut exactly along it.
        Point direction{std::cos(angle), std::sin(angle)};
        if (std::abs(direction.x) < 1e-6) direction = {0, 1};
        if (std::abs(direction.y) < 1e-6) direction = {1, 0};
        if (direction.x + direction.y < 0) direction = direction * -1.0;
        add({PlaceKind::over, rest.under, {}}, c, direction);
    }
    for (const Overhang& o : overhangsOf(input)) {
        const Point through = o.at + o.outwards * kBeyondRestMm;
        const Point along = o.outwards.x != 0 ? Point{0, 1} : Point{1, 0};
        add({PlaceKind::overhang, input.rests[o.rest].under, {}}, through, along);
    }
    return cuts;
}

}  // namespace yardcast
