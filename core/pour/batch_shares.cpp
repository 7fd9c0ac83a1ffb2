#include "core/pour/batch_shares.h"

#include <algorithm>
#include <cmath>

namespace yardcast {

namespace {

/// Shares of a batch below this are rounding.
constexpr double kNoise = 1e-9;
constexpr double kMostBatchesInRun = 1e9;

}  // namespace

BatchShares shareBatches(double bags, double bagsInBatch)
{
    BatchShares shares;
    const double goes = bags / bagsInBatch;
    if (!(goes > 0.0 && goes <= kMostBatchesInRun)) return shares;
    const int count = std::max(1, static_cast<int>(std::ceil(goes - kNoise)));
    const double rest = bags - (count - 1) * bagsInBatch;
    shares.fullBags = bagsInBatch;
    if (rest > (1 - kNoise) * bagsInBatch) {
        shares.full = count;
        shares.fullBags = bags / count;
        return shares;
    }
    shares.full = count - 1;
    if (count == 1 || !(rest < kLeastBatchShare * bagsInBatch)) {
        if (bagsInBatch >= 1.0 || count == 1) {
            shares.lastBags = rest;
            return shares;
        }
    } else {
        shares.sparedBags = rest;
    }
    if (bagsInBatch < 1.0) {
        shares.even = true;
        shares.full = count;
        shares.fullBags = bags / count;
        return shares;
    }
    const double both = bagsInBatch + rest;
    const double step = bagsInBatch >= 2.0 ? 1.0 : 0.5;
    shares.full = count - 2;
    shares.lastButOneBags = std::max(step, std::ceil(both / 2 / step - kNoise) * step);
    // One step up or down: the more even of both.
    const double lower = shares.lastButOneBags - step;
    if (lower > 0.0 && std::abs(both - 2 * lower) < std::abs(both - 2 * shares.lastButOneBags) - kNoise)
        shares.lastButOneBags = lower;
    shares.lastBags = both - shares.lastButOneBags;
    return shares;
}

BatchRun::BatchRun(double litres, double batchL, double litresPerBag, bool shared) : batchL_(batchL), endL_(litres)
{
    const double goes = litres / batchL;
    if (!(goes > 0.0 && goes <= kMostBatchesInRun && litresPerBag > 0.0)) return;
    last_ = std::max(1, static_cast<int>(std::ceil(goes - kNoise))) - 1;
    lastStartL_ = last_ * batchL_;
    if (!shared) return;
    const BatchShares shares = shareBatches(litres / litresPerBag, batchL / litresPerBag);
    if (shares.even) {
        shared_ = true;
        batchL_ = litres / shares.count();
        lastStartL_ = last_ * batchL_;
    } else if (shares.lastButOneBags > 0.0) {
        shared_ = true;
        lastStartL_ = (last_ - 1) * batchL_ + shares.lastButOneBags * litresPerBag;
    }
}

int BatchRun::at(double litres) const
{
    const int batch = static_cast<int>(std::floor(litres / batchL_ + kNoise));
    if (last_ < 0) return batch;
    return litres >= lastStartL_ - kNoise * batchL_ ? last_ : std::min(batch, last_ - 1);
}

int BatchRun::endingAt(double litres) const
{
    const int batch = static_cast<int>(std::ceil(litres / batchL_ - kNoise)) - 1;
    if (last_ < 0) return batch;
    return litres > lastStartL_ + kNoise * batchL_ ? last_ : std::min(batch, last_ - 1);
}

double BatchRun::placeOf(double litres) const { return placeIn(std::max(0, endingAt(litres)), litres); }

double BatchRun::placeFrom(double litres) const { return placeIn(at(litres), litres); }

double BatchRun::placeIn(int batch, double litres) const
{
    const double from = startL(batch);
    const double to = batch == last_ ? endL_ : startL(batch + 1);
    return to > from ? batch + std::clamp((litres - from) / (to - from), 0.0, 1.0) : batch;
}

}  // namespace yardcast
