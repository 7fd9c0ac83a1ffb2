#include "ui/panels/fields/field.h"

#include <QEvent>
#include <QLabel>
#include <QVBoxLayout>

#include "ui/look/theme.h"

namespace yardcast::ui {

namespace {

/// Ink of a severity that follows the palette.
class MessageLabel : public QLabel {
public:
    explicit MessageLabel(QWidget* parent) : QLabel(parent)
    {
        setWordWrap(true);
        setTextFormat(Qt::PlainText);
        hide();
    }
    void say(const QString& text, bool isFault)
    {
        isFault_ = isFault;
        setText(text);
        setVisible(!text.isEmpty());
        useInk();
    }

protected:
    void changeEvent(QEvent* event) override
    {
        QLabel::changeEvent(event);
        if (event->type() == QEvent::PaletteChange) useInk();
    }

private:
    void useInk()
    {
        const Ink ink = inkOf(parentWidget()->palette());
        const QColor wanted = isFault_ ? ink.stop : ink.caution;
        if (palette().color(QPalette::WindowText) == wanted) return;
        QPalette own;
        own.setColor(QPalette::WindowText, wanted);
        setPalette(own);
    }
    bool isFault_ = false;
};

QString lowered(const QString& text) { return text.isEmpty() ? text : text.left(1).toLower() + text.mid(1); }

}  // namespace

Field::Field(FieldHost& host, const QString& path, const QString& label, QWidget* parent)
    : QWidget(parent), host_(host), labelText_(label), editName_(tr("Change %1").arg(lowered(label))),
      label_(new QLabel(label, this)), message_(new MessageLabel(this)), row_(new QHBoxLayout),
      column_(new QVBoxLayout(this))
{
    setObjectName(path);
    label_->setWordWrap(true);
    label_->setFixedWidth(labelWidth(*this));
    label_->setMinimumHeight(kTargetPx);
    label_->setForegroundRole(QPalette::PlaceholderText);
    row_->setContentsMargins(0, 0, 0, 0);
    row_->setSpacing(2 * kStepPx);
    row_->addWidget(label_, 0, Qt::AlignTop);
    column_->setContentsMargins(0, 0, 0, 0);
    column_->setSpacing(0);
    column_->addLayout(row_);
    column_->addWidget(message_);
}

int Field::labelWidth(const QWidget& widget) { return widget.fontMetrics().averageCharWidth() * 17; }

void Field::setHint(const QString& hint)
{
    setToolTip(hint);
    setWhatsThis(hint);
}

void Field::setEditor(QWidget* editor, const QString& unit)
{
    editor->setAccessibleName(unit.isEmpty() ? labelText_ : tr("%1, %2").arg(labelText_, unit));
    label_->setBuddy(editor);
    row_->addWidget(editor, 1);
    if (unit.isEmpty()) return;
    auto* unitLabel = new QLabel(unit, this);
    unitLabel->setForegroundRole(QPalette::PlaceholderText);
    unitLabel->setMinimumWidth(fontMetrics().averageCharWidth() * 5);
    row_->addWidget(unitLabel);
}

void Field::setContent(QWidget* content, bool showsLabel)
{
    label_->setMinimumWidth(0);
    label_->setMaximumWidth(QWIDGETSIZE_MAX);
    label_->setVisible(showsLabel);
    row_->setStretchFactor(label_, 1);
    column_->insertWidget(1, content);
}

void Field::setThere(bool there)
{
    there_ = there;
    if (isHidden() == there) setVisible(there);
}

void Field::setMessage(const QString& text, bool isFault)
{
    fault_ = isFault ? text : QString();
    static_cast<MessageLabel*>(message_)->say(text, isFault);
    setAccessibleDescription(text);
}

QString Field::message() const { return message_->isHidden() ? QString() : message_->text(); }

}  // namespace yardcast::ui
