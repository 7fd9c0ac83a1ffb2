#pragma once

#include <QString>

#include "core/purchase/price_book.h"
#include "ui/document/autosave.h"
#include "ui/document/file_session.h"
#include "ui/document/plan_document.h"
#include "ui/document/recent_files.h"
#include "ui/document/selection.h"
#include "ui/live/live_assessment.h"

class QSettings;

namespace yardcast::ui {

/// Everything a window shows and nothing that is shown: it outlives every widget, so that none can reach what is gone.
struct Workbench {
    explicit Workbench(QSettings& settingsToUse)
        : settings(settingsToUse), selection(document), live(document, exampleBook()), session(document),
          autosave(document, session), recent(settingsToUse)
    {
    }

    QSettings& settings;
    PlanDocument document;
    Selection selection;
    LiveAssessment live;
    FileSession session;
    Autosave autosave;
    RecentFiles recent;
};

}  // namespace yardcast::ui
