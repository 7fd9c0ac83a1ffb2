#include "ui/drawing/strength_overlay.h"

#include <algorithm>
#include <cmath>

#include <QCoreApplication>
#include <QPainter>

#include "core/materials/gravity.h"
#include "ui/drawing/marks.h"
#include "ui/drawing/painters.h"
#include "ui/drawing/strength_marks.h"
#include "ui/look/use_ramp.h"
#include "ui/wording/figures.h"
#include "ui/wording/strength_names.h"

namespace yardcast::ui {

namespace {

constexpr double kFull = 100.0;
/// About the height of two lines of text.
constexpr double kBendPx = 26.0;
/// Shorter lines of equal use than this have no room for their figure.
constexpr double kLeastFiguredPx = 70.0;
/// The worst place is what one looks for; then what lifts off, forces, and lines.
constexpr double kWorstWeight = 1000.0;
constexpr double kLiftsOffWeight = 500.0;
constexpr double kHeldWeight = 100.0;

struct Drawing {
    Q_DECLARE_TR_FUNCTIONS(Drawing)
};

/// Signs, and in elevation bending, reach this far beyond the piece.
double boundsMargin(const StrengthItem& item, const PaintStyle& style)
{
    constexpr double kSignPx = 14.0;
    return (item.plane ? kSignPx : kBendPx + kSignPx) * style.mmPerUnit;
}

QPainterPath outlineOf(const Casting& casting)
{
    QPainterPath path;
    const auto add = [&](const Ring& ring) {
        QPolygonF polygon;
        for (const Point& point : ring) polygon.append({point.x, point.y});
        path.addPolygon(polygon);
        path.closeSubpath();
    };
    for (const Polygon& polygon : casting.outline) {
        add(polygon.outer);
        for (const Ring& hole : polygon.holes) add(hole);
    }
    return path;
}

/// In elevation a counter is seen from its edge.
bool isSeenFromEdge(const StrengthItem& item) { return !item.plane; }

double depthOf(const StrengthItem& item)
{
    const auto* counter = std::get_if<Counter>(&item.part->body);
    return counter ? fullDepthMm(*counter) : 0.0;
}

double topOf(const StrengthItem& item)
{
    const auto* counter = std::get_if<Counter>(&item.part->body);
    return counter ? counter->topMm : 0.0;
}

/// Lying flat, so that its bending is seen in elevation.
bool liesFlat(const CaseResult& result)
{
    return result.which != StrengthCase::carriedOnEdge && result.which != StrengthCase::standing;
}

/// How far down the nodes move, by their place along the view: the least and the most.
struct Bent {
    struct Column {
        double alongMm = 0.0;
        double leastMm = 0.0;
        double mostMm = 0.0;
    };
    std::vector<Column> columns;
};
Bent bentOf(const StrengthItem& item, const Projection& projection)
{
    // Wide enough that each has nodes at both edges of the slab.
    constexpr double kColumnMm = 70.0;
    constexpr double kMostColumns = 40.0;
    Bent bent;
    if (!item.result->field) return bent;
    const StrengthField& field = *item.result->field;
    if (field.downMm.size() != field.mesh.nodes.size() || field.mesh.nodes.empty()) return bent;
    std::vector<double> along;
    along.reserve(field.mesh.nodes.size());
    for (const Point& node : field.mesh.nodes) along.push_back(projection.map(item.part->place.toPlan(node)).x());
    const auto [low, high] = std::minmax_element(along.begin(), along.end());
    const double width = *high - *low;
    if (!(width > 1.0)) return bent;
    const double count = std::clamp(std::floor(width / kColumnMm), 3.0, kMostColumns);
    std::vector<std::optional<Bent::Column>> columns(static_cast<std::size_t>(count));
    for (std::size_t i = 0; i < along.size(); ++i) {
        const auto at = std::size_t(std::min(count - 1.0, (along[i] - *low) / width * count));
        const double down = field.downMm[i];
        if (!columns[at]) {
            columns[at] = {*low + (double(at) + 0.5) * width / count, down, down};
        } else {
            columns[at]->leastMm = std::min(columns[at]->leastMm, down);
            columns[at]->mostMm = std::max(columns[at]->mostMm, down);
        }
    }
    for (const auto& column : columns) {
        if (column) bent.columns.push_back(*column);
    }
    if (!bent.columns.empty()) {
        bent.columns.front().alongMm = *low;
        bent.columns.back().alongMm = *high;
    }
    return bent;
}

/// Where a point of the own frame is drawn; in elevation at this height of a counter.
QPointF drawnAt(const StrengthItem& item, Point own, const Projection& projection, double zMm)
{
    if (item.plane) return item.plane->map(QPointF(own.x, own.y));
    return projection.map(item.part->place.toPlan(own), zMm);
}

void paintBent(QPainter& painter, const StrengthItem& item, const Projection& projection, const PaintStyle& style,
               double scale)
{
    const Bent bent = bentOf(item, projection);
    if (bent.columns.size() < 2) return;
    QPolygonF most;
    QPolygonF least;
    for (const Bent::Column& column : bent.columns) {
        most.append({column.alongMm, -topOf(item) + column.mostMm * scale});
        least.append({column.alongMm, -topOf(item) + column.leastMm * scale});
    }
    QPolygonF band = most;
    for (auto it = least.crbegin(); it != least.crend(); ++it) band.append(*it);
    QColor tone = style.ink.chosen;
    tone.setAlphaF(0.18f);
    painter.setPen(Qt::NoPen);
    painter.setBrush(tone);
    painter.drawPolygon(band);
    painter.setBrush(Qt::NoBrush);
    painter.setPen(style.pen(style.ink.chosen, style.wide()));
    painter.drawPolyline(most);
    painter.setPen(style.pen(style.ink.chosen, style.narrow(), Qt::DashLine));
    painter.drawPolyline(least);
}

OverlayLabel plated(QPointF at, QStringList texts, const PaintStyle& style, double weight)
{
    OverlayLabel label;
    label.at = at;
    label.texts = std::move(texts);
    label.look.behind = style.ink.sheet;
    label.look.colour = style.ink.ink;
    label.weight = weight;
    return label;
}

OverlayLabel worstLabel(const StrengthItem& item, QPointF at, const PaintStyle& style)
{
    const CaseResult& result = *item.result;
    OverlayLabel label = plated(at, {}, style, kWorstWeight + std::min(result.usePercent, kWorstWeight));
    label.look.bold = true;
    label.clearUnits = 9.0;
    if (!result.holds) {
        label.texts = {Drawing::tr("Nothing holds it: it tips"), Drawing::tr("It tips")};
        label.look.colour = style.ink.stop;
        label.weight *= 2.0;
        return label;
    }
    if (result.usePercent >= kFull) label.look.colour = style.ink.stop;
    const QString use = percentText(result.usePercent);
    const QString place = placeText(result.place, item.part.get());
    if (item.saysCase) {
        label.texts.append(use + QLatin1Char('\n') + place + QLatin1Char('\n') + strengthCaseName(result.which));
    }
    label.texts.append(use + QLatin1Char('\n') + place);
    label.texts.append(use);
    return label;
}

/// Held at a place small enough to be a point on the drawing.
bool isHand(const HeldAt& held) { return held.region.empty() || held.under.starts_with("hand"); }

void addHeldLabels(const StrengthItem& item, const Projection& projection, const PaintStyle& style,
                   std::vector<OverlayLabel>& labels)
{
    for (const HeldAt& held : item.result->held) {
        const QString name = heldText(held.under);
        const QPointF at = drawnAt(item, held.centre, projection, topOf(item) - depthOf(item));
        if (held.liftedOff) {
            OverlayLabel label = plated(
                at, {Drawing::tr("%1 lifts off").arg(name)}, style, kLiftsOffWeight);
            label.look.colour = style.ink.caution;
            label.look.bold = true;
            label.clearUnits = kLiftsOffMarkPx;
            labels.push_back(std::move(label));
            continue;
        }
        const QString force = massText(held.forceN / kGravityMS2);
        OverlayLabel label = plated(at, {name + QLatin1Char(' ') + force, force}, style, kHeldWeight);
        if (item.chosen && held.touchingShare < 0.5) {
            const QString share =
                Drawing::tr("on %1 of it").arg(percentText(100.0 * held.touchingShare));
            label.texts.prepend(name + QLatin1Char(' ') + force + QLatin1Char('\n') + share);
        }
        label.clearUnits = isHand(held) ? kHandMarkPx : isSeenFromEdge(item) ? 6.0 : 0.0;
        labels.push_back(std::move(label));
    }
}

/// Ways to say a thing that take more room than the piece itself are only for the chosen one; the sign always stays.
void fitTexts(const StrengthItem& item, std::vector<OverlayLabel>& labels, const PaintStyle& style)
{
    if (item.chosen) return;
    constexpr double kShare = 0.8;
    const double margin = boundsMargin(item, style);
    const QSizeF room = item.bounds.adjusted(margin, margin, -margin, -margin).size() * kShare;
    for (OverlayLabel& label : labels) {
        while (label.texts.size() > 1) {
            const QSizeF size = textSizeMm(label.texts.first(), style, label.look);
            if (size.width() <= room.width() && (!item.plane || size.height() <= room.height())) break;
            label.texts.removeFirst();
        }
    }
}

}  // namespace

bool StrengthItem::shows(const StrengthItem& other) const
{
    return part == other.part && casting == other.casting && strength == other.strength && result == other.result &&
           saysCase == other.saysCase && chosen == other.chosen && plane == other.plane && bounds == other.bounds;
}

std::optional<QTransform> planeInView(const Part& part, const Projection& projection)
{
    constexpr double kAlong = 0.999;
    if (part.kind() == PartKind::counter) {
        if (!projection.isAbove()) return std::nullopt;
        const QPointF origin = projection.map(part.place.toPlan({0.0, 0.0}));
        const QPointF x = projection.map(part.place.toPlan({1.0, 0.0})) - origin;
        const QPointF y = projection.map(part.place.toPlan({0.0, 1.0})) - origin;
        return QTransform(x.x(), x.y(), y.x(), y.y(), origin.x(), origin.y());
    }
    if (projection.isAbove()) return std::nullopt;
    double base = 0.0;
    if (const auto* support = std::get_if<Support>(&part.body)) {
        base = support->baseMm;
    } else if (const auto* panel = std::get_if<Panel>(&part.body)) {
        base = panel->baseMm;
    } else {
        return std::nullopt;
    }
    const double along = dot(part.place.directionToPlan({1.0, 0.0}), projection.rightwards());
    if (std::abs(along) < kAlong) return std::nullopt;
    const QPointF origin = projection.map(part.place.toPlan({0.0, 0.0}), base);
    return QTransform(along > 0.0 ? 1.0 : -1.0, 0.0, 0.0, -1.0, origin.x(), origin.y());
}

std::optional<StrengthItem> strengthItem(const PartPtr& part, const CastingPtr& casting,
                                         const CastingStrengthPtr& strength, const CaseResult* result, const Projection& projection,
                                         const PaintStyle& style)
{
    if (!result || (!result->field && result->holds)) return std::nullopt;
    StrengthItem item;
    item.part = part;
    item.casting = casting;
    item.strength = strength;
    item.result = result;
    item.plane = planeInView(*part, projection);
    const double margin = boundsMargin(item, style);
    if (item.plane) {
        item.outline = outlineOf(*casting);
        item.bounds = item.plane->mapRect(item.outline.boundingRect());
    } else if (part->kind() == PartKind::counter && !projection.isAbove() && liesFlat(*result)) {
        QPolygonF corners;
        const Box& box = casting->boundsMm;
        for (const Point corner : {box.low, Point{box.high.x, box.low.y}, box.high, Point{box.low.x, box.high.y}}) {
            corners.append(projection.map(part->place.toPlan(corner), topOf(item)));
        }
        item.bounds = corners.boundingRect().adjusted(0.0, 0.0, 0.0, depthOf(item));
    } else {
        return std::nullopt;
    }
    item.bounds.adjust(-margin, -margin, margin, margin);
    return item;
}

std::optional<double> deflectionScale(const std::vector<StrengthItem>& items, const PaintStyle& style)
{
    double most = 0.0;
    for (const StrengthItem& item : items) {
        if (!isSeenFromEdge(item) || !item.result->field) continue;
        for (const double down : item.result->field->downMm) {
            if (std::isfinite(down)) most = std::max(most, std::abs(down));
        }
    }
    if (!(most > 1e-6)) return std::nullopt;
    const double wanted = kBendPx * style.mmPerUnit / most;
    const double power = std::pow(10.0, std::floor(std::log10(wanted)));
    const double digit = wanted / power;
    return std::max(1.0, power * (digit >= 5.0 ? 5.0 : digit >= 2.0 ? 2.0 : 1.0));
}

void paintUse(QPainter& painter, const StrengthItem& item, UsePictures& pictures, const PaintStyle& style)
{
    if (!item.plane) return;
    if (item.result->field) {
        pictures.of(item.result->field).paint(painter, item.outline, *item.plane, style);
        return;
    }
    painter.setBrush(Qt::NoBrush);
    painter.setPen(outlinePen(style));
    painter.drawPath(item.plane->map(item.outline));
}

void paintStrengthMarks(QPainter& painter, const StrengthItem& item, const Projection& projection,
                        const PaintStyle& style, double scale)
{
    const CaseResult& result = *item.result;
    if (isSeenFromEdge(item)) {
        paintBent(painter, item, projection, style, scale);
        for (const HeldAt& held : result.held) {
            const QPointF at = drawnAt(item, held.centre, projection, topOf(item) - depthOf(item));
            if (held.liftedOff) {
                paintLiftsOff(painter, at, style);
            } else {
                paintPush(painter, at, style);
            }
        }
        return;
    }
    const QTransform& plane = *item.plane;
    const auto drawn = [&](Point own) { return plane.map(QPointF(own.x, own.y)); };
    for (const HeldAt& held : result.held) {
        if (!held.region.empty()) paintHeldRegion(painter, held.region, plane, style, held.liftedOff);
        if (isHand(held)) paintHand(painter, drawn(held.centre), style);
        if (held.liftedOff) paintLiftsOff(painter, drawn(held.centre), style);
    }
    for (const SectionForces& section : result.sections) {
        if (section.name == result.place) paintCut(painter, drawn(section.from), drawn(section.to), style);
    }
    const auto* counter = std::get_if<Counter>(&item.part->body);
    if (counter && result.edge >= 0 && std::size_t(result.edge) < counter->outline.size()) {
        const Point from = counter->outline[std::size_t(result.edge)];
        const Point to = counter->outline[std::size_t(result.edge + 1) % counter->outline.size()];
        paintStandingEdge(painter, drawn(from), drawn(to), style);
    }
    if (result.personGoverns) paintPerson(painter, drawn(result.personAt), style);
    if (result.holds) paintWorstPlace(painter, drawn(result.at), result.usePercent, style);
}

std::vector<OverlayLabel> strengthLabels(const StrengthItem& item, UsePictures& pictures,
                                         const Projection& projection, const PaintStyle& style)
{
    std::vector<OverlayLabel> labels;
    const CaseResult& result = *item.result;
    const QPointF at = result.holds ? drawnAt(item, result.at, projection, topOf(item))
                                    : drawnAt(item, item.casting->boundsMm.centre(), projection, topOf(item));
    labels.push_back(worstLabel(item, at, style));
    if (isSeenFromEdge(item) && result.holds) {
        // The deflected shape has room for one line; what the force is stands under it.
        labels.front().texts = {Drawing::tr("%1 mm down").arg(numberText(result.deflectionMm, 2))};
        labels.front().look.colour = style.ink.ink;
        labels.front().clearUnits = kBendPx * 0.6;
    }
    addHeldLabels(item, projection, style, labels);
    if (!item.plane) {
        fitTexts(item, labels, style);
        return labels;
    }
    if (result.personGoverns) {
        OverlayLabel label = plated(item.plane->map(QPointF(result.personAt.x, result.personAt.y)),
                                    {Drawing::tr("a person here"), QString()}, style, kHeldWeight / 2.0);
        label.clearUnits = kPersonMarkPx;
        labels.push_back(std::move(label));
    }
    const auto* counter = std::get_if<Counter>(&item.part->body);
    if (counter && result.edge >= 0 && std::size_t(result.edge) < counter->outline.size()) {
        const Point from = counter->outline[std::size_t(result.edge)];
        const Point to = counter->outline[std::size_t(result.edge + 1) % counter->outline.size()];
        const Point middle = (from + to) * 0.5;
        labels.push_back(plated(item.plane->map(QPointF(middle.x, middle.y)),
                                {result.which == StrengthCase::tilt ? Drawing::tr("turned about this edge")
                                                                    : Drawing::tr("stands on this edge")},
                                style, kHeldWeight / 2.0));
        labels.back().clearUnits = 4.0;
    }
    fitTexts(item, labels, style);
    if (!result.field) return labels;
    for (const UsePicture::Figure& figure : pictures.of(result.field).figures()) {
        if (figure.lengthMm < kLeastFiguredPx * style.mmPerUnit) continue;
        OverlayLabel label = plated(item.plane->map(QPointF(figure.at.x, figure.at.y)),
                                    {numberText(figure.percent, 0)}, style, figure.percent / kFull);
        label.look.behind = useColour(figure.percent);
        label.look.colour = inkOnUse(figure.percent);
        label.look.sizeUnits = labelUnits(style) - 1.0;
        labels.push_back(std::move(label));
    }
    return labels;
}

std::optional<CoveredName> coveredName(const Plan& plan, const StrengthItem& item, const Projection& projection,
                                       const PaintStyle& style)
{
    const auto* counter = std::get_if<Counter>(&item.part->body);
    if (!counter || !projection.isAbove() || !style.showNames) return std::nullopt;
    const LabelPlace place = counterLabelPlace(plan, *item.part, *counter, projection, style);
    if (place.text.isEmpty()) return std::nullopt;
    TextLook look;
    look.bold = true;
    // Words on a plate hide what the stage is about: where they would take much of the piece, its id has to do.
    constexpr double kShare = 0.15;
    const QRectF piece = item.plane ? item.plane->mapRect(item.outline.boundingRect()) : item.bounds;
    QString text = place.text;
    QSizeF size = textSizeMm(text, style, look);
    if (size.width() * size.height() > kShare * piece.width() * piece.height()) {
        text = QString::fromStdString(item.part->id);
        size = textSizeMm(text, style, look);
    }
    QRectF box(QPointF(0.0, 0.0), size);
    box.moveCenter(place.at);
    return CoveredName{text, box};
}

}  // namespace yardcast::ui
