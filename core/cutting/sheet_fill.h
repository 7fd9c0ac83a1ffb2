#pragma once

#include <cstdint>
#include <stop_token>
#include <vector>

#include "core/cutting/sheet_tree.h"

namespace yardcast::sheets {

/// A cut costs about as much as such a share of a board. Common practice, no source.
inline constexpr double kCutsASheet = 40.0;

/// What a filling is judged by once all pieces are placed; the first difference decides.
struct FillWorth {
    std::int64_t price = 0;        ///< of sheets and cuts
    double paidArea = 0.0;         ///< of pieces on sheets that are paid: offcuts at hand are used first
    int cuts = 0;
    int settings = 0;              ///< of the fence
    double rest = 0.0;             ///< the largest of a sheet that is paid, else of any, beside the largest sheet
    /// Cuts, half a cut a setting, less what the rest is worth kept in one piece.
    double troubleAt(double restShare) const { return cuts + 0.5 * settings - restShare * kCutsASheet * rest; }
    bool betterThan(const FillWorth& other) const
    {
        if (price != other.price) {
            return price < other.price;
        }
        if (paidArea != other.paidArea) {
            return paidArea < other.paidArea;
        }
        const double trouble = troubleAt(1.0);
        const double others = other.troubleAt(1.0);
        return trouble != others ? trouble < others : cuts < other.cuts;
    }
};

struct CutCosts {
    std::int64_t price = 0;        ///< of one cut
    int free = 0;                  ///< of each sheet
    int always = 0;                ///< cuts that each sheet needs before all others (its trimming)
};

/// Fills given sheets by taking some pieces away and putting them back elsewhere, over and over (ruin and recreate, after
/// Schrimpf et al. 2000, "Record breaking optimization results using the ruin and recreate principle", J. Comput. Phys. 159).
class SheetFiller {
public:
    SheetFiller(const std::vector<Item>& items, const std::vector<Bin>& sheets, CutCosts costs, std::uint64_t seed,
                std::stop_token stop);

    /// One construction from empty sheets by the rule of this number; the rules differ in order and fit.
    void construct(int rule);
    /// Until all is placed (true) or `places` were tried. Keeps the most area placed.
    bool pack(std::uint64_t places);
    /// For fewer cuts and larger rests, with all pieces placed before and after.
    void polish(std::uint64_t places);

    const SheetForest& forest() const { return forest_; }
    const std::vector<int>& left() const { return left_; }
    double leftArea() const { return leftArea_; }
    std::uint64_t placesTried() const { return tried_; }
    FillWorth worth() const { return worthOf(forest_); }
    /// Starts from a filling made before.
    void resume(const SheetForest& forest, const std::vector<int>& left);

private:
    struct Rule {
        int order = 0;
        int fit = 0;
        int split = 0;
        int skipOneIn = 0;   ///< passes over a place now and then; 0 never
    };
    enum class Keep { mostPlaced, leastCost };
    /// For some of another's sheets.
    SheetFiller(const SheetFiller& whole, const std::vector<Bin>& sheets, std::uint64_t seed);
    bool walk(std::uint64_t places, Keep keep);
    void packSome(int sheets);
    Rule randomRule();
    void ruin(int mostTaken);
    void recreate(const Rule& rule);
    bool placeBest(int item, const Rule& rule);
    double cost() const;
    double polishCost(const FillWorth& worth, double restShare) const;
    void polishFor(std::uint64_t places, double restShare);
    void tightenBest();
    FillWorth worthOf(const SheetForest& forest) const;
    void tightenAll();
    std::uint64_t turnWork() const;
    double areaLeft() const;

    const std::vector<Item>& items_;
    std::vector<Bin> sheets_;
    CutCosts costs_;
    Dice dice_;
    std::stop_token stop_;
    std::vector<std::vector<int>> orders_;
    SheetForest forest_;
    std::vector<int> left_;
    double leftArea_ = 0.0;
    double largestSheet_ = 0.0;
    bool anyFree_ = false;         ///< some sheets are paid and some are not
    std::uint64_t tried_ = 0;
};

}  // namespace yardcast::sheets
