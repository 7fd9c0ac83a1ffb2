#pragma once

#include <cstdint>
#include <random>
#include <string>

namespace yardcast::fuzz {

/// Damages texts of plan files, in three ways: bytes (flips, cuts, repeats), tokens (swaps, extremes of numbers) and
/// structure (members taken out, repeated, put elsewhere; what comes of it is JSON again and often a plan). The same
/// damage for the same seed on every machine.
class Mutator {
public:
    explicit Mutator(std::uint32_t seed) : engine_(seed) {}

    std::string mutate(const std::string& text);
    std::uint32_t below(std::size_t n) { return n == 0 ? 0 : static_cast<std::uint32_t>(engine_() % n); }

private:
    bool chance(std::uint32_t percent) { return below(100) < percent; }

    void damageBytes(std::string& text);
    std::string damageTokens(const std::string& text);
    std::string damageStructure(const std::string& text);

    std::mt19937 engine_;
};

}  // namespace yardcast::fuzz
