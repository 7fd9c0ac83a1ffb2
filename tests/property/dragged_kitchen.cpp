#include "tests/property/dragged_kitchen.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "tests/core/structure/slabs.h"

namespace yardcast::random {

DraggedKitchen::DraggedKitchen(std::uint32_t number)
{
    Source source(number * 7919);
    length_ = source.between(1000, 2600);
    depth_ = source.between(500, 750);
    counter_ = tests::slab(length_, depth_, source.between(30, 60));
    deep_ = counter_.thicknessMm;
    if (source.chance(50)) {
        counter_.rim = Rim{};
        counter_.rim->depthMm = deep_ = counter_.thicknessMm + source.between(10, 40);
        counter_.rim->widthMm = source.between(40, 80);
    }
    const int walls = 2 + int(source.below(3));
    wallMm_ = source.between(40, 150);
    for (int i = 0; i < walls; ++i) {
        const double even = 100 + (length_ - 200) * i / (walls - 1);
        walls_.push_back(std::clamp(even + source.between(-60, 60), wallMm_ / 2, length_ - wallMm_ / 2));
        if (counter_.rim && source.chance(50))
            counter_.ribs.push_back({{walls_.back(), 0}, {walls_.back(), depth_}, source.between(60, 160), {}});
    }
    size_ = {source.between(200, std::min(600.0, length_ * 0.4)), source.between(200, depth_ - 160)};
    radius_ = source.chance(33) ? 0.0 : source.between(5, 60);
    const double x = source.between(60 + size_.width / 2, length_ - 60 - size_.width / 2);
    const double y = source.between(50 + size_.depth / 2, depth_ - 50 - size_.depth / 2);
    from_ = {x, y};
    const double angle = source.between(0, 6.28, 0.01);
    along_ = Point{std::cos(angle), std::sin(angle)} * kStepMm;
    if (source.chance(33))
        counter_.loads = {{"oven", {source.between(200, length_ - 200), depth_ / 2}, {300, 300}, 70, {}}};
}

StrengthInput DraggedKitchen::at(double steps) const
{
    Counter counter = counter_;
    counter.cutouts = {tests::sink("K1", from_ + along_ * steps, size_, radius_)};
    tests::PlanMaker plan;
    plan.counter("C1", counter);
    for (std::size_t i = 0; i < walls_.size(); ++i)
        plan.wall("S" + std::to_string(i + 1), walls_[i], wallMm_, 0, depth_, 900 - deep_);
    return plan.input("C1");
}

std::vector<DragFigure> dragFigures(const CastingStrength& strength)
{
    std::vector<DragFigure> figures;
    for (const CaseResult& c : strength.cases) {
        if (!c.holds) continue;
        const bool own = c.which == StrengthCase::ownWeight;
        figures.push_back({own ? "own use" : "person use", "", c.usePercent, c.usePercent});
        // In place all but the use belongs to the worst load, which may change from one spot to another as bad.
        if (!own) continue;
        figures.push_back({"deflection", "", c.deflectionMm, c.deflectionMm});
        double total = 0.0;
        for (const HeldAt& held : c.held) total += held.forceN;
        for (const HeldAt& held : c.held) figures.push_back({"rest", held.under, held.forceN, total});
        double most = 0.0;
        for (const SectionForces& s : c.sections) most = std::max(most, std::abs(s.meanMomentN) * s.widthMm);
        for (const SectionForces& s : c.sections)
            figures.push_back({"moment", placeWords(s.name), s.meanMomentN * s.widthMm, most});
    }
    return figures;
}

std::vector<DragJump> jumpsBetween(const std::vector<DragFigure>& before, const std::vector<DragFigure>& now)
{
    std::vector<DragJump> jumps;
    for (const DragFigure& a : before) {
        const auto b = std::find_if(now.begin(), now.end(), [&](const DragFigure& f) {
            return f.kind == a.kind && f.name == a.name;
        });
        const double scale = b == now.end() ? 0.0 : std::max(a.scale, b->scale);
        if (!(scale > 0.0)) continue;
        const double share = std::abs(a.value - b->value) / scale;
        auto jump = std::find_if(jumps.begin(), jumps.end(), [&](const DragJump& j) { return j.kind == a.kind; });
        if (jump == jumps.end()) jump = jumps.insert(jumps.end(), {a.kind, a.name, 0.0, 0.0});
        if (share > jump->share) *jump = {a.kind, a.name, share, share};
    }
    return jumps;
}

namespace {

/// A dragged slab at places that it was solved at already, or is now.
class Solved {
public:
    Solved(std::uint32_t number, Refinement refinement) : kitchen_(number), refinement_(refinement) {}

    /// Null where it could not be solved; `trouble` says why then.
    const std::vector<DragFigure>* at(double steps)
    {
        const auto known = figures_.find(steps);
        if (known != figures_.end()) return &known->second;
        const auto strength = solveStrength(kitchen_.at(steps), refinement_, {true, false});
        if (!strength || !strength->whyNot.empty() || strength->cases.empty()) {
            trouble = "at " + std::to_string(steps) + ": " + (strength ? strength->whyNot : "nothing");
            return nullptr;
        }
        for (const CaseResult& c : strength->cases) {
            if (c.field) leastAngleDeg = std::min(leastAngleDeg, c.field->mesh.leastAngleDeg());
        }
        return &(figures_[steps] = dragFigures(*strength));
    }

    std::string trouble;
    double leastAngleDeg = 180.0;

private:
    DraggedKitchen kitchen_;
    Refinement refinement_;
    std::map<double, std::vector<DragFigure>> figures_;
};

double changeOf(const DragJump& what, const std::vector<DragFigure>& before, const std::vector<DragFigure>& now)
{
    for (const DragJump& jump : jumpsBetween(before, now)) {
        if (jump.kind == what.kind) return jump.share;
    }
    return 0.0;
}

/// What is left of a change when its step is halved again and again.
double jumpLeft(const DragJump& change, double from, double to, Solved& solved)
{
    double left = change.share;
    for (int halving = 0; halving < DragJump::kHalvings; ++halving) {
        const double middle = (from + to) / 2;
        const auto* a = solved.at(from);
        const auto* m = solved.at(middle);
        const auto* b = solved.at(to);
        if (!a || !m || !b) return left;
        const double first = changeOf(change, *a, *m);
        const double second = changeOf(change, *m, *b);
        left = std::max(first, second);
        (first >= second ? to : from) = middle;
    }
    return left;
}

}  // namespace

Drag drag(std::uint32_t number, Refinement refinement)
{
    Drag result;
    Solved solved(number, refinement);
    for (int step = 1; step <= DraggedKitchen::kSteps; ++step) {
        const auto* before = solved.at(step - 1);
        const auto* now = before ? solved.at(step) : nullptr;
        if (!now) break;
        std::vector<DragJump> jumps = jumpsBetween(*before, *now);
        for (DragJump& jump : jumps) {
            if (jump.share > DragJump::kLookedInto) jump.jump = jumpLeft(jump, step - 1, step, solved);
        }
        result.steps.push_back(std::move(jumps));
    }
    result.trouble = solved.trouble;
    result.leastAngleDeg = solved.leastAngleDeg;
    return result;
}

}  // namespace yardcast::random
