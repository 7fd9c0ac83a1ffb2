#include "core/assess/steel_json.h"

#include "core/assess/strength_json.h"

namespace yardcast {

namespace {

const char* materialWord(SteelMaterial material)
{
    switch (material) {
    case SteelMaterial::steel: return "steel";
    case SteelMaterial::galvanised: return "galvanised";
    case SteelMaterial::stainless: return "stainless";
    case SteelMaterial::glass: return "glass";
    case SteelMaterial::basalt: return "basalt";
    }
    return "";
}

const char* sideWord(SteelSide side)
{
    switch (side) {
    case SteelSide::face: return "face";
    case SteelSide::middle: return "middle";
    case SteelSide::underside: return "underside";
    }
    return "";
}

const char* datumWord(SteelDatum datum)
{
    return datum == SteelDatum::mouldBase ? "mould_base" : "front_wall";
}

Json heightJson(const SteelHeight& height)
{
    return {{"from_datum_mm", rounded(height.distanceMm)},
            {"spacer_mm", rounded(height.spacerMm)},
            {"cover_face_mm", rounded(height.coverFaceMm)},
            {"cover_back_mm", rounded(height.coverBackMm)},
            {"thickness_mm", rounded(height.thicknessMm)},
            {"side", sideWord(height.side)}};
}

Json meshLayoutJson(const MeshLayout& mesh)
{
    Json pieces = Json::array();
    for (const MeshPiece& piece : mesh.pieces) {
        Json notches = Json::array();
        for (const Ring& notch : piece.notches) {
            Json ring = Json::array();
            for (const Point& point : notch) ring.push_back(pointJson(point));
            notches.push_back(ring);
        }
        pieces.push_back({{"mark", piece.mark},
                          {"at", pointJson(piece.at.low)},
                          {"size", {rounded(piece.at.width()), rounded(piece.at.height())}},
                          {"notches", notches},
                          {"sheet", piece.sheet},
                          {"on_sheet", pointJson(piece.onSheet)},
                          {"turned", piece.turnedOnSheet}});
    }
    return {{"bar_mm", rounded(mesh.barMm)},
            {"pitch_mm", rounded(mesh.pitchMm)},
            {"material", materialWord(mesh.material)},
            {"sheet_size", {rounded(mesh.sheet.width), rounded(mesh.sheet.depth)}},
            {"sheets", mesh.sheets},
            {"lap_mm", rounded(mesh.lapMm)},
            {"height", heightJson(mesh.height)},
            {"pieces", pieces}};
}

Json laidBarJson(const LaidBar& bar)
{
    return {{"mark", bar.mark},
            {"from", pointJson(bar.from)},
            {"to", pointJson(bar.to)},
            {"diameter_mm", rounded(bar.diameterMm)},
            {"material", materialWord(bar.material)},
            {"height", heightJson(bar.height)}};
}

Json layoutJson(const CastingSteelLayout& layout)
{
    Json meshes = Json::array();
    for (const MeshLayout& mesh : layout.meshes) meshes.push_back(meshLayoutJson(mesh));
    Json bars = Json::array();
    for (const LaidBar& bar : layout.bars) bars.push_back(laidBarJson(bar));
    Json corners = Json::array();
    for (const CornerBar& corner : layout.cornerBars) {
        Json one = laidBarJson(corner.bar);
        one["corner"] = pointJson(corner.corner);
        one["of"] = corner.of;
        one["anchorage_mm"] = rounded(corner.anchorageMm);
        one["anchored_share"] = rounded(corner.anchoredShare);
        corners.push_back(one);
    }
    Json rows = Json::array();
    for (const BarListRow& row : layout.barList) {
        rows.push_back({{"mark", row.mark},
                        {"diameter_mm", rounded(row.diameterMm)},
                        {"material", materialWord(row.material)},
                        {"count", row.count},
                        {"shape_code", row.shapeCode},
                        {"cut_length_mm", rounded(row.cutLengthMm)},
                        {"scheduled_length_mm", rounded(row.scheduledLengthMm)},
                        {"mass_kg", rounded(row.massKg)},
                        {"proposed", row.suggested}});
    }
    return {{"casting", layout.casting},
            {"part", layout.part},
            {"datum", datumWord(layout.datum)},
            {"face_down", layout.faceDown},
            {"mesh", meshes},
            {"bars", bars},
            {"corner_bars", corners},
            {"bar_list", rows}};
}

}  // namespace

Json steelJson(const Assessment& assessment)
{
    const SteelSchedule& steel = assessment.steel;
    Json meshes = Json::array();
    for (const MeshNeed& mesh : steel.meshes) {
        meshes.push_back({{"casting", mesh.casting},
                          {"bar_mm", rounded(mesh.barMm)},
                          {"pitch_mm", rounded(mesh.pitchMm)},
                          {"net_m2", rounded(mesh.netAreaM2)},
                          {"with_laps_m2", rounded(mesh.withLapsM2)},
                          {"mass_kg", rounded(mesh.massKg)},
                          {"material", materialWord(mesh.material)}});
    }
    Json bars = Json::array();
    for (const BarNeed& bar : steel.bars) {
        bars.push_back({{"casting", bar.casting},
                        {"diameter_mm", rounded(bar.diameterMm)},
                        {"length_mm", rounded(bar.lengthMm)},
                        {"count", bar.count},
                        {"mass_kg", rounded(bar.massKg)},
                        {"material", materialWord(bar.material)}});
    }
    Json totals = Json::array();
    for (const DiameterTotal& total : steel.barTotals) {
        totals.push_back({{"diameter_mm", rounded(total.diameterMm)},
                          {"length_m", rounded(total.lengthM)},
                          {"mass_kg", rounded(total.massKg)},
                          {"material", materialWord(total.material)}});
    }
    Json layouts = Json::array();
    for (const CastingSteelLayoutPtr& layout : steel.layouts) {
        if (layout) layouts.push_back(layoutJson(*layout));
    }
    return {{"mesh", meshes},
            {"bars", bars},
            {"by_diameter", totals},
            {"mesh_area_m2", rounded(steel.meshAreaM2)},
            {"mass_kg", rounded(steel.massKg)},
            {"layouts", layouts},
            {"fibres_counted", false},
            {"checks", steelChecksJson(assessment.strength)}};
}

}  // namespace yardcast
