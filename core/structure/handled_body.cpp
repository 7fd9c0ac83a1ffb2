#include "core/structure/handled_body.h"

#include <algorithm>
#include <cmath>

#include "core/materials/concrete_strength.h"
#include "core/structure/design_stress.h"

namespace yardcast {

namespace {

constexpr double kMpaPerKpa = 1e-3;
/// Pieces of an edge that press each by itself: enough for a straight slab that sags between hands.
constexpr double kEdgePieceMm = 200.0;
constexpr int kFewestEdgePieces = 4;
constexpr int kMostEdgePieces = 9;

void addTo(StressField& sum, const StressField& term, double factor)
{
    for (std::size_t i = 0; i < sum.atFace.size(); ++i) {
        for (int k = 0; k < 3; ++k) sum.atFace[i][k] += factor * term.atFace[i][k];
        for (int k = 0; k < 3; ++k) sum.perMm[i][k] += factor * term.perMm[i][k];
    }
}

}  // namespace

std::unique_ptr<HandledBody> HandledBody::make(std::shared_ptr<const Body> body, std::stop_token stop)
{
    if (!body) return nullptr;
    std::unique_ptr<HandledBody> handled(new HandledBody);
    const StrengthInput& input = body->input;
    ShellModel model = body->model;
    model.elasticMpa = concreteAtAge(input, input.liftAgeH).elasticMpa;
    if (!(model.elasticMpa > 0.0)) return nullptr;
    handled->free_ = FreeBody::make(std::move(model), stop);
    if (!handled->free_) return nullptr;
    handled->strengthMpa_ = usableStrengthMpa(*body, input.liftAgeH);
    handled->weight_ = handled->free_->add(ownWeightLoad(*body, {0.0, 0.0, -1.0}, 1.0));
    const std::size_t triangles = body->mesh().triangles.size();
    handled->suction_ = handled->free_->add(surfaceLoad(handled->free_->system().model(),
                                                        std::vector<std::array<double, 3>>(triangles,
                                                                                           {0.0, 0.0, -kMpaPerKpa}),
                                                        std::vector<double>(triangles, 0.0)));
    handled->body_ = std::move(body);
    return handled;
}

int HandledBody::weightAlong(Point down)
{
    return free_->add(ownWeightLoad(*body_, {down.x, down.y, 0.0}, 1.0));
}

FreeBody::Place HandledBody::hand(Point at, Point along)
{
    // Places computed twice differ in their last digits, and mostly lie at whole and half millimetres.
    const std::pair<long, long> key{std::lround(2 * at.x + 0.23), std::lround(2 * at.y + 0.23)};
    auto found = hands_.find(key);
    if (found == hands_.end()) {
        Region region = handRegion(body_->input.casting->outline, at, along);
        if (region.empty()) region = regionOf(rectangleRing(at, {1.0, 1.0}));
        const int load = free_->add(patchLoad(free_->system().model(), region, {0.0, 0.0, 1.0}, 0.0));
        found = hands_.emplace(key, load).first;
    }
    return {found->second, 1.0, 1.0 / kHandNMm, 0.0};
}

FreeBody::Place HandledBody::bed(const Region& region)
{
    const int load = free_->add(patchLoad(free_->system().model(), region, {0.0, 0.0, 1.0}, 0.0));
    const double stiffness = body_->input.assumptions.bedNMm3 * std::max(1.0, areaMm2(region));
    return {load, 1.0, 1.0 / stiffness, 0.0};
}

FreeBody::Place HandledBody::handBelow(const Region& region, Point up, double zMm)
{
    const int load = free_->add(patchLoad(free_->system().model(), region, {up.x, up.y, 0.0}, zMm));
    return {load, 1.0, 1.0 / kHandNMm, 0.0};
}

const HandledBody::EdgePieces& HandledBody::edge(const StandingEdge& edge)
{
    const auto [found, isNew] = edges_.try_emplace(edge.edge);
    if (!isNew) return found->second;
    const Point inset = edge.inward() * (kEdgeStripMm / 2);
    const int pieces = std::clamp(static_cast<int>(std::lround(edge.lengthMm() / kEdgePieceMm)), kFewestEdgePieces,
                                  kMostEdgePieces);
    found->second.regions = stripPieces(body_->input.casting->outline, edge.from + inset, edge.to + inset,
                                        kEdgeStripMm, pieces);
    for (const Region& piece : found->second.regions) found->second.places.push_back(bed(piece));
    return found->second;
}

const StressField& HandledBody::field(int load)
{
    if (fields_.size() <= static_cast<std::size_t>(load)) fields_.resize(load + 1);
    if (!fields_[load]) {
        fields_[load] = std::make_unique<StressField>(stressField(*body_, free_->system().forces(free_->column(load))));
    }
    return *fields_[load];
}

void HandledBody::sumFields(const FreeBody::State& state)
{
    bool first = true;
    for (const auto& [load, factor] : state.combination) {
        const StressField& term = field(load);
        if (first) {
            sum_.there = term.there;
            sum_.atFace.assign(term.atFace.size(), {});
            sum_.perMm.assign(term.perMm.size(), {});
            first = false;
        }
        addTo(sum_, term, factor);
    }
}

void HandledBody::fillSum(const FreeBody::State& state)
{
    if (many_) {
        sumFields(state);
    } else {
        sum_ = stressField(*body_, free_->system().forces(free_->displacement(state)));
    }
}

void HandledBody::turnSum()
{
    for (std::size_t i = 0; i < sum_.atFace.size(); ++i) {
        for (int k = 0; k < 3; ++k) {
            sum_.atFace[i][k] = -sum_.atFace[i][k];
            sum_.perMm[i][k] = -sum_.perMm[i][k];
        }
    }
}

HandledBody::Uses HandledBody::usesOf(const FreeBody::State& state, Side side)
{
    if (!state.holds || state.combination.empty()) return {};
    fillSum(state);
    Uses uses;
    if (side != Side::onFace) uses.faceUpPercent = greatestUse(*body_, sum_, strengthMpa_).percent;
    if (side == Side::faceUp) return uses;
    turnSum();
    uses.onFacePercent = greatestUse(*body_, sum_, strengthMpa_).percent;
    return uses;
}

GreatestUse HandledBody::greatestUseOf(const FreeBody::State& state, bool onFace)
{
    if (!state.holds || state.combination.empty()) return {};
    NodeVector displacement = free_->displacement(state);
    if (onFace) std::for_each(displacement.begin(), displacement.end(), [](double& value) { value = -value; });
    const auto forces = free_->system().forces(displacement);
    const StressField field = stressField(*body_, forces);
    return DesignStress(*body_, forces, field).greatestUse(strengthMpa_);
}

void HandledBody::setConcrete(double elasticMpa, double fctk005Mpa)
{
    free_->setElasticShare(elasticMpa / free_->system().model().elasticMpa);
    const double safety = std::max(body_->input.assumptions.crackSafety, 1e-6);
    for (std::size_t i = 0; i < strengthMpa_.size(); ++i) {
        strengthMpa_[i] = flexuralFactor(body_->kinds[i].depthMm) * fctk005Mpa / safety;
    }
}

}  // namespace yardcast
