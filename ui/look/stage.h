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

/// Whether its words over the drawing name castings, so that the drawing itself does not (ui/drawing/stage_words.h).
constexpr bool namesCastings(Stage stage)
{
    return stage == Stage::mould || stage == Stage::pour || stage == Stage::lift;
}

inline constexpr Stage kStages[] = {Stage::layOut, Stage::strength, Stage::steel, Stage::mould,
                                   Stage::pour,   Stage::lift,     Stage::buy};

}  // namespace yardcast::ui
