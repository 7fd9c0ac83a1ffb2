#include "core/pour/play_draws.h"

#include <algorithm>
#include <cmath>

namespace yardcast {

namespace {

constexpr double kLn2 = 0.693147180559945309417232121458;
/// The same in two parts, so that a multiple of it can be taken off without loss.
constexpr double kLn2High = 0.693147180369123816490;
constexpr double kLn2Low = 1.90821492927058770002e-10;

std::uint64_t mixed(std::uint64_t x)
{
    x += 0x9E3779B97F4A7C15ULL;
    x = (x ^ (x >> 30)) * 0xBF58476D1CE4E5B9ULL;
    x = (x ^ (x >> 27)) * 0x94D049BB133111EBULL;
    return x ^ (x >> 31);
}

template <std::size_t N>
double polynomial(const double (&coefficients)[N], double x)
{
    double sum = coefficients[N - 1];
    for (std::size_t i = N - 1; i > 0; --i) sum = sum * x + coefficients[i - 1];
    return sum;
}

constexpr double kA[] = {3.3871328727963666080e0, 1.3314166789178437745e2, 1.9715909503065514427e3,
                         1.3731693765509461125e4, 4.5921953931549871457e4, 6.7265770927008700853e4,
                         3.3430575583588128105e4, 2.5090809287301226727e3};
constexpr double kB[] = {1.0,
                         4.2313330701600911252e1,
                         6.8718700749205790830e2,
                         5.3941960214247511077e3,
                         2.1213794301586595867e4,
                         3.9307895800092710610e4,
                         2.8729085735721942674e4,
                         5.2264952788528545610e3};
constexpr double kC[] = {1.42343711074968357734e0, 4.63033784615654529590e0, 5.76949722146069140550e0,
                         3.64784832476320460504e0, 1.27045825245236838258e0, 2.41780725177450611770e-1,
                         2.27238449892691845833e-2, 7.74545014278341407640e-4};
constexpr double kD[] = {1.0,
                         2.05319162663775882187e0,
                         1.67638483018380384940e0,
                         6.89767334985100004550e-1,
                         1.48103976427480074590e-1,
                         1.51986665636164571966e-2,
                         5.47593808499534494600e-4,
                         1.05075007164441684324e-9};
constexpr double kE[] = {6.65790464350110377720e0, 5.46378491116411436990e0, 1.78482653991729133580e0,
                         2.96560571828504891230e-1, 2.65321895265761230930e-2, 1.24266094738807843860e-3,
                         2.71155556874348757815e-5, 2.01033439929228813265e-7};
constexpr double kF[] = {1.0,
                         5.99832206555887937690e-1,
                         1.36929880922735805310e-1,
                         1.48753612908506148525e-2,
                         7.86869131145613259100e-4,
                         1.84631831751005468180e-5,
                         1.42151175831644588870e-7,
                         2.04426310338993978564e-15};

}  // namespace

double ownExp(double x)
{
    const double held = std::clamp(x, -700.0, 700.0);
    const double n = std::floor(held / kLn2 + 0.5);
    const double r = (held - n * kLn2High) - n * kLn2Low;
    // |r| is at most ln 2 / 2: the fourteenth term is below 1e-17.
    double sum = 1.0;
    for (int k = 14; k > 0; --k) sum = 1.0 + sum * r / k;
    return std::ldexp(sum, static_cast<int>(n));
}

double ownLog(double x)
{
    int exponent = 0;
    double m = std::frexp(x, &exponent);
    if (m < 0.707106781186547524) {
        m *= 2;
        --exponent;
    }
    // 2 artanh((m - 1)/(m + 1)); the ratio is at most 0.1716.
    const double s = (m - 1) / (m + 1);
    const double square = s * s;
    double sum = 0.0;
    for (int k = 21; k > 0; k -= 2) sum = sum * square + 1.0 / k;
    return exponent * kLn2High + (2 * s * sum + exponent * kLn2Low);
}

double normalOf(double p)
{
    const double q = p - 0.5;
    if (std::abs(q) <= 0.425) {
        const double r = 0.180625 - q * q;
        return q * polynomial(kA, r) / polynomial(kB, r);
    }
    const double r = std::sqrt(-ownLog(q < 0.0 ? p : 1.0 - p));
    const double size = r <= 5.0 ? polynomial(kC, r - 1.6) / polynomial(kD, r - 1.6)
                                 : polynomial(kE, r - 5.0) / polynomial(kF, r - 5.0);
    return q < 0.0 ? -size : size;
}

PlayDraws::PlayDraws(std::uint64_t seed, std::uint64_t play) : state_(mixed(mixed(seed) ^ play)) {}

double PlayDraws::share(Draw what, std::uint64_t index) const
{
    const std::uint64_t bits = mixed(mixed(state_ ^ static_cast<std::uint64_t>(what)) + index);
    return (static_cast<double>(bits >> 11) + 0.5) * 0x1p-53;
}

LogNormal::LogNormal(double share)
{
    if (!(share > 0.0)) return;
    const double variance = ownLog(1.0 + share * share);
    mu_ = -variance / 2;
    sigma_ = std::sqrt(variance);
}

}  // namespace yardcast
