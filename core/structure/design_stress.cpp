#include "core/structure/design_stress.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <utility>

#include "core/structure/spread.h"

namespace yardcast {

namespace {
using fibres::percentOf;
using fibres::Stress;
using fibres::tensionOf;

/// Thicknesses within which the plane is fitted. Found on 200 slabs whose cutout is dragged, own weight: of 1,200 steps
/// 24, 11, 12 change the greatest tension by more than 2 % for 1, 1.5, 2 thicknesses, and 63 do by bare nodes; with 2
/// the peak under a person's square is some 5 % too low.
constexpr double kReach = 1.5;
/// A place's tension is never more than so many times what the nodes about it have: in what is left of a thin slab
/// between a cutout and a rim up to 1.3 times, elsewhere 1.1.
constexpr double kMostAboveBare = 1.4;
/// Places on less than a plane have a mean only.
constexpr double kLeastSpread = 1e-3;
/// Of a kind of section that has less than the first share of the concrete in reach the stress counts nothing, from the
/// second on in full: what is left of a thin slab between a cutout and a rim bends as the rim does, of which it is
/// told.
constexpr double kNothingOfReach = 0.2;
constexpr double kEnoughOfReach = 0.35;

FibreTension tensionsOf(const FibreStress& stress) { return {tensionOf(stress.face), tensionOf(stress.underside)}; }

/// How far the plane is followed: from the middle of the kind's own concrete in reach towards the place (the origin),
/// by what the middle of all concrete in reach lies off it. With none that is deeper this ends in the place itself; beside
/// a straight step it is not followed at all. It stays within the circle through both, which is all that a step and an
/// edge square to it ask for: of a narrow strip between an edge and a step it would tell what is felt outside the body.
Point followed(Point own, Point all)
{
    const Point middle = own * 0.5;
    const Point off = own - all - middle;
    const double far = length(off);
    const double radius = length(middle);
    return middle + (far > radius ? off * (radius / far) : off);
}

}  // namespace

DesignStress::DesignStress(const Body& body, const std::vector<std::array<ShellForces, 3>>& forces,
                           const StressField& field, const std::vector<Point>& also)
    : body_(body), forces_(forces), field_(field), stresses_(body.mesh().triangles.size() * body.kinds.size()),
      seen_(body.mesh().triangles.size(), -1)
{
    fillCandidates(also);
}

const DesignStress::CornerStress& DesignStress::stressOf(int triangle, int kind)
{
    CornerStress& stress = stresses_[static_cast<std::size_t>(triangle) * body_.kinds.size() + kind];
    if (stress.known) return stress;
    stress.known = true;
    const ShellSection& section = body_.model.sections[triangle];
    const SectionKind& own = body_.kinds[kind];
    const double perArea = 1.0 / section.areaMm;
    const double up = own.skins ? -own.depthMm / 2 : section.centreMm;
    for (int i = 0; i < 3; ++i) {
        const ShellForces& f = forces_[triangle][i];
        const Stress perMm = stressPerMm(section, f.moment);
        for (int c = 0; c < 3; ++c) {
            stress.at[i][3 + c] = perMm[c];
            stress.at[i][c] = f.force[c] * perArea + stress.at[i][3 + c] * up;
        }
    }
    return stress;
}

void DesignStress::gather(Point low, Point high)
{
    near_.clear();
    const int number = places_++;
    body_.index.nearBox(low, high, [&](int t) {
        if (seen_[t] == number) return;
        seen_[t] = number;
        near_.push_back(t);
    });
}

FibreStress DesignStress::at(Point place, int kind)
{
    const TriangleMesh& mesh = body_.mesh();
    const int kinds = body_.kindCount();
    const SectionKind& own = body_.kinds[kind];
    const double thickness = own.skins ? -own.undersideMm : own.depthMm;
    const double reach = std::max(kReach * thickness, kLeastReachMm);
    const double perReach = 1.0 / reach;
    gather({place.x - reach, place.y - reach}, {place.x + reach, place.y + reach});

    double m[6] = {};     // sums of weight, x, y, xx, xy, yy
    double all[3] = {};   // of weight, x, y with the deeper kinds
    std::array<double, 6> sum{}, sumX{}, sumY{};
    for (const int t : near_) {
        double share = body_.tells(t, kind) ? body_.share[static_cast<std::size_t>(t) * kinds + kind] : 0.0;
        double deeper = 0.0;
        for (int k = 0; k < kinds; ++k) {
            if (body_.kinds[k].depthMm > own.depthMm) deeper += body_.share[static_cast<std::size_t>(t) * kinds + k];
        }
        if (!(share + deeper > 0.0)) continue;
        Point p[3];
        for (int i = 0; i < 3; ++i) p[i] = (mesh.nodes[mesh.triangles[t][i]] - place) * perReach;
        if (std::max({p[0].x, p[1].x, p[2].x}) < -1 || std::min({p[0].x, p[1].x, p[2].x}) > 1 ||
            std::max({p[0].y, p[1].y, p[2].y}) < -1 || std::min({p[0].y, p[1].y, p[2].y}) > 1)
            continue;
        const double area = cross(p[1] - p[0], p[2] - p[0]) / 2;
        const int across = std::clamp(static_cast<int>(std::ceil(3.0 * std::sqrt(area))), 1, 4);
        const CornerStress& corners = stressOf(t, kind);
        spreadOverTriangle(across, [&](const std::array<double, 3>& l, double part) {
            const Point q = p[0] * l[0] + p[1] * l[1] + p[2] * l[2];
            const double left = 1.0 - dot(q, q);
            if (!(left > 0.0)) return;
            const double whole = area * part * left * left;
            const double weight = whole * share;
            const double both = whole * (share + deeper);
            all[0] += both;
            all[1] += both * q.x;
            all[2] += both * q.y;
            if (!(weight > 0.0)) return;
            m[0] += weight;
            m[1] += weight * q.x;
            m[2] += weight * q.y;
            m[3] += weight * q.x * q.x;
            m[4] += weight * q.x * q.y;
            m[5] += weight * q.y * q.y;
            for (int c = 0; c < 6; ++c) {
                const double value = weight * (l[0] * corners.at[0][c] + l[1] * corners.at[1][c] + l[2] * corners.at[2][c]);
                sum[c] += value;
                sumX[c] += value * q.x;
                sumY[c] += value * q.y;
            }
        });
    }
    FibreStress stress;
    const double counts = std::clamp((m[0] / all[0] - kNothingOfReach) / (kEnoughOfReach - kNothingOfReach), 0.0, 1.0);
    if (!(counts > 0.0)) return stress;
    const double x = m[1] / m[0];
    const double y = m[2] / m[0];
    const Point told = followed({x, y}, {all[1] / all[0], all[2] / all[0]});
    const double xx = m[3] / m[0] - x * x;
    const double xy = m[4] / m[0] - x * y;
    const double yy = m[5] / m[0] - y * y;
    const double determinant = xx * yy - xy * xy;
    const bool plane = determinant > kLeastSpread * kLeastSpread;
    std::array<double, 6> value{};
    for (int c = 0; c < 6; ++c) {
        const double mean = sum[c] / m[0];
        value[c] = mean;
        if (!plane) continue;
        const double alongX = sumX[c] / m[0] - mean * x;
        const double alongY = sumY[c] / m[0] - mean * y;
        value[c] -= ((x - told.x) * (yy * alongX - xy * alongY) + (y - told.y) * (xx * alongY - xy * alongX)) /
                    determinant;
    }
    for (int c = 0; c < 3; ++c) {
        stress.face[c] = counts * value[c];
        stress.underside[c] = counts * (value[c] + own.depthMm * value[3 + c]);
    }
    return stress;
}

fibres::CornerTension DesignStress::alongLines(int number)
{
    const InnerCorner& corner = body_.corners[number];
    fibres::CornerTension worst;
    worst.topAt = worst.bottomAt = corner.along.front();
    for (const CrackLine& line : corner.lines) {
        if (line.strip.empty()) continue;
        Stress face{};
        Stress underside{};
        for (const TriangleWeight& part : line.strip) {
            const CornerStress& corners = stressOf(part.triangle, part.kind);
            const double depth = body_.kinds[part.kind].depthMm;
            for (int i = 0; i < 3; ++i) {
                for (int c = 0; c < 3; ++c) {
                    face[c] += part.weight[i] * corners.at[i][c];
                    underside[c] += part.weight[i] * (corners.at[i][c] + depth * corners.at[i][3 + c]);
                }
            }
        }
        worst.take({tensionOf(face), tensionOf(underside)}, line.stripKind, line.from);
    }
    return worst;
}

FibreTension DesignStress::atCorner(int corner) { return corners()[corner].tension; }

const std::vector<fibres::CornerTension>& DesignStress::corners()
{
    if (corners_.size() < body_.corners.size()) {
        corners_.clear();
        for (int i = 0; i < static_cast<int>(body_.corners.size()); ++i) corners_.push_back(alongLines(i));
    }
    return corners_;
}

FibreTension DesignStress::bareTension(const PlaceInMesh& place, int kind) const
{
    Stress face{};
    Stress perMm{};
    double weight = 0.0;
    for (int i = 0; i < 3; ++i) {
        const std::size_t at =
            static_cast<std::size_t>(body_.mesh().triangles[place.triangle][i]) * body_.kinds.size() + kind;
        if (!field_.there[at]) continue;
        weight += place.weight[i];
        for (int c = 0; c < 3; ++c) {
            face[c] += place.weight[i] * field_.atFace[at][c];
            perMm[c] += place.weight[i] * field_.perMm[at][c];
        }
    }
    if (!(weight > 1e-3)) return {};
    Stress under;
    for (int c = 0; c < 3; ++c) {
        face[c] /= weight;
        under[c] = face[c] + body_.kinds[kind].depthMm * perMm[c] / weight;
    }
    return {tensionOf(face), tensionOf(under)};
}

void DesignStress::fillCandidates(const std::vector<Point>& also)
{
    const int kinds = body_.kindCount();
    const auto add = [&](Point at, int kind, const FibreTension& bare) {
        candidates_.push_back({at, kind, bare, {}, false});
    };
    candidateOf_.assign(field_.there.size(), -1);
    for (std::size_t node = 0; node < body_.mesh().nodes.size(); ++node) {
        if (body_.cornerOfNode[node] >= 0) continue;
        for (int k = 0; k < kinds; ++k) {
            if (!field_.there[node * kinds + k]) continue;
            candidateOf_[node * kinds + k] = static_cast<int>(candidates_.size());
            add(body_.mesh().nodes[node], k, fibreTension(body_, field_, static_cast<int>(node), k));
        }
    }
    for (const StressMark& mark : body_.marks) add(mark.at, mark.kind, bareTension(mark.place, mark.kind));
    for (const Point p : also) {
        const PlaceInMesh place = body_.index.find(body_.mesh(), p);
        if (place.triangle < 0) continue;
        for (int k = 0; k < kinds; ++k) {
            if (body_.tells(place.triangle, k)) add(p, k, bareTension(place, k));
        }
    }
}

template <typename Measure, typename Visit>
void DesignStress::seek(double least, Measure measure, Visit visit)
{
    std::vector<std::pair<double, int>> order;
    for (std::size_t i = 0; i < candidates_.size(); ++i) {
        const double m = kMostAboveBare * measure(candidates_[i].bare, candidates_[i].kind);
        if (m > least) order.push_back({-m, static_cast<int>(i)});
    }
    std::make_heap(order.begin(), order.end(), std::greater<>());
    while (!order.empty() && -order.front().first > least) {
        Candidate& c = candidates_[order.front().second];
        if (!c.isTold) c.told = tensionsOf(at(c.at, c.kind));
        c.isTold = true;
        least = std::max(least, measure(c.told, c.kind));
        visit(c.at, c.kind, c.told);
        std::pop_heap(order.begin(), order.end(), std::greater<>());
        order.pop_back();
    }
}

GreatestUse DesignStress::greatestUse(const std::vector<double>& strengthMpa)
{
    fibres::UseSearch search(strengthMpa);
    for (std::size_t i = 0; i < corners().size(); ++i) search.consider(corners_[i], static_cast<int>(i));
    const auto measure = [&](const FibreTension& t, int kind) {
        return percentOf(std::max(t.topMpa, t.bottomMpa), strengthMpa[kind]);
    };
    seek(search.use().percent, measure,
         [&](Point at, int kind, const FibreTension& t) { search.consider(t, kind, at); });
    return search.use();
}

FibreTension DesignStress::greatestTension()
{
    if (greatest_) return *greatest_;
    FibreTension greatest;
    for (const fibres::CornerTension& c : corners()) {
        greatest.topMpa = std::max(greatest.topMpa, c.tension.topMpa);
        greatest.bottomMpa = std::max(greatest.bottomMpa, c.tension.bottomMpa);
    }
    for (double FibreTension::* side : {&FibreTension::topMpa, &FibreTension::bottomMpa}) {
        seek(greatest.*side, [side](const FibreTension& t, int) { return t.*side; },
             [&](Point, int, const FibreTension& t) {
                 greatest.topMpa = std::max(greatest.topMpa, t.topMpa);
                 greatest.bottomMpa = std::max(greatest.bottomMpa, t.bottomMpa);
             });
    }
    greatest_ = greatest;
    return greatest;
}

FibreTension DesignStress::drawnAt(int node, int kind)
{
    const int candidate = candidateOf_[static_cast<std::size_t>(node) * body_.kinds.size() + kind];
    if (candidate >= 0 && candidates_[candidate].isTold) return candidates_[candidate].told;
    const int corner = body_.cornerOfNode[node];
    const FibreTension most = corner >= 0 ? atCorner(corner) : greatestTension();
    const FibreTension bare = fibreTension(body_, field_, node, kind);
    return {std::min(bare.topMpa, most.topMpa), std::min(bare.bottomMpa, most.bottomMpa)};
}

}  // namespace yardcast
