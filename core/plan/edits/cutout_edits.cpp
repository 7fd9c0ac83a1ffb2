#include <algorithm>

#include "core/plan/edits/edit_tools.h"

namespace yardcast {

using namespace edit_tools;

namespace {

bool hasCutout(const Plan& plan, const std::string& id, const std::string& cutoutId)
{
    const Part* part = findPart(plan, id);
    const Counter* counter = part ? std::get_if<Counter>(&part->body) : nullptr;
    return counter && std::any_of(counter->cutouts.begin(), counter->cutouts.end(),
                                  [&](const Cutout& c) { return c.id == cutoutId; });
}

}  // namespace

std::string freeCutoutId(const Counter& counter)
{
    std::set<std::string> taken;
    for (const Cutout& cutout : counter.cutouts) taken.insert(cutout.id);
    return freeId('K', taken);
}

Plan addCutout(const Plan& plan, const std::string& id, Cutout cutout)
{
    const bool taken = cutout.id.empty() || hasCutout(plan, id, cutout.id);
    return changeCounter(plan, id, [&](Counter& counter) {
        if (taken) cutout.id = freeCutoutId(counter);
        counter.cutouts.push_back(std::move(cutout));
    });
}

Plan removeCutout(const Plan& plan, const std::string& id, const std::string& cutoutId)
{
    if (!hasCutout(plan, id, cutoutId)) return plan;
    return changeCounter(plan, id, [&](Counter& counter) {
        std::erase_if(counter.cutouts, [&](const Cutout& c) { return c.id == cutoutId; });
    });
}

Plan changeCutout(const Plan& plan, const std::string& id, const std::string& cutoutId,
                  const std::function<void(Cutout&)>& change)
{
    if (!hasCutout(plan, id, cutoutId)) return plan;
    return changeCounter(plan, id, [&](Counter& counter) {
        for (Cutout& cutout : counter.cutouts) {
            if (cutout.id == cutoutId) {
                change(cutout);
                return;
            }
        }
    });
}

}  // namespace yardcast
