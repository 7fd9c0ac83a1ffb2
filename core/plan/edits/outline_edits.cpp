#include <algorithm>

#include "core/plan/edits/edit_tools.h"

namespace yardcast {

using namespace edit_tools;

namespace {

/// Sine of the angle under which two lines count as one direction.
constexpr double kSameDirection = 1e-6;
/// Along an edge, mm: nearer than this to a corner is the corner.
constexpr double kAtCornerMm = 1e-3;

const Counter* counterOf(const Plan& plan, const std::string& id)
{
    const Part* part = findPart(plan, id);
    return part ? std::get_if<Counter>(&part->body) : nullptr;
}

bool hasEdge(const Counter* counter, int edge)
{
    return counter && edge >= 0 && static_cast<std::size_t>(edge) < counter->outline.size();
}

/// The unit vector out of the slab across an edge, or nothing for an edge without length.
std::optional<Point> outwards(const Ring& outline, std::size_t edge)
{
    const Point along = outline[(edge + 1) % outline.size()] - outline[edge];
    const double span = length(along);
    if (!(span > 0.0)) return std::nullopt;
    const double sense = signedArea(outline) < 0.0 ? 1.0 : -1.0;
    return leftNormal(along) * (sense / span);
}

/// Where the corner `at` goes when the edge beside it moves by `shift`: along the line to `neighbour`, so that the
/// neighbouring edge keeps its direction. A neighbour that runs on in the edge's own direction gives no such place.
Point followNeighbour(Point at, Point neighbour, Point edgeDirection, Point shift)
{
    const Point line = at - neighbour;
    const double turn = cross(line, edgeDirection);
    if (std::abs(turn) <= kSameDirection * length(line) * length(edgeDirection)) return tidy(at + shift);
    const double share = cross(shift, edgeDirection) / turn;
    return tidy(at + line * share);
}

/// Old edge -> new edges, for every edge that rim, drip groove and rebate name; indices that name no edge stay as they
/// are.
template <class NewEdges>
void remapEdges(Counter& counter, int edgeCount, const NewEdges& newEdges)
{
    forEachEdgeList(counter, [&](std::vector<int>& edges) {
        std::vector<int> mapped;
        for (const int edge : edges) {
            if (edge < 0 || edge >= edgeCount) {
                mapped.push_back(edge);
                continue;
            }
            for (const int fresh : newEdges(edge)) {
                if (std::find(mapped.begin(), mapped.end(), fresh) == mapped.end()) mapped.push_back(fresh);
            }
        }
        edges = std::move(mapped);
    });
}

/// Corners put in after corner `edge`; each piece of the divided edge has the rim, groove and rebate the edge had.
void insertCorners(Counter& counter, int edge, const std::vector<Point>& corners)
{
    const int count = static_cast<int>(counter.outline.size());
    const int more = static_cast<int>(corners.size());
    counter.outline.insert(counter.outline.begin() + edge + 1, corners.begin(), corners.end());
    remapEdges(counter, count, [&](int old) {
        if (old < edge) return std::vector<int>{old};
        if (old > edge) return std::vector<int>{old + more};
        std::vector<int> pieces;
        for (int i = 0; i <= more; ++i) pieces.push_back(edge + i);
        return pieces;
    });
}

/// The two edges at the corner become one, with a rim, a groove, a rebate if either had one.
void removeCorner(Counter& counter, int corner)
{
    const int count = static_cast<int>(counter.outline.size());
    counter.outline.erase(counter.outline.begin() + corner);
    const auto pointAfter = [&](int point) { return point > corner ? point - 1 : point; };
    remapEdges(counter, count, [&](int old) {
        return std::vector<int>{old == corner ? pointAfter((corner + count - 1) % count) : pointAfter(old)};
    });
}

bool runsStraightThrough(const Ring& outline, int corner)
{
    const int count = static_cast<int>(outline.size());
    const Point at = outline[static_cast<std::size_t>(corner)];
    const Point before = at - outline[static_cast<std::size_t>((corner + count - 1) % count)];
    const Point after = outline[static_cast<std::size_t>((corner + 1) % count)] - at;
    return std::abs(cross(before, after)) <= kSameDirection * length(before) * length(after);
}

}  // namespace

Plan moveOutlineEdge(const Plan& plan, const std::string& id, int edge, double outwardsMm)
{
    const Counter* counter = counterOf(plan, id);
    if (!hasEdge(counter, edge) || counter->outline.size() < 3) return plan;
    const Ring& outline = counter->outline;
    const std::size_t n = outline.size();
    const auto from = static_cast<std::size_t>(edge);
    const std::size_t to = (from + 1) % n;
    const auto normal = outwards(outline, from);
    if (!normal) return plan;
    const Point shift = *normal * outwardsMm;
    const Point along = outline[to] - outline[from];
    const Point newFrom = followNeighbour(outline[from], outline[(from + n - 1) % n], along, shift);
    const Point newTo = followNeighbour(outline[to], outline[(to + 1) % n], along, shift);
    return changeCounter(plan, id, [&](Counter& c) {
        c.outline[from] = newFrom;
        c.outline[to] = newTo;
    });
}

Plan moveOutlineCorner(const Plan& plan, const std::string& id, int corner, Point toOwnMm)
{
    if (!hasEdge(counterOf(plan, id), corner)) return plan;
    return changeCounter(plan, id, [&](Counter& c) { c.outline[static_cast<std::size_t>(corner)] = toOwnMm; });
}

Plan insertOutlineCorner(const Plan& plan, const std::string& id, int edge, Point atOwnMm)
{
    if (!hasEdge(counterOf(plan, id), edge)) return plan;
    return changeCounter(plan, id, [&](Counter& c) { insertCorners(c, edge, {atOwnMm}); });
}

Plan removeOutlineCorner(const Plan& plan, const std::string& id, int corner)
{
    const Counter* counter = counterOf(plan, id);
    if (!hasEdge(counter, corner) || counter->outline.size() <= 3) return plan;
    return changeCounter(plan, id, [&](Counter& c) { removeCorner(c, corner); });
}

Plan extrudeOutlineEdge(const Plan& plan, const std::string& id, int edge, double fromMm, double toMm,
                        double outwardsMm)
{
    const Counter* counter = counterOf(plan, id);
    if (!hasEdge(counter, edge) || counter->outline.size() < 3) return plan;
    const Ring& outline = counter->outline;
    const Point start = outline[static_cast<std::size_t>(edge)];
    const Point end = outline[static_cast<std::size_t>(edge + 1) % outline.size()];
    const auto normal = outwards(outline, static_cast<std::size_t>(edge));
    if (!normal || !std::isfinite(fromMm) || !std::isfinite(toMm)) return plan;

    const double span = distance(start, end);
    const double low = std::clamp(std::min(fromMm, toMm), 0.0, span);
    const double high = std::clamp(std::max(fromMm, toMm), 0.0, span);
    if (high - low <= kAtCornerMm || outwardsMm == 0.0) return plan;
    const bool fromCorner = low <= kAtCornerMm;
    const bool toCorner = high >= span - kAtCornerMm;
    const Point shift = *normal * outwardsMm;
    const Point along = (end - start) * (1.0 / span);
    const Point stepFrom = fromCorner ? start : start + along * low;
    const Point stepTo = toCorner ? end : start + along * high;

    std::vector<Point> corners;
    if (!fromCorner) corners.push_back(tidy(stepFrom));
    corners.push_back(tidy(stepFrom + shift));
    corners.push_back(tidy(stepTo + shift));
    if (!toCorner) corners.push_back(tidy(stepTo));

    return changeCounter(plan, id, [&](Counter& c) {
        insertCorners(c, edge, corners);
        const int count = static_cast<int>(c.outline.size());
        const int endCorner = (edge + 1 + static_cast<int>(corners.size())) % count;
        // The higher index goes first, so that the lower one still names its corner.
        for (const int corner : {std::max(edge, endCorner), std::min(edge, endCorner)}) {
            const bool stepBegins = corner == edge ? fromCorner : toCorner;
            if (stepBegins && runsStraightThrough(c.outline, corner)) removeCorner(c, corner);
        }
    });
}

}  // namespace yardcast
