#pragma once

#include <functional>

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
struct Workbench;

/// Print, preview, and files for other programs. What goes on paper is the plan as it was committed when it was asked for, with an
/// assessment of exactly that plan, solved beside the window: the message bar says how far it is and lets go of it.
class PrintDesk : public QObject {
    Q_OBJECT

public:
    /// `lookDeg` tells from where the elevation is looked at now.
    PrintDesk(QWidget& window, const Commands& commands, Workbench& bench, MessageBar& messages,
              std::function<double()> lookDeg);

    /// Begins it; `written` comes when it is done, the outcome stands in the message bar.
    void writePdf(const QString& file, const QStringList& sheets);
    /// These tell the outcome in the message bar.
    bool writeSvg(const QString& file);
    bool writeDxf(const QString& file);
    bool writeStl(const QString& file);
    bool isBusy() const { return paper_.isRunning(); }
    void cancel();

signals:
    /// Not after it was cancelled.
    void written(bool well);

private:
    using Then = std::function<void(const Plan&, const Assessment&)>;
    /// `then` in the window once the committed plan is solved.
    void whenSolved(Then then);
    void start(PaperRunner::Work work, Then then);
    void showProgress(int solved, int castings);
    QStringList askSheets(const QString& doIt);
    void print();
    void preview();
    void exportPdf();
    void exportSvg();
    void exportDxf();
    void exportStl();
    std::vector<CastingPtr> castings() const;
    bool writeWhole(const QString& file, const std::string& bytes);
    void printSolved(const Plan& plan, const Assessment& assessment, const QStringList& sheets, QPrinter& printer);
    void previewSolved(const Plan& plan, const Assessment& assessment, const QStringList& sheets);
    SheetOptions options() const;
    QString proposedFile(const QString& extension) const;
    bool tell(bool written, const QString& file, const QString& reason);

    QWidget& window_;
    Workbench& bench_;
    MessageBar& messages_;
    std::function<double()> lookDeg_;
    PaperRunner paper_;
    Then then_;
};

}  // namespace yardcast::ui
