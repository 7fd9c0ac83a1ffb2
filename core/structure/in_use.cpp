#include "core/structure/in_use.h"

namespace yardcast {

namespace {

/// So many of the coarse sweep's worst spots are solved on the mesh itself.
constexpr std::size_t kSpotsSolved = 5;

/// The load that uses most of the strength; the first under which it tips ends the search.
struct Worst {
    std::size_t load = 0;
    double percent = -1.0;
    ShellSolution solution;
};

Worst worstOf(const Body& body, const ShellSystem& system, const std::vector<NodeVector>& loads, double ageH)
{
    const std::vector<double> strength = usableStrengthMpa(body, ageH);
    std::vector<ShellSolution> solutions = system.solve(loads);
    Worst worst;
    for (std::size_t i = 0; i < solutions.size(); ++i) {
        if (!solutions[i].settled) return {i, 0.0, std::move(solutions[i])};
        const StressField stress = stressField(body, system.forces(solutions[i].displacement));
        const double percent = greatestUse(body, stress, strength).percent;
        if (percent > worst.percent) worst = {i, percent, std::move(solutions[i])};
    }
    return worst;
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
    const auto finish = [&](const ShellSolution& solution, const CaseSetting& setting) {
        CaseResult result = caseResult(*body, use.system(), solution, setting, cuts);
        if (result.holds) result.held = use.held(solution);
        return result;
    };

    answer.cases.push_back(finish(use.system().solve(use.deadLoad(false)), own));
    if (stop.stop_requested()) return std::nullopt;

    // The even load first, then the person's spots.
    const NodeVector dead = use.deadLoad(true);
    const NodeVector even = use.evenLoad();
    std::vector<NodeVector> loads{dead};
    for (std::size_t i = 0; i < even.size(); ++i) loads[0][i] += even[i];
    const auto* counter = std::get_if<Counter>(&body->input.body);
    const double forceN = personN(body->input.assumptions,
                                  counter ? counter->imposed.value_or(Imposed::worktop) : Imposed::worktop);
    std::vector<Point> spots;
    if (forceN > 0.0) spots = worstPersonSpots(body->input, forceN, kSpotsSolved, stop);
    for (const Point spot : spots) {
        loads.push_back(dead);
        use.addPerson(spot, forceN, loads.back());
    }
    if (stop.stop_requested()) return std::nullopt;
    const Worst worst = worstOf(*body, use.system(), loads, place.ageH);
    CaseResult result = finish(worst.solution, place);
    result.personGoverns = worst.load > 0;
    if (result.personGoverns) result.personAt = spots[worst.load - 1];
    if (stop.stop_requested()) return std::nullopt;
    answer.cases.push_back(std::move(result));
    addInUseFindings(body->input, answer.cases, answer.findings);
    return answer;
}

}  // namespace yardcast
