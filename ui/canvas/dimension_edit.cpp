#include "ui/canvas/dimension_edit.h"

#include <cmath>

#include <QCoreApplication>

#include "core/plan/edits.h"
#include "ui/canvas/lookups.h"
#include "ui/look/number_text.h"

namespace yardcast::ui {

namespace {

constexpr double kLeastMm = 1.0;
/// 50 m: more is a slip of the finger.
constexpr double kMostMm = 50000.0;

QString tr(const char* text) { return QCoreApplication::translate("DimensionEdit", text); }

SizeEdit refuse(const Plan& plan, const QString& why) { return {plan, why}; }

/// Why a size is no size, or empty.
QString sizeFault(double valueMm)
{
    if (!(valueMm >= kLeastMm)) return tr("A size must be at least 1 mm.");
    if (valueMm > kMostMm) return tr("More than 50 m? Sizes are in mm unless cm or m is written.");
    return {};
}

QString missing() { return tr("This part is no longer in the plan."); }

std::size_t wrap(int index, std::size_t count)
{
    const int n = static_cast<int>(count);
    return static_cast<std::size_t>(((index % n) + n) % n);
}

SizeEdit frontLength(const Plan& plan, const Part& part, double valueMm)
{
    return {changePart(plan, part.id, [&](Part& p) {
        auto& front = std::get<Front>(p.body);
        const Point along = front.to - front.from;
        const double span = length(along);
        front.to = front.from + (span > 0.0 ? along * (valueMm / span) : Point{valueMm, 0.0});
    }), {}};
}

SizeEdit withHeight(const Plan& plan, const Part& part, double valueMm)
{
    return {changePart(plan, part.id, [&](Part& p) {
        if (auto* support = std::get_if<Support>(&p.body)) support->heightMm = valueMm;
        if (auto* panel = std::get_if<Panel>(&p.body)) panel->heightMm = valueMm;
        if (auto* appliance = std::get_if<Appliance>(&p.body)) appliance->heightMm = valueMm;
        if (auto* front = std::get_if<Front>(&p.body)) front->topMm = front->bottomMm + valueMm;
        if (auto* counter = std::get_if<Counter>(&p.body)) {
            // What one sees from the front is the deepest: the rim where there is one.
            if (counter->rim && counter->rim->depthMm > counter->thicknessMm) {
                counter->rim->depthMm = valueMm;
            } else {
                counter->thicknessMm = valueMm;
            }
        }
    }), {}};
}

SizeEdit withCutoutMoved(const Plan& plan, const std::string& part, const std::string& cutout, Point by)
{
    return {changeCutout(plan, part, cutout, [&](Cutout& c) { c.centre = c.centre + by; }), {}};
}

}  // namespace

bool isRectangle(const Ring& outline)
{
    if (outline.size() != 4) return false;
    for (std::size_t i = 0; i < 4; ++i) {
        const Point a = outline[(i + 1) % 4] - outline[i];
        const Point b = outline[(i + 2) % 4] - outline[(i + 1) % 4];
        if (std::abs(dot(a, b)) > 1e-6 * length(a) * length(b) || !(length(a) > 0.0)) return false;
    }
    return true;
}

int givingNeighbour(const Ring& outline, int edge)
{
    const std::size_t n = outline.size();
    const Point from = outline[wrap(edge, n)];
    const Point to = outline[wrap(edge + 1, n)];
    // Farther right or back: along the edge's own line, taken towards +x (or +y where it runs upright).
    const Point along = to - from;
    const bool towardsEnd = std::abs(along.x) > std::abs(along.y) ? along.x > 0.0 : along.y > 0.0;
    return static_cast<int>(wrap(towardsEnd ? edge + 1 : edge - 1, n));
}

SizeEdit withEdgeLength(const Plan& plan, const std::string& part, int measured, int edge, double valueMm)
{
    const Part* found = findPart(plan, part);
    const auto* counter = found ? std::get_if<Counter>(&found->body) : nullptr;
    if (!counter || counter->outline.size() < 3) return refuse(plan, missing());
    if (const QString fault = sizeFault(valueMm); !fault.isEmpty()) return refuse(plan, fault);
    const Ring& ring = counter->outline;
    const std::size_t n = ring.size();
    const Point side = ring[wrap(measured + 1, n)] - ring[wrap(measured, n)];
    const Point moved = ring[wrap(edge + 1, n)] - ring[wrap(edge, n)];
    const double sine = std::abs(cross(side, moved)) / (length(side) * length(moved));
    if (!(sine > 1e-6)) return refuse(plan, tr("These two sides run in one line; drag the corner between them."));
    // Outwards lengthens the neighbour at an outer corner and shortens it at an inner one.
    const double sense = signedArea(ring) < 0.0 ? 1.0 : -1.0;
    const Point outwards = leftNormal(moved) * (sense / length(moved));
    const bool edgeIsAtEnd = wrap(measured + 1, n) == wrap(edge, n);
    const Point towardsEdge = edgeIsAtEnd ? side : side * -1.0;
    const double sign = dot(towardsEdge, outwards) > 0.0 ? 1.0 : -1.0;
    return {moveOutlineEdge(plan, part, static_cast<int>(wrap(edge, n)), sign * (valueMm - length(side)) * sine), {}};
}

SizeEdit withPartSize(const Plan& plan, const std::string& id, const TypedSize& size)
{
    const Part* part = findPart(plan, id);
    if (!part) return refuse(plan, missing());
    for (const double value : {size.firstMm, size.secondMm.value_or(size.firstMm)}) {
        if (const QString fault = sizeFault(value); !fault.isEmpty()) return refuse(plan, fault);
    }
    if (part->kind() == PartKind::front) {
        if (size.secondMm) return refuse(plan, tr("A front has one size from above: its length."));
        return frontLength(plan, *part, size.firstMm);
    }
    if (const auto* counter = std::get_if<Counter>(&part->body)) {
        if (!isRectangle(counter->outline)) {
            return refuse(plan, tr("This outline has more than one length. Click the figure of the side to change."));
        }
        SizeEdit edit = withEdgeLength(plan, id, 0, givingNeighbour(counter->outline, 0), size.firstMm);
        if (!size.secondMm) return edit;
        const auto& wider = std::get<Counter>(findPart(edit.plan, id)->body);
        return withEdgeLength(edit.plan, id, 1, givingNeighbour(wider.outline, 1), *size.secondMm);
    }
    return {resizePart(plan, id, {size.firstMm, size.secondMm.value_or(boxSizeOf(*part).depth)}), {}};
}

SizeEdit withCutoutSize(const Plan& plan, const std::string& part, const std::string& id, const TypedSize& size)
{
    const Cutout* cutout = findCutout(plan, part, id);
    if (!cutout) return refuse(plan, tr("This cutout is no longer in the plan."));
    for (const double value : {size.firstMm, size.secondMm.value_or(size.firstMm)}) {
        if (const QString fault = sizeFault(value); !fault.isEmpty()) return refuse(plan, fault);
    }
    if (cutout->shape == CutoutShape::circle && size.secondMm) {
        return refuse(plan, tr("A round cutout has one size: its diameter."));
    }
    return {changeCutout(plan, part, id, [&](Cutout& c) {
        if (c.shape == CutoutShape::circle) {
            c.diameterMm = size.firstMm;
        } else {
            c.size = {size.firstMm, size.secondMm.value_or(c.size.depth)};
        }
    }), {}};
}

SizeEdit withDimension(const Plan& plan, const DimensionTarget& target, double oldMm, double valueMm)
{
    using What = DimensionTarget::What;
    const Part* part = findPart(plan, target.part);
    if (!part) return refuse(plan, missing());
    const double change = valueMm - oldMm;
    switch (target.what) {
    case What::edgeLength: {
        if (const auto* counter = std::get_if<Counter>(&part->body)) {
            const int giving = givingNeighbour(counter->outline, target.index);
            return withEdgeLength(plan, target.part, target.index, giving, valueMm);
        }
        if (const QString fault = sizeFault(valueMm); !fault.isEmpty()) return refuse(plan, fault);
        if (part->kind() == PartKind::front) return frontLength(plan, *part, valueMm);
        Size size = boxSizeOf(*part);
        (target.index % 2 == 0 ? size.width : size.depth) = valueMm;
        return {resizePart(plan, target.part, size), {}};
    }
    case What::cutoutWidth:
    case What::cutoutDiameter: return withCutoutSize(plan, target.part, target.cutout, {valueMm, {}});
    case What::cutoutDepth: {
        const Cutout* cutout = findCutout(plan, target.part, target.cutout);
        return withCutoutSize(plan, target.part, target.cutout, {cutout ? cutout->size.width : valueMm, valueMm});
    }
    case What::cutoutFromLeft: return withCutoutMoved(plan, target.part, target.cutout, {change, 0.0});
    case What::cutoutFromRight: return withCutoutMoved(plan, target.part, target.cutout, {-change, 0.0});
    case What::cutoutFromFront: return withCutoutMoved(plan, target.part, target.cutout, {0.0, change});
    case What::cutoutFromBack: return withCutoutMoved(plan, target.part, target.cutout, {0.0, -change});
    case What::height:
        if (const QString fault = sizeFault(valueMm); !fault.isEmpty()) return refuse(plan, fault);
        return withHeight(plan, *part, valueMm);
    case What::level:
        if (part->kind() == PartKind::appliance) {
            return refuse(plan, tr("An appliance stands on its counter or on the ground; move that instead."));
        }
        if (std::abs(valueMm) > kMostMm) return refuse(plan, sizeFault(std::abs(valueMm)));
        return {raiseParts(plan, {target.part}, change), {}};
    case What::none:
    case What::overall: break;
    }
    return refuse(plan, tr("This figure follows from others; change one of those."));
}

QString partSizeText(const Part& part)
{
    if (const auto* counter = std::get_if<Counter>(&part.body)) {
        if (!isRectangle(counter->outline)) return {};
        const Ring& ring = counter->outline;
        return formatNumber(distance(ring[0], ring[1]), 1) + u' ' + formatNumber(distance(ring[1], ring[2]), 1);
    }
    if (const auto* front = std::get_if<Front>(&part.body)) return formatNumber(distance(front->from, front->to), 1);
    const Size size = boxSizeOf(part);
    return formatNumber(size.width, 1) + u' ' + formatNumber(size.depth, 1);
}

QString cutoutSizeText(const Cutout& cutout)
{
    if (cutout.shape == CutoutShape::circle) return formatNumber(cutout.diameterMm, 1);
    return formatNumber(cutout.size.width, 1) + u' ' + formatNumber(cutout.size.depth, 1);
}

}  // namespace yardcast::ui
