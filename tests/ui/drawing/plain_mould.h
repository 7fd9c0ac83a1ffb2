#pragma once

#include <algorithm>
#include <cmath>
#include <map>

#include "core/assess/assessment.h"
#include "core/geometry/region.h"
#include "core/mould/mould.h"
#include "core/plan/plan.h"

namespace yardcast::ui {

/// A mould set out by hand, so that pictures can be tested by what they are given: boards of 18 mm on a base, formers in
/// plies of board, foam where the casting has it, a batten over it.
inline MouldPtr plainMould(const Part& part, const Casting& casting)
{
    constexpr double kBoard = 18.0;
    Mould mould;
    mould.casting = casting.id;
    mould.part = casting.part;
    const auto* counter = std::get_if<Counter>(&part.body);
    mould.mirrored = !counter || counter->cast == CounterCast::faceDown;
    const Box box = casting.boundsMm;
    const auto map = [&](Point own) {
        return Point{mould.mirrored ? box.high.x - own.x : own.x - box.low.x, own.y - box.low.y};
    };
    const auto mapRing = [&](const Ring& ring) {
        Ring mapped;
        for (const Point& p : ring) mapped.push_back(map(p));
        if (mould.mirrored) std::reverse(mapped.begin(), mapped.end());
        return mapped;
    };
    const auto mapRegion = [&](const Region& region) {
        Region mapped;
        for (const Polygon& polygon : region) {
            Polygon one{mapRing(polygon.outer), {}};
            for (const Ring& hole : polygon.holes) one.holes.push_back(mapRing(hole));
            mapped.push_back(one);
        }
        return mapped;
    };
    mould.inside = mapRegion(casting.outline);
    mould.widthMm = box.width();
    mould.depthMm = box.height();
    mould.heightMm = casting.deepestMm;
    for (const Zone& zone : casting.zones) {
        Zone mapped = zone;
        mapped.region = mapRegion(zone.region);
        mould.zones.push_back(mapped);
    }
    int number = 0;
    int step = 0;
    const auto add = [&](MouldPartKind kind, MouldStuff stuff, const std::string& about, const Region& outline,
                         double fromMm, double toMm) {
        MouldPart made;
        made.kind = kind;
        made.stuff = stuff;
        made.name = casting.id + "-" + std::to_string(++number);
        made.about = about;
        made.step = step;
        made.outline = outline;
        made.fromMm = fromMm;
        made.toMm = toMm;
        if (const std::optional<Box> bounds = boundsOf(outline)) {
            made.lengthMm = std::max(bounds->width(), bounds->height());
            made.widthMm = std::min(bounds->width(), bounds->height());
        }
        made.thicknessMm = kBoard;
        mould.parts.push_back(made);
        return &mould.parts.back();
    };
    ++step;
    add(MouldPartKind::base, MouldStuff::board, {},
        {Polygon{{{-60, -60}, {box.width() + 60, -60}, {box.width() + 60, box.height() + 60}, {-60, box.height() + 60}}, {}}},
        -kBoard, 0.0);
    for (const Polygon& polygon : mould.inside) {
        const Ring& ring = polygon.outer;
        for (std::size_t i = 0; i < ring.size(); ++i) {
            const Point a = ring[i];
            const Point b = ring[(i + 1) % ring.size()];
            const double length = distance(a, b);
            if (length < 20.0) continue;
            const Point out = leftNormal(b - a) * (-kBoard / length);
            const Point along = (b - a) * (kBoard / length);
            const bool level = std::fabs(b.y - a.y) < std::fabs(b.x - a.x);
            const std::string about = level ? (out.y < 0 ? "front" : "back") : (out.x < 0 ? "left" : "right");
            ++step;
            const Point from = level ? a - along : a;
            const Point to = level ? b + along : b;
            MouldPart* side = add(MouldPartKind::side, MouldStuff::board, about,
                                  {Polygon{{from, from + out, to + out, to}, {}}}, 0.0, mould.heightMm);
            side->goodFace = true;
        }
        for (const Ring& hole : polygon.holes) {
            std::string about;
            for (const Cutout& cutout : counter ? counter->cutouts : std::vector<Cutout>()) {
                if (contains(hole, map(cutout.centre))) about = cutout.id;
            }
            ++step;
            Ring outer = hole;
            std::reverse(outer.begin(), outer.end());
            for (double from = 0.0; from < mould.heightMm; from += kBoard) {
                const double to = std::min(from + kBoard, mould.heightMm);
                MouldPart* ply = add(MouldPartKind::former, MouldStuff::board, about, {Polygon{outer, {}}}, from, to);
                ply->shaped = true;
                ply->topOutline = offset(ply->outline, -1.0, OffsetJoin::mitre);
            }
        }
    }
    for (const Zone& zone : mould.zones) {
        if (zone.isConcrete()) continue;
        ++step;
        add(zone.kind == ZoneKind::core ? MouldPartKind::core : MouldPartKind::filler, MouldStuff::foam, {}, zone.region,
            zone.fromMm, zone.toMm);
        ++step;
        const double x = mould.widthMm / 2.0;
        add(MouldPartKind::holdDown, MouldStuff::batten, {},
            {Polygon{{{x - 20, -30}, {x + 20, -30}, {x + 20, mould.depthMm + 30}, {x - 20, mould.depthMm + 30}}, {}}},
            mould.heightMm, mould.heightMm + 40.0);
    }
    const double diagonal = std::hypot(mould.widthMm, mould.depthMm);
    mould.diagonals = {{{0, 0}, {mould.widthMm, mould.depthMm}, diagonal}, {{mould.widthMm, 0}, {0, mould.depthMm}, diagonal}};
    mould.pressure = {mould.heightMm, 1.5, 450.0, 0.4, 1.2, "hydrostatic", 1.5, 0.0, 0.0, {}};
    mould.sealedMm = 2.0 * (mould.widthMm + mould.depthMm);
    mould.siliconeMl = mould.sealedMm * 0.0077;
    mould.touchedM2 = 1.4;
    mould.releaseMl = 40.0;
    if (counter && !counter->cutouts.empty()) {
        const Cutout& first = counter->cutouts.front();
        mould.check.about = first.id;
        mould.check.what = "sink";
        mould.check.side = map(first.centre).x < mould.widthMm / 2.0 ? "left" : "right";
    }
    return std::make_shared<const Mould>(std::move(mould));
}

inline void addPlainMoulds(const Plan& plan, Assessment& assessment)
{
    assessment.moulds.clear();
    for (const PlacedCasting& placed : assessment.castings) {
        if (const Part* part = findPart(plan, placed.casting->part)) {
            assessment.moulds.push_back(plainMould(*part, *placed.casting));
        }
    }
}

}  // namespace yardcast::ui
