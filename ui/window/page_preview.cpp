#include "ui/window/page_preview.h"

#include <algorithm>
#include <cmath>

#include <QAction>
#include <QHBoxLayout>
#include <QLabel>
#include <QPainter>
#include <QPushButton>
#include <QScrollArea>
#include <QScrollBar>
#include <QVBoxLayout>

#include "ui/live/thread_manners.h"
#include "ui/look/theme.h"

namespace yardcast::ui {

namespace {
constexpr double kZoomStep = 1.25;
constexpr double kMostZoom = 6.0;
constexpr int kMarginPx = 2 * kStepPx;
}

/// One page. What is painted already is drawn scaled until the right size is there.
class PagePreview::Paper : public QWidget {
public:
    using QWidget::QWidget;

    void setPicture(const QImage& picture)
    {
        picture_ = picture;
        update();
    }
    void clear() { setPicture({}); }

protected:
    void paintEvent(QPaintEvent*) override
    {
        QPainter painter(this);
        if (picture_.isNull()) {
            painter.fillRect(rect(), Qt::white);
        } else {
            painter.drawImage(rect(), picture_);
        }
    }

private:
    QImage picture_;
};

PagePreview::PagePreview(std::shared_ptr<const SheetPack> pack, QWidget* parent)
    : QDialog(parent), pack_(std::move(pack)), paper_(new Paper), area_(new QScrollArea(this)), title_(new QLabel(this)),
      before_(new QPushButton(tr("&Previous page"), this)), next_(new QPushButton(tr("&Next page"), this)),
      work_(QStringLiteral("preview"), kStrengthNiceness)
{
    setObjectName(QStringLiteral("pagePreview"));
    setWindowTitle(tr("Print preview"));
    setAttribute(Qt::WA_DeleteOnClose);
    auto* row = new QHBoxLayout;
    row->setSpacing(kStepPx);
    row->addWidget(before_);
    row->addWidget(next_);
    title_->setObjectName(QStringLiteral("pageTitle"));
    row->addWidget(title_, 1);
    const auto addButton = [&](const QString& text, auto&& pressed) {
        auto* button = new QPushButton(text, this);
        button->setAutoDefault(false);
        connect(button, &QPushButton::clicked, this, pressed);
        row->addWidget(button);
    };
    addButton(tr("&Smaller"), [this] { setZoom(zoom_ / kZoomStep); });
    addButton(tr("&Larger"), [this] { setZoom(zoom_ * kZoomStep); });
    addButton(tr("&Whole page"), [this] { setZoom(1.0); });
    addButton(tr("P&rint..."), [this] {
        close();
        emit printAsked();
    });
    addButton(tr("&Close"), [this] { close(); });
    before_->setAutoDefault(false);
    next_->setAutoDefault(false);
    before_->setToolTip(tr("Page Up"));
    next_->setToolTip(tr("Page Down"));

    area_->setWidget(paper_);
    area_->setAlignment(Qt::AlignCenter);
    area_->setBackgroundRole(QPalette::Mid);
    area_->setFocusPolicy(Qt::StrongFocus);
    area_->setAccessibleName(tr("Page"));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(kMarginPx, kMarginPx, kMarginPx, kMarginPx);
    column->addLayout(row);
    column->addWidget(area_, 1);

    connect(before_, &QPushButton::clicked, this, [this] { showPage(page_ - 1); });
    connect(next_, &QPushButton::clicked, this, [this] { showPage(page_ + 1); });
    const auto addKey = [&](std::initializer_list<QKeySequence> keys, auto&& pressed) {
        auto* action = new QAction(this);
        action->setShortcuts(QList<QKeySequence>(keys));
        connect(action, &QAction::triggered, this, pressed);
        addAction(action);
    };
    addKey({QKeySequence(Qt::Key_PageUp)}, [this] { showPage(page_ - 1); });
    addKey({QKeySequence(Qt::Key_PageDown)}, [this] { showPage(page_ + 1); });
    addKey({QKeySequence(Qt::Key_Home)}, [this] { showPage(0); });
    addKey({QKeySequence(Qt::Key_End)}, [this] { showPage(pack_->count() - 1); });
    addKey({QKeySequence::ZoomIn, QKeySequence(Qt::CTRL | Qt::Key_Equal)}, [this] { setZoom(zoom_ * kZoomStep); });
    addKey({QKeySequence::ZoomOut}, [this] { setZoom(zoom_ / kZoomStep); });
    addKey({QKeySequence(Qt::CTRL | Qt::Key_0)}, [this] { setZoom(1.0); });
    area_->setFocus();
    showPage(0);
}

PagePreview::~PagePreview() { work_.cancel(); }

void PagePreview::showPage(int page)
{
    const int last = pack_->count() - 1;
    page = std::clamp(page, 0, std::max(last, 0));
    if (page != page_) paper_->clear();
    page_ = page;
    const QString text = last < 0 ? tr("Nothing to print")
                                  : tr("Page %1 of %2: %3").arg(page_ + 1).arg(last + 1).arg(pack_->title(page_));
    title_->setText(text);
    area_->setAccessibleDescription(text);
    before_->setEnabled(page_ > 0);
    next_->setEnabled(page_ < last);
    area_->verticalScrollBar()->setValue(0);
    layOut();
}

void PagePreview::setZoom(double zoom)
{
    zoom_ = std::clamp(zoom, 1.0, kMostZoom);
    layOut();
}

void PagePreview::layOut()
{
    if (pack_->count() == 0) {
        paper_->hide();
        return;
    }
    // A4: the sides are as 1 to the root of 2.
    const bool lies = pack_->isLandscape(page_);
    const double ratio = lies ? 210.0 / 297.0 : 297.0 / 210.0;
    const QSize room = area_->maximumViewportSize() - QSize(2 * kMarginPx, 2 * kMarginPx);
    const double whole = std::min(double(room.width()), room.height() / ratio);
    const int width = std::max(1, int(std::floor(whole * zoom_)));
    paper_->setFixedSize(width, std::max(1, int(std::round(width * ratio))));
    ask();
}

void PagePreview::ask()
{
    if (!isVisible()) return;
    const int px = std::max(1, qRound(paper_->width() * devicePixelRatioF()));
    if (px == askedPx_ && page_ == askedPage_) return;
    askedPx_ = px;
    askedPage_ = page_;
    isWaiting_ = true;
    work_.start([this, pack = pack_, page = page_, px](const std::stop_token& stop) {
        const QImage picture = pack->picture(page, px);
        QMetaObject::invokeMethod(this, [this, picture, stop] {
            if (stop.stop_requested()) return;
            isWaiting_ = false;
            paper_->setPicture(picture);
        });
    });
}

void PagePreview::resizeEvent(QResizeEvent* event)
{
    QDialog::resizeEvent(event);
    layOut();
}

void PagePreview::showEvent(QShowEvent* event)
{
    QDialog::showEvent(event);
    layOut();
}

}  // namespace yardcast::ui
