#pragma once

#include <array>
#include <string_view>
#include <utility>

#include "core/plan/plan.h"

/// The words of the plan file for each enumeration, in the order of the contract.
namespace yardcast {

template <class E, std::size_t N>
using WordTable = std::array<std::pair<E, std::string_view>, N>;

inline constexpr auto wordsOf(const PartKind*)
{
    return WordTable<PartKind, 5>{{{PartKind::counter, "counter"},
                                   {PartKind::support, "support"},
                                   {PartKind::panel, "panel"},
                                   {PartKind::front, "front"},
                                   {PartKind::appliance, "appliance"}}};
}
inline constexpr auto wordsOf(const CutoutPurpose*)
{
    return WordTable<CutoutPurpose, 5>{{{CutoutPurpose::sink, "sink"},
                                        {CutoutPurpose::hob, "hob"},
                                        {CutoutPurpose::tap, "tap"},
                                        {CutoutPurpose::drain, "drain"},
                                        {CutoutPurpose::other, "other"}}};
}
inline constexpr auto wordsOf(const CutoutShape*)
{
    return WordTable<CutoutShape, 2>{{{CutoutShape::rectangle, "rectangle"}, {CutoutShape::circle, "circle"}}};
}
inline constexpr auto wordsOf(const CounterCast*)
{
    return WordTable<CounterCast, 2>{{{CounterCast::faceDown, "face_down"}, {CounterCast::faceUp, "face_up"}}};
}
inline constexpr auto wordsOf(const Imposed*)
{
    return WordTable<Imposed, 2>{{{Imposed::worktop, "worktop"}, {Imposed::person, "person"}}};
}
inline constexpr auto wordsOf(const UprightCast*)
{
    return WordTable<UprightCast, 2>{{{UprightCast::flat, "flat"}, {UprightCast::upright, "upright"}}};
}
inline constexpr auto wordsOf(const BattenRun*)
{
    return WordTable<BattenRun, 2>{{{BattenRun::upright, "upright"}, {BattenRun::level, "level"}}};
}
inline constexpr auto wordsOf(const HingeSide*)
{
    return WordTable<HingeSide, 2>{{{HingeSide::left, "left"}, {HingeSide::right, "right"}}};
}
inline constexpr auto wordsOf(const FixtureKind*)
{
    return WordTable<FixtureKind, 8>{{{FixtureKind::water, "water"},
                                      {FixtureKind::waste, "waste"},
                                      {FixtureKind::power, "power"},
                                      {FixtureKind::gas, "gas"},
                                      {FixtureKind::wall, "wall"},
                                      {FixtureKind::tree, "tree"},
                                      {FixtureKind::door, "door"},
                                      {FixtureKind::other, "other"}}};
}
inline constexpr auto wordsOf(const CementSpeed*)
{
    return WordTable<CementSpeed, 3>{
        {{CementSpeed::slow, "S"}, {CementSpeed::normal, "N"}, {CementSpeed::rapid, "R"}}};
}

template <class E>
constexpr std::string_view wordFor(E value)
{
    for (const auto& [each, word] : wordsOf(static_cast<const E*>(nullptr))) {
        if (each == value) return word;
    }
    return {};
}

}  // namespace yardcast
