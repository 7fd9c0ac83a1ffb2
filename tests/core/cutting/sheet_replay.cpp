#include "tests/core/cutting/sheet_replay.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>
#include <vector>

namespace yardcast {

namespace {

/// Half of the thousandth of a millimetre to which lengths are kept, and what a sum of doubles may round.
constexpr double kSameMm = 0.0006;

bool same(double a, double b)
{
    return std::abs(a - b) <= kSameMm;
}

struct Part {
    Point at;
    Size size;
    bool sawn = false;
    bool home = false;   ///< comes from a cut at home
};

bool isAt(const Part& part, Point at, Size size)
{
    return !part.sawn && same(part.at.x, at.x) && same(part.at.y, at.y) && same(part.size.width, size.width)
        && same(part.size.depth, size.depth);
}

class Replay {
public:
    Replay(const SheetCutting& list, const CutSheet& sheet) : list_(list), sheet_(sheet) {}

    std::string run()
    {
        parts_[0] = {{0, 0}, list_.stock[static_cast<std::size_t>(sheet_.stock)].size};
        int store = 0;
        for (std::size_t i = 0; i < sheet_.steps.size(); ++i) {
            const SawStep& step = sheet_.steps[i];
            if (!step.atHome && store != static_cast<int>(i)) {
                return "a cut at the store after one at home";
            }
            store += step.atHome ? 0 : 1;
            if (const std::string wrong = saw(step, static_cast<int>(i)); !wrong.empty()) {
                return wrong + " in step " + std::to_string(i);
            }
            if (step.atHome || static_cast<int>(i) + 1 == static_cast<int>(sheet_.steps.size())
                || sheet_.steps[i + 1].atHome) {
                if (const std::string wrong = findBlanks(); !wrong.empty()) {
                    return wrong;
                }
            }
        }
        if (store != sheet_.cuts) {
            return "the cuts are not those of the store";
        }
        return findPieces();
    }

private:
    std::string saw(const SawStep& step, int number)
    {
        const auto found = parts_.find(step.part);
        if (found == parts_.end() || found->second.sawn) {
            return "no such part";
        }
        Part& part = found->second;
        if (step.atHome && !part.home && !isBlank(part)) {
            return "ripped at home what is no blank";
        }
        const bool alongY = step.run == SawRun::alongY;
        const double whole = alongY ? part.size.width : part.size.depth;
        const double beyond = whole - step.atMm - step.lostMm;
        if (step.atMm < -kSameMm || beyond < -kSameMm || step.lostMm < -kSameMm) {
            return "cut outside the part";
        }
        const bool trimming = number < (list_.trimMm > 0 ? 4 : 0);
        const double trimLost = std::min(list_.sawMm, list_.trimMm);
        if (!same(step.lostMm, list_.sawMm) && !(step.lostMm < list_.sawMm && same(beyond, 0))
            && !(trimming && same(step.lostMm, trimLost))) {
            return "not a saw width lost";
        }
        part.sawn = true;
        Part low{part.at, part.size, false, step.atHome};
        Part high = low;
        if (alongY) {
            low.size.width = step.atMm;
            high.at.x += step.atMm + step.lostMm;
            high.size.width = beyond;
        } else {
            low.size.depth = step.atMm;
            high.at.y += step.atMm + step.lostMm;
            high.size.depth = beyond;
        }
        parts_[2 * number + 1] = low;
        parts_[2 * number + 2] = high;
        return {};
    }

    bool isBlank(const Part& part) const
    {
        for (const SheetArea& blank : sheet_.blanks) {
            if (isAt(part, blank.at, blank.size)) {
                return true;
            }
        }
        return false;
    }

    /// Once the store is done each blank is there and wide enough.
    std::string findBlanks()
    {
        if (blanksFound_) {
            return {};
        }
        blanksFound_ = true;
        for (const SheetArea& blank : sheet_.blanks) {
            int here = 0;
            for (const auto& [number, part] : parts_) {
                here += isAt(part, blank.at, blank.size) || isSawnBlank(part, blank) ? 1 : 0;
            }
            if (here != 1) {
                return "a blank is not a part that the store leaves";
            }
            if (std::min(blank.size.width, blank.size.depth) < list_.leastStripMm - kSameMm) {
                return "a blank narrower than the store cuts";
            }
        }
        return {};
    }
    static bool isSawnBlank(const Part& part, const SheetArea& blank)
    {
        return part.sawn && !part.home && same(part.at.x, blank.at.x) && same(part.at.y, blank.at.y)
            && same(part.size.width, blank.size.width) && same(part.size.depth, blank.size.depth);
    }

    std::string findPieces()
    {
        const double trim = list_.trimMm;
        const Size whole = list_.stock[static_cast<std::size_t>(sheet_.stock)].size;
        for (const PlacedPiece& piece : sheet_.pieces) {
            const SheetPiece& of = list_.pieces[static_cast<std::size_t>(piece.piece)];
            const Size as = piece.turned ? Size{of.size.depth, of.size.width} : of.size;
            if (!same(as.width, piece.size.width) || !same(as.depth, piece.size.depth) || (piece.turned && !of.turn)) {
                return "a piece of the wrong size or turned against its will";
            }
            if (piece.at.x < trim - kSameMm || piece.at.y < trim - kSameMm
                || piece.at.x + piece.size.width > whole.width - trim + kSameMm
                || piece.at.y + piece.size.depth > whole.depth - trim + kSameMm) {
                return "a piece outside the sheet";
            }
            if ((piece.blank < 0) && std::min(as.width, as.depth) < list_.leastStripMm - kSameMm) {
                return "a piece narrower than the store cuts";
            }
            if (!take(piece.at, piece.size)) {
                return "a piece that does not come off the saw";
            }
        }
        for (const SheetArea& rest : sheet_.remainders) {
            if (!take(rest.at, rest.size)) {
                return "a remainder that does not come off the saw";
            }
        }
        return {};
    }
    bool take(Point at, Size size)
    {
        // Only parts that are no longer sawn, each at a corner of its own unless it is of no size.
        if (byCorner_.empty()) {
            for (const auto& [number, part] : parts_) {
                if (!part.sawn && std::min(part.size.width, part.size.depth) > kSameMm) {
                    byCorner_[cornerOf(part.at)] = number;
                }
            }
        }
        const auto found = byCorner_.find(cornerOf(at));
        if (found == byCorner_.end() || !isAt(parts_[found->second], at, size)) {
            return false;
        }
        byCorner_.erase(found);
        return true;
    }
    static std::pair<long long, long long> cornerOf(Point at)
    {
        return {std::llround(at.x * 1000), std::llround(at.y * 1000)};
    }

    const SheetCutting& list_;
    const CutSheet& sheet_;
    std::map<int, Part> parts_;
    std::map<std::pair<long long, long long>, int> byCorner_;
    bool blanksFound_ = false;
};

std::string checkMoney(const SheetCutting& list, const SheetPlan& plan)
{
    double sheets = 0.0;
    double cuts = 0.0;
    int count = 0;
    int allCuts = 0;
    for (const CutSheet& sheet : plan.sheets) {
        sheets += list.stock[static_cast<std::size_t>(sheet.stock)].price * sheet.times;
        cuts += list.cutPrice * std::max(0, sheet.cuts - list.freeCuts) * sheet.times;
        count += sheet.times;
        allCuts += sheet.cuts * sheet.times;
    }
    // Sums of up to thousands of prices in another order.
    const double rounding = 1e-9 * (1.0 + sheets + cuts);
    if (std::abs(sheets - plan.sheetsPrice) > rounding || std::abs(cuts - plan.cutsPrice) > rounding
        || std::abs(sheets + cuts - plan.price) > rounding) {
        return "the money is not that of the sheets and cuts";
    }
    if (count != plan.count || allCuts != plan.cuts) {
        return "the count is not that of the sheets and cuts";
    }
    if (plan.bound > plan.sheetsPrice + rounding || plan.boundCount > plan.count) {
        return "better than the bound";
    }
    return {};
}

}  // namespace

std::string replaySaw(const SheetCutting& list, const SheetPlan& plan)
{
    std::vector<long long> got(list.pieces.size(), 0);
    std::vector<long long> taken(list.stock.size(), 0);
    for (std::size_t s = 0; s < plan.sheets.size(); ++s) {
        const CutSheet& sheet = plan.sheets[s];
        if (const std::string wrong = Replay(list, sheet).run(); !wrong.empty()) {
            return "sheet " + std::to_string(s) + ": " + wrong;
        }
        for (const PlacedPiece& piece : sheet.pieces) {
            got[static_cast<std::size_t>(piece.piece)] += sheet.times;
        }
        taken[static_cast<std::size_t>(sheet.stock)] += sheet.times;
    }
    for (const UnplacedPieces& of : plan.unplaced) {
        got[static_cast<std::size_t>(of.piece)] += of.count;
    }
    for (std::size_t p = 0; p < got.size(); ++p) {
        if (got[p] != list.pieces[p].count) {
            return "piece " + std::to_string(p) + ": " + std::to_string(got[p]) + " of "
                + std::to_string(list.pieces[p].count);
        }
    }
    for (std::size_t s = 0; s < taken.size(); ++s) {
        if (list.stock[s].count && taken[s] > *list.stock[s].count) {
            return "more sheets than there are";
        }
    }
    return checkMoney(list, plan);
}

}  // namespace yardcast
