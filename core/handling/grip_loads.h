#pragma once

#include <cstddef>
#include <vector>

#include "core/geometry/point.h"

/// Who bears how much of a casting.
namespace yardcast {

struct GripLoad {
    Point at;                 ///< own frame
    double kg = 0.0;          ///< carried flat: by statics; with more than three grips those of a rigid piece on equal springs
    friend bool operator==(const GripLoad&, const GripLoad&) = default;
};
/// Loads at the grips of a flat piece about its centre of gravity. Negative: the piece tips there. Where all grips lie on
/// one line, as at the two ends of a piece on edge, by the levers along it. Empty where fewer than two grips, or all in one
/// point, or a figure is no number. Sum = mass to 1e-9 where they hold it.
std::vector<GripLoad> gripLoads(const std::vector<Point>& grips, Point centroid, double massKg);

/// What each of `people` bears who take these grips in order along the piece: nobody's hands are further apart
/// than arms reach where that can be had, and the heaviest share is least. With fewer grips than people, one load a grip. Empty for no people or no loads.
std::vector<double> personLoads(const std::vector<GripLoad>& loads, int people);

/// The grips, from 0, that bear more than one person may lift: each of them takes two, or help.
std::vector<std::size_t> gripsOver(const std::vector<GripLoad>& loads, double limitEachKg);

/// Pull in each of two slings over half the load, by the angle between them: 1 / cos(angle / 2). From 120 degrees on it is
/// 2 and more: slings are never spread so far. 0 for 180 degrees and more, or below 0.
double slingFactor(double includedDeg);

}  // namespace yardcast
