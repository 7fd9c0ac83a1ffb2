#pragma once

#include <cmath>
#include <memory>

#include "core/structure/strength.h"

namespace yardcast::ui {

/// Stands for the solver where a test is about what is shown, not about what is true: answers at once, and the same
/// for the same. Use grows from nothing at the left edge of the casting to `mostPercent` at the right one.
struct QuickStrength {
    double mostPercent = 160.0;

    CastingStrengthPtr operator()(const StrengthInput& input, Refinement refinement, CaseChoice choice,
                                  std::stop_token stop) const
    {
        if (stop.stop_requested()) return nullptr;
        auto answer = std::make_shared<CastingStrength>();
        answer->casting = input.casting->id;
        answer->part = input.casting->part;
        answer->refinement = refinement;
        const bool upright = input.casting->kind != PartKind::counter;
        if (choice.inUse) add(*answer, input, upright ? StrengthCase::standing : StrengthCase::inPlace, 1.0);
        if (choice.handling) add(*answer, input, StrengthCase::tilt, 0.5);
        return answer;
    }

private:
    void add(CastingStrength& answer, const StrengthInput& input, StrengthCase which, double share) const
    {
        const Box box = input.casting->boundsMm;
        auto field = std::make_shared<StrengthField>();
        constexpr int kAcross = 16;
        constexpr int kUp = 8;
        for (int j = 0; j <= kUp; ++j) {
            for (int i = 0; i <= kAcross; ++i) {
                const double along = double(i) / kAcross;
                field->mesh.nodes.push_back(
                    {box.low.x + box.width() * along, box.low.y + box.height() * double(j) / kUp});
                field->usePercent.push_back(along * mostPercent * share);
                field->downMm.push_back(along);
                field->tensionTopMpa.push_back(along);
                field->tensionBottomMpa.push_back(2.0 * along);
            }
        }
        for (int j = 0; j < kUp; ++j) {
            for (int i = 0; i < kAcross; ++i) {
                const int a = j * (kAcross + 1) + i;
                const int over = a + kAcross + 1;
                field->mesh.triangles.push_back({a, a + 1, over + 1});
                field->mesh.triangles.push_back({a, over + 1, over});
            }
        }
        CaseResult& one = answer.cases.emplace_back();
        one.which = which;
        one.ageH = which == StrengthCase::tilt ? 48.0 : 672.0;
        one.usePercent = mostPercent * share;
        one.strengthMpa = 2.5;
        one.deflectionMm = 1.0;
        one.tensionBottomMpa = 2.0;
        one.tensionTopMpa = 1.0;
        one.at = {box.high.x, box.centre().y};
        one.place = {PlaceKind::middleOfSpan, "S1", "S2"};
        one.field = field;
        SectionForces& cut = one.sections.emplace_back();
        cut.name = one.place;
        cut.from = {box.high.x - 20.0, box.low.y};
        cut.to = {box.high.x - 20.0, box.high.y};
        cut.usePercent = one.usePercent;
        cut.widthMm = box.height();
        for (std::size_t i = 0; i < input.rests.size(); ++i) {
            HeldAt& held = one.held.emplace_back();
            held.under = input.rests[i].under;
            held.region = input.rests[i].footprint;
            held.centre = moments(held.region).centroid();
            held.forceN = 490.3;
            held.liftedOff = i == 2;
        }
    }
};

}  // namespace yardcast::ui
