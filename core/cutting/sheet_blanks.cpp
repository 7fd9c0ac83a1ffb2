#include "core/cutting/sheet_blanks.h"

#include <algorithm>
#include <map>
#include <tuple>

namespace yardcast::sheets {

namespace {

struct StripRun {
    BlankStrip strip;
    int strips = 0;
};

Um ceilShare(Um of, Um by)
{
    return (of + by - 1) / by;
}

Um lengthOf(const BlankStrip& strip, Um saw)
{
    Um length = -saw;
    for (const StripPiece& piece : strip.pieces) {
        length += piece.length + saw;
    }
    return length;
}

/// Strips at least `least` long where there is enough, of pieces that are shorter and of several sizes: the widest
/// together.
std::vector<BlankStrip> mixedStrips(std::vector<StripPiece> pieces, Um least, Um saw)
{
    std::stable_sort(pieces.begin(), pieces.end(), [](const StripPiece& a, const StripPiece& b) {
        return a.narrow != b.narrow ? a.narrow > b.narrow : a.length > b.length;
    });
    std::vector<BlankStrip> out;
    bool full = true;
    for (const StripPiece& piece : pieces) {
        if (full) {
            out.push_back({piece.narrow, {}});
        }
        out.back().pieces.push_back(piece);
        full = lengthOf(out.back(), saw) >= least;
    }
    return out;
}

/// Blanks of the strips of one length.
class Ganging {
public:
    Ganging(Um length, Um least, Um wish, Um saw, bool turn, bool flipped)
        : length_(length), least_(least), wish_(std::max(least, wish)), saw_(saw), turn_(turn), flipped_(flipped)
    {
    }

    void add(const StripRun& run, std::vector<Blank>& out)
    {
        const int each = static_cast<int>(ceilShare(wish_ + saw_, run.strip.narrow + saw_));
        const int full = run.strips / each;
        if (full > 0) {
            Blank blank;
            blank.strips.assign(static_cast<std::size_t>(each), run.strip);
            close(blank, full, out);
        }
        for (int i = full * each; i < run.strips; ++i) {
            add(run.strip, out);
        }
    }

    /// What is over: a blank of its own if it is wide enough for the store, else on the last blank, else beside waste.
    void finish(std::vector<Blank>& out)
    {
        if (open_.strips.empty()) {
            return;
        }
        if (heightOf(open_) < least_ && closedAny_) {
            Blank last = out.back();
            if (--out.back().count == 0) {
                out.pop_back();
            }
            last.strips.insert(last.strips.end(), open_.strips.begin(), open_.strips.end());
            open_ = std::move(last);
        }
        close(open_, 1, out);
    }
    void add(const BlankStrip& strip, std::vector<Blank>& out)
    {
        open_.strips.push_back(strip);
        if (heightOf(open_) >= wish_) {
            close(open_, 1, out);
            open_ = {};
        }
    }

private:
    Um heightOf(const Blank& blank) const
    {
        Um height = -saw_;
        for (const BlankStrip& strip : blank.strips) {
            height += strip.narrow + saw_;
        }
        return height;
    }
    void close(Blank blank, int count, std::vector<Blank>& out)
    {
        closedAny_ = true;
        blank.w = std::max(length_, least_);
        blank.h = std::max(heightOf(blank), least_);
        blank.endsAtHome = std::all_of(blank.strips.begin(), blank.strips.end(), [&](const BlankStrip& strip) {
            return strip.pieces.size() > 1 || lengthOf(strip, saw_) < blank.w;
        });
        blank.turn = turn_;
        blank.flipped = flipped_;
        blank.count = count;
        out.push_back(std::move(blank));
    }

    Um length_;
    Um least_;
    Um wish_;
    Um saw_;
    bool turn_;
    bool flipped_;
    Blank open_;
    bool closedAny_ = false;
};

}  // namespace

bool isNarrow(const SheetPiece& piece, double leastStripMm)
{
    return toUm(std::min(piece.size.width, piece.size.depth)) < toUm(leastStripMm);
}

std::vector<Blank> makeBlanks(const SheetCutting& list, double wishMm)
{
    const Um saw = toUm(list.sawMm);
    const Um least = toUm(list.leastStripMm);
    // Pieces of one size lie behind each other in a strip, whatever their names.
    std::map<std::tuple<bool, bool, Um, Um>, std::vector<std::pair<int, int>>> bySize;
    for (std::size_t p = 0; p < list.pieces.size(); ++p) {
        const SheetPiece& piece = list.pieces[p];
        if (isNarrow(piece, list.leastStripMm)) {
            const Um w = toUm(piece.size.width);
            const Um h = toUm(piece.size.depth);
            bySize[{piece.turn, !piece.turn && w < h, std::min(w, h), std::max(w, h)}].emplace_back(static_cast<int>(p),
                                                                                                   piece.count);
        }
    }
    // Turned or not, which way the strips run, and the strip's length.
    std::map<std::tuple<bool, bool, Um>, std::vector<StripRun>> byLength;
    std::map<std::pair<bool, bool>, std::vector<StripPiece>> tiny;
    for (const auto& [size, pieces] : bySize) {
        const auto& [turn, flipped, narrow, length] = size;
        const int each = length < least ? static_cast<int>(ceilShare(least + saw, length + saw)) : 1;
        std::vector<StripRun> runs;
        for (const auto& [piece, count] : pieces) {
            const StripPiece one{piece, length, narrow};
            if (count >= each) {
                const BlankStrip full{narrow, std::vector<StripPiece>(static_cast<std::size_t>(each), one)};
                runs.push_back({full, count / each});
            }
            std::vector<StripPiece>& over = tiny[{turn, flipped}];
            over.insert(over.end(), static_cast<std::size_t>(count % each), one);
        }
        if (!runs.empty()) {
            std::vector<StripRun>& same = byLength[{turn, flipped, each * (length + saw) - saw}];
            same.insert(same.end(), runs.begin(), runs.end());
        }
    }
    for (auto& [key, pieces] : tiny) {
        const std::vector<BlankStrip> strips = mixedStrips(std::move(pieces), least, saw);
        Um longest = 0;
        for (const BlankStrip& strip : strips) {
            longest = std::max(longest, lengthOf(strip, saw));
        }
        for (const BlankStrip& strip : strips) {
            byLength[{key.first, key.second, longest}].push_back({strip, 1});
        }
    }
    std::vector<Blank> out;
    for (auto& [key, runs] : byLength) {
        std::stable_sort(runs.begin(), runs.end(),
                         [](const StripRun& a, const StripRun& b) { return a.strip.narrow > b.strip.narrow; });
        Ganging ganging(std::get<2>(key), least, toUm(wishMm), saw, std::get<0>(key), std::get<1>(key));
        for (const StripRun& run : runs) {
            ganging.add(run, out);
        }
        ganging.finish(out);
    }
    return out;
}

}  // namespace yardcast::sheets
