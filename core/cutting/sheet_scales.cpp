#include "core/cutting/sheet_scales.h"

#include <algorithm>
#include <optional>

#include "core/cutting/sheet_sums.h"

namespace yardcast::sheets {

namespace {

constexpr std::size_t kMostSums = 1'500;
constexpr double kMostRowSteps = 2e6;
constexpr Um kCells = 1'024;
constexpr std::size_t kMostWholes = 3;
constexpr int kMostShares = 12;

/// A side's length as one measure sees it, made for sheets of the side `whole`: what fits into it counts for 1 at most.
struct Scale {
    enum class Kind { length, least, multiples, shares } kind = Kind::length;
    Um by = 0;
    Um whole = 0;

    double of(Um length) const
    {
        const double whole1 = static_cast<double>(whole);
        switch (kind) {
        case Kind::length: return static_cast<double>(length) / whole1;
        case Kind::least: return length < by ? 0.0 : length > whole - by ? 1.0 : static_cast<double>(length) / whole1;
        case Kind::multiples: return ofMultiples(length);
        default: return ofShares(length);
        }
    }

private:
    double ofMultiples(Um length) const
    {
        const Um all = whole / by;
        const Um under = 2 * (length / by);
        const Um over = 2 * (all - std::max<Um>(0, whole - length) / by);
        const Um counted = 2 * length > whole ? over : 2 * length == whole ? all : under;
        return static_cast<double>(counted) / static_cast<double>(2 * all);
    }
    double ofShares(Um length) const
    {
        const Um parts = (by + 1) * length;
        if (parts % whole == 0) {
            return static_cast<double>(length) / static_cast<double>(whole);
        }
        return static_cast<double>(parts / whole) / static_cast<double>(by);
    }
};

std::vector<Um> distinct(std::vector<Um> lengths)
{
    std::sort(lengths.begin(), lengths.end());
    lengths.erase(std::unique(lengths.begin(), lengths.end()), lengths.end());
    return lengths;
}

/// The most that the lengths in a row of each sum add up to under a scale, any number of each.
std::vector<double> mostInRow(const std::vector<Um>& sums, const std::vector<Um>& lengths, const Scale& scale)
{
    std::vector<double> most(sums.size(), 0.0);
    for (const Um length : lengths) {
        const double value = scale.of(length);
        if (value <= 0.0) {
            continue;
        }
        std::size_t rest = 0;
        const auto first = std::lower_bound(sums.begin(), sums.end(), length) - sums.begin();
        for (std::size_t i = static_cast<std::size_t>(first); i < sums.size(); ++i) {
            while (rest + 1 < sums.size() && sums[rest + 1] <= sums[i] - length) {
                ++rest;
            }
            most[i] = std::max({most[i], most[i - 1], most[rest] + value});
        }
    }
    for (std::size_t i = 1; i < sums.size(); ++i) {
        most[i] = std::max(most[i], most[i - 1]);
    }
    return most;
}

/// The same for lengths rounded down to cells of which the longest side has kCells: never less.
class MostInCells {
public:
    MostInCells(Um longest, const std::vector<Um>& lengths, const Scale& scale)
        : longest_(longest), most_(static_cast<std::size_t>(kCells) + 1, 0.0)
    {
        for (const Um length : lengths) {
            const double value = scale.of(length);
            const Um cells = length * kCells / longest;
            if (value <= 0.0 || length > longest) {
                continue;
            }
            largest_ = std::max(largest_, value);
            if (cells == 0) {
                shortest_ = shortest_ > 0 ? shortest_ : length;
                continue;
            }
            for (Um i = cells; i <= kCells; ++i) {
                double& here = most_[static_cast<std::size_t>(i)];
                here = std::max(here, most_[static_cast<std::size_t>(i - cells)] + value);
            }
        }
        for (std::size_t i = 1; i < most_.size(); ++i) {
            most_[i] = std::max(most_[i], most_[i - 1]);
        }
    }
    double in(Um whole) const
    {
        // Where one is shorter than a cell: no piece that counts is shorter, and each counts for no more than the largest.
        return shortest_ > 0 ? static_cast<double>(whole / shortest_) * largest_
                             : most_[static_cast<std::size_t>(whole * kCells / longest_)];
    }

private:
    Um longest_;
    Um shortest_ = 0;
    double largest_ = 0.0;
    std::vector<double> most_;
};

void addSome(const std::vector<Scale>& from, std::size_t most, std::vector<Scale>& out)
{
    const std::size_t picked = std::min(most, from.size());
    for (std::size_t i = 0; i < picked; ++i) {
        out.push_back(from[i * from.size() / picked]);
    }
}

std::vector<Scale> scalesOf(const std::vector<Um>& lengths, const std::vector<Um>& wholes, std::size_t mostScales)
{
    std::vector<Scale> out{{Scale::Kind::length, 0, wholes.back()}};
    std::vector<Scale> least;
    std::vector<Scale> multiples;
    for (std::size_t i = 0; i < std::min(wholes.size(), kMostWholes); ++i) {
        const Um whole = wholes[wholes.size() - 1 - i];
        // Of two pieces longer than half a sheet's side only one finds room there, of three longer than a third two.
        out.push_back({Scale::Kind::multiples, whole / 2, whole});
        out.push_back({Scale::Kind::multiples, whole / 3 + 1, whole});
        out.push_back({Scale::Kind::least, whole / 2, whole});
        for (const Um length : lengths) {
            if (2 * length <= whole) {
                least.push_back({Scale::Kind::least, length, whole});
                multiples.push_back({Scale::Kind::multiples, length, whole});
            }
        }
    }
    for (std::size_t i = 0; i < std::min(wholes.size(), kMostWholes); ++i) {
        for (int shares = 2; shares <= kMostShares && 4 * out.size() < mostScales; ++shares) {
            out.push_back({Scale::Kind::shares, shares, wholes[wholes.size() - 1 - i]});
        }
    }
    const std::size_t room = mostScales - std::min(mostScales, out.size());
    addSome(least, room / 2, out);
    addSome(multiples, room / 2, out);
    return out;
}

}  // namespace

SideScales sideScales(const std::vector<Item>& items, const std::vector<Bin>& bins, bool x, std::size_t mostScales)
{
    std::vector<RowLength> rows;
    std::vector<Um> lengths;
    for (const Item& item : items) {
        rows.push_back({x ? item.w : item.h, item.count});
        if (item.turn) {
            rows.push_back({x ? item.h : item.w, item.count});
        }
    }
    for (const RowLength& row : rows) {
        lengths.push_back(row.length);
    }
    lengths = distinct(std::move(lengths));
    std::vector<Um> wholes;
    for (const Bin& bin : bins) {
        wholes.push_back(x ? bin.w : bin.h);
    }
    wholes = distinct(std::move(wholes));
    const std::vector<Scale> scales = scalesOf(lengths, wholes, std::max<std::size_t>(mostScales, 1));
    const double perSum = static_cast<double>(lengths.size() * scales.size());
    const std::size_t mostSums = std::min(kMostSums, static_cast<std::size_t>(kMostRowSteps / perSum));
    const std::vector<Um> sums = sumsUpTo(rows, wholes.back(), mostSums);
    SideScales out;
    for (const Scale& scale : scales) {
        std::vector<double> asIs;
        std::vector<double> turned;
        for (const Item& item : items) {
            asIs.push_back(scale.of(x ? item.w : item.h));
            turned.push_back(scale.of(x ? item.h : item.w));
        }
        const std::vector<double> most = mostInRow(sums, lengths, scale);
        std::optional<MostInCells> cells;
        std::vector<double> held;
        for (const Bin& bin : bins) {
            const Um whole = x ? bin.w : bin.h;
            double holds = 0.0;
            if (!most.empty()) {
                holds = most[static_cast<std::size_t>(placeOf(sums, whole))];
            } else if (scale.kind == Scale::Kind::length) {
                holds = scale.of(whole);
            } else {
                if (whole != scale.whole && !cells) {
                    cells.emplace(wholes.back(), lengths, scale);
                }
                const double inCells = whole == scale.whole ? 1.0 : cells->in(whole);
                holds = whole <= scale.whole ? std::min(1.0, inCells) : inCells;
            }
            held.push_back(holds);
        }
        out.asIs.push_back(std::move(asIs));
        out.turned.push_back(std::move(turned));
        out.held.push_back(std::move(held));
    }
    return out;
}

}  // namespace yardcast::sheets
