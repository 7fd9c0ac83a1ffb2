#include "core/mould/mould_estimate.h"

#include <algorithm>
#include <cmath>
#include <set>
#include <string_view>
#include <unordered_map>

#include "core/castings/sheeting.h"
#include "core/geometry/region.h"
#include "core/mould/mould_parts.h"
#include "core/plan/shared_moulds.h"

namespace yardcast {

namespace {

/// Common practice, no source: 8 m2 from a litre, two coats.
constexpr double kSealerM2PerL = 8.0;
constexpr double kSealerCoats = 2.0;
constexpr double kM2PerMm2 = 1e-6;
constexpr double kMPerMm = 1e-3;
constexpr double kSameMm = 0.01;

/// What does not hang on the mould: sheeting and sealer.
MouldNeed needOfFaces(const Casting& casting)
{
    MouldNeed need;
    need.casting = casting.id;
    need.sheetingM2 = curingSheetM2(casting);
    const double edgesM2 = (casting.edgeLengthMm + casting.cutoutEdgeLengthMm) * casting.deepestMm * kM2PerMm2;
    need.sealerL = (casting.faceAreaM2 + edgesM2) * kSealerCoats / kSealerM2PerL;
    return need;
}

void addStuff(MouldNeed& need, const MouldPart& part)
{
    if (part.stuff == MouldStuff::block) return;
    const bool sheet = isSheet(part.stuff);
    const double widthMm = sheet ? 0.0 : part.widthMm;
    const double amount = sheet ? part.lengthMm * part.widthMm * part.count * kM2PerMm2
                                : part.lengthMm * part.count * kMPerMm;
    const auto same = std::find_if(need.stuffs.begin(), need.stuffs.end(), [&](const MouldStuffNeed& one) {
        // Strips of one section differ by what they are for: a chamfer's is triangular.
        const bool alike = one.stuff == part.stuff && one.bent == part.bent &&
                           (one.kind == MouldPartKind::chamfer) == (part.kind == MouldPartKind::chamfer);
        return alike && std::abs(one.widthMm - widthMm) < kSameMm &&
               std::abs(one.thicknessMm - part.thicknessMm) < kSameMm;
    });
    if (same != need.stuffs.end()) {
        same->amount += amount;
        same->longestMm = std::max(same->longestMm, part.lengthMm);
        return;
    }
    need.stuffs.push_back({part.kind, part.stuff, part.bent, widthMm, part.thicknessMm, amount, part.lengthMm});
}

void takeFrom(MouldNeed& need, const Mould& mould, bool comesLater)
{
    for (const MouldPart& part : mould.parts) {
        const double m2 = part.lengthMm * part.widthMm * part.count * kM2PerMm2;
        if (isFoamInside(part)) {
            // Of a core that stands, the height is a side of the sheet and not its thickness.
            need.foamM2 += areaMm2(part.outline) * (part.toMm - part.fromMm) / part.thicknessMm * kM2PerMm2;
            need.foamThicknessMm = part.thicknessMm;
            need.tapedM += perimeterMm(part.outline) * kMPerMm;
        } else if (comesLater) {
            continue;
        }
        if (!isMouldBoard(part)) {
            addStuff(need, part);
            if (part.kind == MouldPartKind::tie) need.ties += part.count;
            continue;
        }
        switch (part.kind) {
        case MouldPartKind::base: need.baseM2 += m2; break;
        case MouldPartKind::side: need.sidesM2 += m2; break;
        case MouldPartKind::former: need.formersM2 += m2; break;
        default: break;
        }
    }
    need.boardM2 = (need.baseM2 + need.sidesM2 + need.formersM2) * (1 + kBoardWasteShare);
    need.siliconeMl = mould.siliconeMl;
    need.releaseMl = mould.releaseMl;
    need.waxedM = mould.waxedMm * kMPerMm;
    if (!comesLater)
        need.screws = mould.screws.sides + mould.screws.formers + mould.screws.holdDowns + mould.screws.foam;
}

}  // namespace

MouldEstimate estimateMoulds(const Plan& plan, const std::vector<CastingPtr>& castings,
                             const std::vector<MouldPtr>& moulds)
{
    std::unordered_map<std::string_view, const Mould*> known;
    for (const MouldPtr& mould : moulds) known.try_emplace(mould->casting, mould.get());
    const std::set<std::string> later = laterCastings(plan);

    MouldEstimate estimate;
    estimate.castings.reserve(castings.size());
    for (const CastingPtr& casting : castings) {
        MouldNeed need = needOfFaces(*casting);
        const auto mould = known.find(casting->id);
        if (mould != known.end()) takeFrom(need, *mould->second, later.count(casting->id) > 0);
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
