#pragma once

#include <limits>
#include <optional>
#include <stop_token>
#include <vector>

#include "core/structure/handled_body.h"

/// Where people should take hold of a casting, found by trying. All on one factorisation.
namespace yardcast {

/// More than any use: the piece tips at these places.
inline constexpr double kTips = std::numeric_limits<double>::infinity();

/// Whether it lies on its face in the mould (uprights that are cast flat: on their front).
bool liesOnFace(const StrengthInput& input);
/// Whether it is broken loose flat from a mould base: counters and panels.
bool hasSuction(const StrengthInput& input);

/// Hand places of a plan as what really holds: where they lie on one line (two people, one at each end), each is a
/// person with two hands `kTwoHandsMm` apart across that line (judgement), moved in where that is outside.
std::vector<Point> handsOfGrips(const std::vector<Point>& grips, const Region& outline);
inline constexpr double kTwoHandsMm = 300.0;
/// Side by side people need so much of an edge (judgement).
inline constexpr double kRoomForOneMm = 450.0;
/// How many hand places are proposed: four for up to four people, then an even number up to eight, as far as they have
/// room side by side on an edge of this length.
int gripCount(int people, double lengthMm);
/// How many lift when it is tilted: two to six, likewise.
int tiltHandCount(int people, double lengthMm);

/// Greatest use in percent when it is lifted at these hands: the worse of breaking loose and of being carried flat,
/// either way round that happens. `kTips` where it tips. What is above `bound` anyhow is not computed to its end.
double liftingUse(HandledBody& handled, const std::vector<Point>& hands, double bound = kTips);

struct FoundGrips {
    std::vector<Point> grips;   ///< along the long edges; alike left and right, and front and back, where the slab is
    double usePercent = kTips;
};
/// Nothing where it tips at all places, or `stop` was asked.
std::optional<FoundGrips> findGrips(HandledBody& handled, std::stop_token stop = {});

struct FoundTilt {
    StandingEdge edge;
    std::vector<Point> hands;
    double usePercent = kTips;
};
/// Tilted about the edge, lifted at the hands.
double tiltUse(HandledBody& handled, const StandingEdge& edge, const std::vector<Point>& hands);
/// The best edge and hand line. Uprights are only tilted about their base, on which they stand afterwards.
std::optional<FoundTilt> findTilt(HandledBody& handled, std::stop_token stop = {});

}  // namespace yardcast
