#include "ui/drawing/stage_words.h"

#include <algorithm>
#include <cmath>
#include <string_view>
#include <unordered_map>

#include <QCoreApplication>
#include <QPainter>

#include "ui/drawing/hand_marks.h"
#include "ui/drawing/painters.h"
#include "ui/drawing/steel_painter.h"
#include "ui/wording/figures.h"
#include "ui/wording/mould_names.h"

namespace yardcast::ui {

namespace {

/// Words about a whole casting go before those about a hand on it.
constexpr double kWholeCasting = 1e5;
constexpr double kChosen = 1e9;
/// On a small piece figures at the grips would hide what they speak of; its card has them.
constexpr double kGripRoomPx = 150.0;
constexpr double kGripRoomPaper = 35.0;

QString tr(const char* text) { return QCoreApplication::translate("Drawing", text); }

QString lines(const QStringList& list) { return list.join(QLatin1Char('\n')); }

bool isChosen(const WordsView& view, const std::string& part)
{
    return std::find(view.chosen.begin(), view.chosen.end(), part) != view.chosen.end();
}

/// Names of a casting, the fullest first: those of its part, or the id alone where joints divide it.
QStringList namesOf(const Casting& casting, const Part& part)
{
    if (casting.id != part.id) return {QString::fromStdString(casting.id)};
    return labelChoices(part);
}

/// The casting as the view shows it.
QPolygonF areaOf(const Plan& plan, const Casting& casting, const Part& part, const Projection& projection)
{
    if (projection.isAbove() && part.kind() == PartKind::counter && !casting.outline.empty()) {
        return ownToAbove(part, casting.outline.front().outer, projection);
    }
    const QPolygonF box(partShape(plan, part, projection).boundingRect());
    return box;
}

/// At least as large as this text: what is thin is named all the same.
QPolygonF grownTo(const QPolygonF& area, QSizeF size)
{
    QRectF box = area.boundingRect();
    if (box.width() >= size.width() && box.height() >= size.height()) return area;
    const QSizeF grown(std::max(box.width(), 1.02 * size.width()), std::max(box.height(), 1.02 * size.height()));
    const QPointF middle = box.center();
    box.setSize(grown);
    box.moveCenter(middle);
    return QPolygonF(box);
}

/// Collects what there is to say, and finds its places.
class Speaker {
public:
    Speaker(const Plan& plan, const Assessment& assessment, const Projection& projection, const PaintStyle& style,
            const WordsView& view)
        : plan_(plan), assessment_(assessment), projection_(projection), style_(style), view_(view)
    {
    }

    /// The label of a casting with its look and weight, not yet its texts.
    OverlayLabel labelOf(const PlacedCasting& placed, const Part& part, double weight) const
    {
        OverlayLabel label;
        label.at = castingMiddle(plan_, placed, part, projection_);
        label.look.bold = true;
        label.look.behind = style_.ink.sheet;
        label.look.colour = style_.ink.ink;
        label.weight = weight + (part.kind() == PartKind::counter ? kCounterFirst : 0.0) +
                       (isChosen(view_, part.id) ? kChosen : 0.0);
        return label;
    }

    /// On the screen words stay on what they speak of.
    void keepOn(OverlayLabel& label, const PlacedCasting& placed, const Part& part) const
    {
        if (style_.onPaper || label.texts.isEmpty()) return;
        const QPolygonF area = areaOf(plan_, *placed.casting, part, projection_);
        label.within = grownTo(area, textSizeMm(label.texts.back(), style_, label.look));
        if (projection_.isAbove()) {
            if (const auto* counter = std::get_if<Counter>(&part.body)) {
                label.avoid = labelObstacles(plan_, part, *counter, projection_, style_);
            }
        }
        label.inFull = isChosen(view_, part.id);
        // A slab in view is never left without words; what stands below it or behind it has the cards.
        const bool inView = view_.visible.isNull() || view_.visible.contains(label.at);
        if (label.inFull || (inView && part.kind() == PartKind::counter)) label.beside = area.boundingRect();
    }

    bool isHidden(const Part& part) const
    {
        return projection_.isAbove() && part.kind() != PartKind::counter && !countersOver(plan_, part).empty();
    }

    std::vector<StageWords> placed(const std::vector<OverlayLabel>& labels, std::vector<QRectF> taken) const
    {
        taken.insert(taken.end(), view_.keepClear.begin(), view_.keepClear.end());
        if (!view_.visible.isNull()) {
            constexpr double kFarMm = 1e6;
            const QRectF& in = view_.visible;
            taken.emplace_back(in.left() - kFarMm, in.top() - kFarMm, kFarMm, in.height() + 2 * kFarMm);
            taken.emplace_back(in.right(), in.top() - kFarMm, kFarMm, in.height() + 2 * kFarMm);
            taken.emplace_back(in.left(), in.top() - kFarMm, in.width(), kFarMm);
            taken.emplace_back(in.left(), in.bottom(), in.width(), kFarMm);
        }
        if (style_.nameCastings) {
            for (const QRectF& name : counterNameBoxes(plan_, assessment_.castings, projection_, style_))
                taken.push_back(name);
        }
        std::vector<StageWords> words;
        for (PlacedLabel& one : placeLabels(labels, style_, std::move(taken))) {
            const OverlayLabel& label = labels[one.label];
            StageWords made{std::move(one.text), one.box, label.look, {}};
            made.look.align = Qt::AlignCenter;
            if (!label.beside.isNull() && !label.beside.intersects(one.box)) {
                const QPointF near(std::clamp(label.at.x(), one.box.left(), one.box.right()),
                                   std::clamp(label.at.y(), one.box.top(), one.box.bottom()));
                made.lead = QLineF(near, label.at);
            }
            words.push_back(std::move(made));
        }
        return words;
    }

    const Plan& plan_;
    const Assessment& assessment_;
    const Projection& projection_;
    const PaintStyle& style_;
    const WordsView& view_;
};

QString peopleFigure(const CastingLift& lift)
{
    if (lift.people == 0) return tr("over %1 people").arg(kMostPeople);
    return lift.people == 1 ? tr("1 person") : tr("%1 people").arg(lift.people);
}

/// How it is filled: "2.4 batches, 3 layers".
QString batchWords(const PouredCasting& poured)
{
    const auto layers = std::count_if(poured.layers.begin(), poured.layers.end(),
                                      [](const PourLayer& layer) { return layer.litres > 0.0; });
    const QString count = numberText(poured.batches, 1);
    const QString batches = poured.batches <= 1.05 ? tr("%1 batch").arg(count) : tr("%1 batches").arg(count);
    return layers < 2 ? batches : tr("%1, %2 layers").arg(batches).arg(layers);
}

/// How high each layer of concrete comes above the mould base: "to 16, 35, 60 mm".
QString heightWords(const PouredCasting& poured)
{
    QStringList heights;
    for (const PourLayer& layer : poured.layers) {
        if (layer.litres > 0.0) heights << shortNumberText(layer.toMm, 0);
    }
    return heights.size() < 2 ? QString() : tr("filled to %1 mm").arg(heights.join(QStringLiteral(", ")));
}

QString numberWords(const PourPlace& place, bool severalDays)
{
    if (!severalDays) return tr("No. %1").arg(place.number);
    return tr("No. %1, day %2").arg(place.number).arg(place.calendarDay);
}

/// Ways to say where a casting comes in the pour, the fullest first. On paper the drawing itself names it.
QStringList pourTexts(const QStringList& names, const QString& amount, const QString& litres, const PourPlace* place,
                      bool severalDays)
{
    const QString id = names.isEmpty() ? QString() : names.back();
    const auto named = [](const QString& name, const QString& rest) {
        return name.isEmpty() ? rest : lines({name, rest});
    };
    if (!place) return {named(id, amount), named(id, litres), litres};
    const QString number = numberWords(*place, severalDays);
    const QString filled = batchWords(*place->poured);
    const QString heights = heightWords(*place->poured);
    QStringList said;
    const auto withHeights = [&](QStringList list) {
        if (!heights.isEmpty()) list << heights;
        return lines(list);
    };
    for (const QString& name : names) said << named(name, withHeights({number, amount, filled}));
    if (names.isEmpty()) said << withHeights({number, amount, filled}) << lines({number, amount, filled});
    said << named(id, withHeights({number, amount})) << named(id, lines({number, litres}));
    if (!id.isEmpty()) said << id + QLatin1Char('\n') + tr("No. %1").arg(place->number);
    return said << QString::number(place->number);
}

QStringList liftTexts(const QStringList& names, const QString& mass, const QString& people)
{
    QStringList said;
    for (const QString& name : names) {
        if (!people.isEmpty()) said << lines({name, mass, people});
    }
    const QString id = names.isEmpty() ? QString() : names.back();
    if (!id.isEmpty()) {
        if (!people.isEmpty()) said << lines({id, mass + QStringLiteral(", ") + people});
        said << lines({id, mass}) << id + QStringLiteral("  ") + mass;
    } else if (!people.isEmpty()) {
        said << lines({mass, people});
    }
    return said << mass;
}

}  // namespace

QPointF castingMiddle(const Plan& plan, const PlacedCasting& placed, const Part& part, const Projection& projection)
{
    if (projection.isAbove() && part.kind() != PartKind::counter) {
        return partShape(plan, part, projection).boundingRect().center();
    }
    return projection.map({placed.centroidMm[0], placed.centroidMm[1]}, placed.centroidMm[2]);
}

double centreUnits(const PaintStyle& style) { return style.onPaper ? 2.2 : 8.0; }

double gripUnits(const PaintStyle& style) { return style.onPaper ? 1.6 : 6.0; }

CastingGrips castingGrips(const Counter& counter, const Casting& casting, const CastingStrength* strength)
{
    CastingGrips found;
    if (counter.lift) {
        for (const Point grip : counter.lift->grips) {
            if (contains(casting.outline, grip)) found.grips.push_back(grip);
        }
    }
    found.own = !found.grips.empty();
    if (!found.own && strength) found.grips = strength->grips;
    return found;
}

bool showsSign(const Plan& plan, const Part& part, const Projection& projection, const PaintStyle& style,
                 const std::vector<std::string>& chosen)
{
    if (style.onPaper || !projection.isAbove() || part.kind() == PartKind::counter) return true;
    return countersOver(plan, part).empty() || std::find(chosen.begin(), chosen.end(), part.id) != chosen.end();
}

const Part* counterWithSteel(const Plan& plan, const CastingSteelLayout& layout)
{
    const Part* part = findPart(plan, layout.part);
    const auto* counter = part ? std::get_if<Counter>(&part->body) : nullptr;
    return counter && counter->steel ? part : nullptr;
}

std::vector<StageWords> steelWords(const Plan& plan, const Assessment& assessment, const Projection& projection,
                                   const PaintStyle& style, const WordsView& view)
{
    if (!projection.isAbove() || !style.showNames) return {};
    std::vector<OverlayLabel> labels;
    for (const CastingSteelLayoutPtr& layout : assessment.steel.layouts) {
        const Part* part = counterWithSteel(plan, *layout);
        if (!part) continue;
        const OwnMap map = [&](Point own) { return projection.map(part->place.toPlan(own)); };
        for (OverlayLabel& label : steelLabels(*layout, map, style)) labels.push_back(std::move(label));
    }
    return Speaker(plan, assessment, projection, style, view).placed(labels, {});
}

std::vector<StageWords> pourWords(const Plan& plan, const Assessment& assessment, const Projection& projection,
                                  const PaintStyle& style, const WordsView& view)
{
    const Speaker speaker(plan, assessment, projection, style, view);
    std::unordered_map<std::string_view, const PlacedCasting*> castings;
    for (const PlacedCasting& placed : assessment.castings) {
        if (placed.casting) castings.emplace(placed.casting->id, &placed);
    }
    const std::unordered_map<std::string_view, PourPlace> places = pourPlaces(assessment.pour);
    const bool severalDays = assessment.pour.days.size() > 1;
    std::vector<OverlayLabel> labels;
    for (const MixQuantities& mix : assessment.mixes) {
        for (const auto& [id, litres] : mix.castingLitres) {
            const auto placed = castings.find(id);
            const Part* part = placed == castings.end() ? nullptr : findPart(plan, placed->second->casting->part);
            if (!part) continue;
            OverlayLabel label = speaker.labelOf(*placed->second, *part, litres);
            const QString amount = volumeText(litres) + QLatin1Char(' ') + QString::fromStdString(mix.mix);
            const auto place = places.find(id);
            const PourPlace* found = place == places.end() ? nullptr : &place->second;
            const bool chosen = isChosen(view, part->id);
            // Of what a counter hides there is room for its number only.
            if (!style.onPaper && !chosen && speaker.isHidden(*part)) {
                if (!found) continue;
                label.texts = {QString::number(found->number)};
                label.look.bold = false;
                label.look.colour = style.ink.pencil;
            } else {
                const QStringList names = style.nameCastings ? QStringList() : namesOf(*placed->second->casting, *part);
                label.texts = pourTexts(names, amount, volumeText(litres), found, severalDays);
            }
            if (found && !found->poured->fits) label.look.colour = style.ink.stop;
            speaker.keepOn(label, *placed->second, *part);
            labels.push_back(std::move(label));
        }
    }
    return speaker.placed(labels, {});
}

std::vector<StageWords> liftWords(const Plan& plan, const Assessment& assessment, const Projection& projection,
                                  const PaintStyle& style, const WordsView& view)
{
    const Speaker speaker(plan, assessment, projection, style, view);
    std::unordered_map<std::string_view, const CastingLift*> lifts;
    for (const CastingLift& lift : assessment.handling) lifts.emplace(lift.casting, &lift);
    std::vector<OverlayLabel> labels;
    std::vector<QRectF> taken;
    const auto takeSign = [&](QPointF at, double units) {
        const double half = units * style.mmPerUnit;
        taken.emplace_back(at.x() - half, at.y() - half, 2.0 * half, 2.0 * half);
    };
    for (const PlacedCasting& placed : assessment.castings) {
        const Part* part = placed.casting ? findPart(plan, placed.casting->part) : nullptr;
        if (!part) continue;
        if (!showsSign(plan, *part, projection, style, view.chosen)) continue;
        const Casting& casting = *placed.casting;
        const QPointF centre = projection.map({placed.centroidMm[0], placed.centroidMm[1]}, placed.centroidMm[2]);
        const auto known = lifts.find(casting.id);
        const CastingLift* lift = known == lifts.end() ? nullptr : known->second;
        if (const auto* counter = std::get_if<Counter>(&part->body)) {
            const CastingGrips grips = castingGrips(*counter, casting, assessment.strengthOf(casting.id));
            const double roomUnits = casting.boundsMm.width() / style.mmPerUnit;
            const bool figures =
                lift && projection.isAbove() && roomUnits >= (style.onPaper ? kGripRoomPaper : kGripRoomPx);
            for (const GripLoad& load : lift ? gripLoads(grips.grips, lift->centroid, lift->massKg)
                                             : std::vector<GripLoad>()) {
                const QPointF at = projection.map(part->place.toPlan(load.at), counter->topMm);
                takeSign(at, gripUnits(style));
                if (!figures) continue;
                OverlayLabel label;
                label.at = at;
                label.clearUnits = style.onPaper ? 1.8 : 7.0;
                label.texts = {massText(load.kg)};
                label.look.behind = style.ink.sheet;
                const bool heavy = load.kg > plan.crew.liftLimitKg + 1e-9;
                if (heavy) {
                    label.texts.prepend(tr("%1, over %2 for one")
                                            .arg(massText(load.kg), massText(plan.crew.liftLimitKg)));
                }
                label.look.colour = load.kg < 0.0 ? style.ink.stop : heavy ? style.ink.caution : style.ink.ink;
                // After the words about whole castings: these go where there is room.
                label.weight = std::abs(load.kg);
                labels.push_back(std::move(label));
            }
        }
        takeSign(centre, centreUnits(style));
        OverlayLabel label = speaker.labelOf(placed, *part, casting.massKg + kWholeCasting);
        label.at = centre;
        label.clearUnits = centreUnits(style);
        const QStringList names = style.nameCastings ? QStringList() : namesOf(casting, *part);
        label.texts = liftTexts(names, massText(casting.massKg), lift ? peopleFigure(*lift) : QString());
        if (lift && lift->massKg > 2.0 * lift->limitKg) {
            label.look.colour = style.ink.stop;
            label.weight += 2 * kCounterFirst;
        } else if (lift && lift->massKg > lift->limitKg) {
            label.look.colour = style.ink.caution;
        }
        speaker.keepOn(label, placed, *part);
        labels.push_back(std::move(label));
    }
    return speaker.placed(labels, std::move(taken));
}

std::vector<StageWords> mouldWords(const Plan& plan, const Assessment& assessment, const Projection& projection,
                                   const PaintStyle& style, const WordsView& view)
{
    const Speaker speaker(plan, assessment, projection, style, view);
    std::unordered_map<std::string_view, const PlacedCasting*> castings;
    for (const PlacedCasting& placed : assessment.castings) {
        if (placed.casting) castings.emplace(placed.casting->id, &placed);
    }
    std::vector<OverlayLabel> labels;
    std::vector<QRectF> taken;
    for (const MouldPtr& mould : assessment.moulds) {
        const auto placed = castings.find(mould->casting);
        const Part* part = placed == castings.end() ? nullptr : findPart(plan, placed->second->casting->part);
        if (!part || !showsSign(plan, *part, projection, style, view.chosen)) continue;
        OverlayLabel label = speaker.labelOf(*placed->second, *part, placed->second->casting->massKg);
        const double half = handBadgeUnits(style) * style.mmPerUnit;
        taken.emplace_back(label.at.x() - half, label.at.y() - half, 2.0 * half, 2.0 * half);
        label.clearUnits = handBadgeUnits(style);
        const QString id = QString::fromStdString(mould->casting);
        const QString name = tr("mould %1").arg(id);
        const QString hand = mould->mirrored ? tr("built mirrored") : tr("built as it stands");
        const QString shortHand = mould->mirrored ? tr("mirrored") : tr("as it stands");
        const QStringList twins = twinNames(*mould);
        label.texts = {lines(QStringList{name, hand} + twins), lines({name, hand}), lines({id, shortHand}), id};
        speaker.keepOn(label, *placed->second, *part);
        labels.push_back(std::move(label));
    }
    return speaker.placed(labels, std::move(taken));
}

void paintStageWords(QPainter& painter, const std::vector<StageWords>& words, const PaintStyle& style,
                     const QRectF& exposed)
{
    // The plate behind a text is a little larger than the text.
    const double reach = 3.0 * style.mmPerUnit;
    const auto inSight = [&](const QRectF& box) {
        return exposed.isNull() || box.adjusted(-reach, -reach, reach, reach).intersects(exposed);
    };
    for (const StageWords& one : words) {
        if (!one.lead.isNull() && inSight(QRectF(one.lead.p1(), one.lead.p2()).normalized())) {
            painter.setPen(thinPen(style, style.ink.chosen));
            painter.drawLine(one.lead);
        }
        if (inSight(one.box)) paintText(painter, one.box.center(), one.text, style, one.look);
    }
}

}  // namespace yardcast::ui
