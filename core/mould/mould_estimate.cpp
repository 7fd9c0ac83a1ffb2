#include "core/mould/mould_estimate.h"

#include <string_view>
#include <unordered_map>

#include "core/castings/sheeting.h"

namespace yardcast {

namespace {

/// The base reaches past the sides, for cleats and screws; estimate, no source.
constexpr double kBaseMarginMm = 40.0;
/// A fillet of radius r between two boards at a right angle: (1 - pi/4) r2 of its section.
constexpr double kFilletShare = 0.215;
/// What is squeezed out and wiped off; trade practice: 20 to 25 m of a cartridge that would do for 40 m.
constexpr double kSiliconeInPractice = 1.8;
/// From memory; common practice.
constexpr double kReleaseLPerM2 = 0.1;
/// Common practice, no source: 8 m2 from a litre, two coats.
constexpr double kSealerM2PerL = 8.0;
constexpr double kSealerCoats = 2.0;
constexpr double kM2PerMm2 = 1e-6;

void addFoam(MouldNeed& need, const Casting& casting)
{
    for (const Zone& zone : casting.zones) {
        if (zone.isConcrete()) continue;
        need.foamM2 += areaMm2(zone.region) * kM2PerMm2;
        need.foamThicknessMm = zone.depthMm();
    }
}

MouldNeed needOf(const Casting& casting, bool castUpright)
{
    MouldNeed need;
    need.casting = casting.id;
    const double around = 2 * (kBoardMm + kBaseMarginMm);
    const double width = casting.boundsMm.width();
    const double height = casting.boundsMm.height();
    const double depth = casting.deepestMm;
    const double outlineM2 = areaMm2(casting.outline) * kM2PerMm2;
    double touchedM2 = 0.0;
    if (castUpright) {
        // The narrow bottom carries it; two large faces and the two ends stand on it, the top stays open.
        need.baseM2 = (width + around) * (depth + around) * kM2PerMm2;
        need.sidesM2 = 2 * outlineM2 + 2 * height * depth * kM2PerMm2;
        touchedM2 = need.sidesM2 + width * depth * kM2PerMm2;
    } else {
        need.baseM2 = (width + around) * (height + around) * kM2PerMm2;
        need.sidesM2 = casting.edgeLengthMm * depth * kM2PerMm2;
        need.formersM2 = casting.cutoutEdgeLengthMm * depth * kM2PerMm2;
        touchedM2 = outlineM2 + need.sidesM2 + need.formersM2;
    }
    need.boardM2 = (need.baseM2 + need.sidesM2 + need.formersM2) * (1 + kBoardWasteShare);
    const double filletMm = casting.edgeLengthMm + casting.cutoutEdgeLengthMm;
    need.siliconeMl = kFilletShare * kFilletRadiusMm * kFilletRadiusMm * filletMm * 1e-3 * kSiliconeInPractice;
    need.releaseMl = touchedM2 * kReleaseLPerM2 * 1000;
    need.sheetingM2 = curingSheetM2(casting);
    const double edgesM2 = filletMm * depth * kM2PerMm2;
    need.sealerL = (casting.faceAreaM2 + edgesM2) * kSealerCoats / kSealerM2PerL;
    addFoam(need, casting);
    return need;
}

/// Sheeting and sealer do not depend on the mould; the rest is summed over its parts.
void takeFrom(MouldNeed& need, const Mould& mould)
{
    need.baseM2 = need.sidesM2 = need.formersM2 = need.foamM2 = need.foamThicknessMm = 0.0;
    for (const MouldPart& part : mould.parts) {
        const double m2 = part.lengthMm * part.widthMm * part.count * kM2PerMm2;
        switch (part.kind) {
        case MouldPartKind::base: need.baseM2 += m2; break;
        case MouldPartKind::side:
            // Brackets come out of what is left over.
            if (part.stuff == MouldStuff::board) need.sidesM2 += m2;
            break;
        case MouldPartKind::former:
            if (part.stuff == MouldStuff::board) need.formersM2 += m2;
            break;
        case MouldPartKind::filler:
        case MouldPartKind::core:
            // Of a core that stands, the height is a side of the sheet and not its thickness.
            need.foamM2 += areaMm2(part.outline) * (part.toMm - part.fromMm) / part.thicknessMm * kM2PerMm2;
            need.foamThicknessMm = part.thicknessMm;
            break;
        default: break;
        }
    }
    need.boardM2 = (need.baseM2 + need.sidesM2 + need.formersM2) * (1 + kBoardWasteShare);
    need.siliconeMl = mould.siliconeMl;
    need.releaseMl = mould.releaseMl;
}

}  // namespace

MouldEstimate estimateMoulds(const Plan& plan, const std::vector<CastingPtr>& castings,
                             const std::vector<MouldPtr>& moulds)
{
    std::unordered_map<std::string_view, const Mould*> known;
    for (const MouldPtr& mould : moulds) known.try_emplace(mould->casting, mould.get());
    std::unordered_map<std::string_view, const Part*> parts;
    for (const PartPtr& part : plan.parts) parts.try_emplace(part->id, part.get());

    MouldEstimate estimate;
    estimate.castings.reserve(castings.size());
    for (const CastingPtr& casting : castings) {
        const auto found = parts.find(casting->part);
        MouldNeed need = needOf(*casting, found != parts.end() && isCastUpright(found->second->body));
        const auto mould = known.find(casting->id);
        if (mould != known.end()) takeFrom(need, *mould->second);
        estimate.boardM2 += need.boardM2;
        estimate.siliconeMl += need.siliconeMl;
        estimate.releaseMl += need.releaseMl;
        estimate.sheetingM2 += need.sheetingM2;
        estimate.sealerL += need.sealerL;
        estimate.castings.push_back(std::move(need));
    }
    return estimate;
}

}  // namespace yardcast
