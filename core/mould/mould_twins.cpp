#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>
#include <tuple>

#include "core/castings/steel_in_casting.h"
#include "core/mould/mould_making.h"

namespace yardcast::mould_making {

namespace {

/// Off the middle by less, mm, nobody sees on which side.
constexpr double kOffMiddleMm = 1.0;

/// To tenths, with an odd beginning: what is equal but for the last digits of a double does not fall apart at a half.
long long tenth(double value) { return std::llround(value * 10.0 + 0.137); }

/// Where a point of the bounds goes when the piece is mirrored (first) and turned by quarters.
struct Turn {
    double width;
    double depth;
    int quarters;
    bool mirror;

    Point operator()(Point p) const
    {
        if (mirror) p.x = width - p.x;
        switch (quarters) {
        case 1: return {depth - p.y, p.x};
        case 2: return {width - p.x, depth - p.y};
        case 3: return {p.y, width - p.x};
        default: return p;
        }
    }
    Point direction(Point d) const
    {
        if (mirror) d.x = -d.x;
        switch (quarters) {
        case 1: return {-d.y, d.x};
        case 2: return {-d.x, -d.y};
        case 3: return {d.y, -d.x};
        default: return d;
        }
    }
};

/// Centroid and radii of all zones of one sort together, own frame from the bounds' low corner.
struct Spread {
    double areaMm2 = 0.0;
    Point centre;
    double xx = 0.0;
    double yy = 0.0;
    double xy = 0.0;
};

Spread spreadOf(const AreaMoments& m, Point low)
{
    Spread s;
    s.areaMm2 = m.areaMm2;
    if (!(m.areaMm2 > 0.0)) return s;
    const Point c = m.centroid();
    s.centre = c - low;
    s.xx = m.secondXxMm4 / m.areaMm2 - c.x * c.x;
    s.yy = m.secondYyMm4 / m.areaMm2 - c.y * c.y;
    s.xy = m.secondXyMm4 / m.areaMm2 - c.x * c.y;
    return s;
}

struct Shapely {
    std::vector<std::pair<std::vector<long long>, Spread>> zones;
    struct Hole {
        Point centre;
        Point u;   ///< half its sides, as directions
        Point v;
        double radiusMm = 0.0;
        int shape = 0;
    };
    std::vector<Hole> holes;
    struct Bar {
        Point from;
        Point to;
        long long diameter = 0;
        long long cover = 0;
    };
    std::vector<Bar> bars;
    Ring corners;
};

Shapely shapelyOf(const Casting& casting, const Part& part)
{
    Shapely all;
    const Point low = casting.boundsMm.low;
    std::map<std::vector<long long>, AreaMoments> sorts;
    for (const Zone& zone : casting.zones) {
        AreaMoments& sum = sorts[{static_cast<long long>(zone.kind), tenth(zone.fromMm), tenth(zone.toMm)}];
        const AreaMoments m = moments(zone.region);
        sum.areaMm2 += m.areaMm2;
        sum.firstXMm3 += m.firstXMm3;
        sum.firstYMm3 += m.firstYMm3;
        sum.secondXxMm4 += m.secondXxMm4;
        sum.secondYyMm4 += m.secondYyMm4;
        sum.secondXyMm4 += m.secondXyMm4;
    }
    for (const auto& [sort, sum] : sorts) all.zones.emplace_back(sort, spreadOf(sum, low));
    if (const auto* counter = std::get_if<Counter>(&part.body)) {
        for (const Cutout& cutout : counter->cutouts) {
            const auto box = boundsOf(cutoutRing(cutout));
            if (!box || box->high.x < low.x || box->low.x > casting.boundsMm.high.x || box->high.y < low.y ||
                box->low.y > casting.boundsMm.high.y)
                continue;
            Shapely::Hole hole;
            hole.centre = cutout.centre - low;
            hole.shape = static_cast<int>(cutout.shape);
            if (cutout.shape == CutoutShape::circle) {
                hole.radiusMm = cutout.diameterMm / 2;
            } else {
                const SineCosine turn = sineCosineDeg(cutout.turnDeg.value_or(0.0));
                hole.u = Point{turn.cosine, turn.sine} * (cutout.size.width / 2);
                hole.v = Point{-turn.sine, turn.cosine} * (cutout.size.depth / 2);
                hole.radiusMm = cutout.cornerRadiusMm.value_or(0.0);
            }
            all.holes.push_back(hole);
        }
    }
    if (const Steel* steel = steelOf(part.body)) {
        for (const BarGroup& group : steel->bars) {
            for (const BarStretch& bar : barPieces(group, casting.outline))
                all.bars.push_back({bar.from - low, bar.to - low, tenth(group.diameterMm), tenth(group.coverMm)});
        }
    }
    for (const Point p : tidied(casting.outline[0].outer)) all.corners.push_back(p - low);
    return all;
}

/// One sorted list for a way of turning: equal lists, equal pieces.
std::vector<long long> written(const Shapely& all, const Turn& turn)
{
    std::vector<std::vector<long long>> rows;
    for (const auto& [sort, s] : all.zones) {
        const Point x = turn.direction({1, 0});
        const Point y = turn.direction({0, 1});
        // The tensor turned: columns are where the axes go.
        const double xx = x.x * x.x * s.xx + y.x * y.x * s.yy + 2 * x.x * y.x * s.xy;
        const double yy = x.y * x.y * s.xx + y.y * y.y * s.yy + 2 * x.y * y.y * s.xy;
        const double xy = x.x * x.y * s.xx + y.x * y.y * s.yy + (x.x * y.y + y.x * x.y) * s.xy;
        const Point c = turn(s.centre);
        std::vector<long long> row{1};
        row.insert(row.end(), sort.begin(), sort.end());
        // Areas and moments of inertia in the units in which a tenth of a millimetre shows.
        for (const double value : {s.areaMm2 / 100, c.x, c.y, xx / 100, yy / 100, xy / 100})
            row.push_back(tenth(value));
        rows.push_back(std::move(row));
    }
    for (const Shapely::Hole& hole : all.holes) {
        const Point c = turn(hole.centre);
        const Point u = turn.direction(hole.u);
        const Point v = turn.direction(hole.v);
        rows.push_back({2, hole.shape, tenth(c.x), tenth(c.y), tenth(hole.radiusMm),
                        tenth((u.x * u.x + v.x * v.x) / 100), tenth((u.y * u.y + v.y * v.y) / 100),
                        tenth((u.x * u.y + v.x * v.y) / 100)});
    }
    for (const Shapely::Bar& bar : all.bars) {
        const Point a = turn(bar.from);
        const Point b = turn(bar.to);
        std::pair<long long, long long> from{tenth(a.x), tenth(a.y)};
        std::pair<long long, long long> to{tenth(b.x), tenth(b.y)};
        if (to < from) std::swap(from, to);
        rows.push_back({3, bar.diameter, bar.cover, from.first, from.second, to.first, to.second});
    }
    for (const Point p : all.corners) {
        const Point q = turn(p);
        rows.push_back({4, tenth(q.x), tenth(q.y)});
    }
    std::sort(rows.begin(), rows.end());
    std::vector<long long> flat;
    for (const auto& row : rows) flat.insert(flat.end(), row.begin(), row.end());
    return flat;
}

const char* purposeWord(CutoutPurpose purpose)
{
    switch (purpose) {
    case CutoutPurpose::sink: return "sink";
    case CutoutPurpose::hob: return "hob";
    case CutoutPurpose::tap: return "tap";
    case CutoutPurpose::drain: return "drain";
    case CutoutPurpose::other: return "cutout";
    }
    return "cutout";
}

void fill(MouldCheck& check, const Box& box, const Mould& mould)
{
    check.leftMm = box.low.x;
    check.rightMm = mould.widthMm - box.high.x;
    check.frontMm = box.low.y;
    check.backMm = mould.depthMm - box.high.y;
    check.side = check.leftMm < check.rightMm ? "left" : "right";
}

/// By where the mass of a feature lies against the middle of the mould.
bool checkByRegion(MouldCheck& check, const Region& region, const Mould& mould, const char* word)
{
    if (region.empty()) return false;
    const double off = moments(region).centroid().x - mould.widthMm / 2;
    const auto box = boundsOf(region);
    if (!box || std::abs(off) <= kOffMiddleMm) return false;
    check.about = word;
    check.what = word;
    fill(check, *box, mould);
    check.side = off < 0.0 ? "left" : "right";
    return true;
}

}  // namespace

Shape shapeOf(const Casting& casting, const Part& part)
{
    const Shapely all = shapelyOf(casting, part);
    Shape shape;
    const auto* counter = std::get_if<Counter>(&part.body);
    const bool faceUp = counter && counter->cast == CounterCast::faceUp;
    shape.sizes = {static_cast<long long>(casting.kind), faceUp ? 1 : 0, isCastUpright(part.body) ? 1 : 0,
                   tenth(casting.deepestMm), tenth(areaMm2(casting.outline) / 100), tenth(casting.volumeL * 10)};
    if (const Steel* steel = steelOf(part.body); steel && steel->mesh) {
        for (const double value : {steel->mesh->barMm, steel->mesh->pitchMm, steel->mesh->coverMm})
            shape.sizes.push_back(tenth(value));
    }
    const double width = casting.boundsMm.width();
    const double depth = casting.boundsMm.height();
    for (int quarters = 0; quarters < 4; ++quarters)
        shape.turned.push_back(written(all, {width, depth, quarters, false}));
    shape.mirrored = written(all, {width, depth, 0, true});
    return shape;
}

bool isSame(const Shape& a, const Shape& b)
{
    return a.sizes == b.sizes && std::find(b.turned.begin(), b.turned.end(), a.turned[0]) != b.turned.end();
}

bool isMirrorImage(const Shape& a, const Shape& b)
{
    return a.sizes == b.sizes && std::find(b.turned.begin(), b.turned.end(), a.mirrored) != b.turned.end();
}

MouldCheck checkOf(const Casting& casting, const Part& part, const Mould& mould)
{
    MouldCheck best;
    double most = 0.0;
    if (const auto* counter = std::get_if<Counter>(&part.body); counter && !mould.standing) {
        for (const Cutout& cutout : counter->cutouts) {
            const auto box = boundsOf(ringInMould(casting, part, cutoutRing(cutout)));
            if (!box || box->high.x <= 0.0 || box->low.x >= mould.widthMm || box->high.y <= 0.0 ||
                box->low.y >= mould.depthMm)
                continue;
            const double off = std::abs(box->centre().x - mould.widthMm / 2);
            // The large one that lies well to a side is seen at once.
            const double seen = off * std::sqrt(std::max(box->width() * box->height(), 0.0));
            if (off <= kOffMiddleMm || seen <= most) continue;
            most = seen;
            best.about = cutout.id;
            best.what = purposeWord(cutout.purpose);
            fill(best, *box, mould);
        }
    }
    if (!best.about.empty()) return best;
    if (checkByRegion(best, mould.inside, mould, "outline")) return best;
    const auto all = [&](const auto& wanted) {
        Region region;
        for (const Zone& zone : mould.zones) {
            if (wanted(zone)) region.insert(region.end(), zone.region.begin(), zone.region.end());
        }
        return region;
    };
    const auto ofKind = [&](ZoneKind kind) { return all([kind](const Zone& zone) { return zone.kind == kind; }); };
    if (checkByRegion(best, ofKind(ZoneKind::rib), mould, "rib")) return best;
    if (checkByRegion(best, ofKind(ZoneKind::rim), mould, "rim")) return best;
    if (casting.kind != PartKind::counter) return best;
    const auto isGrooved = [](const Zone& zone) { return zone.isConcrete() && zone.grooveMm > 0.0; };
    if (checkByRegion(best, all(isGrooved), mould, "drip")) return best;
    const auto isRebated = [&](const Zone& zone) {
        if (!zone.isConcrete()) return false;
        return mould.mirrored ? zone.fromMm > 0.0 : zone.toMm < mould.heightMm;
    };
    checkByRegion(best, all(isRebated), mould, "rebate");
    return best;
}

}  // namespace yardcast::mould_making
