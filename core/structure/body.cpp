#include "core/structure/body.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/materials/concrete_strength.h"
#include "core/materials/materials.h"
#include "core/structure/crack_strips.h"
#include "core/structure/mesh_plan.h"
#include "core/structure/stress_marks.h"

namespace yardcast {

namespace {

constexpr double kKgPerMm3AtOneKgM3 = 1e-9;
constexpr double kSameDepthMm = 1e-6;
/// Poisson's ratio of uncracked concrete: EN 1992-1-1 3.1.3(4).
constexpr double kPoisson = 0.2;
/// A node so near to an inner corner, in thicknesses, is judged by the corner's crack lines instead. At a sharp square
/// corner stress grows as r^-0.46: the mean over one thickness is then above what it is at half a thickness.
constexpr double kCornerNodeShare = 0.5;
constexpr int kCrackSamples = 10;
constexpr int kSharpCrackLines = 5;
/// A place that lies in no triangle, because arcs are meshed with chords, may be moved by this.
constexpr double kChordSlackMm = 0.6;

/// Foam that comes through to the faces leaves no skin; the shell needs some.
constexpr double kLeastSkinMm = 0.5;

/// A kind of section with the region that it fills.
struct KindRegion {
    SectionKind kind;
    Region region;
    double widthMm = 0.0;  ///< mean width of its strips
};

void append(Region& to, const Region& from) { to.insert(to.end(), from.begin(), from.end()); }

/// Torsion of a bar b x h against that of a plate of its thickness, b h^3 / 3: 1 - 0.63 h/b (1 - h^4/(12 b^4)) for
/// b >= h (Roark; from memory), turned round for b < h.
double twistFactor(double widthMm, double depthMm)
{
    if (!(widthMm > 0.0 && depthMm > 0.0)) return 1.0;
    const double longer = std::max(widthMm, depthMm);
    const double ratio = std::min(widthMm, depthMm) / longer;
    const double factor = 1.0 - 0.63 * ratio * (1.0 - std::pow(ratio, 4) / 12);
    return widthMm >= depthMm ? factor : factor * std::pow(widthMm / depthMm, 2);
}

ShellSection solidSection(double depthMm)
{
    return {depthMm, -depthMm / 2, std::pow(depthMm, 3) / 12, 1.0};
}

/// Twice area over perimeter: the width of long strips.
double meanWidthMm(const Region& region)
{
    const double perimeter = perimeterMm(region);
    return perimeter > 0.0 ? 2 * areaMm2(region) / perimeter : 0.0;
}

double foamDensityKgM3(const PartBody& body, bool& stays)
{
    stays = true;
    if (const auto* counter = std::get_if<Counter>(&body)) {
        if (!counter->filler) return 0.0;
        stays = counter->filler->stays;
        return counter->filler->densityKgM3;
    }
    const std::optional<Core>* core = nullptr;
    if (const auto* support = std::get_if<Support>(&body)) core = &support->core;
    if (const auto* panel = std::get_if<Panel>(&body)) core = &panel->core;
    return core && *core ? (*core)->densityKgM3 : 0.0;
}

void addFoam(SectionKind& kind, double fromMm, double toMm, double densityKgM3)
{
    const double concrete = kind.massKgMm2;
    const double foam = (toMm - fromMm) * densityKgM3 * kKgPerMm3AtOneKgM3;
    if (!(concrete + foam > 0.0)) return;
    kind.massZMm = (concrete * kind.massZMm - foam * (fromMm + toMm) / 2) / (concrete + foam);
    kind.massKgMm2 = concrete + foam;
}

std::vector<KindRegion> kindsOf(const StrengthInput& input)
{
    const Casting& casting = *input.casting;
    std::vector<KindRegion> kinds;
    bool stays = true;
    const double foam = foamDensityKgM3(input.body, stays);
    const auto core = std::find_if(casting.zones.begin(), casting.zones.end(),
                                   [](const Zone& zone) { return zone.kind == ZoneKind::core; });
    const bool cored = core != casting.zones.end();
    for (const Zone& zone : casting.zones) {
        if (!zone.isConcrete()) continue;
        // The skins of a core come as one kind, made below.
        if (cored && (zone.fromMm > kSameDepthMm || zone.toMm <= core->fromMm + kSameDepthMm)) continue;
        // Drip grooves and rebates are not meshed: the concrete goes on as beside them (finding "grooves_not_solved").
        const double depth = zone.toMm + zone.grooveMm;
        auto found = std::find_if(kinds.begin(), kinds.end(), [&](const KindRegion& k) {
            return std::abs(k.kind.depthMm - depth) < kSameDepthMm;
        });
        if (found == kinds.end()) {
            KindRegion made;
            made.kind.kind = zone.kind;
            made.kind.depthMm = depth;
            made.kind.undersideMm = -depth;
            made.kind.section = solidSection(depth);
            made.kind.massKgMm2 = depth * kHardenedConcreteKgM3 * kKgPerMm3AtOneKgM3;
            made.kind.massZMm = -depth / 2;
            kinds.push_back(std::move(made));
            found = kinds.end() - 1;
        }
        if (zone.grooveMm > 0.0 || zone.fromMm > 0.0) {
            found->region = unite(found->region, zone.region);
        } else {
            append(found->region, zone.region);
        }
    }
    for (const Zone& zone : casting.zones) {
        if (zone.kind != ZoneKind::filler || !stays) continue;
        for (KindRegion& k : kinds) {
            if (std::abs(k.kind.depthMm - zone.fromMm) < kSameDepthMm) addFoam(k.kind, zone.fromMm, zone.toMm, foam);
        }
    }
    if (cored) {
        const double whole = core->toMm + core->fromMm;
        const double skin = std::max(core->fromMm, kLeastSkinMm);
        KindRegion made;
        made.kind.kind = ZoneKind::core;
        made.kind.skins = true;
        made.kind.depthMm = skin;
        made.kind.undersideMm = -whole;
        made.kind.section = {2 * skin, -whole / 2, 2 * std::pow(skin, 3) / 12, 1.0};
        made.kind.massKgMm2 = 2 * skin * kHardenedConcreteKgM3 * kKgPerMm3AtOneKgM3;
        made.kind.massZMm = -whole / 2;
        if (stays) addFoam(made.kind, core->fromMm, core->toMm, foam);
        made.region = core->region;
        kinds.push_back(std::move(made));
    }
    std::stable_sort(kinds.begin(), kinds.end(), [](const KindRegion& a, const KindRegion& b) {
        return a.kind.section.areaMm > b.kind.section.areaMm;
    });
    // Strips beside thinner concrete twist as bars do. What is wide has a factor near 1 anyway.
    for (std::size_t i = 0; i + 1 < kinds.size(); ++i)
        kinds[i].kind.section.twistFactor = twistFactor(meanWidthMm(kinds[i].region), kinds[i].kind.depthMm);
    return kinds;
}

double triangleAreaMm2(const TriangleMesh& mesh, std::size_t t)
{
    const auto& [a, b, c] = mesh.triangles[t];
    return cross(mesh.nodes[b] - mesh.nodes[a], mesh.nodes[c] - mesh.nodes[a]) / 2;
}

Point triangleCentre(const TriangleMesh& mesh, std::size_t t)
{
    const auto& [a, b, c] = mesh.triangles[t];
    return (mesh.nodes[a] + mesh.nodes[b] + mesh.nodes[c]) * (1.0 / 3.0);
}

/// Shares of the kinds in each triangle, by area.
void fillShares(Body& body, const std::vector<KindRegion>& kinds)
{
    const std::size_t count = body.mesh().triangles.size();
    const std::size_t k = kinds.size();
    body.share.assign(count * k, k == 1 ? 1.0 : 0.0);
    if (k == 1) return;
    for (std::size_t i = 0; i < k; ++i) {
        const std::vector<double> areas = areaInTriangles(body.mesh(), body.index, kinds[i].region);
        for (std::size_t t = 0; t < count; ++t) body.share[t * k + i] = areas[t];
    }
    for (std::size_t t = 0; t < count; ++t) {
        double* share = &body.share[t * k];
        double sum = 0.0;
        for (std::size_t i = 0; i < k; ++i) sum += share[i];
        // Between a chord and its arc there may be no zone at all: the thinnest is on the safe side.
        if (!(sum > 1e-6 * triangleAreaMm2(body.mesh(), t))) {
            share[k - 1] = sum = 1.0;
        }
        for (std::size_t i = 0; i < k; ++i) share[i] = share[i] < 1e-9 * sum ? 0.0 : share[i] / sum;
    }
}

/// At a free edge the twisting moment fades away within about one thickness, which thin plates do not know: a strip of
/// width b and thickness t twists as a bar, b t^3/3 (1 - 0.63 t/b), so each of its edges takes 0.315 t of its width
/// away (Roark; from memory). Twisting stiffness that is left of each triangle's thinnest kind; deeper strips have
/// theirs. Measured on slabs with a cutout, own weight, against solids: deflection 1.1 to 2.8 % too small without.
std::vector<double> twistLeftByEdges(const Body& body, const std::vector<KindRegion>& kinds)
{
    constexpr double kEdgeShare = 0.315;
    constexpr double kLeastLeft = 0.05;
    std::vector<double> left(body.mesh().triangles.size(), 1.0);
    const SectionKind& kind = kinds.back().kind;
    if (kind.skins) return left;
    const Region& outline = body.input.casting->outline;
    const Region inner = offset(outline, -kEdgeShare * kind.depthMm, OffsetJoin::mitre);
    Region band = subtract(outline, inner);
    if (kinds.size() > 1) band = intersect(band, kinds.back().region);
    const std::vector<double> areas = areaInTriangles(body.mesh(), body.index, band);
    for (std::size_t t = 0; t < left.size(); ++t) {
        const double own = body.share[t * kinds.size() + kinds.size() - 1] * triangleAreaMm2(body.mesh(), t);
        if (own > 0.0) left[t] = std::max(kLeastLeft, 1.0 - areas[t] / own);
    }
    return left;
}

/// The long edges of the body and of its deeper strips, which tell which way strips run; none where all of them lie along
/// the axes.
std::vector<std::pair<Point, Point>> stripEdges(const Body& body, const std::vector<KindRegion>& kinds)
{
    constexpr double kLongMm = 40.0;
    constexpr double kAlongAxis = 1e-6;
    std::vector<std::pair<Point, Point>> edges;
    bool turned = false;
    const auto add = [&](const Ring& ring) {
        for (std::size_t i = 0; i < ring.size(); ++i) {
            const Point a = ring[i];
            const Point b = ring[(i + 1) % ring.size()];
            if (distance(a, b) < kLongMm) continue;
            edges.emplace_back(a, b);
            turned = turned || std::min(std::abs(b.x - a.x), std::abs(b.y - a.y)) > kAlongAxis * distance(a, b);
        }
    };
    const auto addAll = [&](const Region& region) {
        for (const Polygon& polygon : region) {
            add(polygon.outer);
            for (const Ring& hole : polygon.holes) add(hole);
        }
    };
    addAll(body.input.casting->outline);
    for (std::size_t i = 0; i + 1 < kinds.size(); ++i) addAll(kinds[i].region);
    if (!turned) edges.clear();
    return edges;
}

/// Of the nearest edge, as a unit vector.
std::array<double, 2> directionAt(const std::vector<std::pair<Point, Point>>& edges, Point p)
{
    const auto nearest = std::min_element(edges.begin(), edges.end(), [p](const auto& one, const auto& other) {
        return distanceToSegment(p, one.first, one.second) < distanceToSegment(p, other.first, other.second);
    });
    const Point along = (nearest->second - nearest->first) * (1.0 / distance(nearest->first, nearest->second));
    return {along.x, along.y};
}

/// Integrals over the depth, weighed by area; and the mass.
void fillSections(Body& body, const std::vector<double>& twistLeft, const std::vector<KindRegion>& kinds)
{
    const std::vector<std::pair<Point, Point>> strips = stripEdges(body, kinds);
    const std::size_t count = body.mesh().triangles.size();
    const std::size_t k = body.kinds.size();
    body.model.sections.resize(count);
    body.massKgMm2.resize(count);
    body.massZMm.resize(count);
    double total = 0.0;
    for (std::size_t t = 0; t < count; ++t) {
        const double* share = &body.share[t * k];
        ShellSection s{0.0, 0.0, 0.0, 0.0};
        double first = 0.0;
        double second = 0.0;
        double twisting = 0.0;
        double mass = 0.0;
        double massFirst = 0.0;
        for (std::size_t i = 0; i < k; ++i) {
            if (!(share[i] > 0.0)) continue;
            const SectionKind& kind = body.kinds[i];
            const ShellSection& own = kind.section;
            s.areaMm += share[i] * own.areaMm;
            first += share[i] * own.areaMm * own.centreMm;
            second += share[i] * (own.inertiaMm3 + own.areaMm * own.centreMm * own.centreMm);
            twisting += share[i] * own.inertiaMm3 * own.twistFactor * (i + 1 == k ? twistLeft[t] : 1.0);
            s.inertiaMm3 += share[i] * own.inertiaMm3;
            mass += share[i] * kind.massKgMm2;
            massFirst += share[i] * kind.massKgMm2 * kind.massZMm;
        }
        s.centreMm = first / s.areaMm;
        s.twistFactor = twisting / s.inertiaMm3;
        s.inertiaMm3 = second - first * s.centreMm;
        if (!strips.empty() && s.twistFactor < 1.0) s.twistAlong = directionAt(strips, triangleCentre(body.mesh(), t));
        body.model.sections[t] = s;
        body.massKgMm2[t] = mass;
        body.massZMm[t] = massFirst / mass;
        total += mass * triangleAreaMm2(body.mesh(), t);
    }
    // Chords for arcs, and steel that is heavier than the concrete whose place it takes: smeared over all.
    const double scale = total > 0.0 ? body.input.casting->massKg / total : 1.0;
    body.massKg = body.input.casting->massKg;
    Point turning;
    for (std::size_t t = 0; t < count; ++t) {
        body.massKgMm2[t] *= scale;
        turning = turning + triangleCentre(body.mesh(), t) * (body.massKgMm2[t] * triangleAreaMm2(body.mesh(), t));
    }
    body.centroid = turning * (1.0 / body.massKg);
}

void fillAngles(Body& body)
{
    body.angle.reserve(body.mesh().triangles.size());
    for (const auto& t : body.mesh().triangles) {
        std::array<double, 3>& angle = body.angle.emplace_back();
        for (int i = 0; i < 3; ++i) {
            const Point p = body.mesh().nodes[t[i]];
            const Point a = body.mesh().nodes[t[(i + 1) % 3]] - p;
            const Point b = body.mesh().nodes[t[(i + 2) % 3]] - p;
            angle[i] = std::atan2(cross(a, b), dot(a, b));
        }
    }
}

std::string cutoutAt(const StrengthInput& input, Point p)
{
    const auto* counter = std::get_if<Counter>(&input.body);
    if (!counter) return {};
    std::string best;
    double least = 2 * kChordSlackMm;
    for (const Cutout& cutout : counter->cutouts) {
        const double mm = distanceToRing(cutoutRing(cutout), p);
        if (mm < least) {
            least = mm;
            best = cutout.id;
        }
    }
    return best;
}

Point unit(Point v)
{
    const double span = length(v);
    return span > 0.0 ? v * (1.0 / span) : Point{};
}

/// Directions into the concrete: at an arc square to it, at a sharp corner a fan between those square to its edges.
std::vector<CrackLine> crackLines(const InnerArc& arc)
{
    std::vector<CrackLine> lines;
    if (arc.points.size() == 1) {
        const Point p = arc.points.front();
        const Point first = leftNormal(unit(p - arc.before));
        const Point last = leftNormal(unit(arc.after - p));
        const double turn = std::atan2(cross(first, last), dot(first, last));
        const double start = std::atan2(first.y, first.x);
        for (int i = 0; i < kSharpCrackLines; ++i) {
            const double angle = start + turn * i / (kSharpCrackLines - 1);
            lines.push_back({p, {std::cos(angle), std::sin(angle)}, {}});
        }
        return lines;
    }
    for (std::size_t i = 0; i < arc.points.size(); ++i) {
        const Point before = i > 0 ? arc.points[i - 1] : arc.before;
        const Point after = i + 1 < arc.points.size() ? arc.points[i + 1] : arc.after;
        const Point p = arc.points[i];
        lines.push_back({p, unit(leftNormal(unit(p - before)) + leftNormal(unit(after - p))), {}});
    }
    return lines;
}

int mostOf(const Body& body, int triangle)
{
    int most = 0;
    for (int i = 1; i < body.kindCount(); ++i) {
        if (body.share[triangle * body.kindCount() + i] > body.share[triangle * body.kindCount() + most]) most = i;
    }
    return most;
}

/// Along all crack lines: beside a step in depth a thickness that is neither the one nor the other, and does not change at
/// once when the step passes the corner.
double meanThicknessMm(const Body& body, const InnerCorner& corner)
{
    double sum = 0.0;
    int count = 0;
    for (const CrackLine& line : corner.lines) {
        for (const PlaceInMesh& place : line.samples) {
            for (int k = 0; k < body.kindCount(); ++k)
                sum += body.share[static_cast<std::size_t>(place.triangle) * body.kinds.size() + k] * body.kinds[k].depthMm;
            ++count;
        }
    }
    return count > 0 ? sum / count : 0.0;
}

void fillCorners(Body& body, const std::vector<InnerArc>& arcs)
{
    const TriangleMesh& mesh = body.mesh();
    body.cornerOfNode.assign(mesh.nodes.size(), -1);
    for (const InnerArc& arc : arcs) {
        InnerCorner corner;
        corner.along = arc.points;
        corner.of = cutoutAt(body.input, arc.points[arc.points.size() / 2]);
        corner.lines = crackLines(arc);
        for (CrackLine& line : corner.lines) {
            const PlaceInMesh just = body.index.find(mesh, line.from + line.inward * 1.0);
            if (just.triangle < 0) continue;
            const double thickness = body.kinds[mostOf(body, just.triangle)].depthMm;
            for (int i = 0; i < kCrackSamples; ++i) {
                const Point p = line.from + line.inward * (thickness * (i + 0.5) / kCrackSamples);
                const PlaceInMesh place = body.index.find(mesh, p);
                if (place.triangle < 0) break;
                line.samples.push_back(place);
            }
        }
        std::erase_if(corner.lines, [](const CrackLine& line) { return line.samples.empty(); });
        if (corner.lines.empty()) continue;
        corner.thicknessMm = meanThicknessMm(body, corner);
        const double reach = kCornerNodeShare * corner.thicknessMm;
        const int number = static_cast<int>(body.corners.size());
        for (const Point p : corner.along) {
            body.index.nearBox({p.x - reach, p.y - reach}, {p.x + reach, p.y + reach}, [&](int t) {
                for (const int node : mesh.triangles[t]) {
                    const Point d = mesh.nodes[node] - p;
                    if (dot(d, d) <= reach * reach) body.cornerOfNode[node] = number;
                }
            });
        }
        body.corners.push_back(std::move(corner));
    }
}

std::shared_ptr<const Body> makeMeshed(const StrengthInput& input, Refinement refinement, const Fineness& fineness,
                                       const std::vector<Ring>& alsoLines, const std::vector<Point>& alsoPoints,
                                       const std::vector<FinePlace>& alsoFine, bool withMarks)
{
    if (!input.casting || input.casting->outline.empty() || !(input.casting->massKg > 0.0)) return nullptr;
    const std::vector<KindRegion> kinds = kindsOf(input);
    if (kinds.empty()) return nullptr;
    auto body = std::make_shared<Body>();
    body->input = input;
    body->refinement = refinement;
    std::vector<Region> regions;
    for (const KindRegion& k : kinds) {
        body->kinds.push_back(k.kind);
        regions.push_back(k.region);
    }
    MeshPlan plan = meshPlan(input, fineness, regions);
    plan.request.lines.insert(plan.request.lines.end(), alsoLines.begin(), alsoLines.end());
    plan.request.points.insert(plan.request.points.end(), alsoPoints.begin(), alsoPoints.end());
    plan.request.fine.insert(plan.request.fine.end(), alsoFine.begin(), alsoFine.end());
    body->model.mesh = meshOf(plan.request);
    if (body->mesh().triangles.empty()) return nullptr;
    body->model.poisson = kPoisson;
    body->model.elasticMpa = concreteAtAge(input, kFullAgeH).elasticMpa;
    body->index = TriangleIndex(body->mesh());
    fillShares(*body, kinds);
    fillSections(*body, twistLeftByEdges(*body, kinds), kinds);
    fillAngles(*body);
    fillCorners(*body, plan.arcs);
    if (withMarks) {
        fillCrackStrips(*body);
        const Polygon& domain = plan.request.domain.front();
        std::vector<Ring> boundary{domain.outer};
        boundary.insert(boundary.end(), domain.holes.begin(), domain.holes.end());
        body->marks = stressMarks(*body, regions, boundary);
    }
    return body;
}

}  // namespace

double meshSizeMm(Refinement refinement)
{
    switch (refinement) {
        case Refinement::draft: return 50.0;
        case Refinement::working: return 30.0;
        case Refinement::printed: return 20.0;
    }
    return 30.0;
}

std::shared_ptr<const Body> makeBody(const StrengthInput& input, Refinement refinement,
                                     const std::vector<Ring>& alsoLines, const std::vector<Point>& alsoPoints,
                                     const std::vector<FinePlace>& alsoFine)
{
    return makeMeshed(input, refinement, finenessOf(refinement), alsoLines, alsoPoints, alsoFine, true);
}

std::shared_ptr<const Body> makeCoarseBody(const StrengthInput& input, const std::vector<Ring>& alsoLines,
                                           const std::vector<Point>& alsoPoints)
{
    return makeMeshed(input, Refinement::draft, coarse(), alsoLines, alsoPoints, {}, false);
}

NodeVector ownWeightLoad(const Body& body, std::array<double, 3> down, double factor)
{
    std::vector<std::array<double, 3>> pressure(body.massKgMm2.size());
    for (std::size_t t = 0; t < pressure.size(); ++t) {
        const double n = body.massKgMm2[t] * kGravityMS2 * factor;
        pressure[t] = {n * down[0], n * down[1], n * down[2]};
    }
    return surfaceLoad(body.model, pressure, body.massZMm);
}

std::vector<NodeSpring> inPlaneHold(const Body& body)
{
    constexpr double kStiffNMm = 1e5;
    const std::vector<Point>& nodes = body.mesh().nodes;
    const auto byX = std::minmax_element(nodes.begin(), nodes.end(), [](Point a, Point b) { return a.x < b.x; });
    const auto byY = std::minmax_element(nodes.begin(), nodes.end(), [](Point a, Point b) { return a.y < b.y; });
    const bool wide = byX.second->x - byX.first->x >= byY.second->y - byY.first->y;
    const auto index = [&](auto it) { return static_cast<int>(it - nodes.begin()); };
    NodeSpring both{wide ? index(byX.first) : index(byY.first), {kStiffNMm, kStiffNMm, 0, 0, 0, 0}};
    NodeSpring aside{wide ? index(byX.second) : index(byY.second), {}};
    aside.stiffness[wide ? 1 : 0] = kStiffNMm;
    return {both, aside};
}

std::vector<ContactSpring> bedUnder(const Body& body, const Region& region, double bedNMm3)
{
    return contactSprings(body.mesh(), region, bedNMm3);
}

int nearestNode(const Body& body, Point at)
{
    int best = 0;
    double least = HUGE_VAL;
    for (std::size_t i = 0; i < body.mesh().nodes.size(); ++i) {
        const Point d = body.mesh().nodes[i] - at;
        if (dot(d, d) < least) {
            least = dot(d, d);
            best = static_cast<int>(i);
        }
    }
    return best;
}

std::vector<double> usableStrengthMpa(const Body& body, double ageH)
{
    const double fctk = concreteAtAge(body.input, ageH).fctk005Mpa;
    std::vector<double> result;
    for (const SectionKind& kind : body.kinds)
        result.push_back(flexuralFactor(kind.depthMm) * fctk / std::max(body.input.assumptions.crackSafety, 1e-6));
    return result;
}

}  // namespace yardcast
