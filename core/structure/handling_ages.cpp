#include "core/structure/handling_ages.h"

#include <algorithm>
#include <utility>

#include "core/structure/handling_holders.h"
#include "core/structure/places.h"

namespace yardcast {

namespace {

/// The standing edge with this number, wherever `findTilt` may have found it.
std::optional<StandingEdge> standingEdge(const StrengthInput& input, int edge)
{
    const Region& outline = input.casting->outline;
    std::vector<StandingEdge> edges;
    if (input.casting->kind == PartKind::counter) {
        edges = standingEdges(outline);
    } else if (const auto base = baseEdge(outline)) {
        edges = {*base};
    }
    const auto found = std::ranges::find(edges, edge, &StandingEdge::edge);
    return found == edges.end() ? std::nullopt : std::optional(*found);
}

std::optional<ChosenHands> chooseHands(const StrengthInput& input, HandledBody& draft, std::stop_token stop)
{
    ChosenHands hands;
    hands.grips = input.grips;
    if (!isCastUpright(input.body)) {
        if (hands.grips.empty()) {
            if (const auto found = findGrips(draft, stop)) hands.grips = found->grips;
            hands.gripsProposed = !hands.grips.empty();
        }
        hands.tilt = findTilt(draft, stop);
    }
    if (stop.stop_requested()) return std::nullopt;
    return hands;
}

}  // namespace

bool operator==(const ChosenHands& a, const ChosenHands& b)
{
    if (a.tilt.has_value() != b.tilt.has_value()) return false;
    if (a.tilt && (a.tilt->edge.edge != b.tilt->edge.edge || a.tilt->hands != b.tilt->hands)) return false;
    return a.grips == b.grips && a.gripsProposed == b.gripsProposed;
}

std::optional<ChosenHands> handsOf(const StrengthInput& input, const CastingStrength& strength)
{
    const bool handled = std::ranges::any_of(strength.cases, [](const CaseResult& one) {
        return one.which == StrengthCase::carriedFlat || one.which == StrengthCase::carriedOnEdge ||
               one.which == StrengthCase::tilt;
    });
    if (!handled) return std::nullopt;
    ChosenHands hands{strength.grips, strength.gripsProposed, {}};
    const CaseResult* tilt = strength.find(StrengthCase::tilt);
    if (tilt == nullptr) return hands;
    const auto edge = standingEdge(input, tilt->edge);
    if (!edge || strength.tiltHands.empty()) return std::nullopt;
    hands.tilt = FoundTilt{*edge, strength.tiltHands, tilt->usePercent};
    return hands;
}

HandlingAges::HandlingAges() = default;
HandlingAges::~HandlingAges() = default;

std::unique_ptr<HandlingAges> HandlingAges::make(const StrengthInput& input, Refinement refinement,
                                                 std::optional<ChosenHands> hands, std::stop_token stop)
{
    if (!input.casting) return nullptr;
    std::unique_ptr<HandledBody> handled;
    if (!hands) {
        const std::unique_ptr<HandledBody> draft = HandledBody::make(makeBody(input, Refinement::draft), stop);
        if (!draft) return nullptr;
        hands = chooseHands(input, *draft, stop);
        if (!hands) return nullptr;
    }
    // At any age: that of the class is sound, whatever the plan says.
    StrengthInput grown = input;
    grown.liftAgeH = kFullAgeH;
    std::unique_ptr<HandlingAges> ages(new HandlingAges);
    ages->body_ = makeBody(grown, refinement);
    if (stop.stop_requested()) return nullptr;
    ages->handled_ = HandledBody::make(ages->body_, stop);
    if (!ages->handled_) return nullptr;
    ages->hands_ = std::move(*hands);
    ages->addLoads();
    if (stop.stop_requested()) return nullptr;
    return ages;
}

void HandlingAges::addLoads()
{
    const StrengthInput& input = body_->input;
    const Region& outline = input.casting->outline;
    if (!isCastUpright(input.body)) {
        const std::vector<Point> points =
            hands_.gripsProposed ? hands_.grips : handsOfGrips(hands_.grips, outline);
        grips_ = std::make_unique<Holders>(handsAt(*handled_, points, slabAxes(outline).along));
    }
    if (hands_.tilt) tilt_ = std::make_unique<Holders>(tiltHolders(*handled_, *hands_.tilt));
    edge_ = hands_.tilt ? std::optional(hands_.tilt->edge) : edgeToStandOn(input);
    if (edge_) {
        weightAlong_ = handled_->weightAlong(edge_->inward() * -1.0);
        below_ = std::make_unique<Holders>(handsBelow(*handled_, *edge_, weightAlong_));
    }
    handled_->solveAdded();
    handled_->expectMany(true);
}

FreeBody::State HandlingAges::hold(const Holders& holders, double factor, double suctionKpa) const
{
    return handled_->free().hold({{handled_->weight(), factor}, {handled_->suction(), suctionKpa}}, holders.places(),
                                 {});
}

std::optional<HandlingAges::Use> HandlingAges::use(StrengthCase which, double elasticMpa, double fctk005Mpa)
{
    const StrengthInput& input = body_->input;
    const Assumptions& assumed = input.assumptions;
    const bool onFace = liesOnFace(input);
    handled_->setConcrete(elasticMpa, fctk005Mpa);
    FreeBody::State state;
    bool faceUp = false;
    bool faceDown = false;
    switch (which) {
    case StrengthCase::suction:
        if (!hasSuction(input) || !grips_ || grips_->all.empty()) return std::nullopt;
        state = hold(*grips_, 1.0, suctionKpa(assumed));
        (onFace ? faceDown : faceUp) = true;
        break;
    case StrengthCase::tilt:
        if (!tilt_) return std::nullopt;
        state = hold(*tilt_, assumed.strippingFactor);
        (onFace ? faceDown : faceUp) = true;
        break;
    case StrengthCase::carriedFlat:
        if (!grips_ || grips_->all.empty()) return std::nullopt;
        state = hold(*grips_, assumed.handlingFactor);
        faceUp = true;
        faceDown = onFace;
        break;
    case StrengthCase::carriedOnEdge:
        if (!edge_) return std::nullopt;
        state = handled_->free().hold({{weightAlong_, assumed.handlingFactor}}, below_->places(),
                                      {false, edge_->inward()});
        faceUp = true;
        break;
    default: return std::nullopt;
    }
    if (!state.holds) return Use{};
    GreatestUse worst;
    for (const bool turned : {false, true}) {
        if (!(turned ? faceDown : faceUp)) continue;
        const GreatestUse one = handled_->greatestUseOf(state, turned);
        if (one.percent > worst.percent) worst = one;
    }
    return Use{true, worst.percent, worst.tensionMpa, placeAt(*body_, worst.at, worst.corner)};
}

}  // namespace yardcast
