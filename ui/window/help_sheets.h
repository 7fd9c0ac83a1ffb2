#pragma once

class QWidget;

namespace yardcast::ui {

/// The sheets of the Help menu: windows beside the drawing, never modal; a second call brings the same one forward.
void showKeysSheet(QWidget& window);
void showCautionsSheet(QWidget& window);
void showAboutSheet(QWidget& window);

}  // namespace yardcast::ui
