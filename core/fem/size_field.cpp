#include "core/fem/size_field.h"

#include <algorithm>
#include <cmath>

namespace yardcast::fem {

namespace {

/// So much less than what is computed a source may make of the size in a cell: rounding must not choose.
constexpr double kSafeMm = 1e-6;

}  // namespace

SizeField::SizeField(Box bounds, double sizeMm, double growth) : bounds_(bounds), sizeMm_(sizeMm), growth_(growth)
{
    const double longest = std::max({bounds.width(), bounds.height(), 1.0});
    pitchMm_ = std::max(sizeMm, longest / 128.0);
    columns_ = int(bounds.width() / pitchMm_) + 1;
    rows_ = int(bounds.height() / pitchMm_) + 1;
    cells_.resize(std::size_t(columns_) * std::size_t(rows_), Cell{{}, sizeMm});
}

int SizeField::column(double x) const
{
    return int(std::clamp((x - bounds_.low.x) / pitchMm_, 0.0, columns_ - 1.0));
}

int SizeField::row(double y) const
{
    return int(std::clamp((y - bounds_.low.y) / pitchMm_, 0.0, rows_ - 1.0));
}

void SizeField::add(Point p, double sizeMm)
{
    if (!(sizeMm < 0.98 * at(p))) return;
    const double reach = (sizeMm_ - sizeMm) / growth_;
    for (int j = row(p.y - reach); j <= row(p.y + reach); ++j)
        for (int i = column(p.x - reach); i <= column(p.x + reach); ++i) {
            Cell& cell = cells_[std::size_t(j) * std::size_t(columns_) + std::size_t(i)];
            // The cells at the rim of the grid take all that lies beyond it.
            const double left = i == 0 ? -HUGE_VAL : bounds_.low.x + i * pitchMm_;
            const double right = i == columns_ - 1 ? HUGE_VAL : bounds_.low.x + (i + 1) * pitchMm_;
            const double below = j == 0 ? -HUGE_VAL : bounds_.low.y + j * pitchMm_;
            const double above = j == rows_ - 1 ? HUGE_VAL : bounds_.low.y + (j + 1) * pitchMm_;
            const double nearX = std::max({left - p.x, p.x - right, 0.0});
            const double nearY = std::max({below - p.y, p.y - above, 0.0});
            const double leastMm = sizeMm + growth_ * std::sqrt(nearX * nearX + nearY * nearY) - kSafeMm;
            if (leastMm > cell.greatestMm) continue;
            const double farX = std::max(p.x - left, right - p.x);
            const double farY = std::max(p.y - below, above - p.y);
            cell.greatestMm = std::min(cell.greatestMm, sizeMm + growth_ * std::sqrt(farX * farX + farY * farY));
            const auto after = std::ranges::upper_bound(cell.sources, leastMm, {}, &Source::leastMm);
            cell.sources.insert(after, {p, sizeMm, leastMm});
        }
}

double SizeField::at(Point p) const
{
    double size = sizeMm_;
    const Cell& cell = cells_[std::size_t(row(p.y)) * std::size_t(columns_) + std::size_t(column(p.x))];
    for (const Source& source : cell.sources) {
        if (source.leastMm > size) break;
        const double reach = size - source.sizeMm;
        const Point away = p - source.at;
        const double squared = dot(away, away) * growth_ * growth_;
        if (reach > 0.0 && squared < reach * reach) size = source.sizeMm + std::sqrt(squared);
    }
    return size;
}

}  // namespace yardcast::fem
