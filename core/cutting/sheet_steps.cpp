#include "core/cutting/sheet_steps.h"

#include <algorithm>
#include <utility>

namespace yardcast::sheets {

namespace {

constexpr double kSliverMm = 10.0;   // common practice, no source

/// A part on the saw: its number, low corner and size.
struct OnTable {
    int part = 0;
    Um x = 0;
    Um y = 0;
    Um w = 0;
    Um h = 0;
};

/// Severs what lies below (or left of) the cut; `rest` becomes what is beyond.
OnTable sever(OnTable& rest, bool alongX, Um size, Um saw, bool atHome, std::vector<SawStep>& steps)
{
    const Um whole = alongX ? rest.w : rest.h;
    const Um lost = std::min(saw, whole - size);
    SawStep step;
    step.part = rest.part;
    step.run = alongX ? SawRun::alongY : SawRun::alongX;
    step.atMm = toMm(size);
    step.lostMm = toMm(lost);
    step.atHome = atHome;
    const int number = static_cast<int>(steps.size());
    steps.push_back(step);
    OnTable low = rest;
    low.part = 2 * number + 1;
    rest.part = 2 * number + 2;
    (alongX ? low.w : low.h) = size;
    (alongX ? rest.x : rest.y) += size + lost;
    (alongX ? rest.w : rest.h) -= size + lost;
    return low;
}

class Sawing {
public:
    Sawing(const SheetForest& forest, const SheetOnSaw& on, const std::vector<Loose>& loose, SawnSheet& out)
        : forest_(forest), on_(on), loose_(loose), out_(out)
    {
    }

    void run(int sheet)
    {
        OnTable table{0, 0, 0, on_.w, on_.h};
        if (on_.trim > 0) {
            const Um edge = std::max<Um>(0, on_.trim - on_.saw);
            for (const bool alongX : {true, false}) {
                sever(table, alongX, edge, std::min(on_.saw, on_.trim), false, out_.steps);
                table = sever(table, alongX, (alongX ? table.w : table.h) - on_.trim, std::min(on_.saw, on_.trim), false,
                              out_.steps);
            }
        }
        saw(sheet, table);
        std::stable_sort(out_.remainders.begin(), out_.remainders.end(), [](const SheetArea& a, const SheetArea& b) {
            return a.size.width * a.size.depth > b.size.width * b.size.depth;
        });
    }

private:
    void saw(int node, OnTable table)
    {
        const TreeNode& of = forest_.node(node);
        if (of.kind == TreeNode::Kind::item) {
            out_.parts.push_back({of.item, table.x, table.y, table.w, table.h, of.turned, table.part, of.w - on_.saw});
            return;
        }
        if (of.kind == TreeNode::Kind::rest) {
            if (toMm(std::min(table.w, table.h)) >= kLeastRemainderMm) {
                out_.remainders.push_back({{toMm(table.x), toMm(table.y)}, {toMm(table.w), toMm(table.h)}});
            }
            return;
        }
        std::vector<int> row;
        for (int child = of.first; child >= 0; child = forest_.node(child).next) {
            row.push_back(child);
        }
        sort(row, of.alongX);
        if (keepsWaste(row, of.alongX)) {
            row.pop_back();
        }
        std::vector<std::pair<int, OnTable>> severed;
        for (std::size_t i = 0; i + 1 < row.size(); ++i) {
            const Um size = sizeOf(row[i], of.alongX) - on_.saw;
            severed.emplace_back(row[i], sever(table, of.alongX, size, on_.saw, false, out_.steps));
            fence_[of.alongX] = size;
        }
        severed.emplace_back(row.back(), table);
        while (!severed.empty()) {
            auto next = std::find_if(severed.begin(), severed.end(),
                                     [this](const std::pair<int, OnTable>& part) { return isAtFence(part.first); });
            next = next == severed.end() ? severed.begin() : next;
            const auto [child, part] = *next;
            severed.erase(next);
            saw(child, part);
        }
    }

    Um sizeOf(int node, bool alongX) const { return alongX ? forest_.node(node).w : forest_.node(node).h; }

    /// The widest strips first and like ones together, before all those for which the fence stands right; the rest is
    /// what stays.
    void sort(std::vector<int>& row, bool alongX) const
    {
        std::stable_sort(row.begin(), row.end(), [&](int a, int b) {
            const bool restA = forest_.node(a).kind == TreeNode::Kind::rest;
            const bool restB = forest_.node(b).kind == TreeNode::Kind::rest;
            if (restA != restB) {
                return restB;
            }
            const Um sizeA = sizeOf(a, alongX);
            const Um sizeB = sizeOf(b, alongX);
            const bool rightA = sizeA - on_.saw == fence_[alongX];
            const bool rightB = sizeB - on_.saw == fence_[alongX];
            if (rightA != rightB) {
                return rightA;
            }
            return sizeA != sizeB ? sizeA > sizeB : forest_.node(a).item > forest_.node(b).item;
        });
    }

    /// The last part is waste that may stay on the one before it; on a strip of several only a sliver, for each of them
    /// would take another cut at home.
    bool keepsWaste(const std::vector<int>& row, bool alongX) const
    {
        const TreeNode& last = forest_.node(row.back());
        const int before = row[row.size() - 2];
        const double mostMm = forest_.node(before).kind == TreeNode::Kind::row ? kSliverMm : kLeastRemainderMm;
        return last.kind == TreeNode::Kind::rest && toMm(sizeOf(row.back(), alongX) - on_.saw) < mostMm
            && isLoose(before, alongX);
    }

    bool isLoose(int node, bool alongX) const
    {
        const TreeNode& of = forest_.node(node);
        if (of.kind == TreeNode::Kind::item) {
            const Loose loose = loose_[static_cast<std::size_t>(of.item)];
            const Loose wanted = alongX != of.turned ? Loose::w : Loose::h;
            return loose == Loose::both || loose == wanted;
        }
        if (of.kind == TreeNode::Kind::rest || of.alongX == alongX) {
            return false;
        }
        for (int child = of.first; child >= 0; child = forest_.node(child).next) {
            if (forest_.node(child).kind != TreeNode::Kind::rest && !isLoose(child, alongX)) {
                return false;
            }
        }
        return true;
    }

    /// The fence stands right for one of the parts of a row.
    bool isAtFence(int node) const
    {
        const TreeNode& of = forest_.node(node);
        if (of.kind != TreeNode::Kind::row) {
            return false;
        }
        for (int child = of.first; child >= 0; child = forest_.node(child).next) {
            if (forest_.node(child).kind != TreeNode::Kind::rest
                && sizeOf(child, of.alongX) - on_.saw == fence_[of.alongX]) {
                return true;
            }
        }
        return false;
    }

    const SheetForest& forest_;
    const SheetOnSaw& on_;
    const std::vector<Loose>& loose_;
    SawnSheet& out_;
    Um fence_[2] = {-1, -1};   ///< where the fence stands for cuts of each way: rips and crosscuts have one each
};

}  // namespace

SawnSheet sawSheet(const SheetForest& forest, int sheet, const SheetOnSaw& on, const std::vector<Loose>& loose)
{
    SawnSheet out;
    Sawing(forest, on, loose, out).run(sheet);
    return out;
}

void ripBlank(const Blank& blank, const CutPart& part, Um saw, CutSheet& out)
{
    const int number = static_cast<int>(out.blanks.size());
    out.blanks.push_back({{toMm(part.x), toMm(part.y)}, {toMm(part.w), toMm(part.h)}});
    const bool exchanged = blank.flipped != part.turned;
    OnTable rest{part.part, part.x, part.y, part.w, part.h};
    std::vector<OnTable> strips;
    for (const BlankStrip& strip : blank.strips) {
        const bool last = (exchanged ? rest.w : rest.h) == strip.narrow;
        strips.push_back(last ? rest : sever(rest, exchanged, strip.narrow, saw, true, out.steps));
    }
    for (std::size_t s = 0; s < strips.size(); ++s) {
        const BlankStrip& strip = blank.strips[s];
        OnTable table = strips[s];
        for (const StripPiece& which : strip.pieces) {
            const bool last = (exchanged ? table.h : table.w) == which.length;
            OnTable piece = last ? table : sever(table, !exchanged, which.length, saw, true, out.steps);
            if (which.narrow < strip.narrow) {
                piece = sever(piece, exchanged, which.narrow, saw, true, out.steps);
            }
            PlacedPiece placed;
            placed.piece = which.piece;
            placed.at = {toMm(piece.x), toMm(piece.y)};
            placed.size = {toMm(piece.w), toMm(piece.h)};
            placed.blank = number;
            out.pieces.push_back(placed);
        }
    }
}

}  // namespace yardcast::sheets
