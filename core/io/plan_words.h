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
inline constexpr auto wordsOf(const CarryWay*)
{
    return WordTable<CarryWay, 2>{{{CarryWay::flat, "flat"}, {CarryWay::onEdge, "on_edge"}}};
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
inline constexpr auto wordsOf(const SteelMaterial*)
{
    return WordTable<SteelMaterial, 5>{{{SteelMaterial::steel, "steel"},
                                        {SteelMaterial::galvanised, "galvanised"},
                                        {SteelMaterial::stainless, "stainless"},
                                        {SteelMaterial::glass, "glass"},
                                        {SteelMaterial::basalt, "basalt"}}};
}
inline constexpr auto wordsOf(const MouldSurface*)
{
    return WordTable<MouldSurface, 3>{
        {{MouldSurface::coated, "coated"}, {MouldSurface::planed, "planed"}, {MouldSurface::rough, "rough"}}};
}
inline constexpr auto wordsOf(const SideJoint*)
{
    return WordTable<SideJoint, 2>{{{SideJoint::onBase, "on_base"}, {SideJoint::besideBase, "beside_base"}}};
}
inline constexpr auto wordsOf(const EdgeFinish*)
{
    return WordTable<EdgeFinish, 3>{
        {{EdgeFinish::fillet, "fillet"}, {EdgeFinish::chamfer, "chamfer"}, {EdgeFinish::sharp, "sharp"}}};
}
inline constexpr auto wordsOf(const FormerStuff*)
{
    return WordTable<FormerStuff, 2>{{{FormerStuff::board, "board"}, {FormerStuff::foam, "foam"}}};
}
inline constexpr auto wordsOf(const Exposure*)
{
    return WordTable<Exposure, 11>{{{Exposure::x0, "X0"},
                                    {Exposure::xc1, "XC1"},
                                    {Exposure::xc2, "XC2"},
                                    {Exposure::xc3, "XC3"},
                                    {Exposure::xc4, "XC4"},
                                    {Exposure::xd1, "XD1"},
                                    {Exposure::xd2, "XD2"},
                                    {Exposure::xd3, "XD3"},
                                    {Exposure::xs1, "XS1"},
                                    {Exposure::xs2, "XS2"},
                                    {Exposure::xs3, "XS3"}}};
}
inline constexpr auto wordsOf(const Frost*)
{
    return WordTable<Frost, 5>{{{Frost::none, "none"},
                                {Frost::xf1, "XF1"},
                                {Frost::xf2, "XF2"},
                                {Frost::xf3, "XF3"},
                                {Frost::xf4, "XF4"}}};
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
