#include <cmath>

#include <QPainter>
#include <QTest>

#include "core/castings/casting.h"
#include "tests/ui/live/quick_strength.h"
#include "ui/drawing/strength_overlay.h"
#include "ui/drawing/use_picture.h"
#include "ui/look/use_ramp.h"

using namespace yardcast;
using namespace yardcast::ui;

namespace {

PartPtr slab()
{
    Counter counter;
    counter.outline = {{0, 0}, {1600, 0}, {1600, 600}, {0, 600}};
    counter.thicknessMm = 60.0;
    counter.topMm = 900.0;
    counter.mix = "worktop";
    Part part;
    part.id = "C1";
    part.place.at = {100.0, 200.0};
    part.body = counter;
    return std::make_shared<const Part>(part);
}

PaintStyle styleAt(double mmPerPixel)
{
    PaintStyle style;
    style.ink = lightInk();
    style.mmPerUnit = mmPerPixel;
    return style;
}

struct Shown {
    PartPtr part = slab();
    CastingPtr casting = castingsOf(*part).front();
    CastingStrengthPtr strength;
    StrengthItem item;

    explicit Shown(double mostPercent, const Projection& projection = Projection::above())
    {
        StrengthInput input;
        input.casting = casting;
        strength = QuickStrength{mostPercent}(input, Refinement::working, {}, {});
        const auto made = strengthItem(part, casting, strength, strength->find(StrengthCase::inPlace), projection,
                                       styleAt(2.0));
        if (made) item = *made;
    }
};

/// At 2 mm a pixel, with the slab's front left corner at (50, 350).
QImage paintedUse(const StrengthItem& item, UsePictures& pictures)
{
    QImage image(900, 400, QImage::Format_RGB32);
    image.fill(Qt::white);
    QPainter painter(&image);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.translate(0.0, 450.0);
    painter.scale(0.5, 0.5);
    paintUse(painter, item, pictures, styleAt(2.0));
    return image;
}

int distance(const QColor& a, const QColor& b)
{
    return std::max({std::abs(a.red() - b.red()), std::abs(a.green() - b.green()), std::abs(a.blue() - b.blue())});
}

}  // namespace

class UsePictureTest : public QObject {
    Q_OBJECT

private slots:
    void coloursFollowTheField()
    {
        const Shown shown(80.0);
        UsePictures pictures;
        const QImage image = paintedUse(shown.item, pictures);
        // Own x of a pixel: (px - 50) * 2; use: x / 1600 * 80. Between the lines of 25, 50 and 75 %.
        for (const int px : {100, 250, 400, 600, 700}) {
            const double use = (px + 0.5 - 50.0) * 2.0 / 1600.0 * 80.0;
            const QColor wanted = useColour(use);
            const QColor there = image.pixelColor(px, 130);
            // A pixel of the picture is four millimetres: a step of the ramp at most.
            QVERIFY2(distance(there, wanted) <= 6, qPrintable(QStringLiteral("%1: %2, not %3")
                                                                  .arg(px)
                                                                  .arg(there.name(), wanted.name())));
        }
        QCOMPARE(image.pixelColor(20, 130), QColor(Qt::white));
        QCOMPARE(image.pixelColor(880, 130), QColor(Qt::white));
    }

    void linesStandWhereTheUseIsTheirs()
    {
        QCOMPARE(useLineLevels(24.0), std::vector<double>{});
        QCOMPARE(useLineLevels(110.0), (std::vector<double>{25, 50, 75, 100}));
        QCOMPARE(useLineLevels(450.0).back(), 400.0);
        const Shown shown(80.0);
        UsePictures pictures;
        const QImage image = paintedUse(shown.item, pictures);
        // 25 % at own x = 500, pixel 300.
        const int at = 50 + 500 / 2;
        int darkest = 255;
        for (int px = at - 2; px <= at + 2; ++px) darkest = std::min(darkest, image.pixelColor(px, 130).red());
        QVERIFY(darkest < useColour(25.0).red() - 60);
        const auto& figures = pictures.of(shown.item.result->field).figures();
        QCOMPARE(figures.size(), std::size_t{3});
        QCOMPARE(figures.front().percent, 25.0);
        QVERIFY(std::fabs(figures.front().at.x - 500.0) < 1e-6);
        QVERIFY(std::fabs(figures.front().lengthMm - 600.0) < 1e-6);
    }

    void moreThanThereIsIsHatched()
    {
        UsePictures pictures;
        const auto paleOnes = [&](double mostPercent, int from, int to) {
            const Shown shown(mostPercent);
            const QImage image = paintedUse(shown.item, pictures);
            int pale = 0;
            for (int px = from; px < to; ++px) {
                for (int py = 60; py < 300; ++py) pale += image.pixelColor(px, py).red() > 150 ? 1 : 0;
            }
            return double(pale) / ((to - from) * 240.0);
        };
        // 160 % at the right edge: 100 % at pixel 550, lines of 125 and 150 % at 675 and 800.
        const double hatched = paleOnes(160.0, 580, 660);
        QVERIFY2(hatched > 0.05 && hatched < 0.5, qPrintable(QString::number(hatched)));
        QVERIFY(paleOnes(99.0, 815, 845) < 0.01);
    }

    void aFieldIsRenderedOnceAndLetGo()
    {
        UsePictures pictures;
        {
            const Shown shown(80.0);
            UsePicture* first = &pictures.of(shown.item.result->field);
            QCOMPARE(&pictures.of(shown.item.result->field), first);
            pictures.sweep();
            QCOMPARE(pictures.size(), std::size_t{1});
        }
        pictures.sweep();
        QCOMPARE(pictures.size(), std::size_t{0});
    }

    void valuesAreThoseOfTheField()
    {
        const Shown shown(80.0);
        const auto values = valuesAt(*shown.item.result->field, {400.0, 300.0});
        QVERIFY(values);
        QVERIFY(std::fabs(values->usePercent - 20.0) < 1e-9);
        QVERIFY(std::fabs(values->tensionBottomMpa - 0.5) < 1e-9);
        QVERIFY(valuesAt(*shown.item.result->field, {0.0, 0.0}));
        QVERIFY(valuesAt(*shown.item.result->field, {1600.0, 600.0}));
        QVERIFY(!valuesAt(*shown.item.result->field, {1600.1, 300.0}));
        StrengthField broken = *shown.item.result->field;
        broken.usePercent.pop_back();
        QVERIFY(!valuesAt(broken, {400.0, 300.0}));
    }

    void theWorstPlaceIsSaidInWords()
    {
        const Shown shown(80.0);
        UsePictures pictures;
        StrengthItem item = shown.item;
        item.saysCase = true;
        item.chosen = true;
        const auto labels = strengthLabels(item, pictures, Projection::above(), styleAt(2.0));
        QVERIFY(!labels.empty());
        const QString said = labels.front().texts.first();
        QVERIFY2(said.contains("80") && said.contains("middle of span S1"), qPrintable(said));
        QCOMPARE(labels.front().at, QPointF(100.0 + 1600.0, -(200.0 + 300.0)));
        // Not chosen and with little room only the figure is left.
        const auto few = strengthLabels(shown.item, pictures, Projection::above(), styleAt(20.0));
        QCOMPARE(few.front().texts.size(), 1);
    }

    void bendingIsDrawnByARoundFactor()
    {
        const Shown shown(80.0, Projection::front());
        QVERIFY(!shown.item.plane);
        const auto scale = deflectionScale({shown.item}, styleAt(2.0));
        QVERIFY(scale);
        QCOMPARE(*scale, 50.0);  // 1 mm on 52 mm of drawing
        QVERIFY(!deflectionScale({Shown(80.0).item}, styleAt(2.0)));
        QImage image(900, 600, QImage::Format_RGB32);
        image.fill(Qt::white);
        QPainter painter(&image);
        painter.translate(0.0, 550.0);
        painter.scale(0.5, 0.5);
        paintStrengthMarks(painter, shown.item, Projection::front(), styleAt(2.0), *scale);
        painter.end();
        // Bent most at the right end: 50 mm below the face, which is at pixel 100.
        const auto isInked = [&](int px, int py) { return image.pixelColor(px, py) != QColor(Qt::white); };
        bool below = false;
        for (int py = 120; py < 128; ++py) below = below || isInked(845, py);
        QVERIFY(below);
    }

    void whatTipsHasWordsAndNoColour()
    {
        Shown shown(80.0);
        auto strength = std::make_shared<CastingStrength>(*shown.strength);
        CaseResult& one = strength->cases.front();
        one.holds = false;
        one.field.reset();
        const auto item = strengthItem(shown.part, shown.casting, strength, &one, Projection::above(), styleAt(2.0));
        QVERIFY(item);
        UsePictures pictures;
        const auto labels = strengthLabels(*item, pictures, Projection::above(), styleAt(2.0));
        QVERIFY(labels.front().texts.last().contains("tips"));
        paintedUse(*item, pictures);
        QCOMPARE(pictures.size(), std::size_t{0});
    }

    void planesAreThoseOfTheViews()
    {
        const PartPtr counter = slab();
        const auto above = planeInView(*counter, Projection::above());
        QVERIFY(above);
        QCOMPARE(above->map(QPointF(10.0, 20.0)), QPointF(110.0, -220.0));
        QVERIFY(!planeInView(*counter, Projection::front()));
        Part support;
        Support body;
        body.lengthMm = 600.0;
        body.baseMm = 50.0;
        support.body = body;
        support.place = {{1000.0, 0.0}, 0.0};
        QCOMPARE(planeInView(support, Projection::front())->map(QPointF(10.0, 20.0)), QPointF(1010.0, -70.0));
        QCOMPARE(planeInView(support, Projection::front(270.0))->map(QPointF(10.0, 20.0)), QPointF(-1010.0, -70.0));
        support.place.turnDeg = 90.0;
        QVERIFY(!planeInView(support, Projection::front()));
        QVERIFY(planeInView(support, Projection::front(0.0)));
        QVERIFY(!planeInView(support, Projection::above()));
    }
};

QTEST_MAIN(UsePictureTest)
#include "use_picture_test.moc"
