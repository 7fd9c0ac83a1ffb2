#pragma once

#include <QDialog>
#include <QList>
#include <QStringList>

class QCheckBox;
class QPushButton;

namespace yardcast::ui {

/// Which sheets are wanted. Remembers nothing by itself.
class SheetChoice : public QDialog {
    Q_OBJECT

public:
    /// `chosen`: names that are ticked at first. `doIt`: the word on the button that goes on.
    SheetChoice(const QStringList& names, const QStringList& chosen, const QString& doIt, QWidget* parent = nullptr);

    QStringList chosen() const;

private:
    QStringList names_;
    QList<QCheckBox*> ticks_;
    QPushButton* go_;
};

}  // namespace yardcast::ui
