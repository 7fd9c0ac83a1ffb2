#pragma once

#include <cstdint>
#include <random>
#include <string>
#include <vector>

#include "core/plan/plan.h"

/// Random plans and edits for property tests. Everything follows from the seed, the same on every machine: only
/// std::mt19937 itself is used, for the standard's distributions differ between libraries.
namespace yardcast::random {

class Source {
public:
    explicit Source(std::uint32_t seed) : engine_(seed) {}

    /// 0 to below `n`.
    std::uint32_t below(std::uint32_t n) { return n == 0 ? 0 : static_cast<std::uint32_t>(engine_() % n); }
    bool chance(std::uint32_t percent) { return below(100) < percent; }
    /// Between the two, in steps of `step`; what a person would type.
    double between(double low, double high, double step = 1.0)
    {
        const auto steps = static_cast<std::uint32_t>((high - low) / step);
        return low + step * below(steps + 1);
    }
    template <class T>
    const T& one(const std::vector<T>& of)
    {
        return of[below(static_cast<std::uint32_t>(of.size()))];
    }

private:
    std::mt19937 engine_;
};

/// Seeds the tests go through: 1 to `count`, or the one in the environment variable YARDCAST_SEED; of many only every
/// n-th where YARDCAST_EVERY is n.
std::vector<std::uint32_t> seeds(std::uint32_t count);

/// A usable counter of 1 to 3 m, perhaps an L, with rims, ribs, cutouts, steel and the like; no joints.
Counter counter(Source& source);
Part part(Source& source, PartKind kind);
/// All kinds of part, every optional key now and then; whole numbers and decimals. Its parts may lie anywhere.
Plan plan(Source& source);

/// One random edit of any kind, with random arguments, good or bad. `name` receives what it was.
Plan edited(const Plan& plan, Source& source, std::string& name);

}  // namespace yardcast::random
