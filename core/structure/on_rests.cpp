#include "core/structure/in_use.h"

namespace yardcast {

namespace {

constexpr double kMpaPerKpa = 1e-3;
constexpr std::array<double, 3> kDown{0.0, 0.0, -1.0};
/// A rest on which less than this share of the load presses carries nothing.
constexpr double kNothingShare = 1e-6;

void add(NodeVector& to, const NodeVector& load)
{
    for (std::size_t i = 0; i < to.size(); ++i) to[i] += load[i];
}

}  // namespace

OnRests::OnRests(const Body& body, std::stop_token stop) : body_(body)
{
    for (const Rest& rest : body.input.rests) {
        const auto springs = bedUnder(body, rest.bearing, body.input.assumptions.bedNMm3);
        firstOfRest_.push_back(contacts_.size());
        contacts_.insert(contacts_.end(), springs.begin(), springs.end());
    }
    firstOfRest_.push_back(contacts_.size());
    if (!contacts_.empty()) system_ = ShellSystem::make(body.model, inPlaneHold(body), contacts_, std::move(stop));
}

NodeVector OnRests::deadLoad(bool withAppliances) const
{
    NodeVector load = ownWeightLoad(body_, kDown, 1.0);
    for (const PressingLoad& thing : body_.input.loads) {
        if (thing.appliance && !withAppliances) continue;
        add(load, patchLoad(body_.model, thing.region, {0, 0, -thing.massKg * kGravityMS2}, 0.0));
    }
    return load;
}

NodeVector OnRests::evenLoad() const
{
    const std::size_t count = body_.mesh().triangles.size();
    const double p = body_.input.assumptions.evenLoadKpa * kMpaPerKpa;
    return surfaceLoad(body_.model, std::vector<std::array<double, 3>>(count, {0, 0, -p}),
                       std::vector<double>(count, 0.0));
}

void OnRests::addPerson(Point at, double forceN, NodeVector& load) const
{
    add(load, patchLoad(body_.model, {{rectangleRing(at, {kPersonMm, kPersonMm}), {}}}, {0, 0, -forceN}, 0.0));
}

std::vector<HeldAt> OnRests::held(const ShellSolution& solution) const
{
    double total = 0.0;
    for (const double n : solution.contactN) total += n;
    std::vector<HeldAt> result;
    for (std::size_t r = 0; r < body_.input.rests.size(); ++r) {
        const Rest& rest = body_.input.rests[r];
        HeldAt held;
        held.under = rest.under;
        held.region = rest.bearing;
        held.centre = moments(rest.bearing.empty() ? rest.footprint : rest.bearing).centroid();
        Point turning;
        double stiffness = 0.0;
        double pressed = 0.0;
        for (std::size_t i = firstOfRest_[r]; i < firstOfRest_[r + 1]; ++i) {
            const double n = solution.contactN[i];
            held.forceN += n;
            turning = turning + body_.mesh().nodes[contacts_[i].node] * n;
            stiffness += contacts_[i].stiffnessNMm;
            if (n > 0.0) pressed += contacts_[i].stiffnessNMm;
        }
        if (held.forceN > 0.0) held.centre = turning * (1.0 / held.forceN);
        held.touchingShare = stiffness > 0.0 ? pressed / stiffness : 0.0;
        held.liftedOff = held.forceN <= kNothingShare * total;
        result.push_back(std::move(held));
    }
    return result;
}

}  // namespace yardcast
