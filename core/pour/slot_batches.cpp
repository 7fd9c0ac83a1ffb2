#include <algorithm>

#include "core/pour/pour_schedule.h"

namespace yardcast {

namespace {

/// Shares of a layer below this are rounding.
constexpr double kNoise = 1e-9;

}  // namespace

SlotBatches slotBatches(const PourTask& task, double startL, const BatchRun& run, double layingMin)
{
    SlotBatches slot;
    const int first = slot.first = run.at(startL);
    const int last = slot.last = std::max(first, run.endingAt(startL + task.litres));
    slot.covered.assign(static_cast<std::size_t>(last - first), 1);
    slot.layMin.assign(static_cast<std::size_t>(last - first) + 1, 0.0);
    double lowL = startL;
    const PourLayer* below = nullptr;
    double belowL = 0.0;
    double toLayMin = 0.0;
    for (const PourLayer& layer : task.layers) {
        if (!(layer.litres > 0.0)) {
            if (below != nullptr) toLayMin += layingMin;
            continue;
        }
        if (below != nullptr) {
            const int under = std::clamp(run.endingAt(lowL), first, last);
            slot.layMin[static_cast<std::size_t>(under - first)] += toLayMin;
            toLayMin = 0.0;
            // Where one of the two passes on to its next batch, as shares of both layers.
            std::vector<double> shares{0.0, 1.0};
            const auto cut = [&](double fromL, double litres) {
                for (int k = run.at(fromL) + 1; k <= last && run.startL(k) < fromL + litres; ++k) {
                    shares.push_back((run.startL(k) - fromL) / litres);
                }
            };
            cut(belowL, below->litres);
            cut(lowL, layer.litres);
            std::sort(shares.begin(), shares.end());
            for (std::size_t i = 0; i + 1 < shares.size(); ++i) {
                if (shares[i + 1] - shares[i] < kNoise) continue;
                const double middle = (shares[i] + shares[i + 1]) / 2;
                const int placed = run.at(belowL + middle * below->litres);
                const int covering = run.at(lowL + middle * layer.litres);
                if (placed < first || placed >= last) continue;
                int& after = slot.covered[static_cast<std::size_t>(placed - first)];
                after = std::max(after, std::min(covering, last) - placed);
            }
        }
        below = &layer;
        belowL = lowL;
        lowL += layer.litres;
    }
    return slot;
}

std::vector<double> waitsMin(const SlotBatches& slot, double batchMinutes)
{
    std::vector<double> waits;
    for (std::size_t i = 0; i < slot.layMin.size(); ++i) {
        if (i == slot.covered.size()) {
            waits.push_back(slot.layMin[i]);
            continue;
        }
        double wait = slot.covered[i] * batchMinutes;
        for (std::size_t k = i; k < i + static_cast<std::size_t>(slot.covered[i]); ++k) wait += slot.layMin[k];
        waits.push_back(wait);
    }
    return waits;
}

double longestGapMin(const PourTask& task, const PourRules& rules)
{
    const std::vector<double> waits =
        waitsMin(slotBatches(task, 0.0, BatchRun(task.batchL), rules.layingMin), rules.batchMinutes);
    return *std::max_element(waits.begin(), waits.end());
}

}  // namespace yardcast
