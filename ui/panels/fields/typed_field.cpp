#include "ui/panels/fields/typed_field.h"

#include <QKeyEvent>
#include <QLineEdit>

#include "ui/look/theme.h"

namespace yardcast::ui {

TypedField::TypedField(FieldHost& host, const QString& path, const QString& label, const QString& unit,
                       QWidget* parent)
    : Field(host, path, label, parent), edit_(new QLineEdit(this))
{
    edit_->setFont(figureFont(edit_->font()));
    edit_->setMinimumWidth(48);
    edit_->installEventFilter(this);
    setEditor(edit_, unit);
    setFocusProxy(edit_);
    connect(edit_, &QLineEdit::textEdited, this, &TypedField::check);
    connect(edit_, &QLineEdit::editingFinished, this, &TypedField::commit);
}

void TypedField::showText(const QString& text, const QString& placeholder)
{
    if (edit_->placeholderText() != placeholder) edit_->setPlaceholderText(placeholder);
    shown_ = text;
    if (edit_->isModified()) return;
    if (edit_->text() != text) {
        edit_->setText(text);
        edit_->setCursorPosition(0);
        // A name may be longer than its room.
        edit_->setToolTip(text.size() > 12 ? text : toolTip());
    }
    if (!message().isEmpty()) setMessage({}, false);
}

void TypedField::check()
{
    if (edit_->text() == shown_) {
        setMessage({}, false);
        return;
    }
    const Outcome outcome = read(edit_->text());
    if (!outcome.fault.isEmpty()) {
        setMessage(outcome.fault, true);
        return;
    }
    setMessage(host().objection(outcome.edit), false);
}

bool TypedField::commit()
{
    if (!edit_->isModified()) return true;
    const QString text = edit_->text();
    if (text == shown_) {
        restore();
        return true;
    }
    const Outcome outcome = read(text);
    if (!outcome.fault.isEmpty()) {
        setMessage(outcome.fault, true);
        return false;
    }
    edit_->setModified(false);
    host().apply(editName(), outcome.edit);
    // Shown anew where the edit came to nothing ("40.0" for 40), and so that the steps of typing are forgotten: the
    // next undo is the plan's.
    if (!edit_->isModified()) edit_->setText(shown_);
    committed(text);
    return true;
}

void TypedField::committed(const QString&) {}

void TypedField::restore()
{
    edit_->setModified(false);
    edit_->setText(shown_);
    edit_->setModified(false);
    setMessage({}, false);
}

bool TypedField::eventFilter(QObject* watched, QEvent* event)
{
    if (watched == edit_ && event->type() == QEvent::KeyPress) {
        const auto* key = static_cast<QKeyEvent*>(event);
        if (key->matches(QKeySequence::Undo) && !edit_->isUndoAvailable()) {
            host().undo();
            return true;
        }
        if (key->matches(QKeySequence::Redo) && !edit_->isRedoAvailable()) {
            host().redo();
            return true;
        }
        if (key->key() == Qt::Key_Escape && edit_->isModified()) {
            restore();
            edit_->selectAll();
            return true;
        }
        if ((key->key() == Qt::Key_Return || key->key() == Qt::Key_Enter) && commit()) edit_->selectAll();
    }
    // The window's own Escape is not meant while something is being typed.
    if (watched == edit_ && event->type() == QEvent::ShortcutOverride && edit_->isModified() &&
        static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape) {
        event->accept();
        return true;
    }
    return Field::eventFilter(watched, event);
}

}  // namespace yardcast::ui
