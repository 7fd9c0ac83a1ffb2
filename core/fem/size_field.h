#pragma once

#include <vector>

#include "core/geometry/region.h"

namespace yardcast::fem {

/// How long edges should be at each place: `sizeMm`, less near sources, from each of which it grows by `growth` a mm.
class SizeField {
public:
    SizeField(Box bounds, double sizeMm, double growth);

    /// Sizes below `leastMm` are raised to it. A source that changes little is passed over: give the finest first.
    void add(Point at, double sizeMm);
    double at(Point p) const;
    double sizeMm() const { return sizeMm_; }
    double growth() const { return growth_; }

private:
    struct Source {
        Point at;
        double sizeMm = 0.0;
        double leastMm = 0.0;  ///< what it may make of the size in the cell that it is kept in
    };
    struct Cell {
        std::vector<Source> sources;  ///< by their `leastMm`
        double greatestMm = 0.0;  ///< no place in the cell is to have more, by the sources that are there
    };
    int column(double x) const;
    int row(double y) const;

    Box bounds_;
    double sizeMm_;
    double growth_;
    double pitchMm_ = 1.0;
    int columns_ = 1;
    int rows_ = 1;
    std::vector<Cell> cells_;
};

}  // namespace yardcast::fem
