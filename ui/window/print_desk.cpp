#include "ui/window/print_desk.h"

#include <memory>
#include <utility>

#include <QAction>
#include <QDesktopServices>
#include <QDir>
#include <QFileDialog>
#include <QFileInfo>
#include <QPrintDialog>
#include <QPrintPreviewDialog>
#include <QPrinter>
#include <QSettings>
#include <QUrl>

#include "core/assess/assess.h"
#include "core/io/plan_file.h"
#include "ui/document/file_session.h"
#include "ui/window/commands.h"
#include "ui/window/file_desk.h"
#include "ui/window/message_bar.h"
#include "ui/window/sheet_choice.h"
#include "ui/window/workbench.h"
#include "ui/wording/open_formats.h"

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
    connect(commands[Command::exportSvg], &QAction::triggered, this, &PrintDesk::exportSvg);
    connect(commands[Command::exportDxf], &QAction::triggered, this, &PrintDesk::exportDxf);
    connect(commands[Command::exportStl], &QAction::triggered, this, &PrintDesk::exportStl);
    connect(&paper_, &PaperRunner::progressed, this, &PrintDesk::showProgress);
    connect(&paper_, &PaperRunner::done, this, [this](const PlanPtr& plan, const AssessmentPtr& assessment) {
        messages_.dismiss(kProgress);
        const Then then = std::exchange(then_, {});
        if (then) then(*plan, *assessment);
    });
}

void PrintDesk::writePdf(const QString& file, const QStringList& sheets)
{
    struct Outcome {
        bool written = false;
        QString reason;
    };
    const auto outcome = std::make_shared<Outcome>();
    // The pages are painted on the other thread as well.
    start(
        [=, look = options()](const Plan& plan, const Assessment& assessment) {
            outcome->written = writePackPdf(file, plan, assessment, sheets, &outcome->reason, look);
        },
        [=, this](const Plan&, const Assessment&) {
            tell(outcome->written, file, outcome->reason);
            emit written(outcome->written);
        });
}

void PrintDesk::whenSolved(Then then) { start({}, std::move(then)); }

void PrintDesk::start(PaperRunner::Work work, Then then)
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

bool PrintDesk::writeSvg(const QString& file)
{
    QString reason;
    const Plan& plan = *bench_.document.committed();
    const bool written = writePlanSvg(file, plan, *assess(plan, bench_.live.prices()), "plan", {}, &reason);
    return tell(written, file, reason);
}

bool PrintDesk::writeDxf(const QString& file)
{
    return writeWhole(file, planDxf(*bench_.document.committed(), castings()));
}

bool PrintDesk::writeStl(const QString& file)
{
    return writeWhole(file, kitchenStl(*bench_.document.committed(), castings()));
}

std::vector<CastingPtr> PrintDesk::castings() const
{
    std::vector<CastingPtr> all;
    for (const PartPtr& part : bench_.document.committed()->parts) {
        const std::vector<CastingPtr> own = castingsOf(*part);
        all.insert(all.end(), own.begin(), own.end());
    }
    return all;
}

bool PrintDesk::writeWhole(const QString& file, const std::string& bytes)
{
    const std::string error = writeFileAtomically(corePath(file), bytes);
    return tell(error.empty(), file, QString::fromStdString(error));
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
    whenSolved([this, sheets, printer](const Plan& plan, const Assessment& assessment) {
        printSolved(plan, assessment, sheets, *printer);
    });
}

void PrintDesk::printSolved(const Plan& plan, const Assessment& assessment, const QStringList& sheets,
                            QPrinter& printer)
{
    if (paintPack(printer, plan, assessment, sheets, options()) > 0) return;
    messages_.show({kMessage, Message::Weight::stop, tr("The printer took nothing. Save the sheets as PDF and print "
                                                        "that file from elsewhere."),
                    {}, {{tr("Save as PDF..."), [this] { exportPdf(); }}}, {}});
}

void PrintDesk::preview()
{
    const QStringList sheets = askSheets(tr("Preview"));
    if (sheets.isEmpty()) return;
    whenSolved([this, sheets](const Plan& plan, const Assessment& assessment) {
        previewSolved(plan, assessment, sheets);
    });
}

void PrintDesk::previewSolved(const Plan& plan, const Assessment& assessment, const QStringList& sheets)
{
    QPrinter printer(QPrinter::HighResolution);
    printer.setFullPage(true);
    QPrintPreviewDialog dialog(&printer, &window_);
    dialog.setWindowTitle(tr("Print preview"));
    dialog.resize(window_.size() * 0.9);
    connect(&dialog, &QPrintPreviewDialog::paintRequested, this,
            [&](QPrinter* device) { paintPack(*device, plan, assessment, sheets, options()); });
    dialog.exec();
}

void PrintDesk::exportPdf()
{
    const QStringList sheets = askSheets(tr("Save as PDF..."));
    if (sheets.isEmpty()) return;
    const QString file = QFileDialog::getSaveFileName(&window_, tr("Save the sheets as PDF"), proposedFile("pdf"),
                                                      tr("PDF (*.pdf)"));
    if (!file.isEmpty()) writePdf(QFileInfo(file).suffix().isEmpty() ? file + ".pdf" : file, sheets);
}

void PrintDesk::exportSvg()
{
    FileDesk::commitField();
    const QString file = QFileDialog::getSaveFileName(&window_, tr("Save the drawing as SVG"), proposedFile("svg"),
                                                      tr("SVG (*.svg)"));
    if (!file.isEmpty()) writeSvg(QFileInfo(file).suffix().isEmpty() ? file + ".svg" : file);
}

void PrintDesk::exportDxf()
{
    FileDesk::commitField();
    const QString file = QFileDialog::getSaveFileName(&window_, tr("Save the drawing as DXF"), proposedFile("dxf"),
                                                      tr("DXF (*.dxf)"));
    if (!file.isEmpty()) writeDxf(QFileInfo(file).suffix().isEmpty() ? file + ".dxf" : file);
}

void PrintDesk::exportStl()
{
    FileDesk::commitField();
    const QString file = QFileDialog::getSaveFileName(&window_, tr("Save the kitchen as STL"), proposedFile("stl"),
                                                      tr("STL (*.stl)"));
    if (!file.isEmpty()) writeStl(QFileInfo(file).suffix().isEmpty() ? file + ".stl" : file);
}

SheetOptions PrintDesk::options() const
{
    SheetOptions options;
    options.frontLookDeg = lookDeg_();
    return options;
}

QString PrintDesk::proposedFile(const QString& extension) const
{
    const QString path = bench_.session.path();
    if (!path.isEmpty()) {
        const QFileInfo info(path);
        return info.dir().filePath(info.completeBaseName() + "." + extension);
    }
    return QDir(documentsFolder()).filePath(tr("kitchen") + "." + extension);
}

bool PrintDesk::tell(bool written, const QString& file, const QString& reason)
{
    if (written) {
        messages_.show({kMessage, Message::Weight::note, tr("Written: %1").arg(QDir::toNativeSeparators(file)), {},
                        {{tr("Open it"), [file] { QDesktopServices::openUrl(QUrl::fromLocalFile(file)); }}}, {}});
    } else {
        messages_.show({kMessage, Message::Weight::stop,
                        tr("%1 was not written: %2").arg(QDir::toNativeSeparators(file), reason), {}, {}, {}});
    }
    return written;
}

}  // namespace yardcast::ui
