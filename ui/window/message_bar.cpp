#include "ui/window/message_bar.h"

#include <QEvent>
#include <QHBoxLayout>
#include <QLabel>
#include <QPainter>
#include <QPushButton>
#include <QScrollArea>
#include <QStyle>
#include <QToolButton>
#include <QVBoxLayout>

#include "ui/look/icons.h"
#include "ui/look/ink.h"
#include "ui/look/severity_mark.h"
#include "ui/look/theme.h"

namespace yardcast::ui {

namespace {

constexpr int kMarkPx = 18;
constexpr int kDetailsPx = 132;

Severity severityOf(Message::Weight weight)
{
    switch (weight) {
    case Message::Weight::note: return Severity::note;
    case Message::Weight::caution: return Severity::caution;
    case Message::Weight::stop: return Severity::stop;
    }
    return Severity::note;
}

/// A note of the bar is no finding of the plan: it speaks in the colour of choice.
QColor stripColour(Message::Weight weight, const Ink& ink)
{
    return weight == Message::Weight::note ? ink.chosen : colourOf(severityOf(weight), ink);
}

QPixmap markOf(Message::Weight weight, Ink ink, qreal ratio)
{
    ink.pencil = ink.chosen;
    QPixmap picture(QSize(kMarkPx, kMarkPx) * ratio);
    picture.setDevicePixelRatio(ratio);
    picture.fill(Qt::transparent);
    QPainter painter(&picture);
    painter.setRenderHint(QPainter::Antialiasing);
    paintSeverityMark(painter, QRectF(0, 0, kMarkPx, kMarkPx), severityOf(weight), ink);
    return picture;
}

}  // namespace

class MessageBar::Strip : public QWidget {
public:
    Strip(const Message& message, MessageBar& bar) : QWidget(&bar), weight_(message.weight), mark_(new QLabel(this))
    {
        setObjectName(message.id);
        auto* text = new QLabel(message.text, this);
        text->setWordWrap(true);
        text->setTextInteractionFlags(Qt::TextSelectableByMouse);
        auto* row = new QHBoxLayout;
        row->setSpacing(2 * kStepPx);
        row->addWidget(mark_, 0, Qt::AlignVCenter);
        row->addWidget(text, 1);
        for (const Answer& answer : message.answers) {
            auto* button = new QPushButton(answer.text, this);
            button->setFocusPolicy(Qt::TabFocus);
            QObject::connect(button, &QPushButton::clicked, &bar, [&bar, id = message.id, act = answer.act] {
                bar.dismiss(id);
                if (act) act();
            });
            row->addWidget(button);
        }
        cross_ = new QToolButton(this);
        cross_->setAutoRaise(true);
        cross_->setFocusPolicy(Qt::TabFocus);
        cross_->setToolTip(MessageBar::tr("Hide this message"));
        cross_->setAccessibleName(cross_->toolTip());
        cross_->setMinimumSize(kTargetPx, kTargetPx);
        QObject::connect(cross_, &QToolButton::clicked, &bar, [&bar, id = message.id, act = message.onDismiss] {
            bar.dismiss(id);
            if (act) act();
        });
        row->addWidget(cross_);

        auto* column = new QVBoxLayout(this);
        column->setContentsMargins(3 * kStepPx, kStepPx, 2 * kStepPx, kStepPx + 1);
        column->setSpacing(kStepPx);
        column->addLayout(row);
        if (!message.details.isEmpty()) column->addWidget(detailsOf(message.details));
        setInk();
    }

protected:
    void changeEvent(QEvent* event) override
    {
        if (event->type() == QEvent::PaletteChange) setInk();
        QWidget::changeEvent(event);
    }

    void paintEvent(QPaintEvent*) override
    {
        const Ink ink = inkOf(palette());
        QPainter painter(this);
        painter.fillRect(rect(), mixed(ink.card, stripColour(weight_, ink), 0.08));
        painter.fillRect(QRect(0, 0, kStepPx, height()), stripColour(weight_, ink));
        painter.fillRect(QRect(0, height() - 1, width(), 1), ink.line);
    }

private:
    QWidget* detailsOf(const QStringList& lines)
    {
        auto* text = new QLabel(lines.join("\n"));
        text->setWordWrap(true);
        text->setTextFormat(Qt::PlainText);
        text->setTextInteractionFlags(Qt::TextSelectableByMouse);
        text->setContentsMargins(kMarkPx + 2 * kStepPx, 0, 0, kStepPx);
        auto* area = new QScrollArea(this);
        area->setWidget(text);
        area->setWidgetResizable(true);
        area->setFrameShape(QFrame::NoFrame);
        area->viewport()->setAutoFillBackground(false);
        text->setAutoFillBackground(false);
        area->setFixedHeight(qMin(kDetailsPx, fontMetrics().lineSpacing() * int(lines.size()) + 3 * kStepPx));
        return area;
    }

    void setInk()
    {
        const Ink ink = inkOf(palette());
        mark_->setPixmap(markOf(weight_, ink, devicePixelRatioF()));
        cross_->setIcon(icon("close", ink));
        update();
    }

    Message::Weight weight_;
    QLabel* mark_;
    QToolButton* cross_ = nullptr;
};

MessageBar::MessageBar(QWidget* parent) : QWidget(parent), layout_(new QVBoxLayout(this))
{
    layout_->setContentsMargins(0, 0, 0, 0);
    layout_->setSpacing(0);
    setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Maximum);
}

void MessageBar::show(const Message& message)
{
    dismiss(message.id);
    layout_->addWidget(new Strip(message, *this));
}

void MessageBar::dismiss(const QString& id)
{
    Strip* strip = find(id);
    if (!strip) return;
    // Deleted later: the answer that leads here comes from a button of the strip.
    strip->hide();
    strip->setObjectName({});
    layout_->removeWidget(strip);
    strip->deleteLater();
}

bool MessageBar::isShown(const QString& id) const { return find(id) != nullptr; }

QStringList MessageBar::shown() const
{
    QStringList ids;
    for (int i = 0; i < layout_->count(); ++i) ids.append(layout_->itemAt(i)->widget()->objectName());
    return ids;
}

MessageBar::Strip* MessageBar::find(const QString& id) const
{
    for (int i = 0; i < layout_->count(); ++i) {
        if (auto* strip = static_cast<Strip*>(layout_->itemAt(i)->widget()); strip->objectName() == id) return strip;
    }
    return nullptr;
}

}  // namespace yardcast::ui
