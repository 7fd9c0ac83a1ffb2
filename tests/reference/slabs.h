#pragma once

#include <vector>

#include "tests/reference/slab.h"

/// Slabs of our own invention. Fields are 40 mm thick unless said otherwise; sharp corners, edges parallel to x or y.
namespace yardcast::reference {

/// 1800 x 620 with a sink cutout of 560 x 400, a rest near each end.
Slab sinkSlab();
/// The same with a third rest beside the sink.
Slab sinkSlabOnThree();
/// Rims of 60 x 50 along all edges and round the sink, two rests.
Slab rimmedSlab();
/// A field of 30 mm with rims of 60 x 60, none at the back: deep and narrow, so that their torsion and lever matter,
/// and the strips beside the sink pull at each other.
Slab deepRimmedSlab();
/// The deep rims and two ribs across, over a rest and beside the sink.
Slab ribbedSlab();
/// A long overhang: the middle one of three rests carries nothing.
Slab overhangingSlab();
/// One rest under the whole depth, the other under the front part only: it twists, and lifts off in part.
Slab twistedSlab();
/// An L of 1800 x 620 and a leg of 620 x 580 behind, with deep rims, three rests.
Slab cornerSlab();

std::vector<Slab> allSlabs();

}  // namespace yardcast::reference
