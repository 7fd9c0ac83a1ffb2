#include <algorithm>
#include <map>
#include <tuple>

#include "core/geometry/edge_strips.h"
#include "core/plan/validation/report.h"

namespace yardcast::validation {

namespace {

/// More collisions than this are not listed, and more pairs than this not compared: a plan with so many parts in one
/// place is damaged, and time would grow with their square.
constexpr std::size_t kMostCollisions = 1000;
constexpr std::size_t kMostPairs = 3'000'000;

/// A part or a fixture as the sweep sees it.
struct Body {
    const Part* part = nullptr;
    const Fixture* fixture = nullptr;
    std::size_t index = 0;  ///< in the plan's list
    Ring ring;
    Box box;
    Levels levels;
    bool isBox = false;  ///< the ring is its box

    bool is(PartKind kind) const { return part && part->kind() == kind; }
};

bool ringIsBox(const Ring& ring, const Box& box)
{
    if (ring.size() != 4) return false;
    for (std::size_t i = 0; i < 4; ++i) {
        const Point p = ring[i];
        const Point q = ring[(i + 1) % 4];
        if ((p.x != box.low.x && p.x != box.high.x) || (p.y != box.low.y && p.y != box.high.y)) return false;
        if ((p.x == q.x) == (p.y == q.y)) return false;
    }
    return true;
}

double sharedBoxMm(const Box& a, const Box& b)
{
    const double x = std::min(a.high.x, b.high.x) - std::max(a.low.x, b.low.x);
    const double y = std::min(a.high.y, b.high.y) - std::max(a.low.y, b.low.y);
    return std::min(x, y);
}

double sharedHeightMm(const Levels& a, const Levels& b)
{
    return std::min(a.highMm, b.highMm) - std::max(a.lowMm, b.lowMm);
}

bool hasCutouts(const Body& body)
{
    return body.is(PartKind::counter) && !std::get<Counter>(body.part->body).cutouts.empty();
}

Region openRegion(const Body& body)
{
    Region region = regionOf(body.ring);
    if (!hasCutouts(body)) return region;
    std::vector<Ring> holes;
    for (const Cutout& cutout : std::get<Counter>(body.part->body).cutouts) {
        holes.push_back(transformed(cutoutRing(cutout), body.part->place));
    }
    return subtract(region, uniteRings(holes));
}

/// How far two bodies overlap in plan, mm; 0 for touching. What stands in a cutout does not overlap the slab.
double sharedMm(const Body& a, const Body& b)
{
    const double boxes = sharedBoxMm(a.box, b.box);
    if (boxes <= kTouchMm) return 0.0;
    const bool open = hasCutouts(a) || hasCutouts(b);
    if (a.isBox && b.isBox && !open) return boxes;
    return overlapMm(openRegion(a), openRegion(b));
}

/// What stands in the rebate of a counter's face, no deeper than it is and nowhere beside it, is where it should be.
bool standsInRebate(const Body& other, const Body& counter)
{
    if (!counter.is(PartKind::counter)) return false;
    const Counter& slab = std::get<Counter>(counter.part->body);
    if (!slab.rebate || slab.rebate->edges.empty()) return false;
    if (sharedHeightMm(other.levels, counter.levels) > slab.rebate->depthMm + kTouchMm) return false;
    if (other.levels.lowMm < counter.levels.highMm - slab.rebate->depthMm - kTouchMm) return false;
    std::vector<Ring> strips = stripsAlongEdges(slab.outline, slab.rebate->widthMm, slab.rebate->edges);
    for (Ring& strip : strips) strip = transformed(strip, counter.part->place);
    return overlapMm(subtract(openRegion(other), uniteRings(strips)), openRegion(counter)) <= 0.0;
}

/// One support or panel under one counter.
struct Rest {
    const Body* under;
    const Body* counter;
    double gapMm;  ///< from its top up to the counter's underside

    double allowedMm() const
    {
        const auto* support = std::get_if<Support>(&under->part->body);
        const double pads = support && support->pads ? support->pads->thicknessMm.value_or(kDefaultPadMm) : 0.0;
        return pads + kBeddingMm;
    }
    bool bears() const { return gapMm <= allowedMm(); }
};

class NeighbourCheck {
public:
    NeighbourCheck(const Plan& plan, Validation& validation) : plan_(plan), validation_(validation) {}

    void run()
    {
        gather();
        sweep();
        reportPairs();
        reportRests();
    }

private:
    struct Pair {
        const Body* first;
        const Body* second;
        const char* code;
        Severity severity;
        Values values;
    };

    void gather()
    {
        std::map<std::string, double> faces;
        for (const PartPtr& part : plan_.parts) {
            if (const auto* counter = std::get_if<Counter>(&part->body)) faces[part->id] = counter->topMm;
        }
        for (std::size_t i = 0; i < plan_.parts.size(); ++i) {
            const Part& part = *plan_.parts[i];
            if (part.kind() == PartKind::front || validation_.unusableParts.contains(part.id)) continue;
            Body body;
            body.part = &part;
            body.index = i;
            body.ring = footprint(part);
            body.levels = levelsIn(part, faces);
            add(std::move(body));
        }
        for (std::size_t i = 0; i < plan_.site.fixtures.size(); ++i) {
            const Fixture& fixture = plan_.site.fixtures[i];
            const bool solid = fixture.kind == FixtureKind::wall || fixture.kind == FixtureKind::tree;
            if (!solid || !fixture.size) continue;
            const Point low = fixture.at;
            const Point high{low.x + fixture.size->width, low.y + fixture.size->depth};
            Body body;
            body.fixture = &fixture;
            body.index = i;
            body.ring = {low, {high.x, low.y}, high, {low.x, high.y}};
            add(std::move(body));
        }
    }

    /// As levelsOf, without looking the counter up among all parts.
    Levels levelsIn(const Part& part, const std::map<std::string, double>& faces) const
    {
        const auto* appliance = std::get_if<Appliance>(&part.body);
        if (!appliance) return levelsOf(plan_, part);
        double base = plan_.site.ground ? plan_.site.ground->levelMm : 0.0;
        if (appliance->on) {
            if (const auto face = faces.find(*appliance->on); face != faces.end()) base = face->second;
        }
        return {base, base + appliance->heightMm};
    }

    void add(Body body)
    {
        const auto box = boundsOf(body.ring);
        if (!box || !(box->width() <= 2 * kFarthestMm && box->height() <= 2 * kFarthestMm)) return;
        body.box = *box;
        body.isBox = ringIsBox(body.ring, body.box);
        bodies_.push_back(std::move(body));
    }

    void sweep()
    {
        std::vector<const Body*> order;
        for (const Body& body : bodies_) order.push_back(&body);
        std::sort(order.begin(), order.end(), [](const Body* a, const Body* b) { return a->box.low.x < b->box.low.x; });
        std::vector<const Body*> active;
        std::size_t compared = 0;
        for (const Body* body : order) {
            std::erase_if(active, [&](const Body* other) { return other->box.high.x <= body->box.low.x + kTouchMm; });
            compared += active.size();
            if (compared > kMostPairs || pairs_.size() > kMostCollisions) {
                cutShort_ = true;
                return;
            }
            for (const Body* other : active) {
                if (other->index < body->index || body->fixture) {
                    compare(*other, *body);
                } else {
                    compare(*body, *other);
                }
            }
            active.push_back(body);
        }
    }

    /// `a` stands before `b` in the plan, fixtures last.
    void compare(const Body& a, const Body& b)
    {
        if (a.fixture && b.fixture) return;
        if (a.fixture || b.fixture) return compareWithFixture(a.fixture ? b : a, a.fixture ? a : b);
        if (sharedBoxMm(a.box, b.box) <= kTouchMm) return;
        if (a.is(PartKind::counter) != b.is(PartKind::counter)) {
            const Body& counter = a.is(PartKind::counter) ? a : b;
            const Body& other = a.is(PartKind::counter) ? b : a;
            if (!other.is(PartKind::appliance) && compareWithCounter(other, counter)) return;
        }
        const double height = sharedHeightMm(a.levels, b.levels);
        if (height <= kTouchMm) return;
        const double shared = sharedMm(a, b);
        if (shared <= 0.0 || standsInRebate(a, b) || standsInRebate(b, a)) return;
        pairs_.push_back({&a, &b, "parts_collide", Severity::stop,
                          {{"overlap_mm", shared}, {"height_mm", height}}});
    }

    void compareWithFixture(const Body& body, const Body& fixture)
    {
        const double shared = sharedMm(body, fixture);
        if (shared <= 0.0) return;
        pairs_.push_back({&body, &fixture, "part_meets_fixture", Severity::caution,
                          {{"fixture", fixture.fixture->id}, {"overlap_mm", shared}}});
    }

    /// A support or panel and a counter; true when that says all there is to say about them.
    bool compareWithCounter(const Body& upright, const Body& counter)
    {
        const double gap = counter.levels.lowMm - upright.levels.highMm;
        if (gap < -kTouchMm) {
            const bool endsInside = upright.is(PartKind::support) && upright.levels.lowMm < counter.levels.lowMm
                && upright.levels.highMm <= counter.levels.highMm + kTouchMm;
            if (!endsInside || sharedMm(upright, counter) <= 0.0) return false;
            pairs_.push_back({&upright, &counter, "support_inside_slab", Severity::stop, {{"inside_mm", -gap}}});
            rests_.push_back({&upright, &counter, gap});
            return true;
        }
        // What stands wholly in an opening shares nothing with the slab and carries nothing.
        if (sharedMm(upright, counter) > 0.0) rests_.push_back({&upright, &counter, gap});
        return true;
    }

    void report(const char* code, Severity severity, std::vector<std::string> subjects, std::size_t index,
                Values values)
    {
        Finding finding;
        finding.code = code;
        finding.severity = severity;
        finding.subjects = std::move(subjects);
        finding.pointer = join("/parts", index);
        finding.values = std::move(values);
        validation_.findings.push_back(std::move(finding));
    }

    void reportPairs()
    {
        std::sort(pairs_.begin(), pairs_.end(), [](const Pair& a, const Pair& b) {
            const auto key = [](const Pair& p) {
                return std::tuple(p.second->fixture != nullptr, p.first->index, p.second->index);
            };
            return key(a) < key(b);
        });
        for (Pair& pair : pairs_) {
            if (pair.second->fixture) {
                report(pair.code, pair.severity, {pair.first->part->id}, pair.first->index, std::move(pair.values));
                continue;
            }
            // Of a support in a slab the support is the subject; of two parts that collide the later one is shown.
            const bool inside = pair.code == std::string_view("support_inside_slab");
            report(pair.code, pair.severity, {pair.first->part->id, pair.second->part->id},
                   inside ? pair.first->index : pair.second->index, std::move(pair.values));
        }
        if (!cutShort_) return;
        Finding finding;
        finding.code = "not_all_compared";
        finding.severity = Severity::caution;
        finding.pointer = "/parts";
        validation_.findings.push_back(std::move(finding));
    }

    void reportRests()
    {
        std::map<std::size_t, bool> carried;  // by the counter's index in the plan
        std::map<std::size_t, const Rest*> nearest;  // by the support's index: the lowest counter above it
        std::map<std::size_t, bool> bears;
        for (const Rest& rest : rests_) {
            if (rest.bears()) {
                carried[rest.counter->index] = true;
                bears[rest.under->index] = true;
            }
            const Rest*& found = nearest[rest.under->index];
            if (!found || rest.gapMm < found->gapMm) found = &rest;
        }
        for (const auto& [index, rest] : nearest) {
            if (bears[index] || !rest->under->is(PartKind::support)) continue;
            report("support_short", Severity::caution, {rest->under->part->id, rest->counter->part->id}, index,
                   {{"gap_mm", rest->gapMm}, {"allowed_mm", rest->allowedMm()}});
        }
        if (cutShort_) return;
        for (const Body& body : bodies_) {
            if (!body.is(PartKind::counter) || carried[body.index]) continue;
            report("counter_unsupported", Severity::stop, {body.part->id}, body.index,
                   {{"underside_mm", body.levels.lowMm}});
        }
    }

    const Plan& plan_;
    Validation& validation_;
    std::vector<Body> bodies_;
    std::vector<Pair> pairs_;
    std::vector<Rest> rests_;
    bool cutShort_ = false;
};

}  // namespace

void checkNeighbours(const Plan& plan, Validation& validation) { NeighbourCheck(plan, validation).run(); }

}  // namespace yardcast::validation
