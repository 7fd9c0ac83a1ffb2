#pragma once

#include "core/pour/mix_quantities.h"

/// How a run of batches is shared out, so that none is too small to be mixed well.
namespace yardcast {

/// Less than this share of what the mixer takes clings to its drum and gets doses too small to weigh: common practice, no
/// source.
inline constexpr double kLeastBatchShare = 1.0 / 3.0;

/// Batches of one run in the order of mixing: full ones, then the last but one and the last where they differ. In bags of
/// dry mix, or of a recipe's cement; the sum is what was asked for, to rounding.
struct BatchShares {
    int full = 0;                 ///< how many of `fullBags`
    double fullBags = 0.0;
    double lastButOneBags = 0.0;  ///< 0: it is a full one, or there is none
    double lastBags = 0.0;        ///< 0: it is a full one
    bool even = false;            ///< all alike, each less than the mixer takes
    double sparedBags = 0.0;      ///< what the last batch would have been by full ones, where that was too little
    int count() const { return full + (lastButOneBags > 0.0 ? 1 : 0) + (lastBags > 0.0 ? 1 : 0); }
};
/// Where a batch takes a bag or more, bags stay whole: full batches, and the last one takes what is left. Would that be less
/// than `kLeastBatchShare`, the last two share: whole bags in the last but one (half a bag where a batch is only one), so
/// that only the last is weighed. Where a batch takes less than a bag, everything is weighed, and all batches are alike.
BatchShares shareBatches(double bags, double bagsInBatch);

/// Where the batches of a run begin, litres from its start.
class BatchRun {
public:
    /// All alike and without an end.
    explicit BatchRun(double batchL = 1.0) : batchL_(batchL) {}
    /// `litres` in all, shared out or, with `shared` false, full ones and what is left.
    BatchRun(double litres, double batchL, double litresPerBag, bool shared);
    double startL(int batch) const { return batch == last_ ? lastStartL_ : batch * batchL_; }
    /// The batch that a litre of the run belongs to, from 0, and the one whose last litre it is.
    int at(double litres) const;
    int endingAt(double litres) const;
    /// 2.5: half of the third batch.
    double placeOf(double litres) const;
    /// The same of the litre that comes after so many: 3.0 where a batch was just used up.
    double placeFrom(double litres) const;
    bool isShared() const { return shared_; }

private:
    double placeIn(int batch, double litres) const;

    double batchL_ = 1.0;
    int last_ = -1;           ///< the last batch; -1: no end
    double lastStartL_ = 0.0;
    double endL_ = 0.0;
    bool shared_ = false;     ///< other than full ones and what is left
};

}  // namespace yardcast
