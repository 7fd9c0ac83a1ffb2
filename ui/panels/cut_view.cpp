#include "ui/panels/cut_view.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include <QPainter>

#include "ui/drawing/cut_picture.h"
#include "ui/look/theme.h"
#include "ui/wording/figures.h"

namespace yardcast::ui {

namespace {

constexpr int kUsualPx = 280;
constexpr int kLeastPx = 220;
constexpr int kTallestPx = 320;

}  // namespace

CutView::CutView(QWidget* parent) : QWidget(parent)
{
    setObjectName(QStringLiteral("cutView"));
    QSizePolicy policy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
}

void CutView::showSheet(SheetCutsPtr cuts, int sheet)
{
    bars_.reset();
    sheets_ = std::move(cuts);
    sheet_ = sheet;
    const CutSheet& shown = sheets_->plan.sheets[static_cast<std::size_t>(sheet_)];
    const Size size = sheets_->job.list.stock[static_cast<std::size_t>(shown.stock)].size;
    changed(tr("Sheet of %1: %2 pieces, %3 cuts")
                .arg(sizeText(size.width, size.depth))
                .arg(shown.pieces.size())
                .arg(shown.steps.size()));
}

void CutView::showBars(BarCutsPtr cuts)
{
    sheets_.reset();
    bars_ = std::move(cuts);
    changed(tr("%1 lengths and what is cut from each").arg(bars_->plan.count));
}

void CutView::clear()
{
    sheets_.reset();
    bars_.reset();
    changed({});
}

void CutView::changed(const QString& words)
{
    setAccessibleName(words);
    setVisible(sheets_ || bars_);
    updateGeometry();
    update();
}

QRectF CutView::bounds(const PaintStyle& style) const
{
    if (sheets_) return cutSheetBounds(sheets_->job, sheets_->plan.sheets[static_cast<std::size_t>(sheet_)], style);
    if (bars_) return cutBarsBounds(bars_->job, bars_->plan, style);
    return {};
}

double CutView::mmPerPixel(QSizeF roomPx) const
{
    return cutPictureScale([this](const PaintStyle& style) { return bounds(style); }, PaintStyle{}, roomPx);
}

int CutView::heightForWidth(int width) const
{
    if (!sheets_ && !bars_) return 0;
    PaintStyle style;
    style.mmPerUnit = mmPerPixel(QSizeF(width, kTallestPx));
    return std::min(kTallestPx, static_cast<int>(std::ceil(bounds(style).height() / style.mmPerUnit)));
}

QSize CutView::sizeHint() const { return {kUsualPx, heightForWidth(std::max(width(), kLeastPx))}; }

QSize CutView::minimumSizeHint() const { return {kLeastPx, sizeHint().height()}; }

void CutView::paintEvent(QPaintEvent*)
{
    if (!sheets_ && !bars_) return;
    PaintStyle style;
    style.ink = inkOf(palette());
    style.devicePixels = devicePixelRatioF();
    style.mmPerUnit = mmPerPixel(size());
    const QRectF box = bounds(style);
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.translate(QRectF(rect()).center());
    painter.scale(1.0 / style.mmPerUnit, 1.0 / style.mmPerUnit);
    painter.translate(-box.center());
    if (sheets_) {
        paintCutSheet(painter, sheets_->job, sheets_->plan.sheets[static_cast<std::size_t>(sheet_)], style);
    } else {
        paintCutBars(painter, bars_->job, bars_->plan, style);
    }
}

}  // namespace yardcast::ui
