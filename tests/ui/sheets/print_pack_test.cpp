#include <cmath>

#include <QFile>
#include <QPdfWriter>
#include <QPrinter>
#include <QTemporaryDir>
#include <QtTest>

#include "pdf_probe.h"
#include "sheet_plans.h"
#include "ui/sheets/shopping_rows.h"

using namespace yardcast;
using namespace yardcast::ui;

namespace {

constexpr double kDotsPerMm = 12.0;

QString plain(QString text)
{
    return text.replace(QChar(0x00A0), QLatin1Char(' ')).simplified();
}

/// The place of a word on a page; null when it is not there.
QRectF placeOf(const PdfPage& page, const QString& text)
{
    for (const PdfWord& word : page.words) {
        if (word.text == text) {
            return word.box;
        }
    }
    return {};
}

/// The value of a title block field: what stands in the small box under its label.
bool says(const PdfPage& page, const QString& text)
{
    return page.text().contains(text);
}

/// A printer that cannot turn its pages.
class StiffPrinter : public QPdfWriter {
public:
    using QPdfWriter::QPdfWriter;
    bool setPageLayout(const QPageLayout& layout) override
    {
        QPageLayout upright = layout;
        upright.setOrientation(QPageLayout::Portrait);
        return QPdfWriter::setPageLayout(upright);
    }
};

}  // namespace

class PrintPackTest : public QObject {
    Q_OBJECT

private:
    QTemporaryDir folder_;

    QString pdfOf(const Plan& plan, const QStringList& sheets = sheetNames())
    {
        const QString path = folder_.filePath(QStringLiteral("pack.pdf"));
        QString error;
        if (!writePackPdf(path, plan, *assessed(plan), sheets, &error, onFixedDay())) {
            qFatal("%s", qPrintable(error));
        }
        return path;
    }

private slots:
    void pagesAreA4AndCounted()
    {
        for (const std::string& name : samplePlanNames()) {
            const Plan plan = samplePlan(name);
            const auto pages = readPdf(pdfOf(plan));
            QCOMPARE(static_cast<int>(pages.size()), packPageCount(plan, *assessed(plan), sheetNames(), onFixedDay()));
            for (std::size_t i = 0; i < pages.size(); ++i) {
                const double narrow = std::min(pages[i].sizeMm.width(), pages[i].sizeMm.height());
                const double wide = std::max(pages[i].sizeMm.width(), pages[i].sizeMm.height());
                QVERIFY(std::fabs(narrow - 210.0) < 0.3 && std::fabs(wide - 297.0) < 0.3);
                QVERIFY2(says(pages[i], QStringLiteral("%1 of %2").arg(i + 1).arg(pages.size())),
                         qPrintable(pages[i].text().right(120)));
                QVERIFY(says(pages[i], QStringLiteral("2025-05-03")));
                QVERIFY(says(pages[i], QString::fromStdString(plan.title)));
            }
        }
    }

    void noWordLeavesTheFrame()
    {
        for (const std::string& name : samplePlanNames()) {
            // Templates of true size go on over the edge of a page, on purpose.
            for (const PdfPage& page : readPdf(pdfOf(samplePlan(name), usualSheetNames()))) {
                const QRectF frame(20.0, 10.0, page.sizeMm.width() - 30.0, page.sizeMm.height() - 20.0);
                for (const PdfWord& word : page.words) {
                    QVERIFY2(frame.contains(word.box.center()) && word.box.left() > frame.left() &&
                                 word.box.right() < frame.right(),
                             qPrintable(word.text));
                }
            }
        }
    }

    void theCheckLineIs100MmOnPaper()
    {
        int measured = 0;
        for (const std::string& name : {std::string("grill-bench"), std::string("corner-kitchen")}) {
            const QString path = pdfOf(samplePlan(name), {QStringLiteral("plan"), QStringLiteral("front")});
            const auto pages = readPdf(path);
            for (std::size_t i = 0; i < pages.size(); ++i) {
                const QRectF word = placeOf(pages[i], QStringLiteral("Check:"));
                QVERIFY2(!word.isNull(), "a drawing without a check line");
                const QImage picture = pdfPicture(path, static_cast<int>(i) + 1, kDotsPerMm);
                const QRectF below(word.left() - 3.0, word.bottom() - 0.5, 110.0, 3.0);
                const DarkRun run = longestRun(picture, below, kDotsPerMm, Qt::Horizontal);
                // The ticks at its ends are 0.35 mm wide, half of it outside.
                QVERIFY2(std::fabs(run.lengthMm - 100.35) < 0.25, qPrintable(QString::number(run.lengthMm)));
                ++measured;
            }
        }
        QVERIFY(measured >= 6);
    }

    void aSlabIsDrawnToItsScale()
    {
        const Plan plan = counterPlan();
        const QString path = pdfOf(plan, {QStringLiteral("plan")});
        const auto pages = readPdf(path);
        QCOMPARE(pages.size(), std::size_t{2});
        for (std::size_t i = 0; i < pages.size(); ++i) {
            int scale = 0;
            for (const PdfWord& word : pages[i].words) {
                if (word.text.startsWith(QLatin1String("1:")) && word.box.top() > pages[i].sizeMm.height() - 32.0) {
                    scale = word.text.mid(2).toInt();
                }
            }
            QVERIFY2(scale == 10 || scale == 20, qPrintable(pages[i].text()));
            const QImage picture = pdfPicture(path, static_cast<int>(i) + 1, kDotsPerMm);
            // The dimension line runs under its figure, from tip to tip.
            const QRectF figure = placeOf(pages[i], QStringLiteral("1800"));
            QVERIFY(!figure.isNull());
            const QRectF under(21.0, figure.bottom() - 1.0, pages[i].sizeMm.width() - 32.0, 2.5);
            const DarkRun run = longestRun(picture, under, kDotsPerMm, Qt::Horizontal);
            QVERIFY2(std::fabs(run.lengthMm - 1800.0 / scale) < 0.3, qPrintable(QString::number(run.lengthMm)));
        }
    }

    void theListHoldsEveryLine()
    {
        for (const std::string& name : samplePlanNames()) {
            const Plan plan = samplePlan(name);
            const AssessmentPtr assessment = assessed(plan);
            QString text;
            for (const PdfPage& page : readPdf(pdfOf(plan, {QStringLiteral("shopping")}))) {
                text += plain(page.text()) + QLatin1Char(' ');
            }
            int lines = 0;
            for (const ShoppingAisle& aisle : shoppingAisles(assessment->shopping)) {
                QVERIFY2(text.contains(plain(aisle.name)), qPrintable(aisle.name));
                for (const ShoppingRow& row : aisle.rows) {
                    for (const QString& word : plain(row.name).split(QLatin1Char(' '))) {
                        QVERIFY2(text.contains(word), qPrintable(row.name));
                    }
                    QVERIFY2(text.contains(plain(row.need)), qPrintable(row.need));
                    for (const QString& pack : row.packs) {
                        QVERIFY2(text.contains(plain(pack)), qPrintable(pack));
                    }
                    QVERIFY2(text.contains(plain(row.leftover)), qPrintable(row.leftover));
                    QVERIFY2(text.contains(row.price), qPrintable(row.price));
                    ++lines;
                }
                QVERIFY(text.contains(aisle.subtotal));
            }
            QVERIFY(lines > 10);
            for (const auto& [words, figure] : shoppingSums(plan, *assessment).lines) {
                QVERIFY2(text.contains(plain(words)) && text.contains(plain(figure)), qPrintable(words));
            }
            QVERIFY(text.contains(QStringLiteral("invented")));
            QVERIFY(text.contains(QStringLiteral("Silica dust")));
        }
    }

    void theListOfWeightsHoldsEveryPiece()
    {
        for (const std::string& name : samplePlanNames()) {
            const Plan plan = samplePlan(name);
            const AssessmentPtr assessment = assessed(plan);
            QString text;
            for (const PdfPage& page : readPdf(pdfOf(plan, {QStringLiteral("lift")}))) {
                text += plain(page.text()) + QLatin1Char(' ');
            }
            QVERIFY(!assessment->handling.empty());
            for (const CastingLift& lift : assessment->handling) {
                QVERIFY2(text.contains(QString::fromStdString(lift.casting)), lift.casting.c_str());
                const QString mass = lift.massKg < 99.95 ? QString::number(lift.massKg, 'f', 1)
                                                         : QString::number(lift.massKg, 'f', 0);
                QVERIFY2(text.contains(mass), lift.casting.c_str());
            }
            QVERIFY(text.contains(QStringLiteral("HSE L23")));
            QVERIFY(text.contains(QStringLiteral("Local rules and licensed trades decide.")));
        }
    }

    void drawingsSayWhichViewTheyAre()
    {
        const QStringList sheets{QStringLiteral("plan"), QStringLiteral("front")};
        const auto pages = readPdf(pdfOf(samplePlan("corner-kitchen"), sheets));
        for (const PdfPage& page : pages) {
            QVERIFY(says(page, QStringLiteral("as it stands")));
        }
        // The bowl of the sink slab is 180 mm left of the middle.
        QVERIFY(std::any_of(pages.begin(), pages.end(), [](const PdfPage& page) {
            return says(page, QStringLiteral("Stand at the front edge: the sink is on your left."));
        }));
    }

    void everythingIsBlackAndWhite()
    {
        const QString path = pdfOf(samplePlan("corner-kitchen"));
        const auto count = readPdf(path).size();
        for (std::size_t i = 0; i < count; ++i) {
            const QImage picture = pdfPicture(path, static_cast<int>(i) + 1, 2.0);
            for (int y = 0; y < picture.height(); ++y) {
                for (int x = 0; x < picture.width(); ++x) {
                    const QColor colour = picture.pixelColor(x, y);
                    QVERIFY(std::abs(colour.red() - colour.green()) < 4);
                    QVERIFY(std::abs(colour.green() - colour.blue()) < 4);
                }
            }
        }
    }

    void sheetsComeInTheOrderOfTheJob()
    {
        const auto pages = readPdf(pdfOf(counterPlan(), {QStringLiteral("lift"), QStringLiteral("shopping")}));
        QVERIFY(says(pages.front(), QStringLiteral("Shopping list")));
        QVERIFY(says(pages.back(), QStringLiteral("Weight and lifting")));
    }

    void theMarkTellsPlansApart()
    {
        const auto mark = [&](const Plan& plan) {
            const QString text = readPdf(pdfOf(plan, {QStringLiteral("lift")})).front().text();
            return QRegularExpression(QStringLiteral("/ ([0-9A-F]{6})")).match(text).captured(1);
        };
        Plan plan = counterPlan();
        const QString first = mark(plan);
        QCOMPARE(first.size(), 6);
        QCOMPARE(mark(plan), first);
        plan.crew.people = 5;
        QVERIFY(mark(plan) != first);
    }

    void aStiffPrinterGetsItsDrawingsTurned()
    {
        const Plan plan = samplePlan("grill-bench");
        const QString path = folder_.filePath(QStringLiteral("stiff.pdf"));
        {
            StiffPrinter printer(path);
            QVERIFY(paintPack(printer, plan, *assessed(plan), {QStringLiteral("front")}, onFixedDay()) == 1);
        }
        const auto pages = readPdf(path);
        QVERIFY(pages.front().sizeMm.width() < pages.front().sizeMm.height());
        // The check line runs down the page now: read from the right, near its left edge.
        const QImage picture = pdfPicture(path, 1, kDotsPerMm);
        const DarkRun frame = longestRun(picture, QRectF(5.0, 5.0, 200.0, 287.0), kDotsPerMm, Qt::Vertical);
        QVERIFY(std::fabs(frame.lengthMm - 267.7) < 0.5);
        const QRectF strip(11.5, 20.0, 16.0, 112.0);
        const DarkRun run = longestRun(picture, strip, kDotsPerMm, Qt::Vertical);
        QVERIFY2(std::fabs(run.lengthMm - 100.35) < 0.25, qPrintable(QString::number(run.lengthMm)));
    }

    void aPrinterGetsTheSamePages()
    {
        const Plan plan = samplePlan("grill-bench");
        const QString path = folder_.filePath(QStringLiteral("printed.pdf"));
        const AssessmentPtr assessment = assessed(plan);
        int painted = 0;
        {
            QPrinter printer(QPrinter::HighResolution);
            printer.setOutputFormat(QPrinter::PdfFormat);
            printer.setOutputFileName(path);
            painted = paintPack(printer, plan, *assessment, sheetNames(), onFixedDay());
        }
        const auto pages = readPdf(path);
        QCOMPARE(painted, packPageCount(plan, *assessment, sheetNames(), onFixedDay()));
        QCOMPARE(static_cast<int>(pages.size()), painted);
        int drawings = 0;
        for (std::size_t i = 0; i < pages.size(); ++i) {
            if (placeOf(pages[i], QStringLiteral("Check:")).isNull()) {
                continue;
            }
            const QImage picture = pdfPicture(path, static_cast<int>(i) + 1, kDotsPerMm);
            // The frame is as long as on the sheet, whichever way the page was turned.
            const QRectF all(5.0, 5.0, pages[i].sizeMm.width() - 10.0, pages[i].sizeMm.height() - 10.0);
            const double longest = std::max(longestRun(picture, all, kDotsPerMm, Qt::Horizontal).lengthMm,
                                            longestRun(picture, all, kDotsPerMm, Qt::Vertical).lengthMm);
            QVERIFY2(std::fabs(longest - 267.7) < 0.5 || std::fabs(longest - 277.7) < 0.5,
                     qPrintable(QString::number(longest)));
            ++drawings;
        }
        QVERIFY(drawings >= 4);
    }

    void aFileThatCannotBeWrittenIsSaid()
    {
        const Plan plan = counterPlan();
        QString error;
        QVERIFY(!writePackPdf(folder_.filePath(QStringLiteral("no/such/folder.pdf")), plan, *assessed(plan),
                              sheetNames(), &error, onFixedDay()));
        QVERIFY(!error.isEmpty());
        QVERIFY(!writePackPdf(folder_.filePath(QStringLiteral("no/such/folder.pdf")), plan, *assessed(plan),
                              sheetNames(), nullptr, onFixedDay()));
    }

    void unknownSheetsLeaveTheFileAsItWas()
    {
        const QString path = folder_.filePath(QStringLiteral("kept.pdf"));
        QFile file(path);
        QVERIFY(file.open(QIODevice::WriteOnly));
        file.write("as it was");
        file.close();
        QString error;
        const Plan plan = counterPlan();
        QVERIFY(!writePackPdf(path, plan, *assessed(plan), {QStringLiteral("novel")}, &error, onFixedDay()));
        QVERIFY(!error.isEmpty());
        QVERIFY(file.open(QIODevice::ReadOnly));
        QCOMPARE(file.readAll(), QByteArray("as it was"));
    }
};

QTEST_MAIN(PrintPackTest)
#include "print_pack_test.moc"
