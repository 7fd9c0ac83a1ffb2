#include "ui/window/print_desk.h"

#include <memory>
#include <utility>

#include <QAction>
#include <QFileDialog>
#include <QPrintDialog>
#include <QPrinter>
#include <QSettings>

#include "ui/window/commands.h"
#include "ui/window/file_desk.h"
#include "ui/window/message_bar.h"
#include "ui/window/page_preview.h"
#include "ui/window/sheet_choice.h"
#include "ui/window/workbench.h"
#include "ui/window/written_files.h"

namespace yardcast::ui {

namespace {
constexpr auto kMessage = "print";
constexpr auto kProgress = "print-progress";
constexpr auto kSheets = "print/sheets";
}

PrintDesk::PrintDesk(QWidget& window, const Commands& commands, Workbench& bench, MessageBar& messages,
                     std::function<double()> lookDeg)
    : QObject(&window), window_(window), bench_(bench), messages_(messages), lookDeg_(std::move(lookDeg))
{
    connect(commands[Command::print], &QAction::triggered, this, &PrintDesk::print);
    connect(commands[Command::printPreview], &QAction::triggered, this, &PrintDesk::preview);
    connect(commands[Command::exportPdf], &QAction::triggered, this, &PrintDesk::exportPdf);
    connect(&paper_, &PaperRunner::progressed, this, &PrintDesk::showProgress);
    connect(&paper_, &PaperRunner::done, this, [this] {
        messages_.dismiss(kProgress);
        const auto then = std::exchange(then_, {});
        if (then) then();
    });
}

void PrintDesk::writePdf(const QString& file, const QStringList& sheets)
{
    struct Outcome {
        bool written = false;
        QString reason;
    };
    const auto outcome = std::make_shared<Outcome>();
    start(
        [=, look = options()](const PlanPtr& plan, const AssessmentPtr& assessment) {
            outcome->written = writePackPdf(file, *plan, *assessment, sheets, &outcome->reason, look);
        },
        [=, this] {
            tellWritten(messages_, kMessage, outcome->written, file, outcome->reason, [this] { exportPdf(); });
            emit written(outcome->written);
        });
}

void PrintDesk::printOn(const std::shared_ptr<QPrinter>& printer, const QStringList& sheets)
{
    const auto pages = std::make_shared<int>(0);
    start(
        [=, look = options()](const PlanPtr& plan, const AssessmentPtr& assessment) {
            *pages = paintPack(*printer, *plan, *assessment, sheets, look);
        },
        [=, this] {
            if (*pages == 0) {
                messages_.show({kMessage, Message::Weight::stop,
                                tr("The printer took nothing. Save the sheets as PDF and print that file from elsewhere."),
                                {}, {{tr("Save as PDF..."), [this] { exportPdf(); }}}, {}});
            } else {
                const QString text = *pages == 1 ? tr("1 page was given to the printer.")
                                                 : tr("%1 pages were given to the printer.").arg(*pages);
                messages_.show({kMessage, Message::Weight::note, text, {}, {}, {}});
            }
            emit written(*pages > 0);
        });
}

void PrintDesk::previewSheets(const QStringList& sheets)
{
    const auto pack = std::make_shared<std::shared_ptr<const SheetPack>>();
    start(
        [=, look = options()](const PlanPtr& plan, const AssessmentPtr& assessment) {
            *pack = std::make_shared<const SheetPack>(plan, assessment, sheets, look);
        },
        [=, this] {
            auto* preview = new PagePreview(*pack, &window_);
            preview->resize(window_.size() * 0.92);
            connect(preview, &PagePreview::printAsked, this, &PrintDesk::print);
            preview->open();
            emit previewed(preview);
        });
}

void PrintDesk::start(PaperRunner::Work work, std::function<void()> then)
{
    then_ = std::move(then);
    showProgress(0, 0);
    paper_.start(bench_.document.committed(), bench_.live.prices(), std::move(work));
}

void PrintDesk::showProgress(int solved, int castings)
{
    QString text = tr("The sheets are being made: what goes on paper is solved finer than what is on the screen.");
    if (castings > 0) {
        text = solved < castings
                   ? tr("The sheets are being made: %1 of %2 castings solved.").arg(solved).arg(castings)
                   : tr("The sheets are being made: all castings solved, now hours and cuts.");
    }
    messages_.show({kProgress, Message::Weight::note, text, {}, {{tr("Cancel"), [this] { cancel(); }}},
                    [this] { cancel(); }});
}

void PrintDesk::cancel()
{
    paper_.cancel();
    then_ = {};
    messages_.dismiss(kProgress);
}

QStringList PrintDesk::askSheets(const QString& doIt)
{
    FileDesk::commitField();
    const QStringList names = sheetNames();
    SheetChoice choice(names, bench_.settings.value(kSheets, usualSheetNames()).toStringList(), doIt, &window_);
    if (choice.exec() != QDialog::Accepted) return {};
    bench_.settings.setValue(kSheets, choice.chosen());
    return choice.chosen();
}

void PrintDesk::print()
{
    const QStringList sheets = askSheets(tr("Print..."));
    if (sheets.isEmpty()) return;
    const auto printer = std::make_shared<QPrinter>(QPrinter::HighResolution);
    printer->setFullPage(true);
    printer->setDocName(QString::fromStdString(bench_.document.committed()->title));
    QPrintDialog dialog(printer.get(), &window_);
    dialog.setOption(QPrintDialog::PrintPageRange, false);
    if (dialog.exec() != QDialog::Accepted) return;
    printOn(printer, sheets);
}

void PrintDesk::preview()
{
    const QStringList sheets = askSheets(tr("Preview"));
    if (!sheets.isEmpty()) previewSheets(sheets);
}

void PrintDesk::exportPdf()
{
    const QStringList sheets = askSheets(tr("Save as PDF..."));
    if (sheets.isEmpty()) return;
    const QString file = QFileDialog::getSaveFileName(&window_, tr("Save the sheets as PDF"),
                                                      proposedFile(bench_.session, {}, "pdf"), tr("PDF (*.pdf)"));
    if (!file.isEmpty()) writePdf(withEnding(file, "pdf"), sheets);
}

SheetOptions PrintDesk::options() const
{
    SheetOptions options;
    options.frontLookDeg = lookDeg_();
    return options;
}

}  // namespace yardcast::ui
