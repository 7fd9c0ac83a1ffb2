#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <utility>

#include "core/mould/mould_parts.h"
#include "core/plan/shared_moulds.h"
#include "core/purchase/cut_lists.h"
#include "core/purchase/mould_items.h"
#include "core/purchase/needs.h"
#include "core/purchase/plan_prices.h"

namespace yardcast {

namespace {

constexpr double kSameThicknessMm = 0.5;

class JobMaker {
public:
    JobMaker(const Plan& plan, const PriceBook& book) : moulding_(mouldingOf(plan)), prices_(plan, book), later_(laterCastings(plan))
    {
        for (const Owned& owned : plan.owned) {
            if (owned.amount > 0.0) owned_[owned.item] += owned.amount;
        }
    }

    void addMould(const Mould& mould)
    {
        const bool isShared = later_.count(mould.casting) > 0;
        for (const MouldPart& part : mould.parts) {
            // Boards serve again; foam within the concrete is each casting's own.
            if (isShared && !isFoamInside(part)) continue;
            const MouldItem item =
                mouldItemOf(prices_, part.kind, part.stuff, part.bent, part.widthMm, part.thicknessMm);
            if (item.keys.empty() || part.count < 1 || !(part.lengthMm > 0.0) || !(part.widthMm > 0.0)) continue;
            CutPiece piece{mould.casting, part.name, mouldPartWord(part.kind), part.goodFace, part.shaped};
            piece.cutDownToMm = item.cutDownToMm;
            piece.mitreDeg = part.mitreDeg;
            if (isSheet(part.stuff)) {
                const bool board = isMouldBoard(part);
                addSheetPiece(item.keys, item.thicknessMm, board, piece, {part.lengthMm, part.widthMm},
                              part.count * item.layers);
            } else {
                addBarPiece(item.keys, item.detail, {part.widthMm, part.thicknessMm},
                            part.stuff == MouldStuff::rod ? kBarSawMm : kTimberSawMm, piece, part.lengthMm, part.count);
            }
        }
    }

    void addSteel(const CastingSteelLayout& layout)
    {
        for (const MeshLayout& mesh : layout.meshes) {
            std::map<int, std::pair<Size, int>> marks;
            for (const MeshPiece& piece : mesh.pieces) {
                auto& [size, count] = marks[piece.mark];
                size = {piece.at.width(), piece.at.height()};
                ++count;
            }
            const std::vector<std::string> keys{meshItem(mesh.barMm, mesh.pitchMm, mesh.material)};
            for (const auto& [mark, piece] : marks) {
                addSheetPiece(keys, mesh.barMm, false,
                              {layout.casting, layout.casting + "-" + std::to_string(mark), "mesh", false, false},
                              piece.first, piece.second);
            }
        }
        for (const BarListRow& row : layout.barList) {
            if (row.suggested || row.count < 1 || !(row.cutLengthMm > 0.0)) continue;
            addBarPiece({barItem(row.diameterMm, row.material)}, {}, {row.diameterMm, row.diameterMm}, kBarSawMm,
                        {layout.casting, layout.casting + "-" + std::to_string(row.mark), "bar", false, false},
                        row.cutLengthMm, row.count);
        }
    }

    void addFront(const FrontLayout& layout, const Front& front)
    {
        if (!layout.solved) return;
        for (std::size_t i = 0; i < layout.pieces.size(); ++i) {
            const TimberPiece& piece = layout.pieces[i];
            if (piece.count < 1 || !(piece.lengthMm > 0.0)) continue;
            const bool batten = piece.name == "batten" || piece.name == "door_batten";
            addBarPiece(batten ? battenKeys(front) : std::vector<std::string>{"frame_timber"},
                        batten ? battenDetail(front) : "", {piece.widthMm, piece.thicknessMm}, kTimberSawMm,
                        {layout.part, layout.part + "-" + std::to_string(i + 1), piece.name, false, false},
                        piece.lengthMm, piece.count);
        }
    }

    CutJobs take() { return std::move(jobs_); }

private:
    /// The name as the shopping list has it.
    std::string nameOf(const std::string& item, const std::string& detail) const
    {
        const PlanPrices::Entry* entry = prices_.find(item);
        const std::string name = entry && entry->item ? entry->item->name : item;
        return detail.empty() ? name : name + " (" + detail + ")";
    }

    void addWithoutStock(const std::string& item, const CutPiece& piece)
    {
        auto& all = jobs_.withoutStock;
        auto at = std::find_if(all.begin(), all.end(), [&](const CutWithoutStock& one) { return one.item == item; });
        if (at == all.end()) at = all.insert(all.end(), {item, {}});
        at->pieces.push_back(piece);
    }

    /// Whole packs of the smallest size that the plan owns; they are given away once.
    int ownedPacks(const std::string& item, double packSize)
    {
        const auto owned = owned_.find(item);
        if (owned == owned_.end() || !(packSize > 0.0)) return 0;
        const double packs = std::min(std::floor(owned->second / packSize + 1e-9), 1e6);
        owned_.erase(owned);
        return static_cast<int>(packs);
    }

    SheetJob* sheetJob(const std::vector<std::string>& keys, double thicknessMm, bool board)
    {
        const std::string item = prices_.keyFor(keys);
        for (SheetJob& job : jobs_.sheets) {
            if (job.item == item && std::abs(job.thicknessMm - thicknessMm) < kSameThicknessMm) return &job;
        }
        SheetJob job;
        job.item = item;
        job.name = nameOf(item, {});
        job.thicknessMm = thicknessMm;
        job.atStore = board;
        job.list.sawMm = board ? moulding_.sawMm : 0.0;
        job.list.trimMm = board ? moulding_.trimMm : 0.0;
        job.list.leastStripMm = board ? moulding_.leastStripMm : 0.0;
        const auto addStock = [&](Size size, const CutStock& stock, std::optional<int> count) {
            job.stock.push_back(stock);
            job.list.stock.push_back({size, static_cast<double>(stock.priceMinor), count});
        };
        for (const Offcut& offcut : moulding_.offcuts) {
            if (!board || std::abs(offcut.thicknessMm - thicknessMm) > kSameThicknessMm) continue;
            addStock(offcut.size, {0.0, 0, true}, offcut.count);
        }
        if (const PlanPrices::Entry* entry = prices_.find(item)) {
            const Pack* smallest = nullptr;
            for (const Pack& pack : entry->packs) {
                if (pack.sheet && (!smallest || pack.size < smallest->size)) smallest = &pack;
            }
            if (smallest) {
                const int owned = ownedPacks(item, smallest->size);
                if (owned > 0) addStock(*smallest->sheet, {smallest->size, 0, true}, owned);
            }
            for (const Pack& pack : entry->packs) {
                if (!pack.sheet || static_cast<double>(pack.priceMinor) > kDearestSheet) continue;
                addStock(*pack.sheet, {pack.size, pack.priceMinor, false}, std::nullopt);
            }
            if (board && entry->cuts && static_cast<double>(entry->cuts->priceMinor) <= kDearestSheet) {
                job.list.cutPrice = static_cast<double>(entry->cuts->priceMinor);
                job.list.freeCuts = entry->cuts->freeASheet;
            }
        }
        if (job.stock.empty()) return nullptr;
        jobs_.sheets.push_back(std::move(job));
        return &jobs_.sheets.back();
    }

    void addSheetPiece(const std::vector<std::string>& keys, double thicknessMm, bool board, CutPiece piece, Size size,
                       int count)
    {
        SheetJob* job = sheetJob(keys, thicknessMm, board);
        if (job == nullptr) {
            addWithoutStock(prices_.keyFor(keys), piece);
            return;
        }
        if (piece.what != "mesh") parted(*job, size, count, piece);
        job->pieces.push_back(piece);
        job->list.pieces.push_back({piece.name, size, count, true});
    }

    /// What is larger than every sheet is put together of equal parts: foam taped where they meet, boards on cleats.
    static void parted(const SheetJob& job, Size& size, int& count, CutPiece& piece)
    {
        double longest = 0.0;
        double widest = 0.0;
        const double trims = 2 * job.list.trimMm;
        for (const SheetStock& stock : job.list.stock) {
            const double length = std::max(stock.size.width, stock.size.depth) - trims;
            const double width = std::min(stock.size.width, stock.size.depth) - trims;
            if (length >= std::max(size.width, size.depth) - 1e-6 && width >= std::min(size.width, size.depth) - 1e-6)
                return;
            if (length * width <= longest * widest) continue;
            longest = length;
            widest = width;
        }
        double& length = size.width >= size.depth ? size.width : size.depth;
        double& width = size.width >= size.depth ? size.depth : size.width;
        const auto parts = [](double all, double most) { return std::clamp(std::ceil(all / most - 1e-9), 1.0, 100.0); };
        const double along = parts(length, longest);
        const double across = parts(width, widest);
        // In whole millimetres, for they are trimmed where they meet.
        if (along > 1.0) length = std::ceil(length / along - 1e-6);
        if (across > 1.0) width = std::ceil(width / across - 1e-6);
        piece.parts = static_cast<int>(along * across);
        count *= piece.parts;
    }

    /// Those lie on a board all along, and may be butted.
    static bool isStrip(const CutPiece& piece)
    {
        return piece.what == mouldPartWord(MouldPartKind::chamfer) || piece.what == mouldPartWord(MouldPartKind::drip) ||
               piece.what == mouldPartWord(MouldPartKind::rebate);
    }

    BarJob* barJob(const std::vector<std::string>& keys, const std::string& detail, Size section, double sawMm)
    {
        const std::string item = prices_.keyFor(keys);
        const std::string name = nameOf(item, detail);
        for (BarJob& job : jobs_.bars) {
            if (job.item == item && job.name == name) return &job;
        }
        BarJob job;
        job.item = item;
        job.name = name;
        job.section = section;
        job.list.sawMm = sawMm;
        const auto addStock = [&](double lengthMm, const CutStock& stock, std::optional<int> count) {
            job.stock.push_back(stock);
            job.list.stock.push_back({lengthMm, static_cast<double>(stock.priceMinor), count});
        };
        if (const PlanPrices::Entry* entry = prices_.find(item)) {
            const bool byLength = entry->item == nullptr || entry->item->unit == "m";
            const std::vector<Pack> packs = byLength ? entry->packs : std::vector<Pack>{};
            const auto smallest = std::min_element(packs.begin(), packs.end(),
                                                   [](const Pack& a, const Pack& b) { return a.size < b.size; });
            if (smallest != packs.end()) {
                const int owned = ownedPacks(item, smallest->size);
                if (owned > 0) addStock(smallest->size * 1000.0, {smallest->size, 0, true}, owned);
            }
            for (const Pack& pack : packs) {
                if (pack.size * 1000.0 > kLongestBarMm || static_cast<double>(pack.priceMinor) > kDearestBar) continue;
                addStock(pack.size * 1000.0, {pack.size, pack.priceMinor, false}, std::nullopt);
            }
        }
        if (job.stock.empty()) return nullptr;
        jobs_.bars.push_back(std::move(job));
        return &jobs_.bars.back();
    }

    void addBarPiece(const std::vector<std::string>& keys, const std::string& detail, Size section, double sawMm,
                     CutPiece piece, double lengthMm, int count)
    {
        BarJob* job = barJob(keys, detail, section, sawMm);
        if (job == nullptr) {
            addWithoutStock(prices_.keyFor(keys), piece);
            return;
        }
        if (isStrip(piece)) {
            double longest = 0.0;
            for (const BarStock& stock : job->list.stock) longest = std::max(longest, stock.lengthMm);
            piece.parts = static_cast<int>(std::clamp(std::ceil(lengthMm / longest - 1e-9), 1.0, 100.0));
            if (piece.parts > 1) lengthMm = std::ceil(lengthMm / piece.parts - 1e-6);
            count *= piece.parts;
        }
        job->pieces.push_back(piece);
        job->list.pieces.push_back({piece.name, lengthMm, count});
    }

    Moulding moulding_;
    PlanPrices prices_;
    std::map<std::string, double> owned_;
    std::set<std::string> later_;   ///< castings that come out of another's mould
    CutJobs jobs_;
};

}  // namespace

CutJobs cutJobs(const Plan& plan, const PriceBook& prices, const std::vector<MouldPtr>& moulds,
                const SteelSchedule& steel, const std::vector<FrontLayout>& fronts)
{
    JobMaker maker(plan, prices);
    for (const MouldPtr& mould : moulds) {
        if (mould) maker.addMould(*mould);
    }
    for (const CastingSteelLayoutPtr& layout : steel.layouts) {
        if (layout) maker.addSteel(*layout);
    }
    for (const FrontLayout& layout : fronts) {
        const Part* part = findPart(plan, layout.part);
        const auto* front = part ? std::get_if<Front>(&part->body) : nullptr;
        if (front) maker.addFront(layout, *front);
    }
    return maker.take();
}

}  // namespace yardcast
