#include "core/fem/size_field.h"

#include <algorithm>
#include <cmath>

namespace yardcast::fem {

namespace {

/// Sources that seem to be of no use by less than this are kept: rounding must not choose.
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
            // The cells at the rim of the grid take all that lies beyond it: nothing is known of their size.
            const bool atRim = i == 0 || j == 0 || i == columns_ - 1 || j == rows_ - 1;
            if (!atRim) {
                const Point low = bounds_.low + Point{double(i), double(j)} * pitchMm_;
                const Point high = low + Point{pitchMm_, pitchMm_};
                const double nearX = std::max({low.x - p.x, p.x - high.x, 0.0});
                const double nearY = std::max({low.y - p.y, p.y - high.y, 0.0});
                if (sizeMm + growth_ * std::hypot(nearX, nearY) > cell.greatestMm + kSafeMm) continue;
                const double farX = std::max(p.x - low.x, high.x - p.x);
                const double farY = std::max(p.y - low.y, high.y - p.y);
                cell.greatestMm = std::min(cell.greatestMm, sizeMm + growth_ * std::hypot(farX, farY));
            }
            cell.sources.push_back({p, sizeMm});
        }
}

double SizeField::at(Point p) const
{
    double size = sizeMm_;
    const Cell& cell = cells_[std::size_t(row(p.y)) * std::size_t(columns_) + std::size_t(column(p.x))];
    for (const Source& source : cell.sources) {
        const double reach = size - source.sizeMm;
        const Point away = p - source.at;
        const double squared = dot(away, away) * growth_ * growth_;
        if (reach > 0.0 && squared < reach * reach) size = source.sizeMm + std::sqrt(squared);
    }
    return size;
}

}  // namespace yardcast::fem
