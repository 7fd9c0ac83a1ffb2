#pragma once

#include <QObject>

namespace yardcast::ui {

/// Keys without Ctrl or Alt, and the usual keys of editing a text, belong to the field that has the focus; only what it
/// cannot use reaches the commands of the window. Install on the application.
class FieldKeys : public QObject {
    Q_OBJECT

public:
    using QObject::QObject;

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;
};

}  // namespace yardcast::ui
