#include "core/fem/triangulation.h"

#include <algorithm>
#include <utility>

namespace yardcast::fem {

namespace {

constexpr std::array<int, 3> kNext{1, 2, 0};
constexpr std::array<int, 3> kBefore{2, 0, 1};

}  // namespace

Triangulation::Triangulation(Site low, Site high, int expectedSites)
{
    sites_.reserve(std::size_t(expectedSites) + 4);
    triangles_.reserve(2 * std::size_t(expectedSites) + 8);
    sites_ = {low, {high.x, low.y}, high, {low.x, high.y}};
    triangles_.resize(2);
    triangles_[0].corner = {0, 1, 2};
    triangles_[0].neighbour = {-1, 1, -1};
    triangles_[1].corner = {0, 2, 3};
    triangles_[1].neighbour = {-1, -1, 0};
    atSite_ = {0, 0, 0, 1};
    seen_.assign(2, 0);
    fanAt_.assign(4, -1);
}

bool Triangulation::insideRectangle(Site p) const
{
    return p.x > sites_[0].x && p.y > sites_[0].y && p.x < sites_[2].x && p.y < sites_[2].y;
}

int Triangulation::locate(Site p, int from) const
{
    int at = from >= 0 && triangles_[from].alive() ? from : atSite_[0];
    const int most = 2 * int(triangles_.size());
    for (int step = 0; step < most; ++step) {
        const Triangle& t = triangles_[at];
        bool moved = false;
        for (int k = 0; k < 3 && !moved; ++k) {
            const int i = (k + step) % 3;  // another edge first each time: no walk in circles
            if (turn(sites_[t.corner[kNext[i]]], sites_[t.corner[kBefore[i]]], p) >= 0) continue;
            if (t.neighbour[i] < 0) return -1;
            at = t.neighbour[i];
            moved = true;
        }
        if (!moved) return at;
    }
    for (int i = 0; i < int(triangles_.size()); ++i) {
        const Triangle& t = triangles_[i];
        if (t.alive() && turn(sites_[t.corner[0]], sites_[t.corner[1]], p) >= 0 &&
            turn(sites_[t.corner[1]], sites_[t.corner[2]], p) >= 0 &&
            turn(sites_[t.corner[2]], sites_[t.corner[0]], p) >= 0)
            return i;
    }
    return -1;
}

void Triangulation::star(int site, std::vector<int>& out) const
{
    out.clear();
    const int first = atSite_[site];
    if (first < 0) return;
    int at = first;
    do {
        out.push_back(at);
        const Triangle& t = triangles_[at];
        at = t.neighbour[kNext[t.indexOfCorner(site)]];
    } while (at != first && at >= 0);
}

std::pair<int, int> Triangulation::edgeBetween(int a, int b) const
{
    star(a, star_);
    for (const int at : star_) {
        const Triangle& t = triangles_[at];
        const int i = t.indexOfCorner(a);
        if (t.corner[kNext[i]] == b) return {at, kBefore[i]};
        if (t.corner[kBefore[i]] == b) return {at, kNext[i]};
    }
    return {-1, -1};
}

bool Triangulation::sees(Site p, const Triangle& t) const
{
    return inCircle(sites_[t.corner[0]], sites_[t.corner[1]], sites_[t.corner[2]], p);
}

void Triangulation::growCavity(Site p)
{
    // The triangles already in the cavity are its seeds.
    cavity_.rim.clear();
    for (std::size_t done = 0; done < cavity_.triangles.size(); ++done) {
        const int at = cavity_.triangles[done];
        for (int i = 0; i < 3; ++i) {
            const Triangle& t = triangles_[at];
            const int next = t.neighbour[i];
            if (next >= 0 && t.kind[i] == EdgeKind::free && seen_[next] != round_ && sees(p, triangles_[next])) {
                seen_[next] = round_;
                cavity_.triangles.push_back(next);
            }
        }
    }
    for (const int at : cavity_.triangles) {
        const Triangle& t = triangles_[at];
        for (int i = 0; i < 3; ++i) {
            const int next = t.neighbour[i];
            if (next >= 0 && seen_[next] == round_ && t.kind[i] == EdgeKind::free) continue;
            cavity_.rim.push_back({t.corner[kNext[i]], t.corner[kBefore[i]], next, t.kind[i], t.inside});
        }
    }
}

bool Triangulation::rimIsStar(Site p) const
{
    if (cavity_.rim.size() != cavity_.triangles.size() + 2) return false;
    return std::ranges::all_of(cavity_.rim,
                               [&](const RimEdge& e) { return turn(sites_[e.from], sites_[e.to], p) > 0; });
}

const Cavity& Triangulation::cavity(Site p, int in)
{
    ++round_;
    cavity_.triangles.assign(1, in);
    seen_[in] = round_;
    growCavity(p);
    if (!rimIsStar(p)) {
        cavity_.triangles.clear();
        cavity_.rim.clear();
    }
    return cavity_;
}

int Triangulation::newTriangle()
{
    if (!spare_.empty()) {
        const int at = spare_.back();
        spare_.pop_back();
        triangles_[at] = Triangle{};
        return at;
    }
    triangles_.emplace_back();
    seen_.push_back(0);
    return int(triangles_.size()) - 1;
}

int Triangulation::fill(Site p)
{
    const int site = int(sites_.size());
    sites_.push_back(p);
    fanAt_.push_back(-1);
    std::size_t used = 0;
    for (const RimEdge& e : cavity_.rim) {
        const int at = used < cavity_.triangles.size() ? cavity_.triangles[used++] : newTriangle();
        Triangle& t = triangles_[at];
        t.corner = {site, e.from, e.to};
        t.neighbour = {e.beyond, -1, -1};
        t.kind = {e.kind, EdgeKind::free, EdgeKind::free};
        t.inside = e.inside;
        fanAt_[e.from] = at;
        atSite_[e.from] = at;
        if (e.beyond >= 0) {
            Triangle& beyond = triangles_[e.beyond];
            for (int i = 0; i < 3; ++i)
                if (beyond.corner[kNext[i]] == e.to && beyond.corner[kBefore[i]] == e.from) beyond.neighbour[i] = at;
        }
    }
    for (const RimEdge& e : cavity_.rim) {
        const int at = fanAt_[e.from];
        const int next = fanAt_[e.to];
        triangles_[at].neighbour[1] = next;
        triangles_[next].neighbour[2] = at;
    }
    atSite_.push_back(fanAt_[cavity_.rim.front().from]);
    return site;
}

int Triangulation::insert(Site p, int from)
{
    const int in = insideRectangle(p) ? locate(p, from) : -1;
    if (in < 0) return -1;
    const Triangle t = triangles_[in];
    for (const int corner : t.corner)
        if (sites_[corner] == p) return corner;
    for (int i = 0; i < 3; ++i)
        if (t.kind[i] != EdgeKind::free && turn(sites_[t.corner[kNext[i]]], sites_[t.corner[kBefore[i]]], p) == 0)
            return splitAt(in, i, p);
    if (cavity(p, in).rim.empty()) return -1;
    return fill(p);
}

int Triangulation::split(int in, int edge)
{
    const Site a = sites_[triangles_[in].corner[kNext[edge]]];
    const Site b = sites_[triangles_[in].corner[kBefore[edge]]];
    const auto middle = [](std::int64_t u, std::int64_t v) { return std::int32_t((u + v) / 2); };
    return splitAt(in, edge, {middle(a.x, b.x), middle(a.y, b.y)});
}

int Triangulation::splitAt(int in, int edge, Site p)
{
    const int other = triangles_[in].neighbour[edge];
    const int a = triangles_[in].corner[kNext[edge]];
    const int b = triangles_[in].corner[kBefore[edge]];
    if (other < 0 || sites_[a] == p || sites_[b] == p) return -1;
    const EdgeKind kind = triangles_[in].kind[edge];
    setKind(in, edge, EdgeKind::free);
    ++round_;
    cavity_.triangles = {in, other};
    seen_[in] = seen_[other] = round_;
    growCavity(p);
    if (!rimIsStar(p)) {
        setKind(in, edge, kind);
        return -1;
    }
    const int site = fill(p);
    for (const int end : {a, b}) {
        const auto [at, i] = edgeBetween(site, end);
        setKind(at, i, kind);
    }
    return site;
}

void Triangulation::setKind(int in, int edge, EdgeKind kind)
{
    Triangle& t = triangles_[in];
    t.kind[edge] = kind;
    if (t.neighbour[edge] < 0) return;
    Triangle& other = triangles_[t.neighbour[edge]];
    other.kind[other.indexOfNeighbour(in)] = kind;
}

void Triangulation::flip(int in, int edge)
{
    const int other = triangles_[in].neighbour[edge];
    Triangle& t = triangles_[in];
    Triangle& o = triangles_[other];
    const int j = o.indexOfNeighbour(in);
    const int apex = t.corner[edge], a = t.corner[kNext[edge]], b = t.corner[kBefore[edge]];
    const int across = o.corner[j];
    // t: apex a b, o: across b a; afterwards t: apex a across, o: across b apex.
    const int tb = t.neighbour[kNext[edge]];      // beyond b-apex
    const EdgeKind tbKind = t.kind[kNext[edge]];
    const int ta = t.neighbour[kBefore[edge]];    // beyond apex-a
    const EdgeKind taKind = t.kind[kBefore[edge]];
    const int oa = o.neighbour[kNext[j]];         // beyond a-across
    const EdgeKind oaKind = o.kind[kNext[j]];
    const int ob = o.neighbour[kBefore[j]];       // beyond across-b
    const EdgeKind obKind = o.kind[kBefore[j]];
    t.corner = {apex, a, across};
    t.neighbour = {oa, other, ta};
    t.kind = {oaKind, EdgeKind::free, taKind};
    o.corner = {across, b, apex};
    o.neighbour = {tb, in, ob};
    o.kind = {tbKind, EdgeKind::free, obKind};
    if (oa >= 0) triangles_[oa].neighbour[triangles_[oa].indexOfNeighbour(other)] = in;
    if (tb >= 0) triangles_[tb].neighbour[triangles_[tb].indexOfNeighbour(in)] = other;
    atSite_[apex] = atSite_[a] = atSite_[across] = in;
    atSite_[b] = other;
}

void Triangulation::legalise()
{
    while (!suspects_.empty()) {
        const auto [a, b] = suspects_.back();
        suspects_.pop_back();
        const auto [in, edge] = edgeBetween(a, b);
        if (in < 0) continue;
        const Triangle& t = triangles_[in];
        const int other = t.neighbour[edge];
        if (other < 0 || t.kind[edge] != EdgeKind::free) continue;
        const Triangle& o = triangles_[other];
        const int across = o.corner[o.indexOfNeighbour(in)];
        if (!sees(sites_[across], t)) continue;
        const int apex = t.corner[edge], left = t.corner[kNext[edge]], right = t.corner[kBefore[edge]];
        flip(in, edge);
        suspects_.push_back({apex, left});
        suspects_.push_back({left, across});
        suspects_.push_back({across, right});
        suspects_.push_back({right, apex});
    }
}

void Triangulation::makeDelaunay()
{
    for (int at = 0; at < int(triangles_.size()); ++at) {
        const Triangle& t = triangles_[at];
        if (!t.alive()) continue;
        for (int i = 0; i < 3; ++i) {
            const int other = t.neighbour[i];
            if (other <= at || t.kind[i] != EdgeKind::free) continue;
            const Triangle& o = triangles_[other];
            if (sees(sites_[o.corner[o.indexOfNeighbour(at)]], t))
                suspects_.push_back({t.corner[kNext[i]], t.corner[kBefore[i]]});
        }
    }
    legalise();
}

void Triangulation::makeDelaunayAbout(int site)
{
    star(site, star_);
    for (const int at : star_) {
        const Triangle& t = triangles_[at];
        const int i = t.indexOfCorner(site);
        suspects_.push_back({site, t.corner[kNext[i]]});
        suspects_.push_back({t.corner[kNext[i]], t.corner[kBefore[i]]});
    }
    legalise();
}

bool Triangulation::constrain(int a, int b, EdgeKind kind)
{
    while (a != b) {
        // What the line from a meets first: an edge that ends on it, or an edge that it crosses.
        const Site from = sites_[a], to = sites_[b];
        int at = -1, edge = -1, onWay = -1;
        star(a, star_);
        for (const int candidate : star_) {
            const Triangle& t = triangles_[candidate];
            const int i = t.indexOfCorner(a);
            const int right = t.corner[kNext[i]], left = t.corner[kBefore[i]];
            const std::int64_t rightTurn = right == b ? 0 : turn(from, to, sites_[right]);
            if (rightTurn == 0 && (right == b || facing(from, sites_[right], to) > 0)) {
                onWay = right;
                setKind(candidate, kBefore[i], std::max(kind, t.kind[kBefore[i]]));
                break;
            }
            if (rightTurn < 0 && left != b && turn(from, to, sites_[left]) > 0) {
                at = candidate;
                edge = i;
                break;
            }
        }
        if (onWay >= 0) {
            a = onWay;
            continue;
        }
        if (at < 0) return false;
        // Collect the edges crossed up to b, or to the first site on the line.
        std::vector<std::pair<int, int>> crossed;
        int end = -1;
        while (end < 0) {
            const Triangle& t = triangles_[at];
            if (t.kind[edge] != EdgeKind::free || t.neighbour[edge] < 0) return false;
            const int right = t.corner[kNext[edge]], left = t.corner[kBefore[edge]];
            crossed.push_back({right, left});
            const int next = t.neighbour[edge];
            const Triangle& o = triangles_[next];
            const int j = o.indexOfNeighbour(at);
            const int tip = o.corner[j];
            const std::int64_t side = tip == b ? 0 : turn(from, to, sites_[tip]);
            if (side == 0) {
                end = tip;
            } else {
                // o: tip left right; the line leaves through tip-left or tip-right.
                edge = side > 0 ? kNext[j] : kBefore[j];
                at = next;
            }
        }
        const Site stop = sites_[end];
        std::vector<std::pair<int, int>> made;
        std::size_t budget = 20 * crossed.size() * crossed.size() + 100;
        for (std::size_t done = 0; done < crossed.size() && budget > 0; ++done, --budget) {
            const auto [u, v] = crossed[done];
            const auto [in, i] = edgeBetween(u, v);
            if (in < 0) continue;
            const Triangle& t = triangles_[in];
            const int apex = t.corner[i];
            const Triangle& o = triangles_[t.neighbour[i]];
            const int across = o.corner[o.indexOfNeighbour(in)];
            const Site p = sites_[apex], q = sites_[across];
            const Site left = sites_[t.corner[kNext[i]]], right = sites_[t.corner[kBefore[i]]];
            if (turn(p, left, q) <= 0 || turn(q, right, p) <= 0) {
                crossed.push_back({u, v});  // not convex yet
                continue;
            }
            flip(in, i);
            const std::int64_t sideP = apex == a || apex == end ? 0 : turn(from, stop, p);
            const std::int64_t sideQ = across == a || across == end ? 0 : turn(from, stop, q);
            if ((sideP > 0 && sideQ < 0) || (sideP < 0 && sideQ > 0))
                crossed.push_back({apex, across});
            else
                made.push_back({apex, across});
        }
        const auto [in, i] = edgeBetween(a, end);
        if (in < 0) return false;
        setKind(in, i, kind);
        suspects_ = std::move(made);
        legalise();
        a = end;
    }
    return true;
}

void Triangulation::release(int in, int edge)
{
    const Triangle& t = triangles_[in];
    if (t.kind[edge] != EdgeKind::line) return;
    suspects_.push_back({t.corner[kNext[edge]], t.corner[kBefore[edge]]});
    setKind(in, edge, EdgeKind::free);
    legalise();
}

bool Triangulation::remove(int site, int apex)
{
    star(site, star_);
    const std::vector<int> old = star_;
    cavity_.rim.clear();
    for (const int at : old) {
        const Triangle& t = triangles_[at];
        const int i = t.indexOfCorner(site);
        if (t.kind[kNext[i]] == EdgeKind::boundary || t.neighbour[i] < 0) return false;
        cavity_.rim.push_back({t.corner[kNext[i]], t.corner[kBefore[i]], t.neighbour[i], t.kind[i], t.inside});
    }
    // The rim runs counter-clockwise; begin at the edge that leaves the apex.
    const auto first = std::ranges::find(cavity_.rim, apex, &RimEdge::from);
    if (first == cavity_.rim.end()) return false;
    std::rotate(cavity_.rim.begin(), first, cavity_.rim.end());
    const std::vector<RimEdge> rim = cavity_.rim;
    const std::size_t count = rim.size();
    for (std::size_t k = 1; k + 1 < count; ++k)
        if (turn(sites_[apex], sites_[rim[k].from], sites_[rim[k].to]) <= 0) return false;
    const auto link = [&](const RimEdge& e, int at) {
        if (e.beyond < 0) return;
        Triangle& beyond = triangles_[e.beyond];
        for (int i = 0; i < 3; ++i)
            if (beyond.corner[kNext[i]] == e.to && beyond.corner[kBefore[i]] == e.from) beyond.neighbour[i] = at;
    };
    const std::size_t made = count - 2;
    for (std::size_t k = 0; k < made; ++k) {
        const RimEdge& e = rim[k + 1];
        const int at = old[k];
        Triangle& t = triangles_[at];
        t.corner = {apex, e.from, e.to};
        t.inside = e.inside;
        t.kind = {e.kind, EdgeKind::free, EdgeKind::free};
        t.neighbour = {e.beyond, k + 1 < made ? old[k + 1] : rim.back().beyond,
                       k > 0 ? old[k - 1] : rim.front().beyond};
        link(e, at);
        atSite_[e.from] = at;
        if (k == 0) {
            t.kind[2] = rim.front().kind;
            link(rim.front(), at);
        } else {
            suspects_.push_back({apex, e.from});
        }
        if (k + 1 == made) {
            t.kind[1] = rim.back().kind;
            link(rim.back(), at);
            atSite_[e.to] = at;
        }
    }
    atSite_[apex] = old[0];
    for (std::size_t k = made; k < count; ++k) {
        triangles_[old[k]] = Triangle{};
        spare_.push_back(old[k]);
    }
    atSite_[site] = -1;
    legalise();
    return true;
}

}  // namespace yardcast::fem
