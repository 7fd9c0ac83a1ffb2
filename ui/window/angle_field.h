#pragma once

#include <QFrame>

class QLabel;
class QLineEdit;

namespace yardcast::ui {

/// A small field for an angle; Enter takes it, Escape or a click elsewhere drops it. Deletes itself.
class AngleField : public QFrame {
    Q_OBJECT

public:
    explicit AngleField(QWidget* parent);
    void openOver(const QWidget& place);

signals:
    /// Degrees, counter-clockwise.
    void entered(double byDeg);

private:
    void take();

    QLineEdit* edit_;
    QLabel* fault_;
};

}  // namespace yardcast::ui
