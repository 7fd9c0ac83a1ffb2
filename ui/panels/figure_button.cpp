#include "ui/panels/figure_button.h"

#include <QKeyEvent>
#include <QPainter>

#include "ui/look/severity_mark.h"
#include "ui/look/theme.h"
#include "ui/wording/names.h"

namespace yardcast::ui {

namespace {
constexpr int kMarkPx = 16;
constexpr int kPadPx = kStepPx;
constexpr int kStaleMarkPx = 14;
constexpr int kWrap = Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap;
}  // namespace

FigureButton::FigureButton(Look look, QWidget* parent) : QAbstractButton(parent), look_(look)
{
    setAttribute(Qt::WA_Hover);
    QSizePolicy policy(QSizePolicy::Preferred, QSizePolicy::Fixed);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
    setFocusPolicy(Qt::TabFocus);
}

void FigureButton::setFigure(const QString& code, const QString& figure, const QString& unit,
                             std::optional<Severity> mark)
{
    if (code == code_ && figure == figure_ && unit == unit_ && mark == mark_) return;
    const bool sameRoom = figure.size() == figure_.size() && unit == unit_ && mark == mark_ && look_ == Look::big;
    code_ = code;
    figure_ = figure;
    unit_ = unit;
    mark_ = mark;
    QString spoken = unit.isEmpty() ? figure : figure + QLatin1Char(' ') + unit;
    if (mark) spoken.prepend(severityName(*mark) + QStringLiteral(": "));
    setAccessibleName(spoken);
    setFocusPolicy(code.isEmpty() ? Qt::NoFocus : Qt::TabFocus);
    setCursor(code.isEmpty() ? Qt::ArrowCursor : Qt::PointingHandCursor);
    setToolTip(code.isEmpty() ? QString() : tr("How this figure comes about"));
    if (!sameRoom) updateGeometry();
    update();
}

void FigureButton::setStale(bool stale)
{
    if (stale_ == stale) return;
    stale_ = stale;
    setAccessibleDescription(stale ? tr("being computed again") : QString());
    update();
}

int FigureButton::textIndent() const { return kPadPx + (mark_ ? kMarkPx + kPadPx : 0); }

bool FigureButton::unitGoesBelow(int width) const
{
    const int figureWidth = QFontMetrics(bigFigureFont(font())).horizontalAdvance(figure_);
    const int unitWidth = fontMetrics().horizontalAdvance(unit_);
    return textIndent() + figureWidth + 2 * kPadPx + unitWidth + kStaleMarkPx > width;
}

int FigureButton::heightForWidth(int width) const
{
    if (look_ == Look::line) {
        const int room = qMax(40, width - textIndent() - kPadPx);
        const QRect text = fontMetrics().boundingRect(QRect(0, 0, room, 10000), kWrap, figure_);
        return qMax(kTargetPx, text.height() + 2 * kPadPx);
    }
    int height = QFontMetrics(bigFigureFont(font())).height() + kPadPx;
    if (unitGoesBelow(width)) {
        const int room = qMax(40, width - textIndent() - kPadPx);
        height += fontMetrics().boundingRect(QRect(0, 0, room, 10000), kWrap, unit_).height();
    }
    return qMax(kTargetPx, height);
}

QSize FigureButton::sizeHint() const
{
    constexpr int comfortable = 220;
    return {comfortable, heightForWidth(comfortable)};
}

QSize FigureButton::minimumSizeHint() const
{
    const int figureWidth =
        look_ == Look::big ? QFontMetrics(bigFigureFont(font())).horizontalAdvance(figure_) + kStaleMarkPx : 60;
    return {textIndent() + figureWidth + kPadPx, kTargetPx};
}

bool FigureButton::event(QEvent* event)
{
    if (event->type() == QEvent::FontChange) updateGeometry();
    return QAbstractButton::event(event);
}

void FigureButton::keyPressEvent(QKeyEvent* event)
{
    if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) {
        click();
        return;
    }
    QAbstractButton::keyPressEvent(event);
}

void FigureButton::paintEvent(QPaintEvent*)
{
    const Ink ink = inkOf(palette());
    QPainter painter(this);
    const bool live = !code_.isEmpty();
    if (live && (underMouse() || isDown())) {
        painter.fillRect(rect(), mixed(ink.card, ink.ink, isDown() ? 0.12 : 0.05));
    }
    if (hasFocus()) {
        painter.setPen(QPen(ink.chosen, 1));
        painter.drawRect(rect().adjusted(0, 0, -1, -1));
    }
    const int left = textIndent();
    const QColor textInk = mark_ ? colourOf(*mark_, ink) : ink.ink;
    const QColor firstInk = stale_ ? mixed(textInk, ink.card, 0.45) : textInk;
    const QColor secondInk = stale_ ? mixed(ink.pencil, ink.card, 0.45) : ink.pencil;
    if (look_ == Look::line) {
        if (mark_) {
            const double markTop = kPadPx + (fontMetrics().height() - kMarkPx) / 2.0;
            paintSeverityMark(painter, QRectF(kPadPx, qMax(markTop, (kTargetPx - kMarkPx) / 2.0), kMarkPx, kMarkPx),
                              *mark_, ink);
        }
        painter.setFont(figureFont(font()));
        painter.setPen(firstInk);
        QRect room = rect().adjusted(left, 0, -kPadPx, 0);
        const QRect used = painter.boundingRect(room, kWrap, figure_);
        room.setTop(qMax(0, (height() - used.height()) / 2));
        painter.drawText(room, kWrap, figure_);
        return;
    }
    const QFont big = bigFigureFont(font());
    const QFontMetrics bigMetrics(big);
    if (mark_) {
        paintSeverityMark(painter,
                          QRectF(kPadPx, kPadPx / 2.0 + (bigMetrics.height() - kMarkPx) / 2.0, kMarkPx, kMarkPx),
                          *mark_, ink);
    }
    const int baseline = kPadPx / 2 + bigMetrics.ascent();
    painter.setFont(big);
    painter.setPen(firstInk);
    painter.drawText(left, baseline, figure_);
    painter.setFont(font());
    painter.setPen(secondInk);
    const int figureEnd = left + bigMetrics.horizontalAdvance(figure_) + 2 * kPadPx;
    if (unitGoesBelow(width())) {
        const int top = kPadPx / 2 + bigMetrics.height();
        painter.drawText(QRect(left, top, width() - left - kPadPx, height() - top), kWrap, unit_);
    } else {
        painter.drawText(figureEnd, baseline, unit_);
    }
    if (stale_) {
        // Three quarters of a ring: still being computed.
        painter.setRenderHint(QPainter::Antialiasing);
        painter.setPen(QPen(ink.pencil, 1.75, Qt::SolidLine, Qt::RoundCap));
        painter.drawArc(QRectF(width() - kStaleMarkPx, kPadPx, kStaleMarkPx - 4, kStaleMarkPx - 4), 90 * 16, 270 * 16);
    }
}

}  // namespace yardcast::ui
