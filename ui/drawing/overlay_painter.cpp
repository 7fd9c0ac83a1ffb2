#include "ui/drawing/overlay_painter.h"

#include <algorithm>
#include <cmath>
#include <string_view>
#include <unordered_map>
#include <unordered_set>

#include <QCoreApplication>

#include "ui/drawing/label_set.h"
#include "ui/drawing/mould_painter.h"
#include "ui/drawing/painters.h"
#include "ui/drawing/steel_painter.h"
#include "ui/drawing/strength_marks.h"
#include "ui/wording/figures.h"
#include "ui/wording/mould_names.h"

namespace yardcast::ui {

namespace {

/// Heavier than any casting, so that labels of counters go before those of what stands below them.
constexpr double kOnTop = 1e6;
/// Words about a whole casting go before those about a hand on it.
constexpr double kWholeCasting = 1e5;

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

QString numberWords(const PourPlace& place, bool severalDays)
{
    if (!severalDays) return QCoreApplication::translate("Drawing", "No. %1").arg(place.number);
    return QCoreApplication::translate("Drawing", "No. %1, day %2").arg(place.number).arg(place.calendarDay);
}

/// How it is filled: "2.4 batches, 3 layers".
QString batchWords(const PouredCasting& poured)
{
    const auto layers = std::count_if(poured.layers.begin(), poured.layers.end(),
                                      [](const PourLayer& layer) { return layer.litres > 0.0; });
    const QString count = numberText(poured.batches, 1);
    const QString batches = poured.batches <= 1.05 ? QCoreApplication::translate("Drawing", "%1 batch").arg(count)
                                                   : QCoreApplication::translate("Drawing", "%1 batches").arg(count);
    return layers < 2 ? batches : QCoreApplication::translate("Drawing", "%1, %2 layers").arg(batches).arg(layers);
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

/// Where the names of the counters stand that the assessment has castings of.
std::vector<QRectF> nameBoxes(const Plan& plan, const Assessment& assessment, const Projection& projection,
                              const PaintStyle& style)
{
    std::vector<QRectF> boxes;
    if (!style.showNames || !projection.isAbove()) {
        return boxes;
    }
    TextLook look;
    look.bold = true;
    std::unordered_set<std::string_view> shown;
    for (const PlacedCasting& placed : assessment.castings) {
        if (placed.casting) shown.insert(placed.casting->part);
    }
    for (const PartPtr& part : plan.parts) {
        const auto* counter = part ? std::get_if<Counter>(&part->body) : nullptr;
        if (!counter || shown.count(part->id) == 0) {
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

/// One casting of a counter in the hands.
struct Handled {
    const Part& part;
    const Counter& counter;
    const Casting& casting;
    const CastingLift& lift;
    const CastingStrength* strength;   ///< null while not known
};

/// The edge it is tilted about, and rings where hands take it with what each bears: the plan's grips as they are now (a
/// drag goes before the assessment), or thin rings where the program proposes them.
void paintHandling(QPainter& painter, const Handled& handled, const Projection& projection, const PaintStyle& style,
                   std::vector<OverlayLabel>& labels)
{
    const auto toView = [&](Point own) { return projection.map(handled.part.place.toPlan(own), handled.counter.topMm); };
    const CaseResult* tilt = handled.strength ? handled.strength->find(StrengthCase::tilt) : nullptr;
    if (tilt && tilt->edge >= 0 && projection.isAbove() && !handled.casting.outline.empty()) {
        const Ring& ring = handled.casting.outline.front().outer;
        const std::size_t edge = static_cast<std::size_t>(tilt->edge);
        if (edge < ring.size()) {
            paintStandingEdge(painter, toView(ring[edge]), toView(ring[(edge + 1) % ring.size()]), style);
        }
    }
    std::vector<Point> grips;
    if (handled.counter.lift) {
        for (const Point grip : handled.counter.lift->grips) {
            if (contains(handled.casting.outline, grip)) grips.push_back(grip);
        }
    }
    const bool own = !grips.empty();
    if (!own && handled.strength) {
        grips = handled.strength->grips;
    }
    const std::vector<GripLoad> loads = gripLoads(grips, handled.lift.centroid, handled.lift.massKg);
    const double radius = (style.onPaper ? 1.6 : 6.0) * style.mmPerUnit;
    painter.setPen(own ? style.pen(style.ink.chosen, style.wide()) : thinPen(style, style.ink.chosen));
    painter.setBrush(style.ink.sheet);
    for (const Point grip : grips) {
        painter.drawEllipse(toView(grip), radius, radius);
    }
    painter.setBrush(Qt::NoBrush);
    // On a small piece they would hide what they speak of; its card has the figures.
    const double roomUnits = handled.casting.boundsMm.width() / style.mmPerUnit;
    if (!projection.isAbove() || roomUnits < (style.onPaper ? 35.0 : 150.0)) {
        return;
    }
    for (const GripLoad& load : loads) {
        OverlayLabel label;
        label.at = toView(load.at);
        label.clearUnits = style.onPaper ? 1.8 : 7.0;
        label.texts = {massText(load.kg)};
        label.look.behind = style.ink.sheet;
        label.look.colour = load.kg < 0.0 ? style.ink.stop : style.ink.ink;
        // After the words about whole castings: these go where there is room.
        label.weight = std::abs(load.kg);
        labels.push_back(std::move(label));
    }
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
    std::vector<OverlayLabel> labels;
    for (const CastingSteelLayoutPtr& shared : assessment.steel.layouts) {
        const CastingSteelLayout& layout = *shared;
        const Part* part = findPart(plan, layout.part);
        const auto* counter = part ? std::get_if<Counter>(&part->body) : nullptr;
        if (!counter || !counter->steel) {
            continue;
        }
        const OwnMap map = [&](Point own) { return projection.map(part->place.toPlan(own)); };
        paintSteelLayout(painter, layout, map, part->place.turnDeg, style);
        if (style.showNames) {
            const std::vector<OverlayLabel> more = steelLabels(layout, map, style);
            labels.insert(labels.end(), more.begin(), more.end());
        }
    }
    paintLabels(painter, labels, style, nameBoxes(plan, assessment, projection, style));
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
        const auto lift = std::find_if(
            assessment.handling.begin(), assessment.handling.end(),
            [&](const CastingLift& one) { return one.casting == placed.casting->id; });
        if (counter && lift != assessment.handling.end()) {
            paintHandling(painter, {*part, *counter, *placed.casting, *lift, assessment.strengthOf(lift->casting)},
                          projection, style, labels);
        }
        OverlayLabel label;
        const QString mass = massText(placed.casting->massKg);
        label.at = centre;
        label.clearUnits = style.onPaper ? 2.2 : 8.0;
        label.look.bold = true;
        label.look.behind = style.ink.sheet;
        label.look.colour = style.ink.ink;
        label.weight = placed.casting->massKg + kWholeCasting;
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
    paintLabels(painter, labels, style, nameBoxes(plan, assessment, projection, style));
}

void paintPourOverlay(QPainter& painter, const Plan& plan, const Assessment& assessment,
                      const Projection& projection, const PaintStyle& style)
{
    std::vector<OverlayLabel> labels;
    std::unordered_map<std::string_view, PourPlace> places = pourPlaces(assessment.pour);
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
            const QString amount = volumeText(litres) + QLatin1Char(' ') + QString::fromStdString(mix.mix);
            const auto place = places.find(id);
            if (place == places.end()) {
                label.texts = {amount, volumeText(litres)};
            } else {
                const QString number = numberWords(place->second, assessment.pour.days.size() > 1);
                const QString filled = batchWords(*place->second.poured);
                label.texts = {QStringList{number, amount, filled}.join(QLatin1Char('\n')),
                               number + QLatin1Char('\n') + volumeText(litres), QString::number(place->second.number)};
                if (!place->second.poured->fits) {
                    label.look.colour = style.ink.stop;
                }
            }
            label.weight = litres + (part->kind() == PartKind::counter ? kOnTop : 0.0);
            labels.push_back(std::move(label));
        }
    }
    paintLabels(painter, labels, style, nameBoxes(plan, assessment, projection, style));
}

void paintMouldOverlay(QPainter& painter, const Plan& plan, const Assessment& assessment,
                       const Projection& projection, const PaintStyle& style)
{
    std::vector<OverlayLabel> labels;
    std::vector<Hand> hands;
    for (const MouldPtr& mould : assessment.moulds) {
        const auto placed = std::find_if(
            assessment.castings.begin(), assessment.castings.end(),
            [&](const PlacedCasting& one) { return one.casting && one.casting->id == mould->casting; });
        const Part* part = placed == assessment.castings.end() ? nullptr : findPart(plan, placed->casting->part);
        if (!part) continue;
        OverlayLabel label;
        label.at = middleOf(plan, *placed, *part, projection);
        label.clearUnits = handBadgeUnits(style);
        label.look.bold = true;
        label.look.behind = style.ink.sheet;
        const QString id = QString::fromStdString(mould->casting);
        const QString name = QCoreApplication::translate("Drawing", "mould %1").arg(id);
        const QString hand = mould->mirrored ? QCoreApplication::translate("Drawing", "built mirrored")
                                             : QCoreApplication::translate("Drawing", "built as it stands");
        const QStringList twins = twinNames(*mould);
        label.texts = {(QStringList{name, hand} + twins).join(QLatin1Char('\n')),
                       (QStringList{name} + twins).join(QLatin1Char('\n')), name, id};
        label.weight = mould->widthMm * mould->depthMm + (part->kind() == PartKind::counter ? kOnTop : 0.0);
        labels.push_back(std::move(label));
        hands.push_back(handOf(*mould));
    }
    for (std::size_t i = 0; i < labels.size(); ++i) paintHandBadge(painter, labels[i].at, hands[i], style);
    paintLabels(painter, labels, style, nameBoxes(plan, assessment, projection, style));
}

}  // namespace yardcast::ui
