#pragma once

#include <array>
#include <memory>
#include <stop_token>
#include <utility>
#include <vector>

#include "core/fem/shell.h"
#include "core/structure/handling_contact.h"

namespace yardcast {

/// A body in people's hands. It is factorised once, held anyhow at three nodes; hands, edges and battens are loads of
/// unknown size on it, so every way of holding it costs one small dense system. Where those are in equilibrium with
/// the load the three nodes carry nothing, and the answer is that of the free body.
class FreeBody {
public:
    /// Null where the model cannot be solved or `stop` was asked.
    static std::unique_ptr<FreeBody> make(ShellModel model, std::stop_token stop = {});

    /// A load by its number: a thing that acts (weight) or a place with a unit force. Empty ones are allowed (0).
    int add(NodeVector load);
    /// Solves what was added since.
    void solveAdded();

    struct Place {
        int load = 0;          ///< of a unit force
        double sign = 1.0;     ///< push is this times the load
        double giveMmN = 1e-4;
        double gapMm = 0.0;
    };
    /// What the places have to hold: movements out of the plane, or those in it (along `inPlane`, and turning).
    struct Freedoms {
        bool outOfPlane = true;
        Point inPlane{0.0, 1.0};
    };
    /// A number of loads with their factors.
    using Loads = std::vector<std::pair<int, double>>;

    struct State {
        bool holds = false;
        std::vector<double> forceN;            ///< one a place
        Loads combination;                     ///< loads and places of which it is the sum
        std::array<double, 6> rigid{};         ///< movement and turns about the middle on top
    };
    /// The places' rigid share in `State` is that of places that do not give way: what hands sink is left out.
    State hold(const Loads& loads, const std::vector<Place>& places, const Freedoms& freedoms) const;
    /// From now on `hold` takes the body for this many times as stiff as it was made: what bends is in proportion, so
    /// no new factorisation is needed. The forces of a state and the stress they make are then right; `displacement`
    /// and `rigid` are only so where it is 1.
    void setElasticShare(double share) { elasticShare_ = share; }

    NodeVector displacement(const State& state) const;
    /// Force and moment about the origin of load i: x, y, z.
    std::array<double, 6> resultant(int load) const;
    const NodeVector& load(int index) const { return loads_[index]; }
    const NodeVector& column(int index) const { return columns_[index]; }
    const ShellSystem& system() const { return *system_; }
    int loadCount() const { return static_cast<int>(loads_.size()); }

private:
    FreeBody() = default;
    PressingPlaces problem(const Loads& loads, const std::vector<Place>& places, const Freedoms& freedoms) const;
    std::vector<double> leversOf(const std::array<double, 6>& resultant, const Freedoms& freedoms) const;

    std::unique_ptr<ShellSystem> system_;
    Point middle_;
    double reachMm_ = 1.0;
    double elasticShare_ = 1.0;
    std::vector<NodeVector> loads_;
    std::vector<std::array<double, 6>> aboutMiddle_;              ///< resultants
    std::vector<std::vector<std::pair<int, double>>> sparse_;
    std::vector<NodeVector> columns_;
    std::vector<std::vector<double>> work_;                       ///< load i on the displacement of load j
};

}  // namespace yardcast
