#include <QTemporaryDir>
#include <QtTest>

#include "pdf_probe.h"
#include "sheet_plans.h"
#include "ui/wording/mix_names.h"

using namespace yardcast;
using namespace yardcast::ui;

namespace {

QString plain(QString text)
{
    return text.replace(QChar(0x00A0), QLatin1Char(' ')).simplified();
}

}  // namespace

class MixSheetTest : public QObject {
    Q_OBJECT

private:
    QTemporaryDir folder_;

    /// Whatever size a batch of the pour plan has, its first water stands on a sheet.
    static bool theBatchesOfThePourAreAllWeighedOut(const Plan& plan, const Assessment& assessment, const QString& text)
    {
        bool all = true;
        for (const PourDay& day : assessment.pour.days) {
            for (const PourBatch& batch : day.mixed) {
                for (const MixQuantities& quantities : assessment.mixes) {
                    if (quantities.mix != batch.mix) continue;
                    const BatchCard card = batchOfLitres(plan, quantities, batch.litres);
                    all = all && !card.steps.empty() && text.contains(plain(stepAmountText(card.steps.front())));
                }
            }
        }
        return all;
    }

    std::vector<PdfPage> pagesOf(const Plan& plan)
    {
        const QString path = folder_.filePath(QStringLiteral("mix.pdf"));
        QString error;
        if (!writePackPdf(path, plan, *assessed(plan), {QStringLiteral("mix")}, &error, onFixedDay())) {
            qFatal("%s", qPrintable(error));
        }
        return readPdf(path);
    }

private slots:
    void aPageAMixWithAllThatGoesIntoEachBatch()
    {
        for (const std::string& name : samplePlanNames()) {
            const Plan plan = samplePlan(name);
            const AssessmentPtr assessment = assessed(plan);
            QStringList pages;
            QStringList others;
            for (const PdfPage& page : pagesOf(plan)) {
                const QString text = plain(page.text());
                (text.contains(QStringLiteral("Trial batch")) ? pages : others) << text;
            }
            QVERIFY(!assessment->cards.empty());
            QCOMPARE(static_cast<std::size_t>(pages.size()), assessment->cards.size());
            QVERIFY(theBatchesOfThePourAreAllWeighedOut(plan, *assessment, (pages + others).join(QLatin1Char(' '))));
            for (std::size_t i = 0; i < assessment->cards.size(); ++i) {
                const MixingCard& card = assessment->cards[i];
                const QString& text = pages[static_cast<qsizetype>(i)];
                QVERIFY(text.contains(QStringLiteral("Mix %1").arg(QString::fromStdString(card.mix))));
                for (const BatchCard* batch : card.batches()) {
                    for (const CardStep& step : batch->steps) {
                        QVERIFY2(text.contains(plain(stepAmountText(step))), qPrintable(stepAmountText(step)));
                        QVERIFY2(text.contains(plain(stepName(step, card.perBag))), qPrintable(stepName(step, true)));
                    }
                }
                // Nothing too little to mix, and the water of the bucket told from all the water.
                for (const BatchCard* batch : card.batches()) {
                    QVERIFY(card.count() == 1 || 3 * batch->litres > 0.999 * card.batches().front()->litres);
                    QVERIFY2(text.contains(plain(batchName(card, *batch))), qPrintable(batchName(card, *batch)));
                }
                QVERIFY2(text.contains(QStringLiteral("from the tap, into the bucket")), qPrintable(text));
                if (card.sparedL > 0.0) QVERIFY(text.contains(QStringLiteral("too little to mix well")));
                QVERIFY(text.contains(QStringLiteral("Trial batch")));
                QVERIFY(text.contains(QStringLiteral("Silica dust")));
                QVERIFY(text.contains(QStringLiteral("Cement burns")));
            }
        }
    }

    void aRecipeIsWeighedOut()
    {
        Plan plan = samplePlan("grill-bench");
        for (Mix& mix : plan.mixes) mix.recipe = Recipe{};
        const std::vector<PdfPage> pages = pagesOf(plan);
        const QString text = plain(pages.front().text());
        QVERIFY(text.contains(QStringLiteral("Sand")));
        QVERIFY(text.contains(QStringLiteral("Gravel")));
        QVERIFY(!text.contains(QStringLiteral("Dry mix")));
    }

    /// One rule for all: below 1 kg in g, below 1 l in ml.
    void amountsAreInOneRuleOfUnits()
    {
        QCOMPARE(plain(weighedText(0.9994)), QStringLiteral("999 g"));
        QCOMPARE(plain(weighedText(0.9996)), QStringLiteral("1.00 kg"));
        QCOMPARE(plain(weighedText(14.8)), QStringLiteral("14.8 kg"));
        QCOMPARE(plain(measuredText(0.52)), QStringLiteral("520 ml"));
        QCOMPARE(plain(measuredText(0.0084)), QStringLiteral("8.4 ml"));
        QCOMPARE(plain(measuredText(6.24)), QStringLiteral("6.24 l"));
        CardStep step;
        step.what = Ingredient::waterLast;
        step.litres = step.kg = 0.79;
        QCOMPARE(plain(stepAmountText(step)), QStringLiteral("790 ml"));
        step.what = Ingredient::sand;
        step.kg = 0.4;
        QCOMPARE(plain(stepAmountText(step)), QStringLiteral("400 g"));
    }

    void additionsAreInGramsAndMillilitres()
    {
        CardStep step;
        step.what = Ingredient::plasticiser;
        step.kg = 0.1284;
        step.litres = 0.12;
        QCOMPARE(plain(stepAmountText(step)), QStringLiteral("120 ml (128 g)"));
        step.what = Ingredient::silicaFume;
        step.kg = 1.25;
        QCOMPARE(plain(stepAmountText(step)), QStringLiteral("1.25 kg"));
        step.kg = 0.0026;
        QCOMPARE(plain(stepAmountText(step)), QStringLiteral("2.6 g"));
        step.what = Ingredient::dryMix;
        step.kg = 64.8;
        step.wholeBags = 2;
        step.restKg = 14.8;
        QCOMPARE(plain(stepAmountText(step)), QStringLiteral("2 bags and 14.8 kg"));
    }
};

QTEST_MAIN(MixSheetTest)
#include "mix_sheet_test.moc"
