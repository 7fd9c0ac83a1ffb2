#include "core/purchase/mould_reuse.h"

#include <algorithm>

namespace yardcast {

std::optional<MouldReuse> mouldReuse(const MouldEstimate& mould, double boardNeedM2, std::int64_t wantedMinor,
                                     const std::function<std::int64_t(double)>& boardPrice)
{
    std::vector<const MouldNeed*> bySize;
    for (const MouldNeed& need : mould.castings) bySize.push_back(&need);
    std::stable_sort(bySize.begin(), bySize.end(),
                     [](const MouldNeed* a, const MouldNeed* b) { return a->baseM2 > b->baseM2; });

    const std::int64_t before = boardPrice(boardNeedM2);
    std::optional<MouldReuse> best;
    double needM2 = boardNeedM2;
    for (std::size_t i = 1; i < bySize.size(); ++i) {
        needM2 -= bySize[i]->baseM2 * (1 + kBoardWasteShare);
        const std::int64_t saves = before - boardPrice(std::max(needM2, 0.0));
        if (saves <= 0 || (best && saves <= best->savesMinor)) continue;
        if (best && best->savesMinor >= wantedMinor) break;
        // Kept as the answer where nothing more can be reached; replaced only by one that reaches what is wanted.
        if (!best || saves >= wantedMinor) {
            best = MouldReuse{{}, saves};
            for (std::size_t k = 0; k <= i; ++k) best->castings.push_back(bySize[k]->casting);
        }
    }
    return best;
}

}  // namespace yardcast
