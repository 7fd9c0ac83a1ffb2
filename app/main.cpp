#include <clocale>
#include <cstdio>
#include <fstream>
#include <iostream>
#include <sstream>
#include <string>

#include <QApplication>
#include <QCommandLineParser>
#include <QDir>
#include <QIcon>
#include <QLibraryInfo>
#include <QLocale>
#include <QSettings>
#include <QTemporaryDir>
#include <QTimer>
#include <QTranslator>

#include <time.h>
#include <unistd.h>

#include "ui/canvas/canvas.h"
#include "ui/look/theme.h"
#include "ui/window/main_window.h"
#include "ui/window/workbench.h"

namespace {

using namespace yardcast::ui;

constexpr int kWrongUsage = 2;
/// A picture is taken when nothing has changed for so long: late layouts and the refining of figures are over then.
constexpr int kSettleMs = 400;
constexpr int kLongestWaitMs = 20000;

/// Milliseconds since the process was started, with what the loader did before main(); to 10 ms. -1 where the system
/// does not tell.
long long msSinceProcessStart()
{
    std::ifstream stat("/proc/self/stat");
    std::string text;
    if (!std::getline(stat, text)) return -1;
    // The name in brackets may hold anything; starttime is the 20th word after it.
    std::istringstream words(text.substr(text.rfind(')') + 1));
    std::string word;
    for (int i = 0; i < 20; ++i) words >> word;
    timespec now{};
    clock_gettime(CLOCK_BOOTTIME, &now);
    const long long startedMs = std::stoll(word) * 1000 / sysconf(_SC_CLK_TCK);
    return now.tv_sec * 1000LL + now.tv_nsec / 1000000 - startedMs;
}

/// "yardcast_de.qm" of the program's folder or the installed one; none comes with this version, English is in the code.
void loadTranslations(QApplication& application)
{
    const QString folder = QCoreApplication::applicationDirPath();
    for (const auto& [name, places] :
         {std::pair<QString, QStringList>{"yardcast", {folder, folder + "/../share/yardcast/translations"}},
          std::pair<QString, QStringList>{"qtbase", {QLibraryInfo::path(QLibraryInfo::TranslationsPath)}}}) {
        for (const QString& place : places) {
            auto* translator = new QTranslator(&application);
            if (translator->load(QLocale(), name, "_", place) && QCoreApplication::installTranslator(translator)) break;
            delete translator;
        }
        // Buttons of Qt in another language than everything else would be no help.
        if (name == "yardcast" && application.findChildren<QTranslator*>().isEmpty()) return;
    }
}

std::optional<Stage> stageOf(const QString& word)
{
    static const std::pair<const char*, Stage> kWords[] = {{"layout", Stage::layOut}, {"strength", Stage::strength},
                                                           {"steel", Stage::steel},   {"mould", Stage::mould},
                                                           {"pour", Stage::pour},     {"lift", Stage::lift},
                                                           {"buy", Stage::buy}};
    for (const auto& [name, stage] : kWords) {
        if (word == QLatin1String(name)) return stage;
    }
    return std::nullopt;
}

std::optional<QSize> sizeOf(const QString& text)
{
    const QStringList sides = text.split('x');
    bool okWidth = false;
    bool okHeight = false;
    if (sides.size() != 2) return std::nullopt;
    const QSize size(sides[0].toInt(&okWidth), sides[1].toInt(&okHeight));
    if (!okWidth || !okHeight || size.width() < 200 || size.height() < 200) return std::nullopt;
    return size;
}

int wrongUsage(const char* what)
{
    std::cerr << "yardcast: " << what << "\n";
    return kWrongUsage;
}

/// Calls `act` once, when the figures belong to the plan on the sheet and nothing moved for a while.
template <typename Act>
void whenSettled(Workbench& bench, QObject& owner, Act act)
{
    auto* quiet = new QTimer(&owner);
    quiet->setSingleShot(true);
    quiet->setInterval(kSettleMs);
    QObject::connect(&bench.live, &LiveAssessment::assessed, quiet, [&bench, quiet] {
        if (bench.live.isCurrent() && !bench.live.isRefining()) quiet->start();
    });
    if (bench.live.assessment() && bench.live.isCurrent() && !bench.live.isRefining()) quiet->start();
    QObject::connect(quiet, &QTimer::timeout, &owner, [quiet, act] {
        quiet->disconnect();
        act();
    });
}

}  // namespace

int main(int argc, char** argv)
{
    QGuiApplication::setHighDpiScaleFactorRoundingPolicy(Qt::HighDpiScaleFactorRoundingPolicy::PassThrough);
    for (int i = 1; i < argc; ++i) {
        if (std::string_view(argv[i]).starts_with("--picture") && qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) {
            qputenv("QT_QPA_PLATFORM", "offscreen");
        }
    }
    QApplication application(argc, argv);
    // Qt sets the locale of the process; printf and friends inside libraries must not write a decimal comma into files.
    std::setlocale(LC_NUMERIC, "C");
    QApplication::setOrganizationName("yardcast");
    QApplication::setApplicationName("yardcast");
    QApplication::setApplicationVersion(YARDCAST_VERSION);
    QApplication::setApplicationDisplayName("Yardcast");
    QGuiApplication::setDesktopFileName("yardcast");
    QApplication::setWindowIcon(QIcon(":/icons/yardcast.svg"));
    loadTranslations(application);

    QCommandLineParser parser;
    parser.setApplicationDescription(QCoreApplication::translate("main", "Planner for casting an outdoor kitchen."));
    parser.addHelpOption();
    parser.addVersionOption();
    parser.addPositionalArgument("plan", "A plan file (.yardplan).", "[plan]");
    const QCommandLineOption picture("picture", "Write a picture of the window and end.", "file.png");
    const QCommandLineOption stageName("stage", "layout, strength, steel, mould, pour, lift or buy.", "stage");
    const QCommandLineOption view("view", "above or front.", "view");
    const QCommandLineOption choose("choose", "Choose this part.", "id");
    const QCommandLineOption dark("dark", "Dark colours.");
    const QCommandLineOption light("light", "Light colours.");
    const QCommandLineOption size("size", "Size of the window, such as 1366x768.", "size");
    const QCommandLineOption timeStart("time-start", "Print the milliseconds until the window can be used, and end.");
    parser.addOptions({picture, stageName, view, choose, dark, light, size, timeStart});
    parser.process(application);

    const std::optional<Stage> stage = stageOf(parser.value(stageName));
    if (parser.isSet(stageName) && !stage) return wrongUsage("no such stage");
    const std::optional<QSize> windowSize = sizeOf(parser.value(size));
    if (parser.isSet(size) && !windowSize) return wrongUsage("a size looks like 1366x768");
    if (parser.isSet(view) && parser.value(view) != "above" && parser.value(view) != "front") {
        return wrongUsage("no such view");
    }
    if (parser.positionalArguments().size() > 1) return wrongUsage("one plan at a time");

    // A picture neither follows nor changes the settings of the person.
    QTemporaryDir ownSettings;
    const bool aside = parser.isSet(picture);
    QSettings settings(aside ? ownSettings.filePath("settings.ini") : QSettings().fileName(), QSettings::IniFormat);
    if (aside) settings.setValue("started_before", true);
    Appearance appearance = Appearance(qBound(0, settings.value("appearance", 0).toInt(), 2));
    if (aside) appearance = Appearance::light;
    if (parser.isSet(light)) appearance = Appearance::light;
    if (parser.isSet(dark)) appearance = Appearance::dark;
    Theme theme(application, appearance);

    int status = 0;
    {
        Workbench bench(settings);
        MainWindow window(bench, theme);
        if (windowSize) window.resize(*windowSize);
        window.show();
        const bool opened = window.start(parser.positionalArguments().value(0));
        if (aside && !opened) return wrongUsage("the plan could not be opened");
        if (stage) window.showStage(*stage);
        if (parser.value(view) == "front") window.canvas().setProjection(Projection::front());
        if (parser.isSet(choose)) bench.selection.setParts({parser.value(choose)});
        if (parser.isSet(view)) window.canvas().zoomFit();
        if (parser.isSet(timeStart)) {
            const auto tell = [] {
                std::printf("%lld\n", msSinceProcessStart());
                std::fflush(stdout);
                QCoreApplication::quit();
            };
            // The loop comes to rest after the first figures have been painted.
            QObject::connect(&bench.live, &LiveAssessment::assessed, &window, [&] {
                if (bench.live.isCurrent()) QTimer::singleShot(0, &window, tell);
            });
        }
        if (aside) {
            whenSettled(bench, window, [&] {
                if (!window.grab().save(parser.value(picture))) status = wrongUsage("the picture could not be written");
                QCoreApplication::quit();
            });
            QTimer::singleShot(kLongestWaitMs, &window, [&] {
                status = wrongUsage("the figures did not come");
                QCoreApplication::quit();
            });
        }
        const int ended = QApplication::exec();
        if (status == 0) status = ended;
    }
    return status;
}
