#include "ui/panels/line_delegate.h"

#include <QAbstractItemView>
#include <QHelpEvent>
#include <QPainter>
#include <QToolTip>

#include "ui/look/severity_mark.h"
#include "ui/look/theme.h"

namespace yardcast::ui {

namespace {

constexpr int kMarkPx = 16;
constexpr int kPadPx = kStepPx;

QFont detailFont(const QFont& text)
{
    QFont font = text;
    if (font.pointSizeF() > 0) font.setPointSizeF(font.pointSizeF() * 0.9);
    return font;
}

/// A bar of what is used of a limit; past the limit it is hatched, so it does not depend on the colour.
void paintBar(QPainter& painter, const QRect& rect, double share, const Ink& ink)
{
    constexpr double kMost = 2.0;  // the bar ends at twice the limit
    const QRectF track(rect);
    painter.fillRect(track, mixed(ink.card, ink.line, 0.7));
    const double limitX = track.left() + track.width() / kMost;
    const double endX = track.left() + track.width() * qBound(0.0, share, kMost) / kMost;
    const Severity severity = share > 2.0 ? Severity::stop : share > 1.0 ? Severity::caution : Severity::note;
    const QColor over = colourOf(severity, ink);
    painter.fillRect(QRectF(track.topLeft(), QPointF(qMin(endX, limitX), track.bottom())),
                     share > 1.0 ? over : ink.steel);
    if (share > 1.0) {
        painter.fillRect(QRectF(QPointF(limitX, track.top()), QPointF(endX, track.bottom())),
                         QBrush(over, Qt::BDiagPattern));
    }
    painter.fillRect(QRectF(limitX - 0.5, track.top() - 2, 1.5, track.height() + 3), ink.ink);
}

}  // namespace

LineDelegate::LineDelegate(const LineModel& model, QObject* parent) : QStyledItemDelegate(parent), model_(model) {}

QStringList LineDelegate::flow(const QStringList& details, const QFontMetrics& metrics, int widthPx)
{
    const QString between = QStringLiteral(" · ");
    QStringList rows;
    for (const QString& detail : details) {
        if (!rows.isEmpty() && metrics.horizontalAdvance(rows.last() + between + detail) <= widthPx) {
            rows.last() += between + detail;
        } else {
            rows.append(detail);
        }
    }
    return rows;
}

int LineDelegate::detailWidth(const QWidget* widget) const
{
    const auto* view = qobject_cast<const QAbstractItemView*>(widget);
    return view ? view->viewport()->width() - 3 * kPadPx : 200;
}

int LineDelegate::nameRoom(const Line& line, const QWidget* view) const
{
    return detailWidth(view) + kPadPx - (line.mark ? kMarkPx + kPadPx : 0);
}

int LineDelegate::nameHeight(const QFont& font, const Line& line, const QWidget* view) const
{
    const QFontMetrics metrics(font);
    const int least = qMax(kTargetPx, metrics.height() + 2 * kPadPx);
    if (!model_.wrapsNames() || line.kind == Line::Kind::heading) return least;
    const auto rows = static_cast<int>(wrapped(line.cells.value(0), font, nameRoom(line, view)).size());
    return qMax(least, rows * metrics.lineSpacing() + 2 * kPadPx);
}

QStringList LineDelegate::wrapped(const QString& text, const QFont& font, int widthPx) const
{
    if (wordFont_ != font) {
        wordFont_ = font;
        wordWidths_.clear();
    }
    const QFontMetrics metrics(font);
    const auto widthOf = [&](const QString& word) {
        auto known = wordWidths_.constFind(word);
        if (known == wordWidths_.constEnd()) known = wordWidths_.insert(word, metrics.horizontalAdvance(word));
        return *known;
    };
    const int space = widthOf(QStringLiteral(" "));
    QStringList rows;
    int used = 0;
    for (const QString& word : text.split(QLatin1Char(' '))) {
        const int width = widthOf(word);
        if (!rows.isEmpty() && used + space + width <= widthPx) {
            rows.last() += QLatin1Char(' ') + word;
            used += space + width;
        } else {
            rows.append(word);
            used = width;
        }
    }
    return rows;
}

QSize LineDelegate::sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const
{
    const Line& line = model_.line(index.row());
    int height = nameHeight(option.font, line, option.widget);
    if (index.column() == 0 && !line.details.isEmpty()) {
        const QFontMetrics metrics(detailFont(option.font));
        height += static_cast<int>(flow(line.details, metrics, detailWidth(option.widget)).size()) *
                  metrics.lineSpacing();
    }
    return QSize(0, height);
}

void LineDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const
{
    const Line& line = model_.line(index.row());
    const Ink ink = inkOf(option.palette);
    const bool isName = index.column() == 0;
    const int textHeight =
        line.details.isEmpty() ? option.rect.height() : nameHeight(option.font, line, option.widget);
    QRect rect = option.rect.adjusted(kPadPx, 0, -kPadPx, 0);
    rect.setHeight(textHeight);
    painter->save();
    QFont font = option.font;
    if (line.kind == Line::Kind::heading) {
        if (!isName) {
            painter->restore();
            return;
        }
        font.setWeight(QFont::DemiBold);
        painter->setFont(font);
        painter->setPen(ink.pencil);
        rect.setWidth(option.widget ? detailWidth(option.widget) : rect.width());
        painter->drawText(rect.adjusted(0, 0, 0, -kPadPx), Qt::AlignLeft | Qt::AlignBottom, line.cells.value(0));
        painter->restore();
        return;
    }
    if (line.kind == Line::Kind::total) font.setWeight(QFont::DemiBold);
    painter->setFont(isName ? font : figureFont(font));
    painter->setPen(ink.ink);
    const QString text = line.cells.value(index.column());
    const bool last = index.column() == model_.columnCount() - 1;
    if (isName) {
        if (line.mark) {
            QRect mark(rect.left(), 0, kMarkPx, kMarkPx);
            mark.moveCenter(QPoint(mark.center().x(), rect.top() + kTargetPx / 2));
            paintSeverityMark(*painter, mark, *line.mark, ink);
            rect.setLeft(mark.right() + 1 + kPadPx);
        }
        if (model_.wrapsNames()) {
            const QStringList rows = wrapped(text, option.font, nameRoom(line, option.widget));
            const int spacing = painter->fontMetrics().lineSpacing();
            int top = rect.top() + (rect.height() - static_cast<int>(rows.size()) * spacing) / 2;
            for (const QString& row : rows) {
                painter->drawText(QRect(rect.left(), top, rect.width() + kPadPx, spacing),
                                  Qt::AlignLeft | Qt::AlignVCenter, row);
                top += spacing;
            }
        } else {
            painter->drawText(rect, Qt::AlignLeft | Qt::AlignVCenter,
                              painter->fontMetrics().elidedText(text, Qt::ElideRight, rect.width()));
        }
        if (!line.details.isEmpty()) {
            painter->setFont(figureFont(detailFont(option.font)));
            painter->setPen(ink.pencil);
            int top = option.rect.top() + textHeight - kPadPx;
            const int width = detailWidth(option.widget);
            const QFontMetrics metrics = painter->fontMetrics();
            for (const QString& row : flow(line.details, metrics, width)) {
                painter->drawText(QRect(option.rect.left() + kPadPx, top, width, metrics.lineSpacing()),
                                  Qt::AlignLeft | Qt::AlignVCenter, row);
                top += metrics.lineSpacing();
            }
        }
    } else if (last && line.share) {
        const QRect bar(rect.left(), rect.bottom() - 2 * kStepPx, rect.width(), kStepPx);
        paintBar(*painter, bar, *line.share, ink);
        rect.setBottom(bar.top() - 1);
        painter->drawText(rect, Qt::AlignLeft | Qt::AlignVCenter, text);
    } else {
        const bool figures = model_.columns()[index.column()].isFigures;
        painter->drawText(rect, Qt::AlignVCenter | (figures ? Qt::AlignRight : Qt::AlignLeft), text);
    }
    painter->restore();
}

bool LineDelegate::helpEvent(QHelpEvent* event, QAbstractItemView* view, const QStyleOptionViewItem& option,
                             const QModelIndex& index)
{
    if (event->type() != QEvent::ToolTip || !index.isValid()) {
        return QStyledItemDelegate::helpEvent(event, view, option, index);
    }
    const Line& line = model_.line(index.row());
    QString tip = line.tip;
    if (tip.isEmpty() && index.column() == 0) {
        const int room = option.rect.width() - 2 * kPadPx - (line.mark ? kMarkPx + kPadPx : 0);
        const QString name = line.cells.value(0);
        if (option.fontMetrics.horizontalAdvance(name) > room) tip = name;
    }
    QToolTip::showText(event->globalPos(), tip, view);
    return true;
}

}  // namespace yardcast::ui
