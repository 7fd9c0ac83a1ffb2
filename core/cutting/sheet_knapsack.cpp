#include "core/cutting/sheet_knapsack.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <queue>

#include "core/cutting/sheet_cutting.h"
#include "core/cutting/sheet_sums.h"

namespace yardcast {

namespace {

using sheets::FreeWorth;
using sheets::RowLength;
using sheets::Um;

/// What the sheet and each sort of piece are to the search: sizes enlarged by a saw width.
struct Sort {
    Um w = 0;
    Um h = 0;
    double value = 0.0;
    int most = 0;
    int piece = 0;
};

/// A rectangle built of two others, or one piece.
struct Built {
    Um w = 0;
    Um h = 0;
    double value = 0.0;
    double hope = 0.0;             ///< value and what the rest of the sheet may add
    int low = -1;
    int high = -1;
    bool alongX = false;
    int sort = -1;
    bool turned = false;
    std::vector<int> used;         ///< of each sort
};

/// Best-first search over built rectangles, with what unlimited copies would add outside a rectangle as the bound.
class BestFirst {
public:
    BestFirst(Um w, Um h, const std::vector<Sort>& sorts, bool turn, const FreeWorth& worth)
        : w_(w), h_(h), sorts_(sorts), turn_(turn), worth_(worth)
    {
        fillOutside();
    }

    GuillotineKnapsack run(std::uint64_t places, const std::stop_token& stop)
    {
        for (std::size_t s = 0; s < sorts_.size(); ++s) {
            Built one;
            one.sort = static_cast<int>(s);
            one.value = sorts_[s].value;
            one.used.assign(sorts_.size(), 0);
            one.used[s] = 1;
            one.w = sorts_[s].w;
            one.h = sorts_[s].h;
            keep(one);
            if (turn_ && one.w != one.h) {
                std::swap(one.w, one.h);
                one.turned = true;
                keep(one);
            }
        }
        double bound = best_;
        std::uint64_t tried = 0;
        bool done = true;
        while (!open_.empty()) {
            const Entry top = open_.top();
            if (top.hope <= best_ + slack()) {
                break;
            }
            bound = top.hope;
            if (tried > places || stop.stop_requested() || built_.size() > kMostBuilt) {
                done = false;
                break;
            }
            open_.pop();
            if (built_[static_cast<std::size_t>(top.built)].sort == kDropped) {
                continue;
            }
            closed_.push_back(top.built);
            for (const int other : closed_) {
                ++tried;
                join(top.built, other, true);
                join(top.built, other, false);
            }
        }
        GuillotineKnapsack answer;
        answer.value = best_;
        answer.proven = done;
        answer.bound = done ? best_ : bound;
        if (bestBuilt_ >= 0) {
            lay(bestBuilt_, 0, 0, answer.pieces);
        }
        return answer;
    }

private:
    static constexpr int kDropped = -2;
    static constexpr std::size_t kMostBuilt = 400'000;
    struct Entry {
        double hope = 0.0;
        double value = 0.0;
        int built = 0;
        bool operator<(const Entry& other) const
        {
            if (hope != other.hope) {
                return hope < other.hope;
            }
            return value != other.value ? value < other.value : built > other.built;
        }
    };

    double slack() const { return 1e-9 * std::max(1.0, std::abs(best_)); }

    /// outside_(x, y): the most that the L-shaped rest of the sheet beyond a rectangle of xs[x] by ys[y] may hold.
    void fillOutside()
    {
        const std::vector<Um>& xs = worth_.xs();
        const std::vector<Um>& ys = worth_.ys();
        const int nx = static_cast<int>(xs.size());
        const int ny = static_cast<int>(ys.size());
        outside_.assign(xs.size() * ys.size(), 0.0);
        for (int x = nx - 1; x >= 0; --x) {
            for (int y = ny - 1; y >= 0; --y) {
                const Um restW = w_ - xs[static_cast<std::size_t>(x)];
                const Um restH = h_ - ys[static_cast<std::size_t>(y)];
                double most = 0.0;
                // The next part along x, or along y, may be as large as what is over.
                for (int add = 1; add < nx && xs[static_cast<std::size_t>(add)] <= restW; ++add) {
                    const int to = sheets::placeOf(xs, xs[static_cast<std::size_t>(x)] + xs[static_cast<std::size_t>(add)]);
                    most = std::max(most, outside_[at(to, y)] + worth_.at(add, y));
                }
                for (int add = 1; add < ny && ys[static_cast<std::size_t>(add)] <= restH; ++add) {
                    const int to = sheets::placeOf(ys, ys[static_cast<std::size_t>(y)] + ys[static_cast<std::size_t>(add)]);
                    most = std::max(most, outside_[at(x, to)] + worth_.at(x, add));
                }
                outside_[at(x, y)] = most;
            }
        }
    }
    std::size_t at(int x, int y) const
    {
        return static_cast<std::size_t>(y) * worth_.xs().size() + static_cast<std::size_t>(x);
    }

    void join(int a, int b, bool alongX)
    {
        const Built& low = built_[static_cast<std::size_t>(a)];
        const Built& high = built_[static_cast<std::size_t>(b)];
        Built both;
        both.w = alongX ? low.w + high.w : std::max(low.w, high.w);
        both.h = alongX ? std::max(low.h, high.h) : low.h + high.h;
        if (both.w > w_ || both.h > h_) {
            return;
        }
        both.value = low.value + high.value;
        both.hope = both.value + outsideOf(both.w, both.h);
        if (both.hope <= best_ + slack() && both.value <= best_ + slack()) {
            return;
        }
        both.used = low.used;
        for (std::size_t s = 0; s < both.used.size(); ++s) {
            both.used[s] += high.used[s];
            if (both.used[s] > sorts_[s].most) {
                return;
            }
        }
        both.low = a;
        both.high = b;
        both.alongX = alongX;
        keep(both);
    }

    double outsideOf(Um w, Um h) const
    {
        return outside_[at(sheets::placeOf(worth_.xs(), w), sheets::placeOf(worth_.ys(), h))];
    }

    void keep(Built& built)
    {
        if (built.w > w_ || built.h > h_) {
            return;
        }
        built.hope = built.value + outsideOf(built.w, built.h);
        std::vector<int>& same = byUse_[built.used];
        for (const int other : same) {
            const Built& o = built_[static_cast<std::size_t>(other)];
            if (o.sort != kDropped && o.w <= built.w && o.h <= built.h) {
                return;
            }
        }
        const int id = static_cast<int>(built_.size());
        same.push_back(id);
        open_.push({built.hope, built.value, id});
        if (built.value > best_ + slack()) {
            best_ = built.value;
            bestBuilt_ = id;
        }
        built_.push_back(built);
    }

    void lay(int id, Um x, Um y, std::vector<KnapsackPiece>& out) const
    {
        const Built& built = built_[static_cast<std::size_t>(id)];
        if (built.sort >= 0) {
            KnapsackPiece piece;
            piece.piece = sorts_[static_cast<std::size_t>(built.sort)].piece;
            piece.at = {sheets::toMm(x), sheets::toMm(y)};
            piece.size = {sheets::toMm(built.w), sheets::toMm(built.h)};
            piece.turned = built.turned;
            out.push_back(piece);
            return;
        }
        const Built& low = built_[static_cast<std::size_t>(built.low)];
        lay(built.low, x, y, out);
        lay(built.high, built.alongX ? x + low.w : x, built.alongX ? y : y + low.h, out);
    }

    Um w_;
    Um h_;
    const std::vector<Sort>& sorts_;
    bool turn_;
    const FreeWorth& worth_;
    std::vector<double> outside_;
    std::vector<Built> built_;
    std::vector<int> closed_;
    std::priority_queue<Entry> open_;
    std::map<std::vector<int>, std::vector<int>> byUse_;
    double best_ = 0.0;
    int bestBuilt_ = -1;
};

bool isSize(Size size)
{
    return std::isfinite(size.width) && std::isfinite(size.depth) && std::min(size.width, size.depth) >= 0.01
        && std::max(size.width, size.depth) <= kLargestSheetMm;
}

/// Both ways round where pieces may be turned.
std::vector<RowLength> lengthsAlong(const std::vector<Sort>& sorts, bool x, bool turn)
{
    std::vector<RowLength> out;
    for (const Sort& sort : sorts) {
        out.push_back({x ? sort.w : sort.h, sort.most});
        if (turn && sort.w != sort.h) {
            out.push_back({x ? sort.h : sort.w, sort.most});
        }
    }
    return out;
}

/// The answer without limits on the copies; `limited` where it would break one.
GuillotineKnapsack freeAnswer(const FreeWorth& worth, const std::vector<FreeWorth::Piece>& pieces,
                              const std::vector<Sort>& sorts, Um saw, bool& limited)
{
    GuillotineKnapsack answer;
    const int x = static_cast<int>(worth.xs().size()) - 1;
    const int y = static_cast<int>(worth.ys().size()) - 1;
    answer.value = answer.bound = worth.at(x, y);
    answer.proven = true;
    std::vector<FreeWorth::Laid> laid;
    worth.trace(x, y, 0, 0, laid);
    std::vector<int> used(sorts.size(), 0);
    limited = false;
    for (const FreeWorth::Laid& one : laid) {
        const FreeWorth::Piece& piece = pieces[static_cast<std::size_t>(one.piece)];
        const Sort& sort = sorts[static_cast<std::size_t>(piece.id)];
        if (++used[static_cast<std::size_t>(piece.id)] > sort.most) {
            limited = true;
        }
        KnapsackPiece placed;
        placed.piece = sort.piece;
        placed.at = {sheets::toMm(one.x), sheets::toMm(one.y)};
        placed.size = {sheets::toMm(piece.w - saw), sheets::toMm(piece.h - saw)};
        placed.turned = piece.turned;
        answer.pieces.push_back(placed);
    }
    return answer;
}

}  // namespace

GuillotineKnapsack guillotineKnapsack(Size sheet, const std::vector<ValuedPiece>& pieces, bool turn, double sawMm,
                                      std::uint64_t places, std::stop_token stop)
{
    if (!isSize(sheet) || !(sawMm >= 0.0 && sawMm <= kLargestSheetMm)) {
        return {};
    }
    const Um saw = sheets::toUm(sawMm);
    const Um w = sheets::toUm(sheet.width) + saw;
    const Um h = sheets::toUm(sheet.depth) + saw;
    std::vector<Sort> sorts;
    std::vector<FreeWorth::Piece> ways;
    for (std::size_t p = 0; p < pieces.size(); ++p) {
        const ValuedPiece& piece = pieces[p];
        if (!isSize(piece.size) || !(piece.value > 0.0) || !std::isfinite(piece.value) || piece.most.value_or(1) < 1) {
            continue;
        }
        Sort sort;
        sort.w = sheets::toUm(piece.size.width) + saw;
        sort.h = sheets::toUm(piece.size.depth) + saw;
        sort.value = piece.value;
        sort.piece = static_cast<int>(p);
        const double room = std::floor(static_cast<double>(w) / static_cast<double>(sort.w)
                                       * (static_cast<double>(h) / static_cast<double>(sort.h)) + 1e-9);
        sort.most = static_cast<int>(std::min({room, 1e6, static_cast<double>(piece.most.value_or(1'000'000))}));
        const bool upright = sort.w <= w && sort.h <= h;
        const bool turned = turn && sort.w != sort.h && sort.h <= w && sort.w <= h;
        if (sort.most < 1 || !(upright || turned)) {
            continue;
        }
        const int id = static_cast<int>(sorts.size());
        sorts.push_back(sort);
        if (upright) {
            ways.push_back({sort.w, sort.h, sort.value, id, false});
        }
        if (turned) {
            ways.push_back({sort.h, sort.w, sort.value, id, true});
        }
    }
    if (sorts.empty()) {
        return {0.0, 0.0, true, {}};
    }
    constexpr std::size_t kMostSums = 4'000;
    FreeWorth worth;
    const std::vector<Um> xs = sheets::sumsUpTo(lengthsAlong(sorts, true, turn), w, kMostSums);
    const std::vector<Um> ys = sheets::sumsUpTo(lengthsAlong(sorts, false, turn), h, kMostSums);
    if (!worth.make(w, h, ways, xs, ys, 1e9)) {
        // Too fine to reckon: what the area could hold at best is all that can be said.
        double dearest = 0.0;
        for (const Sort& sort : sorts) {
            dearest = std::max(dearest, sort.value / static_cast<double>(sort.w) / static_cast<double>(sort.h));
        }
        return {0.0, dearest * static_cast<double>(w) * static_cast<double>(h), false, {}};
    }
    bool limited = false;
    GuillotineKnapsack answer = freeAnswer(worth, ways, sorts, saw, limited);
    if (limited) {
        BestFirst search(w, h, sorts, turn, worth);
        answer = search.run(places, stop);
        for (KnapsackPiece& piece : answer.pieces) {
            piece.size = {piece.size.width - sheets::toMm(saw), piece.size.depth - sheets::toMm(saw)};
        }
    }
    return answer;
}

}  // namespace yardcast
