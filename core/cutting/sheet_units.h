#pragma once

#include <cmath>
#include <cstdint>
#include <vector>

namespace yardcast::sheets {

/// Thousandths of a millimetre: sums of sizes are exact. All sizes within the search are enlarged by one saw width, pieces
/// and sheets alike: then cutting loses nothing.
using Um = std::int64_t;

inline Um toUm(double mm) { return static_cast<Um>(std::llround(mm * 1000.0)); }
inline double toMm(Um um) { return static_cast<double>(um) / 1000.0; }

/// One sort of what has to be placed.
struct Item {
    Um w = 0;
    Um h = 0;
    bool turn = false;
    int count = 0;
    double area() const { return static_cast<double>(w) * static_cast<double>(h); }
};

/// One sort of sheet.
struct Bin {
    Um w = 0;
    Um h = 0;
    std::int64_t price = 0;
    int most = 0;          ///< how many there are, or as many as could be of use
    bool limited = false;  ///< by the stock, not only by use
    double area() const { return static_cast<double>(w) * static_cast<double>(h); }
};

inline bool fits(const Item& item, Um w, Um h)
{
    return (item.w <= w && item.h <= h) || (item.turn && item.h <= w && item.w <= h);
}

/// xorshift64*: the same numbers on every machine, which the standard library's distributions do not promise.
class Dice {
public:
    explicit Dice(std::uint64_t seed) : state_(seed * 0x9E3779B97F4A7C15ull + 1) {}
    std::uint64_t next()
    {
        state_ ^= state_ >> 12;
        state_ ^= state_ << 25;
        state_ ^= state_ >> 27;
        return state_ * 0x2545F4914F6CDD1Dull;
    }
    /// 0 to n - 1; n above 0.
    int below(int n) { return static_cast<int>((next() >> 33) % static_cast<std::uint64_t>(n)); }
    bool oneIn(int n) { return below(n) == 0; }
    double share() { return static_cast<double>(next() >> 11) * 0x1.0p-53; }

private:
    std::uint64_t state_;
};

}  // namespace yardcast::sheets
