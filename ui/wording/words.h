#pragma once

#include <QCoreApplication>

namespace yardcast::ui {

/// The translation context of everything this folder says: Words::tr("...").
class Words {
    Q_DECLARE_TR_FUNCTIONS(wording)
};

}  // namespace yardcast::ui
