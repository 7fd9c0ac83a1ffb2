#include <random>

#include <QTest>

#include "ui/drawing/label_set.h"

using namespace yardcast::ui;

namespace {

OverlayLabel labelAt(QPointF at, double weight, const QStringList& texts)
{
    OverlayLabel label;
    label.at = at;
    label.clearUnits = 8.0;
    label.texts = texts;
    label.weight = weight;
    return label;
}

PaintStyle screenStyle()
{
    PaintStyle style;
    style.ink = lightInk();
    style.mmPerUnit = 5.0;
    return style;
}

}  // namespace

class LabelSetTest : public QObject {
    Q_OBJECT

private slots:
    void aLoneLabelGoesBelowItsSign()
    {
        const auto placed = placeLabels({labelAt({100, 100}, 1, {"74.3 kg"})}, screenStyle());
        QCOMPARE(placed.size(), std::size_t{1});
        QVERIFY(placed[0].box.top() >= 100 + 8.0 * 5.0);
        QVERIFY(std::abs(placed[0].box.center().x() - 100) < 1e-6);
    }

    void aLabelWithoutASignIsCentred()
    {
        OverlayLabel label = labelAt({100, 100}, 1, {"2 of 8 mm"});
        label.clearUnits = 0.0;
        const auto placed = placeLabels({label}, screenStyle());
        QVERIFY(placed[0].box.contains(QPointF(100, 100)));
    }

    void theHeavierGoesFirst()
    {
        const auto placed = placeLabels({labelAt({0, 0}, 1, {"light"}), labelAt({0, 0}, 2, {"heavy"})}, screenStyle());
        QCOMPARE(placed.size(), std::size_t{2});
        QCOMPARE(placed[0].text, QString("heavy"));
        QVERIFY(placed[0].box.top() > 0);
        QVERIFY(placed[1].box.bottom() < 0);
    }

    void aShorterTextWhereTheFullOneHasNoRoom()
    {
        const PaintStyle style = screenStyle();
        const QString full = "45.8 kg\n4 people and a trolley";
        const QString brief = "45.8 kg";
        const double fullWidth = textSizeMm(full, style).width();
        const double briefWidth = textSizeMm(brief, style).width();
        QVERIFY(briefWidth < fullWidth - 20.0);
        // Walls of heavier labels above and below leave a slit that only the brief text passes sideways.
        const double aside = (8.0 + 2.0) * style.mmPerUnit + briefWidth + 5.0;
        std::vector<OverlayLabel> labels = {labelAt({0, 0}, 1, {full, brief})};
        for (const QPointF at : {QPointF(0, 60), QPointF(0, -60)}) {
            OverlayLabel wall = labelAt(at, 5, {full});
            wall.clearUnits = 0.0;
            labels.push_back(wall);
        }
        for (const double x : {aside + fullWidth / 2, -aside - fullWidth / 2}) {
            OverlayLabel wall = labelAt({x, 0}, 5, {full});
            wall.clearUnits = 0.0;
            labels.push_back(wall);
        }
        const auto placed = placeLabels(labels, style);
        QCOMPARE(placed.size(), std::size_t{5});
        QCOMPARE(placed.back().label, std::size_t{0});
        QCOMPARE(placed.back().text, brief);
    }

    void oneThatFindsNoRoomIsLeftOut()
    {
        std::vector<OverlayLabel> labels;
        for (int i = 0; i < 5; ++i) labels.push_back(labelAt({0, 0}, 5 - i, {"45.8 kg"}));
        const auto placed = placeLabels(labels, screenStyle());
        QCOMPARE(placed.size(), std::size_t{4});
        for (const PlacedLabel& one : placed) QVERIFY(one.label != 4);
    }

    void oneThatHasToStayWithinIsShortenedAndNeverLeaves()
    {
        const PaintStyle style = screenStyle();
        const QString full = "No. 2, day 1\n37.0 l worktop\n0.6 batch, 3 layers";
        const QString brief = "2";
        for (double width = 20.0; width < 1200.0; width += 20.0) {
            OverlayLabel label = labelAt({width / 2, 150}, 1, {full, brief});
            label.clearUnits = 0.0;
            label.within = QPolygonF(QRectF(0, 0, width, 300));
            const auto placed = placeLabels({label}, style);
            const bool holdsFull = textSizeMm(full, style).width() < width - 1.0;
            const bool holdsBrief = textSizeMm(brief, style).width() < width - 1.0;
            if (!holdsBrief) continue;
            QCOMPARE(placed.size(), std::size_t{1});
            QCOMPARE(placed[0].text, holdsFull ? full : brief);
            QVERIFY(QRectF(0, 0, width, 300).contains(placed[0].box));
        }
    }

    void whatIsToBeAvoidedIsCoveredOnlyWhereThereIsNoOtherRoom()
    {
        const PaintStyle style = screenStyle();
        OverlayLabel label = labelAt({1000, 150}, 1, {"37.0 l worktop", "2"});
        label.clearUnits = 0.0;
        label.within = QPolygonF(QRectF(0, 0, 2000, 300));
        label.avoid = {QRectF(800, 0, 400, 300)};
        QVERIFY(textSizeMm(label.texts[0], style).width() < 700.0);
        const auto beside = placeLabels({label}, style);
        QCOMPARE(beside.size(), std::size_t{1});
        QVERIFY(!beside[0].box.intersects(label.avoid[0]));
        label.avoid = {QRectF(0, 0, 2000, 300)};
        const auto over = placeLabels({label}, style);
        QCOMPARE(over.size(), std::size_t{1});
        QCOMPARE(over[0].text, QString("37.0 l worktop"));
    }

    void oneThatMayStandBesideItsBoxIsSaidInFullThere()
    {
        const PaintStyle style = screenStyle();
        OverlayLabel label = labelAt({100, 100}, 1, {"No. 2, day 1\n37.0 l worktop", "2"});
        label.clearUnits = 0.0;
        label.within = QPolygonF(QRectF(50, 50, 100, 100));
        label.beside = QRectF(50, 50, 100, 100);
        QCOMPARE(placeLabels({label}, style).at(0).text, QString("2"));
        label.inFull = true;
        const auto placed = placeLabels({label}, style);
        QCOMPARE(placed.size(), std::size_t{1});
        QCOMPARE(placed[0].text, label.texts.front());
        QVERIFY(!placed[0].box.intersects(label.beside));
    }

    void noneLiesOverAnother()
    {
        const unsigned seed = 20260;
        std::mt19937 random(seed);
        std::uniform_real_distribution<double> place(0.0, 3000.0);
        for (int round = 0; round < 50; ++round) {
            std::vector<OverlayLabel> labels;
            for (int i = 0; i < 40; ++i) {
                labels.push_back(labelAt({place(random), place(random)}, place(random), {"45.8 kg\n4 people", "45.8 kg"}));
            }
            const auto placed = placeLabels(labels, screenStyle());
            QVERIFY(placed.size() > 10);
            for (std::size_t i = 0; i < placed.size(); ++i) {
                for (std::size_t j = i + 1; j < placed.size(); ++j) {
                    QVERIFY2(!placed[i].box.intersects(placed[j].box), qPrintable(QString("round %1").arg(round)));
                }
            }
        }
    }
};

QTEST_MAIN(LabelSetTest)
#include "label_set_test.moc"
