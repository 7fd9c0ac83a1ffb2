#include <algorithm>
#include <cmath>
#include <optional>

#include "core/materials/boards.h"
#include "core/mould/mould_making.h"

/// What the mould stands on.
namespace yardcast::mould_making {

namespace {

/// The base reaches past the sides, for the feet of brackets. Common practice, no source.
constexpr double kMarginMm = 40.0;
/// Beside a mould that stands lie a stud, the batten at its foot and the screws of that.
constexpr double kStandingMarginMm = 2 * kMouldBattenWidthMm + 10.0;
constexpr double kSameMm = 1e-3;
constexpr double kSameAreaMm2 = 1.0;
/// A plan with absurd sizes must not make a base of thousands of boards.
constexpr int kMostParts = 20;

bool fitsSheet(const Box& box)
{
    const double longer = std::max(box.width(), box.height());
    const double shorter = std::min(box.width(), box.height());
    return longer <= kUsualSheetLengthMm + kSameMm && shorter <= kUsualSheetWidthMm + kSameMm;
}

bool runsAlongAxes(const Region& region)
{
    for (const Polygon& polygon : region) {
        const std::size_t n = polygon.outer.size();
        for (std::size_t i = 0; i < n; ++i) {
            const Point edge = polygon.outer[(i + 1) % n] - polygon.outer[i];
            if (std::min(std::abs(edge.x), std::abs(edge.y)) > kSameMm) return false;
        }
    }
    return true;
}

Point turned(Point p, bool turn) { return turn ? Point{p.y, p.x} : p; }

/// Rectangles over the whole height (or width) of the region between its corners, those that go on the same joined.
std::vector<Box> slabs(const Region& region, bool level)
{
    std::vector<double> at;
    for (const Polygon& polygon : region) {
        for (const Point p : polygon.outer) at.push_back(turned(p, level).x);
    }
    std::sort(at.begin(), at.end());
    std::vector<Box> done;
    std::vector<Box> open;
    const Box all = boundsOf(region).value_or(Box{});
    const Point lowAll = turned(all.low, level);
    const Point highAll = turned(all.high, level);
    for (std::size_t i = 0; i + 1 < at.size(); ++i) {
        if (at[i + 1] - at[i] < kSameMm) continue;
        const Point a = turned({at[i], lowAll.y - 1.0}, level);
        const Point b = turned({at[i + 1], highAll.y + 1.0}, level);
        std::vector<Box> next;
        for (const Polygon& polygon : intersect(region, rectangle(a, b))) {
            const Box box = boundsOf(polygon.outer).value_or(Box{});
            Box here{turned(box.low, level), turned(box.high, level)};
            const auto goesOn = std::find_if(open.begin(), open.end(), [&](const Box& before) {
                return std::abs(before.low.y - here.low.y) < kSameMm && std::abs(before.high.y - here.high.y) < kSameMm;
            });
            if (goesOn != open.end()) {
                here.low.x = goesOn->low.x;
                open.erase(goesOn);
            }
            next.push_back(here);
        }
        done.insert(done.end(), open.begin(), open.end());
        open = std::move(next);
    }
    done.insert(done.end(), open.begin(), open.end());
    for (Box& box : done) box = {turned(box.low, level), turned(box.high, level)};
    return done;
}

/// In equal parts that fit the usual sheet, the way that takes fewer.
std::vector<Box> parted(const Box& box)
{
    const auto count = [](double all, double most) {
        return std::clamp(static_cast<int>(std::ceil(std::min(all / most, 1000.0) - 1e-9)), 1, kMostParts);
    };
    const int across[2] = {count(box.width(), kUsualSheetLengthMm), count(box.width(), kUsualSheetWidthMm)};
    const int along[2] = {count(box.height(), kUsualSheetWidthMm), count(box.height(), kUsualSheetLengthMm)};
    const int way = across[0] * along[0] <= across[1] * along[1] ? 0 : 1;
    const double width = box.width() / across[way];
    const double height = box.height() / along[way];
    std::vector<Box> parts;
    for (int y = 0; y < along[way]; ++y) {
        for (int x = 0; x < across[way]; ++x) {
            const Point low = box.low + Point{x * width, y * height};
            parts.push_back({low, low + Point{width, height}});
        }
    }
    return parts;
}

std::vector<Box> partsOf(const Region& region)
{
    const Box whole = boundsOf(region).value_or(Box{});
    std::vector<Box> best = parted(whole);
    if (!runsAlongAxes(region)) return best;
    double bestMm2 = whole.width() * whole.height();
    for (const bool level : {false, true}) {
        std::vector<Box> parts;
        double mm2 = 0.0;
        for (const Box& slab : slabs(region, level)) {
            const std::vector<Box> more = parted(slab);
            parts.insert(parts.end(), more.begin(), more.end());
            mm2 += slab.width() * slab.height();
        }
        const bool better = parts.size() < best.size() || (parts.size() == best.size() && mm2 < bestMm2 - kSameAreaMm2);
        if (parts.empty() || !better) continue;
        best = std::move(parts);
        bestMm2 = mm2;
    }
    return best;
}

/// Under the line where two boards meet.
std::optional<Box> cleatBetween(const Box& a, const Box& b)
{
    const double half = kMouldBattenWidthMm / 2;
    const double fromX = std::max(a.low.x, b.low.x);
    const double toX = std::min(a.high.x, b.high.x);
    const double fromY = std::max(a.low.y, b.low.y);
    const double toY = std::min(a.high.y, b.high.y);
    if (std::abs(fromX - toX) < kSameMm && toY - fromY > kMouldBattenWidthMm)
        return Box{{fromX - half, fromY}, {fromX + half, toY}};
    if (std::abs(fromY - toY) < kSameMm && toX - fromX > kMouldBattenWidthMm)
        return Box{{fromX, fromY - half}, {toX, fromY + half}};
    return std::nullopt;
}

void addCleats(Making& making, const std::vector<Box>& boards)
{
    for (std::size_t i = 0; i < boards.size(); ++i) {
        for (std::size_t k = i + 1; k < boards.size(); ++k) {
            const std::optional<Box> box = cleatBetween(boards[i], boards[k]);
            if (!box) continue;
            MouldPart cleat;
            cleat.kind = MouldPartKind::cleat;
            cleat.stuff = MouldStuff::batten;
            cleat.outline = rectangle(box->low, box->high);
            cleat.toMm = -making.how.boardMm;
            cleat.fromMm = cleat.toMm - kMouldBattenThicknessMm;
            cleat.lengthMm = std::max(box->width(), box->height());
            cleat.widthMm = kMouldBattenWidthMm;
            cleat.thicknessMm = kMouldBattenThicknessMm;
            making.mould.parts.push_back(std::move(cleat));
        }
    }
}

}  // namespace

std::vector<Box> rectanglesOf(const Region& region)
{
    Region whole;
    for (const Polygon& polygon : region) whole.push_back({polygon.outer, {}});
    if (whole.empty() || !runsAlongAxes(whole)) return {};
    std::vector<Box> upright = slabs(whole, false);
    std::vector<Box> level = slabs(whole, true);
    return level.size() < upright.size() ? level : upright;
}

void addBase(Making& making)
{
    const Box outline = boundsOf(making.outline).value_or(Box{});
    const bool beside = making.how.sides == SideJoint::besideBase;
    const double aroundX = making.how.boardMm + kMarginMm;
    const double aroundY = making.mould.standing ? making.how.boardMm + kStandingMarginMm : aroundX;
    Region region = beside ? making.outlineRegion
                           : rectangle(outline.low - Point{aroundX, aroundY}, outline.high + Point{aroundX, aroundY});
    std::vector<Box> boards{boundsOf(region).value_or(Box{})};
    if (!fitsSheet(boards[0])) {
        // An L of two boards rather than a rectangle of which half lies idle.
        if (!beside && !making.mould.standing && runsAlongAxes(making.outlineRegion)) {
            const Region past = offset(making.outlineRegion, aroundX, OffsetJoin::mitre);
            if (past.size() == 1 && past[0].holes.empty()) region = past;
        }
        boards = partsOf(region);
    }
    for (const Box& board : boards) {
        MouldPart base;
        base.kind = MouldPartKind::base;
        base.goodFace = !making.faceUp && !making.mould.standing;
        base.thicknessMm = making.how.boardMm;
        base.fromMm = -making.how.boardMm;
        base.toMm = 0.0;
        base.outline = boards.size() == 1 ? region : intersect(region, rectangle(board.low, board.high));
        if (base.outline.empty()) continue;
        const Blank blank = blankOf(base.outline);
        base.lengthMm = blank.lengthMm;
        base.widthMm = blank.widthMm;
        base.shaped = blank.shaped;
        making.mould.parts.push_back(std::move(base));
    }
    if (boards.size() > 1) addCleats(making, boards);
}

}  // namespace yardcast::mould_making
