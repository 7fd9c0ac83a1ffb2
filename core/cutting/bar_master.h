#pragma once

#include <vector>

#include "core/cutting/bar_kinds.h"

/// The linear program over known patterns: least price for the demand, with the bars of each stock between limits.
namespace yardcast::bars {

/// Revised simplex with a dense inverse of the basis, in doubles. Its duals are made whole numbers before anything is
/// concluded from them, so rounding here costs steps but no truth.
class BarMaster {
public:
    /// `demand` one a kind of piece; `least` and `most` bars one a stock (most kNoLimit: none).
    BarMaster(const BarKinds& kinds, const std::vector<Units>& demand, const std::vector<Units>& least,
              const std::vector<Units>& most);

    void add(const Pattern& pattern);
    /// To the optimum over the patterns so far. False where it gave up after too many exchanges or steps.
    bool solve(long long mostSteps);

    double objective() const;               ///< in shares of dearest()
    double pieceDual(int piece) const { return duals_[static_cast<std::size_t>(piece)]; }
    double stockDual(int stock) const;      ///< of both limits together
    std::vector<double> amounts() const;    ///< one a pattern, in the order they were added
    int patterns() const { return static_cast<int>(columns_.size()); }
    const Pattern& pattern(int index) const { return columns_[static_cast<std::size_t>(index)].pattern; }
    /// The price that is 1 here.
    double dearest() const { return dearest_; }
    long long steps() const { return steps_; }

private:
    struct Entry {
        int row = 0;
        double value = 0.0;
    };
    struct Column {
        Pattern pattern;
        std::vector<Entry> entries;
        double cost = 0.0;
    };
    /// What stands in a row of the basis: a pattern, or (below 0) a slack or a stand-in of row -1 - index.
    struct Basic {
        enum class Kind { Pattern, Slack, StandIn } kind = Kind::StandIn;
        int index = 0;
    };
    double rowSign(int row) const;          ///< of the slack in a row: +1 below a limit, -1 above a demand
    double costOf(const Basic& basic) const;
    void entriesOf(const Basic& basic, std::vector<Entry>& out) const;
    void price();
    bool chooseEntering(bool careful, Basic& entering, double& gain) const;
    bool exchange(const Basic& entering, double gain);
    void refresh();

    const BarKinds& kinds_;
    int rows_ = 0;
    double dearest_ = 1.0;
    std::vector<double> right_;
    std::vector<int> leastRow_;             ///< one a stock; -1: none
    std::vector<int> mostRow_;
    std::vector<bool> isMost_;              ///< one a row
    std::vector<Column> columns_;
    std::vector<Basic> basis_;
    std::vector<double> inverse_;           ///< row by row
    std::vector<double> level_;             ///< of what stands in each row
    std::vector<double> duals_;
    std::vector<std::size_t> filled_;       ///< columns of the row that was exchanged
    std::vector<bool> slackBasic_;
    std::vector<bool> columnBasic_;
    int exchanges_ = 0;
    mutable std::size_t from_ = 0;          ///< where the look round the patterns goes on
    mutable long long steps_ = 0;
};

}  // namespace yardcast::bars
