#pragma once

#include <functional>
#include <memory>

#include <QObject>
#include <QString>
#include <QStringList>

#include "core/assess/assessment.h"
#include "ui/live/paper_runner.h"
#include "ui/sheets/print_pack.h"

class QPrinter;
class QWidget;

namespace yardcast::ui {

class Commands;
class MessageBar;
class PagePreview;
struct Workbench;

/// Print, preview and PDF. What goes on paper is the plan as it was committed when it was asked for, with an assessment
/// of exactly that plan. It is solved and painted beside the window: the message bar says how far it is and lets go of it.
class PrintDesk : public QObject {
    Q_OBJECT

public:
    /// `lookDeg` tells from where the elevation is looked at now.
    PrintDesk(QWidget& window, const Commands& commands, Workbench& bench, MessageBar& messages,
              std::function<double()> lookDeg);

    /// Begins it; `written` comes when it is done, the outcome stands in the message bar.
    void writePdf(const QString& file, const QStringList& sheets);
    /// The same on a printer.
    void printOn(const std::shared_ptr<QPrinter>& printer, const QStringList& sheets);
    /// The same in a window, page by page; `previewed` comes when it is there.
    void previewSheets(const QStringList& sheets);
    bool isBusy() const { return paper_.isRunning(); }
    void cancel();

signals:
    /// Not after it was cancelled.
    void written(bool well);
    void previewed(PagePreview* preview);

private:
    /// `work` beside the window once the committed plan is solved, `then` in the window after it.
    void start(PaperRunner::Work work, std::function<void()> then);
    void showProgress(int solved, int castings);
    QStringList askSheets(const QString& doIt);
    void print();
    void preview();
    void exportPdf();
    SheetOptions options() const;

    QWidget& window_;
    Workbench& bench_;
    MessageBar& messages_;
    std::function<double()> lookDeg_;
    PaperRunner paper_;
    std::function<void()> then_;
};

}  // namespace yardcast::ui
