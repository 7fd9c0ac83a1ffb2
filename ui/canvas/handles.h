#pragma once

#include <string>
#include <vector>

#include <QCursor>
#include <QPointF>

#include "core/plan/plan.h"
#include "ui/drawing/projection.h"

namespace yardcast::ui {

class Selection;

/// Sides of a box as bits, in its own frame.
enum BoxSide : int { kLeft = 1, kRight = 2, kFront = 4, kBack = 8 };

/// A spot of what is chosen that can be dragged.
struct Handle {
    enum class What {
        outlineCorner,   ///< `index` of the outline point
        outlineEdge,     ///< `index` of the outline edge
        box,             ///< sides `index` (BoxSide bits) of a part or fixture that is a box, or of a cutout
        diameter,        ///< of a round cutout; sides as for a box
        frontEnd,        ///< 0: from, 1: to
        grip,            ///< `index` of where hands take hold, of the plan's own or the proposed ones
        level,           ///< elevation: kFront is the foot, kBack the top
        turn
    };
    What what = What::turn;
    std::string part;
    std::string cutout;
    std::string fixture;
    int index = 0;
    QPointF at;              ///< drawing mm
    double angleDeg = 0.0;   ///< along the edge it sits on, clockwise as drawn
    bool isCorner = false;
    std::vector<Point> grips{};  ///< of a grip: all of them, own frame

    bool isSame(const Handle& other) const
    {
        return what == other.what && part == other.part && cutout == other.cutout && fixture == other.fixture
            && index == other.index;
    }
};

inline constexpr double kHandlePx = 8.0;
inline constexpr double kHandleReachPx = 9.0;
inline constexpr double kTurnHandlePx = 30.0;  ///< above what is chosen

/// Handles of what is chosen as far as there is room for them on the screen. Several parts have only the one that
/// turns them. `grips`: where hands take the one chosen counter, own frame; empty where the stage is not about that.
std::vector<Handle> handlesOf(const Plan& plan, const Selection& selection, const Projection& projection,
                              double mmPerPixel, const std::vector<Point>& grips = {});
/// A two-way arrow across the edge, or along the diagonal of a corner.
QCursor cursorOf(const Handle& handle);

}  // namespace yardcast::ui
