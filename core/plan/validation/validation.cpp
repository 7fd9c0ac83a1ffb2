#include "core/plan/validation.h"

#include <algorithm>
#include <unordered_map>
#include <unordered_set>

#include "core/plan/validation/report.h"

namespace yardcast {

using namespace validation;

namespace {

const std::string* mixOf(const Part& part)
{
    if (const auto* counter = std::get_if<Counter>(&part.body)) return &counter->mix;
    if (const auto* support = std::get_if<Support>(&part.body)) return &support->mix;
    if (const auto* panel = std::get_if<Panel>(&part.body)) return &panel->mix;
    return nullptr;
}

struct CheckBody {
    Subject& subject;

    void operator()(const Counter& c) const { checkCounter(c, subject); }
    void operator()(const Support& s) const { checkSupport(s, subject); }
    void operator()(const Panel& p) const { checkPanel(p, subject); }
    void operator()(const Front& f) const { checkFront(f, subject); }
    void operator()(const Appliance& a) const { checkAppliance(a, subject); }
};

/// Farthest that a point of the ring lies outside of the other, mm.
double outsideMm(const Ring& ring, const Ring& of)
{
    double outside = 0.0;
    for (const Point p : ring) {
        if (!contains(of, p)) outside = std::max(outside, distanceToRing(of, p));
    }
    return outside;
}

class PartsCheck {
public:
    PartsCheck(const Plan& plan, Validation& validation) : plan_(plan), validation_(validation)
    {
        for (const Mix& mix : plan.mixes) mixes_.insert(mix.id);
        for (const PartPtr& part : plan.parts) parts_.emplace(part->id, part.get());
        if (plan.site.outline && isRing(*plan.site.outline)) site_ = &*plan.site.outline;
    }

    void run()
    {
        for (std::size_t i = 0; i < plan_.parts.size(); ++i) {
            const Part& part = *plan_.parts[i];
            Subject subject(validation_.findings, join("/parts", i), {part.id});
            subject.point("at", part.place.at);
            subject.number("turn_deg", part.place.turnDeg, {-36'000.0, 36'000.0, "deg"});
            std::visit(CheckBody{subject}, part.body);
            const std::string* mix = mixOf(part);
            if (mix && !mixes_.contains(*mix)) subject.add("mix_unknown", Severity::stop, "mix", {{"mix", *mix}});
            if (subject.usable()) usable(part, subject);
            if (!subject.usable()) validation_.unusableParts.insert(part.id);
        }
    }

private:
    static bool isRing(const Ring& ring)
    {
        const bool near = std::all_of(ring.begin(), ring.end(), [](Point p) {
            return std::abs(p.x) <= kFarthestMm && std::abs(p.y) <= kFarthestMm;
        });
        return near && ring.size() >= 3 && ring.size() <= kMostCorners && !selfCrossing(ring);
    }

    void usable(const Part& part, Subject& subject)
    {
        if (site_) {
            const double outside = outsideMm(footprint(part), *site_);
            if (outside > kTouchMm) subject.add("part_outside_site", Severity::note, "at", {{"outside_mm", outside}});
        }
        const auto* appliance = std::get_if<Appliance>(&part.body);
        if (!appliance || !appliance->on) return;
        const auto found = parts_.find(*appliance->on);
        if (found == parts_.end() || found->second->kind() != PartKind::counter) {
            subject.add("on_unknown", Severity::stop, "on", {{"on", *appliance->on}});
            return;
        }
        const Part& counter = *found->second;
        const Ring face = footprint(counter);
        if (!isRing(std::get<Counter>(counter.body).outline) || !isRing(face)) return;
        const double outside = outsideMm(footprint(part), face);
        if (outside > kTouchMm) {
            subject.add("appliance_off_counter", Severity::caution, "at",
                        {{"counter", counter.id}, {"outside_mm", outside}});
        }
    }

    const Plan& plan_;
    Validation& validation_;
    std::unordered_set<std::string> mixes_;
    std::unordered_map<std::string, const Part*> parts_;
    const Ring* site_ = nullptr;
};

}  // namespace

Validation validate(const Plan& plan)
{
    Validation validation;
    checkSettings(plan, validation);
    PartsCheck(plan, validation).run();
    checkNeighbours(plan, validation);
    return validation;
}

}  // namespace yardcast
