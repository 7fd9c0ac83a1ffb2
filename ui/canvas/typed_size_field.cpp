#include "ui/canvas/typed_size_field.h"

#include <algorithm>

#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QVBoxLayout>

#include "ui/canvas/pointer_label.h"

namespace yardcast::ui {

TypedSizeField::TypedSizeField(QWidget* parent) : QFrame(parent), edit_(new QLineEdit(this)), fault_(new QLabel(this))
{
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(4, 4, 4, 4);
    column->setSpacing(4);
    column->addWidget(edit_);
    column->addWidget(fault_);
    edit_->setMinimumWidth(132);
    edit_->setAccessibleName(tr("Size"));
    edit_->setPlaceholderText(tr("1850 or 1850 x 620"));
    fault_->setWordWrap(true);
    fault_->setMaximumWidth(260);
    fault_->hide();
    setFrameShape(QFrame::NoFrame);
    setAutoFillBackground(true);
    // A child of a view would take over the role of its paper.
    setBackgroundRole(QPalette::Window);
    fault_->setForegroundRole(QPalette::WindowText);
    edit_->installEventFilter(this);
    connect(edit_, &QLineEdit::textEdited, this, [this] { say({}); });
    hide();
}

void TypedSizeField::setInk(const Ink& ink)
{
    ink_ = ink;
    QPalette back = palette();
    back.setColor(QPalette::Window, ink.card);
    setPalette(back);
    QPalette words = fault_->palette();
    words.setColor(QPalette::WindowText, ink.stop);
    fault_->setPalette(words);
}

void TypedSizeField::open(QPoint at, const QString& text, bool selected, Accept accept, std::function<void()> cancelled)
{
    at_ = at;
    accept_ = std::move(accept);
    cancelled_ = std::move(cancelled);
    edit_->setText(text);
    say({});
    show();
    raise();
    edit_->setFocus(Qt::OtherFocusReason);
    if (selected) {
        edit_->selectAll();
    } else {
        edit_->end(false);
    }
}

void TypedSizeField::place()
{
    adjustSize();
    move(besidePointer(at_, size(), parentWidget()->size()));
}

void TypedSizeField::say(const QString& fault)
{
    fault_->setText(fault);
    fault_->setVisible(!fault.isEmpty());
    edit_->setAccessibleDescription(fault);
    place();
}

QString TypedSizeField::text() const { return edit_->text(); }

QString TypedSizeField::fault() const { return fault_->text(); }

bool TypedSizeField::apply()
{
    const TypedSizeReading reading = readTypedSize(edit_->text());
    if (!reading) {
        say(reading.fault);
        return false;
    }
    const QString refused = accept_ ? accept_(reading.size) : QString();
    if (!refused.isEmpty()) {
        say(refused);
        return false;
    }
    close();
    return true;
}

void TypedSizeField::close()
{
    if (!isVisible()) return;
    accept_ = nullptr;
    cancelled_ = nullptr;
    hide();
    emit closed();
}

bool TypedSizeField::eventFilter(QObject* watched, QEvent* event)
{
    if (watched != edit_) return QFrame::eventFilter(watched, event);
    if (event->type() == QEvent::ShortcutOverride) {
        // Everything typed here belongs to the field, also what is a command of the window.
        event->accept();
        return true;
    }
    if (event->type() == QEvent::KeyPress) {
        switch (static_cast<QKeyEvent*>(event)->key()) {
        case Qt::Key_Return:
        case Qt::Key_Enter: apply(); return true;
        case Qt::Key_Escape: {
            const auto cancelled = cancelled_;
            close();
            if (cancelled) cancelled();
            return true;
        }
        default: break;
        }
    }
    if (event->type() == QEvent::FocusOut && isVisible()
        && static_cast<QFocusEvent*>(event)->reason() != Qt::PopupFocusReason) {
        const auto cancelled = cancelled_;
        close();
        if (cancelled) cancelled();
    }
    return QFrame::eventFilter(watched, event);
}

}  // namespace yardcast::ui
