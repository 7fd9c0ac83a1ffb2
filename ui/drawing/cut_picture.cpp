#include "ui/drawing/cut_picture.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

#include <QCoreApplication>
#include <QPainter>

#include "core/cutting/sheet_parts.h"
#include "ui/drawing/marks.h"
#include "ui/wording/figures.h"

namespace yardcast::ui {

namespace {

constexpr double kHatchDeg = 45.0;
/// Of the usual size of labels, from the largest to the least that can be read.
constexpr std::array kTypeShares{1.0, 0.84, 0.7, 0.6};

QString tr(const char* text) { return QCoreApplication::translate("CutPicture", text); }

QString whole(double mm) { return shortNumberText(mm, 1); }

QString sizeWords(Size size) { return tr("%1 × %2").arg(whole(size.width), whole(size.depth)); }

/// The tone of what is cut.
QColor toneOf(const std::string& item, const PaintStyle& style)
{
    if (item.rfind("foam", 0) == 0) return style.ink.foam;
    if (item.rfind("mesh", 0) == 0 || item.rfind("bar", 0) == 0 || item.rfind("steel", 0) == 0) return style.ink.cast;
    return style.ink.timber;
}

double lineMm(const PaintStyle& style) { return 1.25 * labelUnits(style) * style.mmPerUnit; }

/// Text in a box: the fullest that fits, upright or along the box, smaller where it must. Nothing where even the last finds
/// no room. Gives what it covers.
QRectF paintInside(QPainter& painter, const QRectF& box, const QStringList& texts, const PaintStyle& style,
                   const QColor& behind = {})
{
    const double pad = 0.6 * style.narrow() + (style.onPaper ? 0.25 : 2.0) * style.mmPerUnit;
    const QRectF room = box.adjusted(pad, pad, -pad, -pad);
    for (const QString& text : texts) {
        for (const double share : kTypeShares) {
            TextLook look;
            look.sizeUnits = share * labelUnits(style);
            look.behind = behind;
            const QSizeF size = textSizeMm(text, style, look);
            const bool along = size.width() <= room.width() && size.height() <= room.height();
            const bool upright = size.height() <= room.width() && size.width() <= room.height();
            if (!along && !upright) continue;
            if (!along) look.angleDeg = -90.0;
            return paintText(painter, box.center(), text, style, look).boundingRect();
        }
    }
    return {};
}

class SheetPicture {
public:
    SheetPicture(QPainter& painter, const SheetJob& job, const CutSheet& sheet, const PaintStyle& style)
        : p_(painter), job_(job), sheet_(sheet), style_(style),
          size_(job.list.stock[static_cast<std::size_t>(sheet.stock)].size), tone_(toneOf(job.item, style))
    {
    }

    void paint()
    {
        p_.save();
        paintPieces();
        paintRemainders();
        paintCuts();
        p_.setBrush(Qt::NoBrush);
        p_.setPen(outlinePen(style_));
        p_.drawRect(QRectF(0.0, 0.0, size_.width, size_.depth));
        paintWords();
        paintMeasures();
        p_.restore();
    }

private:
    /// From mm above the low corner to mm below the top.
    QRectF boxOf(Point at, Size size) const
    {
        return {at.x, size_.depth - at.y - size.depth, size.width, size.depth};
    }

    void paintPieces()
    {
        p_.setPen(Qt::NoPen);
        p_.setBrush(style_.ink.sheet);
        p_.drawRect(QRectF(0.0, 0.0, size_.width, size_.depth));
        const bool isFoam = job_.item.rfind("foam", 0) == 0;
        for (const PlacedPiece& piece : sheet_.pieces) {
            QPainterPath path;
            path.addRect(boxOf(piece.at, piece.size));
            if (isFoam) {
                fillFoam(p_, path, style_);
            } else {
                p_.fillPath(path, tone_);
            }
        }
    }

    void paintRemainders()
    {
        p_.setPen(thinPen(style_, style_.ink.pencil));
        for (const SheetArea& rest : sheet_.remainders) {
            QPainterPath path;
            path.addRect(boxOf(rest.at, rest.size));
            for (const QLineF& line : hatchLines(path, kHatchDeg, 0.9 * lineMm(style_))) {
                p_.drawLine(line);
            }
        }
    }

    /// In the middle of what the saw takes.
    QLineF lineOf(const SawnStep& step) const
    {
        const QRectF lost = boxOf(step.lost.at, step.lost.size);
        return step.run == SawRun::alongY ? QLineF(lost.center().x(), lost.bottom(), lost.center().x(), lost.top())
                                          : QLineF(lost.left(), lost.center().y(), lost.right(), lost.center().y());
    }

    void paintCuts()
    {
        steps_ = sawnSteps(size_, sheet_);
        for (const SawnStep& step : steps_) {
            p_.setPen(step.atHome ? hiddenPen(style_, style_.ink.ink)
                                  : style_.pen(style_.ink.ink, style_.onPaper ? 0.35 : 1.5));
            p_.drawLine(lineOf(step));
        }
    }

    void paintWords()
    {
        for (const PlacedPiece& piece : sheet_.pieces) {
            const QString name = QString::fromStdString(job_.pieces[static_cast<std::size_t>(piece.piece)].name);
            const QString size = sizeWords(piece.size);
            const QRectF box = boxOf(piece.at, piece.size);
            const QStringList texts{tr("%1\n%2").arg(name, size), tr("%1  %2").arg(name, size), name};
            taken_.push_back(paintInside(p_, box, texts, style_));
        }
        for (const SheetArea& rest : sheet_.remainders) {
            const QString size = sizeWords(rest.size);
            taken_.push_back(paintInside(p_, boxOf(rest.at, rest.size), {tr("left over\n%1").arg(size), size}, style_,
                                         style_.ink.sheet));
        }
        int number = 0;
        for (const SawnStep& step : steps_) {
            paintNumber(++number, step);
        }
    }

    /// Beside the sheet where the cut runs right through it, else on the cut where most is free.
    void paintNumber(int number, const SawnStep& step)
    {
        TextLook look;
        look.sizeUnits = 0.75 * labelUnits(style_);
        const QString text = QString::number(number);
        const QSizeF size = textSizeMm(text, style_, look);
        const double radius = 0.55 * std::hypot(size.height() * 0.62, size.width());
        const QLineF line = lineOf(step);
        std::vector<QPointF> places;
        const QPointF along = line.length() > 0.0 ? (line.p2() - line.p1()) / line.length() : QPointF();
        if (line.y2() < 0.5 && step.run == SawRun::alongY) places.push_back(line.p2() + along * (1.15 * radius));
        if (line.x2() > size_.width - 0.5 && step.run == SawRun::alongX) {
            places.push_back(line.p2() + along * (1.15 * radius));
        }
        for (const double share : {0.94, 0.06, 0.8, 0.2, 0.66, 0.34, 0.5}) {
            const double at = std::clamp(share * line.length(), std::min(1.1 * radius, 0.5 * line.length()),
                                         std::max(line.length() - 1.1 * radius, 0.5 * line.length()));
            places.push_back(line.p1() + along * at);
        }
        QRectF best;
        double leastCovered = -1.0;
        for (const QPointF& place : places) {
            const QRectF box(place.x() - radius, place.y() - radius, 2.0 * radius, 2.0 * radius);
            double covered = 0.0;
            for (const QRectF& other : taken_) {
                const QRectF both = box & other;
                covered += both.width() * both.height();
            }
            if (leastCovered < 0.0 || covered < leastCovered) {
                leastCovered = covered;
                best = box;
            }
            if (covered <= 0.0) break;
        }
        // On the screen a number that covers a name is worth less than the name; the table has both.
        if (leastCovered > 0.0 && !style_.onPaper) return;
        taken_.push_back(best);
        p_.setPen(thinPen(style_, style_.ink.ink));
        p_.setBrush(style_.ink.sheet);
        p_.drawEllipse(best);
        p_.setBrush(Qt::NoBrush);
        paintText(p_, best.center(), text, style_, look);
    }

    void paintMeasures()
    {
        const double away = 0.75 * lineMm(style_);
        paintText(p_, {0.5 * size_.width, size_.depth + away}, lengthText(size_.width), style_);
        TextLook turned;
        turned.angleDeg = -90.0;
        paintText(p_, {-away, 0.5 * size_.depth}, lengthText(size_.depth), style_, turned);
    }

    QPainter& p_;
    const SheetJob& job_;
    const CutSheet& sheet_;
    const PaintStyle& style_;
    Size size_;
    QColor tone_;
    std::vector<SawnStep> steps_;
    std::vector<QRectF> taken_;
};

/// Rows of lengths, from the top.
struct BarRows {
    double rowMm = 0.0;
    double gapMm = 0.0;
    double leftMm = 0.0;    ///< room for "3 ×" before the rows
    double longest = 0.0;
};

BarRows rowsOf(const BarJob& job, const BarPlan& plan, const PaintStyle& style)
{
    BarRows rows;
    rows.rowMm = 1.5 * lineMm(style);
    rows.gapMm = 0.5 * lineMm(style);
    rows.leftMm = textSizeMm(QStringLiteral("000 ×"), style).width();
    for (const BarPattern& pattern : plan.patterns) {
        rows.longest = std::max(rows.longest, job.list.stock[static_cast<std::size_t>(pattern.stock)].lengthMm);
    }
    return rows;
}

void paintBar(QPainter& painter, const BarJob& job, const BarPattern& pattern, double top, double height,
              const PaintStyle& style)
{
    const double length = job.list.stock[static_cast<std::size_t>(pattern.stock)].lengthMm;
    const QRectF bar(0.0, top, length, height);
    painter.setPen(Qt::NoPen);
    painter.setBrush(style.ink.sheet);
    painter.drawRect(bar);
    double x = job.list.trimMm;
    const QColor tone = toneOf(job.item, style);
    for (const int index : pattern.pieces) {
        const BarPiece& piece = job.list.pieces[static_cast<std::size_t>(index)];
        const QRectF box(x, top, piece.lengthMm, height);
        painter.setPen(style.pen(style.ink.ink, style.onPaper ? 0.35 : 1.5));
        painter.setBrush(tone);
        painter.drawRect(box);
        painter.setBrush(Qt::NoBrush);
        const QString name = QString::fromStdString(job.pieces[static_cast<std::size_t>(index)].name);
        const QString size = whole(piece.lengthMm);
        paintInside(painter, box, {tr("%1  %2").arg(name, size), name, size}, style);
        x += piece.lengthMm + job.list.sawMm;
    }
    const QRectF rest(QPointF(std::min(x, length), top), QPointF(length, top + height));
    if (pattern.remainderMm > 0.0 && rest.width() > 0.0) {
        QPainterPath path;
        path.addRect(rest);
        painter.setPen(thinPen(style, style.ink.pencil));
        for (const QLineF& line : hatchLines(path, kHatchDeg, 0.7 * lineMm(style))) {
            painter.drawLine(line);
        }
        const QString size = whole(pattern.remainderMm);
        paintInside(painter, rest, {tr("left %1").arg(size), size}, style, style.ink.sheet);
    }
    painter.setBrush(Qt::NoBrush);
    painter.setPen(outlinePen(style));
    painter.drawRect(bar);
}

}  // namespace

double cutPictureScale(const std::function<QRectF(const PaintStyle&)>& bounds, PaintStyle style, QSizeF roomUnits)
{
    double scale = 1.0;
    for (int turn = 0; turn < 12; ++turn) {
        style.mmPerUnit = scale;
        const QRectF box = bounds(style);
        scale = std::max(box.width() / std::max(1.0, roomUnits.width()), box.height() / std::max(1.0, roomUnits.height()));
        if (std::abs(scale - style.mmPerUnit) < 1e-4 * scale) break;
    }
    return scale;
}

QRectF cutSheetBounds(const SheetJob& job, const CutSheet& sheet, const PaintStyle& style)
{
    const Size size = job.list.stock[static_cast<std::size_t>(sheet.stock)].size;
    const double away = 1.5 * lineMm(style);
    return QRectF(0.0, 0.0, size.width, size.depth).adjusted(-away, -away, away, away);
}

void paintCutSheet(QPainter& painter, const SheetJob& job, const CutSheet& sheet, const PaintStyle& style)
{
    SheetPicture(painter, job, sheet, style).paint();
}

QRectF cutBarsBounds(const BarJob& job, const BarPlan& plan, const PaintStyle& style)
{
    const BarRows rows = rowsOf(job, plan, style);
    const double height = (rows.rowMm + rows.gapMm) * static_cast<double>(plan.patterns.size());
    const double edge = 0.2 * lineMm(style);
    return QRectF(-rows.leftMm, 0.0, rows.leftMm + rows.longest, height).adjusted(-edge, -edge, edge, edge);
}

void paintCutBars(QPainter& painter, const BarJob& job, const BarPlan& plan, const PaintStyle& style)
{
    const BarRows rows = rowsOf(job, plan, style);
    double top = 0.0;
    painter.save();
    for (const BarPattern& pattern : plan.patterns) {
        TextLook look;
        look.align = Qt::AlignRight | Qt::AlignVCenter;
        paintText(painter, {-0.3 * lineMm(style), top + 0.5 * rows.rowMm}, tr("%1 ×").arg(pattern.times), style, look);
        paintBar(painter, job, pattern, top, rows.rowMm, style);
        top += rows.rowMm + rows.gapMm;
    }
    painter.restore();
}

}  // namespace yardcast::ui
