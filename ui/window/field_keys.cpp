#include "ui/window/field_keys.h"

#include <QAbstractSpinBox>
#include <QComboBox>
#include <QKeyEvent>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QTextEdit>

namespace yardcast::ui {

namespace {

bool isField(const QObject* object)
{
    if (const auto* line = qobject_cast<const QLineEdit*>(object)) return !line->isReadOnly();
    if (qobject_cast<const QAbstractSpinBox*>(object)) return true;
    if (const auto* choice = qobject_cast<const QComboBox*>(object)) return choice->isEditable();
    if (const auto* text = qobject_cast<const QTextEdit*>(object)) return !text->isReadOnly();
    if (const auto* text = qobject_cast<const QPlainTextEdit*>(object)) return !text->isReadOnly();
    return false;
}

bool isEditingKey(QKeyEvent& key)
{
    for (const QKeySequence::StandardKey one :
         {QKeySequence::Undo, QKeySequence::Redo, QKeySequence::Cut, QKeySequence::Copy, QKeySequence::Paste,
          QKeySequence::SelectAll, QKeySequence::Delete, QKeySequence::MoveToNextWord,
          QKeySequence::MoveToPreviousWord, QKeySequence::SelectNextWord, QKeySequence::SelectPreviousWord,
          QKeySequence::DeleteEndOfWord, QKeySequence::DeleteStartOfWord}) {
        if (key.matches(one)) return true;
    }
    return false;
}

}  // namespace

bool FieldKeys::eventFilter(QObject* watched, QEvent* event)
{
    if (event->type() == QEvent::ShortcutOverride && isField(watched)) {
        auto* key = static_cast<QKeyEvent*>(event);
        const bool plain = !(key->modifiers() & (Qt::ControlModifier | Qt::AltModifier | Qt::MetaModifier));
        const bool functionKey = key->key() >= Qt::Key_F1 && key->key() <= Qt::Key_F35;
        if ((plain && !functionKey) || isEditingKey(*key)) {
            key->accept();
            return true;
        }
    }
    return QObject::eventFilter(watched, event);
}

}  // namespace yardcast::ui
