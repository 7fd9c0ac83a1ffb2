#pragma once

#include <QString>
#include <QTimer>
#include <QWidget>

#include "ui/look/ink.h"

namespace yardcast::ui {

/// What the colours of the stage Strength mean: the ramp with its figures, the case that is shown, by how much
/// deflections are enlarged, and a small running mark while the figures are being refined. It lies in a corner of the
/// sheet and takes no pointer events.
class StrengthLegend : public QWidget {
    Q_OBJECT

public:
    explicit StrengthLegend(QWidget* parent);

    void setInk(const Ink& ink);
    /// One line a string; empty strings are left out.
    void setLines(const QStringList& lines);
    /// The colours are told where any are seen.
    void setRampShown(bool shown);
    void setRefining(bool refining);
    const QStringList& lines() const { return lines_; }
    bool isRunning() const { return runs_.isActive(); }

    /// In the corner of the room at lower left; the scale bar is at lower right.
    void place(QSize room);

    QSize sizeHint() const override;

protected:
    void paintEvent(QPaintEvent*) override;
    void hideEvent(QHideEvent* event) override;
    void showEvent(QShowEvent* event) override;

private:
    void fit();
    void run();

    QStringList lines_;
    bool rampShown_ = true;
    bool refining_ = false;
    QTimer patience_;
    QTimer runs_;
    int turn_ = 0;
    QSize room_;
    Ink ink_ = lightInk();
};

/// A small running mark: a dot that goes round, in steps of an eighth.
void paintRunningMark(QPainter& painter, const QRectF& rect, int turn, const QColor& colour);

}  // namespace yardcast::ui
