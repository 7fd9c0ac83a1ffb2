#pragma once

#include <cstdint>
#include <optional>
#include <stop_token>
#include <string>
#include <vector>

#include "core/geometry/point.h"

/// Sheets cut for the least money by straight through-cuts. Lengths are reckoned in whole thousandths of a millimetre and
/// prices in whole ten-thousandths, in integers throughout; what lies between is rounded to the nearest.
namespace yardcast {

/// One size of sheet that may be cut. Width along x, depth along y, mm.
struct SheetStock {
    Size size;
    double price = 0.0;            ///< of one; any unit, the same for all of a list
    std::optional<int> count;      ///< how many there are (offcuts at hand: price 0, used first); nothing: any number
    friend bool operator==(const SheetStock&, const SheetStock&) = default;
};

/// `count` equal pieces wanted.
struct SheetPiece {
    std::string name;
    Size size;
    int count = 1;
    bool turn = true;              ///< may be turned a quarter; false where the grain or the good face has a direction
    friend bool operator==(const SheetPiece&, const SheetPiece&) = default;
};

/// What to cut from what, by straight cuts through the whole of what lies on the saw (as a panel saw cuts).
struct SheetCutting {
    double sawMm = 3.0;            ///< lost at every cut
    double trimMm = 0.0;           ///< cut off all around each sheet first; the saw cut lies inside it
    std::vector<SheetStock> stock;
    std::vector<SheetPiece> pieces;
    double cutPrice = 0.0;          ///< of one cut at the store
    int freeCuts = 0;              ///< cuts of each sheet that cost nothing
    double leastStripMm = 0.0;     ///< the store cuts nothing narrower: narrower pieces come as blanks to rip at home
    friend bool operator==(const SheetCutting&, const SheetCutting&) = default;
};

inline constexpr double kLargestSheetMm = 100'000.0;
inline constexpr double kDearestSheet = 1e6;
inline constexpr int kMostSheetPieces = 1'000'000;    ///< of all sorts
inline constexpr int kMostSheetKinds = 1'000;         ///< different pieces, or stocks

/// How hard to look. Counted in places tried, not in time, so that an answer is the same on every machine.
struct SheetEffort {
    std::uint64_t places = 12'000'000;
};

/// Which way the saw runs.
enum class SawRun { alongX, alongY };

/// One straight cut through a part. Part 0 is the whole sheet; step i of the list makes part 2i + 1, which ends where the
/// cut begins, and part 2i + 2 beyond it (of no size where the saw takes the rest).
struct SawStep {
    int part = 0;
    SawRun run = SawRun::alongX;
    double atMm = 0.0;             ///< from the part's low edge (left for alongY, bottom for alongX) to where the cut begins
    double lostMm = 0.0;           ///< saw width, or less where the part ends within the cut
    bool atHome = false;           ///< a rip of a blank, not ordered at the store
};

struct PlacedPiece {
    int piece = 0;                 ///< index into SheetCutting::pieces
    Point at;                      ///< low corner, from the low corner of the whole sheet
    Size size;                     ///< as it lies
    bool turned = false;
    int blank = -1;                ///< index into CutSheet::blanks where it is ripped at home; else -1
};

/// A place on the sheet, low corner and size.
struct SheetArea {
    Point at;
    Size size;
};

/// What is cut from one sheet, and how many sheets are cut so.
struct CutSheet {
    int stock = 0;                 ///< index into SheetCutting::stock
    int times = 1;
    std::vector<PlacedPiece> pieces;     ///< in the order in which they come free
    std::vector<SheetArea> blanks;       ///< wider strips the store cuts, of which narrow pieces are ripped at home; what
                                         ///< would be waste beside them stays on
    std::vector<SawStep> steps;          ///< all cuts in sawing order, those at home last
    std::vector<SheetArea> remainders;   ///< what is left and worth keeping (see kLeastRemainderMm), largest first
    int cuts = 0;                        ///< at the store, of one sheet; a part of the steps
};

/// A rest whose lesser side is shorter than this is waste, not a remainder. Common practice, no source.
inline constexpr double kLeastRemainderMm = 50.0;

enum class Unplaced { tooLarge, noSheetLeft };

struct UnplacedPieces {
    int piece = 0;
    int count = 0;
    Unplaced reason = Unplaced::tooLarge;
};

/// What is wrong with a list, by place: `stock` and `piece` are indices, or -1.
struct SheetTrouble {
    enum class Kind {
        noSize,     ///< a side that is not a number of at least 0.01 mm
        tooLarge,   ///< a side beyond kLargestSheetMm
        badCount,   ///< a count below 1 (stock: below 0)
        tooMany,    ///< more than kMostSheetPieces in all, or more than kMostSheetKinds pieces or stocks
        badPrice,   ///< no number, below 0, or beyond kDearestSheet
        badSaw,     ///< saw width, trim or least strip no number, below 0, or beyond kLargestSheetMm
        noStock     ///< nothing to cut from
    };
    Kind kind = Kind::noSize;
    int stock = -1;
    int piece = -1;
    friend bool operator==(const SheetTrouble&, const SheetTrouble&) = default;
};

struct SheetPlan {
    std::vector<CutSheet> sheets;         ///< in the order of the stock, offcuts at hand (price 0) first
    std::vector<UnplacedPieces> unplaced;
    int count = 0;                        ///< sheets cut, offcuts too
    double sheetsPrice = 0.0;             ///< of the sheets
    double cutsPrice = 0.0;               ///< of the cuts at the store
    double price = 0.0;                   ///< both
    int cuts = 0;                         ///< at the store, of all sheets
    double bound = 0.0;                   ///< no plan that places as much has sheets that cost less
    int boundCount = 0;                   ///< no plan that places as much cuts fewer sheets
    bool proven = false;                  ///< sheetsPrice is the bound
    bool stopped = false;                 ///< the caller asked to stop: the plan is whole, but a better one may exist
};

/// Everything that is wrong with a list, at once; empty where it can be cut. Pieces larger than all stock are not wrong:
/// they come back as unplaced.
std::vector<SheetTrouble> sheetTroubles(const SheetCutting& list);

/// Most placed first, then the least money for sheets and cuts that was found, then offcuts used for most, then few cuts
/// and fence settings and a large remainder in one piece: a fortieth of a sheet more of it is worth a cut more.
/// Parallel cuts of a part follow each other, like ones together, and next the part for which the fence stands already.
/// The same list gives the same plan on every machine: effort is counted in places tried. A list with troubles gives an
/// empty plan.
SheetPlan cutSheets(const SheetCutting& list, SheetEffort effort = {}, std::stop_token stop = {});

}  // namespace yardcast
