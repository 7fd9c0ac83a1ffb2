#pragma once

#include <vector>

#include <QString>

#include "core/mould/mould.h"

namespace yardcast::ui {

/// One thing to do at the mould.
struct MouldStep {
    QString numbers;                        ///< of its parts in few signs: "4", "7–9"; empty without any
    QString text;
    std::vector<const MouldPart*> parts;    ///< of the mould that was given
};

/// All that is done until the concrete comes, in its order: parts as they go in, then silicone, wax, release agent, steel and
/// the questions, then what is laid in while it is poured. `hasSteel`: some lies in the casting.
std::vector<MouldStep> mouldSteps(const Mould& mould, bool hasSteel);

}  // namespace yardcast::ui
