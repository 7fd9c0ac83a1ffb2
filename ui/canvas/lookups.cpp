#include "ui/canvas/lookups.h"

#include <algorithm>

namespace yardcast::ui {

const Counter* findCounter(const Plan& plan, const std::string& id)
{
    const Part* part = findPart(plan, id);
    return part ? std::get_if<Counter>(&part->body) : nullptr;
}

const Cutout* findCutout(const Plan& plan, const std::string& part, const std::string& id)
{
    const Counter* counter = findCounter(plan, part);
    if (!counter) return nullptr;
    const auto found = std::ranges::find(counter->cutouts, id, &Cutout::id);
    return found == counter->cutouts.end() ? nullptr : &*found;
}

const Fixture* findFixture(const Plan& plan, const std::string& id)
{
    const auto found = std::ranges::find(plan.site.fixtures, id, &Fixture::id);
    return found == plan.site.fixtures.end() ? nullptr : &*found;
}

std::vector<std::string> withRiders(const Plan& plan, const std::vector<std::string>& parts)
{
    std::vector<std::string> all = parts;
    for (const PartPtr& part : plan.parts) {
        const auto* appliance = std::get_if<Appliance>(&part->body);
        if (!appliance || !appliance->on) continue;
        const bool carried = std::ranges::find(parts, *appliance->on) != parts.end();
        if (carried && std::ranges::find(all, part->id) == all.end()) all.push_back(part->id);
    }
    return all;
}

Size boxSizeOf(const Part& part)
{
    if (const auto* support = std::get_if<Support>(&part.body)) return {support->lengthMm, support->widthMm};
    if (const auto* panel = std::get_if<Panel>(&part.body)) return {panel->lengthMm, panel->thicknessMm};
    if (const auto* appliance = std::get_if<Appliance>(&part.body)) return appliance->size;
    return {};
}

}  // namespace yardcast::ui
