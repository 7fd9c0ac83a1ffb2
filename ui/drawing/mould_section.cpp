#include "ui/drawing/mould_section.h"

#include <algorithm>
#include <cmath>
#include <map>

#include <QCoreApplication>
#include <QPainter>

#include "ui/drawing/marks.h"
#include "ui/drawing/running_dimensions.h"
#include "ui/wording/figures.h"
#include "ui/wording/mould_names.h"
#include "ui/wording/names.h"

namespace yardcast::ui {

namespace {

QString tr(const char* text) { return QCoreApplication::translate("Drawing", text); }

double perUnit(const PaintStyle& style) { return (style.onPaper ? 1.0 : 3.0) * style.mmPerUnit; }

/// Stretches of the region on the line x, along y.
std::vector<Span> spansAt(const Region& region, double xMm)
{
    std::vector<Span> found;
    for (const Polygon& polygon : region) {
        std::vector<QPolygonF> rings;
        const auto add = [&](const Ring& ring) {
            QPolygonF one;
            for (const Point& p : ring) one.append(QPointF(p.x, p.y));
            rings.push_back(one);
        };
        add(polygon.outer);
        for (const Ring& hole : polygon.holes) add(hole);
        const std::vector<Span> spans = spansInside(rings, QPointF(xMm, 0.0), QPointF(0.0, 1.0));
        found.insert(found.end(), spans.begin(), spans.end());
    }
    return found;
}

QRectF cutRect(const Span& span, double fromMm, double toMm)
{
    return QRectF(QPointF(span.from, -toMm), QPointF(span.to, -fromMm));
}

QPainterPath pathOfRect(const QRectF& rect)
{
    QPainterPath path;
    path.addRect(rect);
    return path;
}

/// Everything solid that the plane meets.
QRectF bodyOf(const MouldSubject& subject, double xMm)
{
    QRectF body;
    for (const Zone& zone : subject.mould->zones) {
        for (const Span& span : spansAt(zone.region, xMm)) body |= cutRect(span, zone.fromMm, zone.toMm);
    }
    for (const MouldPart& part : subject.mould->parts) {
        for (const Span& span : spansAt(part.outline, xMm)) body |= cutRect(span, part.fromMm, part.toMm);
    }
    return body;
}

RunningRow heightRow(const MouldSubject& subject, double xMm, const PaintStyle& style)
{
    const QRectF body = bodyOf(subject, xMm);
    RunningRow row{false, 0.0, body.right() + 4.0 * perUnit(style), 1.0, {}};
    for (const MouldHeight& height : mouldHeights(subject)) {
        // What lies on something is set by its lower side; how high it fills up is read at the top.
        if (height.lies && height.fromMm > 0.5) {
            row.stops.push_back({-height.fromMm, body.right(), tr("under the %1").arg(height.name), false});
        }
        if (height.fills && height.toMm == height.fromMm) {
            row.stops.push_back({-height.toMm, body.right(), height.name, false});
            continue;
        }
        if (height.fills) row.stops.push_back({-height.toMm, body.right(), tr("top of the %1").arg(height.name), false});
    }
    // At one height one word is enough: the first says what comes to lie there.
    std::vector<RunningStop> kept;
    for (const RunningStop& stop : row.stops) {
        const auto same = std::find_if(kept.begin(), kept.end(), [&](const RunningStop& other) {
            return std::fabs(other.atMm - stop.atMm) < 0.5;
        });
        if (same == kept.end()) kept.push_back(stop);
    }
    row.stops = std::move(kept);
    return tidied(row);
}

TextLook endLook(const PaintStyle& style)
{
    TextLook look;
    look.sizeUnits = style.onPaper ? 3.4 : 11.0;
    look.bold = true;
    return look;
}

void paintSteel(QPainter& painter, const MouldSubject& subject, double xMm, const PaintStyle& style)
{
    if (!subject.steel || subject.steel->datum != SteelDatum::mouldBase) return;
    const double unit = perUnit(style);
    painter.setPen(style.pen(style.ink.steel, style.onPaper ? 0.5 * style.mmPerUnit : 2.0));
    painter.setBrush(style.ink.steel);
    for (const MeshLayout& mesh : subject.steel->meshes) {
        const double y = -(mesh.height.distanceMm + mesh.barMm / 2.0);
        for (const MeshPiece& piece : mesh.pieces) {
            Region shape;
            for (const Polygon& polygon : piece.shape) {
                Polygon moved;
                for (const Point& p : polygon.outer) moved.outer.push_back(ownToMould(subject, p));
                for (const Ring& hole : polygon.holes) {
                    Ring ring;
                    for (const Point& p : hole) ring.push_back(ownToMould(subject, p));
                    moved.holes.push_back(ring);
                }
                shape.push_back(moved);
            }
            for (const Span& span : spansAt(shape, xMm)) painter.drawLine(QPointF(span.from, y), QPointF(span.to, y));
        }
    }
    painter.setPen(Qt::NoPen);
    for (const LaidBar& bar : subject.steel->bars) {
        const Point a = ownToMould(subject, bar.from);
        const Point b = ownToMould(subject, bar.to);
        if ((a.x - xMm) * (b.x - xMm) > 0.0 || std::fabs(a.x - b.x) < 1.0) continue;
        const double share = (xMm - a.x) / (b.x - a.x);
        const double radius = std::max(bar.diameterMm / 2.0, 0.5 * unit);
        painter.drawEllipse(QPointF(a.y + share * (b.y - a.y), -(bar.height.distanceMm + bar.diameterMm / 2.0)), radius,
                            radius);
    }
    painter.setBrush(Qt::NoBrush);
}

}  // namespace

std::vector<MouldHeight> mouldHeights(const MouldSubject& subject)
{
    std::vector<MouldHeight> heights;
    const auto add = [&](const QString& name, double fromMm, double toMm, bool lies, bool fills) {
        const auto same = std::find_if(heights.begin(), heights.end(), [&](const MouldHeight& other) {
            return other.name == name && std::fabs(other.fromMm - fromMm) < 0.05 && std::fabs(other.toMm - toMm) < 0.05;
        });
        if (same == heights.end()) heights.push_back({name, fromMm, toMm, lies, fills});
    };
    for (const Zone& zone : subject.mould->zones) {
        if (zone.isConcrete()) add(zoneName(zone.kind).toLower(), zone.fromMm, zone.toMm, false, true);
    }
    // Formers are plies: the block is what one measures.
    std::map<std::string, std::pair<double, double>> formers;
    for (const MouldPart& part : subject.mould->parts) {
        switch (part.kind) {
        case MouldPartKind::base:
        case MouldPartKind::side:
        case MouldPartKind::bracket:
        case MouldPartKind::spacer:
        case MouldPartKind::cleat:
        case MouldPartKind::foot:
        case MouldPartKind::chamfer: break;
        case MouldPartKind::tie: {
            const double middle = (part.fromMm + part.toMm) / 2.0;
            add(tr("middle of the ties"), middle, middle, false, true);
            break;
        }
        case MouldPartKind::former: {
            const auto [at, fresh] = formers.try_emplace(part.about, part.fromMm, part.toMm);
            if (!fresh) {
                at->second.first = std::min(at->second.first, part.fromMm);
                at->second.second = std::max(at->second.second, part.toMm);
            }
            break;
        }
        case MouldPartKind::holdDown: add(mouldPartName(part.kind), part.fromMm, part.toMm, false, false); break;
        case MouldPartKind::filler:
        case MouldPartKind::core:
        case MouldPartKind::drip:
        case MouldPartKind::rebate: add(mouldPartName(part.kind), part.fromMm, part.toMm, true, true); break;
        }
    }
    for (const auto& [about, height] : formers) {
        add(tr("former of %1").arg(QString::fromStdString(about)), height.first, height.second, false, false);
    }
    if (subject.steel && subject.steel->datum == SteelDatum::mouldBase) {
        for (const MeshLayout& mesh : subject.steel->meshes) {
            add(tr("mesh Ø%1").arg(shortNumberText(mesh.barMm)), mesh.height.distanceMm,
                mesh.height.distanceMm + 2.0 * mesh.barMm, true, false);
        }
        for (const LaidBar& bar : subject.steel->bars) {
            add(tr("bar Ø%1").arg(shortNumberText(bar.diameterMm)), bar.height.distanceMm,
                bar.height.distanceMm + bar.diameterMm, true, false);
        }
    }
    std::stable_sort(heights.begin(), heights.end(),
                     [](const MouldHeight& a, const MouldHeight& b) { return a.fromMm < b.fromMm; });
    return heights;
}

double mouldSectionXMm(const MouldSubject& subject)
{
    // Where rods run, or their heights could not be seen.
    for (const MouldPart& part : subject.mould->parts) {
        const std::optional<Box> rod = part.kind == MouldPartKind::tie ? boundsOf(part.outline[0].outer) : std::nullopt;
        if (rod) return (rod->low.x + rod->high.x) / 2.0;
    }
    double best = subject.mould->widthMm / 2.0;
    double most = 0.0;
    if (const auto* counter = std::get_if<Counter>(&subject.part->body)) {
        for (const Cutout& cutout : counter->cutouts) {
            if (contains(subject.casting->outline, cutout.centre)) continue;
            const Point centre = ownToMould(subject, cutout.centre);
            if (centre.x < 0.0 || centre.x > subject.mould->widthMm) continue;
            const double area = std::fabs(signedArea(cutoutRing(cutout)));
            if (area > most) {
                most = area;
                best = centre.x;
            }
        }
    }
    return best;
}

QRectF mouldSectionBounds(const MouldSubject& subject, double xMm, const PaintStyle& style)
{
    const double unit = perUnit(style);
    QRectF bounds = bodyOf(subject, xMm);
    bounds |= runningBounds(heightRow(subject, xMm, style), style);
    const double words = textSizeMm(tr("FRONT"), style, endLook(style)).width();
    return bounds.adjusted(-words - 2.5 * unit, -2.0 * unit, 2.0 * unit, 7.0 * unit);
}

void paintMouldSection(QPainter& painter, const MouldSubject& subject, double xMm, const PaintStyle& style)
{
    const double unit = perUnit(style);
    for (const Zone& zone : subject.mould->zones) {
        if (!zone.isConcrete()) continue;
        for (const Span& span : spansAt(zone.region, xMm)) {
            const QPainterPath path = pathOfRect(cutRect(span, zone.fromMm, zone.toMm));
            fillCut(painter, path, style);
        }
    }
    for (const MouldPart& part : subject.mould->parts) {
        for (const Span& span : spansAt(part.outline, xMm)) {
            const QPainterPath path = pathOfRect(cutRect(span, part.fromMm, part.toMm));
            if (part.kind == MouldPartKind::tie) {
                painter.fillPath(path, style.ink.steel);
                continue;
            }
            if (part.stuff == MouldStuff::foam) {
                fillFoam(painter, path, style);
            } else {
                fillBoard(painter, path, style);
            }
            painter.setBrush(Qt::NoBrush);
            painter.setPen(outlinePen(style));
            painter.drawPath(path);
        }
    }
    // What the plane meets of the concrete as a whole: no lines where zones of it meet.
    painter.setPen(outlinePen(style));
    for (const Span& span : spansAt(subject.mould->inside, xMm)) {
        painter.drawLine(QPointF(span.from, 0.0), QPointF(span.to, 0.0));
        painter.drawLine(QPointF(span.from, 0.0), QPointF(span.from, -subject.mould->heightMm));
        painter.drawLine(QPointF(span.to, 0.0), QPointF(span.to, -subject.mould->heightMm));
    }
    paintSteel(painter, subject, xMm, style);
    paintRunning(painter, heightRow(subject, xMm, style), style);
    const QRectF body = bodyOf(subject, xMm);
    // In front of the mould and under its back: however narrow it is drawn, the two do not meet.
    TextLook look = endLook(style);
    look.align = Qt::AlignRight | Qt::AlignVCenter;
    const bool counter = subject.part->kind() == PartKind::counter;
    paintText(painter, {body.left() - 1.0 * unit, body.center().y()},
              counter || subject.mould->standing ? tr("FRONT") : tr("FOOT"), style, look);
    look.align = Qt::AlignRight | Qt::AlignTop;
    paintText(painter, {body.right(), body.bottom() + 1.5 * unit},
              counter || subject.mould->standing ? tr("BACK") : tr("HEAD"), style, look);
}

}  // namespace yardcast::ui
