#pragma once

#include <set>
#include <string>
#include <vector>

#include "core/plan/finding.h"
#include "core/plan/plan.h"

namespace yardcast {

/// Codes of what validation has to say. Values end in their unit; words and plain numbers say what they are. The first
/// subject is the part or mix the finding is about; where two parts are concerned the second is the other one. `cutout`
/// is an id; `door`, `joint`, `rib`, `grip` count from 1; `edge` is an index as in the file, from 0.
///
/// | code                    | severity | values                                     | means                          |
/// | ----------------------- | -------- | ------------------------------------------ | ------------------------------ |
/// | not_a_number            | stop     | key                                        | not finite                     |
/// | number_out_of_range     | stop     | key, value, least, most, unit              | negative, zero or absurd       |
/// | too_many                | stop     | key, count, most                           | members of one list            |
/// | outline_few_corners     | stop     | count                                      | fewer than three               |
/// | outline_too_large       | stop     | width_mm, depth_mm, most_mm                |                                |
/// | outline_crosses_itself  | stop     | edge, other_edge                           |                                |
/// | outline_no_area         | stop     | area_mm2                                   |                                |
/// | line_no_length          | stop     |                                            | from and to are one point      |
/// | rim_shallower_than_slab | stop     | depth_mm, thickness_mm                     |                                |
/// | rim_too_wide            | caution  | width_mm, most_mm                          | no field is left               |
/// | rim_edge_unknown        | stop     | edge, last_edge                            | index names no edge            |
/// | needs_rim               | caution  | what: filler, ribs, cutout_rim             | has no depth without a rim     |
/// | cutout_outside          | stop     | cutout, outside_mm                         | 0: it touches the edge         |
/// | cutouts_overlap         | stop     | cutout, other_cutout                       |                                |
/// | strip_narrow            | caution  | cutout, strip_mm, least_mm                 | between cutout and edge        |
/// | strip_between_narrow    | caution  | cutout, other_cutout, strip_mm, least_mm   | between two cutouts            |
/// | corner_radius_large     | caution  | cutout, radius_mm, most_mm                 | it is cut to half the side     |
/// | joint_not_through       | caution  | joint, short_mm                            | ends inside the slab           |
/// | joint_outside           | caution  | joint                                      | misses the slab                |
/// | joint_through_cutout    | caution  | joint, cutout                              |                                |
/// | joint_near_cutout       | caution  | joint, cutout, strip_mm, least_mm          |                                |
/// | rib_outside             | caution  | rib, outside_mm                            |                                |
/// | bar_outside             | caution  | outside_mm                                 | of the outline                 |
/// | cover_beyond_slab       | caution  | cover_mm, bar_mm, thickness_mm             | steel would stick out below    |
/// | load_outside            | caution  | load (its name), outside_mm                |                                |
/// | grip_outside            | caution  | grip, outside_mm                           |                                |
/// | core_too_large          | stop     | core_mm, part_mm                           | larger than support or panel   |
/// | core_wall_thin          | caution  | wall_mm, least_mm                          | concrete beside the core       |
/// | front_no_height         | stop     | bottom_mm, top_mm                          | its top is not above its foot  |
/// | door_no_width           | stop     | door                                       |                                |
/// | door_outside            | stop     | door, outside_mm                           | beyond the ends of the front   |
/// | doors_overlap           | stop     | door, other_door, overlap_mm               |                                |
/// | mix_unknown             | stop     | mix (may be empty)                         | no mix has this id             |
/// | on_unknown              | stop     | on                                         | no counter has this id         |
/// | appliance_off_counter   | caution  | counter, outside_mm                        | sticks out beyond its counter  |
/// | part_outside_site       | note     | outside_mm                                 |                                |
/// | part_meets_fixture      | caution  | fixture, overlap_mm                        | runs into a wall or tree       |
/// | parts_collide           | stop     | overlap_mm (in plan), height_mm            | two parts in one place         |
/// | support_inside_slab     | stop     | inside_mm                                  | ends above the underside       |
/// | support_short           | caution  | gap_mm, allowed_mm                         | ends below the underside       |
/// | counter_unsupported     | stop     | underside_mm (above the datum)             | rests on nothing               |
/// | not_all_compared        | caution  |                                            | too many parts in one place    |
/// | cement_above_bag        | stop     | cement_kg, bag_kg                          | more cement than the bag holds |
/// | high_below_low          | caution  | high_c, low_c                              |                                |
/// | measured_not_rising     | caution  | h, before_h                                | readings in the wrong order    |
/// | currency_unknown        | caution  | currency                                   | no ISO 4217 code               |
/// | site_few_corners        | caution  | count                                      |                                |
/// | site_crosses_itself     | caution  | edge, other_edge                           |                                |
///
/// `key` is the last key of the pointer (an index for a member of a pair), `unit` one of mm, percent, kg, l, c, deg, h,
/// people, pieces, kmh, minutes, money, amount, kg_m3, ratio, n, kpa, n_mm3, mpa, months.

/// What validation found, and which parts cannot be computed at all (sizes that are no sizes); those are left out of
/// every figure, and each has a stop finding that says so.
struct Validation {
    std::vector<Finding> findings;
    std::set<std::string> unusableParts;
    std::set<std::string> unusableMixes;
};

/// All problems of the plan at once, with the JSON pointer of each. Time grows as n log n with the number of parts
/// (neighbours by sweep). Never throws, whatever the numbers are.
Validation validate(const Plan& plan);

inline constexpr double kLeastStripMm = 40.0;  ///< concrete left beside a cutout; common practice, no source
inline constexpr double kLeastWallMm = 15.0;   ///< concrete left beside a core; common practice, no source

}  // namespace yardcast
