#include "ui/window/print_desk.h"

#include <utility>

#include <QAction>
#include <QDesktopServices>
#include <QDir>
#include <QFileDialog>
#include <QFileInfo>
#include <QGuiApplication>
#include <QPrintDialog>
#include <QPrintPreviewDialog>
#include <QPrinter>
#include <QSettings>
#include <QUrl>

#include "core/assess/assess.h"
#include "core/io/plan_file.h"
#include "ui/document/file_session.h"
#include "ui/sheets/print_pack.h"
#include "ui/window/commands.h"
#include "ui/window/file_desk.h"
#include "ui/window/message_bar.h"
#include "ui/window/sheet_choice.h"
#include "ui/window/workbench.h"
#include "ui/wording/open_formats.h"

namespace yardcast::ui {

namespace {
constexpr auto kMessage = "print";
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
}

bool PrintDesk::writePdf(const QString& file, const QStringList& sheets)
{
    QString reason;
    SheetOptions options;
    options.frontLookDeg = lookDeg_();
    const bool written =
        writePackPdf(file, *bench_.document.committed(), *assessment(), sheets, &reason, options);
    return tell(written, file, reason);
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
    QPrinter printer(QPrinter::HighResolution);
    printer.setFullPage(true);
    printer.setDocName(QString::fromStdString(bench_.document.committed()->title));
    QPrintDialog dialog(&printer, &window_);
    dialog.setOption(QPrintDialog::PrintPageRange, false);
    if (dialog.exec() != QDialog::Accepted) return;
    if (paint(printer, sheets) > 0) return;
    messages_.show({kMessage, Message::Weight::stop, tr("The printer took nothing. Save the sheets as PDF and print "
                                                        "that file from elsewhere."),
                    {}, {{tr("Save as PDF..."), [this] { exportPdf(); }}}, {}});
}

void PrintDesk::preview()
{
    const QStringList sheets = askSheets(tr("Preview"));
    if (sheets.isEmpty()) return;
    QPrinter printer(QPrinter::HighResolution);
    printer.setFullPage(true);
    QPrintPreviewDialog dialog(&printer, &window_);
    dialog.setWindowTitle(tr("Print preview"));
    dialog.resize(window_.size() * 0.9);
    connect(&dialog, &QPrintPreviewDialog::paintRequested, this, [&](QPrinter* device) { paint(*device, sheets); });
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

int PrintDesk::paint(QPagedPaintDevice& device, const QStringList& sheets)
{
    SheetOptions options;
    options.frontLookDeg = lookDeg_();
    return paintPack(device, *bench_.document.committed(), *assessment(), sheets, options);
}

AssessmentPtr PrintDesk::assessment()
{
    const Plan& plan = *bench_.document.committed();
    const AssessmentPtr base = assess(plan, bench_.live.prices());
    // What goes on paper is solved finer than what is on the screen.
    QGuiApplication::setOverrideCursor(Qt::WaitCursor);
    const auto strength = strength_.assess(plan, *base, Refinement::printed);
    const AssessmentPtr solved = strength ? withStrength(plan, base, *strength) : base;
    const auto readiness = readiness_.assess(plan, *solved, {}, Refinement::printed);
    QGuiApplication::restoreOverrideCursor();
    return readiness ? withReadiness(plan, solved, *readiness) : solved;
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
