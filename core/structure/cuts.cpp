#include <algorithm>
#include <cmath>

#include "core/fem/shell_element.h"
#include "core/structure/body.h"
#include "core/structure/places.h"

namespace yardcast {

namespace {

/// A cut along edges of the mesh takes the mean of what lies on both sides: it is read twice, so far to each side.
constexpr double kAsideMm = 0.01;

/// Nodes so near to a cut lie on it.
constexpr double kOnCutMm = 0.02;
/// The mesh may end so much beyond the edge that a cut ends at: arcs are meshed with chords.
constexpr double kBeyondEndMm = 0.6;

/// An overhang is cut just clear of what bears it.
constexpr double kBeyondRestMm = 1.0;

PlaceInMesh placeIn(const TriangleMesh& mesh, int triangle, Point p)
{
    const auto& t = mesh.triangles[triangle];
    const double doubled = cross(mesh.nodes[t[1]] - mesh.nodes[t[0]], mesh.nodes[t[2]] - mesh.nodes[t[0]]);
    PlaceInMesh place{triangle, {}};
    for (int i = 0; i < 3; ++i)
        place.weight[i] = cross(mesh.nodes[t[(i + 1) % 3]] - p, mesh.nodes[t[(i + 2) % 3]] - p) / doubled;
    return place;
}

/// What a cut passes through.
struct Sums {
    double widthMm = 0.0;
    double areaMm2 = 0.0;
    double firstMm3 = 0.0;
};

/// The forces that one side of a cut puts on the other; the moment about the cut's line at z = 0.
struct AcrossCut {
    double forceN = 0.0;
    double shearN = 0.0;
    double faceMomentNMm = 0.0;
};

/// What the beds press with at each node, MPa, where they press on it; and where they lie.
struct BedPressure {
    std::vector<double> atNode;
    std::vector<const ContactBed*> beds;

    BedPressure(const ShellSystem& system, const std::vector<double>& contactN)
        : atNode(system.model().mesh.nodes.size())
    {
        const std::vector<ContactSpring>& contacts = system.contacts();
        for (std::size_t i = 0; i < contacts.size() && i < contactN.size(); ++i) {
            const ContactSpring& c = contacts[i];
            if (!c.bed || !(c.stiffnessNMm > 0.0) || !(contactN[i] > 0.0)) continue;
            atNode[c.node] = contactN[i] * c.bed->bedNMm3 / c.stiffnessNMm;
            if (beds.empty() || beds.back() != c.bed.get()) beds.push_back(c.bed.get());
        }
    }
    bool presses(Point p) const
    {
        return std::any_of(beds.begin(), beds.end(), [p](const ContactBed* bed) { return contains(bed->region, p); });
    }
};

/// The bed of a triangle presses on its nodes. Of what presses right of the cut a part is so given to nodes left of it,
/// with their lever, and the other way round: how much too large the moment of the nodes on the left becomes, Nmm.
double movedByNodes(const fem::Corners& corners, const std::array<double, 3>& left, const std::array<double, 3>& mpa)
{
    const double doubled = cross(corners[1] - corners[0], corners[2] - corners[0]);
    // Corners and, where the cut passes, points between them, by shares of the corners; with what lies left of it.
    std::vector<std::array<double, 3>> sides[2];
    for (std::size_t i = 0; i < 3; ++i) {
        const std::size_t j = (i + 1) % 3;
        std::array<double, 3> corner{};
        corner[i] = 1.0;
        sides[left[i] > 0.0].push_back(corner);
        if ((left[i] > 0.0) == (left[j] > 0.0)) continue;
        const double share = left[i] / (left[i] - left[j]);
        std::array<double, 3> between{};
        between[i] = 1.0 - share;
        between[j] = share;
        sides[0].push_back(between);
        sides[1].push_back(between);
    }
    double sum = 0.0;
    for (const auto& ring : sides) {
        for (std::size_t k = 2; k < ring.size(); ++k) {
            const std::array<std::array<double, 3>, 3> part{ring[0], ring[k - 1], ring[k]};
            double share = 0.0;
            for (std::size_t a = 0; a < 3; ++a) {
                const std::size_t b = (a + 1) % 3, c = (a + 2) % 3;
                share += part[0][a] * (part[1][b] * part[2][c] - part[1][c] * part[2][b]);
            }
            // The middles of the sides give the integral of what is quadratic.
            for (std::size_t a = 0; a < 3; ++a) {
                double pressure = 0.0, lever = 0.0, byNodes = 0.0;
                for (std::size_t i = 0; i < 3; ++i) {
                    const double n = (part[a][i] + part[(a + 1) % 3][i]) / 2;
                    pressure += n * mpa[i];
                    lever += n * left[i];
                    byNodes += n * std::max(left[i], 0.0);
                }
                sum += std::abs(share) * doubled / 6 * pressure * (byNodes - std::max(lever, 0.0));
            }
        }
    }
    return sum;
}

/// The free body on the left of a cut: what the triangles that the cut passes through, or touches from the right, put
/// on its nodes. As they are in equilibrium with the loads and supports of that side, the sums do not depend on how
/// the mesh lies, which what is read from the stress within triangles does (found: by 3 % of the slab's greatest
/// moment from one step of a drag to the next; between rims by more than the force itself).
AcrossCut freeBodyForces(const Body& body, const ShellSystem& system, const ShellSolution& solution,
                         const NamedCut& cut)
{
    const ShellModel& model = system.model();
    const NodeVector& displacement = solution.displacement;
    const BedPressure bed(system, solution.contactN);
    const TriangleMesh& mesh = body.mesh();
    const double span = distance(cut.from, cut.to);
    const Point along = (cut.to - cut.from) * (1.0 / span);
    const Point normal = leftNormal(along);
    std::vector<int> near;
    const Point ends = along * kBeyondEndMm;
    const Point aside = normal * kOnCutMm;
    body.index.nearLine(cut.from - ends - aside, cut.to + ends - aside, [&](int t) { near.push_back(t); });
    std::sort(near.begin(), near.end());
    near.erase(std::unique(near.begin(), near.end()), near.end());
    AcrossCut sum;
    for (const int t : near) {
        const auto& nodes = mesh.triangles[t];
        fem::Corners corners;
        std::array<double, 3> left{};   // mm left of the cut
        std::array<double, 3> place{};  // mm along it
        int onLeft = 0;
        for (std::size_t i = 0; i < 3; ++i) {
            corners[i] = mesh.nodes[nodes[i]];
            left[i] = dot(corners[i] - cut.from, normal);
            place[i] = dot(corners[i] - cut.from, along);
            if (left[i] >= -kOnCutMm) ++onLeft;
        }
        if (onLeft == 0 || onLeft == 3) continue;
        double crossing = 0.0;
        for (std::size_t i = 0; i < 3; ++i) {
            const std::size_t j = (i + 1) % 3;
            if ((left[i] >= -kOnCutMm) == (left[j] >= -kOnCutMm)) continue;
            const double share = std::clamp(left[i] / (left[i] - left[j]), 0.0, 1.0);
            crossing += (place[i] + (place[j] - place[i]) * share) / 2;
        }
        if (crossing < -kBeyondEndMm || crossing > span + kBeyondEndMm) continue;
        fem::ElementStiffness k;
        fem::elementStiffness(corners, model.sections[t], model.elasticMpa, model.poisson, k);
        std::array<double, 18> u;
        for (std::size_t i = 0; i < 3; ++i) std::copy_n(displacement.begin() + 6 * nodes[i], 6, u.begin() + 6 * i);
        for (std::size_t i = 0; i < 3; ++i) {
            if (left[i] < -kOnCutMm) continue;
            std::array<double, 6> f{};
            for (std::size_t row = 0; row < 6; ++row) {
                for (std::size_t c = 0; c < 18; ++c) f[row] += k[(6 * i + row) * 18 + c] * u[c];
            }
            sum.forceN += f[0] * normal.x + f[1] * normal.y;
            sum.shearN += f[2];
            sum.faceMomentNMm += f[2] * left[i] + f[3] * along.x + f[4] * along.y;
        }
        const std::array<double, 3> mpa{bed.atNode[nodes[0]], bed.atNode[nodes[1]], bed.atNode[nodes[2]]};
        if (mpa[0] + mpa[1] + mpa[2] > 0.0 && bed.presses((corners[0] + corners[1] + corners[2]) * (1.0 / 3.0)))
            sum.faceMomentNMm -= movedByNodes(corners, left, mpa);
    }
    return sum;
}

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

std::optional<SectionForces> sectionForces(const Body& body, const ShellSystem& system, const ShellSolution& solution,
                                           const StressField& field, const NamedCut& cut,
                                           const std::vector<double>& strengthMpa)
{
    const double span = distance(cut.from, cut.to);
    if (!(span > 0.0)) return std::nullopt;
    SectionForces section;
    section.name = cut.name;
    section.from = cut.from;
    section.to = cut.to;
    const Point along = (cut.to - cut.from) * (1.0 / span);
    Sums sum;
    for (const double side : {-kAsideMm, kAsideMm}) {
        const Point aside = leftNormal(along) * side;
        for (const PieceOfLine& piece : body.index.crossed(body.mesh(), cut.from + aside, cut.to + aside)) {
            const double mm = (piece.to - piece.from) / 2;
            const ShellSection& s = body.model.sections[piece.triangle];
            sum.widthMm += mm;
            sum.areaMm2 += mm * s.areaMm;
            sum.firstMm3 += mm * s.areaMm * s.centreMm;
            const Point middle = cut.from + aside + along * ((piece.from + piece.to) / 2);
            largestTension(body, field, placeIn(body.mesh(), piece.triangle, middle), strengthMpa, section);
        }
    }
    if (!(sum.widthMm > 0.0)) return std::nullopt;
    const AcrossCut across = freeBodyForces(body, system, solution, cut);
    const double centre = sum.firstMm3 / sum.areaMm2;
    section.widthMm = sum.widthMm;
    section.meanForceNMm = across.forceN / sum.widthMm;
    section.meanMomentN = (across.faceMomentNMm + across.forceN * centre) / sum.widthMm;
    section.meanShearNMm = across.shearN / sum.widthMm;
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
