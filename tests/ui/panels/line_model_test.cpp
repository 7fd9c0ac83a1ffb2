#include <algorithm>

#include <QAbstractItemModelTester>
#include <QRandomGenerator>
#include <QSignalSpy>
#include <QTest>

#include "ui/panels/line_model.h"
#include "ui/panels/line_view.h"

using namespace yardcast::ui;

namespace {

Line line(const QString& key, const QString& value)
{
    return {key, Line::Kind::line, {key, value}, {}, {}, {}, {}, -1};
}

}  // namespace

class LineModelTest : public QObject {
    Q_OBJECT

private slots:
    /// Whatever the change, the rows are those asked for and the model keeps its promises to views.
    void anyChangeArrives()
    {
        LineModel model({{QStringLiteral("Name"), false}, {QStringLiteral("kg"), true}});
        QAbstractItemModelTester tester(&model, QAbstractItemModelTester::FailureReportingMode::QtTest);
        QRandomGenerator random(20240611);
        for (int round = 0; round < 500; ++round) {
            QStringList keys;
            for (int i = 0; i < 12; ++i) {
                if (random.bounded(3) > 0) keys.append(QString::number(i));
            }
            for (int swaps = random.bounded(4); swaps > 0 && keys.size() > 1; --swaps) {
                keys.swapItemsAt(random.bounded(int(keys.size())), random.bounded(int(keys.size())));
            }
            QList<Line> lines;
            for (const QString& key : std::as_const(keys)) lines.append(line(key, QString::number(random.bounded(3))));
            model.setLines(lines);
            QCOMPARE(model.lines(), lines);
        }
    }

    void whatStaysKeepsItsPlace()
    {
        LineModel model({{QStringLiteral("Name"), false}, {QStringLiteral("kg"), true}});
        model.setLines({line("a", "1"), line("b", "2"), line("c", "3")});
        const QPersistentModelIndex c(model.index(2, 0));
        QSignalSpy reset(&model, &LineModel::modelReset);
        QSignalSpy changed(&model, &LineModel::dataChanged);
        model.setLines({line("a", "1"), line("x", "9"), line("c", "4")});
        QCOMPARE(c.row(), 2);
        QCOMPARE(c.data().toString(), QStringLiteral("c"));
        model.setLines({line("c", "4"), line("a", "1")});
        QCOMPARE(c.row(), 0);
        QCOMPARE(reset.size(), 0);
        QCOMPARE(changed.size(), 1);  // only the figure of c
    }

    void muchChangeBeginsAnewAndFindsItsLine()
    {
        LineView view(new LineModel({{QStringLiteral("Name"), false}, {QStringLiteral("kg"), true}}));
        QSignalSpy reset(&view.lineModel(), &LineModel::modelReset);
        QList<Line> lines;
        for (int i = 0; i < 200; ++i) lines.append(line(QString::number(i), "1"));
        view.lineModel().setLines(lines);
        view.setCurrentIndex(view.lineModel().index(150, 0));
        std::reverse(lines.begin(), lines.end());
        view.lineModel().setLines(lines);
        QCOMPARE(reset.size(), 2);
        QCOMPARE(view.lineModel().lines(), lines);
        QCOMPARE(view.lineModel().line(view.currentRow()).key, QStringLiteral("150"));
    }

    void sameLinesSayNothing()
    {
        LineModel model({{QStringLiteral("Name"), false}});
        model.setLines({line("a", "1")});
        QSignalSpy changed(&model, &LineModel::linesChanged);
        model.setLines({line("a", "1")});
        QCOMPARE(changed.size(), 0);
    }
};

QTEST_MAIN(LineModelTest)
#include "line_model_test.moc"
