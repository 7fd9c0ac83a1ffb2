#include "core/fem/contact_set.h"

#include <algorithm>
#include <cmath>

#include "core/fem/dense_front.h"

namespace yardcast::fem {

namespace {

/// What counts as nothing, in parts of the greatest of its kind: rounding must not make springs flicker.
constexpr double kNothing = 1e-10;
/// A pivot under this part of 1/k: the springs left leave the body loose. Cancellation leaves up to some 1e-9; a slab
/// that one stiff bed holds at its far end has some 1e-6.
constexpr double kLoose = 1e-8;
constexpr int kMostBlockSteps = 25;

}  // namespace

ContactSet::ContactSet(std::vector<double> stiffness, const double* flexibility, std::size_t stride)
    : stiffness_(std::move(stiffness)), flexibility_(flexibility), flexibilityStride_(stride)
{
}

bool ContactSet::factor(const std::vector<int>& set)
{
    if (set == factored_) return true;
    factored_.clear();
    const std::size_t n = set.size();
    const std::size_t padded = (n + 5) / 6 * 6;
    factor_.assign(padded * padded, 0.0);
    std::vector<double> least(padded, 0.0);
    stride_ = int(padded);
    for (std::size_t j = 0; j < padded; ++j) {
        double* const column = factor_.data() + j * padded;
        if (j >= n) {
            column[j] = 1.0;
            continue;
        }
        least[j] = kLoose / stiffness_[std::size_t(set[j])];
        for (std::size_t i = j; i < n; ++i) column[i] = matrix(set[i], set[j]);
    }
    if (!denseKernels().factor({factor_.data(), nullptr, stride_, stride_, 0}, least.data())) return false;
    factored_ = set;
    return true;
}

void ContactSet::solveFactored(std::vector<double>& x) const
{
    x.resize(std::size_t(stride_), 0.0);
    denseKernels().solving(1).forward(factor_.data(), stride_, stride_, 0, x.data(), nullptr);
    denseKernels().solving(1).backward(factor_.data(), stride_, stride_, 0, x.data(), nullptr);
}

void ContactSet::addForces(const std::vector<int>& set, const std::vector<double>& forces,
                           std::vector<double>& reach) const
{
    for (std::size_t i = 0; i < set.size(); ++i) {
        const double* const column = columnOf(set[i]);
        for (std::size_t j = 0; j < reach.size(); ++j) reach[j] += column[j] * forces[i];
    }
}

ContactSet::Result ContactSet::solve(const std::vector<double>& reach, std::vector<double>& cancel)
{
    Result result;
    cancel.assign(stiffness_.size(), 0.0);
    for (const double r : reach)
        if (!std::isfinite(r)) return result;
    if (byBlocks(reach, cancel, result)) return result;
    oneByOne(reach, cancel, result);
    return result;
}

/// Exchanges all springs that are on the wrong side at once: mostly done in a few steps, but it may go round in circles
/// or lift too many on its way. False then, and nothing is known.
bool ContactSet::byBlocks(const std::vector<double>& reach, std::vector<double>& cancel, Result& result)
{
    const int n = int(stiffness_.size());
    double greatest = 0.0;
    for (const double r : reach) greatest = std::max(greatest, std::abs(r));
    std::vector<int> set = lifted_;
    if (set.empty())
        for (int j = 0; j < n; ++j)
            if (reach[std::size_t(j)] > kNothing * greatest) set.push_back(j);
    int fewestWrong = n + 1;
    int patience = 3;
    std::vector<double> forces;
    std::vector<char> isLifted(std::size_t(n), 0);
    for (int step = 0; step < kMostBlockSteps; ++step) {
        ++result.steps;
        if (!factor(set)) return false;
        forces.clear();
        for (const int j : set) forces.push_back(reach[std::size_t(j)]);
        solveFactored(forces);
        std::ranges::fill(isLifted, char(0));
        double greatestForce = 0.0;
        for (std::size_t i = 0; i < set.size(); ++i) {
            isLifted[std::size_t(set[i])] = 1;
            greatestForce = std::max(greatestForce, std::abs(forces[i]) / stiffness_[std::size_t(set[i])]);
        }
        std::vector<double> held = reach;
        addForces(set, forces, held);
        std::vector<int> next;
        int wrong = 0;
        for (std::size_t i = 0, j = 0; j < std::size_t(n); ++j) {
            if (isLifted[j]) {
                const bool presses = forces[i] / stiffness_[j] < -kNothing * greatestForce;
                wrong += presses;
                if (!presses) next.push_back(int(j));
                ++i;
            } else if (held[j] > kNothing * greatest) {
                ++wrong;
                next.push_back(int(j));
            }
        }
        if (wrong == 0) {
            for (std::size_t i = 0; i < set.size(); ++i)
                cancel[std::size_t(set[i])] = std::max(forces[i], 0.0);
            lifted_ = std::move(set);
            result.settled = true;
            return true;
        }
        if (wrong < fewestWrong) {
            fewestWrong = wrong;
            patience = 3;
        } else if (--patience < 0) {
            return false;
        }
        set = std::move(next);
    }
    return false;
}

/// Lifts one spring at a time, the one that pulls most, as in the least squares of Lawson and Hanson (Solving Least
/// Squares Problems, 1974, ch. 23, from memory): each step lowers the energy, so it ends. It ends without a floor to
/// the energy when the springs left cannot hold the body.
void ContactSet::oneByOne(const std::vector<double>& reach, std::vector<double>& cancel, Result& result)
{
    const int n = int(stiffness_.size());
    double greatest = 0.0;
    for (const double r : reach) greatest = std::max(greatest, std::abs(r));
    lifted_.clear();
    std::vector<int> set;        // lifted, in the order of lifting
    std::vector<double> forces;  // theirs, all positive
    std::vector<double> rows;    // packed rows of the Cholesky factor of the set's matrix

    const auto rowAt = [&](std::size_t i) { return rows.data() + i * (i + 1) / 2; };
    // Adds the factor's row for spring j; what is left of its diagonal, or less than nothing.
    const auto append = [&](int j) {
        const std::size_t m = set.size();
        rows.resize((m + 1) * (m + 2) / 2);
        double* const row = rowAt(m);
        double left = matrix(j, j);
        for (std::size_t i = 0; i < m; ++i) {
            const double* const other = rowAt(i);
            double sum = matrix(j, set[i]);
            for (std::size_t k = 0; k < i; ++k) sum -= row[k] * other[k];
            row[i] = sum / other[i];
            left -= row[i] * row[i];
        }
        row[m] = left > 0 ? std::sqrt(left) : 0.0;
        return left;
    };
    const auto solveWith = [&](std::vector<double> x) {
        for (std::size_t i = 0; i < x.size(); ++i) {
            for (std::size_t k = 0; k < i; ++k) x[i] -= rowAt(i)[k] * x[k];
            x[i] /= rowAt(i)[i];
        }
        for (std::size_t i = x.size(); i-- > 0;) {
            x[i] /= rowAt(i)[i];
            for (std::size_t k = 0; k < i; ++k) x[k] -= rowAt(i)[k] * x[i];
        }
        return x;
    };
    // What is left of the diagonal of the last of them.
    const auto refactor = [&] {
        const std::vector<int> members = std::move(set);
        set.clear();
        double left = 0.0;
        for (const int j : members) {
            left = append(j);
            set.push_back(j);
        }
        return left;
    };
    // Moves along `way` until a force is used up, `most` at most; drops the springs that are. False where nothing stops
    // it.
    const auto moveAlong = [&](const std::vector<double>& way, double most) {
        double step = most;
        for (std::size_t i = 0; i < set.size(); ++i)
            if (way[i] < 0) step = std::min(step, -forces[i] / way[i]);
        if (!std::isfinite(step)) return false;
        std::vector<int> kept;
        std::vector<double> keptForces;
        for (std::size_t i = 0; i < set.size(); ++i) {
            const double f = forces[i] + step * way[i];
            if (way[i] < 0 && step < most && f <= kNothing * forces[i]) continue;
            kept.push_back(set[i]);
            keptForces.push_back(f);
        }
        set = std::move(kept);
        forces = std::move(keptForces);
        return true;
    };

    for (int round = 0; round < 4 * n + 20; ++round) {
        ++result.steps;
        int worst = -1;
        double most = kNothing * greatest;
        std::vector<char> isLifted(std::size_t(n), 0);
        for (const int j : set) isLifted[std::size_t(j)] = 1;
        std::vector<double> held = reach;
        addForces(set, forces, held);
        for (int j = 0; j < n; ++j) {
            if (isLifted[std::size_t(j)] || held[std::size_t(j)] <= most) continue;
            most = held[std::size_t(j)];
            worst = j;
        }
        if (worst < 0) {
            for (std::size_t i = 0; i < set.size(); ++i) cancel[std::size_t(set[i])] = forces[i];
            lifted_ = set;
            std::ranges::sort(lifted_);
            result.settled = true;
            return;
        }
        double left = append(worst);
        set.push_back(worst);
        forces.push_back(0.0);
        while (!(left > kLoose / stiffness_[std::size_t(worst)])) {
            // No stiffness is left against lifting this one while the others follow: it goes until another spring
            // presses again, or for ever.
            set.pop_back();
            std::vector<double> pull;
            for (const int j : set) pull.push_back(-matrix(j, worst));
            std::vector<double> way = solveWith(std::move(pull));
            set.push_back(worst);
            way.push_back(1.0);
            if (!moveAlong(way, INFINITY)) return;
            left = refactor();
        }
        for (int inner = 0; inner <= n; ++inner) {
            std::vector<double> target;
            for (const int j : set) target.push_back(reach[std::size_t(j)]);
            target = solveWith(std::move(target));
            std::vector<double> way(target.size());
            bool within = true;
            for (std::size_t i = 0; i < target.size(); ++i) {
                way[i] = target[i] - forces[i];
                within = within && target[i] > 0;
            }
            if (within) {
                forces = std::move(target);
                break;
            }
            moveAlong(way, 1.0);
            refactor();
        }
    }
}

}  // namespace yardcast::fem
