#include <algorithm>
#include <cmath>

#include <QPainter>

#include "ui/sheets/cautions.h"
#include "ui/sheets/lift_cards.h"
#include "ui/sheets/sheet_frame.h"
#include "ui/sheets/sheet_page.h"
#include "ui/sheets/sheet_text.h"
#include "ui/sheets/sheet_words.h"
#include "ui/wording/figures.h"
#include "ui/wording/names.h"

namespace yardcast::ui {

namespace {

constexpr double kRowMm = 30.0;
constexpr double kSketchMm = 50.0;
constexpr double kPieceMm = 50.0;
constexpr double kMassMm = 30.0;
constexpr double kHeadMm = 8.0;

enum class Verdict { within, over, farOver };

Verdict verdictOf(const CastingLift& lift)
{
    if (lift.massKg <= lift.limitKg) {
        return Verdict::within;
    }
    return lift.massKg > 2.0 * lift.limitKg ? Verdict::farOver : Verdict::over;
}

/// A triangle for a caution, a barred square for a stop: told apart without colour.
void paintSign(QPainter& painter, const QRectF& box, Verdict verdict)
{
    if (verdict == Verdict::within) {
        return;
    }
    painter.setPen(QPen(Qt::black, 0.5));
    painter.setBrush(Qt::NoBrush);
    if (verdict == Verdict::over) {
        painter.drawPolygon(QPolygonF{QPointF(box.center().x(), box.top()), box.bottomRight(), box.bottomLeft()});
        Type type;
        type.bold = true;
        type.sizeMm = 0.75 * box.height();
        type.align = Qt::AlignHCenter;
        paintLines(painter, box.adjusted(0.0, 0.12 * box.height(), 0.0, 0.0), {QStringLiteral("!")}, type);
    } else {
        painter.drawRect(box);
        painter.fillRect(QRectF(box.left() + 0.15 * box.width(), box.center().y() - 0.1 * box.height(),
                                0.7 * box.width(), 0.2 * box.height()),
                         Qt::black);
    }
}

QString peopleText(const CastingLift& lift)
{
    if (lift.people == 0) {
        return Sheets::tr("Guideline: not by hand, more than %1 people").arg(kMostPeople);
    }
    return lift.people == 1 ? Sheets::tr("Guideline: 1 person") : Sheets::tr("Guideline: %1 people").arg(lift.people);
}

QString crewText(const CastingLift& lift)
{
    return lift.crewPeople == 1 ? Sheets::tr("Your crew: 1 person lifts %1").arg(massText(lift.limitKg))
                                : Sheets::tr("Your crew: %1 people lift %2")
                                      .arg(lift.crewPeople)
                                      .arg(massText(lift.limitKg));
}

QString verdictText(Verdict verdict)
{
    switch (verdict) {
    case Verdict::within:
        return Sheets::tr("within the guideline");
    case Verdict::over:
        return Sheets::tr("TOO HEAVY for your crew by the guideline");
    case Verdict::farOver:
        break;
    }
    return Sheets::tr("MORE THAN TWICE what your crew lifts: not by hand");
}

QString centreText(const Casting& casting)
{
    const auto figure = [](double mm) { return lengthText(std::round(mm)); };
    const Box& box = casting.boundsMm;
    if (casting.kind == PartKind::counter) {
        return Sheets::tr("Centre of gravity: %1 from the left end, %2 from the front edge")
            .arg(figure(casting.centroidMm[0] - box.low.x), figure(casting.centroidMm[1] - box.low.y));
    }
    return Sheets::tr("Centre of gravity: %1 from the left end, half way up")
        .arg(figure(casting.centroidMm[0] - box.low.x));
}

/// One row of the list: a piece, or several uprights that are alike.
struct LiftRow {
    CastingPtr casting;
    CastingLift lift;
    LiftSketch sketch;
    QStringList ids;
    QString name;
};

std::vector<LiftRow> rowsOf(const Plan& plan, const Assessment& assessment)
{
    std::vector<LiftRow> rows;
    for (const CastingLift& lift : assessment.handling) {
        const auto found = std::find_if(
            assessment.castings.begin(), assessment.castings.end(),
            [&](const PlacedCasting& one) { return one.casting && one.casting->id == lift.casting; });
        if (found == assessment.castings.end()) {
            continue;
        }
        const QString id = QString::fromStdString(lift.casting);
        const auto twin = std::find_if(rows.begin(), rows.end(),
                                       [&](const LiftRow& row) { return areAlikeUprights(*row.casting, *found->casting); });
        if (twin == rows.end()) {
            rows.push_back({found->casting, lift, liftSketch(assessment, lift, false), {id}, subjectName(&plan, lift.casting)});
        } else {
            twin->ids << id;
            twin->name = Sheets::tr("%1: %2 alike").arg(twin->ids.join(QStringLiteral(", "))).arg(twin->ids.size());
        }
    }
    return rows;
}

void paintRow(QPainter& painter, const QRectF& row, const LiftRow& entry)
{
    const Casting& casting = *entry.casting;
    const CastingLift& lift = entry.lift;
    painter.setPen(QPen(QColor("#8C8C8C"), 0.2));
    painter.drawLine(row.bottomLeft(), row.bottomRight());
    paintLiftSketch(painter, QRectF(row.left(), row.top(), kSketchMm, row.height()), casting, entry.sketch);

    const QRectF piece(row.left() + kSketchMm + 1.0, row.top() + 2.0, kPieceMm - 2.0, row.height() - 4.0);
    Type name;
    name.bold = true;
    name.sizeMm = 4.2;
    const QRectF nameBox(piece.left(), piece.top(), piece.width(), 12.5);
    paintName(painter, nameBox, entry.name, name);
    Type small;
    small.sizeMm = kSmallType;
    paintWrapped(painter, piece.adjusted(0.0, 13.5, 0.0, 0.0), centreText(casting), small);

    Type mass;
    mass.sizeMm = kBigType;
    mass.bold = true;
    mass.align = Qt::AlignHCenter;
    paintFitted(painter, QRectF(row.left() + kSketchMm + kPieceMm, row.top(), kMassMm - 2.0, row.height()),
                massText(lift.massKg), mass);
    if (entry.ids.size() > 1) {
        Type each;
        each.sizeMm = kSmallType;
        each.align = Qt::AlignHCenter;
        paintLines(painter,
                   QRectF(row.left() + kSketchMm + kPieceMm, row.center().y() + 5.0, kMassMm - 2.0, 5.0),
                   {Sheets::tr("each")}, each);
    }

    const Verdict verdict = verdictOf(lift);
    const double left = row.left() + kSketchMm + kPieceMm + kMassMm;
    QRectF who(left, row.top() + 1.5, row.right() - left - 1.5, row.height());
    Type body;
    body.sizeMm = 3.6;
    who.adjust(0.0, paintWrapped(painter, who, peopleText(lift), body) + 1.0, 0.0, 0.0);
    paintLines(painter, who, {crewText(lift)}, fittedType(crewText(lift), who.width(), body));
    who.adjust(0.0, lineHeightMm(body) + 1.0, 0.0, 0.0);
    body.bold = verdict != Verdict::within;
    if (verdict != Verdict::within) {
        paintSign(painter, QRectF(who.left(), who.top(), 6.0, 6.0), verdict);
        who.adjust(7.5, 0.0, 0.0, 0.0);
    }
    body.sizeMm = 3.3;
    paintWrapped(painter, who, verdictText(verdict), body);
}

void paintHead(QPainter& painter, const QRectF& box)
{
    Type type;
    type.sizeMm = 3.2;
    const auto head = [&](double x, double width, const QString& text) {
        paintFitted(painter, QRectF(box.left() + x + 1.0, box.top(), width - 2.0, box.height()), text, type);
    };
    head(0.0, kSketchMm, Sheets::tr("As it stands, not to scale"));
    head(kSketchMm, kPieceMm, Sheets::tr("Piece"));
    type.align = Qt::AlignHCenter;
    head(kSketchMm + kPieceMm, kMassMm, Sheets::tr("Mass"));
    type.align = Qt::AlignLeft;
    head(kSketchMm + kPieceMm + kMassMm, box.width() - kSketchMm - kPieceMm - kMassMm, Sheets::tr("Who can lift it"));
    painter.setPen(QPen(Qt::black, 0.5));
    painter.drawLine(box.bottomLeft(), box.bottomRight());
}

QStringList closingWords(const Plan& plan, const Assessment& assessment)
{
    double sum = 0.0;
    for (const CastingLift& lift : assessment.handling) {
        sum += lift.massKg;
    }
    QStringList words{
        assessment.handling.size() == 1
            ? Sheets::tr("1 piece, %1.").arg(massText(sum))
            : Sheets::tr("%1 pieces, %2 in all.").arg(assessment.handling.size()).arg(massText(sum)),
        Sheets::tr("Guideline: %1 each, as the plan says; two people lift two thirds of the sum, three one half "
                   "(HSE L23). For four and more no factor is published: one half is kept, a judgement. It holds on"
                   " level ground, close to the body, now and then.")
            .arg(massText(plan.crew.liftLimitKg))};
    return words + liftingCautions();
}

double wordsHeight(const QStringList& words, double width, const Type& type)
{
    double height = 3.0;
    for (const QString& sentence : words) {
        height += lineHeightMm(type) * static_cast<double>(wrapped(sentence, width, type).size()) + 1.2;
    }
    return height;
}

}  // namespace

std::vector<SheetPage> liftPages(const Plan& plan, const Assessment& assessment)
{
    const std::vector<LiftRow> entries = rowsOf(plan, assessment);
    const QRectF area = contentBox(false, false);
    Type type;
    type.sizeMm = 3.4;
    const QStringList words =
        entries.empty() ? QStringList{Sheets::tr("Nothing to lift yet: the plan has no castings.")}
                        : closingWords(plan, assessment);
    const double wordsMm = wordsHeight(words, area.width() - 4.0, type);

    std::vector<std::vector<LiftRow>> filled(1);
    double used = kHeadMm;
    for (const LiftRow& entry : entries) {
        if (used + kRowMm > area.height()) {
            filled.emplace_back();
            used = kHeadMm;
        }
        filled.back().push_back(entry);
        used += kRowMm;
    }
    if (used + wordsMm > area.height()) {
        filled.emplace_back();
    }
    std::vector<SheetPage> pages;
    for (std::size_t i = 0; i < filled.size(); ++i) {
        SheetPage page;
        page.sheet = sheetTitle(QStringLiteral("lift"));
        const bool last = i + 1 == filled.size();
        page.paint = [rows = filled[i], last, words, type](QPainter& painter, const QRectF& box) {
            double y = box.top();
            if (!rows.empty()) {
                paintHead(painter, QRectF(box.left(), y, box.width(), kHeadMm));
                y += kHeadMm;
            }
            for (const LiftRow& entry : rows) {
                paintRow(painter, QRectF(box.left(), y, box.width(), kRowMm), entry);
                y += kRowMm;
            }
            if (!last) {
                return;
            }
            y += 2.0;
            for (const QString& sentence : words) {
                y += paintWrapped(painter, QRectF(box.left() + 2.0, y, box.width() - 4.0, 0.0), sentence, type) + 1.2;
            }
        };
        pages.push_back(std::move(page));
    }
    for (SheetPage& page : liftCardPages(plan, assessment)) {
        pages.push_back(std::move(page));
    }
    return pages;
}

}  // namespace yardcast::ui
