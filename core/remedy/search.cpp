#include <algorithm>
#include <atomic>
#include <cmath>
#include <optional>
#include <utility>

#include "core/io/plan_patch.h"
#include "core/plan/edits.h"
#include "core/remedy/attempt_tools.h"
#include "core/remedy/attempts.h"
#include "core/remedy/remedies.h"
#include "core/remedy/trial.h"

namespace yardcast {

namespace {

constexpr double kThicknessesMm[] = {25.0, 30.0, 35.0, 40.0, 45.0, 50.0, 60.0, 70.0, 80.0};
constexpr double kRimBelowMm[] = {0.0, 10.0, 20.0, 30.0, 40.0};  ///< below the field; 0: none
constexpr double kRimWidthsMm[] = {60.0, 80.0};
/// A field is at least three times the largest stone. Common practice, no source.
constexpr double kStonesInField = 3.0;

/// One point of the space that is searched.
struct Form {
    double thicknessMm = 0.0;
    double rimDepthMm = 0.0;  ///< 0: no rim
    double rimWidthMm = 0.0;
    bool cutoutRims = false;
    bool ribsOverRests = false;
    bool oneMoreSupport = false;
    bool mesh = true;  ///< as the plan has it; false: without
};

struct Candidate {
    Form form;
    Plan plan;
    double massKg = 0.0;
    Added added;
};

std::vector<Form> formsFor(const Plan& plan, const Part& part)
{
    const auto& counter = std::get<Counter>(part.body);
    const Mix* mix = findMix(plan, counter.mix);
    const double least = mix != nullptr ? kStonesInField * maxAggregateMm(*mix) : 0.0;
    const bool hasCutouts = !counter.cutouts.empty();
    const bool hasMesh = counter.steel && counter.steel->mesh;
    std::vector<Form> forms;
    for (const double thickness : kThicknessesMm) {
        if (thickness < least) continue;
        for (const double below : kRimBelowMm) {
            for (const double width : kRimWidthsMm) {
                if (below == 0.0 && width != kRimWidthsMm[0]) continue;
                for (int options = 0; options < 16; ++options) {
                    Form form;
                    form.thicknessMm = thickness;
                    form.rimDepthMm = below > 0.0 ? thickness + below : 0.0;
                    form.rimWidthMm = below > 0.0 ? width : 0.0;
                    form.cutoutRims = (options & 1) != 0;
                    form.ribsOverRests = (options & 2) != 0;
                    form.oneMoreSupport = (options & 4) != 0;
                    form.mesh = (options & 8) == 0;
                    if (below == 0.0 && (form.cutoutRims || form.ribsOverRests)) continue;
                    if ((form.cutoutRims && !hasCutouts) || (!form.mesh && !hasMesh)) continue;
                    forms.push_back(form);
                }
            }
        }
    }
    return forms;
}

void giveForm(Counter& counter, const Form& form)
{
    counter.thicknessMm = form.thicknessMm;
    if (form.rimDepthMm > 0.0) {
        if (!counter.rim) counter.rim.emplace();
        counter.rim->depthMm = form.rimDepthMm;
        counter.rim->widthMm = form.rimWidthMm;
    } else {
        counter.rim.reset();
        counter.filler.reset();
    }
    counter.ribs.clear();
    for (Cutout& cutout : counter.cutouts) {
        if (form.cutoutRims && cutout.purpose != CutoutPurpose::tap) {
            cutout.rimMm = form.rimWidthMm;
        } else {
            cutout.rimMm.reset();
        }
    }
    if (counter.steel && counter.steel->mesh) {
        // The same cover from the face; where the slab is thinner now, what still fits.
        Mesh& mesh = *counter.steel->mesh;
        mesh.coverMm = std::min(mesh.coverMm, form.thicknessMm - 2 * mesh.barMm - kLeastCoverMm);
        if (!form.mesh || mesh.coverMm < kLeastCoverMm) counter.steel->mesh.reset();
    }
}

/// The widest gap between neighbouring bearers along the counter: one more goes into its middle.
Plan withOneMoreSupport(const Plan& plan, const Part& part)
{
    std::vector<std::pair<double, const Part*>> places;
    for (const Part* bearer : bearersOf(plan, part)) {
        if (bearer->kind() == PartKind::support) places.emplace_back(part.place.toOwn(middleOf(*bearer)).x, bearer);
    }
    if (places.size() < 2) return plan;
    std::sort(places.begin(), places.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
    std::size_t widest = 0;
    for (std::size_t i = 0; i + 1 < places.size(); ++i) {
        if (places[i + 1].first - places[i].first > places[widest + 1].first - places[widest].first) widest = i;
    }
    const double half = (places[widest + 1].first - places[widest].first) / 2;
    return duplicateParts(plan, {places[widest].second->id}, part.place.directionToPlan({half, 0.0}));
}

Plan planOf(const Plan& plan, const std::string& id, const Form& form)
{
    Plan after = changeDepth(plan, id, [&](Counter& counter) { giveForm(counter, form); });
    if (form.oneMoreSupport) after = withOneMoreSupport(after, *findPart(after, id));
    if (!form.ribsOverRests) return after;
    const Part& part = *findPart(after, id);
    std::vector<Rib> ribs;
    for (const Part* bearer : bearersOf(after, part)) {
        if (const auto rib = ribAlong(part, std::get<Counter>(part.body), *bearer, form.rimWidthMm)) {
            ribs.push_back(*rib);
        }
    }
    return changeCounter(after, id, [&](Counter& counter) { counter.ribs = ribs; });
}

double massOfPart(const Assessment& assessment, const std::string& part)
{
    double mass = 0.0;
    for (const PlacedCasting& placed : assessment.castings) {
        if (placed.casting->part == part) mass += placed.casting->massKg;
    }
    return mass;
}

/// How much deeper the counter is than it was.
double deeperMm(const Plan& before, const Plan& after, const std::string& counter)
{
    const auto depth = [&](const Plan& plan) { return fullDepthMm(std::get<Counter>(findPart(plan, counter)->body)); };
    return depth(after) - depth(before);
}

bool hasMesh(const Plan& plan, const std::string& counter)
{
    const auto& steel = std::get<Counter>(findPart(plan, counter)->body).steel;
    return steel && steel->mesh;
}

SearchAnswer answerOf(const Plan& before, const std::string& counter, const Candidate& found, SearchGoal goal,
                      double use, int tried, double massBefore)
{
    SearchAnswer answer;
    answer.plan = found.plan;
    answer.massKg = found.massKg;
    answer.addedKg = found.added.kg;
    answer.addedMinor = found.added.minor;
    answer.usePercent = use;
    answer.tried = tried;
    Remedy& remedy = answer.remedy;
    remedy.code = "form_cheapest";
    if (goal == SearchGoal::lightest) remedy.code = "form_lightest";
    remedy.edit = patchBetween(before, found.plan);
    remedy.values = {{"thickness_mm", found.form.thicknessMm},
                     {"rim_depth_mm", found.form.rimDepthMm},
                     {"rim_width_mm", found.form.rimWidthMm},
                     {"ribs", found.form.ribsOverRests ? 1.0 : 0.0},
                     {"cutout_rims", found.form.cutoutRims ? 1.0 : 0.0},
                     {"supports", found.form.oneMoreSupport ? 1.0 : 0.0},
                     {"mesh", hasMesh(before, counter) && !hasMesh(found.plan, counter) ? 0.0 : 1.0},
                     {"shortened_mm", deeperMm(before, found.plan, counter)},
                     {"counter_kg", found.massKg},
                     {"counter_added_kg", found.massKg - massBefore},
                     {"added_kg", answer.addedKg},
                     {"added_minor", static_cast<double>(answer.addedMinor)},
                     {"currency", before.currency},
                     {"use_percent", use}};
    return answer;
}

}  // namespace

std::optional<SearchAnswer> searchCounter(const Plan& plan, const PriceBook& prices, const std::string& counter,
                                          SearchGoal goal, const std::function<void(const SearchStep&)>& progress,
                                          std::stop_token stop)
{
    const Part* part = findPart(plan, counter);
    if (part == nullptr || part->kind() != PartKind::counter) return std::nullopt;
    Trial trial(plan, prices);
    if (!trial.added(plan)) return std::nullopt;
    const double massBefore = massOfPart(*trial.last(), counter);

    std::vector<Candidate> candidates;
    for (const Form& form : formsFor(plan, *part)) {
        if (stop.stop_requested()) return std::nullopt;
        Plan after = planOf(plan, counter, form);
        const std::optional<Added> added = trial.added(after);
        if (!added) continue;
        candidates.push_back({form, std::move(after), massOfPart(*trial.last(), counter), *added});
    }
    std::stable_sort(candidates.begin(), candidates.end(), [&](const Candidate& a, const Candidate& b) {
        const auto light = std::pair(a.massKg, static_cast<double>(a.added.minor));
        const auto lightB = std::pair(b.massKg, static_cast<double>(b.added.minor));
        const auto cheap = std::pair(static_cast<double>(a.added.minor), a.massKg);
        const auto cheapB = std::pair(static_cast<double>(b.added.minor), b.massKg);
        return goal == SearchGoal::lightest ? light < lightB : cheap < cheapB;
    });

    int tried = 0;
    for (const Candidate& candidate : candidates) {
        if (stop.stop_requested()) return std::nullopt;
        ++tried;
        if (progress) progress({tried, static_cast<int>(candidates.size()), candidate.massKg});
        trial.added(candidate.plan);
        // Cheapest looks first: most forms fail in use, on the coarse mesh.
        const std::pair<Refinement, CaseChoice> looks[] = {{Refinement::draft, {true, false}},
                                                           {Refinement::draft, {false, true}},
                                                           {Refinement::working, {true, true}}};
        std::optional<std::vector<CastingStrengthPtr>> strengths;
        bool holds = true;
        for (const auto& [refinement, choice] : looks) {
            strengths = strengthOfPart(candidate.plan, *trial.last(), counter, refinement, choice, stop);
            if (!strengths) return std::nullopt;
            const bool solved = std::all_of(strengths->begin(), strengths->end(),
                                            [](const CastingStrengthPtr& one) { return one->whyNot.empty(); });
            holds = solved && complaintsOf(*strengths).empty();
            if (!holds) break;
        }
        if (holds) return answerOf(plan, counter, candidate, goal, greatestUse(*strengths), tried, massBefore);
    }
    return std::nullopt;
}

}  // namespace yardcast
