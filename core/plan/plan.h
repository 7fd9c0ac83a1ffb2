#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "core/plan/assumptions.h"
#include "core/plan/conditions.h"
#include "core/plan/mix.h"
#include "core/plan/moulding.h"
#include "core/plan/parts.h"

namespace yardcast {

struct Ground {
    double levelMm = 0.0;
    double fallPercent = 0.0;
    double fallTowardsDeg = 270.0;
    FileSource source;
    friend bool operator==(const Ground&, const Ground&) = default;
};

enum class FixtureKind { water, waste, power, gas, wall, tree, door, other };

/// Something of the site that does not move: `at` is the low corner of its box, or the point itself without a size.
struct Fixture {
    std::string id;
    FixtureKind kind = FixtureKind::other;
    Point at;
    std::optional<Size> size;
    FileSource source;
    friend bool operator==(const Fixture&, const Fixture&) = default;
};

struct Site {
    std::optional<std::vector<Point>> outline;
    std::optional<Ground> ground;
    std::vector<Fixture> fixtures;
    FileSource source;
    friend bool operator==(const Site&, const Site&) = default;
};

struct Crew {
    int people = 2;
    double liftLimitKg = 25.0;
    FileSource source;
    friend bool operator==(const Crew&, const Crew&) = default;
};

struct Mixer {
    double drumL = 63.0;
    double batchMinutes = 8.0;
    double usablePercent = 65.0;  ///< of the drum that can be filled; common practice 50 to 80, no source
    FileSource source;
    friend bool operator==(const Mixer&, const Mixer&) = default;
};

/// Whole currency units, as the maker types them.
struct Budget {
    double limit = 0.0;
    std::optional<double> quote;
    FileSource source;
    friend bool operator==(const Budget&, const Budget&) = default;
};

/// What the maker already has of an item of the price book, in the item's unit.
struct Owned {
    std::string item;
    double amount = 0.0;
    FileSource source;
    friend bool operator==(const Owned&, const Owned&) = default;
};

/// A price of the maker's own that overrides the price book: one pack size of one item.
struct OwnPrice {
    std::string item;
    double packSize = 0.0;
    double price = 0.0;
    FileSource source;
    friend bool operator==(const OwnPrice&, const OwnPrice&) = default;
};

using PartPtr = std::shared_ptr<const Part>;

/// The maker's plan: an immutable value. Parts are shared between plans that do not change them, so holding many
/// plans (undo) is cheap. Ids of parts are unique, and so are ids of mixes.
struct Plan {
    std::string title;
    std::string currency = "EUR";
    Site site;
    Conditions conditions;
    Crew crew;
    std::optional<Mixer> mixer;
    std::optional<Budget> budget;
    std::vector<Mix> mixes;
    std::optional<Pouring> pouring;       ///< file key "pour"
    std::optional<Moulding> moulding;     ///< file key "mould"; default: each at its own default
    std::vector<MonthWeather> season;     ///< file key "season"
    std::optional<Assumptions> assumptions;  ///< default: each at its own default, see `assumptionsOf`
    std::vector<PartPtr> parts;
    std::vector<Owned> owned;      ///< file key "owned"
    std::vector<OwnPrice> prices;  ///< file key "prices"
    FileSource source;
};

/// Deep equality; parts that are the same object compare at once.
bool operator==(const Plan& a, const Plan& b);

using PlanPtr = std::shared_ptr<const Plan>;

/// The part with this id, or null.
const Part* findPart(const Plan& plan, const std::string& id);
const Mix* findMix(const Plan& plan, const std::string& id);
/// The plan's assumptions with what is no sensible number replaced by its default (validation says so); the defaults
/// where the plan has none.
Assumptions assumptionsOf(const Plan& plan);
/// Likewise how the moulds are built.
Moulding mouldingOf(const Plan& plan);
/// Index in `plan.parts`, or -1.
int indexOfPart(const Plan& plan, const std::string& id);

/// The steel of a counter or panel; null where it has none.
const Steel* steelOf(const PartBody& body);
/// Whether it is poured standing: then it is neither torn off its front nor tilted, and never carried flat. Counters
/// never are.
bool isCastUpright(const PartBody& body);
/// Of the filler of a counter (the default's where it has none: its hollows are made of foam too) or the core of a
/// support or panel; 0 without a core.
double foamDensityKgM3(const PartBody& body);
/// The ring of a cutout in the counter's frame.
Ring cutoutRing(const Cutout& cutout);
/// What the part covers seen from above, in plan axes: the outline of a counter (cutouts not taken out), the
/// rectangle of a support, panel or appliance, the strip of a front (batten thickness on the visible side).
Ring footprint(const Part& part);
/// Lowest and highest point above the datum, mm.
struct Levels {
    double lowMm = 0.0;
    double highMm = 0.0;
};
/// A counter's low is its face less the rim's depth (or the thickness). For an appliance on a counter the counter's
/// face is its base.
Levels levelsOf(const Plan& plan, const Part& part);
/// A support may end this far, mm, and its pads' thickness below the slab: bedding and levelling make it up. Common
/// practice, no source.
inline constexpr double kBeddingMm = 15.0;
/// Depth of a counter at its deepest, mm.
double fullDepthMm(const Counter& counter);

}  // namespace yardcast
