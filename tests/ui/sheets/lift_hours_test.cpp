#include <QTemporaryDir>
#include <QtTest>

#include "core/assess/readiness_assessor.h"
#include "core/assess/strength_assessor.h"
#include "pdf_probe.h"
#include "sheet_plans.h"
#include "ui/sheets/sheet_frame.h"
#include "ui/wording/readiness_names.h"

using namespace yardcast;
using namespace yardcast::ui;

namespace {

QString plain(QString text)
{
    return text.replace(QChar(0x00A0), QLatin1Char(' ')).simplified();
}

AssessmentPtr solved(const Plan& plan)
{
    const AssessmentPtr base = assessed(plan);
    return withStrength(plan, base, *StrengthAssessor().assess(plan, *base, Refinement::draft));
}

AssessmentPtr ready(const Plan& plan, const AssessmentPtr& assessment)
{
    return withReadiness(plan, assessment, *ReadinessAssessor().assess(plan, *assessment, {}, Refinement::draft));
}

}  // namespace

class LiftHoursTest : public QObject {
    Q_OBJECT

private:
    QTemporaryDir folder_;

    std::vector<PdfPage> pagesOf(const Plan& plan, const Assessment& assessment)
    {
        const QString path = folder_.filePath(QStringLiteral("lift.pdf"));
        QString error;
        if (!writePackPdf(path, plan, assessment, {QStringLiteral("lift")}, &error, onFixedDay())) {
            qFatal("%s", qPrintable(error));
        }
        return readPdf(path);
    }
    static QString textOf(const std::vector<PdfPage>& pages)
    {
        QString text;
        for (const PdfPage& page : pages) text += page.text() + QLatin1Char(' ');
        return plain(text);
    }

private slots:
    void hoursStandOnTheCardsWhereTheyAreKnown()
    {
        for (const std::string& name : samplePlanNames()) {
            const Plan plan = samplePlan(name);
            const AssessmentPtr assessment = solved(plan);
            const QString without = textOf(pagesOf(plan, *assessment));
            QVERIFY(!without.contains(QStringLiteral("holds with the safety kept")));

            const AssessmentPtr known = ready(plan, assessment);
            const std::vector<PdfPage> pages = pagesOf(plan, *known);
            const QString text = textOf(pages);
            QVERIFY(!known->hours.empty());
            for (const CastingHoursPtr& hours : known->hours) {
                QVERIFY(text.contains(QStringLiteral("plan: %1").arg(plain(plannedHourText(hours->planH)))));
                for (const EarliestHour& hour : hours->ways) {
                    QVERIFY(text.contains(handlingWayName(hour.way), Qt::CaseInsensitive));
                    if (!hour.possible) continue;
                    QVERIFY2(text.contains(plain(waitText(hour.cautiousH))), qPrintable(waitText(hour.cautiousH)));
                }
            }
            // Nothing runs into the title block, nor over the frame: a tenth of a mm for how a PDF rounds.
            const QRectF frame = frameBox(false).adjusted(-0.1, -0.1, 0.1, 0.1);
            for (const PdfPage& page : pages) {
                const double end = contentBox(false, false).bottom();
                for (const PdfWord& word : page.words) {
                    QVERIFY2(frame.contains(word.box), qPrintable(word.text));
                    QVERIFY2(word.box.bottom() < end + 0.1 || word.box.top() > end - 0.1, qPrintable(word.text));
                }
            }
        }
    }
};

QTEST_MAIN(LiftHoursTest)
#include "lift_hours_test.moc"
