#include "tests/property/random_slab.h"

#include <cmath>
#include <limits>

namespace yardcast::random {

namespace {

Ring closedLine(Ring ring)
{
    if (!ring.empty()) ring.push_back(ring.front());
    return ring;
}

void addOutlines(const Region& region, std::vector<Ring>& lines)
{
    for (const Polygon& polygon : region) {
        lines.push_back(closedLine(polygon.outer));
        for (const Ring& hole : polygon.holes) lines.push_back(closedLine(hole));
    }
}

}  // namespace

DraggedSlab::DraggedSlab(Source& source)
{
    const double width = source.between(600, 2600), depth = source.between(350, 900);
    Ring outer{{0, 0}, {width, 0}, {width, depth}, {0, depth}};
    const auto rest = [&](Ring ring) {
        rests_.push_back({ring, {}});
        lines_.push_back(closedLine(std::move(ring)));
    };
    if (source.chance(30)) {  // an L
        const double legWidth = source.between(350, width - 200), legDepth = source.between(300, 900);
        outer = {{0, 0}, {width, 0}, {width, depth}, {legWidth, depth}, {legWidth, depth + legDepth},
                 {0, depth + legDepth}};
        rest(rectangleRing({legWidth / 2, depth + legDepth - 50}, {legWidth, 100}));
    }
    // A wall under either end, so that the slab lies firmly; what else it rests on follows.
    rest(rectangleRing({50, depth / 2}, {100, depth}));
    rest(rectangleRing({width - 50, depth / 2}, {100, depth}));
    if (source.chance(25)) outer = rectangleRing({width / 2, depth / 2}, {width, depth}, 0, source.between(3, 60));
    const Placement turned{{0, 0}, source.chance(25) ? source.between(-80, 80, 0.37) : 0.0};
    outline_ = regionOf(outer);
    sizeMm_ = source.one(std::vector<double>{20, 30, 30, 50, 50, 50, 80});

    // What the dragged cutout is to meet: x of upright features, y of lying ones.
    std::vector<double> uprights{0.0, width}, lying{0.0, depth};
    if (source.chance(70)) {
        const double rim = source.between(30, 110);
        const Region field = offset(outline_, -rim, OffsetJoin::mitre);
        rim_ = subtract(outline_, field);
        addOutlines(field, lines_);
        uprights.insert(uprights.end(), {rim, width - rim});
        lying.insert(lying.end(), {rim, depth - rim});
    }
    for (int rests = 1 + int(source.below(3)); rests > 0; --rests) {
        const double x = source.between(50, width - 50, 0.5);
        const double wide = source.between(40, 200);
        switch (source.below(4)) {
        case 0:
            lines_.push_back({{x, 0}, {x, depth}});
            rests_.push_back({stripRing({x, 0}, {x, depth}, 60), {}});
            uprights.push_back(x);
            break;
        case 1:
            lines_.push_back({{x, -20}, {x + source.between(-60, 60), depth + 20}});
            rests_.push_back({stripRing(lines_.back()[0], lines_.back()[1], 60), {}});
            uprights.push_back(x);
            break;
        case 2:
            rest(rectangleRing({x, depth / 2}, {wide, depth - source.between(0, 80)}));
            uprights.insert(uprights.end(), {x - wide / 2, x + wide / 2});
            break;
        default:
            rest(rectangleRing({x, source.between(60, depth - 60)}, {wide, wide},
                               source.chance(40) ? source.between(0, 90, 0.5) : 0.0));
            uprights.push_back(x - wide / 2);
        }
    }
    if (source.chance(50)) {
        const Point at{source.between(100, width - 100), source.between(60, depth - 60)};
        outline_ = subtract(outline_, regionOf(circleRing(at, source.between(25, 60))));
        uprights.push_back(at.x);
    }

    round_ = source.chance(25);
    cutout_ = {source.between(150, 600), source.between(120, 420)};
    if (round_) cutout_.depth = cutout_.width;
    if (!round_ && source.chance(25)) turnDeg_ = source.one(std::vector<double>{90, 45, 1, 0.2, 12, 33.3});
    radiusMm_ = round_ || source.chance(10) ? 0.0 : source.between(4, 60);
    rimMm_ = source.chance(50) ? source.between(20, 70) : 0.0;
    stepMm_ = source.one(std::vector<double>{0.3, 0.5, 0.73, 1.0});

    // A side of the cutout (or of its rim) starts a few steps off one of those features and is dragged across it.
    const bool sideways = source.chance(65);
    const double off = (source.chance(50) ? 0.5 : -0.5) * (sideways ? cutout_.width : cutout_.depth) +
                       (source.chance(30) ? rimMm_ : 0.0) + source.between(-9, 3, 0.01);
    from_ = {source.between(0, width), source.between(0, depth, 0.1)};
    if (source.chance(40)) from_ = {width / 2, depth / 2};
    along_ = sideways ? Point{1, 0} : Point{0, 1};
    if (sideways) from_.x = source.one(uprights) - off;
    else from_.y = source.one(lying) - off;
    if (source.chance(20)) along_ = {0.8, 0.6};

    outline_ = transformed(outline_, turned);
    rim_ = transformed(rim_, turned);
    rests_ = transformed(rests_, turned);
    for (Ring& line : lines_) line = transformed(line, turned);
    from_ = turned.toPlan(from_);
    along_ = turned.directionToPlan(along_);
    turnDeg_ += turned.turnDeg;
}

Ring DraggedSlab::hole(int step) const
{
    const Point centre = from_ + along_ * (stepMm_ * step);
    return round_ ? circleRing(centre, cutout_.width) : rectangleRing(centre, cutout_, turnDeg_, radiusMm_);
}

Region DraggedSlab::thick(int step) const
{
    return rimMm_ > 0.0 ? unite(rim_, offset(regionOf(hole(step)), rimMm_, OffsetJoin::round)) : rim_;
}

MeshRequest DraggedSlab::at(int step) const
{
    MeshRequest request;
    request.sizeMm = sizeMm_;
    request.lines = lines_;
    const Point centre = from_ + along_ * (stepMm_ * step);
    request.domain = subtract(outline_, regionOf(hole(step)));
    if (request.domain.size() > 1) {  // cut in two: the larger part
        std::size_t largest = 0;
        for (std::size_t i = 1; i < request.domain.size(); ++i)
            if (areaMm2({request.domain[i]}) > areaMm2({request.domain[largest]})) largest = i;
        request.domain = {request.domain[largest]};
    }
    if (rimMm_ > 0.0) addOutlines(offset(regionOf(hole(step)), rimMm_, OffsetJoin::round), request.lines);
    if (!round_) {
        const Placement placement{centre, turnDeg_};
        for (const double x : {-0.5, 0.5})
            for (const double y : {-0.5, 0.5})
                request.fine.push_back({placement.toPlan({x * cutout_.width, y * cutout_.depth}),
                                        std::max(radiusMm_ / 2.5, 8.0)});
    }
    return request;
}

MeshRequest anyMeshRequest(Source& source)
{
    MeshRequest request;
    const auto number = [&]() -> double {
        switch (source.below(40)) {
        case 0: return std::numeric_limits<double>::quiet_NaN();
        case 1: return std::numeric_limits<double>::infinity();
        case 2: return 1e9;
        case 3: return -1e30;
        case 4: return 1e-9;
        default: return source.between(-500, 500, source.chance(50) ? 1.0 : 50.0);
        }
    };
    const auto ring = [&](std::uint32_t most) {
        Ring made;
        for (std::uint32_t k = source.below(most); k > 0; --k) {
            if (!made.empty() && source.chance(15)) made.push_back(source.one(made));
            else made.push_back({number(), number()});
        }
        return made;
    };
    request.sizeMm = source.chance(80) ? source.between(5, 200) : number();
    if (source.chance(20)) request.growth = number();
    for (std::uint32_t k = 1 + source.below(2); k > 0; --k) {
        Polygon polygon;
        if (source.chance(50)) polygon.outer = rectangleRing({0, 0}, {source.between(1, 900), source.between(1, 900)},
                                                             source.between(0, 90), source.between(0, 60));
        else polygon.outer = ring(12);
        for (std::uint32_t holes = source.below(4); holes > 0; --holes)
            polygon.holes.push_back(source.chance(50) ? circleRing({number(), number()}, source.between(1, 300))
                                                      : ring(8));
        request.domain.push_back(polygon);
    }
    for (std::uint32_t k = source.below(5); k > 0; --k) request.lines.push_back(ring(9));
    for (std::uint32_t k = source.below(5); k > 0; --k) request.points.push_back({number(), number()});
    for (std::uint32_t k = source.below(4); k > 0; --k) request.fine.push_back({{number(), number()}, number() / 20});
    return request;
}

}  // namespace yardcast::random
