#pragma once

#include <limits>
#include <string>
#include <vector>

#include "core/castings/casting.h"
#include "core/plan/finding.h"

/// What is to be said about how steel lies. For core/reinforcement only.
namespace yardcast {

/// Of the mix at 28 days; of the usual C25/30 where the plan does not say.
double fctk005Mpa(const Plan& plan, const std::string& mixId);

/// Checks part by part; what concerns many parts alike is said once, at the end.
///
/// | code               | severity | values                               | means                                    |
/// | ------------------ | -------- | ------------------------------------ | ---------------------------------------- |
/// | bar_outside        | caution  | cover_mm                             | no bar of the group lies in the concrete |
/// | cover_outside      | stop     | cover_mm, steel_mm, thickness_mm     | steel would stick out                    |
/// | bars_close         | caution  | clear_mm, least_mm                   | 8.2(2)                                   |
/// | mesh_wide          | note     | pitch_mm, most_mm, thickness_mm      | 9.3.1.1(3)                               |
/// | cover_thin         | note     | least_mm, asked_mm, exposure         | plain steel, below 4.4.1                 |
/// | cover_zinc         | note     | least_mm, asked_mm, exposure         | galvanised steel, likewise               |
/// | slab_thin          | note     | thickness_mm, asked_mm, exposure     | no cover on both faces fits: no structure |
/// | fibres_not_counted | note     |                                      | glass and basalt have no part in strength |
/// | bars_short         | note     | length_mm, anchorage_mm, share_percent | 8.4: holds only a share of its strength |
class SteelChecks {
public:
    SteelChecks(const Plan& plan, std::vector<Finding>& findings);

    /// `castings` of the part at `index`.
    void check(std::size_t index, const Steel& steel, const std::vector<CastingPtr>& castings);
    void sayWholePlan();

private:
    /// Parts that share one finding, and the worst of them: the least of `measure`.
    struct Shared {
        std::vector<std::string> parts;
        double least = std::numeric_limits<double>::infinity();
        std::string pointer;
        std::map<std::string, FindingValue> values;

        void see(const std::string& part, double measure, const std::string& where,
                 std::map<std::string, FindingValue> own);
    };

    void checkMesh(const Mesh& mesh, const std::string& pointer);
    void checkBars(const BarGroup& group, const std::string& pointer);
    /// `steelMm` is how thick the steel lies on its cover; behind it, the cover is what remains.
    void checkCover(double coverMm, double barMm, double steelMm, double thicknessMm, SteelMaterial material,
                    const std::string& pointer);
    void checkClear(double clearMm, double diameterMm, const std::string& pointer);
    void checkLength(const BarGroup& group, double longestMm, const std::string& pointer);
    void add(const char* code, Severity severity, const std::string& pointer,
             std::map<std::string, FindingValue> values);
    void say(const char* code, const Shared& shared);

    const Plan& plan_;
    std::vector<Finding>& findings_;
    Exposure exposure_;
    std::string exposureWord_;
    Shared plainCover_;
    Shared zincCover_;
    Shared thinSlabs_;
    Shared fibres_;
    Shared shortBars_;

    // Of the part that is being checked.
    std::string part_;
    const std::vector<CastingPtr>* castings_ = nullptr;
    double thinnestMm_ = 0.0;
    double aggregateMm_ = 0.0;
    double fctk005Mpa_ = 0.0;
};

}  // namespace yardcast
