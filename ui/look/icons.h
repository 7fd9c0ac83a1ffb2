#pragma once

#include <QIcon>
#include <QString>

#include "ui/look/ink.h"

namespace yardcast::ui {

/// The icon of resources/icons/NAME.svg in the ink of the surface: what is drawn in #1D2226 there (or in
/// currentColor) gets `ink.ink`. Sharp at any size and device pixel ratio; disabled it is paler. A null icon where
/// there is no such file.
QIcon icon(const QString& name, const Ink& ink);
/// The same in another colour than the ink (a chosen or cautioning icon).
QIcon icon(const QString& name, const QColor& colour, const QColor& disabled);
bool hasIcon(const QString& name);

/// Makes ":/icons/...", ":/samples/..." and ":/example.yardprices" readable: they are linked into a static library,
/// which does not register them by itself. Safe to call again.
void loadResources();

}  // namespace yardcast::ui
