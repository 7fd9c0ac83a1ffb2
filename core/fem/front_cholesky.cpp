#include "core/fem/front_cholesky.h"

#include <algorithm>
#include <cstring>

#include "core/fem/dense_front.h"

namespace yardcast::fem {

namespace {

constexpr double kLeastPivot = 1e-11;

int paddedToSix(int n) { return (n + 5) / 6 * 6; }

}  // namespace

FrontBlocks::Block FrontBlocks::block(int rowPlace, int columnPlace) const
{
    const int row = local_[rowPlace];
    const int column = local_[columnPlace];
    if (column < pivots_) return {panel_ + std::size_t(6 * column) * std::size_t(rows_) + 6 * row, rows_};
    return {update_ + std::size_t(6 * (column - pivots_)) * std::size_t(below_) + 6 * (row - pivots_), below_};
}

FrontCholesky::FrontCholesky(FrontTree tree, std::vector<int> markedPlaces, int markedFreedom)
    : tree_(std::move(tree)), marked_(std::move(markedPlaces)), markedFreedom_(markedFreedom)
{
    const int fronts = tree_.fronts();
    markBegin_.resize(std::size_t(fronts));
    markEnd_.resize(std::size_t(fronts));
    std::vector<int> firstBelow(tree_.first.begin(), tree_.first.end() - 1);
    for (int f = 0; f < fronts; ++f) {
        const int p = tree_.parent[std::size_t(f)];
        if (p >= 0) firstBelow[std::size_t(p)] = std::min(firstBelow[std::size_t(p)], firstBelow[std::size_t(f)]);
    }
    const auto markAt = [&](int place) { return int(std::ranges::lower_bound(marked_, place) - marked_.begin()); };
    std::size_t panels = 0;
    std::size_t stack = 0;
    std::vector<std::size_t> held(std::size_t(fronts), 0);  // updates of the children of each front
    panelBegin_.reserve(std::size_t(fronts));
    for (int f = 0; f < fronts; ++f) {
        const auto i = std::size_t(f);
        markBegin_[i] = markAt(firstBelow[i]);
        markEnd_[i] = markAt(tree_.first[i + 1]);
        panelBegin_.push_back(panels);
        panels += std::size_t(stride(f)) * std::size_t(6 * tree_.pivots(f));
        tallest_ = std::max(tallest_, stride(f));
        const std::size_t below = std::size_t(stride(f) - 6 * tree_.pivots(f));
        const std::size_t update = below * 6 * tree_.rowsOf(f).size();
        stackSize_ = std::max(stackSize_, stack + update);
        stack += update - held[i];
        if (tree_.parent[i] >= 0) held[std::size_t(tree_.parent[i])] += update;
    }
    panels_ = std::make_unique_for_overwrite<double[]>(panels);
    markStride_ = paddedToSix(marks()) + 6;
}

int FrontCholesky::markCount(int front) const { return markEnd_[std::size_t(front)] - markBegin_[std::size_t(front)]; }

int FrontCholesky::stride(int front) const
{
    return 6 * (tree_.pivots(front) + int(tree_.rowsOf(front).size())) + paddedToSix(markCount(front));
}

bool FrontCholesky::factor(const std::function<void(int, FrontBlocks&)>& assemble, const std::stop_token& stop)
{
    const DenseKernels& dense = denseKernels();
    const std::size_t places = tree_.nodeAt.size();
    std::vector<double> diagonal(6 * places, 0.0);
    std::vector<int> local(places, 0);
    const auto stack = std::make_unique_for_overwrite<double[]>(stackSize_);
    std::size_t top = 0;
    std::vector<int> waiting;  // fronts whose updates lie on the stack
    flexibility_.assign(std::size_t(markStride_) * std::size_t(markStride_), 0.0);
    if (marks() == 0) flexibility_.clear();

    FrontBlocks blocks;
    blocks.local_ = local.data();
    blocks.diagonal_ = diagonal.data();
    for (int f = 0; f < tree_.fronts(); ++f) {
        if (stop.stop_requested()) return false;
        const std::span<const int> rows = tree_.rowsOf(f);
        const int first = tree_.first[std::size_t(f)];
        const int pivots = tree_.pivots(f);
        const int nodes = pivots + int(rows.size());
        const int tall = stride(f);
        const int below = tall - 6 * pivots;
        double* const panel = panels_.get() + panelBegin_[std::size_t(f)];
        const std::size_t updateSize = std::size_t(below) * 6 * rows.size();
        double* const update = stack.get() + top;
        std::memset(panel, 0, std::size_t(tall) * std::size_t(6 * pivots) * sizeof(double));
        std::memset(update, 0, updateSize * sizeof(double));
        for (int i = 0; i < pivots; ++i) local[std::size_t(first + i)] = i;
        for (int i = pivots; i < nodes; ++i) local[std::size_t(rows[std::size_t(i - pivots)])] = i;

        blocks.panel_ = panel;
        blocks.update_ = update;
        blocks.rows_ = tall;
        blocks.pivots_ = pivots;
        blocks.below_ = below;
        assemble(f, blocks);
        const int markFrom = markBegin_[std::size_t(f)];
        const int markTo = markEnd_[std::size_t(f)];
        for (int m = markTo - 1; m >= markFrom && marked_[std::size_t(m)] >= first; --m) {
            const int column = 6 * (marked_[std::size_t(m)] - first) + markedFreedom_;
            panel[std::size_t(column) * std::size_t(tall) + std::size_t(6 * nodes + m - markFrom)] = 1.0;
        }

        // What the children left, from the top of the stack.
        double* from = update;
        while (!waiting.empty() && tree_.parent[std::size_t(waiting.back())] == f) {
            const int child = waiting.back();
            waiting.pop_back();
            const std::span<const int> childRows = tree_.rowsOf(child);
            const int childBelow = stride(child) - 6 * tree_.pivots(child);
            from -= std::size_t(childBelow) * 6 * childRows.size();
            const int childMarks = markCount(child);
            const int childNodes = int(childRows.size());
            for (int b = 0; b < childNodes; ++b) {
                const int column = local[std::size_t(childRows[std::size_t(b)])];
                const bool inPanel = column < pivots;
                double* const to = inPanel ? panel + std::size_t(6 * column) * std::size_t(tall)
                                           : update + std::size_t(6 * (column - pivots)) * std::size_t(below) -
                                                 6 * pivots;
                const int step = inPanel ? tall : below;
                const double* const source = from + std::size_t(6 * b) * std::size_t(childBelow);
                for (int a = b; a < childNodes; ++a) {
                    double* t = to + 6 * local[std::size_t(childRows[std::size_t(a)])];
                    const double* s = source + 6 * a;
                    for (int c = 0; c < 6; ++c, t += step, s += childBelow)
                        for (int r = 0; r < 6; ++r) t[r] += s[r];
                }
                if (childMarks > 0) {
                    double* t = to + 6 * nodes + markBegin_[std::size_t(child)] - markFrom;
                    const double* s = source + 6 * childNodes;
                    for (int c = 0; c < 6; ++c, t += step, s += childBelow)
                        for (int r = 0; r < childMarks; ++r) t[r] += s[r];
                }
            }
        }

        double* const least = diagonal.data() + 6 * first;
        for (int i = 0; i < 6 * pivots; ++i) least[i] *= kLeastPivot;
        const int border = paddedToSix(markTo - markFrom);
        if (!dense.factor({panel, update, tall, 6 * pivots, border}, least)) return false;
        if (border > 0)
            dense.subtractSquare(panel + 6 * nodes, tall, border, 6 * pivots,
                                 flexibility_.data() + std::size_t(markFrom) * (markStride() + 1),
                                 markStride_);
        if (from != update) std::memmove(from, update, updateSize * sizeof(double));
        top = std::size_t(from - stack.get()) + updateSize;
        waiting.push_back(f);
    }
    for (std::size_t j = 0; j < marked_.size(); ++j)
        for (std::size_t i = j; i < marked_.size(); ++i) {
            double& lower = flexibility_[j * markStride() + i];
            lower = -lower;
            flexibility_[i * markStride() + j] = lower;
        }
    return true;
}

void FrontCholesky::forward(double* x, double* atMarks, int loads) const
{
    const SolveKernels& dense = denseKernels().solving(loads);
    const auto width = std::size_t(loads);
    std::vector<double> below(std::size_t(tallest_) * width);
    for (int f = 0; f < tree_.fronts(); ++f) {
        const std::span<const int> rows = tree_.rowsOf(f);
        const int columns = 6 * tree_.pivots(f);
        double* const y = x + 6 * std::size_t(tree_.first[std::size_t(f)]) * width;
        // Loads on a few places reach few fronts.
        if (std::all_of(y, y + std::size_t(columns) * width, [](double value) { return value == 0.0; })) continue;
        const int markFrom = markBegin_[std::size_t(f)];
        const int border = atMarks ? paddedToSix(markCount(f)) : 0;
        const int count = 6 * int(rows.size()) + border;
        const double* const panel = panels_.get() + panelBegin_[std::size_t(f)];
        dense.forward(panel, stride(f), columns, count, y, below.data());
        const double* from = below.data();
        for (const int place : rows) {
            double* const to = x + 6 * std::size_t(place) * width;
            for (std::size_t i = 0; i < 6 * width; ++i) to[i] += from[i];
            from += 6 * width;
        }
        if (border > 0) {
            double* const to = atMarks + std::size_t(markFrom) * width;
            const std::size_t own = std::size_t(markCount(f)) * width;
            for (std::size_t i = 0; i < own; ++i) to[i] -= from[i];
        }
    }
}

void FrontCholesky::backward(double* x, const double* forces, int loads) const
{
    const SolveKernels& dense = denseKernels().solving(loads);
    const auto width = std::size_t(loads);
    std::vector<double> below(std::size_t(tallest_) * width);
    for (int f = tree_.fronts() - 1; f >= 0; --f) {
        const std::span<const int> rows = tree_.rowsOf(f);
        const int columns = 6 * tree_.pivots(f);
        double* to = below.data();
        for (const int place : rows) {
            std::copy_n(x + 6 * std::size_t(place) * width, 6 * width, to);
            to += 6 * width;
        }
        int border = 0;
        if (forces && markCount(f) > 0) {
            border = paddedToSix(markCount(f));
            const double* const from = forces + std::size_t(markBegin_[std::size_t(f)]) * width;
            const std::size_t own = std::size_t(markCount(f)) * width;
            for (std::size_t i = 0; i < own; ++i) to[i] = -from[i];
            std::fill(to + own, to + std::size_t(border) * width, 0.0);
        }
        const double* const panel = panels_.get() + panelBegin_[std::size_t(f)];
        dense.backward(panel, stride(f), columns, 6 * int(rows.size()) + border,
                       x + 6 * std::size_t(tree_.first[std::size_t(f)]) * width, below.data());
    }
}

}  // namespace yardcast::fem
