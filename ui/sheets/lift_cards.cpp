#include "ui/sheets/lift_cards.h"

#include <algorithm>
#include <cmath>

#include <QPainter>

#include "ui/drawing/hours_chart.h"
#include "ui/drawing/marks.h"
#include "ui/drawing/overlay_painter.h"
#include "ui/sheets/hold_pages.h"
#include "ui/sheets/sheet_frame.h"
#include "ui/sheets/sheet_table.h"
#include "ui/sheets/sheet_text.h"
#include "ui/sheets/sheet_words.h"
#include "ui/wording/figures.h"
#include "ui/wording/handling_advice.h"
#include "ui/wording/lifting_names.h"
#include "ui/wording/names.h"
#include "ui/wording/readiness_names.h"

namespace yardcast::ui {

namespace {

constexpr double kCardMm = 76.0;
constexpr double kDrawingMm = 84.0;
constexpr double kGapMm = 3.0;
constexpr double kChartScale = 0.72;
constexpr double kChartGapMm = 3.0;

/// What stands on one card.
struct Card {
    CastingPtr casting;
    CastingLift lift;
    LiftSketch sketch;
    QString title;
    QStringList sentences;
    SheetTable grips;
    HoursChart hours;      ///< from when on it may be handled; without groups where that is not known
};

/// The group of the chart that a casting is in; none where its hours are not known.
HoursChart chartOf(const HoursChart& all, const std::string& casting)
{
    for (std::size_t i = 0; i < all.groups.size(); ++i) {
        const std::vector<std::string>& castings = all.groups[i].castings;
        if (std::find(castings.begin(), castings.end(), casting) != castings.end()) {
            return chartOfGroups(all, i, i + 1);
        }
    }
    return {};
}

/// Set smaller than a drawing, so that two cards go on a page.
double chartHeightMm(const HoursChart& chart)
{
    return kChartScale * hoursChartHeight(chart, paperStyle(1.0));
}

double cardHeightMm(const Card& card)
{
    return card.hours.groups.empty() ? kCardMm : kCardMm + chartHeightMm(card.hours) + kChartGapMm;
}

SheetTable gripTable(const Casting& casting, const LiftSketch& sketch)
{
    SheetTable table;
    table.sizeMm = 3.0;
    const bool counter = casting.kind == PartKind::counter;
    table.columns = {{Sheets::tr("Grip"), 14.0, false},
                     {Sheets::tr("from the left, mm"), 26.0, true},
                     {counter ? Sheets::tr("from the front, mm") : Sheets::tr("from the foot, mm"), 26.0, true},
                     {Sheets::tr("bears, kg"), 22.0, true}};
    for (std::size_t i = 0; i < sketch.grips.size(); ++i) {
        const GripLoad& load = sketch.grips[i];
        table.rows.push_back({{QString::number(i + 1), numberText(load.at.x - casting.boundsMm.low.x, 0),
                               numberText(load.at.y - casting.boundsMm.low.y, 0), numberText(load.kg, 1)},
                              {},
                              false});
    }
    return table;
}

QStringList sentencesOf(const Card& card)
{
    const CastingLift& lift = card.lift;
    QStringList said;
    const QString people = lift.crewPeople == 1 ? Sheets::tr("1 person") : Sheets::tr("%1 people").arg(lift.crewPeople);
    const QString can = lift.massKg <= lift.limitKg
        ? Sheets::tr("%1 lift it, by the guideline up to %2.").arg(people, massText(lift.limitKg))
        : Sheets::tr("TOO HEAVY for %1 by hand: by the guideline they lift %2.").arg(people, massText(lift.limitKg));
    said << can;
    const auto shares = personLoads(card.sketch.grips, lift.crewPeople);
    if (!shares.empty()) {
        const double most = *std::max_element(shares.begin(), shares.end());
        const double least = *std::min_element(shares.begin(), shares.end());
        said << (most - least < 0.5 ? Sheets::tr("Each person bears %1.").arg(massText(most))
                                    : Sheets::tr("A person bears %1 to %2.").arg(massText(least), massText(most)));
    }
    const RuleLimit* each = lift.find(LimitRule::plan);
    if (const QString heavy = each ? heavyGripsText(card.sketch.grips, each->eachKg) : QString(); !heavy.isEmpty()) {
        said << heavy;
    }
    const QString edge = card.sketch.tiltEdge >= 0 ? edgeText(*card.casting, card.sketch.tiltEdge) : QString();
    said << (edge.isEmpty() ? Sheets::tr("To tilt it up pulls %1.").arg(massText(lift.tiltKg))
                            : Sheets::tr("Tilts about %1 (heavy line): that pulls about %2.").arg(edge, massText(lift.tiltKg)));
    if (card.sketch.proposed) {
        said << Sheets::tr("The grips are the program's proposal.");
    }
    int told = 0;
    for (const MeansAdvice& advice : lift.means) {
        if (advice.enough && told < 2) {
            said << meansSentence(advice);
            ++told;
        }
    }
    return said;
}

/// Where the hour to carry falls into the night.
QString nightText(const HoursChart& hours)
{
    double last = 0.0;
    for (const HoursGroup& group : hours.groups) {
        for (const HoursBar& bar : group.bars) {
            if (bar.planned && bar.possible) last = std::max(last, bar.cautiousH);
        }
    }
    const QString night = last > 0.0 ? byDayText(last, hours.startH) : QString();
    return night.isEmpty() ? night
                           : Sheets::tr("With the safety kept from %1 on: %2.").arg(clockText(last, hours.startH), night);
}

std::vector<Card> cardsOf(const Plan& plan, const Assessment& assessment)
{
    std::vector<Card> cards;
    const HoursChart hours = hoursChart(plan, assessment);
    for (const CastingLift& lift : assessment.handling) {
        const auto found = std::find_if(
            assessment.castings.begin(), assessment.castings.end(),
            [&](const PlacedCasting& one) { return one.casting && one.casting->id == lift.casting; });
        if (found == assessment.castings.end()) {
            continue;
        }
        const auto twin = std::find_if(cards.begin(), cards.end(),
                                       [&](const Card& card) { return areAlikeUprights(*card.casting, *found->casting); });
        if (twin != cards.end()) {
            twin->title += QStringLiteral(", ") + QString::fromStdString(lift.casting);
            continue;
        }
        Card card;
        card.casting = found->casting;
        card.lift = lift;
        card.sketch = liftSketch(assessment, lift, true);
        card.title = subjectName(&plan, lift.casting);
        card.grips = gripTable(*card.casting, card.sketch);
        card.sentences = sentencesOf(card);
        card.hours = chartOf(hours, lift.casting);
        for (const QString& said : {lateCornerText(plan, assessment, lift.casting), wetMixText(plan, card.casting->mix),
                                    nightText(card.hours)}) {
            if (!said.isEmpty()) card.sentences << said;
        }
        cards.push_back(std::move(card));
    }
    return cards;
}

void paintHours(QPainter& painter, const QRectF& box, const HoursChart& chart)
{
    painter.save();
    painter.translate(box.topLeft());
    painter.scale(kChartScale, kChartScale);
    paintHoursChart(painter, QRectF(0.0, 0.0, box.width() / kChartScale, box.height() / kChartScale), chart,
                    paperStyle(1.0));
    painter.restore();
}

void paintCard(QPainter& painter, const QRectF& whole, const Card& card)
{
    painter.setPen(QPen(Qt::black, 0.35));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(whole);
    const QRectF box(whole.left(), whole.top(), whole.width(), kCardMm);
    if (!card.hours.groups.empty()) {
        painter.drawLine(box.bottomLeft(), box.bottomRight());
        const QRectF below(whole.left(), box.bottom(), whole.width(), whole.height() - box.height());
        paintHours(painter, below.adjusted(2.0, kChartGapMm / 2, -2.0, -kChartGapMm / 2), card.hours);
    }
    paintLiftSketch(painter, QRectF(box.left() + 1.0, box.top() + 10.0, kDrawingMm - 2.0, box.height() - 11.0), *card.casting,
                    card.sketch);
    Type title;
    title.bold = true;
    title.sizeMm = kTitleType;
    const double massMm = 34.0;
    paintName(painter, QRectF(box.left() + 2.0, box.top() + 1.0, box.width() - massMm - 4.0, 8.0), card.title, title);
    title.align = Qt::AlignRight;
    paintFitted(painter, QRectF(box.right() - massMm, box.top() + 1.0, massMm - 2.0, 8.0), massText(card.lift.massKg), title);

    QRectF words(box.left() + kDrawingMm + 1.0, box.top() + 10.5, box.width() - kDrawingMm - 3.0, box.height() - 12.0);
    if (!card.grips.rows.empty()) {
        const SheetTable table = card.grips.scaledTo(words.width());
        words.adjust(0.0, paintTable(painter, words.topLeft(), table) + 2.0, 0.0, 0.0);
    }
    // Set smaller where a piece has much to say.
    Type body;
    body.sizeMm = 3.3;
    const auto height = [&](const Type& type) {
        double sum = 0.0;
        for (const QString& sentence : card.sentences) {
            sum += lineHeightMm(type) * static_cast<double>(wrapped(sentence, words.width(), type).size()) + 0.8;
        }
        return sum;
    };
    while (body.sizeMm > 2.2 && height(body) > words.height()) {
        body.sizeMm -= 0.1;
    }
    for (const QString& sentence : card.sentences) {
        words.adjust(0.0, paintWrapped(painter, words, sentence, body) + 0.8, 0.0, 0.0);
    }
}

}  // namespace

bool areAlikeUprights(const Casting& a, const Casting& b)
{
    const auto near = [](double x, double y) { return std::fabs(x - y) < 0.05; };
    return a.kind != PartKind::counter && a.kind == b.kind && near(a.massKg, b.massKg) &&
           near(a.boundsMm.width(), b.boundsMm.width()) && near(a.boundsMm.height(), b.boundsMm.height());
}

LiftSketch liftSketch(const Assessment& assessment, const CastingLift& lift, bool numbered)
{
    LiftSketch sketch;
    sketch.numbered = numbered;
    const CastingStrength* strength = assessment.strengthOf(lift.casting);
    sketch.grips = lift.loadsAt(strength ? strength->grips : std::vector<Point>());
    sketch.proposed = lift.grips.empty() && !sketch.grips.empty();
    const CaseResult* tilt = strength ? strength->find(StrengthCase::tilt) : nullptr;
    if (tilt && tilt->holds) {
        sketch.tiltEdge = tilt->edge;
    }
    return sketch;
}

void paintLiftSketch(QPainter& painter, const QRectF& box, const Casting& casting, const LiftSketch& sketch)
{
    const double width = casting.boundsMm.width();
    const double height = casting.boundsMm.height();
    if (!(width > 0.0) || !(height > 0.0)) {
        return;
    }
    const QRectF inner = box.adjusted(3.0, 3.0, -3.0, -5.5);
    const double mmPerUnit = std::max(width / inner.width(), height / inner.height());
    const PaintStyle style = paperStyle(mmPerUnit);
    const auto toView = [](Point own) { return QPointF(own.x, -own.y); };
    const auto onPaper = [&](Point own) {
        return inner.center() + (toView(own) - toView(casting.boundsMm.centre())) / mmPerUnit;
    };
    painter.save();
    painter.translate(inner.center());
    painter.scale(1.0 / mmPerUnit, 1.0 / mmPerUnit);
    painter.translate(-toView(casting.boundsMm.centre()));
    QPainterPath path;
    const auto add = [&](const Ring& ring) {
        QPolygonF polygon;
        for (const Point& point : ring) {
            polygon.append(toView(point));
        }
        path.addPolygon(polygon);
        path.closeSubpath();
    };
    for (const Polygon& polygon : casting.outline) {
        add(polygon.outer);
        for (const Ring& hole : polygon.holes) {
            add(hole);
        }
    }
    painter.fillPath(path, style.ink.cast);
    painter.setPen(outlinePen(style));
    painter.setBrush(Qt::NoBrush);
    painter.drawPath(path);
    if (sketch.tiltEdge >= 0 && !casting.outline.empty()) {
        const Ring& ring = casting.outline.front().outer;
        const std::size_t edge = static_cast<std::size_t>(sketch.tiltEdge);
        if (edge < ring.size()) {
            painter.setPen(QPen(Qt::black, 1.2 * mmPerUnit, Qt::SolidLine, Qt::RoundCap));
            painter.drawLine(toView(ring[edge]), toView(ring[(edge + 1) % ring.size()]));
        }
    }
    const bool counter = casting.kind == PartKind::counter;
    const Point centre = counter ? Point{casting.centroidMm[0], casting.centroidMm[1]}
                                 : Point{casting.centroidMm[0], casting.boundsMm.centre().y};
    paintCentreOfGravity(painter, toView(centre), style, style.ink.ink);
    // Hands that are close to one another on a narrow piece are drawn smaller, so that none hides another.
    double radiusMm = sketch.numbered ? 2.4 : 1.4;
    for (std::size_t i = 0; i < sketch.grips.size(); ++i) {
        for (std::size_t j = 0; j < i; ++j) {
            const QPointF off = onPaper(sketch.grips[i].at) - onPaper(sketch.grips[j].at);
            radiusMm = std::min(radiusMm, std::max(0.6, 0.48 * std::hypot(off.x(), off.y())));
        }
    }
    const double radius = radiusMm * mmPerUnit;
    painter.setPen(outlinePen(style));
    painter.setBrush(style.ink.sheet);
    for (const GripLoad& grip : sketch.grips) {
        painter.drawEllipse(toView(grip.at), radius, radius);
    }
    painter.restore();
    Type type;
    type.sizeMm = kLabelType;
    type.align = Qt::AlignHCenter;
    if (sketch.numbered) {
        Type number = type;
        number.sizeMm = std::min(3.0, 1.25 * radiusMm);
        number.bold = true;
        Type kg = type;
        // On a narrow piece the figures would lie on the hands; the table has them.
        const auto crowded = [&](const QPointF& a) {
            return std::any_of(sketch.grips.begin(), sketch.grips.end(), [&](const GripLoad& other) {
                const QPointF b = onPaper(other.at);
                return std::abs(a.x() - b.x()) < 12.0 && std::abs(a.y() - b.y()) > 0.1 && std::abs(a.y() - b.y()) < 13.0;
            });
        };
        const bool figures = std::none_of(sketch.grips.begin(), sketch.grips.end(),
                                          [&](const GripLoad& grip) { return crowded(onPaper(grip.at)); });
        for (std::size_t i = 0; i < sketch.grips.size(); ++i) {
            const QPointF at = onPaper(sketch.grips[i].at);
            paintFitted(painter, QRectF(at.x() - 2.4, at.y() - 2.4, 4.8, 4.8), QString::number(i + 1), number);
            if (!figures) continue;
            // Inwards of the grip, so that it stays on the piece.
            const double down = at.y() < inner.center().y() ? 2.6 : -6.0;
            const double half = width / mmPerUnit / 2 - 6.0;
            const double x = half > 0.0 ? std::clamp(at.x(), inner.center().x() - half, inner.center().x() + half) : at.x();
            paintLines(painter, QRectF(x - 8.0, at.y() + down, 16.0, 3.4), {massText(sketch.grips[i].kg)}, kg);
        }
    }
    QString words = Sheets::tr("foot");
    if (counter) {
        words = sketch.grips.empty() ? Sheets::tr("front edge") : Sheets::tr("front edge (circles: grips)");
    }
    paintLines(painter, QRectF(box.left(), box.bottom() - 4.4, box.width(), 4.0), {words}, type);
}

std::vector<SheetPage> liftCardPages(const Plan& plan, const Assessment& assessment)
{
    const std::vector<Card> cards = cardsOf(plan, assessment);
    const QRectF area = contentBox(false, false);
    std::vector<SheetPage> pages;
    for (std::size_t from = 0; from < cards.size();) {
        std::vector<Card> shown;
        double used = 0.0;
        while (from < cards.size() && (shown.empty() || used + cardHeightMm(cards[from]) <= area.height())) {
            used += cardHeightMm(cards[from]) + kGapMm;
            shown.push_back(cards[from++]);
        }
        SheetPage page;
        page.sheet = sheetTitle(QStringLiteral("lift"));
        page.view = Sheets::tr("as it stands");
        page.paint = [shown](QPainter& painter, const QRectF& box) {
            double y = box.top();
            for (const Card& card : shown) {
                paintCard(painter, QRectF(box.left(), y, box.width(), cardHeightMm(card)), card);
                y += cardHeightMm(card) + kGapMm;
            }
        };
        pages.push_back(std::move(page));
    }
    return pages;
}

}  // namespace yardcast::ui
