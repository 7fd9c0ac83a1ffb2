#include <QRegularExpression>
#include <QTemporaryDir>
#include <QtTest>

#include "fake_strength.h"
#include "pdf_probe.h"
#include "sheet_plans.h"
#include "ui/drawing/strength_picture.h"
#include "ui/sheets/hold_pages.h"
#include "ui/sheets/strength_tables.h"
#include "ui/wording/figures.h"
#include "ui/wording/strength_names.h"

using namespace yardcast;
using namespace yardcast::ui;

namespace {

QString seen(const PdfPage& page)
{
    return page.text().replace(QChar(0x00A0), QLatin1Char(' ')).simplified();
}

QRectF placeOf(const PdfPage& page, const QString& text)
{
    for (const PdfWord& word : page.words) {
        if (word.text == text) {
            return word.box;
        }
    }
    return {};
}

}  // namespace

class StrengthSheetTest : public QObject {
    Q_OBJECT

private:
    QTemporaryDir folder_;

    std::vector<PdfPage> pagesOf(const Plan& plan, const Assessment& assessment)
    {
        const QString path = folder_.filePath(QStringLiteral("strength.pdf"));
        QString error;
        if (!writePackPdf(path, plan, assessment, {QStringLiteral("strength")}, &error, onFixedDay())) {
            qFatal("%s", qPrintable(error));
        }
        return readPdf(path);
    }

private slots:
    void aCounterHasItsWorstCasesDrawnAndAllInATable()
    {
        const Plan plan = counterPlan();
        const auto pages = pagesOf(plan, *withFakeStrength(assessed(plan)));
        QVERIFY(pages.size() >= std::size_t{4});
        QVERIFY(seen(pages[0]).contains(QStringLiteral("Worst in place: in use with loads, at 28 days, use 71 %")));
        QVERIFY(seen(pages[1]).contains(QStringLiteral("Worst when handled: carried flat, at 48 h, use 123 %")));
        for (int i = 0; i < 2; ++i) {
            const QString text = seen(pages[i]);
            QVERIFY(text.contains(QStringLiteral("as it stands")));
            QVERIFY(text.contains(QStringLiteral("strip in front of sink K1")));
            QVERIFY(text.contains(QStringLiteral("412")));
            QVERIFY(text.contains(QStringLiteral("FRONT: one stands here")));
            QVERIFY(text.contains(QStringLiteral("Check: this line is 100 mm long")));
            // The lines of equal use have their figures.
            QVERIFY(!placeOf(pages[i], QStringLiteral("50")).isNull());
        }
        QVERIFY(!placeOf(pages[1], QStringLiteral("100")).isNull());
        QVERIFY(seen(pages[0]).contains(QStringLiteral("S3 lifts off")));
        // Handled face down, and drawn as it stands: said, so that left and right are not taken for each other.
        QVERIFY(!seen(pages[0]).contains(QStringLiteral("lies face down")));
        QVERIFY(seen(pages[1]).contains(QStringLiteral("In this case it lies face down; it is drawn as it stands.")));
    }

    void everyCaseIsSaidWithWhatHoldsItAndItsWorstSection()
    {
        const Plan plan = counterPlan();
        const AssessmentPtr assessment = withFakeStrength(assessed(plan));
        const QString text = seen(pagesOf(plan, *assessment).back());
        for (const CaseResult& result : assessment->strength.at(0)->cases) {
            QVERIFY2(text.contains(strengthCaseName(result.which)), qPrintable(strengthCaseName(result.which)));
            QVERIFY(text.contains(QStringLiteral("%1 %").arg(result.usePercent)));
        }
        QVERIFY(text.contains(QStringLiteral("Held by S1: 42 kg, S2: 39 kg. IT LIFTS OFF S3: nothing presses there.")));
        QVERIFY(text.contains(QStringLiteral("×1.30 and 1 kPa")));
        QVERIFY(text.contains(QStringLiteral("moment 412 Nm/m, force 0.31 N/mm")));
        QVERIFY(text.contains(QStringLiteral("lies outside the code's scope")));
        QVERIFY(text.contains(QStringLiteral("fibres are not counted")));
    }

    void liftingDaySaysWhereHandsAndBattensGo()
    {
        const Plan plan = counterPlan();
        const AssessmentPtr assessment = withFakeStrength(assessed(plan));
        const Casting& casting = *assessment->castings.at(0).casting;
        const auto pages = pagesOf(plan, *assessment);
        const auto day = std::find_if(pages.begin(), pages.end(), [](const PdfPage& page) {
            return seen(page).contains(QStringLiteral("Lifting day."));
        });
        QVERIFY(day != pages.end());
        const QString text = seen(*day);
        const QString mass = massText(casting.massKg).replace(QChar(0x00A0), QLatin1Char(' '));
        QVERIFY(text.contains(QStringLiteral("weighs %1").arg(mass)));
        QVERIFY(text.contains(QStringLiteral("not before 48 h")));
        // Each hand with its place: 190 N is 19 kg.
        QVERIFY(text.contains(QStringLiteral("hand 1 250 60 19 kg")));
        const double deep = std::round(casting.boundsMm.height() - 60.0);
        QVERIFY2(text.contains(QStringLiteral("hand 3 250 %1 20 kg").arg(deep)), qPrintable(text));
        // A batten lies right across: the distance of its middle line.
        QVERIFY(text.contains(QStringLiteral("batten 1 330 right across 41 kg")));
        QVERIFY(text.contains(QStringLiteral("It turns about its front edge; hands go under its back edge.")));
        QVERIFY(!text.contains(QRegularExpression(QStringLiteral("[0-9] N\\b"))));
        // The places of every way of holding it are drawn, those that are the same once.
        QString all;
        for (const PdfPage& page : pages) all += seen(page) + QLatin1Char(' ');
        QVERIFY(all.contains(QStringLiteral("Breaking loose from the mould, carried flat Drawn 1:")));
        QVERIFY(all.contains(QStringLiteral("Set down on two rests Drawn 1:")));
        QVERIFY(!all.contains(QStringLiteral("edge 1")));
    }

    void edgesAreCalledByWhereTheyLie()
    {
        Casting casting;
        casting.kind = PartKind::counter;
        const Ring ring{{100.0, 50.0}, {1100.0, 50.0}, {1100.0, 450.0}, {900.0, 650.0}, {100.0, 650.0}};
        casting.outline = {{ring, {}}};
        casting.boundsMm = *boundsOf(ring);
        QCOMPARE(edgeText(casting, 0), QStringLiteral("its front edge"));
        QCOMPARE(edgeText(casting, 1), QStringLiteral("its right edge"));
        QVERIFY(edgeText(casting, 2).startsWith(QStringLiteral("the edge from 1000, 400 to 800, 600")));
        QCOMPARE(edgeText(casting, 3), QStringLiteral("its back edge"));
        QCOMPARE(edgeText(casting, 4), QStringLiteral("its left edge"));
        QVERIFY(edgeText(casting, 5).isEmpty() && edgeText(casting, -1).isEmpty());
        casting.kind = PartKind::support;
        QCOMPARE(edgeText(casting, 0), QStringLiteral("its foot"));
    }

    void everyLetterOfTheTableStandsOnTheDrawing()
    {
        const Plan plan = counterPlan();
        auto assessment = std::make_shared<Assessment>(*withFakeStrength(assessed(plan)));
        auto strength = std::make_shared<CastingStrength>(*assessment->strength.at(0));
        for (CaseResult& result : strength->cases) {
            // Several cuts that all end next to the worst place.
            for (int i = 0; i < 4; ++i) {
                SectionForces more = result.sections.at(0);
                more.from.x += 8.0 * i;
                more.to.x += 8.0 * i;
                result.sections.push_back(more);
            }
        }
        assessment->strength = {strength};
        const PdfPage page = pagesOf(plan, *assessment).at(0);
        for (const char letter : {'a', 'b', 'c', 'd', 'e', 'f'}) {
            std::vector<QRectF> found;
            for (const PdfWord& word : page.words) {
                if (word.text == QString(QLatin1Char(letter))) found.push_back(word.box);
            }
            // Once in the table, once on the drawing.
            QVERIFY2(found.size() >= 2, qPrintable(QString(QLatin1Char(letter))));
        }
        QVERIFY(!placeOf(page, QStringLiteral("71")).isNull());
    }

    void legendsNameOnlyWhatIsThere()
    {
        const Plan plan = counterPlan();
        const auto pages = pagesOf(plan, *withFakeStrength(assessed(plan)));
        QVERIFY(!seen(pages[0]).contains(QStringLiteral("circles")));
        QVERIFY(seen(pages[1]).contains(QStringLiteral("Numbered circles: hands.")));
        QVERIFY(!seen(pages[1]).contains(QStringLiteral("Dashed:")));
        QVERIFY(!strengthLegend(CaseResult{}, false).contains(QStringLiteral("Letters")));
    }

    void whatTipsIsSaidAndNotDrawn()
    {
        const Plan plan = counterPlan();
        auto assessment = std::make_shared<Assessment>(*withFakeStrength(assessed(plan)));
        auto strength = std::make_shared<CastingStrength>(*assessment->strength.at(0));
        for (CaseResult& result : strength->cases) {
            if (result.which != StrengthCase::ownWeight && result.which != StrengthCase::inPlace) continue;
            result.holds = false;
            result.usePercent = 0.0;
        }
        assessment->strength = {strength};
        const auto pages = pagesOf(plan, *assessment);
        QVERIFY(seen(pages[0]).contains(QStringLiteral("Worst when handled")));
        QVERIFY(seen(pages.back()).contains(QStringLiteral("Nothing holds it in this case, or it tips")));
    }

    void aPlanThatWasNotSolvedSaysSo()
    {
        const Plan plan = counterPlan();
        const auto pages = pagesOf(plan, *assessed(plan));
        QCOMPARE(pages.size(), std::size_t{1});
        QVERIFY(seen(pages[0]).contains(QStringLiteral("has not been computed")));
    }

    void uprightsShareATable()
    {
        const Plan plan = samplePlan("grill-bench");
        const auto pages = pagesOf(plan, *withFakeStrength(assessed(plan)));
        QString text;
        for (const PdfPage& page : pages) text += seen(page) + QLatin1Char(' ');
        QVERIFY(text.contains(QStringLiteral("supports and panels")));
        for (const PartPtr& part : plan.parts) {
            if (part->kind() != PartKind::support && part->kind() != PartKind::panel) continue;
            QVERIFY2(text.contains(QString::fromStdString(part->id)), part->id.c_str());
        }
    }

    void noWordLeavesTheFrame()
    {
        for (const std::string& name : samplePlanNames()) {
            const Plan plan = samplePlan(name);
            for (const PdfPage& page : pagesOf(plan, *withFakeStrength(assessed(plan)))) {
                const QRectF frame(20.0, 10.0, page.sizeMm.width() - 30.0, page.sizeMm.height() - 20.0);
                for (const PdfWord& word : page.words) {
                    QVERIFY2(word.box.left() > frame.left() && word.box.right() < frame.right() &&
                                 frame.contains(word.box.center()),
                             qPrintable(word.text));
                }
            }
        }
    }

    void levelsAlwaysShowSomethingAndNeverTooMuch()
    {
        for (const double most : {0.7, 3.0, 12.0, 31.0, 55.0, 99.0, 100.0, 123.0, 240.0, 900.0, 7000.0}) {
            const std::vector<double> levels = useLevels(most);
            QVERIFY2(!levels.empty() || most < 1.0, qPrintable(QString::number(most)));
            QVERIFY(levels.size() <= 9);
            QVERIFY(std::is_sorted(levels.begin(), levels.end()));
            QCOMPARE(std::find(levels.begin(), levels.end(), 100.0) != levels.end(), most >= 100.0);
            QVERIFY(levels.empty() || levels.back() <= most);
        }
        const std::vector<double> usual{25.0, 50.0, 75.0, 100.0};
        QCOMPARE(useLevels(123.0), usual);
    }

    void onlyTheWorstSectionsAreShownInTheirOwnOrder()
    {
        CaseResult result;
        for (const double use : {10.0, 90.0, 20.0, 80.0}) {
            SectionForces section;
            section.usePercent = use;
            result.sections.push_back(section);
        }
        const auto shown = shownSections(result, 2);
        QCOMPARE(shown.size(), std::size_t{2});
        QCOMPARE(shown[0].usePercent, 90.0);
        QCOMPARE(shown[1].usePercent, 80.0);
        QCOMPARE(sectionLetter(0), QStringLiteral("a"));
        QCOMPARE(sectionLetter(27), QStringLiteral("b2"));
    }
};

QTEST_MAIN(StrengthSheetTest)
#include "strength_sheet_test.moc"
