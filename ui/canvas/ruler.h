#pragma once

#include <QWidget>

#include "ui/look/ink.h"

namespace yardcast::ui {

inline constexpr int kRulerPx = 24;

/// A ruler in cm along one edge of the view, with a mark where the pointer is and a band where what is chosen lies.
class Ruler : public QWidget {
    Q_OBJECT

public:
    explicit Ruler(Qt::Orientation orientation, QWidget* parent = nullptr);

    void setInk(const Ink& ink);
    /// mm at the start of the ruler (left, or top), and the zoom. Upright rulers count upwards.
    void setView(double startMm, double pixelsPerMm);
    /// Pixels along the ruler; negative: the pointer is elsewhere.
    void setPointer(double px);
    /// What is chosen, in px along the ruler; nothing when `toPx` is not greater.
    void setBand(double fromPx, double toPx);

    QSize sizeHint() const override { return {kRulerPx, kRulerPx}; }

protected:
    void paintEvent(QPaintEvent*) override;

private:
    bool isLevel() const { return orientation_ == Qt::Horizontal; }
    QRect strip(double px) const;

    Qt::Orientation orientation_;
    Ink ink_ = lightInk();
    double startMm_ = 0.0;
    double pixelsPerMm_ = 0.2;
    double pointerPx_ = -1.0;
    double bandFrom_ = 0.0;
    double bandTo_ = 0.0;
};

}  // namespace yardcast::ui
