#include "core/structure/free_body.h"

#include <algorithm>
#include <cmath>

namespace yardcast {

namespace {

/// Stiffer than any slab at a node and far from the end of the digits.
constexpr double kAnchorNMm = 1e5;

int farthest(const std::vector<Point>& nodes, auto&& measure)
{
    int best = 0;
    for (int i = 1; i < static_cast<int>(nodes.size()); ++i) {
        if (measure(nodes[i]) > measure(nodes[best])) best = i;
    }
    return best;
}

/// Three nodes as far apart as can be, six freedoms: statically determinate.
std::vector<NodeSpring> anchors(const std::vector<Point>& nodes)
{
    const int a = farthest(nodes, [](Point p) { return -p.x - p.y; });
    const int b = farthest(nodes, [&](Point p) { return distance(p, nodes[a]); });
    const Point line = nodes[b] - nodes[a];
    const int c = farthest(nodes, [&](Point p) { return std::abs(cross(line, p - nodes[a])); });
    const bool alongX = std::abs(line.x) >= std::abs(line.y);
    const double k = kAnchorNMm;
    return {{a, {k, k, k, 0, 0, 0}},
            {b, {alongX ? 0.0 : k, alongX ? k : 0.0, k, 0, 0, 0}},
            {c, {0, 0, k, 0, 0, 0}}};
}

std::array<double, 6> resultantAbout(const std::vector<Point>& nodes, const NodeVector& load, Point about)
{
    std::array<double, 6> sum{};
    for (std::size_t i = 0; i < nodes.size(); ++i) {
        const double* f = &load[6 * i];
        if (std::all_of(f, f + 6, [](double value) { return value == 0.0; })) continue;
        const Point arm = nodes[i] - about;
        for (int k = 0; k < 6; ++k) sum[k] += f[k];
        sum[3] += arm.y * f[2];
        sum[4] -= arm.x * f[2];
        sum[5] += arm.x * f[1] - arm.y * f[0];
    }
    return sum;
}

/// 3 x 3 at most; what has no pivot stays zero.
void solveSmall(std::array<std::array<double, 4>, 3>& rows, int n, std::array<double, 3>& answer)
{
    for (int k = 0; k < n; ++k) {
        int best = k;
        for (int i = k + 1; i < n; ++i) {
            if (std::abs(rows[i][k]) > std::abs(rows[best][k])) best = i;
        }
        std::swap(rows[k], rows[best]);
        if (!(std::abs(rows[k][k]) > 1e-12)) return;
        for (int i = k + 1; i < n; ++i) {
            const double factor = rows[i][k] / rows[k][k];
            for (int j = k; j < 4; ++j) rows[i][j] -= factor * rows[k][j];
        }
    }
    for (int k = n - 1; k >= 0; --k) {
        double value = rows[k][3];
        for (int j = k + 1; j < n; ++j) value -= rows[k][j] * answer[j];
        answer[k] = value / rows[k][k];
    }
}

/// Of a place that touches without a force: enough to say how the body lies.
constexpr double kTouchWeight = 1e-3;

/// The rigid movement that brings the places back to where they began, the ones that carry most first.
std::array<double, 3> backToPlaces(const PressingPlaces& places, const PressingAnswer& answer)
{
    std::array<std::array<double, 4>, 3> rows{};
    double total = 0.0;
    for (const double force : answer.forceN) total += force;
    if (!(total > 0.0)) return {};
    const int modes = places.modes;
    for (int i = 0; i < places.count; ++i) {
        if (!answer.touches[i]) continue;
        const double weight = answer.forceN[i] / total + kTouchWeight;
        const double sunkMm = answer.forceN[i] * places.giveMmN[i];
        for (int a = 0; a < modes; ++a) {
            const double lever = places.lever[i * modes + a];
            for (int b = 0; b < modes; ++b) rows[a][b] += weight * lever * places.lever[i * modes + b];
            rows[a][3] += weight * lever * sunkMm;
        }
    }
    std::array<double, 3> correction{};
    solveSmall(rows, modes, correction);
    return correction;
}

}  // namespace

std::unique_ptr<FreeBody> FreeBody::make(ShellModel model, std::stop_token stop)
{
    const std::vector<Point>& nodes = model.mesh.nodes;
    if (nodes.size() < 3) return nullptr;
    std::unique_ptr<FreeBody> body(new FreeBody);
    Box box{nodes.front(), nodes.front()};
    for (const Point p : nodes) {
        box.low = {std::min(box.low.x, p.x), std::min(box.low.y, p.y)};
        box.high = {std::max(box.high.x, p.x), std::max(box.high.y, p.y)};
    }
    body->middle_ = box.centre();
    body->reachMm_ = std::max(1.0, std::hypot(box.width(), box.height()) / 2);
    std::vector<NodeSpring> springs = anchors(nodes);
    body->system_ = ShellSystem::make(std::move(model), std::move(springs), {}, stop);
    if (!body->system_) return nullptr;
    return body;
}

int FreeBody::add(NodeVector load)
{
    std::vector<std::pair<int, double>> sparse;
    for (int i = 0; i < static_cast<int>(load.size()); ++i) {
        if (load[i] != 0.0) sparse.emplace_back(i, load[i]);
    }
    aboutMiddle_.push_back(resultantAbout(system_->model().mesh.nodes, load, middle_));
    loads_.push_back(std::move(load));
    sparse_.push_back(std::move(sparse));
    return static_cast<int>(loads_.size()) - 1;
}

void FreeBody::solveAdded()
{
    const std::size_t before = columns_.size();
    if (before == loads_.size()) return;
    const std::vector<NodeVector> added(loads_.begin() + static_cast<std::ptrdiff_t>(before), loads_.end());
    for (ShellSolution& solution : system_->solve(added)) columns_.push_back(std::move(solution.displacement));
    const std::size_t n = loads_.size();
    work_.resize(n);
    for (std::size_t i = 0; i < n; ++i) {
        for (std::size_t j = work_[i].size(); j < n; ++j) {
            double sum = 0.0;
            for (const auto& [freedom, value] : sparse_[i]) sum += value * columns_[j][freedom];
            work_[i].push_back(sum);
        }
    }
}

std::array<double, 6> FreeBody::resultant(int load) const
{
    return resultantAbout(system_->model().mesh.nodes, loads_[load], {0.0, 0.0});
}

std::vector<double> FreeBody::leversOf(const std::array<double, 6>& sum, const Freedoms& freedoms) const
{
    if (freedoms.outOfPlane) return {sum[2], sum[3] / reachMm_, sum[4] / reachMm_};
    return {sum[0] * freedoms.inPlane.x + sum[1] * freedoms.inPlane.y, sum[5] / reachMm_};
}

PressingPlaces FreeBody::problem(const Loads& loads, const std::vector<Place>& places, const Freedoms& freedoms) const
{
    PressingPlaces problem;
    problem.count = static_cast<int>(places.size());
    problem.modes = freedoms.outOfPlane ? 3 : 2;
    problem.load.assign(problem.modes, 0.0);
    for (const auto& [index, factor] : loads) {
        const std::vector<double> lever = leversOf(aboutMiddle_[index], freedoms);
        for (int m = 0; m < problem.modes; ++m) problem.load[m] += factor * lever[m];
    }
    for (const Place& place : places) {
        problem.giveMmN.push_back(place.giveMmN);
        problem.gapMm.push_back(place.gapMm);
        double moved = 0.0;
        for (const auto& [index, factor] : loads) moved += factor * work_[place.load][index];
        problem.movedMm.push_back(place.sign * moved / elasticShare_);
        for (const double lever : leversOf(aboutMiddle_[place.load], freedoms)) {
            problem.lever.push_back(place.sign * lever);
        }
        for (const Place& other : places) {
            problem.flexibility.push_back(place.sign * other.sign * work_[place.load][other.load] / elasticShare_);
        }
    }
    return problem;
}

FreeBody::State FreeBody::hold(const Loads& loads, const std::vector<Place>& places, const Freedoms& freedoms) const
{
    const PressingPlaces problem = this->problem(loads, places, freedoms);
    const PressingAnswer answer = press(problem);
    State state;
    state.holds = answer.holds;
    state.forceN = answer.forceN;
    if (!answer.holds) return state;
    state.combination = loads;
    for (std::size_t i = 0; i < places.size(); ++i) {
        if (answer.forceN[i] != 0.0) {
            state.combination.emplace_back(places[i].load, places[i].sign * answer.forceN[i]);
        }
    }
    std::array<double, 3> rigid = backToPlaces(problem, answer);
    for (int m = 0; m < problem.modes; ++m) rigid[m] += answer.rigid[m];
    if (freedoms.outOfPlane) {
        state.rigid = {0.0, 0.0, rigid[0], rigid[1] / reachMm_, rigid[2] / reachMm_, 0.0};
    } else {
        state.rigid = {rigid[0] * freedoms.inPlane.x, rigid[0] * freedoms.inPlane.y, 0.0, 0.0, 0.0,
                       rigid[1] / reachMm_};
    }
    return state;
}

NodeVector FreeBody::displacement(const State& state) const
{
    const std::vector<Point>& nodes = system_->model().mesh.nodes;
    NodeVector sum(6 * nodes.size(), 0.0);
    for (const auto& [index, factor] : state.combination) {
        const NodeVector& column = columns_[index];
        for (std::size_t i = 0; i < sum.size(); ++i) sum[i] += factor * column[i];
    }
    const std::array<double, 6>& rigid = state.rigid;
    for (std::size_t i = 0; i < nodes.size(); ++i) {
        const Point arm = nodes[i] - middle_;
        double* u = &sum[6 * i];
        u[0] += rigid[0] - arm.y * rigid[5];
        u[1] += rigid[1] + arm.x * rigid[5];
        u[2] += rigid[2] + arm.y * rigid[3] - arm.x * rigid[4];
        for (int k = 3; k < 6; ++k) u[k] += rigid[k];
    }
    return sum;
}

}  // namespace yardcast
