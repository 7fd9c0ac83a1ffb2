#include "core/fem/bed_contact.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "core/fem/dense_front.h"

namespace yardcast::fem {

namespace {

constexpr int kMostSteps = 60;
/// The last step moves nothing by more than this part of the greatest deflection.
constexpr double kStill = 1e-11;
/// A pivot under this part of the bed at its node, or under rounding: what presses leaves the body loose.
constexpr double kLooseOfBed = 1e-8;
constexpr double kRounding = 1e-15;
constexpr double kEnergyRounding = 1e-9;
/// After a step of less than this part of the greatest deflection the next one uses the same stiffness, and the ones
/// after it as long as each is less than this part of the one before.
constexpr double kChordFrom = 1e-3;
constexpr double kChordGain = 0.02;
/// Who goes so far has tipped.
constexpr double kAwayMm = 1e4;

void add(const std::vector<Shares>& ring, double sign, PressedIntegrals& sum)
{
    for (std::size_t i = 1; i + 1 < ring.size(); ++i) {
        const Shares& o = ring[0];
        const Shares& a = ring[i];
        const Shares& b = ring[i + 1];
        const double area = sign * ((a[1] - o[1]) * (b[2] - o[2]) - (a[2] - o[2]) * (b[1] - o[1]));
        Shares total;
        for (std::size_t k = 0; k < 3; ++k) total[k] = o[k] + a[k] + b[k];
        sum.area += area;
        for (std::size_t k = 0; k < 3; ++k) {
            for (std::size_t m = 0; m <= k; ++m)
                sum.second[k][m] += area / 12 * (o[k] * o[m] + a[k] * a[m] + b[k] * b[m] + total[k] * total[m]);
        }
    }
}

/// `depth`: deflection and gap at the corners; the bed presses where it is negative. `kept` is room to work in.
PressedIntegrals pressedPart(const BedPiece& piece, const std::array<double, 3>& depth, std::vector<Shares>& kept)
{
    PressedIntegrals sum;
    if (depth[0] >= 0 && depth[1] >= 0 && depth[2] >= 0) return sum;
    if (depth[0] < 0 && depth[1] < 0 && depth[2] < 0) return piece.whole;
    for (const SharesRing& ring : piece.rings) {
        const auto at = [&](const Shares& s) { return s[0] * depth[0] + s[1] * depth[1] + s[2] * depth[2]; };
        kept.clear();
        for (std::size_t i = 0; i < ring.points.size(); ++i) {
            const Shares& a = ring.points[i];
            const Shares& b = ring.points[i + 1 < ring.points.size() ? i + 1 : 0];
            const double ya = at(a);
            const double yb = at(b);
            if (ya < 0) kept.push_back(a);
            if ((ya < 0) != (yb < 0)) {
                const double t = ya / (ya - yb);
                Shares cut;
                for (std::size_t k = 0; k < 3; ++k) cut[k] = a[k] + t * (b[k] - a[k]);
                kept.push_back(cut);
            }
        }
        add(kept, ring.sign, sum);
    }
    return sum;
}

}  // namespace

BedContact::BedContact(std::vector<Contact> contacts, std::vector<BedPiece> pieces, const double* flexibility,
                       int stride)
    : contacts_(std::move(contacts)), pieces_(std::move(pieces))
{
    for (BedPiece& piece : pieces_)
        for (const SharesRing& ring : piece.rings) add(ring.points, ring.sign, piece.whole);
    std::map<int, int> unknownOf;
    for (std::size_t c = 0; c < contacts_.size(); ++c) {
        const auto [place, isNew] = unknownOf.try_emplace(contacts_[c].node, int(firstOf_.size()));
        if (isNew) {
            firstOf_.push_back(int(c));
            base_.push_back(0.0);
            baseForce_.push_back(0.0);
        }
        unknown_.push_back(place->second);
        base_[std::size_t(place->second)] += contacts_[c].stiffnessNMm;
        baseForce_[std::size_t(place->second)] += contacts_[c].stiffnessNMm * contacts_[c].gapMm;
    }
    count_ = firstOf_.size();
    padded_ = (count_ + 5) / 6 * 6;
    flexibility_.assign(count_ * count_, 0.0);

    // The front [C; 1], its pivots C: what is left below is -inverse(C).
    std::vector<double> panel(2 * padded_ * padded_, 0.0);
    std::vector<double> update(padded_ * padded_, 0.0);
    for (std::size_t j = 0; j < padded_; ++j) {
        double* const column = panel.data() + j * 2 * padded_;
        column[padded_ + j] = 1.0;
        if (j >= count_) {
            column[j] = 1.0;
            continue;
        }
        for (std::size_t i = j; i < count_; ++i) {
            column[i] = flexibility[std::size_t(firstOf_[j]) * std::size_t(stride) + std::size_t(firstOf_[i])];
            flexibility_[j * count_ + i] = flexibility_[i * count_ + j] = column[i];
        }
    }
    const std::vector<double> least(padded_, 0.0);
    regular_ = denseKernels().factor({panel.data(), update.data(), int(2 * padded_), int(padded_), 0}, least.data());
    inverse_.assign(padded_ * padded_, 0.0);
    for (std::size_t j = 0; j < count_; ++j)
        for (std::size_t i = j; i < count_; ++i)
            inverse_[j * padded_ + i] = inverse_[i * padded_ + j] = -update[j * padded_ + i];
}

double BedContact::addPressing(const std::vector<double>& w, double* matrix) const
{
    double energySum = 0.0;
    std::vector<Shares> kept;
    for (const BedPiece& piece : pieces_) {
        std::array<double, 3> depth;
        std::array<std::size_t, 3> at;
        for (std::size_t k = 0; k < 3; ++k) {
            const auto c = std::size_t(piece.contact[k]);
            at[k] = std::size_t(unknown_[c]);
            depth[k] = w[at[k]] + contacts_[c].gapMm;
        }
        PressedIntegrals pressed = pressedPart(piece, depth, kept);
        if (pressed.area == 0.0) continue;
        const double scale = piece.bedNMm3 * piece.areaMm2;
        for (std::size_t k = 0; k < 3; ++k)
            for (std::size_t m = 0; m < k; ++m) pressed.second[m][k] = pressed.second[k][m];
        for (std::size_t k = 0; k < 3; ++k) {
            for (std::size_t m = 0; m < 3; ++m) {
                const double stiffness = scale * pressed.second[k][m];
                energySum += stiffness * depth[k] * depth[m] / 2;
                if (matrix && at[k] >= at[m]) matrix[at[m] * padded_ + at[k]] += stiffness;
            }
        }
    }
    for (std::size_t c = 0; c < contacts_.size(); ++c) {
        const Contact& contact = contacts_[c];
        const auto u = std::size_t(unknown_[c]);
        const double depth = w[u] + contact.gapMm;
        if (contact.isBed || depth >= 0) continue;
        energySum += contact.stiffnessNMm * depth * depth / 2;
        if (matrix) matrix[u * padded_ + u] += contact.stiffnessNMm;
    }
    return energySum;
}

double BedContact::energy(const std::vector<double>& w, const std::vector<double>& g) const
{
    double sum = addPressing(w, nullptr);
    std::vector<double> row(count_);
    for (std::size_t j = 0; j < count_; ++j) row[j] = -base_[j] * w[j];
    denseKernels().addProduct(inverse_.data(), int(padded_), int(count_), int(count_), w.data(), row.data());
    for (std::size_t j = 0; j < count_; ++j) sum += w[j] * (row[j] / 2 - g[j]);
    return sum;
}

std::vector<double> BedContact::added(const std::vector<double>& w) const
{
    std::vector<double> force(count_);
    for (std::size_t j = 0; j < count_; ++j) force[j] = base_[j] * w[j] + baseForce_[j];
    std::vector<double> deflection;
    for (const int u : unknown_) deflection.push_back(w[std::size_t(u)]);
    const std::vector<double> pressing = press(deflection);
    for (std::size_t c = 0; c < contacts_.size(); ++c) force[std::size_t(unknown_[c])] += pressing[c];
    return force;
}

/// False where what presses leaves the body loose.
bool BedContact::factorAt(const std::vector<double>& w, double damping, Memory& memory) const
{
    memory.factor = inverse_;
    addPressing(w, memory.factor.data());
    std::vector<double> least(padded_, 0.0);
    for (std::size_t j = 0; j < padded_; ++j) {
        double& diagonal = memory.factor[j * padded_ + j];
        if (j >= count_) {
            diagonal = 1.0;
            continue;
        }
        least[j] = kLooseOfBed * base_[j] + kRounding * diagonal;
        diagonal += (damping - 1.0) * base_[j];
    }
    memory.factored =
        denseKernels().factor({memory.factor.data(), nullptr, int(padded_), int(padded_), 0}, least.data());
    return memory.factored;
}

/// Newton's step from `w`. What is missing is measured with the flexibility itself; its inverse, which is inexact for
/// stiff bodies, only shows the way.
void BedContact::step(const std::vector<double>& w, const std::vector<double>& free, const Memory& memory,
                      std::vector<double>& way) const
{
    const DenseKernels& dense = denseKernels();
    const int n = int(count_);
    const std::vector<double> force = added(w);
    std::vector<double> missing(count_);
    for (std::size_t j = 0; j < count_; ++j) missing[j] = free[j] - w[j];
    dense.addProduct(flexibility_.data(), n, n, n, force.data(), missing.data());
    way.assign(padded_, 0.0);
    dense.addProduct(inverse_.data(), int(padded_), n, n, missing.data(), way.data());
    dense.solving(1).forward(memory.factor.data(), int(padded_), int(padded_), 0, way.data(), nullptr);
    dense.solving(1).backward(memory.factor.data(), int(padded_), int(padded_), 0, way.data(), nullptr);
    way.resize(count_);
}

BedContact::Result BedContact::solve(const std::vector<double>& deflection, std::vector<double>& forces,
                                     Memory& memory) const
{
    Result result;
    forces.assign(contacts_.size(), 0.0);
    if (!regular_ || !std::ranges::all_of(deflection, [](double d) { return std::isfinite(d); })) return result;
    std::vector<double> free;
    for (const int c : firstOf_) free.push_back(deflection[std::size_t(c)]);
    std::vector<double> g(baseForce_);
    denseKernels().addProduct(inverse_.data(), int(padded_), int(count_), int(count_), free.data(), g.data());

    std::vector<double> w = memory.last.empty() ? free : memory.last;
    memory.last.clear();
    memory.factored = false;
    double now = energy(w, g);
    double damping = 0.0;
    double movedBefore = HUGE_VAL;
    bool keepFactor = false;
    std::vector<double> way;
    while (result.steps < kMostSteps && !result.settled) {
        ++result.steps;
        const bool chord = keepFactor && memory.factored && damping == 0.0;
        bool held = chord || factorAt(w, damping, memory);
        if (held) {
            step(w, free, memory, way);
            held = std::ranges::all_of(way, [](double d) { return std::isfinite(d); });
        }
        if (!held) {
            damping = damping > 0.0 ? damping * 10 : 1e-4;
            keepFactor = false;
            continue;
        }
        double greatest = 0.0;
        double moved = 0.0;
        for (std::size_t i = 0; i < count_; ++i) {
            greatest = std::max(greatest, std::abs(w[i] + way[i]));
            moved = std::max(moved, std::abs(way[i]));
        }
        if (greatest > kAwayMm) return result;
        result.settled = moved <= kStill * greatest && damping == 0.0;
        // Near the end the stiffness hardly changes any more: as long as that leads on quickly, it serves again.
        keepFactor = moved <= kChordFrom * greatest && damping == 0.0 && (!chord || moved <= kChordGain * movedBefore);
        movedBefore = moved;
        // Shorter steps where the full one overshoots: the way leads down, so some step does.
        std::vector<double> next(count_);
        double share = 1.0;
        double then = 0.0;
        for (int tries = 0; tries < 12; ++tries, share /= 2) {
            for (std::size_t i = 0; i < count_; ++i) next[i] = w[i] + share * way[i];
            then = energy(next, g);
            if (then <= now + kEnergyRounding * std::abs(now)) break;
        }
        w = std::move(next);
        now = then;
        damping = damping > 1e-8 ? damping / 100 : 0.0;
    }
    if (!result.settled) return result;
    const std::vector<double> force = added(w);
    for (std::size_t j = 0; j < count_; ++j) forces[std::size_t(firstOf_[j])] = force[j];
    memory.last = std::move(w);
    return result;
}

std::vector<double> BedContact::press(const std::vector<double>& deflection) const
{
    std::vector<double> press(contacts_.size(), 0.0);
    std::vector<Shares> kept;
    for (const BedPiece& piece : pieces_) {
        std::array<double, 3> depth;
        for (std::size_t k = 0; k < 3; ++k) {
            const auto c = std::size_t(piece.contact[k]);
            depth[k] = deflection[c] + contacts_[c].gapMm;
        }
        const PressedIntegrals pressed = pressedPart(piece, depth, kept);
        for (std::size_t k = 0; k < 3; ++k)
            for (std::size_t m = 0; m < 3; ++m)
                press[std::size_t(piece.contact[k])] -=
                    piece.bedNMm3 * piece.areaMm2 * pressed.second[std::max(k, m)][std::min(k, m)] * depth[m];
    }
    for (std::size_t c = 0; c < contacts_.size(); ++c) {
        if (!contacts_[c].isBed)
            press[c] = std::max(0.0, -contacts_[c].stiffnessNMm * (deflection[c] + contacts_[c].gapMm));
    }
    return press;
}

}  // namespace yardcast::fem
