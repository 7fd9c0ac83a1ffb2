#include <QTemporaryDir>
#include <QtTest>

#include "pdf_probe.h"
#include "sheet_plans.h"
#include "ui/wording/pour_names.h"

using namespace yardcast;
using namespace yardcast::ui;

namespace {

QString seen(const PdfPage& page) { return page.text().replace(QChar(0x00A0), QLatin1Char(' ')).simplified(); }

}  // namespace

class PourSheetTest : public QObject {
    Q_OBJECT

private:
    QTemporaryDir folder_;

    std::vector<PdfPage> pagesOf(const Plan& plan)
    {
        const QString path = folder_.filePath(QStringLiteral("pour.pdf"));
        QString error;
        if (!writePackPdf(path, plan, *assessed(plan), {QStringLiteral("pour")}, &error, onFixedDay())) {
            qFatal("%s", qPrintable(error));
        }
        return readPdf(path);
    }

private slots:
    void namesEveryCastingLayerAndBatchOfTheDay()
    {
        const Plan plan = counterPlan();
        const AssessmentPtr assessment = assessed(plan);
        QVERIFY(!assessment->pour.days.empty());
        QString all;
        for (const PdfPage& page : pagesOf(plan)) all += seen(page) + QLatin1Char(' ');
        for (const PourDay& day : assessment->pour.days) {
            for (const PouredCasting& poured : day.castings) {
                QVERIFY(all.contains(QString::fromStdString(poured.casting)));
                for (const PourLayer& layer : poured.layers) {
                    QVERIFY2(all.contains(layerName(layer.kind)), qPrintable(layerName(layer.kind)));
                }
            }
            for (const PourBatch& batch : day.mixed) {
                const QString name = QStringLiteral("%1 %2").arg(QString::fromStdString(batch.mix)).arg(batch.number);
                QVERIFY2(all.contains(name), qPrintable(name));
            }
        }
        QVERIFY(all.contains(QStringLiteral("Cement burns")));
    }

    void anEmptyPlanSaysSo()
    {
        const auto pages = pagesOf(Plan{});
        QCOMPARE(pages.size(), std::size_t{1});
        QVERIFY(seen(pages[0]).contains(QStringLiteral("Nothing to pour yet")));
    }
};

QTEST_MAIN(PourSheetTest)
#include "pour_sheet_test.moc"
