#include "core/exports/drawings.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/front/front_layout.h"

namespace yardcast {

namespace {

constexpr double kNameMm = 40.0;        ///< height of letters: 2 mm at 1:20
constexpr double kNumberMm = 20.0;
constexpr double kPointMm = 60.0;       ///< a connection without a size
constexpr double kApartMm = 600.0;      ///< between moulds

Point middleOf(const Region& region)
{
    const std::optional<Box> box = boundsOf(region);
    return box ? box->centre() : Point{};
}

/// The sense of rings stays, so the sign of arcs does.
Point placed(const Part& part, Point own) { return part.place.toPlan(own); }

/// The cutout with true arcs.
void addCutout(DxfDrawing& drawing, const Part& part, const Cutout& cutout)
{
    if (cutout.shape == CutoutShape::circle) {
        drawing.circles.push_back({"Cutouts", placed(part, cutout.centre), cutout.diameterMm});
        return;
    }
    const double halfX = cutout.size.width / 2;
    const double halfY = cutout.size.depth / 2;
    const double radius = std::clamp(cutout.cornerRadiusMm.value_or(0.0), 0.0, std::min(halfX, halfY));
    const Placement turned{cutout.centre, cutout.turnDeg.value_or(0.0)};
    DxfDrawing::Outline outline{"Cutouts", {}, true};
    const auto add = [&](double x, double y, double bulge) {
        outline.corners.push_back({placed(part, turned.toPlan({x, y})), bulge});
    };
    if (!(radius > 0.0)) {
        for (const Point p : {Point{-halfX, -halfY}, {halfX, -halfY}, {halfX, halfY}, {-halfX, halfY}})
            add(p.x, p.y, 0.0);
    } else {
        const double quarter = std::tan(std::numbers::pi / 8);
        const double x = halfX - radius;
        const double y = halfY - radius;
        add(-x, -halfY, 0.0);
        add(x, -halfY, quarter);
        add(halfX, -y, 0.0);
        add(halfX, y, quarter);
        add(x, halfY, 0.0);
        add(-x, halfY, quarter);
        add(-halfX, y, 0.0);
        add(-halfX, -y, quarter);
    }
    drawing.outlines.push_back(std::move(outline));
}

/// The cutout that made this hole and no other, or null.
const Cutout* cutoutOf(const Counter& counter, const Ring& hole)
{
    constexpr double kSameMm = 0.01;
    const Box box = boundsOf(hole).value_or(Box{});
    for (const Cutout& cutout : counter.cutouts) {
        const Ring ring = cutoutRing(cutout);
        const Box other = boundsOf(ring).value_or(Box{});
        const double apart = std::max({std::abs(box.low.x - other.low.x), std::abs(box.low.y - other.low.y),
                                       std::abs(box.high.x - other.high.x), std::abs(box.high.y - other.high.y)});
        const double area = std::abs(signedArea(ring));
        const double areaApart = std::abs(std::abs(signedArea(hole)) - area);
        if (apart < kSameMm && areaApart < kSameMm * perimeterMm(ring)) return &cutout;
    }
    return nullptr;
}

void addCasting(DxfDrawing& drawing, const Part& part, const Casting& casting)
{
    const auto* counter = std::get_if<Counter>(&part.body);
    if (!counter) return;
    for (const Polygon& polygon : casting.outline) {
        drawing.add("Counters", transformed(polygon.outer, part.place));
        for (const Ring& hole : polygon.holes) {
            if (const Cutout* cutout = cutoutOf(*counter, hole)) {
                addCutout(drawing, part, *cutout);
            } else {
                drawing.add("Cutouts", transformed(hole, part.place));
            }
        }
    }
    for (const Zone& zone : casting.zones) {
        if (zone.kind == ZoneKind::rim || zone.kind == ZoneKind::cutoutRim || zone.kind == ZoneKind::rib)
            drawing.add("Rims and ribs", transformed(zone.region, part.place));
    }
    drawing.texts.push_back({"Names", middleOf(transformed(casting.outline, part.place)), kNameMm, casting.id});
}

void addBattens(DxfDrawing& drawing, const Part& part, const Front& front)
{
    std::vector<Finding> ignored;
    const FrontLayout layout = layOutFront(part, ignored);
    const double span = distance(front.from, front.to);
    if (!layout.solved || front.batten.run != BattenRun::upright || !(span > 0.0)) return;
    const Point along = (front.to - front.from) * (1.0 / span);
    const Point visible = leftNormal(along) * -front.batten.thicknessMm;
    for (const double start : layout.battenStartsMm) {
        const Point a = front.from + along * start;
        const Point b = a + along * front.batten.widthMm;
        drawing.add("Battens", transformed(Ring{a + visible, b + visible, b, a}, part.place));
    }
}

void addSite(DxfDrawing& drawing, const Site& site)
{
    if (site.outline) drawing.add("Site", *site.outline);
    for (const Fixture& fixture : site.fixtures) {
        Point name = fixture.at;
        if (fixture.size) {
            const Point high = fixture.at + Point{fixture.size->width, fixture.size->depth};
            drawing.add("Connections", Ring{fixture.at, {high.x, fixture.at.y}, high, {fixture.at.x, high.y}});
            name = (fixture.at + high) * 0.5;
        } else {
            drawing.circles.push_back({"Connections", fixture.at, kPointMm});
        }
        drawing.texts.push_back({"Names", name, kNameMm / 2, fixture.id});
    }
}

/// Lowest left and highest right of all that is drawn.
Box boundsOfDrawing(const DxfDrawing& drawing)
{
    Ring points;
    for (const DxfDrawing::Outline& outline : drawing.outlines) {
        for (const DxfDrawing::Corner& corner : outline.corners) points.push_back(corner.at);
    }
    return boundsOf(points).value_or(Box{});
}

const char* layerOf(PartKind kind)
{
    switch (kind) {
    case PartKind::support: return "Supports";
    case PartKind::panel: return "Panels";
    case PartKind::front: return "Fronts";
    case PartKind::appliance: return "Appliances";
    case PartKind::counter: break;
    }
    return "Counters";
}

const char* layerOf(MouldPartKind kind)
{
    switch (kind) {
    case MouldPartKind::base: return "Base boards";
    case MouldPartKind::side: return "Sides";
    case MouldPartKind::former: return "Formers";
    case MouldPartKind::filler: return "Foam fillers";
    case MouldPartKind::core: return "Foam cores";
    case MouldPartKind::chamfer: return "Chamfer strips";
    case MouldPartKind::drip: return "Drip strips";
    case MouldPartKind::rebate: return "Rebate strips";
    case MouldPartKind::holdDown: return "Hold-downs";
    case MouldPartKind::bracket: return "Brackets";
    case MouldPartKind::spacer: return "Spacers";
    case MouldPartKind::cleat: return "Cleats";
    case MouldPartKind::foot: return "Battens at the foot";
    case MouldPartKind::tie: return "Ties";
    }
    return "Base boards";
}

/// Where a number stands on its piece: in the middle of its largest polygon.
Point numberPlace(const Region& outline)
{
    const Polygon* largest = nullptr;
    for (const Polygon& polygon : outline) {
        if (!largest || std::abs(signedArea(polygon.outer)) > std::abs(signedArea(largest->outer))) largest = &polygon;
    }
    return largest ? boundsOf(largest->outer).value_or(Box{}).centre() : Point{};
}

}  // namespace

DxfDrawing planDrawing(const Plan& plan, const std::vector<CastingPtr>& castings, const DrawingWords& words,
                       const std::string& onlyPart)
{
    DxfDrawing drawing;
    drawing.layers = {{"Counters", 7, false},    {"Cutouts", 1, false},  {"Rims and ribs", 8, true},
                      {"Supports", 8, false},    {"Panels", 7, false},   {"Fronts", 32, false},
                      {"Battens", 32, false},    {"Appliances", 5, false}, {"Site", 3, false},
                      {"Connections", 4, false}, {"Names", 7, false}};
    for (const PartPtr& part : plan.parts) {
        if (!onlyPart.empty() && part->id != onlyPart) continue;
        for (const CastingPtr& casting : castings) {
            if (casting->part == part->id) addCasting(drawing, *part, *casting);
        }
        if (part->kind() == PartKind::counter) continue;
        const Ring ring = footprint(*part);
        drawing.add(layerOf(part->kind()), ring);
        if (const auto* front = std::get_if<Front>(&part->body)) addBattens(drawing, *part, *front);
        drawing.texts.push_back({"Names", boundsOf(ring).value_or(Box{}).centre(), kNameMm, part->id});
    }
    if (onlyPart.empty()) addSite(drawing, plan.site);
    const Box box = boundsOfDrawing(drawing);
    const std::string head = plan.title.empty() ? words.plan : plan.title + " - " + words.plan;
    drawing.texts.push_back({"Names", {box.centre().x, box.low.y - 3 * kNameMm}, kNameMm, head});
    return drawing;
}

DxfDrawing mouldDrawing(const std::vector<MouldPtr>& moulds, const DrawingWords& words, const std::string& onlyPart)
{
    DxfDrawing drawing;
    drawing.layers = {{"Base boards", 32, false},   {"Sides", 32, false},        {"Formers", 1, false},
                      {"Foam fillers", 4, false},   {"Foam cores", 4, false},    {"Chamfer strips", 6, false},
                      {"Drip strips", 6, false},    {"Rebate strips", 6, false}, {"Hold-downs", 3, true},
                      {"Brackets", 8, false},       {"Spacers", 8, false},       {"Cleats", 8, true},
                      {"Battens at the foot", 8, false}, {"Ties", 3, true},      {"Casting", 7, true},
                      {"Diagonals", 8, true},       {"Numbers", 7, false},       {"Notes", 7, false}};
    double left = 0.0;
    for (const MouldPtr& mould : moulds) {
        if (!onlyPart.empty() && mould->part != onlyPart) continue;
        DxfDrawing own;
        for (const MouldPart& part : mould->parts) {
            own.add(layerOf(part.kind), part.outline);
            if (part.outline.empty()) continue;
            own.texts.push_back({"Numbers", numberPlace(part.outline), kNumberMm, part.name});
        }
        own.add("Casting", mould->inside);
        for (const Mould::Diagonal& diagonal : mould->diagonals) own.addLine("Diagonals", diagonal.from, diagonal.to);
        const Box box = boundsOfDrawing(own);
        const double middle = box.centre().x;
        const auto note = [&](double y, const std::string& text) {
            own.texts.push_back({"Notes", {middle, y}, kNameMm, text});
        };
        note(box.low.y - 2 * kNameMm, words.frontEdge);
        note(box.high.y + 4 * kNameMm, mould->casting + " - " + words.mould);
        note(box.high.y + 2 * kNameMm, mould->mirrored ? words.mirrored : words.notMirrored);

        const Point move{left - box.low.x, 0.0};
        for (DxfDrawing::Outline& outline : own.outlines) {
            for (DxfDrawing::Corner& corner : outline.corners) corner.at = corner.at + move;
        }
        for (DxfDrawing::Text& text : own.texts) text.middle = text.middle + move;
        drawing.outlines.insert(drawing.outlines.end(), own.outlines.begin(), own.outlines.end());
        drawing.texts.insert(drawing.texts.end(), own.texts.begin(), own.texts.end());
        left += box.width() + kApartMm;
    }
    return drawing;
}

}  // namespace yardcast
