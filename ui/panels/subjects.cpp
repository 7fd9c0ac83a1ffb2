#include "ui/panels/subjects.h"

namespace yardcast::ui {

namespace {

const std::string* mixOf(const Part& part)
{
    if (const auto* counter = std::get_if<Counter>(&part.body)) return &counter->mix;
    if (const auto* support = std::get_if<Support>(&part.body)) return &support->mix;
    if (const auto* panel = std::get_if<Panel>(&part.body)) return &panel->mix;
    return nullptr;
}

}  // namespace

QStringList partsOfSubject(const Plan& plan, const Assessment& assessment, const std::string& subject)
{
    if (findPart(plan, subject)) return {QString::fromStdString(subject)};
    for (const PlacedCasting& placed : assessment.castings) {
        if (placed.casting->id != subject) continue;
        if (!findPart(plan, placed.casting->part)) return {};
        return {QString::fromStdString(placed.casting->part)};
    }
    QStringList parts;
    if (!findMix(plan, subject)) return parts;
    for (const PartPtr& part : plan.parts) {
        const std::string* mix = mixOf(*part);
        if (mix && *mix == subject) parts.append(QString::fromStdString(part->id));
    }
    return parts;
}

std::set<std::string> subjectsOfPart(const Plan& plan, const Assessment& assessment, const std::string& id)
{
    std::set<std::string> subjects;
    const Part* part = findPart(plan, id);
    if (!part) return subjects;
    subjects.insert(id);
    if (const std::string* mix = mixOf(*part)) subjects.insert(*mix);
    for (const PlacedCasting& placed : assessment.castings) {
        if (placed.casting->part == id) subjects.insert(placed.casting->id);
    }
    return subjects;
}

}  // namespace yardcast::ui
