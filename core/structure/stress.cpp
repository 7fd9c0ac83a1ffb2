#include <algorithm>
#include <cmath>

#include "core/structure/body.h"
#include "core/structure/design_stress.h"
#include "core/structure/fibres.h"
#include "core/structure/places.h"

namespace yardcast {

namespace {

using fibres::Stress;
using fibres::tensionOf;

Stress fibre(const Stress& face, const Stress& perMm, double depthMm)
{
    return {face[0] + perMm[0] * depthMm, face[1] + perMm[1] * depthMm, face[2] + perMm[2] * depthMm};
}

/// Largest principal tension of the stress averaged over the length of a crack line, at face and underside.
FibreTension alongCrack(const Body& body, const StressField& field, const CrackLine& line, int& kind)
{
    const int kinds = body.kindCount();
    Stress top{};
    Stress bottom{};
    kind = -1;
    for (const PlaceInMesh& place : line.samples) {
        int most = 0;
        for (int k = 1; k < kinds; ++k) {
            if (body.share[place.triangle * kinds + k] > body.share[place.triangle * kinds + most]) most = k;
        }
        if (kind < 0) kind = most;
        Stress face{};
        Stress perMm{};
        for (int i = 0; i < 3; ++i) {
            const int at = body.mesh().triangles[place.triangle][i] * kinds + most;
            for (int c = 0; c < 3; ++c) {
                face[c] += place.weight[i] * field.atFace[at][c];
                perMm[c] += place.weight[i] * field.perMm[at][c];
            }
        }
        const Stress under = fibre(face, perMm, body.kinds[most].depthMm);
        for (int c = 0; c < 3; ++c) {
            top[c] += face[c] / static_cast<double>(line.samples.size());
            bottom[c] += under[c] / static_cast<double>(line.samples.size());
        }
    }
    return {tensionOf(top), tensionOf(bottom)};
}

fibres::CornerTension worstOf(const Body& body, const StressField& field, const InnerCorner& corner)
{
    fibres::CornerTension worst;
    worst.topAt = worst.bottomAt = corner.along.front();
    for (const CrackLine& line : corner.lines) {
        int kind = 0;
        const FibreTension t = alongCrack(body, field, line, kind);
        worst.take(t, kind, line.from);
    }
    return worst;
}

}  // namespace

std::array<double, 3> stressPerMm(const ShellSection& section, const std::array<double, 3>& moment)
{
    Stress perMm;
    for (int c = 0; c < 3; ++c) perMm[c] = moment[c] / section.inertiaMm3;
    if (!(section.twistFactor < 1.0)) return perMm;
    const double sine = section.twistSine();
    const double cosine = section.twistCosine();
    const double twist = sine * (perMm[1] - perMm[0]) / 2 + cosine * perMm[2];
    const double more = twist * (1.0 / std::sqrt(section.twistFactor) - 1.0);
    return {perMm[0] - sine * more, perMm[1] + sine * more, perMm[2] + cosine * more};
}

StressField stressField(const Body& body, const std::vector<std::array<ShellForces, 3>>& forces)
{
    const TriangleMesh& mesh = body.mesh();
    const int kinds = body.kindCount();
    StressField field;
    field.atFace.assign(mesh.nodes.size() * kinds, {});
    field.perMm.assign(mesh.nodes.size() * kinds, {});
    field.there.assign(mesh.nodes.size() * kinds, 0);
    std::vector<double> weights(mesh.nodes.size() * kinds, 0.0);
    for (std::size_t t = 0; t < mesh.triangles.size(); ++t) {
        const ShellSection& section = body.model.sections[t];
        const double perArea = 1.0 / section.areaMm;
        for (int k = 0; k < kinds; ++k) {
            const double share = body.share[t * kinds + k];
            if (!body.tells(static_cast<int>(t), k)) continue;
            const SectionKind& kind = body.kinds[k];
            // z of the face from the section's centroid, with the sign of stress; skins bend about their own middles.
            const double up = kind.skins ? -kind.depthMm / 2 : section.centreMm;
            for (int i = 0; i < 3; ++i) {
                const ShellForces& f = forces[t][i];
                const Stress perMm = stressPerMm(section, f.moment);
                const std::size_t at = static_cast<std::size_t>(mesh.triangles[t][i]) * kinds + k;
                // By angle: how many triangles share the room about a node does not matter then.
                const double weight = share * body.angle[t][i];
                weights[at] += weight;
                for (int c = 0; c < 3; ++c) {
                    field.perMm[at][c] += weight * perMm[c];
                    field.atFace[at][c] += weight * (f.force[c] * perArea + perMm[c] * up);
                }
            }
        }
    }
    for (std::size_t i = 0; i < weights.size(); ++i) {
        if (!(weights[i] > 0.0)) continue;
        field.there[i] = 1;
        for (int c = 0; c < 3; ++c) {
            field.perMm[i][c] /= weights[i];
            field.atFace[i][c] /= weights[i];
        }
    }
    return field;
}

FibreTension fibreTension(const Body& body, const StressField& field, int node, int kind)
{
    const std::size_t at = static_cast<std::size_t>(node) * body.kinds.size() + kind;
    return {tensionOf(field.atFace[at]), tensionOf(fibre(field.atFace[at], field.perMm[at], body.kinds[kind].depthMm))};
}

GreatestUse greatestUse(const Body& body, const StressField& field, const std::vector<double>& strengthMpa)
{
    fibres::UseSearch search(strengthMpa);
    const int kinds = body.kindCount();
    for (std::size_t node = 0; node < body.mesh().nodes.size(); ++node) {
        if (body.cornerOfNode[node] >= 0) continue;
        for (int k = 0; k < kinds; ++k) {
            if (!field.there[node * kinds + k]) continue;
            search.consider(fibreTension(body, field, static_cast<int>(node), k), k, body.mesh().nodes[node]);
        }
    }
    for (std::size_t i = 0; i < body.corners.size(); ++i) {
        search.consider(worstOf(body, field, body.corners[i]), static_cast<int>(i));
    }
    return search.use();
}

CaseResult caseResult(const Body& body, const ShellSystem& system, const ShellSolution& solution,
                      const CaseSetting& setting, const std::vector<NamedCut>& cuts, const std::vector<Point>& also)
{
    CaseResult result;
    result.which = setting.which;
    result.ageH = setting.ageH;
    result.factor = setting.factor;
    result.suctionKpa = setting.suctionKpa;
    result.faceUp = setting.faceUp;
    result.elasticMpa = system.model().elasticMpa;
    result.holds = solution.settled;
    if (!result.holds) return result;

    const TriangleMesh& mesh = body.mesh();
    const int kinds = body.kindCount();
    const std::vector<double> strength = usableStrengthMpa(body, setting.ageH);
    const auto forces = system.forces(solution.displacement);
    const StressField stress = stressField(body, forces);

    auto field = std::make_shared<StrengthField>();
    field->mesh = mesh;
    field->usePercent.resize(mesh.nodes.size());
    field->downMm.resize(mesh.nodes.size());
    field->tensionTopMpa.resize(mesh.nodes.size());
    field->tensionBottomMpa.resize(mesh.nodes.size());
    DesignStress design(body, forces, stress, also);
    const FibreTension greatest = design.greatestTension();
    result.tensionTopMpa = greatest.topMpa;
    result.tensionBottomMpa = greatest.bottomMpa;
    const GreatestUse use = design.greatestUse(strength);
    for (std::size_t node = 0; node < mesh.nodes.size(); ++node) {
        const double* u = &solution.displacement[6 * node];
        const double down = u[0] * setting.down[0] + u[1] * setting.down[1] + u[2] * setting.down[2];
        field->downMm[node] = down;
        result.deflectionMm = std::max(result.deflectionMm, down);
        for (int k = 0; k < kinds; ++k) {
            if (!stress.there[node * kinds + k]) continue;
            const FibreTension t = design.drawnAt(static_cast<int>(node), k);
            field->tensionTopMpa[node] = std::max(field->tensionTopMpa[node], t.topMpa);
            field->tensionBottomMpa[node] = std::max(field->tensionBottomMpa[node], t.bottomMpa);
            const double percent = fibres::percentOf(std::max(t.topMpa, t.bottomMpa), strength[k]);
            field->usePercent[node] = std::max(field->usePercent[node], std::min(percent, use.percent));
        }
    }
    result.usePercent = use.percent;
    result.at = use.at;
    result.onFace = use.onFace;
    result.strengthMpa = strength[use.kind];
    result.place = placeAt(body, use.at, use.corner);
    for (const NamedCut& cut : cuts) {
        if (auto section = sectionForces(body, system, solution, stress, cut, strength))
            result.sections.push_back(std::move(*section));
    }
    result.field = std::move(field);
    return result;
}

}  // namespace yardcast
