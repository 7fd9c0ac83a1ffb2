#include <algorithm>
#include <cmath>
#include <set>

#include "core/castings/steel_in_casting.h"
#include "core/materials/boards.h"
#include "core/mould/fresh_pressure.h"
#include "core/mould/mould_making.h"
#include "core/mould/mould_parts.h"

namespace yardcast::mould_making {

namespace {

/// A block that leans less than this does not come out by itself. Common practice, no source: 2 to 4 degrees.
constexpr double kLeastDraftDeg = 1.0;
/// Share of its bending strength that a board is asked for; our choice.
constexpr double kBoardSafety = 2.0;
/// Concrete between a rebate and the steel, mm. Common practice, no source.
constexpr double kLeastCoverMm = 10.0;
constexpr double kBowSlack = 1.001;

Finding aboutMoulds(const char* code, Severity severity, std::vector<std::string> subjects,
                    std::map<std::string, FindingValue> values)
{
    Finding finding;
    finding.code = code;
    finding.severity = severity;
    finding.subjects = std::move(subjects);
    finding.values = std::move(values);
    return finding;
}

void addFormerFindings(const Moulding& how, const std::vector<MouldPtr>& moulds, std::vector<Finding>& findings)
{
    std::vector<std::string> stuck;
    std::vector<std::string> narrower;
    double most = 0.0;
    for (const MouldPtr& mould : moulds) {
        const bool board = std::any_of(mould->parts.begin(), mould->parts.end(), [](const MouldPart& part) {
            return part.kind == MouldPartKind::former && part.stuff == MouldStuff::board;
        });
        if (board && how.draftDeg < kLeastDraftDeg) stuck.push_back(mould->casting);
        // The drawn size is that at the face: cast face down, the underside gets the narrower end.
        if (mould->mirrored && mould->cutoutDraftMm > how.toleranceMm) {
            narrower.push_back(mould->casting);
            most = std::max(most, mould->cutoutDraftMm);
        }
    }
    if (!stuck.empty()) {
        findings.push_back(aboutMoulds("former_no_draft", Severity::caution, std::move(stuck),
                                       {{"draft_deg", how.draftDeg}, {"wanted_deg", 3.0}}));
        findings.back().pointer = "/mould/draft_deg";
    }
    if (!narrower.empty())
        findings.push_back(aboutMoulds("draft_narrows_cutout", Severity::note, std::move(narrower),
                                       {{"draft_mm", most}, {"draft_deg", how.draftDeg}}));
}

void addSideFindings(const Moulding& how, const std::vector<MouldPtr>& moulds, std::vector<Finding>& findings)
{
    std::vector<std::string> bowing;
    std::vector<std::string> breaking;
    const Mould* worst = nullptr;
    const Mould* hardest = nullptr;
    for (const MouldPtr& mould : moulds) {
        const MouldPressure& pressure = mould->pressure;
        if (pressure.bowMm > how.bowMm * kBowSlack) {
            bowing.push_back(mould->casting);
            if (!worst || pressure.bowMm > worst->pressure.bowMm) worst = mould.get();
        }
        if (pressure.stressMpa > kMouldBoardStrengthMpa / kBoardSafety) {
            breaking.push_back(mould->casting);
            if (!hardest || pressure.stressMpa > hardest->pressure.stressMpa) hardest = mould.get();
        }
    }
    if (worst) {
        const MouldPressure& pressure = worst->pressure;
        const double kpa = worst->standing ? pressure.pressureKpa : pressure.pressureKpa / 2;
        findings.push_back(aboutMoulds(
            "side_bows", Severity::caution, std::move(bowing),
            {{"bow_mm", pressure.bowMm}, {"most_mm", how.bowMm}, {"bracket_mm", pressure.bracketMm},
             {"wanted_mm", std::floor(spanForBowMm(kpa, how.bowMm, how.boardMm, kMouldBoardElasticMpa) / 10) * 10},
             {"pressure_kpa", pressure.pressureKpa}}));
        findings.back().pointer = "/mould/bracket_mm";
    }
    if (hardest) {
        findings.push_back(aboutMoulds("side_breaks", Severity::caution, std::move(breaking),
                                       {{"stress_mpa", hardest->pressure.stressMpa},
                                        {"strength_mpa", kMouldBoardStrengthMpa},
                                        {"bracket_mm", hardest->pressure.bracketMm},
                                        {"pressure_kpa", hardest->pressure.pressureKpa}}));
    }
}

void addBoardFindings(const Moulding& how, const std::vector<MouldPtr>& moulds, std::vector<Finding>& findings)
{
    std::vector<std::string> longOnes;
    double length = 0.0;
    double width = 0.0;
    double narrowest = HUGE_VAL;
    int strips = 0;
    std::vector<std::string> narrow;
    std::vector<std::string> stepped;
    double shortest = HUGE_VAL;
    for (const MouldPtr& mould : moulds) {
        bool hasNarrow = false;
        bool hasStep = false;
        Region base;
        for (const MouldPart& part : mould->parts) {
            if (!isMouldBoard(part)) continue;
            if (part.kind == MouldPartKind::side && part.insideMm < part.thicknessMm) {
                hasStep = true;
                shortest = std::min(shortest, part.insideMm);
            }
            if (part.kind == MouldPartKind::base) base.insert(base.end(), part.outline.begin(), part.outline.end());
            // Brackets and the plies of formers are sawn at home, of what is left over.
            const bool ordered = part.kind == MouldPartKind::base || part.kind == MouldPartKind::side;
            if (!ordered || part.widthMm >= how.leastStripMm) continue;
            strips += part.count;
            narrowest = std::min(narrowest, part.widthMm);
            hasNarrow = true;
        }
        if (base.size() > 1) {
            longOnes.push_back(mould->casting);
            const Blank whole = blankOf(base);
            if (whole.lengthMm > length) {
                length = whole.lengthMm;
                width = whole.widthMm;
            }
        }
        if (hasStep) stepped.push_back(mould->casting);
        if (hasNarrow) narrow.push_back(mould->casting);
    }
    if (!longOnes.empty())
        findings.push_back(aboutMoulds("base_longer_than_sheet", Severity::note, std::move(longOnes),
                                       {{"length_mm", length}, {"width_mm", width}, {"sheet_mm", kUsualSheetLengthMm},
                                        {"sheet_width_mm", kUsualSheetWidthMm}}));
    if (!stepped.empty())
        findings.push_back(aboutMoulds("edge_below_board", Severity::caution, std::move(stepped),
                                       {{"edge_mm", shortest}, {"board_mm", how.boardMm}}));
    if (strips > 0)
        findings.push_back(aboutMoulds("strip_below_store", Severity::note, std::move(narrow),
                                       {{"strips", static_cast<double>(strips)}, {"narrowest_mm", narrowest},
                                        {"least_mm", how.leastStripMm}}));
}

void addFoamFindings(const std::vector<MouldPtr>& moulds, std::vector<Finding>& findings)
{
    std::vector<std::string> loose;
    double most = 0.0;
    int screws = 0;
    for (const MouldPtr& mould : moulds) {
        if (!(mould->upliftN > 0.0)) continue;
        const bool held = std::any_of(mould->parts.begin(), mould->parts.end(), [](const MouldPart& part) {
            return part.kind == MouldPartKind::holdDown && part.about.empty();
        });
        if (held) continue;
        loose.push_back(mould->casting);
        if (mould->upliftN > most) {
            most = mould->upliftN;
            screws = mould->screws.foam;
        }
    }
    if (!loose.empty())
        findings.push_back(aboutMoulds("foam_not_held", Severity::caution, std::move(loose),
                                       {{"uplift_n", most}, {"screws", static_cast<double>(screws)}}));
}

void addTwinFindings(const std::vector<MouldPtr>& moulds, std::vector<Finding>& findings)
{
    std::set<std::string> told;
    for (const MouldPtr& mould : moulds) {
        if (told.count(mould->casting) > 0) continue;
        std::vector<std::string> subjects{mould->casting};
        bool mirrored = false;
        for (const Twin& twin : mould->twins) {
            if (twin.kind != TwinKind::mirror) continue;
            subjects.push_back(twin.casting);
            mirrored = true;
        }
        if (!mirrored) continue;
        for (const Twin& twin : mould->twins) told.insert(twin.casting);
        findings.push_back(aboutMoulds("mirror_twins", Severity::note, std::move(subjects), {}));
    }
}

void addGapFindings(const Moulding& how, const std::vector<MouldPtr>& moulds, std::vector<Finding>& findings)
{
    std::set<std::string> told;
    for (const MouldPtr& mould : moulds) {
        if (mould->takenUpBy.empty() || mould->gapMm > how.toleranceMm) continue;
        if (told.count(mould->casting) > 0) continue;
        told.insert(mould->takenUpBy);
        findings.push_back(aboutMoulds("gap_within_tolerance", Severity::note, {mould->casting, mould->takenUpBy},
                                       {{"gap_mm", mould->gapMm}, {"tolerance_mm", how.toleranceMm}}));
    }
}

/// Concrete left between a rebate and the nearest steel below it; infinite where there is none.
double coverBelowRebateMm(const Casting& casting, const Counter& counter)
{
    double least = HUGE_VAL;
    if (!counter.steel) return least;
    for (const Zone& zone : casting.zones) {
        if (!zone.isConcrete() || !(zone.fromMm > 0.0)) continue;
        if (counter.steel->mesh) least = std::min(least, counter.steel->mesh->coverMm - zone.fromMm);
        for (const BarGroup& group : counter.steel->bars) {
            for (const BarStretch& bar : barPieces(group, casting.outline)) {
                if (!clipToRegion(bar.from, bar.to, zone.region).empty())
                    least = std::min(least, group.coverMm - zone.fromMm);
            }
        }
    }
    return least;
}

void addSteelFindings(const Plan& plan, const std::vector<CastingPtr>& castings, std::vector<Finding>& findings)
{
    for (const CastingPtr& casting : castings) {
        const Part* part = findPart(plan, casting->part);
        const auto* counter = part ? std::get_if<Counter>(&part->body) : nullptr;
        if (!counter || !counter->rebate) continue;
        const double cover = coverBelowRebateMm(*casting, *counter);
        if (cover >= kLeastCoverMm) continue;
        findings.push_back(aboutMoulds("rebate_near_steel", Severity::caution, {casting->id},
                                       {{"cover_mm", cover}, {"depth_mm", counter->rebate->depthMm},
                                        {"least_mm", kLeastCoverMm}}));
    }
}

}  // namespace

void addMouldFindings(const Plan& plan, const Moulding& how, const std::vector<CastingPtr>& castings,
                      const std::vector<MouldPtr>& moulds, std::vector<Finding>& findings)
{
    addFormerFindings(how, moulds, findings);
    addSideFindings(how, moulds, findings);
    addBoardFindings(how, moulds, findings);
    addFoamFindings(moulds, findings);
    addTwinFindings(moulds, findings);
    addGapFindings(how, moulds, findings);
    addSteelFindings(plan, castings, findings);
}

}  // namespace yardcast::mould_making
