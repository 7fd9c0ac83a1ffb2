#pragma once

#include <algorithm>
#include <atomic>
#include <cstddef>
#include <future>
#include <stop_token>
#include <string>
#include <thread>
#include <unordered_map>
#include <vector>

#include "core/castings/casting.h"

/// What the assessors of strength and of readiness have in common: work by casting, and what is kept of it.
namespace yardcast {

/// Calls `solve(i)` once for each of `indices`, by two threads where the machine has them; no further ones once `stop` was
/// asked. Both threads have ended when it returns, also by a throw.
template <class Solve>
void shareOut(const std::vector<std::size_t>& indices, const std::stop_token& stop, const Solve& solve)
{
    std::atomic<std::size_t> next = 0;
    const auto work = [&] {
        for (std::size_t i = next++; i < indices.size() && !stop.stop_requested(); i = next++) solve(indices[i]);
    };
    if (indices.size() > 1 && std::thread::hardware_concurrency() > 1) {
        // Waits for its end when it goes out of scope, also when this thread's share throws.
        std::future<void> other = std::async(std::launch::async, work);
        work();
        other.get();
    } else {
        work();
    }
}

/// Forgets castings that are not among these, once there are many: what is no longer in the plan may come back by undo,
/// but not from another plan.
template <class Kept>
void forgetOthers(std::unordered_map<std::string, Kept>& memo, const std::vector<CastingPtr>& castings)
{
    if (memo.size() <= 2 * castings.size() + 10) return;
    std::erase_if(memo, [&](const auto& entry) {
        return std::ranges::none_of(castings, [&](const CastingPtr& one) { return one->id == entry.first; });
    });
}

}  // namespace yardcast
