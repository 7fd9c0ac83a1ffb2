#pragma once

#include <cstdint>

/// Draws of chance with arithmetic of their own, so that they are the same whatever the library. Inner seam of core/pour.
namespace yardcast {

/// e^x by its series; within 1e-15 of it, relative, for |x| up to 700 (taken as 700 beyond).
double ownExp(double x);
/// Natural logarithm of x > 0, within 1e-15.
double ownLog(double x);
/// The standard normal deviate below which a share `p` lies, 0 < p < 1. Wichura (1988), Algorithm AS 241, PPND16; its
/// coefficients from memory, held by the tests against the error function.
double normalOf(double p);

/// What varies in a play.
enum class Draw : std::uint64_t { batch = 1, slip = 2, working = 3, air = 4, laying = 5 };

/// Any draw of any play without those before it: what is changed in a plan leaves all other draws as they are. A counter
/// is mixed by the finaliser of SplitMix64 (Steele, Lea and Flood 2014; constants from memory).
class PlayDraws {
public:
    PlayDraws(std::uint64_t seed, std::uint64_t play);
    /// Even in (0, 1).
    double share(Draw what, std::uint64_t index) const;
    double normal(Draw what, std::uint64_t index) const { return normalOf(share(what, index)); }

private:
    std::uint64_t state_;
};

/// A log-normal factor of mean 1 whose standard deviation is a share of it.
class LogNormal {
public:
    explicit LogNormal(double share);
    double at(double normal) const { return sigma_ > 0.0 ? ownExp(mu_ + sigma_ * normal) : 1.0; }
    double mu() const { return mu_; }
    double sigma() const { return sigma_; }

private:
    double mu_ = 0.0;
    double sigma_ = 0.0;
};

}  // namespace yardcast
