#include <algorithm>
#include <cmath>

#include <QPainter>

#include "core/pour/batch_shares.h"
#include "ui/sheets/cautions.h"
#include "ui/sheets/list_pages.h"
#include "ui/sheets/sheet_frame.h"
#include "ui/sheets/sheet_page.h"
#include "ui/sheets/sheet_text.h"
#include "ui/sheets/sheet_words.h"
#include "ui/wording/figures.h"
#include "ui/wording/mix_names.h"

namespace yardcast::ui {

namespace {

constexpr double kNumberMm = 9.0;
constexpr double kMinutesMm = 24.0;
constexpr double kTickMm = 9.0;
constexpr double kHeadMm = 13.0;
constexpr double kMostRowMm = 11.0;
constexpr double kTrialMm = 47.0;
/// More boxes than this are no help at the mixer.
constexpr int kMostTicks = 51;
/// What the trial bucket is said to weigh at; most are sold so large or larger.
constexpr double kTrialBucketL = 10.0;

/// Everything one page says, so that it needs no plan when it is painted.
struct CardText {
    QString name;
    QString batches;
    QString needs;
    QString check;
    MixingCard card;
    double mostL = 0.0;     ///< what the mixer takes at once
    bool ticks = true;      ///< the pour is mixed in the very batches of the card
};

double ticksHeightMm(const MixingCard& card)
{
    const int boxes = std::min(card.count(), kMostTicks);
    return 6.0 + (kTickMm + 1.0) * std::ceil(boxes / 17.0);
}

/// One box a batch, numbered; those of another size say so.
void paintTicks(QPainter& painter, const QRectF& box, const MixingCard& card)
{
    Type type;
    type.sizeMm = kSmallType;
    const int all = card.count();
    QString heading = Sheets::tr("Tick each batch when it is in the mould");
    if (all > kMostTicks) {
        heading = Sheets::tr("Tick each batch when it is in the mould (the first %1 of %2)").arg(kMostTicks).arg(all);
    }
    paintLines(painter, QRectF(box.left(), box.top(), box.width(), 5.0), {heading}, type);
    const int perRow = static_cast<int>((box.width() + 1.0) / (kTickMm + 1.0));
    Type number;
    number.sizeMm = kLabelType;
    for (int i = 0; i < std::min(all, kMostTicks); ++i) {
        const QRectF tick(box.left() + (i % perRow) * (kTickMm + 1.0), box.top() + 5.5 + (i / perRow) * (kTickMm + 1.0),
                          kTickMm, kTickMm);
        painter.setPen(QPen(Qt::black, 0.35));
        painter.setBrush(Qt::NoBrush);
        painter.drawRect(tick);
        const bool last = i + 1 == all && card.odd.times > 0;
        const QString mark = last ? Sheets::tr("last") : QString::number(i + 1);
        paintLines(painter, tick.adjusted(0.6, 0.4, -0.3, 0.0), {mark}, number);
    }
}

struct Column {
    double left = 0.0;
    double width = 0.0;
    const BatchCard* batch = nullptr;
};

QString headOf(const MixingCard& card, const BatchCard& batch)
{
    const QString name = batchName(card, batch);
    const QString litres = volumeText(batch.litres);
    return batch.times == 1 ? Sheets::tr("%1\n%2", "batch, litres").arg(name, litres)
                            : Sheets::tr("%1 (%2 times)\n%3").arg(name).arg(batch.times).arg(litres);
}

void paintSteps(QPainter& painter, const QRectF& box, const MixingCard& card)
{
    std::vector<Column> columns;
    for (const BatchCard* batch : card.batches()) columns.push_back({0.0, 0.0, batch});
    if (columns.empty()) return;
    const double amountMm = columns.size() == 1 ? 66.0 : columns.size() == 2 ? 46.0 : 36.0;
    const double nameMm = box.width() - kNumberMm - kMinutesMm - amountMm * static_cast<double>(columns.size());
    for (std::size_t i = 0; i < columns.size(); ++i) {
        columns[i].left = box.left() + kNumberMm + nameMm + amountMm * static_cast<double>(i);
        columns[i].width = amountMm;
    }
    const double minutesLeft = box.right() - kMinutesMm;

    Type head;
    head.sizeMm = 3.4;
    head.bold = true;
    head.align = Qt::AlignRight;
    for (const Column& column : columns) {
        const QStringList lines =
            headOf(card, *column.batch).split(QLatin1Char('\n'));
        double y = box.top() + 1.0;
        for (const QString& line : lines) {
            paintLines(painter, QRectF(column.left, y, column.width - 2.0, 5.0), {line},
                       fittedType(line, column.width - 2.0, head));
            y += lineHeightMm(head);
        }
    }
    paintLines(painter, QRectF(minutesLeft, box.top() + 1.0, kMinutesMm - 1.5, 5.0), {Sheets::tr("then mix")}, head);
    painter.setPen(QPen(Qt::black, 0.5));
    painter.drawLine(QPointF(box.left(), box.top() + kHeadMm), QPointF(box.right(), box.top() + kHeadMm));

    const std::vector<CardStep>& steps = columns.front().batch->steps;
    const double count = std::max<double>(1.0, static_cast<double>(steps.size()));
    const double rowMm = std::min(kMostRowMm, (box.height() - kHeadMm) / count);
    Type name;
    name.sizeMm = std::min(4.6, 0.45 * rowMm);
    Type amount;
    amount.sizeMm = std::min(5.6, 0.55 * rowMm);
    amount.bold = true;
    amount.align = Qt::AlignRight;
    Type plain = amount;
    plain.bold = false;
    plain.sizeMm = name.sizeMm;
    for (std::size_t i = 0; i < steps.size(); ++i) {
        const QRectF row(box.left(), box.top() + kHeadMm + rowMm * static_cast<double>(i), box.width(), rowMm);
        painter.setPen(QPen(QColor("#8C8C8C"), 0.2));
        painter.drawLine(row.bottomLeft(), row.bottomRight());
        paintFitted(painter, QRectF(row.left() + 1.0, row.top(), kNumberMm - 1.0, rowMm), QString::number(i + 1), name);
        paintFitted(painter, QRectF(row.left() + kNumberMm, row.top(), nameMm - 1.0, rowMm),
                    stepName(steps[i], card.perBag), name);
        for (const Column& column : columns) {
            if (i >= column.batch->steps.size()) continue;
            const CardStep& step = column.batch->steps[i];
            const QString text = step.belowScale ? Sheets::tr("%1 *").arg(stepAmountText(step)) : stepAmountText(step);
            paintFitted(painter, QRectF(column.left + 1.0, row.top(), column.width - 3.0, rowMm), text, amount);
        }
        if (steps[i].mixMinutes > 0.0) {
            paintFitted(painter, QRectF(minutesLeft + 1.0, row.top(), kMinutesMm - 2.5, rowMm),
                        Sheets::tr("%1 min").arg(shortNumberText(steps[i].mixMinutes)), plain);
        }
    }
}

double stepsHeightMm(const MixingCard& card, double roomMm)
{
    double rows = 0.0;
    for (const BatchCard* batch : card.batches()) rows = std::max(rows, static_cast<double>(batch->steps.size()));
    return std::min(kHeadMm + kMostRowMm * rows, roomMm);
}

/// "Bucket holds ______ l", to be filled in by hand.
void paintBlank(QPainter& painter, const QRectF& box, const QString& before, const QString& unit)
{
    Type type;
    type.sizeMm = 3.6;
    constexpr double kLineMm = 24.0;
    const double unitMm = 12.0;
    paintFitted(painter, QRectF(box.left(), box.top(), box.width() - kLineMm - unitMm, box.height()), before, type);
    const double x = box.right() - kLineMm - unitMm;
    painter.setPen(QPen(Qt::black, 0.3));
    painter.drawLine(QPointF(x, box.bottom() - 1.2), QPointF(x + kLineMm, box.bottom() - 1.2));
    paintFitted(painter, QRectF(x + kLineMm + 1.0, box.top(), unitMm - 1.0, box.height()), unit, type);
}

void paintTrial(QPainter& painter, const QRectF& box, const MixingCard& card)
{
    painter.setPen(QPen(Qt::black, 0.35));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(box);
    const QRectF inner = box.adjusted(2.5, 1.5, -2.5, -1.0);
    Type title;
    title.sizeMm = 4.0;
    title.bold = true;
    paintLines(painter, inner, {Sheets::tr("Trial batch: weigh the first full bucket")}, title);
    const double top = inner.top() + 7.0;
    const double half = inner.width() / 2 - 3.0;
    const double lineMm = 7.6;
    const auto blank = [&](int row, bool right, const QString& before, const QString& unit) {
        const double left = right ? inner.right() - half : inner.left();
        paintBlank(painter, QRectF(left, top + row * lineMm, half, lineMm), before, unit);
    };
    blank(0, false, Sheets::tr("Bucket, level full, holds"), Sheets::tr("l"));
    blank(0, true, Sheets::tr("Full, it weighs"), Sheets::tr("kg"));
    blank(1, false, card.perBag ? Sheets::tr("Tap water, for a bag") : Sheets::tr("Tap water, for a m³"),
          Sheets::tr("l"));
    blank(1, true, Sheets::tr("Empty, it weighs"), Sheets::tr("kg"));
    blank(2, true, Sheets::tr("Concrete in it"), Sheets::tr("kg"));
    const double kgL = card.plannedDensityKgM3 / 1000;
    Type type;
    type.sizeMm = 3.4;
    const QString words =
        Sheets::tr("As planned, %1 l of it weigh %2 kg. Less than %3 kg: too much water, or air. Measure the water "
                   "again before any of it goes into a mould. Then type in what you weighed: bags and doses follow.")
            .arg(shortNumberText(kTrialBucketL), numberText(kgL * kTrialBucketL, 1),
                 numberText(kgL * kTrialBucketL * (1 - kDensityTolerance), 1));
    paintWrapped(painter, QRectF(inner.left(), top + 3 * lineMm + 1.0, inner.width(), 15.0), words, type);
}

QStringList closingWords(const CardText& text)
{
    const MixingCard& card = text.card;
    QStringList words;
    if (const QString shared = sharedBatchesText(card); !shared.isEmpty()) words << shared;
    if (card.count() == 1 && card.odd.litres < kLeastBatchShare * text.mostL && !card.byHand && card.odd.times > 0) {
        words << Sheets::tr("All of it is less than a third of what the mixer takes: mix it by hand in a tub.");
    }
    words << waterText(card);
    const auto scoops = [](const BatchCard* batch) {
        return std::any_of(batch->steps.begin(), batch->steps.end(), [](const CardStep& s) { return s.belowScale; });
    };
    const std::vector<const BatchCard*> made = card.batches();
    if (std::any_of(made.begin(), made.end(), scoops)) {
        words << Sheets::tr("* Too little for a scale that reads to 1 g: weigh it for several batches at once and "
                            "divide it.");
    }
    words << Sheets::tr("Order and minutes: common practice, no source. Keep the last water back until the mix has "
                        "turned; never add water by feel.");
    return words + materialCautions();
}

/// What the weighed bucket says; empty where it is as it should be.
QString tooWetText(const MixingCard& card)
{
    if (!(card.extraWaterL > 0.0)) return {};
    const QString words =
        card.perBag ? Sheets::tr("The trial batch is too wet: do not pour it. Mix again with %1 from the tap for a bag, measured: "
                                 "%2 less than is in it.")
                    : Sheets::tr("The trial batch is too wet: do not pour it. Mix again with %1 from the tap for a cubic metre, "
                                 "measured: %2 less than is in it.");
    return words.arg(measuredText(card.charge.waterL), measuredText(card.extraWaterL));
}

void paintCard(QPainter& painter, const QRectF& area, const CardText& text)
{
    const QRectF box = area.adjusted(2.5, 0.0, -2.5, 0.0);
    const MixingCard& card = text.card;
    double y = box.top() + 1.0;
    Type title;
    title.sizeMm = kBigType;
    title.bold = true;
    paintFitted(painter, QRectF(box.left(), y, box.width(), 10.5), text.name, title);
    y += 11.5;
    Type type;
    type.sizeMm = 4.2;
    if (const QString wet = tooWetText(card); !wet.isEmpty()) {
        Type warning;
        warning.sizeMm = 5.0;
        warning.bold = true;
        y += paintWrapped(painter, QRectF(box.left(), y, box.width(), 0.0), wet, warning) + 1.0;
    }
    for (const QString& line : {text.batches, text.needs, text.check}) {
        if (!line.isEmpty()) y += paintWrapped(painter, QRectF(box.left(), y, box.width(), 0.0), line, type) + 0.6;
        type.sizeMm = 3.6;
    }
    y += 1.5;
    if (text.ticks) {
        const double ticksMm = ticksHeightMm(card);
        paintTicks(painter, QRectF(box.left(), y, box.width(), ticksMm), card);
        y += ticksMm + 1.5;
    }
    const QStringList words = closingWords(text);
    const double wordsMm = sentencesHeightMm(words, box.width());
    const double stepsMm = stepsHeightMm(card, box.bottom() - y - kTrialMm - wordsMm - 5.0);
    paintSteps(painter, QRectF(box.left(), y, box.width(), stepsMm), card);
    y += stepsMm + 2.5;
    paintTrial(painter, QRectF(box.left(), y, box.width(), kTrialMm), card);
    y += kTrialMm + 2.0;
    paintSentences(painter, QRectF(box.left(), y, box.width(), wordsMm), words);
}

QString needsText(const MixQuantities& quantities)
{
    if (!quantities.perBag) {
        return Sheets::tr("%1 in all: %2 of cement, %3 of sand, %4 of gravel as they lie.")
            .arg(volumeText(quantities.volumeL), massText(quantities.cementKg), massText(quantities.sandKg),
                 massText(quantities.gravelKg));
    }
    const QString spread = spreadText(quantities);
    if (quantities.spareBags == 0) return Sheets::tr("%1 in all. %2.").arg(volumeText(quantities.volumeL), spread);
    return Sheets::tr("%1 in all. %2; %3 more, kept sealed, for a low yield.")
        .arg(volumeText(quantities.volumeL), spread, bagsText(quantities.spareBags));
}

QString checkText(const MixingCard& card)
{
    const Ratios& ratios = card.check.ratios;
    QString text = Sheets::tr("Water to cement %1").arg(numberText(ratios.waterCement, 2));
    if (ratios.kValue > 0.0) text += Sheets::tr(", with silica fume %1").arg(numberText(ratios.waterBinderK, 2));
    if (card.extraWaterL > 0.0) text += Sheets::tr(" by the trial batch");
    const QString missed = missedText(card.check);
    return missed.isEmpty() ? text + Sheets::tr(".") : text + Sheets::tr(". Not met: %1.").arg(missed);
}

/// Batches of the pour plan that the card has not: a day, or a wait for a mould, ends with them.
struct OtherBatch {
    double litres = 0.0;
    QStringList when;
};

std::vector<OtherBatch> otherBatches(const PourPlan& pour, const MixingCard& card)
{
    constexpr double kSameL = 0.05;
    std::vector<OtherBatch> others;
    std::vector<double> rests;  // of the card, each met once
    for (const BatchCard* batch : card.batches()) {
        if (batch != &card.full) rests.push_back(batch->litres);
    }
    int calendarDay = 1;
    for (const PourDay& day : pour.days) {
        calendarDay += day.afterDays;
        for (const PourBatch& batch : day.mixed) {
            if (batch.mix != card.mix) continue;
            const auto same = [&](double litres) { return std::abs(batch.litres - litres) < kSameL; };
            if (card.full.times > 0 && same(card.full.litres)) continue;
            if (const auto rest = std::find_if(rests.begin(), rests.end(), same); rest != rests.end()) {
                rests.erase(rest);
                continue;
            }
            const auto known = std::find_if(others.begin(), others.end(), [&](const OtherBatch& other) {
                return std::abs(other.litres - batch.litres) < kSameL;
            });
            OtherBatch& other = known == others.end() ? others.emplace_back() : *known;
            other.litres = batch.litres;
            other.when << Sheets::tr("day %1 no. %2").arg(calendarDay).arg(batch.number);
        }
    }
    return others;
}

/// What goes into each of them, a row a batch.
ListBlock otherBlock(const Plan& plan, const MixQuantities& quantities, const MixingCard& card,
                     const std::vector<OtherBatch>& others)
{
    ListBlock block;
    block.title = Sheets::tr("Mix %1: batches that are not full ones").arg(QString::fromStdString(card.mix));
    block.table.columns = {{Sheets::tr("Batch"), 30.0, false}, {Sheets::tr("litres"), 14.0, true}};
    for (const OtherBatch& other : others) {
        const BatchCard batch = batchOfLitres(plan, quantities, other.litres);
        SheetRow row;
        row.cells = {other.when.join(QStringLiteral(", ")), numberText(other.litres, 1)};
        for (const CardStep& step : batch.steps) {
            if (block.table.rows.empty()) {
                // Amounts in two measures are broken, the others stay on their line.
                const bool oneMeasure = step.what != Ingredient::dryMix && step.what != Ingredient::cement &&
                                        step.what != Ingredient::plasticiser;
                block.table.columns.push_back({stepName(step, card.perBag), 19.0, oneMeasure});
            }
            row.cells << stepAmountText(step);
        }
        block.table.rows.push_back(std::move(row));
    }
    return block;
}

}  // namespace

std::vector<SheetPage> mixPages(const Plan& plan, const Assessment& assessment)
{
    SheetPage like;
    like.sheet = sheetTitle(QStringLiteral("mix"));
    std::vector<SheetPage> pages;
    for (const MixingCard& card : assessment.cards) {
        const auto quantities = std::find_if(assessment.mixes.begin(), assessment.mixes.end(),
                                             [&](const MixQuantities& one) { return one.mix == card.mix; });
        if (quantities == assessment.mixes.end()) continue;
        CardText text{Sheets::tr("Mix %1").arg(QString::fromStdString(card.mix)),
                      card.byHand ? Sheets::tr("By hand in a tub: %1").arg(batchesText(card))
                                  : Sheets::tr("In the mixer: %1").arg(batchesText(card)),
                      needsText(*quantities), checkText(card), card};
        text.mostL = bagsInBatch(*quantities) * quantities->litresPerBag;
        const std::vector<OtherBatch> others = otherBatches(assessment.pour, card);
        if (!others.empty()) {
            text.ticks = false;
            text.batches = Sheets::tr("Mixed in one go: %1. The pour plan ends days and waits with others: next page.")
                               .arg(batchesText(card));
        }
        SheetPage page = like;
        page.part = QString::fromStdString(card.mix);
        page.paint = [text = std::move(text)](QPainter& painter, const QRectF& box) { paintCard(painter, box, text); };
        pages.push_back(std::move(page));
        if (others.empty()) continue;
        SheetPage list = like;
        list.part = QString::fromStdString(card.mix);
        const QStringList words{Sheets::tr("Other batches are those of the card; which batch comes when, the sheets of the "
                                           "pour day say. Order, mixing and cautions as on the card.")};
        for (SheetPage& made : listPages(list, {otherBlock(plan, *quantities, card, others)}, words)) {
            pages.push_back(std::move(made));
        }
    }
    if (pages.empty()) {
        pages.push_back(wordsPage(like, Sheets::tr("Nothing to mix yet: the plan has no castings with a mix.")));
    }
    return pages;
}

}  // namespace yardcast::ui
