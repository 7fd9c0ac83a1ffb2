#include "core/front/front_layout.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "core/front/division.h"
#include "core/materials/materials.h"

namespace yardcast {

namespace {

// Common practice for doors and frames of battens, no source.
constexpr double kTallMm = 900.0;        ///< above: a third rail, a third hinge
constexpr double kHeavyLeafKg = 12.0;    ///< above: a third hinge
constexpr double kRailInsetMm = 100.0;   ///< outer rails' middle from the batten's ends
constexpr double kStilePitchMm = 600.0;  ///< level battens are held at least so often
constexpr int kScrewsACrossing = 2;
constexpr double kShiftWorthSayingMm = 5.0;
/// Difference of the diagonals, mm: up to 1.5 is good, above 3 an inset door shows it (trade practice, no source).
constexpr double kSquareMm = 1.5;
constexpr double kOutOfSquareMm = 3.0;
constexpr double kLongestFrontMm = 1e5;
constexpr double kNarrowestBattenMm = 5.0;
constexpr std::size_t kMostDoors = 100;

bool isUsable(const Front& front, double lengthMm, double heightMm)
{
    const auto isLength = [](double mm) { return mm > 0.0 && mm <= kLongestFrontMm; };
    const Batten& b = front.batten;
    return isLength(lengthMm) && isLength(heightMm) && isLength(b.thicknessMm) && isLength(b.widthMm) &&
           b.widthMm >= kNarrowestBattenMm && std::abs(b.gapMm) <= kLongestFrontMm &&
           front.doors.size() <= kMostDoors &&
           std::all_of(front.doors.begin(), front.doors.end(), [](const Door& d) {
               return std::abs(d.fromMm) <= kLongestFrontMm && std::abs(d.toMm) <= kLongestFrontMm;
           });
}

Finding finding(const Part& part, const char* code, Severity severity, std::map<std::string, FindingValue> values)
{
    return {code, severity, {part.id}, "", std::move(values), {}};
}

/// Adds up pieces of timber, equal ones together, and what follows from them.
class Timber {
public:
    Timber(FrontLayout& layout, const Batten& batten)
        : layout_(layout), batten_(batten), kgPerMm3_(timberKgM3(batten.species) * 1e-9)
    {
    }

    double addBattens(const char* name, double lengthMm, int count)
    {
        layout_.timberM += lengthMm * count / 1000;
        return add({name, lengthMm, batten_.widthMm, batten_.thicknessMm, count});
    }

    double addFrame(const char* name, double lengthMm, int count)
    {
        layout_.frameTimberM += lengthMm * count / 1000;
        return add({name, lengthMm, kFrameTimberMm, kFrameTimberMm, count});
    }

private:
    /// kg of these pieces.
    double add(TimberPiece piece)
    {
        if (piece.count < 1 || !(piece.lengthMm > 0.0)) return 0.0;
        const double massKg = piece.lengthMm * piece.widthMm * piece.thicknessMm * piece.count * kgPerMm3_;
        layout_.massKg += massKg;
        for (TimberPiece& other : layout_.pieces) {
            if (other.name == piece.name && std::abs(other.lengthMm - piece.lengthMm) < 0.05) {
                other.count += piece.count;
                return massKg;
            }
        }
        layout_.pieces.push_back(std::move(piece));
        return massKg;
    }

    FrontLayout& layout_;
    const Batten& batten_;
    double kgPerMm3_;
};

int railsFor(double battenLengthMm) { return battenLengthMm > kTallMm ? 3 : 2; }

int hingesFor(double heightMm, double leafKg) { return heightMm > kTallMm || leafKg > kHeavyLeafKg ? 3 : 2; }

/// A brace from corner to corner of the leaf's frame.
double braceMm(double widthMm, double heightMm)
{
    const double between = std::max(heightMm - 2 * kRailInsetMm, heightMm / 2);
    return std::hypot(widthMm, between);
}

/// Upright battens: fields between doors and the leaves themselves, each on rails of its own.
void frameUpright(FrontLayout& layout, Timber& timber, const Division& division, double battenMm)
{
    const int rails = railsFor(layout.heightMm);
    const auto spanOf = [&](int count) { return count * battenMm + (count - 1) * layout.gapMm; };
    timber.addBattens("batten", layout.heightMm, layout.battens);

    const auto addField = [&](int count) {
        if (count < 1) return;
        timber.addFrame("rail", spanOf(count), rails);
        layout.screws += count * rails * kScrewsACrossing;
    };
    std::vector<std::size_t> order(layout.doors.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return division.doorGaps[a].first < division.doorGaps[b].first;
    });
    const double kgPerBatten = layout.massKg / layout.battens;
    int next = 0;
    for (const std::size_t i : order) {
        const auto [from, to] = division.doorGaps[i];
        addField(from - next);
        next = to;
        DoorLayout& door = layout.doors[i];
        door.battens = to - from;
        const double width = spanOf(door.battens);
        double leafKg = kgPerBatten * door.battens;
        leafKg += timber.addFrame("door_rail", width, rails);
        leafKg += timber.addFrame("door_brace", braceMm(width, layout.heightMm), 1);
        layout.screws += door.battens * (rails + 1) * kScrewsACrossing;
        door.hinges = hingesFor(layout.heightMm, leafKg);
        layout.hinges += door.hinges;
    }
    addField(layout.battens - next);
}

/// Level battens: doors cut them all; a stile stands behind the battens on each side of a cut, and more between.
void frameLevel(FrontLayout& layout, Timber& timber)
{
    const int rows = layout.battens;
    const auto addField = [&](double lengthMm, const char* batten, const char* stile) {
        const int stiles = std::max(2, static_cast<int>(std::ceil(lengthMm / kStilePitchMm - 1e-9)) + 1);
        double massKg = timber.addBattens(batten, lengthMm, rows);
        massKg += timber.addFrame(stile, layout.heightMm, stiles);
        layout.screws += rows * stiles * kScrewsACrossing;
        return massKg;
    };
    std::vector<DoorLayout*> order;
    for (DoorLayout& door : layout.doors) order.push_back(&door);
    std::sort(order.begin(), order.end(),
              [](const DoorLayout* a, const DoorLayout* b) { return a->fromMm < b->fromMm; });
    double next = 0.0;
    bool cut = false;  // whether the field that begins at `next` begins at a door
    for (DoorLayout* door : order) {
        const double field = door->fromMm - next - kDoorClearanceMm / 2 * (cut ? 2 : 1);
        if (field > 0.0) addField(field, "batten", "stile");
        const double leaf = door->toMm - door->fromMm - kDoorClearanceMm;
        if (leaf > 0.0) {
            double leafKg = addField(leaf, "door_batten", "door_stile");
            leafKg += timber.addFrame("door_brace", braceMm(leaf, layout.heightMm), 1);
            layout.screws += rows * kScrewsACrossing;
            door->battens = rows;
            door->hinges = hingesFor(layout.heightMm, leafKg);
            layout.hinges += door->hinges;
        }
        next = door->toMm;
        cut = true;
    }
    const double last = layout.lengthMm - next - (cut ? kDoorClearanceMm / 2 : 0.0);
    if (last > 0.0) addField(last, "batten", "stile");
}

/// Doors over level battens stay where the plan has them, inside the front and clear of each other.
std::vector<DoorLayout> levelDoors(const std::vector<Door>& wishes, double lengthMm)
{
    std::vector<DoorLayout> doors;
    for (const Door& wish : wishes) {
        const auto [from, to] = std::minmax(wish.fromMm, wish.toMm);
        doors.push_back({std::clamp(from, 0.0, lengthMm), std::clamp(to, 0.0, lengthMm), 0.0, 0, 0, wish.hinges});
    }
    std::vector<std::size_t> order(doors.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(),
                     [&doors](std::size_t a, std::size_t b) { return doors[a].fromMm < doors[b].fromMm; });
    double next = 0.0;
    for (const std::size_t i : order) {
        DoorLayout& door = doors[i];
        door.fromMm = std::max(door.fromMm, next);
        door.toMm = std::max(door.toMm, door.fromMm);
        next = door.toMm;
        const auto [from, to] = std::minmax(wishes[i].fromMm, wishes[i].toMm);
        door.shiftMm = std::max(std::abs(door.fromMm - from), std::abs(door.toMm - to));
    }
    return doors;
}

void checkSquareness(const Part& part, const MeasuredOpening& m, std::vector<Finding>& findings)
{
    const double difference = std::abs(m.diagonalRisingMm - m.diagonalFallingMm);
    if (!(m.diagonalRisingMm > 0.0 && m.diagonalFallingMm > 0.0) || !std::isfinite(difference)) return;
    if (difference <= kSquareMm) return;
    const Severity severity = difference > kOutOfSquareMm ? Severity::caution : Severity::note;
    findings.push_back(finding(part, "opening_out_of_square", severity,
                               {{"difference_mm", difference}, {"limit_mm", kOutOfSquareMm}}));
}

/// The nearest count of battens, for the finding that none fits.
Finding unsolved(const Part& part, const Front& front, double dividedMm)
{
    const double wish = std::clamp(front.batten.gapMm, kLeastGapMm, kMostGapMm);
    const int nearest =
        std::max(0, static_cast<int>(std::lround((dividedMm - wish) / (front.batten.widthMm + wish))));
    return finding(part, "front_unsolved", Severity::caution,
                   {{"length_mm", dividedMm},
                    {"batten_mm", front.batten.widthMm},
                    {"battens", static_cast<double>(nearest)},
                    {"gap_mm", equalGapMm(dividedMm, front.batten.widthMm, nearest)},
                    {"least_gap_mm", kLeastGapMm},
                    {"most_gap_mm", kMostGapMm}});
}

void sayMovedDoors(const Part& part, const FrontLayout& layout, std::vector<Finding>& findings)
{
    for (std::size_t i = 0; i < layout.doors.size(); ++i) {
        const DoorLayout& door = layout.doors[i];
        if (!(door.shiftMm > kShiftWorthSayingMm)) continue;
        findings.push_back(finding(part, "door_moved", Severity::note,
                                   {{"door", static_cast<double>(i + 1)},
                                    {"shift_mm", door.shiftMm},
                                    {"from_mm", door.fromMm},
                                    {"to_mm", door.toMm}}));
    }
}

}  // namespace

FrontLayout layOutFront(const Part& part, std::vector<Finding>& findings)
{
    FrontLayout layout;
    layout.part = part.id;
    const auto* front = std::get_if<Front>(&part.body);
    if (front == nullptr) return layout;

    double length = distance(front->from, front->to);
    double height = front->topMm - front->bottomMm;
    if (front->measured) {
        const MeasuredOpening& m = *front->measured;
        if (m.bottomMm > 0.0 && m.topMm > 0.0) length = std::min(m.bottomMm, m.topMm);
        if (m.leftMm > 0.0 && m.rightMm > 0.0) height = std::min(m.leftMm, m.rightMm);
        checkSquareness(part, m, findings);
    }
    if (!isUsable(*front, length, height)) return layout;
    layout.lengthMm = length;
    layout.heightMm = height;

    const Batten& batten = front->batten;
    const bool upright = batten.run == BattenRun::upright;
    const double divided = upright ? length : height;
    std::vector<WishedDoor> wishes;
    if (upright) {
        for (const Door& door : front->doors) wishes.push_back({door.fromMm, door.toMm});
    }
    const std::optional<Division> division = divide(divided, batten.widthMm, batten.gapMm, wishes);
    if (!division) {
        findings.push_back(unsolved(part, *front, divided));
        return layout;
    }
    if (division->doorGaps.size() != wishes.size()) {
        findings.push_back(finding(part, "doors_no_room", Severity::caution,
                                   {{"doors", static_cast<double>(wishes.size())},
                                    {"battens", static_cast<double>(division->battens)}}));
        return layout;
    }
    layout.solved = true;
    layout.battens = division->battens;
    layout.gapMm = division->gapMm;
    layout.battenLengthMm = upright ? height : length;
    for (int i = 0; i < layout.battens; ++i)
        layout.battenStartsMm.push_back(layout.gapMm + i * (batten.widthMm + layout.gapMm));

    Timber timber(layout, batten);
    if (upright) {
        for (std::size_t i = 0; i < wishes.size(); ++i) {
            const auto [from, to] = std::minmax(wishes[i].fromMm, wishes[i].toMm);
            DoorLayout door;
            door.fromMm = division->gapCentreMm(division->doorGaps[i].first, batten.widthMm);
            door.toMm = division->gapCentreMm(division->doorGaps[i].second, batten.widthMm);
            door.shiftMm = std::max(std::abs(door.fromMm - from), std::abs(door.toMm - to));
            door.side = front->doors[i].hinges;
            layout.doors.push_back(door);
        }
        frameUpright(layout, timber, *division, batten.widthMm);
    } else {
        layout.doors = levelDoors(front->doors, length);
        frameLevel(layout, timber);
    }
    sayMovedDoors(part, layout, findings);
    return layout;
}

}  // namespace yardcast
