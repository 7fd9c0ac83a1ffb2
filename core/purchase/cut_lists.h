#pragma once

#include <array>
#include <cstdint>
#include <memory>
#include <optional>
#include <stop_token>
#include <string>
#include <vector>

#include "core/cutting/bar_cutting.h"
#include "core/cutting/sheet_cutting.h"
#include "core/front/front_layout.h"
#include "core/mould/mould.h"
#include "core/plan/plan.h"
#include "core/purchase/price_book.h"
#include "core/reinforcement/steel_schedule.h"

/// What of a plan is cut from whole sheets and lengths, and how.
namespace yardcast {

/// Where a piece goes. One a piece of a list, same order.
struct CutPiece {
    std::string subject;     ///< casting or front
    std::string name;        ///< its number on the mould, the steel sheet or the front: "C1-4"
    std::string what;        ///< mouldPartWord(), name of a TimberPiece, "mesh" or "bar"
    bool goodFace = false;   ///< one face touches what one sees of the casting
    bool shaped = false;     ///< trimmed to a shape or a mitre out of this rectangle at home
    int parts = 1;           ///< so many of these, joined, make one part; more than 1 where no sheet is as large
    double cutDownToMm = 0.0;  ///< foam: to this thickness; 0: it is used as it comes
    std::array<double, 2> mitreDeg{};  ///< as of MouldPart
    friend bool operator==(const CutPiece&, const CutPiece&) = default;
};
/// What a list is cut from. One a stock of a list, same order.
struct CutStock {
    double packSize = 0.0;        ///< as the price book has it; 0 for offcuts
    std::int64_t priceMinor = 0;  ///< of one
    bool atHand = false;          ///< an offcut, or owned: it costs nothing
    friend bool operator==(const CutStock&, const CutStock&) = default;
};

/// One item's list. Prices in the lists are minor units of the plan's currency.
struct SheetJob {
    std::string item;        ///< key in the price book: "mould_board", "foam_20", "mesh_4_50"
    std::string name;        ///< what the price book calls it
    double thicknessMm = 0.0;  ///< boards and foam; of mesh the wire
    bool atStore = false;    ///< the store saws it; else it is cut at home
    std::vector<CutPiece> pieces;
    std::vector<CutStock> stock;
    SheetCutting list;
    friend bool operator==(const SheetJob&, const SheetJob&) = default;
};
struct BarJob {
    std::string item;        ///< "bar_8", "batten_46x27", "frame_timber"
    std::string name;
    Size section;            ///< mm; of a round bar its diameter twice
    std::vector<CutPiece> pieces;
    std::vector<CutStock> stock;
    BarCutting list;
    friend bool operator==(const BarJob&, const BarJob&) = default;
};
/// Pieces of an item for which neither the book nor the plan has a sheet or length.
struct CutWithoutStock {
    std::string item;
    std::vector<CutPiece> pieces;
    friend bool operator==(const CutWithoutStock&, const CutWithoutStock&) = default;
};
struct CutJobs {
    std::vector<SheetJob> sheets;   ///< mould boards, foam by thickness, mesh by sort
    std::vector<BarJob> bars;       ///< steel by diameter, battens by section, frame timber
    std::vector<CutWithoutStock> withoutStock;
};

/// Widths of the cut where the plan does not say: common practice, no source. Foam and mesh are cut with knife and
/// cutters and lose nothing.
inline constexpr double kBarSawMm = 2.0;
inline constexpr double kTimberSawMm = 3.0;

/// What is to be cut for a plan. Boards from the moulds, with the plan's saw, trim, least strip and offcuts; foam from the
/// moulds (see mouldItemOf); boards, foam and strips larger than all their stock in equal parts; mesh and bars from the
/// steel; battens and frames from the fronts; battens, strips and rods from the moulds. A mould that is null gives nothing,
/// of one shared with a casting before it only foam that lies in the concrete. What the plan owns of an item counts as
/// whole sheets or lengths of the smallest size.
CutJobs cutJobs(const Plan& plan, const PriceBook& prices, const std::vector<MouldPtr>& moulds, const SteelSchedule& steel,
                const std::vector<FrontLayout>& fronts);

struct SheetCuts {
    SheetJob job;
    SheetPlan plan;
    std::int64_t sheetsMinor = 0;
    std::int64_t cutsMinor = 0;     ///< of the cuts at the store
    double needM2 = 0.0;            ///< of the pieces
};
struct BarCuts {
    BarJob job;
    BarPlan plan;
    std::int64_t priceMinor = 0;
    double needM = 0.0;
};
using SheetCutsPtr = std::shared_ptr<const SheetCuts>;
using BarCutsPtr = std::shared_ptr<const BarCuts>;

/// One a job, same order.
struct CutPlans {
    std::vector<SheetCutsPtr> sheets;
    std::vector<BarCutsPtr> bars;
    std::vector<CutWithoutStock> withoutStock;
};
using CutPlansPtr = std::shared_ptr<const CutPlans>;

/// Solves jobs and remembers them: one that is equal to one of the last call is not solved again. Not thread-safe; keep
/// one a thread.
class CutSolver {
public:
    /// Null when stopped before all was solved; what was solved is kept.
    CutPlansPtr solve(const CutJobs& jobs, std::stop_token stop = {});

private:
    std::vector<SheetCutsPtr> sheets_;
    std::vector<BarCutsPtr> bars_;
};

}  // namespace yardcast
