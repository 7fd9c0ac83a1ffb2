#include "ui/panels/mould_view.h"

#include <algorithm>
#include <cmath>

#include <QMouseEvent>
#include <QPainter>
#include <QPalette>

#include "ui/look/theme.h"
#include "ui/wording/mould_names.h"

namespace yardcast::ui {

namespace {

/// Whole in a card of a window 768 high; larger it has a window of its own.
constexpr int kMostPx = 300;
constexpr int kLeastPx = 120;
constexpr int kMarginPx = 2;

}  // namespace

MouldView::MouldView(Shows shows, QWidget* parent) : QWidget(parent), shows_(shows)
{
    setObjectName(shows == Shows::mould ? QStringLiteral("mouldPicture") : QStringLiteral("standingPicture"));
    QSizePolicy policy(QSizePolicy::Expanding, QSizePolicy::Preferred);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
}

void MouldView::setSubject(const std::optional<MouldSubject>& subject)
{
    const bool same = subject.has_value() == subject_.has_value()
                   && (!subject || (subject->mould == subject_->mould && subject->casting == subject_->casting
                                    && subject->part == subject_->part));
    if (same) return;
    subject_ = subject;
    if (subject_) {
        // In words for those who cannot see it.
        const PartKind kind = subject_->part->kind();
        const QString title = shows_ == Shows::mould ? mouldViewTitle(*subject_->mould) : standingViewTitle();
        setAccessibleName(tr("%1, %2").arg(QString::fromStdString(subject_->casting->id), title));
        setAccessibleDescription(mouldCheckSentence(subject_->mould->check, kind));
    }
    updateGeometry();
    update();
}

void MouldView::setMarked(const std::string& part)
{
    if (marked_ == part) return;
    marked_ = part;
    update();
}

MouldLook MouldView::look() const
{
    MouldLook look;
    look.marked = marked_;
    return look;
}

QRectF MouldView::boundsAt(const PaintStyle& style) const
{
    return shows_ == Shows::mould ? mouldPictureBounds(*subject_, look(), style)
                                  : standingPictureBounds(*subject_, style);
}

MouldView::Fit MouldView::fitIn(QSizeF room) const
{
    Fit fit;
    fit.style.ink = inkOf(palette());
    fit.style.ink.sheet = fit.style.ink.card;
    fit.style.devicePixels = devicePixelRatioF();
    // Words keep their size whatever the scale, so the scale is sought.
    double scale = std::max(subject_->mould->widthMm, 1.0) / std::max(room.width(), 1.0);
    for (int i = 0; i < 16; ++i) {
        fit.style.mmPerUnit = scale;
        fit.bounds = boundsAt(fit.style);
        const double next = std::max(fit.bounds.width() / room.width(), fit.bounds.height() / room.height());
        if (std::fabs(next - scale) < 1e-3 * scale) break;
        scale = next;
    }
    fit.style.mmPerUnit = scale;
    fit.bounds = boundsAt(fit.style);
    return fit;
}

QSize MouldView::sizeHint() const { return {shows_ == Shows::mould ? 320 : 130, heightForWidth(320)}; }

QSize MouldView::minimumSizeHint() const
{
    return shows_ == Shows::mould ? QSize(220, kLeastPx) : QSize(110, kLeastPx);
}

int MouldView::heightForWidth(int width) const
{
    if (!subject_) return kLeastPx;
    const Fit fit = fitIn(QSizeF(std::max(width - 2 * kMarginPx, 50), 4000.0));
    const double needed = fit.bounds.height() / fit.style.mmPerUnit + 2 * kMarginPx;
    return std::clamp(static_cast<int>(std::ceil(needed)), kLeastPx, kMostPx);
}

void MouldView::paintEvent(QPaintEvent*)
{
    if (!subject_) return;
    const QRectF room = QRectF(rect()).adjusted(kMarginPx, kMarginPx, -kMarginPx, -kMarginPx);
    const Fit fit = fitIn(room.size());
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.translate(room.center());
    painter.scale(1.0 / fit.style.mmPerUnit, 1.0 / fit.style.mmPerUnit);
    painter.translate(-fit.bounds.center());
    if (shows_ == Shows::mould) {
        paintMouldPicture(painter, *subject_, look(), fit.style);
    } else {
        paintStandingPicture(painter, *subject_, fit.style);
    }
}

QPoint MouldView::placeOf(const std::string& part) const
{
    if (!subject_) return {};
    const QRectF room = QRectF(rect()).adjusted(kMarginPx, kMarginPx, -kMarginPx, -kMarginPx);
    const Fit fit = fitIn(room.size());
    for (const MouldPart& one : subject_->mould->parts) {
        const std::optional<Box> box = boundsOf(one.outline);
        if (one.name != part || !box) continue;
        const QPointF middle(box->centre().x, -box->centre().y);
        return (room.center() + (middle - fit.bounds.center()) / fit.style.mmPerUnit).toPoint();
    }
    return {};
}

void MouldView::mouseReleaseEvent(QMouseEvent* event)
{
    if (!subject_ || shows_ != Shows::mould || event->button() != Qt::LeftButton) return;
    const QRectF room = QRectF(rect()).adjusted(kMarginPx, kMarginPx, -kMarginPx, -kMarginPx);
    const Fit fit = fitIn(room.size());
    const QPointF at = (event->position() - room.center()) * fit.style.mmPerUnit + fit.bounds.center();
    emit partClicked(QString::fromStdString(mouldPartAt(*subject_, at)));
}

}  // namespace yardcast::ui
