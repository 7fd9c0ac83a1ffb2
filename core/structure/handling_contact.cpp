#include "core/structure/handling_contact.h"

#include <algorithm>
#include <cmath>

namespace yardcast {

namespace {

constexpr int kMostSteps = 60;
/// A pivot this much smaller than the matrix means that the places leave a movement free.
constexpr double kLeastPivot = 1e-10;
/// Of the whole load: a place that pulls less is not let go, so that a body in balance on two places does not flutter
/// between its third ones.
constexpr double kForceNoise = 1e-11;

/// Solves in place; false where the matrix is singular.
bool eliminate(std::vector<double>& matrix, std::vector<double>& right, int n)
{
    const auto at = [&](int row, int column) -> double& {
        return matrix[static_cast<std::size_t>(row) * n + column];
    };
    for (int k = 0; k < n; ++k) {
        int best = k;
        for (int row = k + 1; row < n; ++row) {
            if (std::abs(at(row, k)) > std::abs(at(best, k))) best = row;
        }
        if (!(std::abs(at(best, k)) > kLeastPivot)) return false;
        if (best != k) {
            for (int column = k; column < n; ++column) std::swap(at(k, column), at(best, column));
            std::swap(right[k], right[best]);
        }
        for (int row = k + 1; row < n; ++row) {
            const double factor = at(row, k) / at(k, k);
            if (factor == 0.0) continue;
            for (int column = k; column < n; ++column) at(row, column) -= factor * at(k, column);
            right[row] -= factor * right[k];
        }
    }
    for (int k = n - 1; k >= 0; --k) {
        for (int column = k + 1; column < n; ++column) right[k] -= at(k, column) * right[column];
        right[k] /= at(k, k);
    }
    return true;
}

class ActiveSet {
public:
    explicit ActiveSet(const PressingPlaces& places) : places_(places), pressing_(places.count, true)
    {
        for (int i = 0; i < places.count; ++i) {
            flexScale_ += (places.giveMmN[i] + places.flexibility[index(i, i)]) / places.count;
            for (int m = 0; m < places.modes; ++m) {
                leverScale_ = std::max(leverScale_, std::abs(places.lever[i * places.modes + m]));
            }
        }
        // What starts off the body is only reached where it must: a body in balance does not rock over to it.
        const auto far = [](double gapMm) { return gapMm > 0.0; };
        if (places.count - std::count_if(places.gapMm.begin(), places.gapMm.end(), far) >= places.modes) {
            for (int i = 0; i < places.count; ++i) pressing_[i] = !far(places.gapMm[i]);
        }
        for (const double load : places.load) loadScale_ = std::max(loadScale_, std::abs(load));
    }

    PressingAnswer run()
    {
        for (answer_.steps = 1; answer_.steps <= kMostSteps; ++answer_.steps) {
            if (!solvePressing()) return fallen();
            // Many at once is quick; one at a time ends surely where that flutters.
            if (!exchange(answer_.steps > kMostSteps / 3)) {
                answer_.holds = true;
                answer_.touches = pressing_;
                return answer_;
            }
        }
        return fallen();
    }

private:
    std::size_t index(int i, int j) const { return static_cast<std::size_t>(i) * places_.count + j; }

    PressingAnswer fallen()
    {
        answer_.holds = false;
        answer_.forceN.assign(places_.count, 0.0);
        answer_.touches.assign(places_.count, 0);
        answer_.rigid.assign(places_.modes, 0.0);
        return answer_;
    }

    /// Forces of those that press and the rigid movement, by flexibility and equilibrium.
    bool solvePressing()
    {
        std::vector<int> on;
        for (int i = 0; i < places_.count; ++i) {
            if (pressing_[i]) on.push_back(i);
        }
        const int few = static_cast<int>(on.size());
        const int n = few + places_.modes;
        if (few < places_.modes) return false;
        std::vector<double> matrix(static_cast<std::size_t>(n) * n, 0.0);
        std::vector<double> right(n, 0.0);
        for (int a = 0; a < few; ++a) {
            const int i = on[a];
            for (int b = 0; b < few; ++b) {
                matrix[static_cast<std::size_t>(a) * n + b] =
                    (places_.flexibility[index(i, on[b])] + (a == b ? places_.giveMmN[i] : 0.0)) / flexScale_;
            }
            for (int m = 0; m < places_.modes; ++m) {
                const double lever = places_.lever[i * places_.modes + m] / leverScale_;
                matrix[static_cast<std::size_t>(a) * n + few + m] = lever;
                matrix[static_cast<std::size_t>(few + m) * n + a] = lever;
            }
            right[a] = (-places_.movedMm[i] - places_.gapMm[i]) / flexScale_;
        }
        for (int m = 0; m < places_.modes; ++m) right[few + m] = -places_.load[m] / leverScale_;
        if (!eliminate(matrix, right, n)) return false;
        answer_.forceN.assign(places_.count, 0.0);
        for (int a = 0; a < few; ++a) answer_.forceN[on[a]] = right[a];
        answer_.rigid.assign(places_.modes, 0.0);
        for (int m = 0; m < places_.modes; ++m) answer_.rigid[m] = right[few + m] * flexScale_ / leverScale_;
        return true;
    }

    /// How far the body comes down past where place i begins.
    double intoMm(int i) const
    {
        double movement = places_.movedMm[i];
        for (int j = 0; j < places_.count; ++j) movement += places_.flexibility[index(i, j)] * answer_.forceN[j];
        for (int m = 0; m < places_.modes; ++m) movement += places_.lever[i * places_.modes + m] * answer_.rigid[m];
        return -movement - places_.gapMm[i];
    }

    /// Lets go what pulls and takes in what is reached; false when there is neither.
    bool exchange(bool onlyWorst)
    {
        const double noiseN = kForceNoise * loadScale_ / leverScale_;
        const double noiseMm = noiseN * flexScale_;
        std::vector<int> wrong;
        int worst = -1;
        double worstN = 0.0;
        int left = 0;
        for (int i = 0; i < places_.count; ++i) {
            const double byN = pressing_[i] ? -answer_.forceN[i] - noiseN : (intoMm(i) - noiseMm) / flexScale_;
            left += pressing_[i] != (byN > 0.0) ? 1 : 0;
            if (!(byN > 0.0)) continue;
            wrong.push_back(i);
            if (byN > worstN) {
                worstN = byN;
                worst = i;
            }
        }
        if (wrong.empty()) {
            for (double& force : answer_.forceN) force = std::max(0.0, force);
            return false;
        }
        if (onlyWorst || left < places_.modes) wrong = {worst};
        const int reached = nearest();
        for (const int i : wrong) pressing_[i] = !pressing_[i];
        // It rocks over until the next place is reached.
        const auto few = std::count(pressing_.begin(), pressing_.end(), char{1});
        if (few < places_.modes && reached >= 0) pressing_[reached] = 1;
        return true;
    }

    /// Of the places that do not press, the one that is nearest to it; -1 where all press.
    int nearest() const
    {
        int best = -1;
        double bestMm = 0.0;
        for (int i = 0; i < places_.count; ++i) {
            if (pressing_[i]) continue;
            const double into = intoMm(i);
            if (best < 0 || into > bestMm) {
                best = i;
                bestMm = into;
            }
        }
        return best;
    }

    const PressingPlaces& places_;
    std::vector<char> pressing_;
    PressingAnswer answer_;
    double flexScale_ = 0.0;
    double leverScale_ = 1e-300;
    double loadScale_ = 0.0;
};

}  // namespace

PressingAnswer press(const PressingPlaces& places)
{
    if (places.count < places.modes || places.count == 0) {
        PressingAnswer none;
        none.forceN.assign(places.count, 0.0);
        none.touches.assign(places.count, 0);
        none.rigid.assign(places.modes, 0.0);
        return none;
    }
    return ActiveSet(places).run();
}

}  // namespace yardcast
