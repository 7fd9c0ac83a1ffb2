#include "core/plan/edits/edit_tools.h"

namespace yardcast::edit_tools {

Plan withEach(const Plan& plan, const Ids& ids, const std::function<void(Part&)>& change)
{
    const std::set<std::string> chosen(ids.begin(), ids.end());
    Plan changed = plan;
    for (PartPtr& part : changed.parts) {
        if (!chosen.contains(part->id)) continue;
        auto copy = std::make_shared<Part>(*part);
        change(*copy);
        part = std::move(copy);
    }
    return changed;
}

char letterOf(PartKind kind)
{
    switch (kind) {
    case PartKind::counter: return 'C';
    case PartKind::support: return 'S';
    case PartKind::panel: return 'P';
    case PartKind::front: return 'F';
    case PartKind::appliance: return 'A';
    }
    return 'X';
}

std::string freeId(char letter, const std::set<std::string>& taken)
{
    for (int number = 1;; ++number) {
        std::string id = letter + std::to_string(number);
        if (!taken.contains(id)) return id;
    }
}

std::set<std::string> partIds(const Plan& plan)
{
    std::set<std::string> ids;
    for (const PartPtr& part : plan.parts) ids.insert(part->id);
    return ids;
}

}  // namespace yardcast::edit_tools
