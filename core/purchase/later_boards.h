#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "core/mould/mould.h"
#include "core/plan/plan.h"
#include "core/pour/pour_plan.h"
#include "core/purchase/cut_lists.h"

/// Boards through time: the base of a mould that is done with is sawn to boards of moulds that are built later, a
/// smaller base, then sides.
namespace yardcast {

/// A board of a later mould that comes out of an old base.
struct LaterPiece {
    std::string name;           ///< its number: "C2-1"
    std::string casting;
    MouldPartKind kind = MouldPartKind::base;
    Point at;                   ///< in the clean part of the old base, mm from its left front corner
    Size size;                  ///< as it lies there
    friend bool operator==(const LaterPiece&, const LaterPiece&) = default;
};
/// One base, or what an earlier cut left of it, sawn up. A base that was itself sawn out of another may be sawn
/// again.
struct LaterCut {
    std::string board;          ///< number of the old base: "C1-1"
    std::string casting;        ///< whose mould it was the base of
    int day = 1;                ///< day of the calendar, from 1, on which it is sawn, the one before it is wanted
    int freeDay = 1;            ///< from when on it is free
    Point cleanAt;              ///< left front corner of its clean part, in the mould frame
    Size clean;                 ///< no screw holes, no silicone, no former stood on it
    int uses = 1;               ///< castings that lay on it
    std::vector<LaterPiece> pieces;
    friend bool operator==(const LaterCut&, const LaterCut&) = default;
};
struct LaterBoards {
    std::vector<LaterCut> cuts;               ///< in the order of days; only those that give something
    double savesM2 = 0.0;                     ///< of boards that need not be bought
    std::optional<std::int64_t> savesMinor;   ///< whole sheets and their cuts; nothing while not reckoned
    /// How many boards with this number are sawn out of old ones.
    int countOf(const std::string& name) const;
    /// How many in all, and out of how many bases.
    int boardCount() const;
    int baseCount() const;
};
using LaterBoardsPtr = std::shared_ptr<const LaterBoards>;

/// What is cut off all round the clean part: silicone and the line of the sides. Our choice, no source.
inline constexpr double kOldEdgeMm = 15.0;
/// Old boards are sawn at home; the store's tolerance does not hold for them. Common practice, no source.
inline constexpr double kHomeSawMm = 3.0;
/// A clean part narrower or shorter than this is left alone. Our choice.
inline constexpr double kLeastCleanMm = 80.0;

/// Day by day in the order of the pour plan: what falls free up to the evening before is sawn for the moulds of that
/// day, most of their boards first (`cutSheets`, straight cuts). A base is free when the last casting that lies on it
/// leaves its mould (`MouldHours`). Sides, formers and bases count as wanted; only bases are sawn up, and of each only its
/// largest clean rectangle. What touches what one sees comes only out of boards used less often than `usualUses`. A
/// heuristic: what it finds can be sawn so, a better choice may exist. Without `savesMinor`. Pure.
LaterBoards laterBoards(const Plan& plan, const std::vector<MouldPtr>& moulds, const PourPlan& pour);

/// The jobs without the boards that come out of old ones.
CutJobs withoutLater(const CutJobs& jobs, const LaterBoards& later);

}  // namespace yardcast
