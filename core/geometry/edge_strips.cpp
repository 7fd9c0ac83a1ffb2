#include "core/geometry/edge_strips.h"

namespace yardcast {

namespace {

/// At a re-entrant corner the strips' inner line is mitred; a mitre longer than this many widths is cut square.
constexpr double kMitreLimit = 4.0;

}  // namespace

// A rectangle on the inner side of each edge, and the kite that closes the notch where two of them meet at a re-entrant
// corner.
std::vector<Ring> stripsAlongEdges(const Ring& outline, double widthMm, const std::optional<std::vector<int>>& edges)
{
    const int count = static_cast<int>(outline.size());
    std::vector<bool> chosen(outline.size(), !edges);
    if (edges) {
        for (const int edge : *edges) {
            if (edge >= 0 && edge < count) chosen[edge] = true;
        }
    }
    const double inner = signedArea(outline) >= 0 ? 1.0 : -1.0;
    const auto inward = [&](int edge) {
        const Point along = outline[(edge + 1) % count] - outline[edge];
        const double span = length(along);
        return span > 0.0 ? leftNormal(along) * (inner * widthMm / span) : Point{};
    };

    std::vector<Ring> rings;
    std::vector<int> kept;
    for (int i = 0; i < count; ++i) {
        if (outline[i] == outline[(i + 1) % count]) continue;
        if (!chosen[i]) {
            kept.push_back(-1);
            continue;
        }
        kept.push_back(i);
        const Point a = outline[i];
        const Point b = outline[(i + 1) % count];
        const Point n = inward(i);
        rings.push_back({a, b, b + n, a + n});
    }
    for (std::size_t k = 0; k < kept.size(); ++k) {
        const int before = kept[k];
        const int after = kept[(k + 1) % kept.size()];
        if (before < 0 || after < 0 || before == after) continue;
        const Point n1 = inward(before);
        const Point n2 = inward(after);
        if (inner * cross(n1, n2) >= 0.0) continue;  // not re-entrant: the rectangles overlap
        const Point corner = outline[after];
        const double squared = widthMm * widthMm;
        const double closeness = squared + dot(n1, n2);  // w2 (1 + cos of the turn)
        Ring kite{corner, corner + n1};
        // Mitre point: corner + (n1 + n2) / (1 + cos); its distance over the width squared is 2 / (1 + cos).
        if (closeness > 0.0 && 2 * squared / closeness <= kMitreLimit * kMitreLimit)
            kite.push_back(corner + (n1 + n2) * (squared / closeness));
        kite.push_back(corner + n2);
        rings.push_back(std::move(kite));
    }
    return rings;
}

}  // namespace yardcast
