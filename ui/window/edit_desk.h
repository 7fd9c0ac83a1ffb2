#pragma once

#include <QObject>

#include "core/plan/edits.h"

class QWidget;

namespace yardcast::ui {

class Canvas;
class Commands;
class PlanDocument;
class Selection;

/// The commands of the menus Edit and Arrange, and which of them can be used now.
class EditDesk : public QObject {
    Q_OBJECT

public:
    EditDesk(QWidget& window, const Commands& commands, PlanDocument& document, Selection& selection, Canvas& canvas);

    bool copy();
    void cut();
    void paste();

private:
    void align(AlignTo line, const QString& name);
    void distribute(Axis axis, const QString& name);
    void raise(double byMm);
    void turnBy();
    void enable();
    void undoStep(bool forward);
    Ids chosen() const;

    QWidget& window_;
    const Commands& commands_;
    PlanDocument& document_;
    Selection& selection_;
    Canvas& canvas_;
    int pastes_ = 0;
};

}  // namespace yardcast::ui
