#include "core/purchase/later_boards.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "core/mould/mould_parts.h"
#include "core/pour/mould_hours.h"
#include "core/purchase/mould_sharing.h"

namespace yardcast {

namespace {

constexpr double kM2PerMm2 = 1e-6;
constexpr double kHoursADay = 24.0;
/// Small lists, and many of them.
constexpr std::uint64_t kEffort = 50'000;

/// The largest rectangle along the axes within the region, its holes and notches taken as the boxes about them.
Box largestRectangle(const Region& region)
{
    const std::optional<Box> bounds = boundsOf(region);
    if (!bounds) return {};
    const Region whole =
        regionOf({bounds->low, {bounds->high.x, bounds->low.y}, bounds->high, {bounds->low.x, bounds->high.y}});
    std::vector<Box> blocks;
    for (const Polygon& gap : subtract(whole, region)) {
        if (const std::optional<Box> box = boundsOf(gap.outer)) blocks.push_back(*box);
    }
    std::vector<double> edges{bounds->low.x, bounds->high.x};
    for (const Box& block : blocks) edges.insert(edges.end(), {block.low.x, block.high.x});
    std::sort(edges.begin(), edges.end());
    Box best;
    const auto consider = [&](const Box& box) {
        if (box.width() * std::max(0.0, box.height()) > best.width() * best.height()) best = box;
    };
    for (std::size_t i = 0; i < edges.size(); ++i) {
        for (std::size_t k = i + 1; k < edges.size(); ++k) {
            std::vector<std::pair<double, double>> taken;
            for (const Box& block : blocks) {
                if (block.low.x < edges[k] && edges[i] < block.high.x) taken.push_back({block.low.y, block.high.y});
            }
            std::sort(taken.begin(), taken.end());
            double low = bounds->low.y;
            for (const auto& [from, to] : taken) {
                consider({{edges[i], low}, {edges[k], from}});
                low = std::max(low, to);
            }
            consider({{edges[i], low}, {edges[k], bounds->high.y}});
        }
    }
    return best;
}

/// A clean piece of board that nobody needs any more.
struct Free {
    std::string board;
    std::string casting;
    int freeDay = 1;
    Point cleanAt;
    Size clean;
    Point at;          ///< in the clean part
    Size size;
    double thicknessMm = 0.0;
    int uses = 1;
};

struct Wanted {
    const MouldPart* part = nullptr;
    std::string casting;
    int count = 0;
};

/// One mould that is built: when its boards are wanted and when they are free.
struct Built {
    const Mould* mould = nullptr;
    int wantedDay = 0;
    int freeDay = 0;
    int uses = 1;
};

/// Calendar day of the pour, and of the day on which it leaves its mould.
struct CastingDays {
    int pour = 0;
    int out = 0;
};

std::map<std::string, CastingDays> daysOfCastings(const Plan& plan, const std::vector<MouldPtr>& moulds,
                                                  const PourPlan& pour)
{
    std::map<std::string, const Part*> parts;
    for (const MouldPtr& mould : moulds) {
        if (mould) parts[mould->casting] = findPart(plan, mould->part);
    }
    MouldHours mouldHours(plan);
    std::map<std::string, CastingDays> days;
    int calendarDay = 1;
    for (const PourDay& day : pour.days) {
        calendarDay += day.afterDays;
        for (const PouredCasting& poured : day.castings) {
            const auto part = parts.find(poured.casting);
            if (part == parts.end() || !part->second) continue;
            const double outH = day.startH + poured.endMin / 60 + mouldHours.of(*part->second, poured.mix);
            days[poured.casting] = {calendarDay, calendarDay + int(std::floor(std::min(outH, 1e6) / kHoursADay))};
        }
    }
    return days;
}

std::vector<Built> builtMoulds(const Plan& plan, const std::vector<MouldPtr>& moulds, const PourPlan& pour)
{
    const std::map<std::string, CastingDays> days = daysOfCastings(plan, moulds, pour);
    std::map<std::string, std::vector<std::string>> listOf;  // by its first casting
    std::set<std::string> later;
    std::set<std::string> seen;
    for (const SharedMould& shared : mouldingOf(plan).shared) {
        std::vector<std::string> list;
        for (const std::string& id : shared.castings) {
            if (days.count(id) > 0 && seen.insert(id).second) list.push_back(id);
        }
        for (std::size_t i = 1; i < list.size(); ++i) later.insert(list[i]);
        if (!list.empty()) listOf[list.front()] = list;
    }
    std::vector<Built> built;
    for (const MouldPtr& mould : moulds) {
        if (!mould || later.count(mould->casting) > 0 || days.count(mould->casting) == 0) continue;
        Built one{mould.get(), days.at(mould->casting).pour, days.at(mould->casting).out, 1};
        const auto list = listOf.find(mould->casting);
        if (list != listOf.end()) {
            one.uses = int(list->second.size());
            for (const std::string& id : list->second) {
                one.wantedDay = std::min(one.wantedDay, days.at(id).pour);
                one.freeDay = std::max(one.freeDay, days.at(id).out);
            }
        }
        built.push_back(one);
    }
    std::stable_sort(built.begin(), built.end(),
                     [](const Built& a, const Built& b) { return a.wantedDay < b.wantedDay; });
    return built;
}

class Sawing {
public:
    Sawing(const Plan& plan, std::vector<Built> built)
        : built_(std::move(built)), usual_(usualUses(assumptionsOf(plan).mouldSurface))
    {
    }

    LaterBoards saw()
    {
        for (std::size_t i = 0; i < built_.size();) {
            const int day = built_[i].wantedDay;
            std::vector<Wanted> wanted;
            std::size_t end = i;
            for (; end < built_.size() && built_[end].wantedDay == day; ++end) {
                for (const MouldPart& part : built_[end].mould->parts) {
                    if (isMouldBoard(part) && part.count > 0)
                        wanted.push_back({&part, built_[end].mould->casting, part.count});
                }
            }
            sawFor(day, wanted, true);
            sawFor(day, wanted, false);
            for (; i < end; ++i) addBase(built_[i]);
        }
        return std::move(result_);
    }

private:
    /// What lies in its mould now is free later.
    void addBase(const Built& built)
    {
        const Mould& mould = *built.mould;
        if (mould.screws.foam > 0) return;  // holes all over
        for (const MouldPart& part : mould.parts) {
            if (part.kind != MouldPartKind::base || part.stuff != MouldStuff::board || part.count != 1) continue;
            const Region clean = offset(intersect(mould.inside, part.outline), -kOldEdgeMm, OffsetJoin::mitre);
            const Box box = largestRectangle(clean);
            if (!(box.width() >= kLeastCleanMm) || !(box.height() >= kLeastCleanMm)) continue;
            const Size size{box.width(), box.height()};
            const auto before = usesOf_.find(part.name);
            const int uses = built.uses + (before == usesOf_.end() ? 0 : before->second);
            free_.push_back({part.name, mould.casting, built.freeDay, box.low, size, {}, size, part.thicknessMm, uses});
        }
    }

    /// One round over the boards that still give a good face (`fresh`), or over those that do not.
    void sawFor(int day, std::vector<Wanted>& wanted, bool fresh)
    {
        SheetCutting list;
        list.sawMm = kHomeSawMm;
        std::vector<std::size_t> stock;
        std::vector<std::size_t> asked;
        for (std::size_t i = 0; i < free_.size(); ++i) {
            if (free_[i].freeDay >= day || (free_[i].uses < usual_) != fresh) continue;
            stock.push_back(i);
            list.stock.push_back({free_[i].size, 0.0, 1});
        }
        for (std::size_t i = 0; i < wanted.size(); ++i) {
            const MouldPart& part = *wanted[i].part;
            if (wanted[i].count < 1 || (part.goodFace && !fresh)) continue;
            const auto isOther = [&](std::size_t k) { return free_[k].thicknessMm != part.thicknessMm; };
            if (std::any_of(stock.begin(), stock.end(), isOther)) continue;
            asked.push_back(i);
            list.pieces.push_back({part.name, {part.lengthMm, part.widthMm}, wanted[i].count, true});
        }
        if (stock.empty() || asked.empty() || !sheetTroubles(list).empty()) return;
        std::vector<Free> left;
        std::set<std::size_t> sawn;
        for (const CutSheet& sheet : cutSheets(list, {kEffort}).sheets) {
            const std::size_t index = stock[std::size_t(sheet.stock)];
            const Free& from = free_[index];
            LaterCut cut{from.board, from.casting, day - 1, from.freeDay, from.cleanAt, from.clean, from.uses, {}};
            for (const PlacedPiece& placed : sheet.pieces) {
                Wanted& want = wanted[asked[std::size_t(placed.piece)]];
                --want.count;
                usesOf_[want.part->name] = std::max(usesOf_[want.part->name], from.uses);
                cut.pieces.push_back({want.part->name, want.casting, want.part->kind,
                                      from.at + placed.at, placed.size});
                result_.savesM2 += placed.size.width * placed.size.depth * kM2PerMm2;
            }
            if (cut.pieces.empty()) continue;
            sawn.insert(index);
            for (const SheetArea& rest : sheet.remainders) {
                if (rest.size.width < kLeastCleanMm || rest.size.depth < kLeastCleanMm) continue;
                Free piece = from;
                piece.at = from.at + rest.at;
                piece.size = rest.size;
                left.push_back(std::move(piece));
            }
            result_.cuts.push_back(std::move(cut));
        }
        std::vector<Free> kept;
        for (std::size_t i = 0; i < free_.size(); ++i) {
            if (sawn.count(i) == 0) kept.push_back(std::move(free_[i]));
        }
        kept.insert(kept.end(), left.begin(), left.end());
        free_ = std::move(kept);
    }

    std::vector<Built> built_;
    int usual_ = 1;
    std::vector<Free> free_;
    std::map<std::string, int> usesOf_;  ///< of boards that came out of old ones
    LaterBoards result_;
};

}  // namespace

int LaterBoards::countOf(const std::string& name) const
{
    int count = 0;
    for (const LaterCut& cut : cuts) {
        count += int(std::count_if(cut.pieces.begin(), cut.pieces.end(),
                                   [&](const LaterPiece& piece) { return piece.name == name; }));
    }
    return count;
}

int LaterBoards::boardCount() const
{
    int count = 0;
    for (const LaterCut& cut : cuts) count += int(cut.pieces.size());
    return count;
}

int LaterBoards::baseCount() const
{
    std::set<std::string> bases;
    for (const LaterCut& cut : cuts) bases.insert(cut.board);
    return int(bases.size());
}

LaterBoards laterBoards(const Plan& plan, const std::vector<MouldPtr>& moulds, const PourPlan& pour)
{
    return Sawing(plan, builtMoulds(plan, moulds, pour)).saw();
}

CutJobs withoutLater(const CutJobs& jobs, const LaterBoards& later)
{
    CutJobs left = jobs;
    for (SheetJob& job : left.sheets) {
        std::vector<CutPiece> pieces;
        std::vector<SheetPiece> listed;
        for (std::size_t i = 0; i < std::min(job.pieces.size(), job.list.pieces.size()); ++i) {
            SheetPiece piece = job.list.pieces[i];
            piece.count -= later.countOf(job.pieces[i].name);
            if (piece.count < 1) continue;
            pieces.push_back(job.pieces[i]);
            listed.push_back(std::move(piece));
        }
        job.pieces = std::move(pieces);
        job.list.pieces = std::move(listed);
    }
    std::erase_if(left.sheets, [](const SheetJob& job) { return job.pieces.empty(); });
    return left;
}

}  // namespace yardcast
