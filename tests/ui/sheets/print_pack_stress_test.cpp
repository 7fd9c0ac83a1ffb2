#include <algorithm>

#include <QTemporaryDir>
#include <QtTest>

#include "pdf_probe.h"
#include "sheet_plans.h"

using namespace yardcast;
using namespace yardcast::ui;

namespace {

const std::string kLongName =
    "The long counter beside the old pear tree where the evening sun comes in, with the wide sink and the small "
    "window to the neighbours' vegetable garden, second try";

/// Words of a list stand on nothing but paper: no two of them overlap.
QString firstOverlap(const PdfPage& page)
{
    for (std::size_t i = 0; i < page.words.size(); ++i) {
        for (std::size_t j = i + 1; j < page.words.size(); ++j) {
            QRectF a = page.words[i].box;
            QRectF b = page.words[j].box;
            // Boxes are as high as the type's line: a fifth of it is air.
            a.adjust(0.1, 0.2 * a.height(), -0.1, -0.2 * a.height());
            b.adjust(0.1, 0.2 * b.height(), -0.1, -0.2 * b.height());
            if (a.intersects(b)) {
                return page.words[i].text + QStringLiteral(" on ") + page.words[j].text;
            }
        }
    }
    return {};
}

QString firstOutside(const PdfPage& page)
{
    const QRectF frame(20.0, 10.0, page.sizeMm.width() - 30.0, page.sizeMm.height() - 20.0);
    for (const PdfWord& word : page.words) {
        if (!frame.contains(word.box.center()) || word.box.left() < frame.left() || word.box.right() > frame.right()) {
            return word.text;
        }
    }
    return {};
}

}  // namespace

class PrintPackStressTest : public QObject {
    Q_OBJECT

private:
    QTemporaryDir folder_;

    std::vector<PdfPage> pagesOf(const Plan& plan, const Assessment& assessment, const QStringList& sheets)
    {
        const QString path = folder_.filePath(QStringLiteral("pack.pdf"));
        QString error;
        if (!writePackPdf(path, plan, assessment, sheets, &error, onFixedDay())) {
            qFatal("%s", qPrintable(error));
        }
        // Kept for whoever wants to look at the sheets.
        const QByteArray keep = qgetenv("YARDCAST_KEEP_SHEETS");
        if (!keep.isEmpty()) {
            const QString copy = QString::fromLocal8Bit(keep) + QLatin1Char('/') +
                                 QString::fromLatin1(QTest::currentTestFunction()) + QStringLiteral(".pdf");
            QFile::remove(copy);
            QFile::copy(path, copy);
        }
        return readPdf(path);
    }

    void verifyClean(const std::vector<PdfPage>& pages, bool lists)
    {
        QVERIFY(!pages.empty());
        for (const PdfPage& page : pages) {
            QCOMPARE(firstOutside(page), QString());
            if (lists) {
                QCOMPARE(firstOverlap(page), QString());
            }
        }
    }

private slots:
    void samplesOverlapNowhereInTheirLists()
    {
        for (const std::string& name : samplePlanNames()) {
            const Plan plan = samplePlan(name);
            verifyClean(pagesOf(plan, *assessed(plan), {QStringLiteral("shopping"), QStringLiteral("lift")}), true);
        }
    }

    void longNamesAreNotCutIntoFigures()
    {
        Plan plan = samplePlan("corner-kitchen");
        plan.title = kLongName;
        for (PartPtr& part : plan.parts) {
            Part renamed = *part;
            renamed.name = kLongName;
            part = std::make_shared<const Part>(renamed);
        }
        Assessment assessment = *assessed(plan);
        for (ShoppingLine& line : assessment.shopping.lines) {
            line.name = kLongName;
        }
        const auto pages = pagesOf(plan, assessment, {QStringLiteral("shopping"), QStringLiteral("lift")});
        verifyClean(pages, true);
        // Templates of true size go on over the edge of a page, on purpose.
        verifyClean(pagesOf(plan, assessment, usualSheetNames()), false);
        // Whole on the shopping list, however long.
        QVERIFY(pages.front().text().contains(QStringLiteral("vegetable")));
        QVERIFY(pages.front().text().contains(QStringLiteral("second try")));
    }

    void sixtyLinesGoOnOverPagesWithTheirHeadings()
    {
        const Plan plan = counterPlan();
        Assessment assessment = *assessed(plan);
        assessment.shopping.lines.clear();
        assessment.shopping.totalMinor = 0;
        for (int i = 0; i < 60; ++i) {
            ShoppingLine line;
            line.item = "item_" + std::to_string(i);
            line.name = "Thing number " + std::to_string(1000 + i);
            line.group = i < 45 ? "concrete" : "tools";
            line.unit = "kg";
            line.need = 10.25 + i;
            line.packs = {{25.0, 1 + i / 25, 540}};
            line.priceMinor = 540 * (1 + i / 25);
            line.leftover = 1.5;
            assessment.shopping.lines.push_back(line);
            assessment.shopping.totalMinor += line.priceMinor;
        }
        const auto pages = pagesOf(plan, assessment, {QStringLiteral("shopping")});
        QVERIFY(pages.size() >= 3);
        verifyClean(pages, true);
        QString all;
        for (std::size_t i = 0; i < pages.size(); ++i) {
            // Pages of the list repeat its headings; the sums may stand on a page of their own.
            QCOMPARE(pages[i].text().contains(QStringLiteral("Already")),
                     pages[i].text().contains(QStringLiteral("Thing")));
            all += pages[i].text();
        }
        for (int i = 0; i < 60; ++i) {
            QCOMPARE(all.count(QString::number(1000 + i)), 1);
        }
        QVERIFY(pages[1].text().contains(QStringLiteral("Concrete, continued")));
    }

    void yenAndLargeSumsFit()
    {
        Plan plan = samplePlan("two-level-bar");
        plan.currency = "JPY";
        plan.budget = Budget{};
        plan.budget->limit = 98765432.0;
        plan.budget->quote = 123456789.0;
        Assessment assessment = *assessed(plan);
        assessment.shopping.totalMinor = 0;
        for (ShoppingLine& line : assessment.shopping.lines) {
            line.priceMinor = 12345678;
            line.need *= 1000.0;
            assessment.shopping.totalMinor += line.priceMinor;
        }
        const auto pages = pagesOf(plan, assessment, {QStringLiteral("shopping")});
        verifyClean(pages, true);
        QVERIFY(pages.front().text().contains(QStringLiteral("12345678")));
        QVERIFY(pages.front().text().contains(QStringLiteral("JPY")));
        QVERIFY(std::ranges::any_of(pages, [](const auto& page) {
            return page.text().contains(QStringLiteral("123456789"));
        }));
    }

    void anEmptyPlanSaysWhatToDo()
    {
        const Plan plan;
        const auto pages = pagesOf(plan, *assessed(plan), sheetNames());
        QCOMPARE(static_cast<qsizetype>(pages.size()), sheetNames().size());
        verifyClean(pages, true);
        QVERIFY(pages[0].text().contains(QStringLiteral("Nothing to buy yet")));
        QVERIFY(pages[1].text().contains(QStringLiteral("Nothing to saw")));
        QVERIFY(pages[2].text().contains(QStringLiteral("Draw a counter")));
    }

    void absurdSizesStillGivePages()
    {
        Plan plan = counterPlan();
        Counter huge = sinkCounter();
        for (Point& point : huge.outline) {
            point = point * 1e5;
        }
        Support thin;
        thin.lengthMm = 1e-6;
        plan.parts.push_back(makePart("C2", huge, {{1e7, -1e7}, 12.0}));
        plan.parts.push_back(makePart("S1", thin));
        const auto pages = pagesOf(plan, *assessed(plan), sheetNames());
        QVERIFY(pages.size() >= 4);
    }
};

QTEST_MAIN(PrintPackStressTest)
#include "print_pack_stress_test.moc"
