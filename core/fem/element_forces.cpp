#include "core/fem/element_forces.h"

namespace yardcast::fem {

ElementRecovery::ElementRecovery(const Corners& corners, double poisson)
    : shape_(corners), ofTurns_(strainsOfTurns(corners, poisson))
{
    for (int k = 0; k < 3; ++k) bubble_[k] = shape_.bubble(k);
}

std::array<ShellForces, 3> ElementRecovery::forces(const ShellSection& section, double elasticMpa, double poisson,
                                                   const std::array<const double*, 3>& displacement) const
{
    const TriangleShape& s = shape_;
    const double c = section.centreMm;
    // Even strains and curvatures, those of straight sides.
    double strain[3] = {};
    double even[3] = {};
    double turn = 0.0;
    for (std::size_t k = 0; k < 3; ++k) {
        const double* const d = displacement[k];
        const double u = d[0] + c * d[4];
        const double v = d[1] - c * d[3];
        const double gx = s.gradientX[k];
        const double gy = s.gradientY[k];
        strain[0] += gx * u;
        strain[1] += gy * v;
        strain[2] += gy * u + gx * v;
        turn += (gx * v - gy * u) / 2;
        even[0] -= gx * d[4];
        even[1] += gy * d[3];
        even[2] += gx * d[3] - gy * d[4];
    }
    double curvature[3][3] = {{even[0], even[1], even[2]}, {even[0], even[1], even[2]}, {even[0], even[1], even[2]}};
    for (int i = 0; i < 3; ++i) {
        const int j = kNext[i];
        const double* const a = displacement[std::size_t(i)];
        const double* const b = displacement[std::size_t(j)];
        const double height = bubble_[i] * (1.5 * (a[2] - b[2]) + 0.75 * s.sideY[i] * (a[3] + b[3]) -
                                            0.75 * s.sideX[i] * (a[4] + b[4]));
        double at[3];
        s.curvaturesOfBubble(i, j, at);
        for (int row = 0; row < 3; ++row) curvature[i][row] += height * at[row];
        s.curvaturesOfBubble(i, i, at);
        for (int row = 0; row < 3; ++row) curvature[j][row] += height * at[row];
    }

    const PlaneModuli e = planeStress(elasticMpa, poisson);
    const double t = section.areaMm;
    const double inertia = section.inertiaMm3;
    const double sine = section.twistSine();
    const double cosine = section.twistCosine();
    const double turns[3] = {displacement[0][5] - turn, displacement[1][5] - turn, displacement[2][5] - turn};
    std::array<ShellForces, 3> forces;
    double shear[2] = {};
    for (std::size_t k = 0; k < 3; ++k) {
        double there[3];
        for (std::size_t row = 0; row < 3; ++row) {
            const auto& of = ofTurns_[3 * k + row];
            there[row] = strain[row] + of[0] * turns[0] + of[1] * turns[1] + of[2] * turns[2];
        }
        const double* const bend = curvature[k];
        forces[k].force = {t * (e.direct * there[0] + e.cross * there[1]),
                           t * (e.cross * there[0] + e.direct * there[1]), t * e.shear * there[2]};
        // What the strip's twist is too soft by, in its own directions.
        const double soft = inertia * (1.0 - section.twistFactor) * e.shear *
                            (sine * (bend[1] - bend[0]) + cosine * bend[2]);
        const std::array<double, 3> m{inertia * (e.direct * bend[0] + e.cross * bend[1]) + sine * soft,
                                      inertia * (e.cross * bend[0] + e.direct * bend[1]) - sine * soft,
                                      inertia * e.shear * bend[2] - cosine * soft};
        forces[k].moment = m;
        shear[0] -= s.gradientX[k] * m[0] + s.gradientY[k] * m[2];
        shear[1] -= s.gradientX[k] * m[2] + s.gradientY[k] * m[1];
    }
    for (ShellForces& f : forces) f.shear = {shear[0], shear[1]};
    return forces;
}

std::array<ShellForces, 3> elementForces(const Corners& corners, const ShellSection& section, double elasticMpa,
                                         double poisson, const ElementDisplacement& displacement)
{
    const double* const d = displacement.data();
    return ElementRecovery(corners, poisson).forces(section, elasticMpa, poisson, {d, d + 6, d + 12});
}

}  // namespace yardcast::fem
