#include <algorithm>
#include <cmath>

#include <QTemporaryDir>
#include <QtTest>

#include "pdf_probe.h"
#include "sheet_plans.h"
#include "tests/ui/drawing/plain_mould.h"
#include "tests/ui/drawing/sample_plans.h"
#include "ui/sheets/mould_tables.h"
#include "ui/sheets/template_tiles.h"

using namespace yardcast;
using namespace yardcast::ui;

namespace {

constexpr double kDotsPerMm = 8.0;
/// One dot of the picture it is measured in, and half of the line.
constexpr double kReadMm = 0.35;

QString seen(const PdfPage& page)
{
    return page.text().replace(QChar(0x00A0), QLatin1Char(' ')).simplified();
}

std::vector<QRectF> placesOf(const PdfPage& page, const QString& text)
{
    std::vector<QRectF> found;
    for (const PdfWord& word : page.words) {
        if (word.text == text) found.push_back(word.box);
    }
    return found;
}

Assessment withPlainMoulds(const Plan& plan)
{
    Assessment assessment = *assessed(plan);
    addPlainMoulds(plan, assessment);
    return assessment;
}

Plan faceDownPlan(CounterCast cast = CounterCast::faceDown)
{
    Plan plan = counterPlan();
    auto part = std::make_shared<Part>(*plan.parts.at(0));
    std::get<Counter>(part->body).cast = cast;
    plan.parts = {part};
    return plan;
}

}  // namespace

class MouldSheetTest : public QObject {
    Q_OBJECT

private:
    QTemporaryDir folder_;

    QString pdfOf(const Plan& plan, const Assessment& assessment, const QString& sheet, const QString& only = {})
    {
        const QString path = folder_.filePath(QStringLiteral("mould.pdf"));
        QString error;
        SheetOptions options = onFixedDay();
        options.only = only;
        if (!writePackPdf(path, plan, assessment, {sheet}, &error, options)) qFatal("%s", qPrintable(error));
        return path;
    }

private slots:
    /// The sink stands left of the middle in the kitchen: on one page it is left in the picture that says so and right in
    /// the picture of the mould.
    void twoPicturesOnOnePageCannotBeTakenForOneAnother()
    {
        const Plan plan = faceDownPlan();
        const auto pages = readPdf(pdfOf(plan, withPlainMoulds(plan), QStringLiteral("mould")));
        QVERIFY(pages.size() >= 2);
        const PdfPage& page = pages[0];
        const QString text = seen(page);
        QVERIFY2(text.contains(QStringLiteral("AS IT LIES IN THE MOULD: MIRRORED")), qPrintable(text));
        QVERIFY(text.contains(QStringLiteral("AS IT STANDS")));
        QVERIFY(text.contains(QStringLiteral("face down: you look at its underside")));
        QVERIFY(text.contains(QStringLiteral("CHECK AT THE MOULD")));
        QVERIFY(text.contains(QStringLiteral("on your right?")));
        QVERIFY(text.contains(QStringLiteral("(left when it stands)")));
        // Words under each picture stand below its middle: "FRONT EDGE: stand here" and "FRONT EDGE".
        const std::vector<QRectF> mouldFront = placesOf(page, QStringLiteral("EDGE:"));
        const std::vector<QRectF> standingFront = placesOf(page, QStringLiteral("EDGE"));
        QCOMPARE(mouldFront.size(), std::size_t{1});
        QCOMPARE(standingFront.size(), std::size_t{1});
        const std::vector<QRectF> sinks = placesOf(page, QStringLiteral("K1"));
        QVERIFY(sinks.size() >= 2);
        // The standing picture lies below or to the left of the other; its own word is nearest to its front.
        const auto nearest = [&](const QRectF& front) {
            return *std::min_element(sinks.begin(), sinks.end(), [&](const QRectF& a, const QRectF& b) {
                return QLineF(a.center(), front.center()).length() < QLineF(b.center(), front.center()).length();
            });
        };
        QVERIFY(nearest(standingFront[0]).center().x() < standingFront[0].center().x());
        // The largest of the words about the sink stands in the mould.
        const QRectF inMould = *std::max_element(sinks.begin(), sinks.end(), [&](const QRectF& a, const QRectF& b) {
            return std::min(a.width(), a.height()) < std::min(b.width(), b.height());
        });
        QVERIFY(inMould.center().x() > mouldFront[0].center().x());
    }

    void faceUpIsSaidNotToBeMirrored()
    {
        const Plan plan = faceDownPlan(CounterCast::faceUp);
        const auto pages = readPdf(pdfOf(plan, withPlainMoulds(plan), QStringLiteral("mould")));
        QVERIFY(seen(pages[0]).contains(QStringLiteral("NOT MIRRORED")));
        QVERIFY(seen(pages[0]).contains(QStringLiteral("on your left?")));
        QVERIFY(!seen(pages[0]).contains(QStringLiteral("(left when it stands) RIGHT")));
    }

    /// The diagonals of an L differ: each has to be asked for.
    void anLIsAskedForEachOfItsDiagonals()
    {
        Plan plan = samplePlan("corner-kitchen");
        for (PartPtr& part : plan.parts) {
            if (part->id != "B2") continue;
            auto whole = std::make_shared<Part>(*part);
            std::get<Counter>(whole->body).joints.clear();
            part = whole;
        }
        const AssessmentPtr assessment = assessed(plan);
        const std::optional<MouldSubject> subject = mouldSubject(plan, *assessment, "B2");
        QVERIFY(subject);
        const std::vector<Mould::Diagonal>& diagonals = subject->mould->diagonals;
        QCOMPARE(diagonals.size(), std::size_t{2});
        QVERIFY(std::fabs(diagonals[0].lengthMm - diagonals[1].lengthMm) > 1.0);
        const QString asked = mouldQuestions(*subject).join(QLatin1Char('\n'));
        for (const Mould::Diagonal& diagonal : diagonals) {
            QVERIFY2(asked.contains(QString::number(std::round(diagonal.lengthMm))), qPrintable(asked));
        }
    }

    /// Distances of the sink (500 x 400 about 700, 310 of 1800 x 600) to all four sides, as one stands at the mould.
    void cutoutsAreMeasuredToBothEdges()
    {
        const Plan plan = faceDownPlan();
        const Assessment assessment = withPlainMoulds(plan);
        const std::optional<MouldSubject> subject = mouldSubject(plan, assessment, "C1");
        QVERIFY(subject);
        const SheetTable table = mouldCutoutTable(*subject);
        QVERIFY(table.rows.size() >= 1);
        const QStringList& cells = table.rows[0].cells;
        QCOMPARE(cells[2], QStringLiteral("850"));   // from left: 1800 - (700 + 250)
        QCOMPARE(cells[3], QStringLiteral("450"));   // from right: 700 - 250
        QCOMPARE(cells[4], QStringLiteral("110"));
        QCOMPARE(cells[5], QStringLiteral("90"));
        const auto pages = readPdf(pdfOf(plan, assessment, QStringLiteral("mould")));
        QString all;
        for (const PdfPage& page : pages) all += seen(page);
        QVERIFY(all.contains(QStringLiteral("850")) && all.contains(QStringLiteral("450")));
    }

    void stepsComeInOrderAndEndWithTheFoam()
    {
        const Plan plan = samplePlan("two-level-bar");
        const Assessment assessment = withPlainMoulds(plan);
        bool foam = false;
        for (const MouldPtr& mould : assessment.moulds) {
            const std::optional<MouldSubject> subject = mouldSubject(plan, assessment, mould->casting);
            QVERIFY(subject);
            const SheetTable table = mouldStepTable(*subject);
            for (std::size_t i = 0; i < table.rows.size(); ++i) {
                QCOMPARE(table.rows[i].cells[1], QString::number(i + 1));
                QVERIFY(!table.rows[i].cells[3].isEmpty());
            }
            const bool held = std::any_of(mould->parts.begin(), mould->parts.end(), [](const MouldPart& part) {
                return part.kind == MouldPartKind::holdDown;
            });
            if (held) {
                foam = true;
                QVERIFY(table.rows.back().cells[3].contains(QStringLiteral("hold foam and strips down")));
                const QStringList questions = mouldQuestions(*subject);
                QVERIFY(questions.contains(QStringLiteral("Is all foam held down?")));
            }
        }
        QVERIFY(foam);
    }

    /// Measured on the page as it is printed.
    void templateOfOnePageIsTrueToSize()
    {
        Plan plan = faceDownPlan();
        auto part = std::make_shared<Part>(*plan.parts.at(0));
        auto& counter = std::get<Counter>(part->body);
        counter.cutouts.resize(1);
        counter.cutouts[0].size = {150.0, 80.0};
        counter.cutouts[0].cornerRadiusMm = 0.0;
        plan.parts = {part};
        const QString pdf = pdfOf(plan, withPlainMoulds(plan), QStringLiteral("template"));
        const auto pages = readPdf(pdf);
        QCOMPARE(pages.size(), std::size_t{1});
        QVERIFY(seen(pages[0]).contains(QStringLiteral("1:1")));
        QVERIFY(seen(pages[0]).contains(QStringLiteral("Check: this line is 100 mm long")));
        QVERIFY(seen(pages[0]).contains(QStringLiteral("MIRRORED")));
        const QImage picture = pdfPicture(pdf, 1, kDotsPerMm);
        const QSizeF size = pages[0].sizeMm;
        const QRectF middle(35.0, 25.0, size.width() - 60.0, size.height() - 90.0);
        QVERIFY(std::fabs(longestRun(picture, middle, kDotsPerMm, Qt::Horizontal).lengthMm - 150.0) < kReadMm);
        QVERIFY(std::fabs(longestRun(picture, middle, kDotsPerMm, Qt::Vertical).lengthMm - 80.0) < kReadMm);
        // Above the scale bar.
        const QRectF below(22.0, size.height() - 55.0, 110.0, 8.5);
        QVERIFY(std::fabs(longestRun(picture, below, kDotsPerMm, Qt::Horizontal).lengthMm - 100.0) < kReadMm);
    }

    /// Laid together at their targets, the pages give the sink's 500 mm.
    void pagesLaidTogetherAreTrueToSize()
    {
        Plan plan = faceDownPlan();
        auto part = std::make_shared<Part>(*plan.parts.at(0));
        auto& counter = std::get<Counter>(part->body);
        counter.cutouts.resize(1);
        counter.cutouts[0].size = {500.0, 90.0};
        counter.cutouts[0].cornerRadiusMm = 0.0;
        plan.parts = {part};
        const QString pdf = pdfOf(plan, withPlainMoulds(plan), QStringLiteral("template"));
        const auto pages = readPdf(pdf);
        QVERIFY2(pages.size() >= 2, qPrintable(QString::number(pages.size())));
        // Each pair of neighbours has the same targets.
        double laidMm = 0.0;
        double edgeLeft = 0.0;
        double edgeRight = 0.0;
        for (std::size_t i = 0; i < pages.size(); ++i) {
            const QImage picture = pdfPicture(pdf, static_cast<int>(i) + 1, kDotsPerMm);
            const QSizeF size = pages[i].sizeMm;
            const QRectF middle(22.0, 25.0, size.width() - 34.0, size.height() - 75.0);
            if (i == 0 || i + 1 == pages.size()) {
                const DarkRun edge = longestRun(picture, middle, kDotsPerMm, Qt::Vertical);
                QVERIFY2(std::fabs(edge.lengthMm - 90.0) < kReadMm, qPrintable(QString::number(edge.lengthMm)));
                (i == 0 ? edgeLeft : edgeRight) = edge.fromMm.x();
            }
            if (i + 1 == pages.size()) break;
            const QString name = QStringLiteral("A%1-A%2a").arg(i + 1).arg(i + 2);
            const std::vector<QRectF> here = placesOf(pages[i], name);
            const std::vector<QRectF> there = placesOf(pages[i + 1], name);
            QCOMPARE(here.size(), std::size_t{1});
            QCOMPARE(there.size(), std::size_t{1});
            laidMm += here[0].left() - there[0].left();
        }
        QVERIFY2(std::fabs(edgeRight + laidMm - edgeLeft - 500.0) < 2.0 * kReadMm,
                 qPrintable(QString::number(edgeRight + laidMm - edgeLeft)));
    }

    void tilesCoverEverythingAndOverlap()
    {
        for (const QSizeF size : {QSizeF(20, 20), QSizeF(560, 400), QSizeF(1700, 90), QSizeF(170, 900)}) {
            const QRectF box(QPointF(-30.0, 40.0), size);
            const TileGrid grid = tileGridFor(box, 11.0);
            QVERIFY(grid.all.contains(box));
            for (int row = 0; row < grid.rows; ++row) {
                for (int column = 0; column < grid.columns; ++column) {
                    if (column + 1 < grid.columns) {
                        const QRectF both = grid.tile(row, column) & grid.tile(row, column + 1);
                        QVERIFY(std::fabs(both.width() - kTileOverlapMm) < 1e-9);
                    }
                }
            }
            // Every target lies on two pages at least.
            for (const JoinMark& mark : grid.joinMarks()) {
                int on = 0;
                for (int row = 0; row < grid.rows; ++row) {
                    for (int column = 0; column < grid.columns; ++column) on += grid.tile(row, column).contains(mark.at) ? 1 : 0;
                }
                QVERIFY2(on >= 2, qPrintable(mark.name));
            }
        }
    }

    void oneTemplateCanBeAskedFor()
    {
        const Plan plan = faceDownPlan();
        const Assessment assessment = withPlainMoulds(plan);
        const QString pdf = pdfOf(plan, assessment, QStringLiteral("template"));
        const QString folder = qEnvironmentVariable("YARDCAST_PICTURES");
        if (!folder.isEmpty()) QFile::copy(pdf, QDir(folder).filePath(QStringLiteral("template.pdf")));
        const auto all = readPdf(pdf);
        const auto tap = readPdf(pdfOf(plan, assessment, QStringLiteral("template"), QStringLiteral("K2")));
        QVERIFY(tap.size() >= 1);
        QVERIFY(tap.size() < all.size());
        for (const PdfPage& page : tap) QVERIFY(seen(page).contains(QStringLiteral("K2")));
        const auto none = readPdf(pdfOf(plan, assessment, QStringLiteral("template"), QStringLiteral("K9")));
        QCOMPARE(none.size(), std::size_t{1});
        QVERIFY(!usualSheetNames().contains(QStringLiteral("template")));
        QVERIFY(sheetNames().contains(QStringLiteral("template")));
    }

    void everyPageOfTheSamplesIsWithinItsFrame()
    {
        for (const std::string& name : samplePlanNames()) {
            const Plan plan = samplePlan(name);
            const Assessment assessment = withPlainMoulds(plan);
            const QString pdf = pdfOf(plan, assessment, QStringLiteral("mould"));
            // For the eye.
            const QString folder = qEnvironmentVariable("YARDCAST_PICTURES");
            if (!folder.isEmpty()) {
                const QString kept = QDir(folder).filePath(QString::fromStdString(name) + QStringLiteral("-mould.pdf"));
                QFile::remove(kept);
                QFile::copy(pdf, kept);
            }
            for (const PdfPage& page : readPdf(pdf)) {
                const bool landscape = page.sizeMm.width() > page.sizeMm.height();
                const QRectF frame(20.0, 10.0, page.sizeMm.width() - 30.0, page.sizeMm.height() - 20.0);
                for (const PdfWord& word : page.words) {
                    QVERIFY2(frame.adjusted(-0.5, -0.5, 0.5, 0.5).contains(word.box),
                             qPrintable(QStringLiteral("%1 %2: %3").arg(QString::fromStdString(name)).arg(landscape).arg(word.text)));
                }
            }
        }
    }
};

QTEST_MAIN(MouldSheetTest)
#include "mould_sheet_test.moc"
