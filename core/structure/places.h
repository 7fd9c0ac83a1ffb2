#pragma once

#include <optional>

#include "core/structure/body.h"

/// Where things lie in a casting, in the words of the maker.
namespace yardcast {

/// The name of a place: an inner corner, a strip beside a cutout, over a rest, beyond the rests, between two of them,
/// else the kind of concrete. `corner` is the index of the body's inner corner that the place belongs to, or -1.
PlaceName placeAt(const Body& body, Point at, int corner);

/// The concrete on a straight line through `at`, as far as it goes without leaving the outer ring of the casting;
/// cutouts are passed over. Ends in order of `direction`. Nothing where `at` is outside.
struct Chord {
    Point from;
    Point to;
};
std::optional<Chord> chordThrough(const Casting& casting, Point at, Point direction);

/// The strip of concrete beside a cutout, where there is one: from the edge of the slab (or another cutout) to the
/// cutout, across its middle.
std::optional<Chord> stripBeside(const Casting& casting, const Cutout& cutout, PlaceKind side);

/// Two rests with nothing between them but slab: `a` lies before `b` along x or along y.
struct Span {
    int a = 0;
    int b = 0;
    bool alongX = true;
    double clearMm = 0.0;
    Point middle;
};
std::vector<Span> spansOf(const StrengthInput& input);

/// How far the slab reaches beyond its outermost rest on one side.
struct Overhang {
    int rest = 0;           ///< the outermost
    Point outwards;         ///< unit direction, along an axis
    double lengthMm = 0.0;
    double slabMm = 0.0;    ///< the slab's own length that way
    Point at;               ///< on the edge of the rest
};
std::vector<Overhang> overhangsOf(const StrengthInput& input);

}  // namespace yardcast
