#pragma once

#include <cstdint>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "core/castings/casting.h"
#include "core/mould/mould.h"
#include "core/plan/assumptions.h"
#include "core/plan/finding.h"
#include "core/plan/plan.h"
#include "core/pour/mix_quantities.h"
#include "core/pour/pour_plan.h"
#include "core/pour/weather.h"

/// Castings of the same mould: poured at once in as many moulds, or one after the other in fewer. Money against days.
namespace yardcast {

/// How often a mould's face gives a good one, by its surface: common practice without a source, and it varies widely
/// with care, release agent and how the edges are sealed.
int usualUses(MouldSurface surface);

/// So many moulds for a group of castings that are the same.
struct SharingOption {
    std::vector<std::vector<std::string>> moulds;  ///< what comes out of each, in this order
    int uses = 1;              ///< of the mould that is used most
    bool worn = false;         ///< more than `usualUses`
    int days = 1;              ///< calendar days from the first to the last pour of the whole plan, both counted
    int moreDays = 0;          ///< than with the plan as it is; below 0: fewer
    double savesM2 = 0.0;      ///< of boards of moulds that are not built; below 0: more
    std::optional<std::int64_t> savesMinor;  ///< boards and their cuts, whole sheets; nothing where nobody reckoned it
    Plan after;                ///< the plan with it
};

/// Castings that may come out of one mould.
struct SharingGroup {
    std::vector<std::string> castings;  ///< in the order of pouring
    int mouldsNow = 0;                  ///< in the plan as it is
    double waitH = 0.0;                 ///< so long each lies in its mould (`MouldHours`), the longest of them
    std::vector<SharingOption> options; ///< other numbers of moulds, most moulds first
};

struct MouldSharing {
    int days = 1;                       ///< of the plan as it is
    std::vector<SharingGroup> groups;   ///< of two or more; in the order of pouring
};
using MouldSharingPtr = std::shared_ptr<const MouldSharing>;

/// What is needed besides the plan to pour it.
struct PourGround {
    const std::vector<CastingPtr>& castings;
    const std::vector<MixQuantities>& quantities;
    const PourWeather& weather;
};

/// What the boards of a changed plan's moulds cost with their cuts, minor units.
using BoardsPrice = std::function<std::int64_t(const Plan&)>;

/// The plan with these castings coming out of `count` moulds, dealt out in turn; other lists keep what is not of them.
Plan withMoulds(const Plan& plan, const std::vector<std::string>& castings, int count);

/// All groups with one mould, half as many moulds as castings, one less than castings, and as many as castings, each
/// poured again by `pourPlan`. `price` may be empty. Pure. Findings about the plan's own lists:
/// - shared_not_same (caution; values casting, with): it does not come out of the mould of the list's first casting;
/// - shared_unknown (note; value id): no casting has this id;
/// - mould_worn (note; values uses, usual): it is used more often than its surface usually stands.
MouldSharing mouldSharing(const Plan& plan, const PourGround& ground, const std::vector<MouldPtr>& moulds,
                          const PourPlan& pour, const BoardsPrice& price, std::vector<Finding>& findings);

/// An option as an edit of the plan. "share_mould" with the values castings, moulds, saves, currency, more_days, uses;
/// with more moulds than now "more_moulds" with costs in place of saves. Money only where it is reckoned.
Remedy optionRemedy(const Plan& plan, const SharingGroup& group, const SharingOption& option);

/// The edit that saves most for the fewest days, as a remedy for too high a sum (`optionRemedy`). `wantedMinor`: what is to be saved; the fewest days that save so
/// much, else the most money. Nothing where no option saves.
std::optional<Remedy> sharingRemedy(const Plan& plan, const MouldSharing& sharing, std::int64_t wantedMinor);

}  // namespace yardcast
