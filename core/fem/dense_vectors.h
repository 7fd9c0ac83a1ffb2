#pragma once

#include <cstring>

/// The same few loops are compiled twice on x86-64: for every such machine, and for those with wide vectors and fused
/// multiplication. Everything is inlined into those two.
#define YARDCAST_INLINE [[gnu::always_inline]] inline

namespace yardcast::fem {

using Two = double __attribute__((vector_size(16)));
using Four = double __attribute__((vector_size(32)));

// NOLINTBEGIN: vectors are never passed by value, so that the two compilations need not agree on how
#define YARDCAST_LOAD(V, name, from) \
    V name;                          \
    std::memcpy(&name, from, sizeof(V))

template <class V>
YARDCAST_INLINE void subtractAt(double* to, const V& what)
{
    V old;
    std::memcpy(&old, to, sizeof(V));
    old -= what;
    std::memcpy(to, &old, sizeof(V));
}

/// The same, or as from nothing.
template <bool fresh, class V>
YARDCAST_INLINE void subtractTo(double* to, const V& what)
{
    if constexpr (fresh) {
        const V negative = -what;
        std::memcpy(to, &negative, sizeof(V));
    } else {
        subtractAt(to, what);
    }
}

// NOLINTEND

}  // namespace yardcast::fem
