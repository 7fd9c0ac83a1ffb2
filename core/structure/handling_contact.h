#pragma once

#include <vector>

namespace yardcast {

/// Hands, edges and battens that press on a body that nothing else holds. The body bends (flexibility) and moves as a
/// whole, and what presses gives way; nothing pulls. Forces N, lengths mm, forces positive along each place's push.
struct PressingPlaces {
    int count = 0;
    int modes = 0;                    ///< rigid movements that the places have to hold
    std::vector<double> flexibility;  ///< count x count: movement along push i by a unit force at j, body held anyhow
    std::vector<double> giveMmN;      ///< of the place itself, above zero
    std::vector<double> gapMm;        ///< how far off it starts
    std::vector<double> movedMm;      ///< movement along push i by the load alone, body held the same way
    std::vector<double> lever;        ///< count x modes: movement along push i in each rigid movement
    std::vector<double> load;         ///< modes: work of the load in each rigid movement
};

struct PressingAnswer {
    std::vector<double> forceN;  ///< one a place, >= 0
    std::vector<char> touches;   ///< one a place: it holds the body, though perhaps with no force
    std::vector<double> rigid;   ///< one a mode
    int steps = 0;
    bool holds = false;          ///< false: the body tips or slides off, or no set of places settled
};

/// Which places press, and how much: an active set on the flexibility. Exact equilibrium with the load in every mode.
PressingAnswer press(const PressingPlaces& places);

}  // namespace yardcast
