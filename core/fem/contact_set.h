#pragma once

#include <cstddef>
#include <vector>

namespace yardcast::fem {

/// Finds which of the springs that only press are lifted, on their flexibility. All springs are in the matrix that the
/// flexibility was taken from; a lifted one gets the force that cancels its spring. These forces p >= 0 minimise p'
/// (1/k - C) p / 2 - q' p, with q the reach of each spring, displacement plus gap, while all are in (positive: pulls).
class ContactSet {
public:
    /// `flexibility`: symmetric, its columns `stride` apart, not copied.
    ContactSet(std::vector<double> stiffness, const double* flexibility, std::size_t stride);

    struct Result {
        int steps = 0;
        bool settled = false;
    };
    /// `cancel` gets the forces, zero for springs that press. The set found last is tried first, so loads that resemble
    /// each other are quick in a row. Not settled where the springs left cannot hold the body (it tips).
    Result solve(const std::vector<double>& reach, std::vector<double>& cancel);
    const std::vector<int>& lifted() const { return lifted_; }

private:
    bool factor(const std::vector<int>& set);
    void solveFactored(std::vector<double>& x) const;
    bool byBlocks(const std::vector<double>& reach, std::vector<double>& cancel, Result& result);
    void oneByOne(const std::vector<double>& reach, std::vector<double>& cancel, Result& result);
    double matrix(int i, int j) const
    {
        return (i == j ? 1 / stiffness_[std::size_t(i)] : 0.0) - columnOf(j)[i];
    }
    const double* columnOf(int j) const { return flexibility_ + std::size_t(j) * flexibilityStride_; }
    /// Adds to the reach of all springs what the forces on those of the set do.
    void addForces(const std::vector<int>& set, const std::vector<double>& forces, std::vector<double>& reach) const;

    std::vector<double> stiffness_;
    const double* flexibility_;
    std::size_t flexibilityStride_;
    std::vector<int> lifted_;
    std::vector<int> factored_;     ///< the set that factor_ belongs to
    std::vector<double> factor_;    ///< columns of a Cholesky factor, reciprocals on the diagonal
    int stride_ = 0;
};

}  // namespace yardcast::fem
