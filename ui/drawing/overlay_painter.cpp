#include "ui/drawing/overlay_painter.h"

#include <algorithm>
#include <cmath>

#include <QCoreApplication>

#include "ui/drawing/label_set.h"
#include "ui/drawing/painters.h"
#include "ui/wording/figures.h"

namespace yardcast::ui {

namespace {

/// Heavier than any casting, so that labels of counters go before those of what stands below them.
constexpr double kOnTop = 1e6;

QString peopleFigure(const CastingLift& lift)
{
    if (lift.people == 0) {
        return QCoreApplication::translate("Drawing", "over %1 people").arg(kMostPeople);
    }
    if (lift.people == 1) {
        return QCoreApplication::translate("Drawing", "1 person");
    }
    return QCoreApplication::translate("Drawing", "%1 people").arg(lift.people);
}

/// The middle of the casting's box in the view: where its words go.
QPointF middleOf(const Plan& plan, const PlacedCasting& placed, const Part& part, const Projection& projection)
{
    if (projection.isAbove() && part.kind() == PartKind::counter) {
        return projection.map({placed.centroidMm[0], placed.centroidMm[1]}, placed.centroidMm[2]);
    }
    if (projection.isAbove()) {
        return partShape(plan, part, projection).boundingRect().center();
    }
    return projection.map({placed.centroidMm[0], placed.centroidMm[1]}, placed.centroidMm[2]);
}

/// Where the names of counters stand.
std::vector<QRectF> nameBoxes(const Plan& plan, const Projection& projection, const PaintStyle& style)
{
    std::vector<QRectF> boxes;
    if (!style.showNames || !projection.isAbove()) {
        return boxes;
    }
    TextLook look;
    look.bold = true;
    for (const PartPtr& part : plan.parts) {
        const auto* counter = part ? std::get_if<Counter>(&part->body) : nullptr;
        if (!counter) {
            continue;
        }
        const LabelPlace place = counterLabelPlace(plan, *part, *counter, projection, style);
        if (!place.text.isEmpty()) {
            QRectF box(QPointF(0.0, 0.0), textSizeMm(place.text, style, look));
            box.moveCenter(place.at);
            boxes.push_back(box);
        }
    }
    return boxes;
}

void paintMesh(QPainter& painter, const Part& part, const Mesh& mesh, const Casting& casting,
               const Projection& projection, const PaintStyle& style)
{
    if (!(mesh.pitchMm > 1.0)) {
        return;
    }
    // Side cover is taken as the cover to the face.
    const Region inside = offset(casting.outline, -mesh.coverMm, OffsetJoin::mitre);
    QPainterPath path;
    for (const Polygon& polygon : inside) {
        path.addPath(pathOf(ownToAbove(part, polygon.outer, projection)));
        for (const Ring& hole : polygon.holes) {
            path.addPath(pathOf(ownToAbove(part, hole, projection)));
        }
    }
    // Far away the bars would run together: every second, fourth... is drawn.
    double pitch = mesh.pitchMm;
    const double least = (style.onPaper ? 1.2 : 4.0) * style.mmPerUnit;
    while (pitch < least) {
        pitch *= 2.0;
    }
    painter.setPen(thinPen(style, style.ink.steel));
    for (const double angle : {0.0, 90.0}) {
        const std::vector<QLineF> lines = hatchLines(path, part.place.turnDeg + angle, pitch);
        painter.drawLines(lines.data(), static_cast<int>(lines.size()));
    }
}

void paintBars(QPainter& painter, const Part& part, const BarGroup& bars, const Projection& projection,
               const PaintStyle& style, std::vector<OverlayLabel>& labels)
{
    const Point along = bars.to - bars.from;
    const double run = length(along);
    if (run <= 0.0 || bars.count < 1 || bars.count > 500) {
        return;
    }
    const Point aside = leftNormal(along) * (1.0 / run);
    const double spacing = bars.spacingMm.value_or(40.0);
    const double least = style.onPaper ? style.wide() : 2.0 * style.mmPerUnit;
    QPen pen(style.ink.steel, std::max(bars.diameterMm, least), Qt::SolidLine, Qt::FlatCap);
    painter.setPen(pen);
    for (int i = 0; i < bars.count; ++i) {
        const Point shift = aside * ((i - (bars.count - 1) / 2.0) * spacing);
        painter.drawLine(projection.map(part.place.toPlan(bars.from + shift)),
                         projection.map(part.place.toPlan(bars.to + shift)));
    }
    if (!style.showNames) {
        return;
    }
    OverlayLabel label;
    label.look.colour = style.ink.steel;
    label.look.behind = style.ink.sheet;
    const QString text = QCoreApplication::translate("Drawing", "%1 × Ø%2", "number of bars, diameter in mm")
                             .arg(bars.count)
                             .arg(shortNumberText(bars.diameterMm));
    label.at = projection.map(part.place.toPlan((bars.from + bars.to) * 0.5));
    label.texts = {text};
    label.weight = bars.diameterMm * run * bars.count;
    labels.push_back(std::move(label));
}

}  // namespace

void paintCentreOfGravity(QPainter& painter, QPointF at, const PaintStyle& style, const QColor& colour)
{
    const double radius = (style.onPaper ? 2.2 : 8.0) * style.mmPerUnit;
    const QRectF box(at.x() - radius, at.y() - radius, 2.0 * radius, 2.0 * radius);
    painter.setPen(thinPen(style, colour));
    painter.setBrush(style.ink.sheet);
    painter.drawEllipse(box);
    painter.setBrush(colour);
    painter.drawPie(box, 0, 90 * 16);
    painter.drawPie(box, 180 * 16, 90 * 16);
    painter.setBrush(Qt::NoBrush);
}

void paintSteelOverlay(QPainter& painter, const Plan& plan, const Assessment& assessment,
                       const Projection& projection, const PaintStyle& style)
{
    if (!projection.isAbove()) {
        return;
    }
    for (const PlacedCasting& placed : assessment.castings) {
        const Part* part = placed.casting ? findPart(plan, placed.casting->part) : nullptr;
        const auto* counter = part ? std::get_if<Counter>(&part->body) : nullptr;
        if (counter && counter->steel && counter->steel->mesh) {
            paintMesh(painter, *part, *counter->steel->mesh, *placed.casting, projection, style);
        }
    }
    std::vector<OverlayLabel> labels;
    for (const PartPtr& part : plan.parts) {
        const auto* counter = part ? std::get_if<Counter>(&part->body) : nullptr;
        if (counter && counter->steel) {
            for (const BarGroup& bars : counter->steel->bars) {
                paintBars(painter, *part, bars, projection, style, labels);
            }
        }
    }
    paintLabels(painter, labels, style, nameBoxes(plan, projection, style));
}

void paintLiftOverlay(QPainter& painter, const Plan& plan, const Assessment& assessment,
                      const Projection& projection, const PaintStyle& style)
{
    std::vector<OverlayLabel> labels;
    for (const PlacedCasting& placed : assessment.castings) {
        const Part* part = placed.casting ? findPart(plan, placed.casting->part) : nullptr;
        if (!part) {
            continue;
        }
        const QPointF centre =
            projection.map({placed.centroidMm[0], placed.centroidMm[1]}, placed.centroidMm[2]);
        const auto* counter = std::get_if<Counter>(&part->body);
        if (counter && counter->lift) {
            const double radius = (style.onPaper ? 1.6 : 6.0) * style.mmPerUnit;
            painter.setPen(style.pen(style.ink.chosen, style.wide()));
            painter.setBrush(style.ink.sheet);
            for (const Point& grip : counter->lift->grips) {
                painter.drawEllipse(projection.map(part->place.toPlan(grip), counter->topMm), radius, radius);
            }
            painter.setBrush(Qt::NoBrush);
        }
        const auto lift = std::find_if(
            assessment.handling.begin(), assessment.handling.end(),
            [&](const CastingLift& one) { return one.casting == placed.casting->id; });
        OverlayLabel label;
        const QString mass = massText(placed.casting->massKg);
        label.at = centre;
        label.clearUnits = style.onPaper ? 2.2 : 8.0;
        label.look.bold = true;
        label.look.behind = style.ink.sheet;
        label.look.colour = style.ink.ink;
        label.weight = placed.casting->massKg;
        // What lies on top is what one looks for first.
        if (counter) {
            label.weight += kOnTop;
        }
        label.texts = {mass};
        if (lift != assessment.handling.end()) {
            label.texts.prepend(mass + QLatin1Char('\n') + peopleFigure(*lift));
            if (lift->massKg > 2.0 * lift->limitKg) {
                label.look.colour = style.ink.stop;
                label.weight += 2 * kOnTop;
            } else if (lift->massKg > lift->limitKg) {
                label.look.colour = style.ink.caution;
            }
        }
        paintCentreOfGravity(painter, centre, style, style.ink.ink);
        labels.push_back(std::move(label));
    }
    paintLabels(painter, labels, style, nameBoxes(plan, projection, style));
}

void paintPourOverlay(QPainter& painter, const Plan& plan, const Assessment& assessment,
                      const Projection& projection, const PaintStyle& style)
{
    std::vector<OverlayLabel> labels;
    for (const MixQuantities& mix : assessment.mixes) {
        for (const auto& [id, litres] : mix.castingLitres) {
            const auto placed = std::find_if(
                assessment.castings.begin(), assessment.castings.end(),
                [&, name = id](const PlacedCasting& one) { return one.casting && one.casting->id == name; });
            const Part* part =
                placed == assessment.castings.end() ? nullptr : findPart(plan, placed->casting->part);
            if (!part) {
                continue;
            }
            OverlayLabel label;
            label.at = middleOf(plan, *placed, *part, projection);
            label.look.bold = true;
            label.look.behind = style.ink.sheet;
            label.texts = {volumeText(litres) + QLatin1Char('\n') + QString::fromStdString(mix.mix),
                           volumeText(litres)};
            label.weight = litres + (part->kind() == PartKind::counter ? kOnTop : 0.0);
            labels.push_back(std::move(label));
        }
    }
    paintLabels(painter, labels, style, nameBoxes(plan, projection, style));
}

}  // namespace yardcast::ui
