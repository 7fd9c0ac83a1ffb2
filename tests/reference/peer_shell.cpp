#include "tests/reference/peer_shell.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <utility>

#include "core/castings/counter_zones.h"
#include "tests/reference/ccx.h"

namespace yardcast::reference {

namespace {

Region regionOfBox(const Box& box)
{
    return regionOf({box.low, {box.high.x, box.low.y}, box.high, {box.low.x, box.high.y}});
}

struct SixNodeMesh {
    std::vector<Point> nodes;
    std::vector<std::array<int, 6>> triangles;  ///< corners, then mid-sides 0-1, 1-2, 2-0
};

SixNodeMesh withMidsides(const TriangleMesh& mesh)
{
    SixNodeMesh six;
    six.nodes = mesh.nodes;
    std::map<std::pair<int, int>, int> midOf;
    for (const auto& t : mesh.triangles) {
        std::array<int, 6> all{t[0], t[1], t[2], 0, 0, 0};
        for (int e = 0; e < 3; ++e) {
            const auto ends = std::minmax(t[e], t[(e + 1) % 3]);
            const auto [place, isNew] = midOf.try_emplace(ends, static_cast<int>(six.nodes.size()));
            if (isNew) six.nodes.push_back((mesh.nodes[ends.first] + mesh.nodes[ends.second]) * 0.5);
            all[3 + e] = place->second;
        }
        six.triangles.push_back(all);
    }
    return six;
}

/// The bed under each node: an even pressure on a triangle of six nodes is borne by its mid-sides, a third each.
std::vector<double> bedOf(const Slab& slab, const TriangleMesh& mesh, const SixNodeMesh& six)
{
    std::vector<double> stiffness(six.nodes.size(), 0.0);
    for (const Box& rest : slab.rests) {
        const Region region = regionOfBox(rest);
        for (std::size_t t = 0; t < mesh.triangles.size(); ++t) {
            const auto& corners = mesh.triangles[t];
            const Ring ring{mesh.nodes[corners[0]], mesh.nodes[corners[1]], mesh.nodes[corners[2]]};
            const Box bounds = *boundsOf(ring);
            if (bounds.low.x >= rest.high.x || bounds.high.x <= rest.low.x || bounds.low.y >= rest.high.y ||
                bounds.high.y <= rest.low.y)
                continue;
            const double share = slab.bedNMm3 * areaMm2(intersect(regionOf(ring), region)) / 3;
            for (int n = 3; n < 6; ++n) stiffness[six.triangles[t][n]] += share;
        }
    }
    return stiffness;
}

std::string deckOf(const Slab& slab, const SixNodeMesh& six, const std::vector<double>& bed,
                   const std::vector<bool>& presses)
{
    DeckText deck;
    deck << "*NODE, NSET=NALL\n";
    int leftmost = 0, rightmost = 0;
    for (std::size_t n = 0; n < six.nodes.size(); ++n) {
        const Point p = six.nodes[n];
        if (p.x < six.nodes[leftmost].x) leftmost = static_cast<int>(n);
        if (p.x > six.nodes[rightmost].x) rightmost = static_cast<int>(n);
        deck << static_cast<int>(n) + 1 << "," << p.x << "," << p.y << ",0.\n";
    }
    deck << "*ELEMENT, TYPE=S6, ELSET=EALL\n";
    int element = 0;
    for (const auto& t : six.triangles) {
        deck << ++element;
        for (const int n : t) deck << "," << n + 1;
        deck << "\n";
    }
    for (std::size_t n = 0; n < bed.size(); ++n) {
        if (!presses[n]) continue;
        const std::string set = "BED" + std::to_string(++element);
        deck << "*ELEMENT, TYPE=SPRING1, ELSET=" << set << "\n" << element << "," << static_cast<int>(n) + 1 << "\n";
        deck << "*SPRING, ELSET=" << set << "\n3\n" << bed[n] << "\n";
    }
    deck << "*MATERIAL, NAME=CONCRETE\n*ELASTIC\n" << slab.elasticMpa << "," << slab.poisson << "\n*DENSITY\n1.\n";
    deck << "*SHELL SECTION, ELSET=EALL, MATERIAL=CONCRETE\n" << slab.counter.thicknessMm << "\n";
    deck << "*BOUNDARY\n" << leftmost + 1 << ",1,2\n" << rightmost + 1 << ",2,2\n";
    deck << "*STEP\n*STATIC\n*DLOAD\nEALL,GRAV," << weightNMm3() << ",0.,0.,-1.\n";
    deck << "*NODE PRINT, NSET=NALL\nU\n*EL PRINT, ELSET=EALL\nS\n*END STEP\n";
    return deck.text();
}

/// Stress at both faces above the centroid. ccx swells S6 to a wedge with three layers of three points, from below up,
/// at 0 and at sqrt(0.6) of half the thickness.
FibreSample fibreOf(const std::vector<std::array<double, 6>>& points, Point centroid)
{
    FibreSample sample;
    sample.at = centroid;
    constexpr int kComponents[3] = {0, 1, 3};
    for (int c = 0; c < 3; ++c) {
        double below = 0.0, above = 0.0;
        for (int n = 0; n < 3; ++n) {
            below += points[n][kComponents[c]] / 3;
            above += points[6 + n][kComponents[c]] / 3;
        }
        const double mean = (below + above) / 2;
        const double half = (above - below) / 2 / std::sqrt(0.6);
        sample.face[c] = mean + half;
        sample.underside[c] = mean - half;
    }
    return sample;
}

}  // namespace

TriangleMesh evenMesh(const Slab& slab, double sizeMm)
{
    MeshRequest request;
    request.domain = counterSolid(slab.counter).plan;
    const Box bounds = *boundsOf(request.domain);
    for (const Box& rest : slab.rests) {
        for (const double x : {rest.low.x, rest.high.x}) {
            if (x > bounds.low.x && x < bounds.high.x) request.lines.push_back({{x, rest.low.y}, {x, rest.high.y}});
        }
        for (const double y : {rest.low.y, rest.high.y}) {
            if (y > bounds.low.y && y < bounds.high.y) request.lines.push_back({{rest.low.x, y}, {rest.high.x, y}});
        }
    }
    request.sizeMm = sizeMm;
    return meshOf(request);
}

PeerAnswer solvePeer(const Slab& slab, const TriangleMesh& mesh)
{
    PeerAnswer answer;
    answer.mesh = mesh;
    const SixNodeMesh six = withMidsides(mesh);
    const std::vector<double> bed = bedOf(slab, mesh, six);
    std::vector<bool> presses;
    for (const double k : bed) presses.push_back(k > 0.0);

    constexpr int kMostRuns = 25;
    CcxRun run;
    bool settled = false;
    while (!settled && answer.runs < kMostRuns) {
        answer.lastDeck = deckOf(slab, six, bed, presses);
        run = runCcx(answer.lastDeck);
        ++answer.runs;
        if (!run.trouble.empty()) {
            answer.trouble = run.trouble;
            return answer;
        }
        settled = true;
        for (std::size_t n = 0; n < bed.size(); ++n) {
            if (bed[n] <= 0.0) continue;
            const bool does = run.results.displacement.at(static_cast<int>(n) + 1)[2] < 0.0;
            if (does != presses[n]) settled = false;
            presses[n] = does;
        }
    }
    if (!settled) {
        answer.trouble = "the bed did not settle";
        return answer;
    }
    answer.lastSeconds = run.seconds;
    for (std::size_t n = 0; n < six.nodes.size(); ++n) {
        const double w = run.results.displacement.at(static_cast<int>(n) + 1)[2];
        answer.deflectionMm = std::max(answer.deflectionMm, -w);
        if (presses[n]) answer.pressN -= bed[n] * w;
    }
    for (std::size_t t = 0; t < mesh.triangles.size(); ++t) {
        const auto& c = mesh.triangles[t];
        const Point centroid = (mesh.nodes[c[0]] + mesh.nodes[c[1]] + mesh.nodes[c[2]]) * (1.0 / 3);
        answer.fibres.push_back(fibreOf(run.results.stress.at(static_cast<int>(t) + 1), centroid));
    }
    return answer;
}

double solvePeerAgain(const PeerAnswer& answer) { return runCcx(answer.lastDeck).seconds; }

}  // namespace yardcast::reference
