#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>

#include "core/cutting/sheet_blanks.h"
#include "core/cutting/sheet_cutting.h"
#include "core/cutting/sheet_search.h"
#include "core/cutting/sheet_steps.h"

namespace yardcast {

namespace {

using sheets::Bin;
using sheets::Blank;
using sheets::Item;
using sheets::Um;
using sheets::toUm;

constexpr double kPerUnit = 10'000.0;   // prices in whole ten-thousandths

/// Where the parts of one sort go: to a piece of the list, or to a blank.
struct Want {
    int piece = -1;
    int blank = -1;
    int count = 0;
};

/// One list for the search: equal sizes are one item.
struct Lot {
    std::vector<Blank> blanks;
    std::vector<Item> items;
    std::vector<std::vector<Want>> wants;   ///< of each item
    std::vector<Want> tooLarge;
};

std::int64_t toPrice(double price)
{
    return std::llround(price * kPerUnit);
}

class Planner {
public:
    Planner(const SheetCutting& list, SheetEffort effort, const std::stop_token& stop)
        : list_(list), effort_(effort), stop_(stop), saw_(toUm(list.sawMm)), trim_(toUm(list.trimMm))
    {
        makeBins();
    }

    SheetPlan run()
    {
        const Lot pieces = makeLot(-1.0);
        if (list_.leastStripMm <= 0.0 || !anyNarrow()) {
            return planOf(pieces, pieces);
        }
        // Narrow blanks lie well, wide ones take fewer cuts at the store.
        SheetPlan best;
        bool first = true;
        double before = -1.0;
        for (const double wishMm : {list_.leastStripMm, 2.5 * list_.leastStripMm}) {
            const Lot lot = makeLot(wishMm);
            if (static_cast<double>(lot.blanks.size()) == before) {
                continue;
            }
            before = static_cast<double>(lot.blanks.size());
            SheetPlan plan = planOf(lot, pieces);
            if (first || better(plan, best)) {
                best = std::move(plan);
                first = false;
            }
        }
        return best;
    }

private:
    static int unplacedCount(const SheetPlan& plan)
    {
        int sum = 0;
        for (const UnplacedPieces& pieces : plan.unplaced) {
            sum += pieces.count;
        }
        return sum;
    }
    static bool better(const SheetPlan& a, const SheetPlan& b)
    {
        const int leftA = unplacedCount(a);
        const int leftB = unplacedCount(b);
        return std::tie(leftA, a.price, a.count, a.cuts) < std::tie(leftB, b.price, b.count, b.cuts);
    }
    bool anyNarrow() const
    {
        return std::any_of(list_.pieces.begin(), list_.pieces.end(),
                           [this](const SheetPiece& piece) { return sheets::isNarrow(piece, list_.leastStripMm); });
    }

    /// Sheets that can be cut at all. Those without a price count by their area, where none has one, else as next to
    /// nothing: what costs nothing and never runs out would else be used without end.
    void makeBins()
    {
        std::int64_t pieces = 0;
        for (const SheetPiece& piece : list_.pieces) {
            pieces += piece.count;
        }
        const bool priced = std::any_of(list_.stock.begin(), list_.stock.end(),
                                        [](const SheetStock& stock) { return toPrice(stock.price) > 0; });
        for (std::size_t s = 0; s < list_.stock.size(); ++s) {
            const SheetStock& stock = list_.stock[s];
            Bin bin;
            bin.w = toUm(stock.size.width) - 2 * trim_ + saw_;
            bin.h = toUm(stock.size.depth) - 2 * trim_ + saw_;
            bin.price = toPrice(stock.price);
            bin.limited = stock.count.has_value();
            bin.most = static_cast<int>(std::min<std::int64_t>(stock.count.value_or(kMostSheetPieces), pieces));
            if (bin.price == 0 && !bin.limited) {
                unpriced_ = true;
                bin.price = priced ? 1 : std::max<std::int64_t>(1, std::llround(bin.area() * 1e-6));
            }
            if (std::min(bin.w, bin.h) > saw_ && bin.most > 0) {
                bins_.push_back(bin);
                stockOf_.push_back(static_cast<int>(s));
            }
        }
    }

    void add(Lot& lot, Um w, Um h, bool turn, Want want) const
    {
        if (w == h) {
            turn = false;
        }
        Item item{w + saw_, h + saw_, turn, want.count};
        if (turn && item.w < item.h) {
            std::swap(item.w, item.h);
        }
        if (std::none_of(bins_.begin(), bins_.end(), [&](const Bin& bin) { return sheets::fits(item, bin.w, bin.h); })) {
            lot.tooLarge.push_back(want);
            return;
        }
        for (std::size_t i = 0; i < lot.items.size(); ++i) {
            Item& same = lot.items[i];
            if (same.w == item.w && same.h == item.h && same.turn == item.turn) {
                same.count += item.count;
                lot.wants[i].push_back(want);
                return;
            }
        }
        lot.items.push_back(item);
        lot.wants.push_back({want});
    }

    /// With narrow pieces as blanks about `wishMm` wide; below 0: all pieces as they are.
    Lot makeLot(double wishMm) const
    {
        Lot lot;
        if (wishMm >= 0.0) {
            lot.blanks = sheets::makeBlanks(list_, wishMm);
        }
        for (std::size_t p = 0; p < list_.pieces.size(); ++p) {
            const SheetPiece& piece = list_.pieces[p];
            if (wishMm < 0.0 || !sheets::isNarrow(piece, list_.leastStripMm)) {
                add(lot, toUm(piece.size.width), toUm(piece.size.depth), piece.turn,
                    {static_cast<int>(p), -1, piece.count});
            }
        }
        for (std::size_t b = 0; b < lot.blanks.size(); ++b) {
            const Blank& blank = lot.blanks[b];
            add(lot, blank.flipped ? blank.h : blank.w, blank.flipped ? blank.w : blank.h, blank.turn,
                {-1, static_cast<int>(b), blank.count});
        }
        return lot;
    }

    SheetPlan planOf(const Lot& lot, const Lot& pieces)
    {
        SheetPlan plan;
        const bool money = !unpriced_;
        const sheets::CutCosts costs{money ? toPrice(list_.cutPrice) : 0, list_.freeCuts, trim_ > 0 ? 4 : 0};
        sheets::Filled filled;
        if (!lot.items.empty() && !bins_.empty()) {
            filled = sheets::fillSheets(lot.items, bins_, costs, effort_.places, stop_);
        } else {
            filled.left.assign(lot.items.size(), 0);
        }
        std::vector<std::vector<Want>> wants = lot.wants;
        for (const auto& [sawn, times] : alike(filled, looseOf(lot))) {
            handOut(lot, sawn, times, wants, plan);
        }
        std::stable_sort(plan.sheets.begin(), plan.sheets.end(), [this](const CutSheet& a, const CutSheet& b) {
            const bool boughtA = isBought(a.stock);
            const bool boughtB = isBought(b.stock);
            return std::make_tuple(boughtA, a.stock, -a.times) < std::make_tuple(boughtB, b.stock, -b.times);
        });
        for (const CutSheet& sheet : plan.sheets) {
            plan.count += sheet.times;
            plan.cuts += sheet.cuts * sheet.times;
            plan.sheetsPrice += list_.stock[static_cast<std::size_t>(sheet.stock)].price * sheet.times;
            plan.cutsPrice += list_.cutPrice * std::max(0, sheet.cuts - list_.freeCuts) * sheet.times;
        }
        plan.price = plan.sheetsPrice + plan.cutsPrice;
        addUnplaced(lot, wants, plan);
        const sheets::SheetBound bound = sheets::sheetBound(placedOf(pieces, plan), bins_);
        const std::int64_t reached = sheets::sheetsPrice(filled, bins_);
        const bool complete = std::none_of(plan.unplaced.begin(), plan.unplaced.end(), [](const UnplacedPieces& of) {
            return of.reason == Unplaced::noSheetLeft;
        });
        plan.proven = complete && bound.price >= reached;
        plan.boundCount = std::min(bound.count, plan.count);
        plan.bound = plan.proven ? plan.sheetsPrice : money ? static_cast<double>(bound.price) / kPerUnit : 0.0;
        plan.stopped = stop_.stop_requested();
        return plan;
    }

    bool isBought(int stock) const { return list_.stock[static_cast<std::size_t>(stock)].price > 0.0; }

    /// Blanks may be wider across their strips than asked for; an item that is also a piece may not.
    std::vector<sheets::Loose> looseOf(const Lot& lot) const
    {
        std::vector<sheets::Loose> out;
        for (std::size_t i = 0; i < lot.items.size(); ++i) {
            sheets::Loose loose = sheets::Loose::none;
            bool first = true;
            for (const Want& want : lot.wants[i]) {
                sheets::Loose one = sheets::Loose::none;
                if (want.blank >= 0) {
                    const Blank& blank = lot.blanks[static_cast<std::size_t>(want.blank)];
                    const bool swapped = (blank.flipped ? blank.h : blank.w) + saw_ != lot.items[i].w;
                    one = blank.endsAtHome             ? sheets::Loose::both
                          : blank.flipped != swapped ? sheets::Loose::w
                                                     : sheets::Loose::h;
                }
                loose = first || loose == one ? one : sheets::Loose::none;
                first = false;
            }
            out.push_back(loose);
        }
        return out;
    }

    /// Sheets that are sawn the same way count as one with the number of times.
    std::vector<std::pair<sheets::SawnSheet, int>> alike(const sheets::Filled& filled,
                                                         const std::vector<sheets::Loose>& loose) const
    {
        std::vector<std::pair<sheets::SawnSheet, int>> out;
        std::map<std::vector<Um>, std::size_t> known;
        for (const sheets::FilledGroup& group : filled.groups) {
            for (int s = 0; s < group.forest.sheetCount(); ++s) {
                if (group.forest.isEmpty(s)) {
                    continue;
                }
                const int b = group.bins[static_cast<std::size_t>(s)];
                const SheetStock& stock =
                    list_.stock[static_cast<std::size_t>(stockOf_[static_cast<std::size_t>(b)])];
                sheets::SawnSheet sawn = sheets::sawSheet(
                    group.forest, s, {toUm(stock.size.width), toUm(stock.size.depth), trim_, saw_}, loose);
                sawn.bin = b;
                std::vector<Um> key{b};
                for (const sheets::CutPart& part : sawn.parts) {
                    key.insert(key.end(), {part.item, part.part, part.x, part.y, part.w, part.h});
                }
                const auto [place, isNew] = known.emplace(std::move(key), out.size());
                if (isNew) {
                    out.emplace_back(std::move(sawn), group.times);
                } else {
                    out[place->second].second += group.times;
                }
            }
        }
        return out;
    }

    /// Says of each part of equal sheets which piece it is; sheets whose pieces have other names become others.
    void handOut(const Lot& lot, const sheets::SawnSheet& sawn, int times, std::vector<std::vector<Want>>& wants,
                 SheetPlan& plan) const
    {
        std::map<int, int> used;
        for (const sheets::CutPart& part : sawn.parts) {
            ++used[part.item];
        }
        while (times > 0) {
            int same = times;
            for (const auto& [item, count] : used) {
                std::vector<Want>& of = wants[static_cast<std::size_t>(item)];
                while (of.front().count == 0) {
                    of.erase(of.begin());
                }
                same = std::min(same, std::max(1, of.front().count / count));
            }
            CutSheet sheet;
            sheet.stock = stockOf_[static_cast<std::size_t>(sawn.bin)];
            sheet.times = same;
            sheet.steps = sawn.steps;
            sheet.remainders = sawn.remainders;
            sheet.cuts = static_cast<int>(sawn.steps.size());
            std::vector<std::pair<const Blank*, const sheets::CutPart*>> blanks;
            for (const sheets::CutPart& part : sawn.parts) {
                std::vector<Want>& of = wants[static_cast<std::size_t>(part.item)];
                while (of.front().count == 0) {
                    of.erase(of.begin());
                }
                of.front().count -= same;
                if (of.front().blank >= 0) {
                    blanks.emplace_back(&lot.blanks[static_cast<std::size_t>(of.front().blank)], &part);
                } else {
                    place(of.front().piece, part, sheet);
                }
            }
            for (const auto& [blank, part] : blanks) {
                sheets::ripBlank(*blank, turnedAs(*blank, *part), saw_, sheet);
            }
            for (PlacedPiece& piece : sheet.pieces) {
                const SheetPiece& of = list_.pieces[static_cast<std::size_t>(piece.piece)];
                piece.turned = toUm(piece.size.width) != toUm(of.size.width);
            }
            times -= same;
            plan.sheets.push_back(std::move(sheet));
        }
    }

    void place(int piece, const sheets::CutPart& part, CutSheet& sheet) const
    {
        PlacedPiece placed;
        placed.piece = piece;
        placed.at = {sheets::toMm(part.x), sheets::toMm(part.y)};
        placed.size = {sheets::toMm(part.w), sheets::toMm(part.h)};
        sheet.pieces.push_back(placed);
    }

    /// Items lie the long way; whether the blank itself lies turned is told by its sides.
    static sheets::CutPart turnedAs(const Blank& blank, sheets::CutPart part)
    {
        part.turned = (blank.flipped ? blank.h : blank.w) != part.wantedW;
        return part;
    }

    void addUnplaced(const Lot& lot, const std::vector<std::vector<Want>>& wants, SheetPlan& plan) const
    {
        std::map<std::pair<int, Unplaced>, int> counts;
        const auto count = [&](const Want& want, Unplaced reason) {
            if (want.piece >= 0) {
                counts[{want.piece, reason}] += want.count;
                return;
            }
            for (const sheets::BlankStrip& strip : lot.blanks[static_cast<std::size_t>(want.blank)].strips) {
                for (const sheets::StripPiece& of : strip.pieces) {
                    counts[{of.piece, reason}] += want.count;
                }
            }
        };
        for (const Want& want : lot.tooLarge) {
            count(want, Unplaced::tooLarge);
        }
        for (const std::vector<Want>& of : wants) {
            for (const Want& want : of) {
                count(want, Unplaced::noSheetLeft);
            }
        }
        for (const auto& [key, n] : counts) {
            if (n > 0) {
                plan.unplaced.push_back({key.first, n, key.second});
            }
        }
    }

    /// What the bound is about: the pieces that were placed.
    static std::vector<Item> placedOf(const Lot& pieces, const SheetPlan& plan)
    {
        std::map<int, int> missing;
        for (const UnplacedPieces& of : plan.unplaced) {
            missing[of.piece] += of.count;
        }
        std::vector<Item> out;
        for (std::size_t i = 0; i < pieces.items.size(); ++i) {
            Item item = pieces.items[i];
            for (const Want& want : pieces.wants[i]) {
                const auto found = missing.find(want.piece);
                item.count -= found == missing.end() ? 0 : found->second;
            }
            if (item.count > 0) {
                out.push_back(item);
            }
        }
        return out;
    }

    const SheetCutting& list_;
    SheetEffort effort_;
    const std::stop_token& stop_;
    Um saw_;
    Um trim_;
    std::vector<Bin> bins_;
    std::vector<int> stockOf_;
    bool unpriced_ = false;
};

}  // namespace

SheetPlan cutSheets(const SheetCutting& list, SheetEffort effort, std::stop_token stop)
{
    if (!sheetTroubles(list).empty()) {
        return {};
    }
    return Planner(list, effort, stop).run();
}

}  // namespace yardcast
