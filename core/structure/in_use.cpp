#include "core/structure/in_use.h"

#include <span>

#include "core/structure/design_stress.h"

namespace yardcast {

namespace {

/// So many of the coarse sweep's worst spots are solved on the mesh itself: in 40 dragged slabs the worst was among the
/// first seven, in one more the eleventh.
constexpr std::size_t kSpotsSolved = 12;

/// Uses that differ by less, as a share, are the same.
constexpr double kSamePercent = 1e-9;

/// The load that uses most of the strength; the first under which it tips ends the search.
struct Worst {
    std::size_t load = 0;
    double percent = -1.0;
    ShellSolution solution;
};

/// The worst load, and the worst of those under which it does not tip.
struct WorstTwo {
    Worst worst;
    Worst lying;
};

/// `spots` are the places of the loads after the first.
WorstTwo worstOf(const Body& body, const ShellSystem& system, std::span<const ShellSolution> solutions,
                 const std::vector<Point>& spots, double ageH)
{
    const std::vector<double> strength = usableStrengthMpa(body, ageH);
    WorstTwo two;
    bool tips = false;
    for (std::size_t i = 0; i < solutions.size(); ++i) {
        if (!solutions[i].settled) {
            if (!tips) two.worst = {i, 0.0, solutions[i]};
            tips = true;
            continue;
        }
        const auto forces = system.forces(solutions[i].displacement);
        const StressField field = stressField(body, forces);
        const std::vector<Point> under(i > 0 ? 1 : 0, i > 0 ? spots[i - 1] : Point{});
        const double percent = DesignStress(body, forces, field, under).greatestUse(strength).percent;
        // Of squares that press on the same concrete the first is taken, whatever rounding says.
        if (percent > two.lying.percent * (1.0 + kSamePercent)) two.lying = {i, percent, solutions[i]};
    }
    if (!tips) two.worst = two.lying;
    return two;
}

CaseResult nothingHolds(const Body& body, StrengthCase which)
{
    CaseResult none;
    none.which = which;
    none.elasticMpa = body.model.elasticMpa;
    none.holds = false;
    return none;
}

}  // namespace

std::optional<InUseAnswer> inUseCases(const std::shared_ptr<const Body>& body, std::stop_token stop)
{
    InUseAnswer answer;
    CaseSetting own;
    CaseSetting place;
    place.which = StrengthCase::inPlace;
    const OnRests use(*body, stop);
    if (stop.stop_requested()) return std::nullopt;
    if (!use.solvable()) {
        for (const CaseSetting& setting : {own, place}) answer.cases.push_back(nothingHolds(*body, setting.which));
        addInUseFindings(body->input, answer.cases, answer.findings);
        return answer;
    }
    std::vector<NamedCut> cuts = stripCuts(*body);
    for (NamedCut& cut : restCuts(*body)) cuts.push_back(std::move(cut));
    const auto finish = [&](const ShellSolution& solution, const CaseSetting& setting, const std::vector<Point>& under) {
        CaseResult result = caseResult(*body, use.system(), solution, setting, cuts, under);
        if (result.holds) result.held = use.held(solution);
        return result;
    };

    // Own weight first, then the even load, then the person's spots: solved at once.
    const NodeVector dead = use.deadLoad(true);
    const NodeVector even = use.evenLoad();
    std::vector<NodeVector> loads{use.deadLoad(false), dead};
    for (std::size_t i = 0; i < even.size(); ++i) loads[1][i] += even[i];
    const double forceN = personLoadN(body->input);
    std::vector<Point> spots;
    if (forceN > 0.0) spots = worstPersonSpots(body->input, forceN, kSpotsSolved, stop);
    for (const Point spot : spots) {
        loads.push_back(dead);
        use.addPerson(spot, forceN, loads.back());
    }
    if (stop.stop_requested()) return std::nullopt;
    const std::vector<ShellSolution> solutions = use.system().solve(loads);
    if (stop.stop_requested()) return std::nullopt;
    answer.cases.push_back(finish(solutions.front(), own, {}));
    const WorstTwo two = worstOf(*body, use.system(), std::span(solutions).subspan(1), spots, place.ageH);
    const auto under = [&](const Worst& load) {
        CaseResult result =
            finish(load.solution, place, load.load > 0 ? std::vector{spots[load.load - 1]} : std::vector<Point>{});
        result.personGoverns = load.load > 0;
        if (result.personGoverns) result.personAt = spots[load.load - 1];
        return result;
    };
    answer.cases.push_back(under(two.worst));
    if (stop.stop_requested()) return std::nullopt;
    // A slab that tips under somebody at its end may as well crack under somebody in its middle.
    std::vector<CaseResult> told = answer.cases;
    if (!told.back().holds && two.lying.percent > 0.0) told.push_back(under(two.lying));
    addInUseFindings(body->input, told, answer.findings);
    return answer;
}

}  // namespace yardcast
