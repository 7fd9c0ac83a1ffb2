#pragma once

#include <vector>

#include "core/cutting/sheet_units.h"

namespace yardcast::sheets {

/// Lengths along one way of the sheets as many scales see them. A scale counts lengths so that what lies in a row on a
/// sheet never adds up to more than is said that the sheet holds: a dual feasible function.
struct SideScales {
    std::vector<std::vector<double>> asIs;     ///< of each scale, of each item's side along this way
    std::vector<std::vector<double>> turned;   ///< the same of the item turned a quarter
    std::vector<std::vector<double>> held;     ///< of each scale, the most in a row of each sort of sheet
};

/// Scales for the sides along x (or y) of the items on the sheets, the plain length first, at most `mostScales`: what is
/// longer than a share counts as the whole and shorter pieces as nothing (Fekete and Schepers 2001, "New classes of
/// fast lower bounds for bin packing problems", Math. Programming 91), lengths counted in whole multiples of one
/// (Carlier, Clautiaux and Moukrim 2007, "New reduction procedures and lower bounds for the two-dimensional bin packing
/// problem with fixed orientation", Computers & Operations Research 34), and lengths rounded to whole shares (the first
/// again). All from memory.
SideScales sideScales(const std::vector<Item>& items, const std::vector<Bin>& bins, bool x, std::size_t mostScales);

}  // namespace yardcast::sheets
