#include <algorithm>
#include <cmath>

#include "core/materials/boards.h"
#include "core/materials/holding.h"
#include "core/mould/fresh_pressure.h"
#include "core/mould/mould_making.h"

/// A mould that stands: what keeps its two faces from being pressed apart.
namespace yardcast::mould_making {

namespace {

constexpr double kRoundedToMm = 10.0;
constexpr int kMostRows = 40;
/// Above the concrete, where a rod passes free. Common practice, no source.
constexpr double kRodAboveMm = 30.0;
/// Past the studs, for plate, nut and a few turns of thread.
constexpr double kRodEndMm = 25.0;

/// The pressure along one stud, N/mm, as a function of the height above the base.
struct Load {
    double heightMm = 0.0;
    double fullNPerMm = 0.0;      ///< as deep as a liquid would press at the base
    double capNPerMm = 0.0;
    double at(double zMm) const
    {
        const double deep = std::clamp(heightMm - zMm, 0.0, heightMm);
        return heightMm > 0.0 ? std::min(fullNPerMm * deep / heightMm, capNPerMm) : 0.0;
    }
    double between(double fromMm, double toMm) const
    {
        // Straight but for one kink: fine enough by far.
        constexpr int kSteps = 64;
        double sum = 0.0;
        for (int i = 0; i < kSteps; ++i) sum += at(fromMm + (toMm - fromMm) * (i + 0.5) / kSteps);
        return sum * (toMm - fromMm) / kSteps;
    }
};

/// A batten on edge, the board's beam turned: all of the load is on its thickness.
constexpr double kKpaPerNPerMm = 1e3 / kMouldBattenThicknessMm;

BoardBending studBending(double nPerMm, double spanMm)
{
    return boardBending(nPerMm * kKpaPerNPerMm, spanMm, kMouldBattenWidthMm, kBattenElasticMpa);
}

/// The longest span that keeps to all three limits, `share` of each.
double studSpanMm(double nPerMm, double mostBowMm, double share)
{
    if (!(nPerMm > 0.0)) return HUGE_VAL;
    const double byBow =
        spanForBowMm(nPerMm * kKpaPerNPerMm, share * mostBowMm, kMouldBattenWidthMm, kBattenElasticMpa);
    const double byStress = std::sqrt(share * kBattenStrengthMpa / studBending(nPerMm, 1.0).stressMpa);
    return std::min({byBow, byStress, share * kTieN / nPerMm});
}

/// Heights of the rows from the foot to `topMm` when every span is used to `share`; the last may lie above it.
std::vector<double> rowsAt(const Load& load, double topMm, double mostBowMm, double share)
{
    std::vector<double> rows{0.0};
    while (rows.back() < topMm && rows.size() < static_cast<std::size_t>(kMostRows)) {
        const double span = studSpanMm(load.at(rows.back()), mostBowMm, share);
        rows.push_back(rows.back() + std::max(span, kRoundedToMm));
    }
    return rows;
}

/// As few rows as will do, and each span used as much as the others.
std::vector<double> rowHeights(const Load& load, double topMm, double mostBowMm)
{
    std::vector<double> rows = rowsAt(load, topMm, mostBowMm, 1.0);
    double low = 0.0;
    double high = 1.0;
    for (int i = 0; i < 30; ++i) {
        const double share = (low + high) / 2;
        std::vector<double> tried = rowsAt(load, topMm, mostBowMm, share);
        if (tried.size() > rows.size() || tried.back() < topMm) {
            low = share;
            continue;
        }
        high = share;
        rows = std::move(tried);
    }
    for (double& row : rows) row = std::floor(row / kRoundedToMm) * kRoundedToMm;
    rows.back() = topMm;
    return rows;
}

/// Middles of the studs along the mould, from both faces alike.
std::vector<double> studPlaces(const Mould& mould)
{
    std::vector<double> places;
    for (const MouldPart& part : mould.parts) {
        if (part.kind != MouldPartKind::bracket || part.about != "front") continue;
        for (const Polygon& stud : part.outline) {
            if (const auto box = boundsOf(stud.outer)) places.push_back((box->low.x + box->high.x) / 2);
        }
    }
    return places;
}

void addFeet(Making& making)
{
    const double out = making.how.boardMm + kMouldBattenWidthMm;
    const double width = making.mould.widthMm;
    const double depth = making.mould.depthMm;
    MouldPart foot;
    foot.kind = MouldPartKind::foot;
    foot.stuff = MouldStuff::batten;
    foot.count = 2;
    foot.outline = rectangle({0.0, -out - kMouldBattenWidthMm}, {width, -out});
    foot.outline.push_back(rectangle({0.0, depth + out}, {width, depth + out + kMouldBattenWidthMm})[0]);
    foot.toMm = kMouldBattenThicknessMm;
    foot.lengthMm = width;
    foot.widthMm = kMouldBattenWidthMm;
    foot.thicknessMm = kMouldBattenThicknessMm;
    making.mould.parts.push_back(std::move(foot));
}

void addRods(Making& making, const MouldTies::Row& row, const std::vector<double>& places)
{
    const double past = making.how.boardMm + kMouldBattenWidthMm + kRodEndMm;
    MouldPart rod;
    rod.kind = MouldPartKind::tie;
    rod.stuff = MouldStuff::rod;
    rod.count = static_cast<int>(places.size());
    for (const double x : places) {
        rod.outline.push_back(rectangle({x - kTieRodMm / 2, -past}, {x + kTieRodMm / 2, making.mould.depthMm + past})[0]);
    }
    rod.fromMm = row.heightMm - kTieRodMm / 2;
    rod.toMm = row.heightMm + kTieRodMm / 2;
    rod.lengthMm = making.mould.depthMm + 2 * past;
    rod.widthMm = kTieRodMm;
    rod.thicknessMm = kTieRodMm;
    making.mould.parts.push_back(std::move(rod));
}

}  // namespace

void addTies(Making& making)
{
    Mould& mould = making.mould;
    const std::vector<double> places = studPlaces(mould);
    if (!mould.standing || places.empty()) return;
    const double pitchMm = mould.widthMm / static_cast<double>(places.size() + 1);
    // kPa are 0.001 N/mm2.
    const Load load{mould.heightMm, mould.pressure.hydrostaticKpa * 1e-3 * pitchMm,
                    mould.pressure.pressureKpa * 1e-3 * pitchMm};
    const double topMm = mould.heightMm + kRodAboveMm;
    const std::vector<double> heights = rowHeights(load, topMm, making.how.bowMm);
    MouldTies& ties = mould.ties;
    ties.across = static_cast<int>(places.size());
    for (std::size_t i = 0; i < heights.size(); ++i) {
        MouldTies::Row row;
        row.heightMm = heights[i];
        row.through = i > 0 && row.heightMm < mould.heightMm;
        if (i > 0) {
            const double span = heights[i] - heights[i - 1];
            const BoardBending bending = studBending(load.at(heights[i - 1]), span);
            ties.longestMm = std::max(ties.longestMm, span);
            ties.bowMm = std::max(ties.bowMm, bending.bowMm);
            ties.stressMpa = std::max(ties.stressMpa, bending.stressMpa);
        }
        // Half of each span beside it.
        const double from = i == 0 ? 0.0 : (heights[i - 1] + heights[i]) / 2;
        const double to = i + 1 == heights.size() ? topMm : (heights[i] + heights[i + 1]) / 2;
        row.forceN = load.between(from, to);
        ties.rows.push_back(row);
    }
    ties.footScrews = std::max(2, static_cast<int>(std::ceil(ties.rows[0].forceN / kFixingN)));
    for (MouldPart& part : mould.parts) {
        if (part.kind != MouldPartKind::bracket || (part.about != "front" && part.about != "back")) continue;
        // Up to the rods above the concrete, and a little further.
        part.toMm = topMm + kRodAboveMm;
        part.lengthMm = part.toMm - part.fromMm;
    }
    if (making.how.sides == SideJoint::onBase) addFeet(making);
    for (std::size_t i = 1; i < ties.rows.size(); ++i) addRods(making, ties.rows[i], places);
}

}  // namespace yardcast::mould_making
