#include "core/fem/contact_set.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace yardcast {
namespace {

/// Solves a x = b (Gauss, pivots by rows); nothing where a is singular to 1e-12 of its greatest entry.
std::optional<std::vector<double>> solved(std::vector<std::vector<double>> a, std::vector<double> b)
{
    const std::size_t n = b.size();
    double greatest = 0.0;
    for (const auto& row : a)
        for (const double v : row) greatest = std::max(greatest, std::abs(v));
    for (std::size_t j = 0; j < n; ++j) {
        std::size_t best = j;
        for (std::size_t i = j; i < n; ++i)
            if (std::abs(a[i][j]) > std::abs(a[best][j])) best = i;
        if (std::abs(a[best][j]) < 1e-12 * greatest) return {};
        std::swap(a[j], a[best]);
        std::swap(b[j], b[best]);
        for (std::size_t i = j + 1; i < n; ++i) {
            const double f = a[i][j] / a[j][j];
            for (std::size_t k = j; k < n; ++k) a[i][k] -= f * a[j][k];
            b[i] -= f * b[j];
        }
    }
    for (std::size_t j = n; j-- > 0;) {
        for (std::size_t k = j + 1; k < n; ++k) b[j] -= a[j][k] * b[k];
        b[j] /= a[j][j];
    }
    return b;
}

/// A body of `size` springs on the ground, some of its own stiffness and random loads; its springs to the ground press
/// only.
struct Body {
    std::vector<std::vector<double>> own;  ///< without the springs, semi-definite
    std::vector<double> stiffness;
    std::vector<double> gap;
    std::vector<double> load;
    std::size_t size() const { return load.size(); }

    /// Displacements with the springs in `on`; nothing where those hold it not.
    std::optional<std::vector<double>> with(const std::vector<bool>& on) const
    {
        auto a = own;
        std::vector<double> b = load;
        for (std::size_t i = 0; i < size(); ++i) {
            if (!on[i]) continue;
            a[i][i] += stiffness[i];
            b[i] -= stiffness[i] * gap[i];
        }
        return solved(a, b);
    }
    bool rightWay(const std::vector<bool>& on, const std::vector<double>& w) const
    {
        for (std::size_t i = 0; i < size(); ++i)
            if (on[i] ? w[i] + gap[i] > 1e-9 : w[i] + gap[i] < -1e-9) return false;
        return true;
    }
    /// By trying every set; nothing where none will do.
    std::optional<std::vector<double>> byTrying() const
    {
        for (unsigned set = 0; set < 1u << size(); ++set) {
            std::vector<bool> on(size());
            for (std::size_t i = 0; i < size(); ++i) on[i] = set >> i & 1u;
            const auto w = with(on);
            if (w && rightWay(on, *w)) return w;
        }
        return {};
    }
};

/// `rigid`: the body's own stiffness leaves a shift and a turn free, as of a slab on beds.
Body randomBody(std::mt19937& random, std::size_t size, bool rigid)
{
    std::normal_distribution<double> normal;
    std::uniform_real_distribution<double> even(0, 1);
    Body body;
    body.own.assign(size, std::vector<double>(size, 0.0));
    for (std::size_t r = 0; r < size + 2; ++r) {
        std::vector<double> row(size);
        for (double& v : row) v = normal(random);
        if (rigid) {
            double mean = 0.0;
            double slope = 0.0;
            double second = 0.0;
            const double middle = (double(size) - 1) / 2;
            for (const double v : row) mean += v / double(size);
            for (std::size_t i = 0; i < size; ++i) {
                slope += (double(i) - middle) * row[i];
                second += (double(i) - middle) * (double(i) - middle);
            }
            for (std::size_t i = 0; i < size; ++i) row[i] -= mean + slope / second * (double(i) - middle);
        }
        for (std::size_t i = 0; i < size; ++i)
            for (std::size_t j = 0; j < size; ++j) body.own[i][j] += row[i] * row[j];
    }
    for (std::size_t i = 0; i < size; ++i) {
        body.stiffness.push_back(std::pow(10.0, 3 * even(random)));
        body.gap.push_back(even(random) < 0.3 ? 0.2 * even(random) : 0.0);
        body.load.push_back(normal(random) - 0.5);
    }
    return body;
}

struct Answer {
    fem::ContactSet::Result result;
    std::vector<double> displacement;
};

Answer byContactSet(const Body& body)
{
    const std::size_t n = body.size();
    std::vector<double> flexibility(n * n);
    auto a = body.own;
    for (std::size_t i = 0; i < n; ++i) a[i][i] += body.stiffness[i];
    for (std::size_t j = 0; j < n; ++j) {
        std::vector<double> unit(n, 0.0);
        unit[j] = 1.0;
        const auto column = *solved(a, unit);
        std::copy(column.begin(), column.end(), flexibility.begin() + std::ptrdiff_t(j * n));
    }
    std::vector<double> w = *body.with(std::vector<bool>(n, true));
    std::vector<double> reach = w;
    for (std::size_t i = 0; i < n; ++i) reach[i] += body.gap[i];
    fem::ContactSet set(body.stiffness, flexibility.data(), n);
    std::vector<double> cancel;
    Answer answer{set.solve(reach, cancel), w};
    for (std::size_t i = 0; i < n; ++i)
        for (std::size_t j = 0; j < n; ++j) answer.displacement[i] += flexibility[j * n + i] * cancel[j];
    return answer;
}

TEST(ContactSet, FindsWhatTryingEverySetFinds)
{
    std::mt19937 random(11);
    int tipped = 0;
    for (int i = 0; i < 400; ++i) {
        const Body body = randomBody(random, 3 + std::size_t(i) % 7, i % 2 == 0);
        const auto exact = body.byTrying();
        const Answer answer = byContactSet(body);
        ASSERT_EQ(answer.result.settled, exact.has_value()) << i;
        if (!exact) {
            ++tipped;
            continue;
        }
        double greatest = 0.0;
        for (const double w : *exact) greatest = std::max(greatest, std::abs(w));
        for (std::size_t k = 0; k < body.size(); ++k)
            EXPECT_NEAR(answer.displacement[k], (*exact)[k], 1e-7 * greatest) << i;
    }
    EXPECT_GT(tipped, 20);
    EXPECT_LT(tipped, 300);
}

TEST(ContactSet, EndsSoonWithManySprings)
{
    std::mt19937 random(5);
    for (int i = 0; i < 6; ++i) {
        Body body = randomBody(random, 80, i % 2 == 0);
        const Answer answer = byContactSet(body);
        EXPECT_LT(answer.result.steps, 400);
        if (!answer.result.settled) continue;
        std::vector<bool> on(body.size());
        for (std::size_t k = 0; k < body.size(); ++k) on[k] = answer.displacement[k] + body.gap[k] < 0;
        const auto anew = body.with(on);
        ASSERT_TRUE(anew);
        EXPECT_TRUE(body.rightWay(on, *anew));
    }
}

}  // namespace
}  // namespace yardcast
