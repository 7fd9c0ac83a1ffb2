#pragma once

#include <array>
#include <vector>

#include "core/fem/triangle_clip.h"

namespace yardcast::fem {

/// Integrals over a part of a triangle, in parts of its area: of 1 and of the products of two area coordinates (below
/// the diagonal).
struct PressedIntegrals {
    double area = 0.0;
    std::array<std::array<double, 3>, 3> second{};
};

/// What of a bed lies under one triangle, between whose corners the deflection is taken to be straight.
struct BedPiece {
    std::array<int, 3> contact{};   ///< contact spring of each corner
    std::vector<SharesRing> rings;
    double areaMm2 = 0.0;           ///< of the whole triangle
    double bedNMm3 = 0.0;
    PressedIntegrals whole;         ///< over all of it; `BedContact` fills it
};

/// Deflections at contacts on beds that press just where the body goes into them, and never pull: piecewise by area,
/// so a bed is felt where it presses however coarse the mesh is. Single springs may be among the contacts. All
/// contacts are springs at the nodes in the matrix that the flexibility was taken from. The answer makes an energy
/// least that is convex and of which the first derivative is continuous: Newton's method.
class BedContact {
public:
    struct Contact {
        int node = 0;               ///< any number: contacts of one node share a deflection
        double stiffnessNMm = 0.0;
        double gapMm = 0.0;
        bool isBed = false;         ///< presses by its pieces; else a spring that presses
    };
    /// `flexibility` of the contacts against each other, columns of `stride`.
    BedContact(std::vector<Contact> contacts, std::vector<BedPiece> pieces, const double* flexibility, int stride);

    struct Result {
        int steps = 0;
        bool settled = false;
    };
    /// What is kept from one load to the next: the search begins where the last answer was.
    struct Memory {
        std::vector<double> last;
        std::vector<double> factor;  ///< of the stiffness of the last step but chords
        bool factored = false;
    };
    /// `deflection` at each contact while all are springs that also pull; `forces` become what has to be added at the
    /// contacts so that the beds press as they do. Not settled where the body tips.
    Result solve(const std::vector<double>& deflection, std::vector<double>& forces, Memory& memory) const;
    /// What the beds press with at each contact at these deflections, N.
    std::vector<double> press(const std::vector<double>& deflection) const;

private:
    /// Energy of what presses; its stiffness is added to `matrix`, where there is one.
    double addPressing(const std::vector<double>& w, double* matrix) const;
    double energy(const std::vector<double>& w, const std::vector<double>& g) const;
    /// Forces that make the springs in the matrix press as the beds do.
    std::vector<double> added(const std::vector<double>& w) const;
    bool factorAt(const std::vector<double>& w, double damping, Memory& memory) const;
    void step(const std::vector<double>& w, const std::vector<double>& free, const Memory& memory,
              std::vector<double>& way) const;

    std::vector<Contact> contacts_;
    std::vector<BedPiece> pieces_;
    std::vector<int> unknown_;            ///< of each contact
    std::vector<int> firstOf_;            ///< contact of each unknown
    std::vector<double> base_;            ///< stiffness of the springs in the matrix, by unknown
    std::vector<double> baseForce_;       ///< and their force at zero deflection (gaps)
    std::vector<double> flexibility_;
    std::vector<double> inverse_;         ///< of the flexibility, columns of `padded_`
    std::size_t count_ = 0;
    std::size_t padded_ = 0;
    bool regular_ = false;
};

}  // namespace yardcast::fem
