#include "core/plan/validation/report.h"

#include <algorithm>
#include <cmath>

namespace yardcast::validation {

namespace {

/// Share of the least that is good at which a size counts as none: dividing by less overflows.
constexpr double kAsGoodAsNone = 1e-3;

std::string lastKey(const std::string& key)
{
    const std::size_t slash = key.rfind('/');
    return slash == std::string::npos ? key : key.substr(slash + 1);
}

}  // namespace

bool Subject::number(const std::string& key, double value, Range range)
{
    if (!std::isfinite(value)) {
        addUnusable("not_a_number", key, {{"key", lastKey(key)}});
        return false;
    }
    if (value >= range.least && value <= range.most) return true;
    const bool noSize = range.least > 0.0 && value < range.least * kAsGoodAsNone;
    const bool beyondMeasure = std::abs(value) > std::max(kLongestMm, range.most);
    if (noSize || beyondMeasure) usable_ = false;
    add("number_out_of_range", Severity::stop, key,
        {{"key", lastKey(key)},
         {"value", value},
         {"least", range.least},
         {"most", range.most},
         {"unit", std::string(range.unit)}});
    return false;
}

bool Subject::point(const std::string& key, Point p)
{
    const Range place{-kFarthestMm, kFarthestMm, "mm"};
    const bool x = std::abs(p.x) <= kFarthestMm || number(join(key, 0), p.x, place);
    const bool y = std::abs(p.y) <= kFarthestMm || number(join(key, 1), p.y, place);
    if (!x || !y) markUnusable();
    return x && y;
}

bool Subject::points(const std::string& key, const std::vector<Point>& list)
{
    for (std::size_t i = 0; i < list.size(); ++i) {
        if (!point(join(key, i), list[i])) return false;
    }
    return true;
}

bool Subject::count(const std::string& key, std::size_t members, std::size_t most)
{
    if (members <= most) return true;
    addUnusable("too_many", key,
                {{"key", lastKey(key)},
                 {"count", static_cast<double>(members)},
                 {"most", static_cast<double>(most)}});
    return false;
}

double overlapMm(const Region& a, const Region& b)
{
    const Region shared = intersect(a, b);
    double deepest = 0.0;
    for (const Polygon& piece : shared) {
        // What a cut of half a touch from every side leaves nothing of is no thicker than a touch.
        if (offset({piece}, -kTouchMm / 2, OffsetJoin::mitre).empty()) continue;
        if (const auto box = boundsOf(piece.outer)) {
            deepest = std::max(deepest, std::min(box->width(), box->height()));
        }
    }
    return deepest;
}

}  // namespace yardcast::validation
