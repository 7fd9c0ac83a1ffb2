#pragma once

#include <QApplication>
#include <QDir>
#include <QSignalSpy>
#include <QTest>

#include "core/io/plan_file.h"
#include "core/purchase/price_book.h"
#include "tests/ui/live/quick_strength.h"
#include "ui/document/plan_document.h"
#include "ui/document/selection.h"
#include "ui/live/live_assessment.h"

namespace yardcast::ui {

/// One of the sample projects, by its file name.
inline Plan samplePlan(const std::string& name)
{
    const FileText file = readFile(std::string(YARDCAST_SOURCE_DIR "/sample-projects/") + name);
    if (!file.text) qFatal("no sample %s", name.c_str());
    PlanReading reading = readPlan(*file.text);
    if (!reading.plan) qFatal("sample %s cannot be read: %s", name.c_str(), reading.problems[0].pointer.c_str());
    return std::move(*reading.plan);
}

/// What a panel is given: a document, a selection, the live assessment.
struct PanelFixture {
    PlanDocument document;
    Selection selection{document};
    LiveAssessment live{document, exampleBook(), nullptr, QuickStrength()};

    explicit PanelFixture(const Plan& plan = {})
    {
        document.reset(plan);
        settle();
    }
    /// Until strength is as fine as it gets.
    void settleStrength()
    {
        QVERIFY(QTest::qWaitFor([this] { return live.isCurrent() && !live.isRefining(); }, 20000));
    }
    /// Until the assessment speaks about the shown plan.
    void settle()
    {
        QVERIFY(QTest::qWaitFor([this] { return live.assessment() && live.isCurrent(); }, 20000));
    }
};

/// Saves the picture where YARDCAST_PICTURES names a folder.
inline void keepPicture(const QPixmap& picture, const QString& name)
{
    const QString folder = qEnvironmentVariable("YARDCAST_PICTURES");
    if (!folder.isEmpty()) picture.save(QDir(folder).filePath(name + QStringLiteral(".png")));
}

}  // namespace yardcast::ui
