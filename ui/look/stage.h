#pragma once

namespace yardcast::ui {

/// The looks at one plan, in the order of the job. A stage changes what lies over the drawing and which card is
/// open; it never changes the plan.
enum class Stage {
    layOut,    ///< the drawing itself
    strength,  ///< use of the strength, what holds it, how it bends
    steel,     ///< mesh and bars over the drawing
    mould,     ///< numbers, hands and twins of the moulds
    pour,      ///< litres per casting, mixes, batches
    lift,      ///< kg, people, centre of gravity, grips
    buy        ///< shopping list
};

inline constexpr Stage kStages[] = {Stage::layOut, Stage::strength, Stage::steel, Stage::mould,
                                   Stage::pour,   Stage::lift,     Stage::buy};

}  // namespace yardcast::ui
