#include "core/purchase/needs.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "core/io/number_text.h"
#include "core/materials/materials.h"
#include "core/mould/mould_parts.h"
#include "core/purchase/mould_items.h"

namespace yardcast {

namespace {

/// The list of needs while it grows: `add` joins amounts of the same item.
class Needs {
public:
    std::vector<Need> list;

    Need& at(const std::vector<std::string>& keys, const char* unit, const char* group, bool estimate,
             const std::string& detail = {})
    {
        const auto it = std::find_if(list.begin(), list.end(), [&](const Need& need) {
            return need.keys == keys && need.detail == detail && need.packSize == 0.0;
        });
        if (it != list.end()) return *it;
        Need need;
        need.keys = keys;
        need.unit = unit;
        need.group = group;
        need.detail = detail;
        need.estimate = estimate;
        list.push_back(std::move(need));
        return list.back();
    }

    void add(const std::string& key, const char* unit, const char* group, bool estimate, const std::string& subject,
             double amount)
    {
        if (amount > 0.0) addTo(at({key}, unit, group, estimate), subject, amount);
    }

    static void addTo(Need& need, const std::string& subject, double amount)
    {
        if (!(amount > 0.0)) return;
        need.amount += amount;
        if (!need.origins.empty() && need.origins.back().subject == subject) {
            need.origins.back().amount += amount;
        } else {
            need.origins.push_back({subject, amount});
        }
    }
};

/// The same sort on the shelf: how sure its yield is does not make it another.
bool sameBag(Bag a, const Bag& b)
{
    a.source = b.source;
    a.yieldSpreadPercent = b.yieldSpreadPercent;
    return a == b;
}

void addDryMix(Needs& needs, const Plan& plan, const std::vector<MixQuantities>& mixes)
{
    struct Sort {
        Bag bag;
        Need need;
        Need spare;
    };
    std::vector<Sort> sorts;
    for (const MixQuantities& quantities : mixes) {
        const Mix* mix = findMix(plan, quantities.mix);
        if (!mix || !(quantities.bagsKg > 0.0)) continue;
        auto it = std::find_if(sorts.begin(), sorts.end(),
                               [&](const Sort& sort) { return sameBag(sort.bag, mix->bag); });
        if (it == sorts.end()) {
            Sort sort;
            sort.bag = mix->bag;
            sort.need.keys = {"dry_mix"};
            sort.need.unit = "kg";
            sort.need.packSize = mix->bag.massKg;
            sort.spare.keys = {"spare_bag"};
            sort.spare.unit = "piece";
            sort.spare.estimate = true;
            sort.need.group = sort.spare.group = "concrete";
            it = sorts.insert(sorts.end(), std::move(sort));
        }
        Need& need = it->need;
        Needs::addTo(it->spare, quantities.mix, quantities.spareBags);
        need.detail += (need.detail.empty() ? "" : ", ") + quantities.mix;
        need.atLeast += quantities.bags * mix->bag.massKg;
        Needs::addTo(need, quantities.mix, quantities.bagsKg);
    }
    // A spare bag costs what the line before it costs.
    for (Sort& sort : sorts) {
        if (sorts.size() == 1) sort.need.detail.clear();
        sort.spare.detail = sort.need.detail;
        needs.list.push_back(sort.need);
        if (sort.spare.amount > 0.0) needs.list.push_back(sort.spare);
    }
}

void addConcrete(Needs& needs, const Plan& plan, const std::vector<MixQuantities>& mixes)
{
    addDryMix(needs, plan, mixes);
    for (const MixQuantities& mix : mixes) {
        needs.add("cement", "kg", "concrete", false, mix.mix, mix.perBag ? mix.extraCementKg : mix.cementKg);
        needs.add("sand", "kg", "concrete", false, mix.mix, mix.sandKg);
        needs.add("gravel", "kg", "concrete", false, mix.mix, mix.gravelKg);
        needs.add("silica_fume", "kg", "concrete", false, mix.mix, mix.silicaFumeKg);
        needs.add("plasticiser", "l", "concrete", false, mix.mix, mix.plasticiserKg / kPlasticiserKgL);
        needs.add("pigment", "kg", "concrete", false, mix.mix, mix.pigmentKg);
        needs.add("ice", "kg", "concrete", false, mix.mix, mix.iceKg);
        for (const auto& [kind, kg] : mix.fibresByKindKg) {
            needs.add("fibre_" + itemSlug(kind), "kg", "concrete", false, mix.mix, kg);
        }
    }
}

void addSteel(Needs& needs, const SteelSchedule& steel)
{
    for (const MeshNeed& mesh : steel.meshes) {
        needs.add(meshItem(mesh.barMm, mesh.pitchMm, mesh.material), "m2", "steel", true, mesh.casting,
                  mesh.withLapsM2 * (1 + kCutAllowanceShare));
        needs.add("spacer", "piece", "steel", true, mesh.casting, std::ceil(mesh.netAreaM2 * kSpacersPerM2));
        needs.add("tie", "piece", "steel", true, mesh.casting, std::ceil(mesh.netAreaM2 * kTiesPerM2));
    }
    for (const BarNeed& bar : steel.bars) {
        const double metres = bar.count * bar.lengthMm / 1000.0;
        if (!(metres > 0.0)) continue;
        Need& need = needs.at({barItem(bar.diameterMm, bar.material)}, "m", "steel", true);
        Needs::addTo(need, bar.casting, metres * (1 + kCutAllowanceShare));
        need.longestMm = std::max(need.longestMm, bar.lengthMm);
        const double each = std::ceil(bar.lengthMm / kBarSpacerPitchMm) + 1;
        needs.add("spacer", "piece", "steel", true, bar.casting, bar.count * each);
        needs.add("tie", "piece", "steel", true, bar.casting, bar.count * each);
    }
}

void addStuff(Needs& needs, const PlanPrices& prices, const std::string& casting, const MouldStuffNeed& stuff)
{
    const bool sheet = isSheet(stuff.stuff);
    const MouldItem item = mouldItemOf(prices, stuff.kind, stuff.stuff, stuff.bent, stuff.widthMm, stuff.thicknessMm);
    if (item.keys.empty()) return;
    const char* group = stuff.stuff == MouldStuff::rod ? "fixings" : sheet ? "boards" : "timber";
    Need& need = needs.at(item.keys, sheet ? "m2" : "m", group, true, item.detail);
    Needs::addTo(need, casting, stuff.amount * item.layers * (1 + kCutAllowanceShare));
}

void addMould(Needs& needs, const PlanPrices& prices, const MouldEstimate& mould)
{
    for (const MouldNeed& need : mould.castings) {
        needs.add("mould_board", "m2", "boards", true, need.casting, need.boardM2);
        for (const MouldStuffNeed& stuff : need.stuffs) addStuff(needs, prices, need.casting, stuff);
        needs.add("tie_nut", "piece", "fixings", false, need.casting, 2.0 * need.ties);
        needs.add("screw_mould", "piece", "fixings", false, need.casting, need.screws);
        needs.add("mould_tape", "m", "sealing", true, need.casting, need.tapedM);
        needs.add("mould_wax", "piece", "sealing", true, need.casting, need.waxedM / kWaxTinM);
        needs.add("silicone", "ml", "sealing", true, need.casting, need.siliconeMl);
        needs.add("release_agent", "l", "sealing", true, need.casting, need.releaseMl / 1000.0);
        needs.add("sheeting", "m2", "sealing", true, need.casting, need.sheetingM2);
        needs.add("sealer", "l", "sealing", true, need.casting, need.sealerL);
    }
}

void addCastings(Needs& needs, const PriceBook& prices, const std::vector<CastingPtr>& castings)
{
    const PricedItem* discs = prices.find("grinding_discs");
    const double discSetM2 = discs && discs->coverageM2 ? *discs->coverageM2 : kDiscSetM2;
    for (const CastingPtr& casting : castings) {
        if (casting->kind != PartKind::counter) continue;
        needs.add("grinding_discs", "piece", "tools", true, casting->id, casting->faceAreaM2 / discSetM2);
    }
}

void addJointsAndPads(Needs& needs, const Plan& plan, const std::vector<CastingPtr>& castings)
{
    std::map<std::string, int> castingsOfPart;
    for (const CastingPtr& casting : castings) ++castingsOfPart[casting->part];
    for (const PartPtr& part : plan.parts) {
        const auto count = castingsOfPart.find(part->id);
        if (count == castingsOfPart.end()) continue;
        if (const auto* support = std::get_if<Support>(&part->body); support && support->pads) {
            needs.add("pads", "piece", "fixings", false, part->id, support->pads->count);
        }
        const auto* counter = std::get_if<Counter>(&part->body);
        if (!counter || count->second < 2) continue;
        for (const Joint& joint : counter->joints) {
            const double gapMm = joint.gapMm.value_or(kDefaultJointGapMm);
            const double depthMm = std::max(gapMm / 2, kLeastSealantDepthMm);
            needs.add("joint_sealant", "ml", "sealing", true, part->id,
                      distance(joint.from, joint.to) * gapMm * depthMm / 1000.0);
        }
    }
}

void addFronts(Needs& needs, const Plan& plan, const std::vector<FrontLayout>& fronts)
{
    std::map<std::string, const Front*> byId;
    for (const PartPtr& part : plan.parts) {
        if (const auto* front = std::get_if<Front>(&part->body)) byId[part->id] = front;
    }
    for (const FrontLayout& layout : fronts) {
        const auto found = byId.find(layout.part);
        if (found == byId.end() || !layout.solved) continue;
        const Front* front = found->second;
        Need& battens = needs.at(battenKeys(*front), "m", "timber", true, battenDetail(*front));
        Needs::addTo(battens, layout.part, layout.timberM * (1 + kCutAllowanceShare));
        battens.longestMm = std::max(battens.longestMm, layout.battenLengthMm);
        needs.add("frame_timber", "m", "timber", true, layout.part, layout.frameTimberM * (1 + kCutAllowanceShare));
        needs.add("hinge", "piece", "fixings", false, layout.part, layout.hinges);
        needs.add("screw_front", "piece", "fixings", true, layout.part, layout.screws);
    }
}

void addSafety(Needs& needs, const Plan& plan)
{
    const double people = std::max(plan.crew.people, 1);
    for (const char* item : {"gloves", "glasses", "respirator"}) {
        needs.add(item, "piece", "safety", false, "", people);
    }
}

/// "_stainless"; plain steel goes without.
std::string materialEnding(SteelMaterial material)
{
    switch (material) {
    case SteelMaterial::steel: break;
    case SteelMaterial::galvanised: return "_galvanised";
    case SteelMaterial::stainless: return "_stainless";
    case SteelMaterial::glass: return "_glass";
    case SteelMaterial::basalt: return "_basalt";
    }
    return {};
}

}  // namespace

std::string itemSlug(const std::string& words)
{
    std::string slug;
    for (const char c : words) {
        const bool upper = c >= 'A' && c <= 'Z';
        if ((c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || upper) {
            slug += upper ? static_cast<char>(c - 'A' + 'a') : c;
        } else if (!slug.empty() && slug.back() != '_') {
            slug += '_';
        }
    }
    while (!slug.empty() && slug.back() == '_') slug.pop_back();
    return slug;
}

std::vector<std::string> battenKeys(const Front& front)
{
    const std::string section = shortestText(front.batten.widthMm) + "x" + shortestText(front.batten.thicknessMm);
    const std::string species = itemSlug(front.batten.species);
    std::vector<std::string> keys{"batten_" + section, "batten"};
    if (!species.empty()) keys.insert(keys.begin(), "batten_" + species + "_" + section);
    return keys;
}

std::string battenDetail(const Front& front)
{
    return shortestText(front.batten.widthMm) + " x " + shortestText(front.batten.thicknessMm) +
           (front.batten.species.empty() ? "" : " " + front.batten.species);
}

std::string foamItem(double thicknessMm)
{
    return "foam_" + shortestText(std::round(thicknessMm));
}

std::string meshItem(double barMm, double pitchMm, SteelMaterial material)
{
    return "mesh_" + shortestText(barMm) + "_" + shortestText(pitchMm) + materialEnding(material);
}

std::string barItem(double diameterMm, SteelMaterial material)
{
    return "bar_" + shortestText(diameterMm) + materialEnding(material);
}

std::vector<Need> gatherNeeds(const Plan& plan, const PriceBook& prices, const std::vector<CastingPtr>& castings,
                              const std::vector<MixQuantities>& mixes, const SteelSchedule& steel,
                              const std::vector<FrontLayout>& fronts, const MouldEstimate& mould)
{
    Needs needs;
    addConcrete(needs, plan, mixes);
    addSteel(needs, steel);
    addMould(needs, PlanPrices(plan, prices), mould);
    addCastings(needs, prices, castings);
    addJointsAndPads(needs, plan, castings);
    addFronts(needs, plan, fronts);
    if (!castings.empty() || !fronts.empty()) addSafety(needs, plan);
    return std::move(needs.list);
}

}  // namespace yardcast
