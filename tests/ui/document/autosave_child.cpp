// Changes a plan ten times a second until it is killed, and tells each change on standard output.
#include <cstdio>

#include <QCoreApplication>
#include <QStandardPaths>
#include <QTimer>

#include "core/io/plan_file.h"
#include "core/plan/edits.h"
#include "ui/document/autosave.h"
#include "ui/document/file_session.h"
#include "ui/document/plan_document.h"

using namespace yardcast;
using namespace yardcast::ui;

int main(int argc, char** argv)
{
    QCoreApplication app(argc, argv);
    QStandardPaths::setTestModeEnabled(true);
    QCoreApplication::setApplicationName("yardcast-autosave-test");
    PlanDocument document;
    FileSession session(document);
    Autosave autosave(document, session);
    const QStringList arguments = QCoreApplication::arguments();
    if (arguments.size() < 3) return 2;
    if (arguments[2] == "untitled") {
        const PlanReading reading = readPlan(readFile(corePath(arguments[1])).text.value_or(std::string()));
        if (!reading.plan) return 3;
        session.startUntitled(*reading.plan);
    } else if (!session.open(arguments[1]).opened) {
        return 3;
    }
    QTimer hand;
    int changes = 0;
    QObject::connect(&hand, &QTimer::timeout, &app, [&] {
        document.apply("nudge",
                       [](const Plan& plan) { return moveParts(plan, {plan.parts.front()->id}, {1.0, 0.0}); });
        std::printf("%d\n", ++changes);
        std::fflush(stdout);
    });
    hand.start(100);
    return QCoreApplication::exec();
}
