#include "ui/sheets/counter_section.h"

#include <algorithm>
#include <cmath>

#include <QPainter>

#include "ui/drawing/dimension_painter.h"
#include "ui/drawing/marks.h"
#include "ui/sheets/sheet_words.h"

namespace yardcast::ui {

namespace {

double cutoutArea(const Cutout& cutout)
{
    return std::fabs(signedArea(cutoutRing(cutout)));
}

std::vector<QPolygonF> polygonsOf(const Region& region)
{
    std::vector<QPolygonF> polygons;
    const auto add = [&](const Ring& ring) {
        QPolygonF polygon;
        for (const Point& point : ring) {
            polygon.append(QPointF(point.x, point.y));
        }
        polygons.push_back(polygon);
    };
    for (const Polygon& polygon : region) {
        add(polygon.outer);
        for (const Ring& hole : polygon.holes) {
            add(hole);
        }
    }
    return polygons;
}

bool isFoam(ZoneKind kind)
{
    return kind == ZoneKind::filler || kind == ZoneKind::core;
}

struct Extent {
    double fromY = 0.0;
    double toY = 0.0;
    double bottom = 0.0;
};

Extent extentOf(const std::vector<SectionPiece>& pieces)
{
    Extent extent{pieces.front().fromYMm, pieces.front().toYMm, 0.0};
    for (const SectionPiece& piece : pieces) {
        extent.fromY = std::min(extent.fromY, piece.fromYMm);
        extent.toY = std::max(extent.toY, piece.toYMm);
        extent.bottom = std::max(extent.bottom, piece.bottomMm);
    }
    return extent;
}

QRectF boxOf(const SectionPiece& piece)
{
    return QRectF(QPointF(piece.fromYMm, piece.topMm), QPointF(piece.toYMm, piece.bottomMm));
}

/// Thickness at the front, and of the longest stretch of field; strips of concrete along the top.
std::vector<Dimension> sectionDimensions(const std::vector<SectionPiece>& pieces, const PaintStyle& style)
{
    const Extent extent = extentOf(pieces);
    std::vector<Dimension> dimensions;
    const auto upright = [&](double y, double top, double bottom, double offset) {
        Dimension dimension;
        dimension.a = QPointF(y, bottom);
        dimension.b = QPointF(y, top);
        dimension.offsetUnits = offset;
        dimension.valueMm = bottom - top;
        dimensions.push_back(dimension);
    };
    upright(extent.fromY, 0.0, extent.bottom, 7.0);
    const SectionPiece* field = nullptr;
    for (const SectionPiece& piece : pieces) {
        if (piece.kind == ZoneKind::field && piece.bottomMm < extent.bottom - 0.5 &&
            (!field || piece.toYMm - piece.fromYMm > field->toYMm - field->fromYMm)) {
            field = &piece;
        }
    }
    if (field) {
        upright(extent.toY, field->topMm, field->bottomMm, -7.0);
    }
    // Along the top: where concrete begins and ends, pieces that touch taken together.
    std::vector<std::pair<double, double>> strips;
    for (const SectionPiece& piece : pieces) {
        if (isFoam(piece.kind) || piece.topMm > 0.5) {
            continue;
        }
        if (!strips.empty() && piece.fromYMm <= strips.back().second + 0.5) {
            strips.back().second = std::max(strips.back().second, piece.toYMm);
        } else {
            strips.emplace_back(piece.fromYMm, piece.toYMm);
        }
    }
    const auto level = [&](double from, double to, double offset) {
        Dimension dimension;
        dimension.a = QPointF(from, 0.0);
        dimension.b = QPointF(to, 0.0);
        dimension.offsetUnits = offset;
        dimension.valueMm = to - from;
        dimensions.push_back(dimension);
    };
    for (std::size_t i = 0; i < strips.size(); ++i) {
        level(strips[i].first, strips[i].second, 6.0);
        if (i + 1 < strips.size()) {
            level(strips[i].second, strips[i + 1].first, 6.0);
        }
    }
    staggerFigures(dimensions, style);
    return dimensions;
}

}  // namespace

double sectionXMm(const Counter& counter)
{
    const Cutout* largest = nullptr;
    for (const Cutout& cutout : counter.cutouts) {
        if (!largest || cutoutArea(cutout) > cutoutArea(*largest)) {
            largest = &cutout;
        }
    }
    if (largest) {
        return largest->centre.x;
    }
    const std::optional<Box> box = boundsOf(counter.outline);
    // Off the middle, where names and dimensions stand.
    return box ? box->low.x + 0.35 * box->width() : 0.0;
}

void snapToCircles(std::vector<SectionPiece>& pieces, const Counter& counter, double xMm)
{
    for (const Cutout& cutout : counter.cutouts) {
        const double aside = xMm - cutout.centre.x;
        const double radius = cutout.diameterMm / 2.0;
        if (cutout.shape != CutoutShape::circle || std::fabs(aside) >= radius) {
            continue;
        }
        const double half = std::sqrt(radius * radius - aside * aside);
        for (SectionPiece& piece : pieces) {
            for (double* end : {&piece.fromYMm, &piece.toYMm}) {
                for (const double exact : {cutout.centre.y - half, cutout.centre.y + half}) {
                    if (std::fabs(*end - exact) <= 2.0 * kArcToleranceMm) {
                        *end = exact;
                    }
                }
            }
        }
    }
}

std::vector<SectionPiece> sectionPieces(const std::vector<CastingPtr>& castings, double xMm)
{
    std::vector<SectionPiece> pieces;
    for (const CastingPtr& casting : castings) {
        for (const Zone& zone : casting->zones) {
            for (const Span& span : spansInside(polygonsOf(zone.region), QPointF(xMm, 0.0), QPointF(0.0, 1.0))) {
                if (span.to - span.from > 0.05) {
                    pieces.push_back({zone.kind, span.from, span.to, zone.fromMm, zone.toMm});
                }
            }
        }
    }
    std::sort(pieces.begin(), pieces.end(), [](const SectionPiece& a, const SectionPiece& b) {
        return a.fromYMm != b.fromYMm ? a.fromYMm < b.fromYMm : a.topMm < b.topMm;
    });
    return pieces;
}

ScaledDrawing sectionDrawing(const std::vector<SectionPiece>& pieces)
{
    ScaledDrawing drawing;
    drawing.bounds = [pieces](const PaintStyle& style) {
        const Extent extent = extentOf(pieces);
        QRectF bounds(QPointF(extent.fromY, 0.0), QPointF(extent.toY, extent.bottom));
        for (const Dimension& dimension : sectionDimensions(pieces, style)) {
            bounds |= dimensionBounds(dimension, style);
        }
        const double unit = style.mmPerUnit;
        return bounds.adjusted(-2.0 * unit, -2.0 * unit, 2.0 * unit, 6.0 * unit);
    };
    drawing.paint = [pieces](QPainter& painter, const PaintStyle& style) {
        const Extent extent = extentOf(pieces);
        QPainterPath concrete;
        for (const SectionPiece& piece : pieces) {
            QPainterPath box;
            box.addRect(boxOf(piece));
            if (isFoam(piece.kind)) {
                fillFoam(painter, box, style);
            } else {
                fillCut(painter, box, style);
            }
        }
        // Only outlines between different things: zones of concrete are one body.
        for (const SectionPiece& piece : pieces) {
            QPainterPath box;
            box.addRect(boxOf(piece));
            if (!isFoam(piece.kind)) {
                concrete = concrete.united(box);
            } else {
                painter.setPen(thinPen(style, style.ink.ink));
                painter.setBrush(Qt::NoBrush);
                painter.drawRect(boxOf(piece));
            }
        }
        painter.setPen(outlinePen(style));
        painter.setBrush(Qt::NoBrush);
        painter.drawPath(concrete.simplified());
        // Edges of the opening beyond the cut.
        painter.setPen(thinPen(style, style.ink.ink));
        painter.drawLine(QPointF(extent.fromY, 0.0), QPointF(extent.toY, 0.0));
        for (const Dimension& dimension : sectionDimensions(pieces, style)) {
            paintDimension(painter, dimension, style);
        }
        TextLook look;
        look.align = Qt::AlignLeft | Qt::AlignTop;
        const double unit = style.mmPerUnit;
        paintText(painter, QPointF(extent.fromY, extent.bottom + 1.0 * unit),
                  Sheets::tr("front"), style, look);
        look.align = Qt::AlignRight | Qt::AlignTop;
        paintText(painter, QPointF(extent.toY, extent.bottom + 1.0 * unit),
                  Sheets::tr("back"), style, look);
    };
    return drawing;
}

}  // namespace yardcast::ui
