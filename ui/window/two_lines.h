#pragma once

#include <QFont>
#include <QString>
#include <QStringList>

namespace yardcast::ui {

/// The text broken between words into at most two lines of this width; what does not fit is elided at the end.
QStringList brokenInTwo(const QString& text, const QFont& font, int widthPx);

}  // namespace yardcast::ui
