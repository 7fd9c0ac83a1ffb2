#include "core/reinforcement/steel_layout.h"

#include <algorithm>
#include <cmath>

#include "core/castings/steel_in_casting.h"
#include "core/materials/materials.h"
#include "core/reinforcement/bar_shapes.h"
#include "core/reinforcement/corner_bars.h"
#include "core/reinforcement/detailing_rules.h"
#include "core/reinforcement/mesh_sheets.h"
#include "core/reinforcement/steel_depths.h"

namespace yardcast {

namespace {

/// Suggested corner bars: 6 mm, 8 mm from 60 mm of concrete on; common practice, no source.
constexpr double kCornerBarMm = 6.0;
constexpr double kThickCornerBarMm = 8.0;
constexpr double kThickMm = 60.0;
constexpr double kLeastBackCoverMm = 10.0;
constexpr double kUsualCoverMm = 20.0;

/// How the casting lies while its steel is laid.
struct Lie {
    SteelDatum datum = SteelDatum::mouldBase;
    bool faceDown = true;
    double deepestMm = 0.0;
};

/// `thicknessMm` of concrete, `steelMm` of steel (two wires that cross, or a bar) behind `coverMm` from the face.
SteelHeight heightOf(const Lie& lie, double coverMm, double steelMm, double thicknessMm)
{
    SteelHeight height;
    height.coverFaceMm = coverMm;
    height.thicknessMm = thicknessMm;
    height.coverBackMm = thicknessMm - coverMm - steelMm;
    const bool fromFace = lie.faceDown || lie.datum == SteelDatum::frontWall;
    height.distanceMm = fromFace ? coverMm : lie.deepestMm - coverMm - steelMm;
    height.spacerMm = fromFace ? coverMm : height.coverBackMm;
    const double share = (coverMm + steelMm / 2) / thicknessMm;
    height.side = share < 0.4 ? SteelSide::face : share > 0.6 ? SteelSide::underside : SteelSide::middle;
    return height;
}

class Layout {
public:
    Layout(const Casting& casting, const Steel& steel, const Lie& lie, double fctk005Mpa)
        : casting_(casting), steel_(steel), lie_(lie), fctk005Mpa_(fctk005Mpa)
    {
        result_.casting = casting.id;
        result_.part = casting.part;
        result_.datum = lie.datum;
        result_.faceDown = lie.faceDown;
    }

    void layPlanned()
    {
        const double thinnest = thinnestAtFaceMm(casting_);
        if (steel_.mesh && std::isfinite(thinnest)) {
            MeshLayout mesh = layMesh(*steel_.mesh, casting_.outline);
            mesh.height = heightOf(lie_, steel_.mesh->coverMm, 2 * steel_.mesh->barMm, thinnest);
            if (!mesh.pieces.empty()) result_.meshes.push_back(std::move(mesh));
        }
        for (std::size_t i = 0; i < steel_.bars.size(); ++i) {
            const BarGroup& group = steel_.bars[i];
            for (const BarStretch& piece : barPieces(group, casting_.outline)) {
                result_.bars.push_back(laid(piece, group.diameterMm, group.material, group.coverMm));
                result_.bars.back().group = static_cast<int>(i);
                pieces_.push_back(piece);
            }
        }
    }

    void suggestCornerBars(const Counter& counter)
    {
        const double clear = usualCoverMm();
        for (const ReentrantCorner& corner : reentrantCorners(casting_, counter)) {
            if (isCrossed(corner, pieces_, clear)) continue;
            suggest(corner, clear);
        }
    }

    CastingSteelLayout finished()
    {
        for (LaidBar& bar : result_.bars) list(bar, false);
        for (CornerBar& corner : result_.cornerBars) list(corner.bar, true);
        return std::move(result_);
    }

private:
    LaidBar laid(const BarStretch& piece, double diameterMm, SteelMaterial material, double coverMm) const
    {
        LaidBar bar;
        bar.from = piece.from;
        bar.to = piece.to;
        bar.diameterMm = diameterMm;
        bar.material = material;
        const double along = thinnestAlongMm(casting_, piece);
        bar.height = heightOf(lie_, coverMm, diameterMm, std::isfinite(along) ? along : casting_.deepestMm);
        return bar;
    }

    /// From the edges to a bar's side.
    double usualCoverMm() const
    {
        if (steel_.mesh && steel_.mesh->coverMm > 0.0) return steel_.mesh->coverMm;
        double least = HUGE_VAL;
        for (const BarGroup& group : steel_.bars) {
            if (group.coverMm > 0.0) least = std::min(least, group.coverMm);
        }
        return std::isfinite(least) ? least : kUsualCoverMm;
    }

    SteelMaterial material() const
    {
        if (!steel_.bars.empty()) return steel_.bars.front().material;
        return steel_.mesh ? steel_.mesh->material : SteelMaterial::steel;
    }

    void suggest(const ReentrantCorner& corner, double clearMm)
    {
        const Point beyond = corner.at + corner.inward * (clearMm + kCornerBarMm);
        const double thickness = thinnestAlongMm(casting_, {corner.at + corner.inward, beyond});
        if (!std::isfinite(thickness)) return;
        const double diameter = thickness < kThickMm ? kCornerBarMm : kThickCornerBarMm;
        // Behind the mesh, where it is tied to it, as far as the concrete goes.
        const double behindMesh = steel_.mesh ? steel_.mesh->coverMm + 2 * steel_.mesh->barMm : clearMm;
        const double cover = std::max(std::min(behindMesh, thickness - diameter - kLeastBackCoverMm), 0.0);
        BarInConcrete held;
        held.diameterMm = diameter;
        held.coverMm = std::min(cover, clearMm);
        const double anchorage = std::ceil(anchorageMm(held, fctk005Mpa_));
        for (const CrossingBar& bar : barAcross(corner, casting_.outline, diameter, clearMm, anchorage)) {
            CornerBar suggested;
            suggested.bar = laid(bar.piece, diameter, material(), cover);
            suggested.corner = corner.at;
            suggested.of = corner.of;
            suggested.anchorageMm = anchorage;
            suggested.anchoredShare = std::min(bar.shorterSideMm / anchorage, 1.0);
            result_.cornerBars.push_back(std::move(suggested));
        }
    }

    void list(LaidBar& bar, bool suggested)
    {
        const double lengthMm = distance(bar.from, bar.to);
        const double cutMm = cutLengthMm(lengthMm);
        const auto same = [&](const BarListRow& row) {
            return row.material == bar.material && row.diameterMm == bar.diameterMm && row.cutLengthMm == cutMm &&
                   row.suggested == suggested;
        };
        auto row = std::find_if(result_.barList.begin(), result_.barList.end(), same);
        if (row == result_.barList.end()) {
            BarListRow fresh;
            fresh.mark = static_cast<int>(result_.barList.size()) + 1;
            fresh.material = bar.material;
            fresh.diameterMm = bar.diameterMm;
            fresh.lengthMm = lengthMm;
            fresh.cutLengthMm = cutMm;
            fresh.scheduledLengthMm = scheduledLengthMm(cutMm);
            fresh.suggested = suggested;
            result_.barList.push_back(fresh);
            row = std::prev(result_.barList.end());
        }
        bar.mark = row->mark;
        row->count += 1;
        row->lengthMm = std::min(row->lengthMm, lengthMm);
        row->massKg += barAreaMm2(bar.diameterMm) * cutMm * 1e-9 * reinforcementKgM3(bar.material);
    }

    const Casting& casting_;
    const Steel& steel_;
    Lie lie_;
    double fctk005Mpa_;
    CastingSteelLayout result_;
    std::vector<BarStretch> pieces_;
};

}  // namespace

CastingSteelLayout castingSteelLayout(const Casting& casting, const Part& part, double fctk005Mpa)
{
    Lie lie;
    lie.deepestMm = casting.deepestMm;
    const Steel* steel = nullptr;
    const auto* counter = std::get_if<Counter>(&part.body);
    if (counter != nullptr) {
        lie.faceDown = counter->cast == CounterCast::faceDown;
        steel = counter->steel ? &*counter->steel : nullptr;
    } else if (const auto* panel = std::get_if<Panel>(&part.body)) {
        const bool upright = panel->cast == UprightCast::upright;
        lie.datum = upright ? SteelDatum::frontWall : SteelDatum::mouldBase;
        lie.faceDown = !upright;
        steel = panel->steel ? &*panel->steel : nullptr;
    }
    if (steel == nullptr) {
        CastingSteelLayout empty;
        empty.casting = casting.id;
        empty.part = casting.part;
        return empty;
    }
    Layout layout(casting, *steel, lie, fctk005Mpa);
    layout.layPlanned();
    if (counter != nullptr && fctk005Mpa > 0.0) layout.suggestCornerBars(*counter);
    return layout.finished();
}

CastingSteelLayoutPtr SteelLayouts::of(const CastingPtr& casting, const Part& part, double fctk005Mpa)
{
    const auto known = before_.find(casting.get());
    Known entry;
    if (known != before_.end() && known->second.fctk005Mpa == fctk005Mpa) {
        entry = known->second;
    } else {
        entry = {casting, fctk005Mpa,
                 std::make_shared<const CastingSteelLayout>(castingSteelLayout(*casting, part, fctk005Mpa))};
    }
    return now_.insert_or_assign(casting.get(), std::move(entry)).first->second.layout;
}

void SteelLayouts::endRound()
{
    before_ = std::move(now_);
    now_.clear();
}

}  // namespace yardcast
