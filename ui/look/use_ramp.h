#pragma once

#include <QColor>

namespace yardcast::ui {

/// The one ramp for use in percent of what may be used, from pale (nothing) to dark (100 and more). Equal steps of use
/// are equal steps of lightness (Oklab), so that it is read right without colour and by every eye; the same on light
/// and dark surfaces.
QColor useColour(double percent);
/// Ink that can be read on it, dark on pale and pale on dark: at least 4.5:1.
QColor inkOnUse(double percent);

}  // namespace yardcast::ui
