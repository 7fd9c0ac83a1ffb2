#include "core/assess/pour_json.h"

namespace yardcast {

namespace {

Json layerJson(const PourLayer& layer)
{
    Json json{{"kind", layerKindWord(layer.kind)}, {"from_mm", rounded(layer.fromMm)}, {"to_mm", rounded(layer.toMm)}};
    json["from_min"] = rounded(layer.fromMin);
    json["to_min"] = rounded(layer.toMin);
    if (!(layer.litres > 0.0)) return json;
    json["litres"] = rounded(layer.litres);
    json["first_batch"] = rounded(layer.firstBatch);
    json["last_batch"] = rounded(layer.lastBatch);
    return json;
}

Json castingJson(const PouredCasting& poured)
{
    Json layers = Json::array();
    for (const PourLayer& layer : poured.layers) layers.push_back(layerJson(layer));
    return {{"casting", poured.casting},
            {"mix", poured.mix},
            {"litres", rounded(poured.litres)},
            {"batches", rounded(poured.batches)},
            {"start_min", rounded(poured.startMin)},
            {"end_min", rounded(poured.endMin)},
            {"working_minutes", rounded(poured.workingMinutes)},
            {"longest_gap_min", rounded(poured.longestGapMin)},
            {"fits", poured.fits},
            {"layers", layers},
            {"uplift_n", rounded(poured.uplift.forceN)},
            {"fixings", poured.uplift.fixings},
            {"table_kg", rounded(poured.tableKg)},
            {"table_kpa", rounded(poured.tableKpa)}};
}

Json batchJson(const PourBatch& batch)
{
    Json into = Json::array();
    for (const auto& [casting, litres] : batch.into) into.push_back({{"casting", casting}, {"litres", rounded(litres)}});
    return {{"mix", batch.mix},
            {"number", batch.number},
            {"litres", rounded(batch.litres)},
            {"begin_min", rounded(batch.beginMin)},
            {"ready_min", rounded(batch.readyMin)},
            {"into", into}};
}

}  // namespace

Json pourJson(const PourPlan& pour)
{
    Json days = Json::array();
    for (const PourDay& day : pour.days) {
        Json castings = Json::array();
        for (const PouredCasting& poured : day.castings) castings.push_back(castingJson(poured));
        Json mixed = Json::array();
        for (const PourBatch& batch : day.mixed) mixed.push_back(batchJson(batch));
        days.push_back({{"day", day.day},
                        {"after_days", day.afterDays},
                        {"start_h", rounded(day.startH)},
                        {"end_min", rounded(day.endMin)},
                        {"litres", rounded(day.litres)},
                        {"batches", day.batches},
                        {"castings", castings},
                        {"mixed", mixed}});
    }
    return {{"days", days},
            {"hand_mixed", pour.handMixed},
            {"batch_minutes", rounded(pour.batchMinutes)},
            {"laying_minutes", rounded(pour.layingMinutes)},
            {"left_out", pour.leftOut}};
}

Json playJson(const PourPlayPtr& play)
{
    if (!play) return nullptr;
    Json castings = Json::array();
    for (const CastingChance& one : play->castings) {
        castings.push_back(
            {{"casting", one.casting}, {"chance", rounded(one.chance)}, {"error", rounded(one.error)}});
    }
    Json tried = Json::array();
    for (const TriedChange& change : play->tried) {
        const Json edit = Json::parse(change.edit, nullptr, false);
        tried.push_back({{"change", playChangeWord(change.change)},
                         {"value", rounded(change.value)},
                         {"any_chance", rounded(change.anyChance)},
                         {"worst_chance", rounded(change.worstChance)},
                         {"edit", edit.is_discarded() ? Json() : edit}});
    }
    return {{"plays", play->plays}, {"any_chance", rounded(play->anyChance)}, {"castings", castings}, {"tried", tried}};
}

}  // namespace yardcast
