#pragma once

#include <QColor>
#include <QFont>
#include <QObject>
#include <QPalette>

#include "ui/look/ink.h"

class QApplication;

namespace yardcast::ui {

class QuietStyle;

enum class Appearance { asSystem, light, dark };

/// By the lightness of window and text; there is no better sign before Qt 6.5.
bool isDark(const QPalette& palette);
/// The ink a widget with this palette belongs to: `lightInk()` or `darkInk()`. Widgets ask again on a palette change.
Ink inkOf(const QPalette& palette);
QPalette paletteOf(const Ink& ink);

/// `share` of `b` in `a`, 0 to 1, channel by channel.
QColor mixed(const QColor& a, const QColor& b, double share);
/// Outline of fields and boxes: at least 3:1 on `sheet` and `card` (WCAG 2.1, 1.4.11).
QColor outlineOf(const Ink& ink);
/// Text and icons that cannot be used now.
QColor disabledOf(const Ink& ink);

/// Spacing goes in steps of this many pixels.
inline constexpr int kStepPx = 4;
/// Least height and width of what is clicked.
inline constexpr int kTargetPx = 28;

/// The font itself where all its digits are equally wide, otherwise a sans (last of all a fixed) one that is.
QFont figureFont(const QFont& text);
/// The big figure of a card: 1.6 times the text, tabular.
QFont bigFigureFont(const QFont& text);

/// The look of the whole application. One stands in main(); it sets style and palette, and follows the desktop
/// while the appearance is `asSystem`.
class Theme : public QObject {
    Q_OBJECT

public:
    explicit Theme(QApplication& application, Appearance appearance = Appearance::asSystem);

    const Ink& ink() const { return ink_; }
    Appearance appearance() const { return appearance_; }
    void setAppearance(Appearance appearance);

signals:
    void inkChanged(const Ink& ink);

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void apply();

    QApplication& application_;
    QuietStyle* style_;
    Appearance appearance_;
    Ink ink_;
    bool applying_ = false;
};

}  // namespace yardcast::ui
