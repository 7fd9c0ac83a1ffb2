#pragma once

#include <algorithm>
#include <cmath>
#include <memory>

#include "core/assess/assessment.h"
#include "core/plan/plan.h"

/// Answers of a solver that never solved: what is tested is what becomes of them on paper.
namespace yardcast::ui {

/// A lattice over the casting, its cells cut away where they are not in it.
inline TriangleMesh latticeOver(const Casting& casting, int across = 60, int deep = 24)
{
    TriangleMesh mesh;
    const Box box = casting.boundsMm;
    for (int j = 0; j <= deep; ++j) {
        for (int i = 0; i <= across; ++i) {
            mesh.nodes.push_back({box.low.x + box.width() * i / across, box.low.y + box.height() * j / deep});
        }
    }
    const auto add = [&](int a, int b, int c) {
        const Point middle = (mesh.nodes[a] + mesh.nodes[b] + mesh.nodes[c]) * (1.0 / 3.0);
        if (contains(casting.outline, middle)) mesh.triangles.push_back({a, b, c});
    };
    for (int j = 0; j < deep; ++j) {
        for (int i = 0; i < across; ++i) {
            const int a = j * (across + 1) + i;
            add(a, a + 1, a + across + 2);
            add(a, a + across + 2, a + across + 1);
        }
    }
    return mesh;
}

inline CaseResult fakeCase(const Casting& casting, StrengthCase which, double mostPercent)
{
    CaseResult result;
    result.which = which;
    result.usePercent = mostPercent;
    result.strengthMpa = 2.0;
    result.tensionBottomMpa = 2.0 * mostPercent / 100.0;
    result.tensionTopMpa = 0.4 * result.tensionBottomMpa;
    result.deflectionMm = 0.37;
    result.elasticMpa = 30500.0;
    const Box box = casting.boundsMm;
    result.at = {box.low.x + 0.3 * box.width(), box.low.y + 0.1 * box.height()};
    result.place = {PlaceKind::stripInFront, "K1", ""};
    auto field = std::make_shared<StrengthField>();
    field->mesh = latticeOver(casting);
    for (const Point& node : field->mesh.nodes) {
        const double away = distance(node, result.at) / (0.35 * box.width());
        field->usePercent.push_back(mostPercent * std::exp(-away * away));
        field->downMm.push_back(0.37);
    }
    result.field = field;
    const Point middle = box.centre();
    result.sections = {{{PlaceKind::stripInFront, "K1", ""}, {result.at.x, box.low.y}, {result.at.x, box.low.y + 90.0},
                        412.0, 0.31, 0.2, 90.0, 1.1, 0.9 * mostPercent},
                       {{PlaceKind::middleOfSpan, "S1", "S2"}, {middle.x, box.low.y}, {middle.x, box.high.y}, 288.0,
                        0.0, 0.1, box.height(), 0.8, 0.5 * mostPercent}};
    return result;
}

inline Region band(double left, double right, const Box& box)
{
    return {{{{left, box.low.y}, {right, box.low.y}, {right, box.high.y}, {left, box.high.y}}, {}}};
}

/// The edge of the outline that lies along the front of the box about it; -1 without one.
inline int frontEdge(const Casting& casting)
{
    const Ring& ring = casting.outline.front().outer;
    for (std::size_t i = 0; i < ring.size(); ++i) {
        const Point& next = ring[(i + 1) % ring.size()];
        if (std::max(ring[i].y, next.y) < casting.boundsMm.low.y + 0.5) return static_cast<int>(i);
    }
    return -1;
}

/// Every case that a counter has, the worst of them carried flat.
inline CastingStrengthPtr fakeStrength(const Casting& casting)
{
    auto strength = std::make_shared<CastingStrength>();
    strength->casting = casting.id;
    strength->part = casting.part;
    strength->refinement = Refinement::printed;
    const Box box = casting.boundsMm;
    const double left = box.low.x;
    const double right = box.high.x;
    for (const auto& [which, most] : std::initializer_list<std::pair<StrengthCase, double>>{
             {StrengthCase::ownWeight, 22.0},
             {StrengthCase::inPlace, 71.0},
             {StrengthCase::suction, 54.0},
             {StrengthCase::tilt, 88.0},
             {StrengthCase::carriedFlat, 123.0},
             {StrengthCase::carriedOnEdge, 17.0},
             {StrengthCase::setDown, 96.0},
             {StrengthCase::cornerLate, 99.0}}) {
        CaseResult result = fakeCase(casting, which, most);
        const bool placed = which == StrengthCase::ownWeight || which == StrengthCase::inPlace;
        if (placed) {
            result.held = {{"S1", band(left, left + 100.0, box), {left + 50.0, box.centre().y}, 412.0, false, 1.0},
                           {"S2", band(right - 100.0, right, box), {right - 50.0, box.centre().y}, 380.0, false, 0.6},
                           {"S3", band(box.centre().x, box.centre().x + 80.0, box), box.centre(), 0.0, true, 0.0}};
        } else {
            result.ageH = 48.0;
            result.factor = 1.3;
            result.onFace = true;
            result.faceUp = false;
            const bool onBattens = which == StrengthCase::setDown;
            if (onBattens) {
                result.held = {{"batten 1", band(left + 300.0, left + 360.0, box), {left + 330.0, 100.0}, 400.0},
                               {"batten 2", band(right - 360.0, right - 300.0, box), {right - 330.0, 90.0}, 300.0}};
            }
            for (int i = 0; i < 4 && !onBattens; ++i) {
                const double x = i % 2 == 0 ? left + 250.0 : right - 250.0;
                const double y = i < 2 ? box.low.y + 60.0 : box.high.y - 60.0;
                result.held.push_back({"hand " + std::to_string(i + 1), {}, {x, y}, 190.0 + i, false, 1.0});
            }
        }
        if (which == StrengthCase::suction) result.suctionKpa = 1.0;
        if (which == StrengthCase::tilt || which == StrengthCase::carriedOnEdge) result.edge = frontEdge(casting);
        if (which == StrengthCase::inPlace) {
            result.personGoverns = true;
            result.personAt = result.at;
        }
        strength->cases.push_back(std::move(result));
    }
    return strength;
}

/// The assessment with a made-up strength for every casting.
inline AssessmentPtr withFakeStrength(const AssessmentPtr& assessment)
{
    auto made = std::make_shared<Assessment>(*assessment);
    for (const PlacedCasting& placed : made->castings) made->strength.push_back(fakeStrength(*placed.casting));
    return made;
}

}  // namespace yardcast::ui
