#pragma once

#include <QWidget>

#include "ui/look/ink.h"

namespace yardcast::ui {

/// Where something of this size goes beside the pointer: below and to the right of it, kept inside.
QPoint besidePointer(QPoint pointer, QSize size, QSize room);

/// Figures beside the pointer. It takes no pointer events.
class PointerLabel : public QWidget {
    Q_OBJECT

public:
    explicit PointerLabel(QWidget* parent);

    void setInk(const Ink& ink);
    /// Empty hides.
    void say(const QString& text);
    void follow(QPoint pointer);
    QString text() const { return text_; }

protected:
    void paintEvent(QPaintEvent*) override;

private:
    void place();

    QString text_;
    QPoint pointer_;
    Ink ink_ = lightInk();
};

}  // namespace yardcast::ui
