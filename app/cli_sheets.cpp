#include <QFile>
#include <QGuiApplication>
#include <QStringList>

#include "app/cli_commands.h"
#include "app/cli_exports.h"
#include "ui/sheets/print_pack.h"

namespace yardcast::cli {

namespace {

/// Painting text needs an application with fonts. The platform that draws into memory serves, display or not.
class Painting {
public:
    Painting() : argc_(withoutDisplay()), application_(argc_, argv_) {}

private:
    static int withoutDisplay()
    {
        qputenv("QT_QPA_PLATFORM", "offscreen");
        // What the toolkit remarks about its surroundings is nothing to the person.
        qInstallMessageHandler([](QtMsgType type, const QMessageLogContext&, const QString& text) {
            if (type == QtCriticalMsg || type == QtFatalMsg) complain(text.toStdString());
        });
        return 1;
    }

    int argc_;  // before the application, which keeps a reference to it
    char name_[13] = "yardcast-cli";
    char* argv_[2] = {name_, nullptr};
    QGuiApplication application_;
};

QStringList wantedSheets(const std::string& names)
{
    QStringList wanted;
    for (const QString& name : QString::fromStdString(names).split(QLatin1Char(','), Qt::SkipEmptyParts)) {
        wanted << name.trimmed();
    }
    return wanted;
}

}  // namespace

int printSheets(const Job& job)
{
    if (wouldOverwritePlan(job)) return kUnusable;
    const QStringList known = ui::sheetNames();
    const QStringList wanted = wantedSheets(job.sheets);
    for (const QString& name : wanted) {
        if (known.contains(name)) continue;
        complain("there is no sheet \"" + name.toStdString() + "\". There are: " +
                 known.join(QStringLiteral(", ")).toStdString() + ".");
        return kUnusable;
    }
    std::optional<Loaded> loaded = load(job);
    if (!loaded) return kUnusable;
    solve(*loaded, Refinement::printed);
    solveCuts(*loaded);
    const Painting painting;
    QString error;
    ui::SheetOptions options;
    options.only = QString::fromStdString(job.part);
    if (ui::writePackPdf(QFile::decodeName(job.outPath.c_str()), loaded->plan, *loaded->assessment,
                         wanted.isEmpty() ? ui::usualSheetNames() : wanted, &error, options)) {
        return kDone;
    }
    complain(job.outPath + ": " + error.toStdString());
    return kUnusable;
}

int draw(const Job& job)
{
    if (wouldOverwritePlan(job)) return kUnusable;
    if (wantsDxf(job)) return drawDxf(job);
    const QStringList views = ui::svgViews();
    if (!views.contains(QString::fromStdString(job.view))) {
        complain("there is no view \"" + job.view + "\". There are: " +
                 views.join(QStringLiteral(", ")).toStdString() + ".");
        return kUnusable;
    }
    std::optional<Loaded> loaded = load(job);
    if (!loaded) return kUnusable;
    if (job.view == "strength" || job.view == "lift") solve(*loaded, Refinement::printed);
    if (!knowsPart(*loaded, job.part)) return kUnusable;
    const Painting painting;
    QString error;
    if (ui::writePlanSvg(QFile::decodeName(job.outPath.c_str()), loaded->plan, *loaded->assessment,
                         QString::fromStdString(job.view), QString::fromStdString(job.part), &error)) {
        return kDone;
    }
    complain(job.outPath + ": " + error.toStdString());
    return kUnusable;
}

}  // namespace yardcast::cli
