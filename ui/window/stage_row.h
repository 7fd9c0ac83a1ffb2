#pragma once

#include <QToolBar>

class QLineEdit;

namespace yardcast::ui {

class Commands;
class PlanDocument;

/// The top row: title of the plan, undo and redo, the stages as numbered words in the order of the job, print.
class StageRow : public QToolBar {
    Q_OBJECT

public:
    StageRow(const Commands& commands, PlanDocument& document, QWidget* parent = nullptr);

signals:
    /// Enter or Escape in the title: the keys belong to the sheet again.
    void titleDone();

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void showTitle();
    void takeTitle();

    PlanDocument& document_;
    QLineEdit* title_;
};

}  // namespace yardcast::ui
