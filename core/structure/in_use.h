#pragma once

#include <memory>
#include <optional>
#include <stop_token>
#include <vector>

#include "core/structure/body.h"

/// A counter where it lies at the end.
namespace yardcast {

struct InUseAnswer {
    std::vector<CaseResult> cases;   ///< ownWeight, inPlace
    std::vector<Finding> findings;   ///< subjects: casting, part
};

/// ownWeight: own weight and the counter's own loads on beds that press and never pull. inPlace: the same with the
/// appliances on it, and on top either the even load all over, or one person's load on a square of `kPersonMm` at the
/// worst of many spots; whichever uses more of the strength. 28 days, every factor 1. Nothing when `stop` was asked;
/// both cases with `holds` false where nothing bears the casting.
std::optional<InUseAnswer> inUseCases(const std::shared_ptr<const Body>& body, std::stop_token stop = {});

inline constexpr double kPersonMm = 100.0;

/// Spots for the person's load: along the edges (the square flush with them), round each cutout, over the field. Each
/// moves smoothly with the part it belongs to. At least 60 on any slab that has room for them.
std::vector<Point> personSpots(const StrengthInput& input);

/// The spots where `forceN` on the square uses most of the strength on top of the casting's dead load, the worst first,
/// at most `most`; one where it tips comes before all. Found on a coarse mesh by the tension at the places that matter
/// (inner corners, strips, rests, spans, under the load): to be solved properly after. Empty where it cannot be solved.
std::vector<Point> worstPersonSpots(const StrengthInput& input, double forceN, std::size_t most,
                                    std::stop_token stop = {});

/// The counter on its beds, factorised.
class OnRests {
public:
    explicit OnRests(const Body& body, std::stop_token stop = {});

    bool solvable() const { return system_ != nullptr; }
    const ShellSystem& system() const { return *system_; }
    /// Own weight and what stands on it.
    NodeVector deadLoad(bool withAppliances) const;
    NodeVector evenLoad() const;
    /// Adds the person's square about `at` to a load.
    void addPerson(Point at, double forceN, NodeVector& load) const;
    /// What each rest takes.
    std::vector<HeldAt> held(const ShellSolution& solution) const;

private:
    const Body& body_;
    std::vector<ContactSpring> contacts_;
    std::vector<std::size_t> firstOfRest_;
    std::unique_ptr<ShellSystem> system_;
};

/// What a casting says beside its strength: rests on foam, short bearings, long overhangs, curling.
void addBearingFindings(const StrengthInput& input, std::vector<Finding>& findings);
/// Cracks, tipping, lifting off, from the solved cases in use.
void addInUseFindings(const StrengthInput& input, const std::vector<CaseResult>& cases,
                      std::vector<Finding>& findings);

/// Curling: the face dries more than the underside (or the other way round) by this much shrinkage; over the thickness
/// it gives a curvature, and that a bow of L^2/8 of it. 0.1 mm/m is our choice, no source: a tenth to a fifth of the
/// drying shrinkage of EN 1992-1-1 3.1.4 for thin pieces in dry air.
inline constexpr double kOneSidedShrinkage = 1e-4;
double curlMm(double lengthMm, double thicknessMm);

}  // namespace yardcast
