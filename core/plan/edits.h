#pragma once

#include <functional>
#include <string>
#include <vector>

#include "core/plan/plan.h"

/// Every change a maker can make, as a function from Plan to Plan. An edit that names a part, cutout or edge that
/// is not there gives the plan back unchanged; none refuses a bad size (validation speaks about those), so a
/// drag through a bad state and out again loses nothing.
namespace yardcast {

using Ids = std::vector<std::string>;

// Parts
/// "C3" for the third counter and so on: the first of C, S, P, F, A with a number that no part has.
std::string freePartId(const Plan& plan, PartKind kind);
/// Appended as it is; a part whose id is taken gets a free one.
Plan addPart(const Plan& plan, Part part);
/// Also takes back `on` of appliances that stood on it.
Plan removeParts(const Plan& plan, const Ids& ids);
Plan moveParts(const Plan& plan, const Ids& ids, Point byMm);
/// Turned counter-clockwise about `about` (plan axes) as one group.
Plan turnParts(const Plan& plan, const Ids& ids, double byDeg, Point about);
/// Mirrored in the vertical line x = `xMm` of the plan. Outlines, cutouts, bars, grips, joints, doors are mirrored
/// within the part; volume and mass stay. Edge indices of a rim, a drip groove and a
/// rebate follow their edges.
Plan mirrorParts(const Plan& plan, const Ids& ids, double xMm);
/// Copies get free ids; `newIds` (if given) receives them in order.
Plan duplicateParts(const Plan& plan, const Ids& ids, Point byMm, Ids* newIds = nullptr);
/// Brought in from elsewhere (paste): ids renamed where taken, `on` and cutout ids kept consistent.
Plan insertParts(const Plan& plan, const std::vector<Part>& parts, Point byMm, Ids* newIds = nullptr);
/// Up (positive) or down: top of a counter, base of a support or panel, bottom and top of a front.
Plan raiseParts(const Plan& plan, const Ids& ids, double byMm);

enum class AlignTo { left, centreX, right, front, centreY, back };
/// By the bounds of footprints; the group's own bounds give the line.
Plan alignParts(const Plan& plan, const Ids& ids, AlignTo line);
enum class Axis { x, y };
/// Equal clear gaps between footprints along the axis; the outermost two stay. Fewer than three: unchanged.
Plan distributeParts(const Plan& plan, const Ids& ids, Axis axis);

/// Any property: `change` gets a copy of the part to write in.
Plan changePart(const Plan& plan, const std::string& id, const std::function<void(Part&)>& change);
Plan changeCounter(const Plan& plan, const std::string& id, const std::function<void(Counter&)>& change);
/// Any property of the plan outside its parts.
Plan changePlan(const Plan& plan, const std::function<void(Plan&)>& change);
/// New id; `on` of appliances follows. Unchanged when the id is taken or empty.
Plan renamePart(const Plan& plan, const std::string& id, const std::string& newId);
/// Sizes of a support, panel or appliance (along own x and y), or of a rectangular counter; its origin stays.
Plan resizePart(const Plan& plan, const std::string& id, Size size);

// Outline of a counter (indices as in Counter::outline; distances in the own frame)
/// Edge moved outwards (positive) along its normal; the neighbours follow along their own lines.
Plan moveOutlineEdge(const Plan& plan, const std::string& id, int edge, double outwardsMm);
Plan moveOutlineCorner(const Plan& plan, const std::string& id, int corner, Point toOwnMm);
/// A new corner at `atOwnMm` after corner `edge`; rim edge indices follow.
Plan insertOutlineCorner(const Plan& plan, const std::string& id, int edge, Point atOwnMm);
/// At least three corners stay.
Plan removeOutlineCorner(const Plan& plan, const std::string& id, int corner);
/// From edge `edge`, a step: the stretch between `fromMm` and `toMm` along it is moved outwards by `outwardsMm`
/// (the way from a rectangle to an L or a T).
Plan extrudeOutlineEdge(const Plan& plan, const std::string& id, int edge, double fromMm, double toMm,
                        double outwardsMm);

// Cutouts
std::string freeCutoutId(const Counter& counter);
Plan addCutout(const Plan& plan, const std::string& id, Cutout cutout);
Plan removeCutout(const Plan& plan, const std::string& id, const std::string& cutoutId);
Plan changeCutout(const Plan& plan, const std::string& id, const std::string& cutoutId,
                  const std::function<void(Cutout&)>& change);

// Site
Plan setSiteOutline(const Plan& plan, std::vector<Point> outline);
Plan addFixture(const Plan& plan, Fixture fixture);
Plan removeFixture(const Plan& plan, const std::string& fixtureId);
Plan changeFixture(const Plan& plan, const std::string& fixtureId, const std::function<void(Fixture&)>& change);

}  // namespace yardcast
