#pragma once

#include <QCoreApplication>

namespace yardcast::ui {

/// The translation context of everything this folder says: Words::tr("...").
class Words {
    Q_DECLARE_TR_FUNCTIONS(wording)
};

/// Marks a sentence of a table for translation; Words::tr() translates it where it is shown.
#define WORDS(text) QT_TRANSLATE_NOOP("wording", text)

}  // namespace yardcast::ui
