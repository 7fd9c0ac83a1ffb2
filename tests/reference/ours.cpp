#include "tests/reference/ours.h"

#include <algorithm>
#include <cmath>

#include "core/structure/design_stress.h"

namespace yardcast::reference {

namespace {

PlaceKind kindOf(const PlaneCut& cut)
{
    return cut.name.starts_with("over") ? PlaceKind::over : PlaceKind::field;
}

/// The stress that the design counts with, of the kind of section that lies at a place.
bool sampleAt(const Body& body, DesignStress& design, double depthMm, FibreSample& sample)
{
    const PlaceInMesh place = body.index.find(body.mesh(), sample.at);
    if (place.triangle < 0) return false;
    for (int k = 0; k < body.kindCount(); ++k) {
        if (std::abs(body.kinds[k].depthMm - depthMm) > 1e-6) continue;
        if (!body.tells(place.triangle, k)) return false;
        const FibreStress stress = design.at(sample.at, k);
        sample.face = stress.face;
        sample.underside = stress.underside;
        return true;
    }
    return false;
}

}  // namespace

StrengthInput inputOf(const Slab& slab)
{
    Part part;
    part.id = "C1";
    part.body = slab.counter;
    StrengthInput input;
    const std::vector<CastingPtr> castings = castingsOf(part);
    if (castings.size() != 1) return input;
    input.casting = castings.front();
    input.body = part.body;
    input.strengthClass = "C25/30";
    for (std::size_t r = 0; r < slab.rests.size(); ++r) {
        const Box& box = slab.rests[r];
        Rest rest;
        rest.under = "S" + std::to_string(r + 1);
        rest.footprint = regionOf({box.low, {box.high.x, box.low.y}, box.high, {box.low.x, box.high.y}});
        for (const Zone& zone : input.casting->zones) {
            if (zone.isConcrete() && zone.toMm > input.casting->deepestMm - 1e-6)
                rest.bearing = unite(rest.bearing, intersect(zone.region, rest.footprint));
        }
        rest.lengthMm = std::min(box.width(), box.height());
        input.rests.push_back(std::move(rest));
    }
    return input;
}

double solveFromMeshToStresses(const StrengthInput& input, Refinement refinement)
{
    const auto body = makeBody(input, refinement);
    if (!body) return 0.0;
    std::vector<ContactSpring> bed;
    for (const Rest& rest : input.rests) {
        const auto springs = bedUnder(*body, rest.bearing, input.assumptions.bedNMm3);
        bed.insert(bed.end(), springs.begin(), springs.end());
    }
    const auto system = ShellSystem::make(body->model, inPlaneHold(*body), bed);
    if (!system) return 0.0;
    const ShellSolution solution = system->solve(ownWeightLoad(*body, {0, 0, -1}, 1.0));
    const StressField field = stressField(*body, system->forces(solution.displacement));
    double deflection = 0.0;
    for (std::size_t n = 2; n < solution.displacement.size(); n += 6)
        deflection = std::max(deflection, -solution.displacement[n]);
    return solution.settled && !field.there.empty() ? deflection : 0.0;
}

OurAnswer solveOurs(const Slab& slab, Refinement refinement, const std::vector<FibreSample>& places)
{
    OurAnswer answer;
    const StrengthInput input = inputOf(slab);
    const auto body = makeBody(input, refinement);
    if (!body) {
        answer.trouble = "no mesh";
        return answer;
    }
    answer.nodes = body->mesh().nodes.size();
    ShellModel model = body->model;
    model.elasticMpa = slab.elasticMpa;
    model.poisson = slab.poisson;
    std::vector<ContactSpring> bed;
    std::vector<std::size_t> restOf;
    for (std::size_t r = 0; r < input.rests.size(); ++r) {
        for (const ContactSpring& spring : bedUnder(*body, input.rests[r].bearing, slab.bedNMm3)) {
            bed.push_back(spring);
            restOf.push_back(r);
        }
    }
    const auto system = ShellSystem::make(std::move(model), inPlaneHold(*body), bed);
    if (!system) {
        answer.trouble = "not held";
        return answer;
    }
    const ShellSolution solution = system->solve(ownWeightLoad(*body, {0, 0, -1}, 1.0));
    if (!solution.settled) {
        answer.trouble = "the bed did not settle";
        return answer;
    }
    for (std::size_t n = 0; n < answer.nodes; ++n)
        answer.deflectionMm = std::max(answer.deflectionMm, -solution.displacement[6 * n + 2]);
    answer.restN.assign(input.rests.size(), 0.0);
    for (std::size_t i = 0; i < bed.size(); ++i) answer.restN[restOf[i]] += solution.contactN[i];
    for (const double n : answer.restN) answer.pressN += n;

    const auto forces = system->forces(solution.displacement);
    const StressField field = stressField(*body, forces);
    const std::vector<double> strength(body->kinds.size(), 1.0);
    for (const PlaneCut& cut : slab.cuts) {
        const NamedCut named{{kindOf(cut), {}, {}}, cut.from, cut.to};
        const auto section = sectionForces(*body, *system, solution, field, named, strength);
        answer.cuts.push_back(section ? CutForce{section->meanMomentN, section->meanForceNMm} : CutForce{});
    }
    const std::vector<Zone> zones = zonesOf(slab);
    DesignStress design(*body, forces, field);
    for (const FibreSample& place : places) {
        FibreSample sample;
        sample.at = place.at;
        if (sampleAt(*body, design, depthAt(zones, place.at), sample)) {
            answer.fibres.push_back(sample);
        } else {
            answer.fibres.push_back({place.at, {}, {}});
        }
    }
    return answer;
}

}  // namespace yardcast::reference
