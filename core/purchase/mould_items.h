#pragma once

#include <string>
#include <vector>

#include "core/mould/mould.h"
#include "core/purchase/plan_prices.h"

/// Under which items of the price book the parts of moulds are bought.
namespace yardcast {

/// What is bought of one sort, so wide (of lengths) and so thick.
struct MouldItem {
    std::vector<std::string> keys;    ///< the most particular first; empty for what is not bought (blocks of mortar)
    std::string detail;               ///< joined to the name: the section, of strips
    double thicknessMm = 0.0;         ///< of the sheet as bought
    int layers = 1;                   ///< foam: so many on top of each other
    double cutDownToMm = 0.0;         ///< foam: each is cut down to this thickness; 0: it is used as it comes
};

/// Foam as thick as no sheet comes from the next thicker one, cut down; what is thicker than every sheet from as few
/// layers as will do. Bent boards are of a thin board of their own.
MouldItem mouldItemOf(const PlanPrices& prices, MouldPartKind kind, MouldStuff stuff, bool bent, double widthMm,
                      double thicknessMm);

/// M of edges that a tin of wax does; common practice, no source.
inline constexpr double kWaxTinM = 60.0;

}  // namespace yardcast
