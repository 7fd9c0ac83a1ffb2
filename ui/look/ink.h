#pragma once

#include <QColor>

namespace yardcast::ui {

/// The colours of one surface. Text on `sheet`, `bench` and `card` has a contrast of at least 4.5:1 in `ink`, `pencil`,
/// `caution`, `stop` and `chosen` (a test holds this).
struct Ink {
    bool dark = false;
    QColor sheet;    ///< the paper one draws on
    QColor bench;    ///< what surrounds it
    QColor card;     ///< side panels
    QColor line;     ///< hairlines between areas of the window
    QColor ink;      ///< lines and text
    QColor pencil;   ///< secondary lines and text
    QColor grid;
    QColor cast;     ///< concrete in plan
    QColor castDots;
    QColor timber;
    QColor foam;
    QColor steel;
    QColor appliance;
    QColor water;
    QColor power;
    QColor gas;
    QColor ground;
    QColor chosen;
    QColor hover;
    QColor caution;
    QColor stop;
};

Ink lightInk();
Ink darkInk();
/// Black and white safe: greys that keep apart on any printer.
Ink paperInk();
/// WCAG 2.1 contrast ratio of two opaque colours, 1 to 21.
double contrastRatio(const QColor& a, const QColor& b);

}  // namespace yardcast::ui
