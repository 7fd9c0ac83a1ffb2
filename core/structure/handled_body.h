#pragma once

#include <map>
#include <memory>
#include <stop_token>
#include <utility>
#include <vector>

#include "core/structure/body.h"
#include "core/structure/free_body.h"
#include "core/structure/handling_places.h"

namespace yardcast {

/// A pair of hands gives way by 1 mm for each 10 N (judgement): far softer than any slab, so that several hands share
/// its weight as a rigid body would.
inline constexpr double kHandNMm = 10.0;
/// An edge that it is tilted about presses on a strip of this width.
inline constexpr double kEdgeStripMm = 10.0;
/// Width of a batten it is set down on.
inline constexpr double kBattenMm = 50.0;

/// A casting at the age at which it is lifted, free in the hands of people: loads by number, fields of stress that can
/// be summed. Loads out of the plane act along -z (towards the underside), places press along +z; what lies on its face
/// is the same with all signs turned.
class HandledBody {
public:
    /// Null where it cannot be solved or `stop` was asked.
    static std::unique_ptr<HandledBody> make(std::shared_ptr<const Body> body, std::stop_token stop = {});

    const Body& body() const { return *body_; }
    const FreeBody& free() const { return *free_; }
    const std::vector<double>& strengthMpa() const { return strengthMpa_; }

    /// From now on it is of this concrete: another age of the same mesh. States and uses follow; see
    /// `FreeBody::setElasticShare` for what does not.
    void setConcrete(double elasticMpa, double fctk005Mpa);

    int weight() const { return weight_; }
    /// 1 kPa over all of the face.
    int suction() const { return suction_; }
    /// Own weight in the plane, along `down` (unit).
    int weightAlong(Point down);

    /// Hands at a point, `along` the edge there. Hands within a millimetre are the same.
    FreeBody::Place hand(Point at, Point along);
    /// Presses on a region with the plan's bed.
    FreeBody::Place bed(const Region& region);
    /// Hands below an edge of a piece that stands on it: they press in the plane, along `up`, at the height `zMm`.
    FreeBody::Place handBelow(const Region& region, Point up, double zMm);
    /// An edge that it is tilted about, in pieces that press each by itself.
    struct EdgePieces {
        std::vector<FreeBody::Place> places;
        std::vector<Region> regions;
    };
    const EdgePieces& edge(const StandingEdge& edge);
    void solveAdded() { free_->solveAdded(); }

    /// Greatest use in percent of a state: as it is, and with all signs turned (lying on its face). What is not asked
    /// for stays zero. By the bare nodes of the mesh: for comparing many states.
    struct Uses {
        double faceUpPercent = 0.0;
        double onFacePercent = 0.0;
    };
    enum class Side { faceUp, onFace, both };
    Uses usesOf(const FreeBody::State& state, Side side = Side::both);
    /// The greatest use of a state, as an answer says it, and where it is; `onFace` with all signs turned.
    GreatestUse greatestUseOf(const FreeBody::State& state, bool onFace);
    /// Many states of the same loads are summed from the loads' own fields; few are cheaper one by one.
    void expectMany(bool many) { many_ = many; }

private:
    HandledBody() = default;
    const StressField& field(int load);
    void sumFields(const FreeBody::State& state);
    void fillSum(const FreeBody::State& state);
    void turnSum();

    std::shared_ptr<const Body> body_;
    std::unique_ptr<FreeBody> free_;
    std::vector<double> strengthMpa_;
    int weight_ = 0;
    int suction_ = 0;
    std::map<std::pair<long, long>, int> hands_;
    std::map<int, EdgePieces> edges_;
    std::vector<std::unique_ptr<StressField>> fields_;
    StressField sum_;
    bool many_ = false;
};

}  // namespace yardcast
