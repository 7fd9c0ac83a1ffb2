#include <algorithm>
#include <cmath>

#include "core/materials/boards.h"
#include "core/materials/gravity.h"
#include "core/materials/holding.h"
#include "core/materials/materials.h"
#include "core/mould/fresh_pressure.h"
#include "core/mould/mould_making.h"
#include "core/mould/mould_parts.h"

/// What keeps the mould in shape and the foam down. Spacings of screws and battens: common practice, no source.
namespace yardcast::mould_making {

namespace {

constexpr double kHoldSpacingMm = 400.0;
constexpr double kHoldFromEndMm = 80.0;
/// A batten reaches past the sides.
constexpr double kHoldPastMm = 20.0;
constexpr double kMostBracketMm = 800.0;
constexpr double kLeastBracketMm = 100.0;
constexpr double kRoundedToMm = 10.0;
constexpr double kScrewSpacingMm = 200.0;
constexpr double kScrewHeightMm = 80.0;
/// How fast a mould that stands fills where the plan has no mixer, and the consistency taken: soft, to be vibrated.
constexpr FreshClass kStandingClass = FreshClass::f3;
/// What counts as a column: no way across is wider (ACI 347 and CIRIA 108, from memory).
constexpr double kWidestColumnMm = 2000.0;
constexpr double kFastestAciWallMPerH = 2.1;
constexpr double kHighestAciWallM = 4.2;

double volumeMm3(const MouldPart& part) { return areaMm2(part.outline) * (part.toMm - part.fromMm); }

/// What others have to say, beside the one that is used.
void compareCodes(Making& making)
{
    MouldPressure& pressure = making.mould.pressure;
    const double heightM = pressure.heightMm * 1e-3;
    const bool column = std::max(making.mould.widthMm, making.mould.depthMm) <= kWidestColumnMm;
    const bool inScope = column || (pressure.riseMPerH < kFastestAciWallMPerH && heightM <= kHighestAciWallM);
    if (inScope) pressure.aciKpa = aci347Kpa(pressure.riseMPerH, making.filling.concreteC, heightM);
    Ciria108 ciria;
    ciria.heightM = heightM;
    ciria.riseMPerH = pressure.riseMPerH;
    ciria.concreteC = making.filling.concreteC;
    ciria.shape = column ? 1.5 : 1.0;
    pressure.ciriaKpa = ciria108Kpa(ciria);
}

void reckonPressure(Making& making)
{
    MouldPressure& pressure = making.mould.pressure;
    pressure.heightMm = making.mould.heightMm;
    pressure.hydrostaticKpa = hydrostaticKpa(pressure.heightMm);
    pressure.pressureKpa = pressure.hydrostaticKpa;
    pressure.rule = "hydrostatic";
    if (!making.mould.standing) return;
    const double areaM2 = making.mould.widthMm * making.mould.depthMm * 1e-6;
    pressure.riseMPerH = areaM2 > 0.0 ? making.filling.riseLPerH * 1e-3 / areaM2 : 0.0;
    pressure.concreteClass = freshClassWord(kStandingClass);
    pressure.codeKpa = din18218Kpa(kStandingClass, pressure.riseMPerH);
    compareCodes(making);
    if (pressure.codeKpa < pressure.hydrostaticKpa) {
        pressure.pressureKpa = pressure.codeKpa;
        pressure.rule = "DIN 18218";
    }
}

/// The side bends over its brackets as a beam. Lying it is low against its span and bends as one, under the mean
/// pressure over its height; standing its lowest strip bears the whole pressure by itself.
double bendingKpa(const Making& making)
{
    const MouldPressure& pressure = making.mould.pressure;
    return making.mould.standing ? pressure.pressureKpa : pressure.pressureKpa / 2;
}

/// How far a bracket reaches out from the side: lengths of one batten, on edge beside a high side, flat against a low
/// one.
double bracketFootMm(const Making& making)
{
    return making.mould.standing ? kMouldBattenWidthMm : kMouldBattenThicknessMm;
}

Region bracketBoxes(const Making& making, const Stretch& stretch, int count, double pitchMm)
{
    const Point a = stretch.points.front();
    const Point along = (stretch.points.back() - a) * (1.0 / distance(a, stretch.points.back()));
    const Point out = leftNormal(along) * -1.0;
    const double board = making.how.boardMm;
    const double half = (making.mould.standing ? kMouldBattenThicknessMm : kMouldBattenWidthMm) / 2;
    const double foot = bracketFootMm(making);
    Region boxes;
    for (int i = 1; i <= count; ++i) {
        const Point at = a + along * (pitchMm * i) + out * board;
        boxes.push_back({{at - along * half, at - along * half + out * foot, at + along * half + out * foot,
                          at + along * half}, {}});
        if (signedArea(boxes.back().outer) < 0.0)
            std::reverse(boxes.back().outer.begin(), boxes.back().outer.end());
    }
    return boxes;
}

void addBrackets(Making& making)
{
    MouldPressure& pressure = making.mould.pressure;
    const double kpa = bendingKpa(making);
    const double board = making.how.boardMm;
    const double found = spanForBowMm(kpa, making.how.bowMm, board, kMouldBoardElasticMpa);
    pressure.bracketMm = making.how.bracketMm.value_or(
        std::clamp(std::floor(found / kRoundedToMm) * kRoundedToMm, kLeastBracketMm, kMostBracketMm));
    double widest = 0.0;
    for (const Stretch& stretch : making.stretches) {
        if (stretch.bent) continue;
        const double span = stretch.lengthMm();
        const int fields = std::max(1, static_cast<int>(std::ceil(std::min(span / pressure.bracketMm, 1000.0) - 1e-9)));
        widest = std::max(widest, span / fields);
        if (fields < 2) continue;
        MouldPart bracket;
        bracket.kind = MouldPartKind::bracket;
        bracket.stuff = MouldStuff::batten;
        bracket.about = sideWord(leftNormal(stretch.points.back() - stretch.points.front()) * -1.0);
        bracket.count = fields - 1;
        bracket.outline = bracketBoxes(making, stretch, bracket.count, span / fields);
        bracket.fromMm = making.how.sides == SideJoint::besideBase ? -board : 0.0;
        bracket.toMm = making.mould.heightMm;
        bracket.lengthMm = bracket.toMm - bracket.fromMm;
        bracket.widthMm = kMouldBattenWidthMm;
        bracket.thicknessMm = kMouldBattenThicknessMm;
        making.mould.parts.push_back(std::move(bracket));
    }
    const BoardBending bending = boardBending(kpa, widest, board, kMouldBoardElasticMpa);
    pressure.bowMm = bending.bowMm;
    pressure.stressMpa = bending.stressMpa;
}

/// Where the line x = `at` (or y = `at`) crosses the outline for the first and last time.
std::optional<std::pair<double, double>> acrossOutline(const Ring& ring, bool alongY, double at)
{
    double low = HUGE_VAL;
    double high = -HUGE_VAL;
    for (std::size_t i = 0; i < ring.size(); ++i) {
        Point a = ring[i];
        Point b = ring[(i + 1) % ring.size()];
        if (!alongY) {
            std::swap(a.x, a.y);
            std::swap(b.x, b.y);
        }
        if ((a.x - at) * (b.x - at) > 0.0 || a.x == b.x) continue;
        const double y = a.y + (b.y - a.y) * (at - a.x) / (b.x - a.x);
        low = std::min(low, y);
        high = std::max(high, y);
    }
    if (!(high > low)) return std::nullopt;
    return std::pair(low, high);
}

/// Battens across the shorter way, at most `kHoldSpacingMm` apart, so that each piece of foam lies under one at least.
void addHoldDowns(Making& making)
{
    Mould& mould = making.mould;
    double mm3 = 0.0;
    std::vector<Box> boxes;
    for (const MouldPart& part : mould.parts) {
        if (!isFoamInside(part)) continue;
        mm3 += volumeMm3(part);
        if (const auto box = boundsOf(part.outline)) boxes.push_back(*box);
    }
    if (boxes.empty()) return;
    const double foam = foamDensityKgM3(making.part.body);
    mould.upliftN = std::max(0.0, mm3 * 1e-9 * (kFreshConcreteKgM3 - foam) * kGravityMS2);
    mould.holdDownN = kHoldShare * mould.upliftN;
    if (making.faceUp) {
        mould.screws.foam = std::max(2 * static_cast<int>(boxes.size()),
                                     static_cast<int>(std::ceil(mould.holdDownN / kFixingN)));
        return;
    }
    const bool alongY = mould.depthMm <= mould.widthMm;
    std::vector<double> places;
    for (const Box& box : boxes) {
        const double low = alongY ? box.low.x : box.low.y;
        const double high = alongY ? box.high.x : box.high.y;
        const double from = std::min(low + kHoldFromEndMm, (low + high) / 2);
        const double to = std::max(high - kHoldFromEndMm, (low + high) / 2);
        const int steps = static_cast<int>(std::ceil((to - from) / kHoldSpacingMm));
        for (int i = 0; i <= steps; ++i) places.push_back(steps > 0 ? from + (to - from) * i / steps : from);
    }
    std::sort(places.begin(), places.end());
    std::vector<double> kept;
    for (const double at : places) {
        if (kept.empty() || at - kept.back() > kMouldBattenWidthMm) kept.push_back(at);
    }
    const double past = making.how.boardMm + kHoldPastMm;
    const double half = kMouldBattenWidthMm / 2;
    std::size_t battens = 0;
    std::vector<MouldPart> made;
    for (const double at : kept) {
        const auto span = acrossOutline(making.outline, alongY, at);
        if (!span) continue;
        const Point low = alongY ? Point{at - half, span->first - past} : Point{span->first - past, at - half};
        const Point high = alongY ? Point{at + half, span->second + past} : Point{span->second + past, at + half};
        ++battens;
        const double lengthMm = span->second - span->first + 2 * past;
        const auto same = std::find_if(made.begin(), made.end(), [&](const MouldPart& part) {
            return std::abs(part.lengthMm - lengthMm) < 0.5;
        });
        if (same != made.end()) {
            same->outline.push_back(rectangle(low, high)[0]);
            ++same->count;
            continue;
        }
        MouldPart batten;
        batten.kind = MouldPartKind::holdDown;
        batten.stuff = MouldStuff::batten;
        batten.outline = rectangle(low, high);
        batten.fromMm = mould.heightMm;
        batten.toMm = mould.heightMm + kMouldBattenThicknessMm;
        batten.lengthMm = lengthMm;
        batten.widthMm = kMouldBattenWidthMm;
        batten.thicknessMm = kMouldBattenThicknessMm;
        made.push_back(std::move(batten));
    }
    if (battens > 0) {
        const double ends = 2.0 * static_cast<double>(battens);
        const int each = std::max(1, static_cast<int>(std::ceil(mould.holdDownN / (kFixingN * ends))));
        mould.screws.holdDowns += each * 2 * static_cast<int>(battens);
    }
    for (MouldPart& part : made) mould.parts.push_back(std::move(part));
}

/// Short battens over the side, from which strips hang that lie at the top.
void addHangers(Making& making)
{
    Mould& mould = making.mould;
    std::vector<MouldPart> made;
    for (const MouldPart& strip : mould.parts) {
        const bool hangs = (strip.kind == MouldPartKind::drip || strip.kind == MouldPartKind::rebate) &&
                           std::abs(strip.toMm - mould.heightMm) < 1e-6;
        if (!hangs || !(strip.lengthMm > 0.0)) continue;
        const Box box = boundsOf(strip.outline).value_or(Box{});
        const bool alongX = box.width() >= box.height();
        const int count = 1 + static_cast<int>(std::ceil(strip.lengthMm / kHoldSpacingMm));
        const double past = making.how.boardMm + kHoldPastMm;
        const double half = kMouldBattenWidthMm / 2;
        MouldPart hanger;
        hanger.kind = MouldPartKind::holdDown;
        hanger.stuff = MouldStuff::batten;
        hanger.about = strip.kind == MouldPartKind::drip ? "drip" : "rebate";
        hanger.count = 0;
        hanger.fromMm = mould.heightMm;
        hanger.toMm = mould.heightMm + kMouldBattenThicknessMm;
        hanger.widthMm = kMouldBattenWidthMm;
        hanger.thicknessMm = kMouldBattenThicknessMm;
        for (int i = 0; i < count; ++i) {
            const double low = alongX ? box.low.x : box.low.y;
            const double high = alongX ? box.high.x : box.high.y;
            const double inset = std::min(kHoldFromEndMm, (high - low) / 2);
            const double at = low + inset + (high - low - 2 * inset) * i / (count - 1);
            const auto span = acrossOutline(making.outline, alongX, at);
            if (!span) continue;
            // To the nearer side.
            const double near = alongX ? box.low.y : box.low.x;
            const double far = alongX ? box.high.y : box.high.x;
            const bool toLow = near - span->first <= span->second - far;
            const double from = toLow ? span->first - past : near - kHoldPastMm;
            const double to = toLow ? far + kHoldPastMm : span->second + past;
            hanger.lengthMm = std::max(hanger.lengthMm, to - from);
            hanger.outline.push_back(rectangle(alongX ? Point{at - half, from} : Point{from, at - half},
                                               alongX ? Point{at + half, to} : Point{to, at + half})[0]);
            ++hanger.count;
        }
        mould.screws.holdDowns += 4 * hanger.count;
        if (hanger.count > 0) made.push_back(std::move(hanger));
    }
    for (MouldPart& part : made) mould.parts.push_back(std::move(part));
}

void countScrews(Making& making)
{
    MouldScrews& screws = making.mould.screws;
    const int inHeight = std::max(2, static_cast<int>(std::ceil(making.mould.heightMm / kScrewHeightMm)));
    for (const MouldPart& part : making.mould.parts) {
        switch (part.kind) {
        case MouldPartKind::side:
            screws.sides += inHeight + 1 + static_cast<int>(std::ceil(part.insideMm / kScrewSpacingMm));
            break;
        case MouldPartKind::bracket: screws.sides += 4 * part.count; break;
        case MouldPartKind::cleat:
            screws.sides += 2 * (1 + static_cast<int>(std::ceil(part.lengthMm / kScrewSpacingMm)));
            break;
        case MouldPartKind::foot: screws.sides += part.count * making.mould.ties.across * making.mould.ties.footScrews; break;
        case MouldPartKind::former: screws.formers += part.lengthMm < 100.0 ? 1 : 4; break;
        default: break;
        }
    }
}

}  // namespace

void addHolding(Making& making)
{
    reckonPressure(making);
    addBrackets(making);
    addTies(making);
    addHoldDowns(making);
    addHangers(making);
    countScrews(making);
}

}  // namespace yardcast::mould_making
