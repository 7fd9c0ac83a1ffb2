#pragma once

#include <optional>
#include <string>
#include <vector>

#include "ui/drawing/dimension_painter.h"

/// Inner seam of the sets of dimensions: for the screen (dimension_sets.cpp) and for sheets (sheet_dimensions.cpp).
namespace yardcast::ui {

/// Rows of dimensions on paper, mm of paper from what is measured.
inline constexpr double kPaperFirstRow = 8.0;
inline constexpr double kPaperRow = 7.5;

/// Collects dimensions of one part in its own frame, seen from above.
class OwnFrame {
public:
    OwnFrame(const Part& part, const Projection& projection, std::vector<Dimension>& into)
        : part_(part), projection_(projection), into_(into)
    {
    }

    /// From a to b; the line lies to the right of a->b in the own frame when the offset is negative. Nothing where a
    /// is b.
    void add(Point a, Point b, double offsetUnits, DimensionTarget::What what, int index = -1,
             const std::string& cutout = {}, double offsetMm = 0.0);

private:
    const Part& part_;
    const Projection& projection_;
    std::vector<Dimension>& into_;
};

/// Where a line from `from` along `direction` first meets the outline.
std::optional<Point> meet(const Ring& outline, Point from, Point direction);
/// Half sizes of a cutout's box along the counter's own axes.
struct Reach {
    double halfX = 0.0;
    double halfY = 0.0;
};
Reach reachOf(const Cutout& cutout);

struct Interval {
    double from = 0.0;
    double to = 0.0;
    std::string part;
};
/// Intervals side by side in one row as long as they do not overlap; else the next row. Equal ones are said once.
std::vector<std::vector<Interval>> rowsOf(std::vector<Interval> intervals);

std::vector<Dimension> dimensionsAbove(const Part& part, const Projection& projection, double offset);
std::vector<Dimension> dimensionsInFront(const Plan& plan, const Part& part, const Projection& projection,
                                         double offset);

}  // namespace yardcast::ui
