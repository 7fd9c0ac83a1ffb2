#include <cmath>

#include <QFile>
#include <QPainter>
#include <QRegularExpression>
#include <QSvgRenderer>
#include <QTemporaryDir>
#include <QtTest>

#include "sheet_plans.h"

using namespace yardcast;
using namespace yardcast::ui;

class PlanSvgTest : public QObject {
    Q_OBJECT

private:
    QTemporaryDir folder_;

    QString svgOf(const Plan& plan, const QString& part = {})
    {
        const QString path = folder_.filePath(QStringLiteral("plan.svg"));
        QString error;
        if (!writePlanSvg(path, plan, *assessed(plan), QStringLiteral("plan"), part, &error)) {
            qFatal("%s", qPrintable(error));
        }
        return path;
    }
    static QByteArray bytes(const QString& path)
    {
        QFile file(path);
        return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
    }

private slots:
    void itIsReadAndSaysItsTrueSize()
    {
        for (const std::string& name : samplePlanNames()) {
            const Plan plan = samplePlan(name);
            const QString path = svgOf(plan);
            const QSvgRenderer renderer(path);
            QVERIFY(renderer.isValid());
            const QByteArray text = bytes(path);
            const QRegularExpression size(QStringLiteral("width=\"(\\d+)mm\" height=\"(\\d+)mm\""));
            const auto match = size.match(QString::fromUtf8(text.left(400)));
            QVERIFY(match.hasMatch());
            QCOMPARE(match.captured(1).toDouble(), renderer.viewBoxF().width());
            QCOMPARE(match.captured(2).toDouble(), renderer.viewBoxF().height());
            QVERIFY(text.contains("<title>" + QByteArray::fromStdString(plan.title)));
            QVERIFY(text.contains("<desc>"));
        }
    }

    void aSlabIsAsLongAsItIs()
    {
        const QString path = svgOf(counterPlan());
        QSvgRenderer renderer(path);
        constexpr double kMmPerDot = 2.0;
        QImage picture((renderer.viewBoxF().size() / kMmPerDot).toSize(), QImage::Format_RGB32);
        picture.fill(Qt::white);
        QPainter painter(&picture);
        renderer.render(&painter);
        painter.end();
        int longest = 0;
        for (int y = 0; y < picture.height(); ++y) {
            int run = 0;
            for (int x = 0; x < picture.width(); ++x) {
                run = qGray(picture.pixel(x, y)) < 110 ? run + 1 : 0;
                longest = std::max(longest, run);
            }
        }
        // The front edge, with half a line's width at both ends.
        QVERIFY2(std::fabs(longest * kMmPerDot - 1800.0) < 12.0, qPrintable(QString::number(longest * kMmPerDot)));
    }

    void onePartHasAllItsDimensions()
    {
        const QByteArray text = bytes(svgOf(counterPlan(), QStringLiteral("C1")));
        for (const char* figure : {">1800<", ">600<", ">500<", ">450<", ">850<", ">110<", ">400<", ">90<"}) {
            QVERIFY2(text.contains(figure), figure);
        }
    }

    void everyPartOfTheSamplesCanBeDrawnAlone()
    {
        // The reader warns of what it leaves out; that is a failure here.
        QTest::failOnWarning(QRegularExpression(QStringLiteral("Invalid path")));
        for (const std::string& name : samplePlanNames()) {
            const Plan plan = samplePlan(name);
            for (const PartPtr& part : plan.parts) {
                const QString path = svgOf(plan, QString::fromStdString(part->id));
                const QSvgRenderer renderer(path);
                QVERIFY2(renderer.isValid(), part->id.c_str());
            }
        }
    }

    void wrongRequestsAreSaid()
    {
        const Plan plan = counterPlan();
        const AssessmentPtr assessment = assessed(plan);
        const QString path = folder_.filePath(QStringLiteral("none.svg"));
        QString error;
        QVERIFY(!writePlanSvg(path, plan, *assessment, QStringLiteral("cloud"), {}, &error));
        QVERIFY(error.contains(QStringLiteral("cloud")));
        QVERIFY(!writePlanSvg(path, plan, *assessment, QStringLiteral("plan"), QStringLiteral("C9"), &error));
        QVERIFY(error.contains(QStringLiteral("C9")));
        QVERIFY(!writePlanSvg(folder_.filePath(QStringLiteral("no/such.svg")), plan, *assessment,
                              QStringLiteral("plan"), {}, nullptr));
        QVERIFY(!QFile::exists(path));
    }

    void anEmptyPlanIsAnEmptySheet()
    {
        const QSvgRenderer renderer(svgOf(Plan()));
        QVERIFY(renderer.isValid());
    }
};

QTEST_MAIN(PlanSvgTest)
#include "plan_svg_test.moc"
