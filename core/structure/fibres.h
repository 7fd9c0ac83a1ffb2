#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

#include "core/structure/body.h"

/// What the extreme fibres of a body feel, and which of many counts. For core/structure only.
namespace yardcast::fibres {

/// x, y, xy, MPa.
using Stress = std::array<double, 3>;

/// The larger principal value; 0 where both press.
inline double tensionOf(const Stress& s)
{
    const double mean = (s[0] + s[1]) / 2;
    const double half = (s[0] - s[1]) / 2;
    return std::max(mean + std::sqrt(half * half + s[2] * s[2]), 0.0);
}

inline double percentOf(double tensionMpa, double strengthMpa)
{
    return strengthMpa > 0.0 ? 100 * tensionMpa / strengthMpa : (tensionMpa > 0.0 ? HUGE_VAL : 0.0);
}

/// Greatest of all crack lines of a corner, each face by itself.
struct CornerTension {
    FibreTension tension;
    int topKind = 0;
    int bottomKind = 0;
    Point topAt;
    Point bottomAt;

    void take(const FibreTension& t, int kind, Point at)
    {
        if (t.topMpa > tension.topMpa) {
            tension.topMpa = t.topMpa;
            topKind = kind;
            topAt = at;
        }
        if (t.bottomMpa > tension.bottomMpa) {
            tension.bottomMpa = t.bottomMpa;
            bottomKind = kind;
            bottomAt = at;
        }
    }
};

/// The greatest use of those it was shown.
class UseSearch {
public:
    explicit UseSearch(const std::vector<double>& strengthMpa) : strengthMpa_(strengthMpa) {}

    void consider(double tensionMpa, int kind, Point at, bool onFace, int corner)
    {
        const double percent = percentOf(tensionMpa, strengthMpa_[kind]);
        // Where both faces or two places are alike, rounding must not choose.
        if (!(percent > use_.percent * (1.0 + kSameUse))) return;
        use_ = {percent, at, onFace, kind, tensionMpa, corner};
    }
    void consider(const FibreTension& t, int kind, Point at)
    {
        consider(t.topMpa, kind, at, true, -1);
        consider(t.bottomMpa, kind, at, false, -1);
    }
    void consider(const CornerTension& c, int corner)
    {
        consider(c.tension.topMpa, c.topKind, c.topAt, true, corner);
        consider(c.tension.bottomMpa, c.bottomKind, c.bottomAt, false, corner);
    }
    const GreatestUse& use() const { return use_; }

private:
    /// Uses that differ by less, as a share, are the same.
    static constexpr double kSameUse = 1e-9;

    const std::vector<double>& strengthMpa_;
    GreatestUse use_;
};

}  // namespace yardcast::fibres
