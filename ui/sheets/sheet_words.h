#pragma once

#include <QCoreApplication>

namespace yardcast::ui {

/// The translation context of everything printed: Sheets::tr("...").
class Sheets {
    Q_DECLARE_TR_FUNCTIONS(Sheets)
};

}  // namespace yardcast::ui
