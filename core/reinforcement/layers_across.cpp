#include <algorithm>
#include <cmath>

#include "core/castings/steel_in_casting.h"
#include "core/materials/materials.h"
#include "core/reinforcement/detailing_rules.h"
#include "core/reinforcement/section.h"

namespace yardcast {

namespace {

/// Where a bar crosses the cut, as the length of its shorter side; negative where it does not.
double shorterSideMm(const BarStretch& bar, Point from, Point to)
{
    const Point along = bar.to - bar.from;
    const Point cut = to - from;
    const double denominator = cross(along, cut);
    if (denominator == 0.0) return -1.0;
    const double onBar = cross(from - bar.from, cut) / denominator;
    const double onCut = cross(from - bar.from, along) / denominator;
    if (onBar < 0.0 || onBar > 1.0 || onCut < 0.0 || onCut > 1.0) return -1.0;
    return std::min(onBar, 1.0 - onBar) * length(along);
}

/// At least so many, wherever the first one lies.
double wiresAcross(const Mesh& mesh, const Region& outline, Point from, Point to)
{
    BarGroup cut;
    cut.from = from;
    cut.to = to;
    cut.diameterMm = mesh.barMm;
    cut.coverMm = mesh.coverMm;
    double wires = 0.0;
    for (const BarStretch& piece : barPieces(cut, outline)) wires += std::floor(piece.lengthMm() / mesh.pitchMm + 1e-6);
    return wires;
}

}  // namespace

std::vector<SteelLayer> layersAcross(const Steel& steel, const Region& outline, Point from, Point to, double widthMm,
                                     double fctk005Mpa)
{
    std::vector<SteelLayer> layers;
    const double cut = distance(from, to);
    if (!(widthMm > 0.0 && cut > 0.0)) return layers;
    const auto layer = [](SteelMaterial material, double areaMm2Mm, double depthMm, double diameterMm,
                          double spacingMm) {
        const ReinforcementStrength strength = reinforcementStrength(material);
        return SteelLayer{areaMm2Mm, depthMm, diameterMm, spacingMm, strength.fykMpa, strength.elasticMpa};
    };
    if (steel.mesh && reinforcementStrength(steel.mesh->material).counted && steel.mesh->pitchMm > steel.mesh->barMm) {
        const Mesh& mesh = *steel.mesh;
        const double area = wiresAcross(mesh, outline, from, to) * barAreaMm2(mesh.barMm) / widthMm;
        if (area > 0.0)
            layers.push_back(layer(mesh.material, area, mesh.coverMm + mesh.barMm, mesh.barMm, mesh.pitchMm));
    }
    const Point normal = leftNormal(to - from) * (1.0 / cut);
    for (const BarGroup& group : steel.bars) {
        const ReinforcementStrength strength = reinforcementStrength(group.material);
        if (!strength.counted) continue;
        const double spacing = std::abs(group.spacingMm.value_or(kDefaultBarSpacingMm));
        BarInConcrete held;
        held.diameterMm = group.diameterMm;
        held.coverMm = group.coverMm;
        held.stressMpa = strength.fykMpa / SafetyFactors{}.steel;
        if (group.count > 1) held.clearMm = std::max(spacing - group.diameterMm, 0.0);
        const double anchorage = anchorageMm(held, fctk005Mpa);
        double area = 0.0;
        for (const BarStretch& bar : barPieces(group, outline)) {
            const double side = shorterSideMm(bar, from, to);
            if (!(side > 0.0)) continue;
            const double cosine = dot(bar.to - bar.from, normal) / bar.lengthMm();
            // 8.4.4: what is anchored over part of the length bears that part of its stress.
            area += barAreaMm2(group.diameterMm) * cosine * cosine * std::min(side / anchorage, 1.0);
        }
        if (!(area > 0.0)) continue;
        layers.push_back(layer(group.material, area / widthMm, group.coverMm + group.diameterMm / 2, group.diameterMm,
                               group.count > 1 ? spacing : 0.0));
    }
    return layers;
}

}  // namespace yardcast
