#include "core/exports/kitchen_model.h"

#include <algorithm>
#include <functional>

#include "core/front/front_layout.h"

namespace yardcast {

namespace {

/// Between moulds that are drawn beside each other.
constexpr double kApartMm = 300.0;

/// Moves every point; `mirrors`: the way does, so triangles are turned back outwards.
void moveEach(Solid& solid, bool mirrors, const std::function<SolidPoint(const SolidPoint&)>& way)
{
    for (SolidPoint& p : solid.points) p = way(p);
    if (!mirrors) return;
    for (std::array<int, 3>& t : solid.triangles) std::swap(t[1], t[2]);
}

Solid solidOfZones(const std::vector<Zone>& zones)
{
    std::vector<Prism> prisms;
    for (const Zone& zone : zones) {
        if (zone.isConcrete()) prisms.push_back({zone.region, zone.fromMm, zone.toMm});
    }
    if (std::optional<Solid> whole = solidOfPrisms(prisms)) return *whole;
    Solid pieces;
    for (const Prism& prism : prisms) {
        for (const Polygon& polygon : prism.region) {
            if (const auto piece = solidOfPrisms({{{polygon}, prism.fromMm, prism.toMm}})) append(pieces, *piece);
        }
    }
    return pieces;
}

void addBox(Solid& solid, const Part& part, const Ring& own, double lowMm, double highMm)
{
    if (const auto box = solidOfRing(transformed(own, part.place), lowMm, highMm)) append(solid, *box);
}

/// What is left of a level batten beside the doors: from, to along the front.
std::vector<std::pair<double, double>> besideDoors(const FrontLayout& layout)
{
    std::vector<double> cuts{0.0};
    std::vector<DoorLayout> doors = layout.doors;
    std::sort(doors.begin(), doors.end(), [](const DoorLayout& a, const DoorLayout& b) { return a.fromMm < b.fromMm; });
    for (const DoorLayout& door : doors) {
        for (const double edge : {door.fromMm, door.toMm})
            cuts.insert(cuts.end(), {edge - kDoorClearanceMm / 2, edge + kDoorClearanceMm / 2});
    }
    cuts.push_back(layout.lengthMm);
    std::vector<std::pair<double, double>> pieces;
    for (std::size_t i = 0; i + 1 < cuts.size(); i += 2) {
        const double from = std::max(0.0, cuts[i]);
        const double to = std::min(layout.lengthMm, cuts[i + 1]);
        if (to > from) pieces.push_back({from, to});
    }
    return pieces;
}

Solid battensOf(const Part& part, const Front& front)
{
    Solid solid;
    std::vector<Finding> ignored;
    const FrontLayout layout = layOutFront(part, ignored);
    const double span = distance(front.from, front.to);
    if (!layout.solved || !(span > 0.0)) return solid;
    const Point along = (front.to - front.from) * (1.0 / span);
    const Point visible = leftNormal(along) * -front.batten.thicknessMm;
    const auto strip = [&](double from, double to) {
        const Point a = front.from + along * from;
        const Point b = front.from + along * to;
        return Ring{a + visible, b + visible, b, a};
    };
    const double widthMm = front.batten.widthMm;
    for (const double start : layout.battenStartsMm) {
        if (front.batten.run == BattenRun::upright) {
            addBox(solid, part, strip(start, start + widthMm), front.bottomMm, front.bottomMm + layout.heightMm);
            continue;
        }
        const double low = front.bottomMm + start;
        for (const auto& [from, to] : besideDoors(layout)) addBox(solid, part, strip(from, to), low, low + widthMm);
    }
    return solid;
}

using Plies = std::vector<const MouldPart*>;

bool isPlainRing(const Region& region) { return region.size() == 1 && region[0].holes.empty(); }

/// The plies of one former, from the base up, each with its draft.
std::optional<Solid> formerOf(const Plies& plies)
{
    std::vector<RingAt> rings;
    bool plain = true;
    for (const MouldPart* ply : plies) {
        const Region& top = ply->topOutline.empty() ? ply->outline : ply->topOutline;
        plain = plain && isPlainRing(ply->outline) && isPlainRing(top);
        if (!plain) break;
        // Plies that lie on each other with the same outline have no step between them.
        if (rings.empty() || rings.back().ring != ply->outline[0].outer || rings.back().heightMm != ply->fromMm)
            rings.push_back({ply->outline[0].outer, ply->fromMm});
        rings.push_back({top[0].outer, ply->toMm});
    }
    if (plain) {
        if (auto whole = solidThrough(rings)) return whole;
    }
    // Each ply as it is sawn.
    Solid pieces;
    for (const MouldPart* ply : plies) {
        if (const auto piece = solidOfPrisms({{ply->outline, ply->fromMm, ply->toMm}})) append(pieces, *piece);
    }
    if (pieces.triangles.empty()) return {};
    return pieces;
}

}  // namespace

ModelPiece modelOf(const Casting& casting, const Part& part)
{
    ModelPiece piece{casting.id, part.id, solidOfZones(casting.zones)};
    const Placement place = part.place;
    if (const auto* counter = std::get_if<Counter>(&part.body)) {
        moveEach(piece.solid, true, [&](const SolidPoint& p) {
            const Point at = place.toPlan({p[0], p[1]});
            return SolidPoint{at.x, at.y, counter->topMm - p[2]};
        });
        return piece;
    }
    const auto* support = std::get_if<Support>(&part.body);
    const auto* panel = std::get_if<Panel>(&part.body);
    const double baseMm = support ? support->baseMm : panel ? panel->baseMm : 0.0;
    moveEach(piece.solid, true, [&](const SolidPoint& p) {
        const Point at = place.toPlan({p[0], p[2]});
        return SolidPoint{at.x, at.y, baseMm + p[1]};
    });
    return piece;
}

std::vector<ModelPiece> kitchenModel(const Plan& plan, const std::vector<CastingPtr>& castings,
                                     const std::string& onlyPart)
{
    std::vector<ModelPiece> pieces;
    const auto add = [&](ModelPiece piece) {
        if (!piece.solid.triangles.empty()) pieces.push_back(std::move(piece));
    };
    for (const PartPtr& part : plan.parts) {
        if (!onlyPart.empty() && part->id != onlyPart) continue;
        for (const CastingPtr& casting : castings) {
            if (casting->part == part->id) add(modelOf(*casting, *part));
        }
        if (const auto* front = std::get_if<Front>(&part->body)) add({part->id, part->id, battensOf(*part, *front)});
        if (part->kind() == PartKind::appliance) {
            const Levels levels = levelsOf(plan, *part);
            if (const auto box = solidOfRing(footprint(*part), levels.lowMm, levels.highMm))
                add({part->id, part->id, *box});
        }
    }
    return pieces;
}

std::vector<ModelPiece> formersModel(const std::vector<MouldPtr>& moulds, const std::string& onlyPart)
{
    std::vector<ModelPiece> pieces;
    double left = 0.0;
    for (const MouldPtr& mould : moulds) {
        if (!onlyPart.empty() && mould->part != onlyPart) continue;
        std::vector<std::pair<std::string, Plies>> formers;
        for (const MouldPart& part : mould->parts) {
            if (part.kind != MouldPartKind::former || part.outline.empty()) continue;
            const auto known = std::find_if(formers.begin(), formers.end(),
                                            [&](const auto& former) { return former.first == part.about; });
            if (known == formers.end()) {
                formers.push_back({part.about, {&part}});
            } else {
                known->second.push_back(&part);
            }
        }
        for (auto& [about, plies] : formers) {
            std::sort(plies.begin(), plies.end(),
                      [](const MouldPart* a, const MouldPart* b) { return a->fromMm < b->fromMm; });
            std::optional<Solid> solid = formerOf(plies);
            if (!solid) continue;
            moveEach(*solid, false, [&](const SolidPoint& p) { return SolidPoint{p[0] + left, p[1], p[2]}; });
            pieces.push_back({mould->casting + " " + about, mould->part, std::move(*solid)});
        }
        if (!formers.empty()) left += mould->widthMm + kApartMm;
    }
    return pieces;
}

}  // namespace yardcast
