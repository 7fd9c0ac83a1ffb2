#pragma once

#include <functional>

#include <QFrame>

#include "ui/canvas/typed_size.h"
#include "ui/look/ink.h"

class QLabel;
class QLineEdit;

namespace yardcast::ui {

/// The small field at the pointer. Enter applies what makes sense, and says in words what does not; Escape closes.
class TypedSizeField : public QFrame {
    Q_OBJECT

public:
    /// Empty when the size was taken, or why not, in words.
    using Accept = std::function<QString(const TypedSize&)>;

    explicit TypedSizeField(QWidget* parent);

    /// Near `at` (parent's pixels), inside the parent. A prefilled text can be `selected`, to be typed over.
    void open(QPoint at, const QString& text, bool selected, Accept accept, std::function<void()> cancelled);
    bool isOpen() const { return isVisible(); }
    void setInk(const Ink& ink);
    /// Applies what is typed, as Enter does; false when it was refused (the field stays open).
    bool apply();
    /// Closes without applying.
    void close();
    QString text() const;
    QString fault() const;

signals:
    void closed();

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void say(const QString& fault);
    void place();

    QLineEdit* edit_;
    QLabel* fault_;
    QPoint at_;
    Accept accept_;
    std::function<void()> cancelled_;
    Ink ink_ = lightInk();
};

}  // namespace yardcast::ui
