#pragma once

#include <QFrame>
#include <QList>
#include <QString>

class QScreen;

namespace yardcast::ui {

/// A figure of this plan that went into another: "Litres to mix", "312.4 l".
struct FigureValue {
    QString name;
    QString value;
};

/// How a figure came about: formula, this plan's values, source, assumption. Closes by Escape or a click elsewhere.
class FigurePopover : public QFrame {
    Q_OBJECT

public:
    FigurePopover(const QString& code, const QList<FigureValue>& values, QWidget* parent);

    /// Below the place (in coordinates of the screen), or above it.
    void showBeside(const QRect& place, const QScreen& screen);
};

}  // namespace yardcast::ui
