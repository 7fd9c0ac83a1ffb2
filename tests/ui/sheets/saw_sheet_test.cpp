#include <QTemporaryDir>
#include <QtTest>

#include "pdf_probe.h"
#include "sheet_plans.h"
#include "core/io/plan_file.h"
#include "core/purchase/later_boards.h"
#include "tests/ui/drawing/some_cuts.h"
#include "ui/sheets/saw_rows.h"

using namespace yardcast;
using namespace yardcast::ui;

namespace {

QString seen(const PdfPage& page) { return page.text().replace(QChar(0x00A0), QLatin1Char(' ')).simplified(); }

Assessment withSomeCuts(const Plan& plan)
{
    Assessment assessment = *assessed(plan);
    assessment.cuts = someCuts();
    return assessment;
}

}  // namespace

class SawSheetTest : public QObject {
    Q_OBJECT

private:
    QTemporaryDir folder_;

    QString textOf(const Plan& plan, const Assessment& assessment, std::size_t* pages = nullptr)
    {
        const QString path = folder_.filePath(QStringLiteral("saw.pdf"));
        QString error;
        if (!writePackPdf(path, plan, assessment, {QStringLiteral("saw")}, &error, onFixedDay())) {
            qFatal("%s", qPrintable(error));
        }
        const QString kept = qEnvironmentVariable("YARDCAST_PICTURES");
        if (!kept.isEmpty()) QFile::copy(path, kept + QStringLiteral("/saw.pdf"));
        QString all;
        const std::vector<PdfPage> read = readPdf(path);
        if (pages) *pages = read.size();
        for (const PdfPage& page : read) all += seen(page) + QLatin1Char(' ');
        return all;
    }

private slots:
    void namesEveryPieceCutAndRemainder()
    {
        const Plan plan = counterPlan();
        const Assessment assessment = withSomeCuts(plan);
        const QString all = textOf(plan, assessment);
        for (const SheetCutsPtr& cuts : assessment.cuts->sheets) {
            for (const CutPiece& piece : cuts->job.pieces) {
                QVERIFY2(all.contains(QString::fromStdString(piece.name)), piece.name.c_str());
            }
            for (const CutSheet& sheet : cuts->plan.sheets) {
                for (const SheetArea& rest : sheet.remainders) QVERIFY(all.contains(plainSize(rest.size)));
            }
        }
        QVERIFY(all.contains(QStringLiteral("To rip at home")));
        QVERIFY(all.contains(QStringLiteral("Measure the board before anything is cut")));
        QVERIFY(all.contains(QStringLiteral("guard in place")));
        QVERIFY(all.contains(QStringLiteral("Bar 8 mm")));
        QVERIFY(all.contains(QStringLiteral("1780 (1)")));
    }

    void oldBasesStandOnAListOfTheirOwn()
    {
        const Plan counter = counterPlan();
        QVERIFY(!textOf(counter, withSomeCuts(counter)).contains(QStringLiteral("Old bases")));
        const FileText file = readFile(std::string(YARDCAST_SOURCE_DIR "/sample-projects/two-level-bar.yardplan"));
        QVERIFY(file.text.has_value());
        const Plan plan = *readPlan(*file.text).plan;
        const Assessment assessment = withSomeCuts(plan);
        const LaterBoards later = laterBoards(plan, assessment.moulds, assessment.pour);
        QVERIFY(!later.cuts.empty());
        const QString all = textOf(plan, assessment);
        QVERIFY(all.contains(QStringLiteral("Old bases that can be sawn up")));
        for (const LaterCut& cut : later.cuts) {
            QVERIFY2(all.contains(plainSize(cut.clean)), qPrintable(plainSize(cut.clean)));
            for (const LaterPiece& piece : cut.pieces) QVERIFY2(all.contains(QString::fromStdString(piece.name)), piece.name.c_str());
        }
    }

    /// Every cut of the plan stands in exactly one row, every piece is given by exactly one.
    void rowsHoldEveryCutOnce()
    {
        const SheetCutsPtr cuts = someBoards();
        for (const CutSheet& sheet : cuts->plan.sheets) {
            int numbers = 0;
            for (const bool atHome : {false, true}) {
                for (const SawRow& row : sawRows(cuts->job, sheet, atHome)) {
                    const QStringList ends = row.number.split(QChar(0x2013));
                    numbers += ends.last().toInt() - ends.first().toInt() + 1;
                    QVERIFY(!row.gives.isEmpty() && !row.leaves.isEmpty());
                }
            }
            QCOMPARE(numbers, static_cast<int>(sheet.steps.size()));
            std::size_t count = 0;
            for (const SawnPieceRow& row : sawnPieces(sheet)) count += static_cast<std::size_t>(row.count);
            QCOMPARE(count, sheet.pieces.size());
        }
    }

    void ripsAreGatheredByTheFence()
    {
        // Three sorts of strip narrower than the store saws, on more than one sheet.
        SheetJob job;
        job.atStore = true;
        job.pieces = {{"C1", "C1-2", "side", true, false}, {"C2", "C2-3", "side", true, false}, {"C2", "C2-4", "base", true, false}};
        job.stock = {{1.0, 0, false}};
        job.list.sawMm = 4.0;
        job.list.leastStripMm = 80.0;
        job.list.stock = {{{2500, 1250}, 10.0, {}}};
        job.list.pieces = {{"C1-2", {1800, 60}, 7, true}, {"C2-3", {900, 50}, 6, true}, {"C2-4", {2300, 900}, 2, true}};
        SheetCuts cuts{job, cutSheets(job.list)};
        int homeCuts = 0;
        for (const CutSheet& sheet : cuts.plan.sheets) {
            for (const SawStep& step : sheet.steps) homeCuts += step.atHome ? sheet.times : 0;
        }
        QVERIFY(homeCuts > 0);
        const std::vector<RipRow> rows = ripRows(cuts);
        QVERIFY(static_cast<int>(rows.size()) < homeCuts);
        int counted = 0;
        for (std::size_t i = 0; i < rows.size(); ++i) {
            counted += rows[i].count;
            QVERIFY(!rows[i].from.isEmpty());
            if (i == 0) continue;
            QVERIFY(rows[i].round >= rows[i - 1].round);
            if (rows[i].round == rows[i - 1].round) QVERIFY(rows[i].fenceMm <= rows[i - 1].fenceMm);
        }
        QCOMPARE(counted, homeCuts);
    }

    void likeCutsAreOneRow()
    {
        SheetJob job;
        job.pieces = {{"C1", "C1-9", "side", false, false}};
        job.stock = {{1.0, 0, false}};
        job.list.sawMm = 4.0;
        job.list.stock = {{{1000, 500}, 10.0, {}}};
        job.list.pieces = {{"C1-9", {200, 500}, 4, false}};
        const SheetPlan plan = cutSheets(job.list);
        QCOMPARE(plan.sheets.size(), std::size_t{1});
        const std::vector<SawRow> rows = sawRows(job, plan.sheets[0], false);
        QCOMPARE(rows.size(), std::size_t{1});
        QCOMPARE(rows[0].measureOff, QStringLiteral("4 × 200 of 1000"));
        QCOMPARE(rows[0].gives, QStringLiteral("4 × C1-9"));
        QCOMPARE(rows[0].leaves, QStringLiteral("left over 184 × 500"));
    }

    void whatFitsNothingIsSaid()
    {
        const Plan plan = counterPlan();
        Assessment assessment = withSomeCuts(plan);
        auto cuts = std::make_shared<SheetCuts>(*someBoards());
        cuts->plan.unplaced.push_back({0, 3, Unplaced::tooLarge});
        auto plans = std::make_shared<CutPlans>();
        plans->sheets = {cuts};
        plans->withoutStock = {{"foam_40", {{"C1", "F1", "core", false, false}}}};
        assessment.cuts = plans;
        const QString all = textOf(plan, assessment);
        QVERIFY(all.contains(QStringLiteral("NOT CUT: 3 of C1-1, it fits no sheet")));
        QVERIFY(all.contains(QStringLiteral("no sheet or length of it has a price")));
    }

    void withoutCutsItSaysSo()
    {
        std::size_t pages = 0;
        Assessment none = *assessed(Plan{});
        none.cuts.reset();
        QVERIFY(textOf(Plan{}, none, &pages).contains(QStringLiteral("Nothing to saw yet")));
        QCOMPARE(pages, std::size_t{1});
        Assessment unknown = *assessed(counterPlan());
        unknown.cuts.reset();
        QVERIFY(textOf(counterPlan(), unknown).contains(QStringLiteral("have not been worked out")));
    }
};

QTEST_MAIN(SawSheetTest)
#include "saw_sheet_test.moc"
