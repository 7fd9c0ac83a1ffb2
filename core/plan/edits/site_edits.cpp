#include <algorithm>

#include "core/plan/edits/edit_tools.h"

namespace yardcast {

using namespace edit_tools;

Plan setSiteOutline(const Plan& plan, std::vector<Point> outline)
{
    Plan changed = plan;
    if (outline.empty()) {
        changed.site.outline.reset();
    } else {
        changed.site.outline = std::move(outline);
    }
    return changed;
}

Plan addFixture(const Plan& plan, Fixture fixture)
{
    std::set<std::string> taken;
    for (const Fixture& f : plan.site.fixtures) taken.insert(f.id);
    if (fixture.id.empty() || taken.contains(fixture.id)) fixture.id = freeId('X', taken);
    Plan changed = plan;
    changed.site.fixtures.push_back(std::move(fixture));
    return changed;
}

Plan removeFixture(const Plan& plan, const std::string& fixtureId)
{
    Plan changed = plan;
    std::erase_if(changed.site.fixtures, [&](const Fixture& f) { return f.id == fixtureId; });
    return changed;
}

Plan changeFixture(const Plan& plan, const std::string& fixtureId, const std::function<void(Fixture&)>& change)
{
    Plan changed = plan;
    for (Fixture& fixture : changed.site.fixtures) {
        if (fixture.id == fixtureId) {
            change(fixture);
            break;
        }
    }
    return changed;
}

}  // namespace yardcast
