#include "ui/drawing/mould_painter.h"

#include <algorithm>
#include <cmath>
#include <map>

#include <QPainter>

#include "ui/drawing/marks.h"
#include "ui/drawing/mould_marks.h"
#include "ui/drawing/own_map.h"
#include "ui/drawing/running_dimensions.h"
#include "ui/wording/figures.h"
#include "ui/wording/mould_names.h"
#include "ui/wording/names.h"

namespace yardcast::ui {

namespace {

QPointF drawn(Point mould) { return {mould.x, -mould.y}; }

QPainterPath pathIn(const Region& region)
{
    return regionPath(region, drawn);
}

bool liesAbove(const MouldPart& part) { return part.kind == MouldPartKind::holdDown || part.kind == MouldPartKind::drip; }

/// From the base up, what is held from above last.
std::vector<const MouldPart*> inPaintOrder(const Mould& mould)
{
    std::vector<const MouldPart*> order;
    for (const MouldPart& part : mould.parts) order.push_back(&part);
    const auto rank = [](const MouldPart* part) {
        if (part->kind == MouldPartKind::base) return 0;
        // Seen through the base, under which they lie.
        if (part->kind == MouldPartKind::cleat || part->kind == MouldPartKind::tie) return 2;
        return liesAbove(*part) ? 2 : 1;
    };
    std::stable_sort(order.begin(), order.end(), [&](const MouldPart* a, const MouldPart* b) {
        return rank(a) != rank(b) ? rank(a) < rank(b) : a->fromMm < b->fromMm;
    });
    return order;
}

void paintPiece(QPainter& painter, const MouldPart& part, const PaintStyle& style)
{
    const QPainterPath path = pathIn(part.outline);
    if (path.isEmpty()) return;
    painter.setBrush(Qt::NoBrush);
    if (part.kind == MouldPartKind::base) {
        QColor pale = style.ink.timber;
        pale.setAlphaF(0.30f);
        painter.fillPath(path, pale);
        painter.setPen(thinPen(style, style.ink.ink));
        painter.drawPath(path);
        return;
    }
    if (part.kind == MouldPartKind::cleat) {
        painter.setPen(hiddenPen(style, style.ink.ink));
        painter.drawPath(path);
        return;
    }
    if (part.kind == MouldPartKind::tie) {
        painter.fillPath(path, style.ink.steel);
        return;
    }
    if (liesAbove(part)) {
        // It lies over what one has to see: only its outline, in the line of what stands before the cut.
        painter.setPen(phantomPen(style, style.ink.ink));
        painter.drawPath(path);
        return;
    }
    if (part.stuff == MouldStuff::foam) {
        QColor pale = style.ink.foam;
        pale.setAlphaF(part.kind == MouldPartKind::former ? 1.0f : 0.6f);
        painter.fillPath(path, pale);
        crossesIn(painter, path, style);
        painter.setPen(part.kind == MouldPartKind::former ? outlinePen(style) : hiddenPen(style, style.ink.ink));
    } else {
        fillBoard(painter, path, style);
        painter.setPen(part.kind == MouldPartKind::side || part.kind == MouldPartKind::former
                           ? outlinePen(style)
                           : thinPen(style, style.ink.ink));
    }
    painter.drawPath(path);
}

void paintMarked(QPainter& painter, const Mould& mould, const std::string& name, const PaintStyle& style)
{
    for (const MouldPart& part : mould.parts) {
        if (part.name != name) continue;
        const QPainterPath path = pathIn(part.outline);
        QColor tint = style.ink.chosen;
        tint.setAlphaF(0.30f);
        painter.fillPath(path, tint);
        painter.setPen(style.pen(style.ink.chosen, style.onPaper ? 0.8 * style.mmPerUnit : 3.0));
        painter.setBrush(Qt::NoBrush);
        painter.drawPath(path);
    }
}

}  // namespace

std::optional<MouldSubject> mouldSubject(const Plan& plan, const Assessment& assessment, const std::string& casting)
{
    MouldSubject subject;
    for (const MouldPtr& mould : assessment.moulds) {
        if (mould && mould->casting == casting) subject.mould = mould;
    }
    for (const PlacedCasting& placed : assessment.castings) {
        if (placed.casting && placed.casting->id == casting) subject.casting = placed.casting;
    }
    if (!subject.mould || !subject.casting) return std::nullopt;
    const int index = indexOfPart(plan, subject.casting->part);
    if (index < 0) return std::nullopt;
    subject.part = plan.parts[static_cast<std::size_t>(index)];
    for (const CastingSteelLayoutPtr& layout : assessment.steel.layouts) {
        if (layout && layout->casting == casting) subject.steel = layout;
    }
    return subject;
}

Hand handOf(const Mould& mould) { return mould.mirrored ? Hand::mirrored : Hand::straight; }

Point ownToMould(const MouldSubject& subject, Point own) { return toMould(*subject.casting, *subject.part, own); }

Point datumCorner(const MouldSubject& subject)
{
    // The left end of the edge farthest to the front.
    Point best = subject.casting->boundsMm.low;
    bool any = false;
    for (const Polygon& polygon : subject.casting->outline) {
        for (const Point& point : polygon.outer) {
            const bool nearer = point.y < best.y - 0.05 || (point.y < best.y + 0.05 && point.x < best.x);
            if (!any || nearer) best = point;
            any = true;
        }
    }
    return best;
}

void fillBoard(QPainter& painter, const QPainterPath& path, const PaintStyle& style)
{
    painter.fillPath(path, style.ink.timber);
    painter.setPen(thinPen(style, style.ink.pencil));
    for (const QPolygonF& polygon : path.toSubpathPolygons()) {
        QPainterPath one;
        one.addPolygon(polygon);
        const QRectF box = one.boundingRect();
        const double spacing = (style.onPaper ? 1.1 : 4.0) * style.mmPerUnit;
        const std::vector<QLineF> grain = hatchLines(one, box.width() >= box.height() ? 0.0 : 90.0, spacing);
        painter.drawLines(grain.data(), static_cast<int>(grain.size()));
    }
}

std::string mouldPartAt(const MouldSubject& subject, QPointF at)
{
    const std::vector<const MouldPart*> order = inPaintOrder(*subject.mould);
    for (auto part = order.rbegin(); part != order.rend(); ++part) {
        if (pathIn((*part)->outline).contains(at)) return (*part)->name;
    }
    return {};
}

QRectF mouldPictureBounds(const MouldSubject& subject, const MouldLook& look, const PaintStyle& style)
{
    return MouldMarks(subject, look, style).bounds();
}

void paintMouldPicture(QPainter& painter, const MouldSubject& subject, const MouldLook& look, const PaintStyle& style)
{
    const Mould& mould = *subject.mould;
    const std::vector<const MouldPart*> order = inPaintOrder(mould);
    for (const MouldPart* part : order) {
        if (part->kind == MouldPartKind::base) paintPiece(painter, *part, style);
    }
    fillCast(painter, pathIn(mould.inside), style);
    for (const MouldPart* part : order) {
        if (part->kind != MouldPartKind::base) paintPiece(painter, *part, style);
    }
    painter.setPen(outlinePen(style));
    painter.setBrush(Qt::NoBrush);
    painter.drawPath(pathIn(mould.inside));
    if (!look.marked.empty()) paintMarked(painter, mould, look.marked, style);
    MouldMarks(subject, look, style).paint(painter);
}

QRectF standingPictureBounds(const MouldSubject& subject, const PaintStyle& style)
{
    return StandingMarks(subject, style).bounds();
}

void paintStandingPicture(QPainter& painter, const MouldSubject& subject, const PaintStyle& style)
{
    const QPainterPath path = regionPath(subject.casting->outline, [](Point own) { return QPointF(own.x, -own.y); });
    fillCast(painter, path, style);
    painter.setPen(outlinePen(style));
    painter.setBrush(Qt::NoBrush);
    painter.drawPath(path);
    StandingMarks(subject, style).paint(painter);
}

}  // namespace yardcast::ui
