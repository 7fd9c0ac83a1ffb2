#include "core/fem/size_field.h"

#include <algorithm>
#include <cmath>

namespace yardcast::fem {

SizeField::SizeField(Box bounds, double sizeMm, double growth) : bounds_(bounds), sizeMm_(sizeMm), growth_(growth)
{
    const double longest = std::max({bounds.width(), bounds.height(), 1.0});
    pitchMm_ = std::max(2.0 * sizeMm, longest / 64.0);
    columns_ = int(bounds.width() / pitchMm_) + 1;
    rows_ = int(bounds.height() / pitchMm_) + 1;
    cells_.resize(std::size_t(columns_) * std::size_t(rows_));
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
        for (int i = column(p.x - reach); i <= column(p.x + reach); ++i)
            cells_[std::size_t(j) * std::size_t(columns_) + std::size_t(i)].push_back({p, sizeMm});
}

double SizeField::at(Point p) const
{
    double size = sizeMm_;
    for (const Source& source : cells_[std::size_t(row(p.y)) * std::size_t(columns_) + std::size_t(column(p.x))]) {
        const double reach = size - source.sizeMm;
        const Point away = p - source.at;
        const double squared = dot(away, away) * growth_ * growth_;
        if (reach > 0.0 && squared < reach * reach) size = source.sizeMm + std::sqrt(squared);
    }
    return size;
}

}  // namespace yardcast::fem
