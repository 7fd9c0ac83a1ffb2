#include "core/assess/mould_json.h"

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
    }
    return json;
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

}  // namespace yardcast
