#include "core/structure/in_use.h"

#include <algorithm>
#include <cmath>

namespace yardcast {

namespace {

constexpr double kMpaPerKpa = 1e-3;
/// A rest on which less than this share of the load presses carries nothing.
constexpr double kNothingShare = 1e-6;

void add(NodeVector& to, const NodeVector& load)
{
    for (std::size_t i = 0; i < to.size(); ++i) to[i] += load[i];
}

/// The slab on its rests, factorised.
class InUse {
public:
    InUse(const Body& body, std::stop_token stop) : body_(body), stop_(std::move(stop))
    {
        for (const Rest& rest : body.input.rests) {
            const auto springs = bedUnder(body, rest.bearing, body.input.assumptions.bedNMm3);
            firstOfRest_.push_back(contacts_.size());
            contacts_.insert(contacts_.end(), springs.begin(), springs.end());
        }
        firstOfRest_.push_back(contacts_.size());
        if (!contacts_.empty()) system_ = ShellSystem::make(body.model, inPlaneHold(body), contacts_, stop_);
    }

    bool solvable() const { return system_ != nullptr; }
    bool stopped() const { return stop_.stop_requested(); }
    const ShellSystem& system() const { return *system_; }

    NodeVector deadLoad(bool withAppliances) const
    {
        NodeVector load = ownWeightLoad(body_, kDown, 1.0);
        for (const PressingLoad& thing : body_.input.loads) {
            if (thing.appliance && !withAppliances) continue;
            add(load, patchLoad(body_.model, thing.region, {0, 0, -thing.massKg * kGravityMS2}, 0.0));
        }
        return load;
    }

    NodeVector evenLoad() const
    {
        const std::size_t count = body_.mesh().triangles.size();
        const double p = body_.input.assumptions.evenLoadKpa * kMpaPerKpa;
        return surfaceLoad(body_.model, std::vector<std::array<double, 3>>(count, {0, 0, -p}),
                           std::vector<double>(count, 0.0));
    }

    std::vector<HeldAt> held(const ShellSolution& solution) const
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

    static constexpr std::array<double, 3> kDown{0.0, 0.0, -1.0};

private:
    const Body& body_;
    std::stop_token stop_;
    std::vector<ContactSpring> contacts_;
    std::vector<std::size_t> firstOfRest_;
    std::unique_ptr<ShellSystem> system_;
};

Region squareAt(Point p) { return {{rectangleRing(p, {kPersonMm, kPersonMm}), {}}}; }

/// The person's worst spot, on top of `dead`.
struct WorstSpot {
    Point at;
    double percent = -1.0;
    bool tips = false;
    ShellSolution solution;
};

std::optional<WorstSpot> worstSpot(const Body& body, const InUse& use, const NodeVector& dead, double forceN)
{
    const std::vector<double> strength = usableStrengthMpa(body, 672.0);
    const std::vector<Point> spots = personSpots(body.input);
    std::vector<NodeVector> loads;
    for (const Point p : spots) {
        NodeVector load = dead;
        add(load, patchLoad(body.model, squareAt(p), {0, 0, -forceN}, 0.0));
        loads.push_back(std::move(load));
    }
    std::vector<ShellSolution> solutions = use.system().solve(loads);
    if (solutions.empty()) return std::nullopt;
    WorstSpot worst;
    for (std::size_t i = 0; i < solutions.size(); ++i) {
        if (!solutions[i].settled) {
            worst = {spots[i], 0.0, true, {}};
            return worst;
        }
        const StressField stress = stressField(body, use.system().forces(solutions[i].displacement));
        const double percent = greatestUse(body, stress, strength).percent;
        if (percent > worst.percent) {
            worst.at = spots[i];
            worst.percent = percent;
            worst.solution = std::move(solutions[i]);
        }
    }
    return worst;
}

}  // namespace

std::optional<InUseAnswer> inUseCases(const std::shared_ptr<const Body>& body, std::stop_token stop)
{
    InUseAnswer answer;
    CaseSetting own;
    CaseSetting place;
    place.which = StrengthCase::inPlace;
    const InUse use(*body, stop);
    if (use.stopped()) return std::nullopt;
    if (!use.solvable()) {
        for (const CaseSetting& setting : {own, place}) {
            CaseResult none;
            none.which = setting.which;
            none.elasticMpa = body->model.elasticMpa;
            none.holds = false;
            answer.cases.push_back(std::move(none));
        }
        addInUseFindings(body->input, answer.cases, answer.findings);
        return answer;
    }
    std::vector<NamedCut> cuts = stripCuts(*body);
    for (NamedCut& cut : restCuts(*body)) cuts.push_back(std::move(cut));
    const auto finish = [&](const ShellSolution& solution, const CaseSetting& setting) {
        CaseResult result = caseResult(*body, use.system(), solution, setting, cuts);
        if (result.holds) result.held = use.held(solution);
        return result;
    };

    answer.cases.push_back(finish(use.system().solve(use.deadLoad(false)), own));
    if (use.stopped()) return std::nullopt;

    const NodeVector dead = use.deadLoad(true);
    NodeVector even = dead;
    add(even, use.evenLoad());
    CaseResult worst = finish(use.system().solve(even), place);
    const auto* counter = std::get_if<Counter>(&body->input.body);
    const double force = personN(body->input.assumptions, counter ? counter->imposed.value_or(Imposed::worktop)
                                                                  : Imposed::worktop);
    if (worst.holds && force > 0.0) {
        if (auto spot = worstSpot(*body, use, dead, force)) {
            if (spot->tips) {
                worst = {};
                worst.which = StrengthCase::inPlace;
                worst.elasticMpa = body->model.elasticMpa;
                worst.holds = false;
            } else if (spot->percent > worst.usePercent) {
                worst = finish(spot->solution, place);
            }
            worst.personGoverns = spot->tips || spot->percent >= worst.usePercent;
            if (worst.personGoverns) worst.personAt = spot->at;
        }
    }
    if (use.stopped()) return std::nullopt;
    answer.cases.push_back(std::move(worst));
    addInUseFindings(body->input, answer.cases, answer.findings);
    return answer;
}

}  // namespace yardcast
