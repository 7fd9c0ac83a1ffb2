#pragma once

#include <memory>
#include <string>
#include <vector>

#include "core/mould/mould.h"
#include "tests/core/pour/pour_fixture.h"

/// Moulds of plain slabs, made by hand in the test: a base, four sides on it, and what formers a test adds.
namespace yardcast::mould_fixture {

inline constexpr double kBoard = 18.0;

inline void addBoard(Mould& mould, MouldPartKind kind, double lengthMm, double widthMm, bool goodFace, int count = 1)
{
    MouldPart part;
    part.kind = kind;
    part.stuff = MouldStuff::board;
    part.name = mould.casting + "-" + std::to_string(mould.parts.size() + 1);
    part.lengthMm = lengthMm;
    part.widthMm = widthMm;
    part.thicknessMm = kBoard;
    part.count = count;
    part.goodFace = goodFace;
    mould.parts.push_back(std::move(part));
}

/// Part and casting have the same id.
inline Mould plainMould(const std::string& id, double widthMm, double depthMm)
{
    Mould mould;
    mould.casting = id;
    mould.part = id;
    mould.widthMm = widthMm;
    mould.depthMm = depthMm;
    mould.inside = regionOf({{0, 0}, {widthMm, 0}, {widthMm, depthMm}, {0, depthMm}});
    addBoard(mould, MouldPartKind::base, widthMm + 200, depthMm + 200, true);
    mould.parts.back().outline = regionOf(
        {{-100, -100}, {widthMm + 100, -100}, {widthMm + 100, depthMm + 100}, {-100, depthMm + 100}});
    addBoard(mould, MouldPartKind::side, widthMm + 36, 50, true, 2);
    addBoard(mould, MouldPartKind::side, depthMm, 50, true, 2);
    return mould;
}

inline MouldPtr shared(Mould mould) { return std::make_shared<const Mould>(std::move(mould)); }

/// All of these are twins of each other.
inline std::vector<MouldPtr> twins(std::vector<Mould> moulds)
{
    std::vector<MouldPtr> all;
    for (Mould& mould : moulds) {
        for (const Mould& other : moulds) {
            if (other.casting != mould.casting) mould.twins.push_back({other.casting, TwinKind::same});
        }
    }
    for (Mould& mould : moulds) all.push_back(shared(std::move(mould)));
    return all;
}

/// A pour plan of castings by calendar day, each poured at 8 in the morning within an hour.
inline PourPlan pourOn(const std::vector<std::pair<std::string, int>>& castings)
{
    PourPlan pour;
    int today = 1;
    for (const auto& [casting, day] : castings) {
        if (pour.days.empty() || day > today) {
            PourDay next;
            next.day = int(pour.days.size()) + 1;
            next.afterDays = day - today;
            today = day;
            pour.days.push_back(next);
        }
        PouredCasting poured;
        poured.casting = casting;
        poured.mix = "body";
        poured.endMin = 60;
        pour.days.back().castings.push_back(poured);
    }
    return pour;
}

}  // namespace yardcast::mould_fixture
