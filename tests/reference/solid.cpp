#include "tests/reference/solid.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "tests/reference/ccx.h"

namespace yardcast::reference {

namespace {

/// A spring of the bed under a node.
struct BedSpring {
    int node = 0;  ///< id
    int rest = 0;
    double stiffnessNMm = 0.0;
    bool presses = true;
};

double squared(double x) { return x * x; }

/// Underside of the bricks over the rests. A face of 8 nodes gives a quarter of its bed to each mid-edge node and
/// nothing to its corners: the trapezoidal rule at half the pitch. (A corner's consistent share would be negative.)
std::vector<BedSpring> bedOf(const Slab& slab, const SolidMesh& mesh)
{
    std::vector<double> stiffness(mesh.nodes().size() + 1, 0.0);
    std::vector<int> restOf(mesh.nodes().size() + 1, -1);
    const double lowest = mesh.zs().back();
    for (const SolidMesh::Brick& brick : mesh.bricks()) {
        const auto [i, j, k] = brick.cell;
        if (mesh.zs()[k + 1] > lowest + 1e-9) continue;
        const Point centre{(mesh.xs()[i] + mesh.xs()[i + 1]) / 2, (mesh.ys()[j] + mesh.ys()[j + 1]) / 2};
        const double area = (mesh.xs()[i + 1] - mesh.xs()[i]) * (mesh.ys()[j + 1] - mesh.ys()[j]);
        for (std::size_t r = 0; r < slab.rests.size(); ++r) {
            const Box& rest = slab.rests[r];
            if (centre.x < rest.low.x || centre.x > rest.high.x || centre.y < rest.low.y || centre.y > rest.high.y)
                continue;
            for (int n = 8; n < 12; ++n) {
                stiffness[brick.nodes[n]] += slab.bedNMm3 * area / 4;
                restOf[brick.nodes[n]] = static_cast<int>(r);
            }
            break;
        }
    }
    std::vector<BedSpring> bed;
    for (std::size_t id = 1; id < stiffness.size(); ++id) {
        if (stiffness[id] > 0.0) bed.push_back({static_cast<int>(id), restOf[id], stiffness[id], true});
    }
    return bed;
}

std::string deckOf(const Slab& slab, const SolidMesh& mesh, const std::vector<BedSpring>& bed)
{
    DeckText deck;
    deck << "*NODE, NSET=NALL\n";
    for (std::size_t n = 0; n < mesh.nodes().size(); ++n) {
        const auto& p = mesh.nodes()[n];
        deck << static_cast<int>(n) + 1 << "," << p[0] << "," << p[1] << "," << p[2] << "\n";
    }
    deck << "*ELEMENT, TYPE=C3D20R, ELSET=EALL\n";
    int element = 0;
    for (const SolidMesh::Brick& brick : mesh.bricks()) {
        deck << ++element;
        for (int n = 0; n < 20; ++n) deck << (n == 10 ? ",\n" : ",") << brick.nodes[n];
        deck << "\n";
    }
    for (const BedSpring& spring : bed) {
        if (!spring.presses) continue;
        const std::string set = "BED" + std::to_string(++element);
        deck << "*ELEMENT, TYPE=SPRING1, ELSET=" << set << "\n" << element << "," << spring.node << "\n";
        deck << "*SPRING, ELSET=" << set << "\n3\n" << spring.stiffnessNMm << "\n";
    }
    deck << "*MATERIAL, NAME=CONCRETE\n*ELASTIC\n" << slab.elasticMpa << "," << slab.poisson << "\n";
    // Weight by a density of 1 and the weight per volume for an acceleration.
    deck << "*DENSITY\n1.\n*SOLID SECTION, ELSET=EALL, MATERIAL=CONCRETE\n";
    // Three freedoms in the plane hold the body without straining it: the first node and the one farthest along x.
    int far = 1;
    const auto& first = mesh.nodes().front();
    for (std::size_t n = 0; n < mesh.nodes().size(); ++n) {
        const auto& p = mesh.nodes()[n];
        if (p[1] == first[1] && p[2] == first[2] && p[0] > mesh.nodes()[far - 1][0]) far = static_cast<int>(n) + 1;
    }
    deck << "*BOUNDARY\n1,1,2\n" << far << ",2,2\n";
    deck << "*STEP\n*STATIC\n*DLOAD\nEALL,GRAV," << weightNMm3() << ",0.,0.,-1.\n";
    deck << "*NODE PRINT, NSET=NALL\nU\n*EL PRINT, ELSET=EALL\nS\n*END STEP\n";
    return deck.text();
}

/// Stress of a brick at a place of its own (-1..1 each way; z up), from its 8 integration points.
std::array<double, 6> stressAt(const std::vector<std::array<double, 6>>& points, double x, double y, double z)
{
    std::array<double, 6> stress{};
    const double s = std::numbers::sqrt3;
    for (int n = 0; n < 8; ++n) {
        const double weight = (1 + (n & 1 ? s : -s) * x) * (1 + (n & 2 ? s : -s) * y) * (1 + (n & 4 ? s : -s) * z) / 8;
        for (int c = 0; c < 6; ++c) stress[c] += weight * points[n][c];
    }
    return stress;
}

/// Moment and force over a cut along a plane of the mesh, from the integration points beside it.
CutForce forceOver(const PlaneCut& cut, const SolidMesh& mesh, const CcxResults& results)
{
    const bool acrossX = cut.from.x == cut.to.x;  // the plane x = const
    const std::vector<double>& across = acrossX ? mesh.xs() : mesh.ys();
    const std::vector<double>& along = acrossX ? mesh.ys() : mesh.xs();
    const std::vector<double>& zs = mesh.zs();
    const double plane = acrossX ? cut.from.x : cut.from.y;
    const double low = acrossX ? std::min(cut.from.y, cut.to.y) : std::min(cut.from.x, cut.to.x);
    const double high = acrossX ? std::max(cut.from.y, cut.to.y) : std::max(cut.from.x, cut.to.x);
    const int at = static_cast<int>(std::lower_bound(across.begin(), across.end(), plane - 1e-6) - across.begin());
    const int component = acrossX ? 0 : 1;

    double width = 0.0, area = 0.0, firstMoment = 0.0, force = 0.0, momentAboutFace = 0.0;
    for (std::size_t row = 0; row + 1 < along.size(); ++row) {
        const double middle = (along[row] + along[row + 1]) / 2;
        if (middle < low || middle > high) continue;
        for (std::size_t k = 0; k + 1 < zs.size(); ++k) {
            const int r = static_cast<int>(row);
            const int layer = static_cast<int>(k);
            const int sides[2] = {acrossX ? mesh.brickAt(at - 1, r, layer) : mesh.brickAt(r, at - 1, layer),
                                  acrossX ? mesh.brickAt(at, r, layer) : mesh.brickAt(r, at, layer)};
            const int count = (sides[0] >= 0) + (sides[1] >= 0);
            if (count == 0) continue;
            const double cellArea = (along[row + 1] - along[row]) * (zs[k] - zs[k + 1]);
            if (k == 0) width += along[row + 1] - along[row];
            area += cellArea;
            firstMoment += cellArea * (zs[k] + zs[k + 1]) / 2;
            for (int side = 0; side < 2; ++side) {
                if (sides[side] < 0) continue;
                const auto& points = results.stress.at(sides[side] + 1);
                const double own = side == 0 ? 1.0 : -1.0;
                for (int g = 0; g < 4; ++g) {
                    const double t = (g & 1 ? 1 : -1) / std::numbers::sqrt3;
                    const double u = (g & 2 ? 1 : -1) / std::numbers::sqrt3;
                    const auto stress = acrossX ? stressAt(points, own, t, u) : stressAt(points, t, own, u);
                    const double z = (zs[k] + zs[k + 1]) / 2 + u * (zs[k] - zs[k + 1]) / 2;
                    const double share = cellArea / 4 / count * stress[component];
                    force += share;
                    momentAboutFace -= share * z;
                }
            }
        }
    }
    CutForce answer;
    if (area == 0.0) return answer;
    answer.meanForceNMm = force / width;
    answer.meanMomentN = (momentAboutFace + force * firstMoment / area) / width;
    return answer;
}

std::vector<FibreSample> fibresOf(const SolidMesh& mesh, const CcxResults& results)
{
    std::vector<FibreSample> fibres;
    for (int i = 0; i + 1 < static_cast<int>(mesh.xs().size()); ++i) {
        for (int j = 0; j + 1 < static_cast<int>(mesh.ys().size()); ++j) {
            const int top = mesh.brickAt(i, j, 0);
            if (top < 0) continue;
            int bottom = top;
            for (int k = 1; mesh.brickAt(i, j, k) >= 0; ++k) bottom = mesh.brickAt(i, j, k);
            FibreSample sample;
            sample.at = {(mesh.xs()[i] + mesh.xs()[i + 1]) / 2, (mesh.ys()[j] + mesh.ys()[j + 1]) / 2};
            const auto face = stressAt(results.stress.at(top + 1), 0, 0, 1);
            const auto underside = stressAt(results.stress.at(bottom + 1), 0, 0, -1);
            sample.face = {face[0], face[1], face[3]};
            sample.underside = {underside[0], underside[1], underside[3]};
            fibres.push_back(sample);
        }
    }
    return fibres;
}

}  // namespace

SolidAnswer solveSolid(const Slab& slab, const SolidMeshing& meshing, const SolidAnswer* first)
{
    const SolidMesh mesh(slab, meshing);
    SolidAnswer answer;
    answer.bricks = mesh.bricks().size();
    answer.nodes = mesh.nodes().size();
    std::vector<BedSpring> bed = bedOf(slab, mesh);
    if (first && !first->bed.empty()) {
        for (BedSpring& spring : bed) {
            const auto& p = mesh.nodes()[spring.node - 1];
            const auto far = [&p](const auto& a) { return squared(a[0] - p[0]) + squared(a[1] - p[1]); };
            const auto nearest = std::min_element(first->bed.begin(), first->bed.end(),
                                                  [&far](const auto& a, const auto& b) { return far(a) < far(b); });
            spring.presses = (*nearest)[2] < 0.0;
        }
    }

    constexpr int kMostRuns = 25;
    CcxRun run;
    bool settled = false;
    while (!settled && answer.runs < kMostRuns) {
        run = runCcx(deckOf(slab, mesh, bed));
        ++answer.runs;
        answer.seconds += run.seconds;
        if (!run.trouble.empty()) {
            answer.trouble = run.trouble;
            return answer;
        }
        settled = true;
        for (BedSpring& spring : bed) {
            const bool presses = run.results.displacement.at(spring.node)[2] < 0.0;
            if (presses != spring.presses) settled = false;
            spring.presses = presses;
        }
    }
    if (!settled) {
        answer.trouble = "the bed did not settle";
        return answer;
    }

    answer.restN.assign(slab.rests.size(), 0.0);
    for (const BedSpring& spring : bed) {
        const double w = run.results.displacement.at(spring.node)[2];
        const auto& p = mesh.nodes()[spring.node - 1];
        answer.bed.push_back({p[0], p[1], w});
        if (spring.presses) answer.restN[spring.rest] -= spring.stiffnessNMm * w;
    }
    for (const double n : answer.restN) answer.pressN += n;
    for (const auto& [id, u] : run.results.displacement) answer.deflectionMm = std::max(answer.deflectionMm, -u[2]);
    for (const PlaneCut& cut : slab.cuts) answer.cuts.push_back(forceOver(cut, mesh, run.results));
    answer.fibres = fibresOf(mesh, run.results);
    return answer;
}

}  // namespace yardcast::reference
