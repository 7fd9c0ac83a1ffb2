#include "ui/wording/mould_steps.h"

#include <map>

#include "ui/wording/mould_names.h"
#include "ui/wording/words.h"

namespace yardcast::ui {

namespace {

/// Laid in when the concrete is already in the mould, or hung over it.
bool comesLate(const MouldPart& part)
{
    return part.kind == MouldPartKind::holdDown || part.kind == MouldPartKind::drip || part.kind == MouldPartKind::tie
        || part.kind == MouldPartKind::spacer
        || part.kind == MouldPartKind::core || (part.kind == MouldPartKind::filler && part.fromMm > 0.5);
}

}  // namespace

std::vector<MouldStep> mouldSteps(const Mould& mould, bool hasSteel)
{
    std::vector<MouldStep> said;
    std::map<int, std::vector<const MouldPart*>> steps;
    for (const MouldPart& part : mould.parts) steps[part.step].push_back(&part);
    bool sealed = false;
    const auto seal = [&] {
        sealed = true;
        const auto add = [&](const QString& text) { said.push_back({{}, text, {}}); };
        if (mould.sealedMm > 0.0) add(Words::tr("Seal all inner edges with silicone, drawn to an even fillet; let it set."));
        if (mould.waxedMm > 0.0) add(Words::tr("Wax the edges of formers and strips."));
        if (mould.touchedM2 > 0.0) add(Words::tr("Release agent over everything the concrete touches, thin and even."));
        if (hasSteel) add(Words::tr("Lay the steel on its spacers (sheet Steel); check its height above the base."));
        add(Words::tr("Go through the questions at the mould: every answer has to be yes."));
    };
    for (const auto& [step, parts] : steps) {
        if (comesLate(*parts.front()) && !sealed) seal();
        // One sentence a kind: a step may take in sides and their brackets.
        std::vector<const MouldPart*> alike;
        for (std::size_t i = 0; i < parts.size(); ++i) {
            alike.push_back(parts[i]);
            if (i + 1 < parts.size() && parts[i + 1]->kind == parts[i]->kind) continue;
            said.push_back({mouldNumbers(alike), mouldStepText(*alike.front()), alike});
            alike.clear();
        }
    }
    if (!sealed) seal();
    return said;
}

}  // namespace yardcast::ui
