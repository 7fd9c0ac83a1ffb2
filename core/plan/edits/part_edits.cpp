#include <map>

#include "core/plan/edits/edit_tools.h"

namespace yardcast {

using namespace edit_tools;

namespace {

/// Appliances that stood on one of these stand on the ground again.
void clearStandingOn(Plan& plan, const std::set<std::string>& gone)
{
    for (PartPtr& part : plan.parts) {
        const auto* appliance = std::get_if<Appliance>(&part->body);
        if (!appliance || !appliance->on || !gone.contains(*appliance->on)) continue;
        auto copy = std::make_shared<Part>(*part);
        std::get<Appliance>(copy->body).on.reset();
        part = std::move(copy);
    }
}

struct Raise {
    double byMm;

    void operator()(Counter& c) const { c.topMm = tidy(c.topMm + byMm); }
    void operator()(Support& s) const { s.baseMm = tidy(s.baseMm + byMm); }
    void operator()(Panel& p) const { p.baseMm = tidy(p.baseMm + byMm); }
    void operator()(Front& f) const
    {
        f.bottomMm = tidy(f.bottomMm + byMm);
        f.topMm = tidy(f.topMm + byMm);
    }
    void operator()(Appliance&) const {}
};

/// The low corner and the opposite one, when the outline is a rectangle along the axes.
std::optional<Box> rectangleOf(const Ring& outline)
{
    if (outline.size() != 4) return std::nullopt;
    const auto box = boundsOf(outline);
    if (!box) return std::nullopt;
    for (std::size_t i = 0; i < 4; ++i) {
        const Point p = outline[i];
        const Point next = outline[(i + 1) % 4];
        const bool onCorner = (p.x == box->low.x || p.x == box->high.x) && (p.y == box->low.y || p.y == box->high.y);
        const bool straight = (p.x == next.x) != (p.y == next.y);
        if (!onCorner || !straight) return std::nullopt;
    }
    return box;
}

struct Resize {
    Size size;

    void operator()(Counter& c) const
    {
        const auto box = rectangleOf(c.outline);
        if (!box) return;
        for (Point& p : c.outline) {
            if (p.x == box->high.x) p.x = tidy(box->low.x + size.width);
            if (p.y == box->high.y) p.y = tidy(box->low.y + size.depth);
        }
    }
    void operator()(Support& s) const
    {
        s.lengthMm = size.width;
        s.widthMm = size.depth;
    }
    void operator()(Panel& p) const
    {
        p.lengthMm = size.width;
        p.thicknessMm = size.depth;
    }
    void operator()(Front&) const {}
    void operator()(Appliance& a) const { a.size = size; }
};

}  // namespace

std::string freePartId(const Plan& plan, PartKind kind) { return freeId(letterOf(kind), partIds(plan)); }

Plan addPart(const Plan& plan, Part part)
{
    if (part.id.empty() || findPart(plan, part.id)) part.id = freePartId(plan, part.kind());
    Plan changed = plan;
    changed.parts.push_back(std::make_shared<Part>(std::move(part)));
    return changed;
}

Plan removeParts(const Plan& plan, const Ids& ids)
{
    const std::set<std::string> gone(ids.begin(), ids.end());
    Plan changed = plan;
    std::erase_if(changed.parts, [&](const PartPtr& part) { return gone.contains(part->id); });
    clearStandingOn(changed, gone);
    return changed;
}

Plan moveParts(const Plan& plan, const Ids& ids, Point byMm)
{
    return withEach(plan, ids, [&](Part& part) { moveBy(part, byMm); });
}

Plan turnParts(const Plan& plan, const Ids& ids, double byDeg, Point about)
{
    const Placement turn{about, byDeg};
    return withEach(plan, ids, [&](Part& part) {
        part.place.at = tidy(turn.toPlan(part.place.at - about));
        part.place.turnDeg = tidyTurn(part.place.turnDeg + byDeg);
    });
}

Plan insertParts(const Plan& plan, const std::vector<Part>& parts, Point byMm, Ids* newIds)
{
    Plan changed = plan;
    std::set<std::string> taken = partIds(plan);
    std::map<std::string, std::string> renamed;
    std::vector<Part> incoming = parts;
    for (Part& part : incoming) {
        const std::string old = part.id;
        if (old.empty() || taken.contains(old)) part.id = freeId(letterOf(part.kind()), taken);
        taken.insert(part.id);
        if (part.kind() == PartKind::counter) renamed.emplace(old, part.id);
    }
    if (newIds) newIds->clear();
    for (Part& part : incoming) {
        moveBy(part, byMm);
        if (auto* appliance = std::get_if<Appliance>(&part.body); appliance && appliance->on) {
            const auto follows = renamed.find(*appliance->on);
            if (follows != renamed.end()) {
                appliance->on = follows->second;
            } else if (const Part* under = findPart(plan, *appliance->on);
                       !under || under->kind() != PartKind::counter) {
                appliance->on.reset();
            }
        }
        if (newIds) newIds->push_back(part.id);
        changed.parts.push_back(std::make_shared<Part>(std::move(part)));
    }
    return changed;
}

Plan duplicateParts(const Plan& plan, const Ids& ids, Point byMm, Ids* newIds)
{
    const std::set<std::string> chosen(ids.begin(), ids.end());
    std::vector<Part> copies;
    for (const PartPtr& part : plan.parts) {
        if (chosen.contains(part->id)) copies.push_back(*part);
    }
    return insertParts(plan, copies, byMm, newIds);
}

Plan raiseParts(const Plan& plan, const Ids& ids, double byMm)
{
    return withEach(plan, ids, [&](Part& part) { std::visit(Raise{byMm}, part.body); });
}

Plan changePart(const Plan& plan, const std::string& id, const std::function<void(Part&)>& change)
{
    return withEach(plan, {id}, change);
}

Plan changeCounter(const Plan& plan, const std::string& id, const std::function<void(Counter&)>& change)
{
    const Part* part = findPart(plan, id);
    if (!part || part->kind() != PartKind::counter) return plan;
    return withEach(plan, {id}, [&](Part& copy) {
        if (auto* counter = std::get_if<Counter>(&copy.body)) change(*counter);
    });
}

Plan changePlan(const Plan& plan, const std::function<void(Plan&)>& change)
{
    Plan changed = plan;
    change(changed);
    return changed;
}

Plan renamePart(const Plan& plan, const std::string& id, const std::string& newId)
{
    if (newId.empty() || !findPart(plan, id) || findPart(plan, newId)) return plan;
    Plan changed = plan;
    for (PartPtr& part : changed.parts) {
        const auto* appliance = std::get_if<Appliance>(&part->body);
        const bool standsOn = appliance && appliance->on == id;
        if (part->id != id && !standsOn) continue;
        auto copy = std::make_shared<Part>(*part);
        if (copy->id == id) copy->id = newId;
        if (standsOn) std::get<Appliance>(copy->body).on = newId;
        part = std::move(copy);
    }
    return changed;
}

Plan resizePart(const Plan& plan, const std::string& id, Size size)
{
    return withEach(plan, {id}, [&](Part& part) { std::visit(Resize{size}, part.body); });
}

}  // namespace yardcast
