#include "core/fem/shell.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <mutex>
#include <numeric>
#include <optional>
#include <span>

#include "core/fem/bed_contact.h"
#include "core/fem/contact_set.h"
#include "core/fem/dense_front.h"
#include "core/fem/element_forces.h"
#include "core/fem/front_cholesky.h"
#include "core/fem/shell_element.h"

namespace yardcast {

namespace {

constexpr int kFreedoms = 6;
constexpr int kDeflection = 2;

bool usable(const ShellSection& s)
{
    return s.areaMm > 0 && s.inertiaMm3 > 0 && s.twistFactor > 0 && std::isfinite(s.areaMm) &&
           std::isfinite(s.inertiaMm3) && std::isfinite(s.twistFactor) && std::isfinite(s.centreMm);
}

bool usable(const ShellModel& model, const std::vector<NodeSpring>& springs, const std::vector<ContactSpring>& contacts)
{
    const int nodes = int(model.mesh.nodes.size());
    const auto known = [&](int node) { return node >= 0 && node < nodes; };
    if (nodes == 0 || model.sections.size() != model.mesh.triangles.size()) return false;
    if (!(model.elasticMpa > 0) || !std::isfinite(model.elasticMpa)) return false;
    if (!(model.poisson > -1 && model.poisson < 0.5)) return false;
    for (const Point p : model.mesh.nodes)
        if (!std::isfinite(p.x) || !std::isfinite(p.y)) return false;
    for (const auto& t : model.mesh.triangles) {
        if (!known(t[0]) || !known(t[1]) || !known(t[2])) return false;
        const auto at = [&](int corner) { return model.mesh.nodes[std::size_t(t[std::size_t(corner)])]; };
        if (!(cross(at(1) - at(0), at(2) - at(0)) > 0)) return false;
    }
    for (const NodeSpring& s : springs)
        if (!known(s.node) || !std::ranges::all_of(s.stiffness, [](double k) { return k >= 0 && std::isfinite(k); }))
            return false;
    for (const ContactSpring& c : contacts)
        if (!known(c.node) || !(c.stiffnessNMm > 0) || !std::isfinite(c.stiffnessNMm) || !std::isfinite(c.gapMm))
            return false;
    return std::ranges::all_of(model.sections, [](const ShellSection& s) { return usable(s); });
}

fem::NodeGraph graphOf(const TriangleMesh& mesh)
{
    const std::size_t n = mesh.nodes.size();
    fem::NodeGraph graph;
    std::vector<int> count(n + 1, 0);
    for (const auto& t : mesh.triangles)
        for (const int node : t) count[std::size_t(node) + 1] += 2;
    std::partial_sum(count.begin(), count.end(), count.begin());
    std::vector<int> all(std::size_t(count.back()));
    std::vector<int> fill(count.begin(), count.end() - 1);
    for (const auto& t : mesh.triangles)
        for (std::size_t k = 0; k < 3; ++k)
            for (std::size_t m = 0; m < 3; ++m)
                if (m != k) all[std::size_t(fill[std::size_t(t[k])]++)] = t[m];
    graph.begin.push_back(0);
    graph.neighbours.reserve(all.size());
    for (std::size_t i = 0; i < n; ++i) {
        const auto from = all.begin() + count[i];
        const auto to = all.begin() + count[i + 1];
        std::sort(from, to);
        graph.neighbours.insert(graph.neighbours.end(), from, std::unique(from, to));
        graph.begin.push_back(int(graph.neighbours.size()));
    }
    return graph;
}

/// For each front the items (triangles, springs) whose first eliminated node it eliminates.
struct ItemsOfFronts {
    std::vector<int> begin;
    std::vector<int> items;

    ItemsOfFronts(const std::vector<int>& frontOfItem, int fronts) : begin(std::size_t(fronts) + 1, 0)
    {
        for (const int f : frontOfItem) ++begin[std::size_t(f) + 1];
        std::partial_sum(begin.begin(), begin.end(), begin.begin());
        std::vector<int> fill(begin.begin(), begin.end() - 1);
        items.resize(frontOfItem.size());
        for (std::size_t i = 0; i < frontOfItem.size(); ++i)
            items[std::size_t(fill[std::size_t(frontOfItem[i])]++)] = int(i);
    }
    std::span<const int> of(int front) const
    {
        const auto from = std::size_t(begin[std::size_t(front)]);
        return {items.data() + from, std::size_t(begin[std::size_t(front) + 1]) - from};
    }
};

}  // namespace

struct ShellSystem::Parts {
    ShellModel model;
    std::vector<NodeSpring> springs;
    std::vector<ContactSpring> contacts;
    std::vector<int> markOrder;  ///< contact springs in the order of the factor's marks
    std::unique_ptr<fem::FrontCholesky> factor;
    std::optional<fem::BedContact> beds;  ///< where some of the contacts are shares of a bed
    std::once_flag recoveryMade;
    std::vector<fem::ElementRecovery> recovery;  ///< one a triangle, once forces of all are asked for

    bool factorise(const std::stop_token& stop);
    void addTriangle(int triangle, fem::FrontBlocks& blocks) const;
    void addSpring(int node, const std::array<double, 6>& stiffness, fem::FrontBlocks& blocks) const;
    fem::ContactSet contactSet() const;
    std::optional<fem::BedContact> bedContact() const;
    void solveAtOnce(std::span<const NodeVector> loads, fem::ContactSet& set, fem::BedContact::Memory& memory,
                     std::vector<ShellSolution>& to) const;
    fem::Corners corners(int triangle) const;
    /// Where the displacements of the corners of a triangle begin.
    std::array<const double*, 3> ofCorners(const NodeVector& displacement, std::size_t triangle) const
    {
        const auto& t = model.mesh.triangles[triangle];
        const double* const d = displacement.data();
        return {d + t[0] * kFreedoms, d + t[1] * kFreedoms, d + t[2] * kFreedoms};
    }
    std::array<double, 6> reaction(const ShellSolution& solution) const;
    bool balanced(const NodeVector& load, const ShellSolution& solution) const;
};

fem::Corners ShellSystem::Parts::corners(int triangle) const
{
    const auto& t = model.mesh.triangles[std::size_t(triangle)];
    return {model.mesh.nodes[std::size_t(t[0])], model.mesh.nodes[std::size_t(t[1])],
            model.mesh.nodes[std::size_t(t[2])]};
}

void ShellSystem::Parts::addTriangle(int triangle, fem::FrontBlocks& blocks) const
{
    fem::ElementStiffness k;
    fem::elementStiffness(corners(triangle), model.sections[std::size_t(triangle)], model.elasticMpa, model.poisson, k);
    const auto& t = model.mesh.triangles[std::size_t(triangle)];
    const auto& placeOf = factor->tree().placeOf;
    for (std::size_t a = 0; a < 3; ++a) {
        const int row = placeOf[std::size_t(t[a])];
        double* const diagonal = blocks.diagonal(row);
        for (std::size_t i = 0; i < 6; ++i) diagonal[i] += k[(6 * a + i) * 19];
        for (std::size_t b = 0; b < 3; ++b) {
            const int column = placeOf[std::size_t(t[b])];
            if (column > row) continue;
            const fem::FrontBlocks::Block block = blocks.block(row, column);
            for (std::size_t j = 0; j < 6; ++j) {
                // The stiffness is symmetric: its rows are the block's columns.
                const double* const from = &k[(6 * b + j) * 18 + 6 * a];
                double* const to = block.at + j * std::size_t(block.stride);
                for (std::size_t i = 0; i < 6; ++i) to[i] += from[i];
            }
        }
    }
}

void ShellSystem::Parts::addSpring(int node, const std::array<double, 6>& stiffness, fem::FrontBlocks& blocks) const
{
    const int place = factor->tree().placeOf[std::size_t(node)];
    const fem::FrontBlocks::Block block = blocks.block(place, place);
    double* const diagonal = blocks.diagonal(place);
    for (std::size_t i = 0; i < 6; ++i) {
        block.at[i * std::size_t(block.stride) + i] += stiffness[i];
        diagonal[i] += stiffness[i];
    }
}

bool ShellSystem::Parts::factorise(const std::stop_token& stop)
{
    fem::FrontTree tree = fem::frontTree(graphOf(model.mesh));
    if (stop.stop_requested()) return false;
    markOrder.resize(contacts.size());
    std::iota(markOrder.begin(), markOrder.end(), 0);
    const auto placeOfContact = [&](int c) { return tree.placeOf[std::size_t(contacts[std::size_t(c)].node)]; };
    std::ranges::stable_sort(markOrder, {}, placeOfContact);
    std::vector<int> places;
    for (const int c : markOrder) places.push_back(placeOfContact(c));

    std::vector<int> frontOfTriangle;
    for (const auto& t : model.mesh.triangles) {
        const auto place = [&](std::size_t k) { return tree.placeOf[std::size_t(t[k])]; };
        frontOfTriangle.push_back(tree.frontOf[std::size_t(std::min({place(0), place(1), place(2)}))]);
    }
    const auto frontOfNode = [&](int node) { return tree.frontOf[std::size_t(tree.placeOf[std::size_t(node)])]; };
    std::vector<int> frontOfSpring;
    for (const NodeSpring& s : springs) frontOfSpring.push_back(frontOfNode(s.node));
    std::vector<int> frontOfContact;
    for (const ContactSpring& c : contacts) frontOfContact.push_back(frontOfNode(c.node));
    const ItemsOfFronts triangles(frontOfTriangle, tree.fronts());
    const ItemsOfFronts held(frontOfSpring, tree.fronts());
    const ItemsOfFronts pressed(frontOfContact, tree.fronts());

    factor = std::make_unique<fem::FrontCholesky>(std::move(tree), std::move(places), kDeflection);
    return factor->factor(
        [&](int front, fem::FrontBlocks& blocks) {
            for (const int i : triangles.of(front)) addTriangle(i, blocks);
            for (const int i : held.of(front)) {
                const NodeSpring& s = springs[std::size_t(i)];
                addSpring(s.node, s.stiffness, blocks);
            }
            for (const int i : pressed.of(front)) {
                std::array<double, 6> stiffness{};
                stiffness[kDeflection] = contacts[std::size_t(i)].stiffnessNMm;
                addSpring(contacts[std::size_t(i)].node, stiffness, blocks);
            }
        },
        stop);
}

fem::ContactSet ShellSystem::Parts::contactSet() const
{
    std::vector<double> stiffness;
    for (const int c : markOrder) stiffness.push_back(contacts[std::size_t(c)].stiffnessNMm);
    return {std::move(stiffness), factor->flexibility(), factor->markStride()};
}

/// Contacts and pieces of beds by marks; nothing where all contacts are single springs.
std::optional<fem::BedContact> ShellSystem::Parts::bedContact() const
{
    std::vector<fem::BedContact::Contact> all;
    std::map<const ContactBed*, std::vector<std::pair<int, int>>> marksOf;  // node, mark
    for (std::size_t m = 0; m < markOrder.size(); ++m) {
        const ContactSpring& c = contacts[std::size_t(markOrder[m])];
        all.push_back({c.node, c.stiffnessNMm, c.gapMm, c.bed != nullptr});
        if (c.bed) marksOf[c.bed.get()].emplace_back(c.node, int(m));
    }
    if (marksOf.empty()) return std::nullopt;
    std::vector<fem::BedPiece> pieces;
    std::vector<int> markOfNode(model.mesh.nodes.size(), -1);
    for (const auto& [bed, marks] : marksOf) {
        for (const auto& [node, mark] : marks) markOfNode[std::size_t(node)] = mark;
        for (std::size_t t = 0; t < model.mesh.triangles.size(); ++t) {
            const auto& corner = model.mesh.triangles[t];
            fem::BedPiece piece;
            for (std::size_t k = 0; k < 3; ++k) piece.contact[k] = markOfNode[std::size_t(corner[k])];
            if (std::ranges::min(piece.contact) < 0) continue;
            const fem::Corners at = corners(int(t));
            piece.rings = fem::commonRings(at, bed->region);
            piece.areaMm2 = cross(at[1] - at[0], at[2] - at[0]) / 2;
            piece.bedNMm3 = bed->bedNMm3;
            if (!piece.rings.empty()) pieces.push_back(std::move(piece));
        }
        for (const auto& [node, mark] : marks) markOfNode[std::size_t(node)] = -1;
    }
    return fem::BedContact(std::move(all), std::move(pieces),
                           factor->flexibility(), factor->markStride());
}

void ShellSystem::Parts::solveAtOnce(std::span<const NodeVector> loads, fem::ContactSet& set,
                                     fem::BedContact::Memory& memory, std::vector<ShellSolution>& to) const
{
    const int atOnce = fem::denseKernels().solving(int(loads.size())).loads;
    const auto width = std::size_t(atOnce);
    const std::size_t nodes = model.mesh.nodes.size();
    const std::vector<int>& nodeAt = factor->tree().nodeAt;
    const auto x = std::make_unique_for_overwrite<double[]>(nodes * kFreedoms * width);
    for (std::size_t place = 0; place < nodes; ++place) {
        const std::size_t node = std::size_t(nodeAt[place]);
        for (std::size_t i = 0; i < kFreedoms; ++i) {
            double* const row = &x[(place * kFreedoms + i) * width];
            for (std::size_t r = 0; r < loads.size(); ++r) row[r] = loads[r][node * kFreedoms + i];
            std::fill(row + loads.size(), row + width, 0.0);
        }
    }
    // A bed takes hold at w = -gap: as a spring at rest at w = 0 it is short of stiffness times gap.
    for (const ContactSpring& c : contacts) {
        const auto place = std::size_t(factor->tree().placeOf[std::size_t(c.node)]);
        for (std::size_t r = 0; r < loads.size(); ++r)
            x[(place * kFreedoms + kDeflection) * width + r] -= c.stiffnessNMm * c.gapMm;
    }

    const std::size_t marks = markOrder.size();
    std::vector<double> atMarks(marks * width, 0.0);
    factor->forward(x.get(), marks > 0 ? atMarks.data() : nullptr, atOnce);
    std::vector<double> forces(marks * width, 0.0);
    std::vector<std::vector<double>> cancels(loads.size());
    std::vector<fem::ContactSet::Result> results(loads.size());
    std::vector<double> reach(marks);
    bool anyLifted = false;
    for (std::size_t r = 0; r < loads.size(); ++r) {
        const auto gap = [&](std::size_t m) { return contacts[std::size_t(markOrder[m])].gapMm; };
        for (std::size_t m = 0; m < marks; ++m) reach[m] = atMarks[m * width + r] + (beds ? 0.0 : gap(m));
        if (beds) {
            const fem::BedContact::Result found = beds->solve(reach, cancels[r], memory);
            results[r] = {found.steps, found.settled};
        } else {
            results[r] = set.solve(reach, cancels[r]);
        }
        for (std::size_t m = 0; m < marks; ++m) {
            forces[m * width + r] = cancels[r][m];
            anyLifted = anyLifted || cancels[r][m] != 0;
        }
    }
    factor->backward(x.get(), anyLifted ? forces.data() : nullptr, atOnce);

    for (std::size_t r = 0; r < loads.size(); ++r) {
        ShellSolution solution;
        solution.contactSteps = results[r].steps;
        solution.displacement.resize(nodes * kFreedoms);
        for (std::size_t place = 0; place < nodes; ++place)
            for (std::size_t i = 0; i < kFreedoms; ++i)
                solution.displacement[std::size_t(nodeAt[place]) * kFreedoms + i] =
                    x[(place * kFreedoms + i) * width + r];
        solution.contactN.assign(marks, 0.0);
        if (beds) {
            std::vector<double> w;
            for (const int c : markOrder) {
                const auto node = std::size_t(contacts[std::size_t(c)].node);
                w.push_back(solution.displacement[node * kFreedoms + kDeflection]);
            }
            const std::vector<double> press = beds->press(w);
            for (std::size_t m = 0; m < marks; ++m)
                solution.contactN[std::size_t(markOrder[m])] = std::max(0.0, press[m]);
        }
        for (std::size_t m = 0; m < marks && !beds; ++m) {
            if (cancels[r][m] > 0) continue;
            const ContactSpring& c = contacts[std::size_t(markOrder[m])];
            const double w = solution.displacement[std::size_t(c.node) * kFreedoms + kDeflection];
            solution.contactN[std::size_t(markOrder[m])] = std::max(0.0, -c.stiffnessNMm * (w + c.gapMm));
        }
        solution.settled = results[r].settled && balanced(loads[r], solution);
        if (!solution.settled) {
            std::ranges::fill(solution.displacement, 0.0);
            std::ranges::fill(solution.contactN, 0.0);
        }
        to.push_back(std::move(solution));
    }
}

std::array<double, 6> ShellSystem::Parts::reaction(const ShellSolution& solution) const
{
    std::array<double, 6> sum{};
    if (solution.displacement.size() != model.mesh.nodes.size() * kFreedoms) return sum;
    const auto add = [&](int node, const std::array<double, 6>& force) {
        const Point p = model.mesh.nodes[std::size_t(node)];
        for (std::size_t i = 0; i < 6; ++i) sum[i] += force[i];
        sum[3] += p.y * force[2];
        sum[4] -= p.x * force[2];
        sum[5] += p.x * force[1] - p.y * force[0];
    };
    for (const NodeSpring& s : springs) {
        std::array<double, 6> force;
        for (std::size_t i = 0; i < 6; ++i)
            force[i] = -s.stiffness[i] * solution.displacement[std::size_t(s.node) * kFreedoms + i];
        add(s.node, force);
    }
    for (std::size_t c = 0; c < contacts.size() && c < solution.contactN.size(); ++c) {
        std::array<double, 6> force{};
        force[kDeflection] = solution.contactN[c];
        add(contacts[c].node, force);
    }
    return sum;
}

/// Whether springs and contacts carry the load. They do not where what is left of the supports holds the body so little
/// that its displacement is mere rounding.
bool ShellSystem::Parts::balanced(const NodeVector& load, const ShellSolution& solution) const
{
    std::array<double, 6> sum = reaction(solution);
    double force = 0.0;
    double moment = 0.0;
    const auto add = [&](Point p, const double* f, double sign) {
        if (std::all_of(f, f + kFreedoms, [](double value) { return value == 0.0; })) return;
        for (std::size_t i = 0; i < kFreedoms; ++i) sum[i] += sign * f[i];
        sum[3] += sign * p.y * f[2];
        sum[4] -= sign * p.x * f[2];
        sum[5] += sign * (p.x * f[1] - p.y * f[0]);
        const double size = std::abs(f[0]) + std::abs(f[1]) + std::abs(f[2]);
        force += size;
        moment += std::abs(f[3]) + std::abs(f[4]) + std::abs(f[5]) + size * (std::abs(p.x) + std::abs(p.y));
    };
    for (std::size_t i = 0; i < model.mesh.nodes.size(); ++i) add(model.mesh.nodes[i], &load[i * kFreedoms], 1.0);
    for (std::size_t c = 0; c < contacts.size(); ++c) {
        const double pressed[6] = {0.0, 0.0, solution.contactN[c], 0.0, 0.0, 0.0};
        add(model.mesh.nodes[std::size_t(contacts[c].node)], pressed, 0.0);
    }
    // Solutions that hold come to 1e-11.
    constexpr double kUnbalanced = 1e-6;
    for (std::size_t i = 0; i < 3; ++i)
        if (!(std::abs(sum[i]) <= kUnbalanced * force) || !(std::abs(sum[i + 3]) <= kUnbalanced * moment)) return false;
    return true;
}

ShellSystem::ShellSystem(std::unique_ptr<Parts> parts) : parts_(std::move(parts)) {}
ShellSystem::~ShellSystem() = default;

std::unique_ptr<ShellSystem> ShellSystem::make(ShellModel model, std::vector<NodeSpring> springs,
                                               std::vector<ContactSpring> contacts, std::stop_token stop)
{
    if (stop.stop_requested() || !usable(model, springs, contacts)) return nullptr;
    auto parts = std::make_unique<Parts>();
    parts->model = std::move(model);
    parts->springs = std::move(springs);
    parts->contacts = std::move(contacts);
    if (!parts->factorise(stop)) return nullptr;
    parts->beds = parts->bedContact();
    return std::unique_ptr<ShellSystem>(new ShellSystem(std::move(parts)));
}

const ShellModel& ShellSystem::model() const { return parts_->model; }

const std::vector<ContactSpring>& ShellSystem::contacts() const { return parts_->contacts; }

ShellSolution ShellSystem::solve(const NodeVector& load) const { return solve(std::vector<NodeVector>{load}).front(); }

std::vector<ShellSolution> ShellSystem::solve(const std::vector<NodeVector>& loads) const
{
    const std::size_t size = parts_->model.mesh.nodes.size() * kFreedoms;
    const std::span<const NodeVector> all(loads);
    std::vector<ShellSolution> solutions;
    if (std::ranges::any_of(loads, [&](const NodeVector& load) { return load.size() != size; }))
        return std::vector<ShellSolution>(loads.size());
    solutions.reserve(loads.size());
    fem::ContactSet set = parts_->contactSet();
    fem::BedContact::Memory memory;
    // A wide solve takes as long however few loads it is given.
    for (std::size_t from = 0; from < loads.size();) {
        const std::size_t left = loads.size() - from;
        const std::size_t count = std::min<std::size_t>(fem::kLoadsAtOnce, left);
        parts_->solveAtOnce(all.subspan(from, count), set, memory, solutions);
        from += count;
    }
    return solutions;
}

std::vector<std::array<ShellForces, 3>> ShellSystem::forces(const NodeVector& displacement) const
{
    const ShellModel& m = parts_->model;
    std::call_once(parts_->recoveryMade, [&] {
        parts_->recovery.reserve(m.mesh.triangles.size());
        for (int t = 0; t < int(m.mesh.triangles.size()); ++t)
            parts_->recovery.emplace_back(parts_->corners(t), m.poisson);
    });
    std::vector<std::array<ShellForces, 3>> result;
    if (displacement.size() != m.mesh.nodes.size() * kFreedoms) return result;
    result.reserve(m.mesh.triangles.size());
    for (std::size_t t = 0; t < m.mesh.triangles.size(); ++t)
        result.push_back(parts_->recovery[t].forces(m.sections[t], m.elasticMpa, m.poisson,
                                                    parts_->ofCorners(displacement, t)));
    return result;
}

std::vector<std::array<ShellForces, 3>> ShellSystem::forces(const NodeVector& displacement,
                                                            const std::vector<int>& triangles) const
{
    const ShellModel& m = parts_->model;
    std::vector<std::array<ShellForces, 3>> result;
    if (displacement.size() != m.mesh.nodes.size() * kFreedoms) return result;
    result.reserve(triangles.size());
    for (const int triangle : triangles)
        result.push_back(fem::ElementRecovery(parts_->corners(triangle), m.poisson)
                             .forces(m.sections[std::size_t(triangle)], m.elasticMpa, m.poisson,
                                     parts_->ofCorners(displacement, std::size_t(triangle))));
    return result;
}

std::array<double, 6> ShellSystem::reaction(const ShellSolution& solution) const
{
    return parts_->reaction(solution);
}

}  // namespace yardcast
