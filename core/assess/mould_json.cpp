#include "core/assess/mould_json.h"

#include "core/purchase/currency.h"

namespace yardcast {

namespace {

Json checkJson(const MouldCheck& check)
{
    return {{"about", check.about},       {"what", check.what},
            {"side", check.side},         {"left_mm", rounded(check.leftMm)},
            {"right_mm", rounded(check.rightMm)}, {"front_mm", rounded(check.frontMm)},
            {"back_mm", rounded(check.backMm)}};
}

Json pressureJson(const MouldPressure& pressure)
{
    Json json{{"height_mm", rounded(pressure.heightMm)},   {"pressure_kpa", rounded(pressure.pressureKpa)},
              {"rule", pressure.rule},                     {"hydrostatic_kpa", rounded(pressure.hydrostaticKpa)},
              {"bracket_mm", rounded(pressure.bracketMm)}, {"bow_mm", rounded(pressure.bowMm)},
              {"stress_mpa", rounded(pressure.stressMpa)}};
    if (pressure.codeKpa > 0.0) {
        json["din_18218_kpa"] = rounded(pressure.codeKpa);
        json["rise_m_h"] = rounded(pressure.riseMPerH);
        json["concrete_class"] = pressure.concreteClass;
        json["aci_347_kpa"] = pressure.aciKpa > 0.0 ? Json(rounded(pressure.aciKpa)) : Json();
        json["ciria_108_kpa"] = rounded(pressure.ciriaKpa);
    }
    return json;
}

Json tiesJson(const MouldTies& ties)
{
    Json rows = Json::array();
    for (const MouldTies::Row& row : ties.rows)
        rows.push_back({{"height_mm", rounded(row.heightMm)}, {"force_n", rounded(row.forceN)}, {"through", row.through}});
    return {{"rows", rows},
            {"across", ties.across},
            {"longest_mm", rounded(ties.longestMm)},
            {"bow_mm", rounded(ties.bowMm)},
            {"stress_mpa", rounded(ties.stressMpa)},
            {"foot_screws", ties.footScrews}};
}

}  // namespace

void addBoards(Json& boards, const Mould& mould)
{
    for (const MouldPart& part : mould.parts) {
        boards.push_back({{"casting", mould.casting},
                          {"name", part.name},
                          {"length_mm", rounded(part.lengthMm)},
                          {"width_mm", rounded(part.widthMm)},
                          {"thickness_mm", rounded(part.thicknessMm)},
                          {"count", part.count},
                          {"kind", mouldPartWord(part.kind)},
                          {"stuff", mouldStuffWord(part.stuff)},
                          {"about", part.about},
                          {"step", part.step},
                          {"good_face", part.goodFace},
                          {"shaped", part.shaped},
                          {"bent", part.bent},
                          {"mitre_deg", {rounded(part.mitreDeg[0]), rounded(part.mitreDeg[1])}},
                          {"from_mm", rounded(part.fromMm)},
                          {"to_mm", rounded(part.toMm)}});
    }
}

Json mouldJson(const Mould& mould)
{
    Json diagonals = Json::array();
    for (const Mould::Diagonal& diagonal : mould.diagonals) {
        diagonals.push_back({{"from", pointJson(diagonal.from)},
                             {"to", pointJson(diagonal.to)},
                             {"length_mm", rounded(diagonal.lengthMm)}});
    }
    Json twins = Json::array();
    for (const Twin& twin : mould.twins)
        twins.push_back({{"casting", twin.casting}, {"kind", twin.kind == TwinKind::same ? "same" : "mirror"}});
    return {{"casting", mould.casting},
            {"part", mould.part},
            {"mirrored", mould.mirrored},
            {"standing", mould.standing},
            {"handed", mould.handed},
            {"width_mm", rounded(mould.widthMm)},
            {"depth_mm", rounded(mould.depthMm)},
            {"height_mm", rounded(mould.heightMm)},
            {"volume_l", rounded(mould.volumeL)},
            {"draft_l", rounded(mould.draftL)},
            {"edges_l", rounded(mould.edgesL)},
            {"cutout_draft_mm", rounded(mould.cutoutDraftMm)},
            {"diagonals", diagonals},
            {"width_range_mm", {rounded(mould.leastWidthMm), rounded(mould.mostWidthMm)}},
            {"depth_range_mm", {rounded(mould.leastDepthMm), rounded(mould.mostDepthMm)}},
            {"taken_up_by", mould.takenUpBy},
            {"gap_mm", rounded(mould.gapMm)},
            {"pressure", pressureJson(mould.pressure)},
            {"ties", mould.ties.rows.empty() ? Json() : tiesJson(mould.ties)},
            {"uplift_n", rounded(mould.upliftN)},
            {"hold_down_n", rounded(mould.holdDownN)},
            {"screws", {{"sides", mould.screws.sides}, {"formers", mould.screws.formers},
                        {"hold_downs", mould.screws.holdDowns}, {"foam", mould.screws.foam}}},
            {"silicone_ml", rounded(mould.siliconeMl)},
            {"silicone_mm", rounded(mould.sealedMm)},
            {"waxed_mm", rounded(mould.waxedMm)},
            {"release_ml", rounded(mould.releaseMl)},
            {"twins", twins},
            {"check", checkJson(mould.check)}};
}

Json sharingJson(const MouldSharing& sharing, const std::string& currency)
{
    Json groups = Json::array();
    for (const SharingGroup& group : sharing.groups) {
        Json options = Json::array();
        for (const SharingOption& option : group.options) {
            Json json{{"moulds", option.moulds},       {"count", option.moulds.size()}, {"uses", option.uses},
                      {"worn", option.worn},           {"days", option.days},           {"more_days", option.moreDays},
                      {"saves_m2", rounded(option.savesM2)}};
            if (option.savesMinor) json["saves"] = rounded(fromMinor(*option.savesMinor, currency));
            options.push_back(std::move(json));
        }
        groups.push_back({{"castings", group.castings},
                          {"moulds_now", group.mouldsNow},
                          {"days_now", sharing.days},
                          {"wait_h", rounded(group.waitH)},
                          {"options", options}});
    }
    return groups;
}

Json laterBoardsJson(const LaterBoards& later, const std::string& currency)
{
    Json cuts = Json::array();
    for (const LaterCut& cut : later.cuts) {
        Json pieces = Json::array();
        for (const LaterPiece& piece : cut.pieces) {
            pieces.push_back({{"name", piece.name},
                              {"casting", piece.casting},
                              {"kind", mouldPartWord(piece.kind)},
                              {"at_mm", pointJson(piece.at)},
                              {"size_mm", {rounded(piece.size.width), rounded(piece.size.depth)}}});
        }
        cuts.push_back({{"board", cut.board},
                        {"casting", cut.casting},
                        {"day", cut.day},
                        {"free_day", cut.freeDay},
                        {"uses", cut.uses},
                        {"clean_at_mm", pointJson(cut.cleanAt)},
                        {"clean_mm", {rounded(cut.clean.width), rounded(cut.clean.depth)}},
                        {"pieces", pieces}});
    }
    Json json{{"cuts", cuts}, {"saves_m2", rounded(later.savesM2)}};
    if (later.savesMinor) json["saves"] = rounded(fromMinor(*later.savesMinor, currency));
    return json;
}

}  // namespace yardcast
