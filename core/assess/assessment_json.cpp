#include "core/assess/assessment_json.h"

#include "core/assess/cuts_json.h"
#include "core/assess/handling_json.h"
#include "core/assess/json_tools.h"
#include "core/assess/mix_json.h"
#include "core/assess/mould_json.h"
#include "core/assess/mould_savings.h"
#include "core/assess/pour_json.h"
#include "core/assess/readiness_json.h"
#include "core/assess/steel_json.h"
#include "core/assess/strength_json.h"
#include "core/assess/weather_json.h"

namespace yardcast {

namespace {

const char* kindWord(PartKind kind)
{
    switch (kind) {
    case PartKind::counter: return "counter";
    case PartKind::support: return "support";
    case PartKind::panel: return "panel";
    case PartKind::front: return "front";
    case PartKind::appliance: return "appliance";
    }
    return "";
}

const char* severityWord(Severity severity)
{
    switch (severity) {
    case Severity::stop: return "stop";
    case Severity::caution: return "caution";
    case Severity::note: return "note";
    }
    return "";
}

Json castingsJson(const Assessment& assessment)
{
    Json list = Json::array();
    for (const PlacedCasting& placed : assessment.castings) {
        const Casting& casting = *placed.casting;
        Json centroid = Json::array();
        for (const double coordinate : placed.centroidMm) centroid.push_back(rounded(coordinate));
        list.push_back({{"id", casting.id},
                        {"part", casting.part},
                        {"kind", kindWord(casting.kind)},
                        {"mix", casting.mix},
                        {"volume_l", rounded(casting.volumeL)},
                        {"concrete_kg", rounded(casting.concreteKg)},
                        {"fresh_kg", rounded(casting.freshKg)},
                        {"steel_kg", rounded(casting.steelKg)},
                        {"filler_kg", rounded(casting.fillerKg)},
                        {"mass_kg", rounded(casting.massKg)},
                        {"centroid_mm", centroid},
                        {"face_m2", rounded(casting.faceAreaM2)},
                        {"deepest_mm", rounded(casting.deepestMm)}});
    }
    return list;
}

Json mouldsJson(const MouldEstimate& mould, const std::vector<MouldPtr>& moulds)
{
    Json castings = Json::array();
    for (const MouldNeed& need : mould.castings) {
        castings.push_back({{"casting", need.casting},
                            {"base_m2", rounded(need.baseM2)},
                            {"sides_m2", rounded(need.sidesM2)},
                            {"formers_m2", rounded(need.formersM2)},
                            {"board_m2", rounded(need.boardM2)},
                            {"silicone_ml", rounded(need.siliconeMl)},
                            {"release_ml", rounded(need.releaseMl)},
                            {"foam_m2", rounded(need.foamM2)},
                            {"foam_thickness_mm", rounded(need.foamThicknessMm)},
                            {"sheeting_m2", rounded(need.sheetingM2)},
                            {"sealer_l", rounded(need.sealerL)},
                            {"screws", need.screws},
                            {"ties", need.ties},
                            {"waxed_m", rounded(need.waxedM)},
                            {"taped_m", rounded(need.tapedM)}});
    }
    Json boards = Json::array();
    Json all = Json::array();
    for (const MouldPtr& one : moulds) {
        addBoards(boards, *one);
        all.push_back(mouldJson(*one));
    }
    // Lengths and sizes are those of the moulds; areas are what is to be bought, an estimate until cuts are solved.
    return {{"estimate", moulds.empty()},
            {"boards", boards},
            {"moulds", all},
            {"castings", castings},
            {"board_m2", rounded(mould.boardM2)},
            {"silicone_ml", rounded(mould.siliconeMl)},
            {"release_ml", rounded(mould.releaseMl)},
            {"sheeting_m2", rounded(mould.sheetingM2)},
            {"sealer_l", rounded(mould.sealerL)}};
}

Json frontJson(const FrontLayout& front)
{
    Json starts = Json::array();
    for (const double start : front.battenStartsMm) starts.push_back(rounded(start));
    Json doors = Json::array();
    for (const DoorLayout& door : front.doors) {
        doors.push_back({{"from_mm", rounded(door.fromMm)},
                         {"to_mm", rounded(door.toMm)},
                         {"shift_mm", rounded(door.shiftMm)},
                         {"battens", door.battens},
                         {"hinges", door.hinges},
                         {"side", door.side == HingeSide::left ? "left" : "right"}});
    }
    Json pieces = Json::array();
    for (const TimberPiece& piece : front.pieces) {
        pieces.push_back({{"name", piece.name},
                          {"length_mm", rounded(piece.lengthMm)},
                          {"width_mm", rounded(piece.widthMm)},
                          {"thickness_mm", rounded(piece.thicknessMm)},
                          {"count", piece.count}});
    }
    return {{"part", front.part},
            {"solved", front.solved},
            {"length_mm", rounded(front.lengthMm)},
            {"height_mm", rounded(front.heightMm)},
            {"battens", front.battens},
            {"gap_mm", rounded(front.gapMm)},
            {"batten_length_mm", rounded(front.battenLengthMm)},
            {"batten_starts_mm", starts},
            {"doors", doors},
            {"pieces", pieces},
            {"screws", front.screws},
            {"hinges", front.hinges},
            {"timber_m", rounded(front.timberM)},
            {"frame_timber_m", rounded(front.frameTimberM)},
            {"mass_kg", rounded(front.massKg)}};
}

Json shoppingJson(const ShoppingList& shopping)
{
    Json lines = Json::array();
    for (const ShoppingLine& line : shopping.lines) {
        int packs = 0;
        Json choices = Json::array();
        for (const PackChoice& choice : line.packs) {
            packs += choice.count;
            choices.push_back(
                {{"size", rounded(choice.size)}, {"count", choice.count}, {"price_minor", choice.priceMinor}});
        }
        lines.push_back({{"item", line.item},
                         {"name", line.name},
                         {"group", line.group},
                         {"need", rounded(line.need)},
                         {"unit", line.unit},
                         {"packs", packs},
                         {"pack", line.packs.size() == 1 ? Json(rounded(line.packs[0].size)) : Json()},
                         {"choice", choices},
                         {"price_minor", line.priceMinor},
                         {"leftover", rounded(line.leftover)},
                         {"owned", rounded(line.owned)},
                         {"estimate", line.estimate},
                         {"priced", line.priced}});
    }
    return {{"lines", lines},
            {"currency", shopping.currency},
            {"total_minor", shopping.totalMinor},
            {"carry_kg", rounded(shopping.massKg)}};
}

Json findingJson(const Finding& finding, const FindingWords& words)
{
    Json remedies = Json::array();
    for (const Remedy& remedy : finding.remedies) {
        const Json edit = Json::parse(remedy.edit, nullptr, false);
        remedies.push_back({{"text", words.remedy ? words.remedy(remedy) : remedy.code},
                            {"edit", edit.is_discarded() ? Json() : edit},
                            {"effect", words.effect ? words.effect(remedy) : remedy.effect}});
    }
    return {{"code", finding.code},
            {"severity", severityWord(finding.severity)},
            {"subjects", finding.subjects},
            {"pointer", finding.pointer},
            {"text", words.text ? words.text(finding) : finding.code},
            {"source", words.source ? words.source(finding) : std::string()},
            {"remedies", remedies}};
}

}  // namespace

std::string assessmentJson(const Plan& plan, const Assessment& assessment, const FindingWords& words,
                           const MouldSavings* savings)
{
    Json fronts = Json::array();
    for (const FrontLayout& front : assessment.fronts) fronts.push_back(frontJson(front));
    Json findings = Json::array();
    for (const Finding& finding : assessment.findings) findings.push_back(findingJson(finding, words));
    Json root{{"yardcast_assessment", 1},
              {"title", plan.title},
              {"totals",
               {{"volume_l", rounded(assessment.volumeL())}, {"mass_kg", rounded(assessment.massKg())}}},
              {"castings", castingsJson(assessment)},
              {"mixes", mixesJson(plan, assessment)},
              {"pour", pourJson(assessment.pour)},
              {"play", playJson(assessment.play)},
              {"strength", strengthJson(assessment.strength)},
              {"strength_castings", strengthCastingsJson(assessment.strength)},
              {"steel", steelJson(assessment)},
              {"weather", weatherJson(assessment.weather)},
              {"curing", curingJson(assessment.curing)},
              {"handling", handlingJson(assessment)},
              {"hours", hoursJson(assessment.hours)},
              {"gain", gainJson(assessment.gain)},
              {"season", seasonJson(assessment.season)},
              {"mould", mouldsJson(assessment.mould, assessment.moulds)},
              {"front", fronts},
              {"shopping", shoppingJson(assessment.shopping)},
              {"findings", findings}};
    if (assessment.cuts) root["cuts"] = cutsJson(*assessment.cuts);
    if (savings) {
        root["mould"]["sharing"] = sharingJson(savings->sharing, plan.currency);
        root["mould"]["later_boards"] = laterBoardsJson(savings->later, plan.currency);
    }
    return root.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace yardcast
