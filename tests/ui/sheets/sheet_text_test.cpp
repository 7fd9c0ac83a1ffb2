#include <QtTest>

#include "ui/sheets/drawing_fit.h"
#include "ui/sheets/scales.h"
#include "ui/sheets/sheet_frame.h"
#include "ui/sheets/sheet_text.h"

using namespace yardcast;
using namespace yardcast::ui;

namespace {

/// A box of the plan, with so much around it as mm of paper.
ScaledDrawing boxDrawing(double width, double height, double airMm)
{
    ScaledDrawing drawing;
    drawing.bounds = [=](const PaintStyle& style) {
        const double air = airMm * style.mmPerUnit;
        return QRectF(0.0, 0.0, width, height).adjusted(-air, -air, air, air);
    };
    drawing.paint = [](QPainter&, const PaintStyle&) {};
    return drawing;
}

}  // namespace

class SheetTextTest : public QObject {
    Q_OBJECT

private slots:
    void wrappingKeepsEveryWordAndTheWidth()
    {
        const Type type;
        const QString text = QStringLiteral("Coated mould board 2500 x 1250 x 18, sheet, as it comes from the store");
        const QStringList lines = wrapped(text, 40.0, type);
        QVERIFY(lines.size() > 2);
        QCOMPARE(lines.join(QLatin1Char(' ')), text);
        for (const QString& line : lines) {
            QVERIFY(textWidthMm(line, type) <= 40.0);
        }
    }

    void aWordWiderThanTheLineIsParted()
    {
        const Type type;
        const QString word(120, QLatin1Char('m'));
        const QStringList lines = wrapped(word, 30.0, type);
        QCOMPARE(lines.join(QString()), word);
        for (const QString& line : lines) {
            QVERIFY(textWidthMm(line, type) <= 30.0);
        }
    }

    void figuresGetSmallerNotShorter()
    {
        const Type type;
        const QString figure = QStringLiteral("1234567890.50");
        QVERIFY(textWidthMm(figure, type) > 20.0);
        QVERIFY(textWidthMm(figure, fittedType(figure, 20.0, type)) <= 20.0);
    }

    void capitalsOfDimensionsAreReadAtArmsLength()
    {
        // ISO 3098-1 has 3.5 mm next to 2.5 mm; figures of this size have capitals of about 3.2 mm.
        Type type;
        type.sizeMm = 4.4;
        QVERIFY(lineHeightMm(type) > 4.5);
        QVERIFY(lineHeightMm(type) < 6.0);
    }

    void theLargestScaleThatFitsIsTaken_data()
    {
        QTest::addColumn<double>("width");
        QTest::addColumn<double>("height");
        QTest::addColumn<int>("scale");
        QTest::addColumn<bool>("landscape");
        // Content is 180 x 233 mm upright and 267 x 160 mm lying; 2 mm of air at each side.
        QTest::newRow("small and high") << 100.0 << 200.0 << 1 << false;
        QTest::newRow("long") << 2500.0 << 600.0 << 10 << true;
        QTest::newRow("square") << 1500.0 << 1500.0 << 10 << false;
        QTest::newRow("either way") << 2900.0 << 2900.0 << 20 << false;
        QTest::newRow("a garden") << 12000.0 << 6500.0 << 50 << true;
    }

    void theLargestScaleThatFitsIsTaken()
    {
        QFETCH(double, width);
        QFETCH(double, height);
        const ScaledDrawing drawing = boxDrawing(width, height, 5.0);
        const DrawingFit fit = fitOnSheet(drawing);
        QTEST(fit.scale, "scale");
        QTEST(fit.landscape, "landscape");
        const auto& scales = reductionScales();
        QVERIFY(std::find(scales.begin(), scales.end(), fit.scale) != scales.end());
        const QSizeF size = drawing.bounds(paperStyle(fit.scale)).size() / fit.scale;
        const QSizeF room = contentBox(fit.landscape, true).size();
        QVERIFY(size.width() <= room.width() && size.height() <= room.height());
    }

    void scalesAreThoseOfTheStandard()
    {
        // ISO 5455:1979, recommended reductions: 1:2, 1:5, 1:10 and so on by decades.
        for (const int scale : reductionScales()) {
            int digits = scale;
            while (digits % 10 == 0) {
                digits /= 10;
            }
            QVERIFY(digits == 1 || digits == 2 || digits == 5);
        }
    }

    void theFrameLeavesRoomToFile()
    {
        for (const bool landscape : {false, true}) {
            const QRectF frame = frameBox(landscape);
            const QSizeF sheet = sheetSize(landscape);
            QCOMPARE(frame.left(), 20.0);
            QCOMPARE(frame.top(), 10.0);
            QCOMPARE(sheet.width() - frame.right(), 10.0);
            QCOMPARE(sheet.height() - frame.bottom(), 10.0);
            QVERIFY(frame.contains(contentBox(landscape, true)));
            QCOMPARE(checkLine(landscape).length(), 100.0);
            QVERIFY(frame.contains(checkLine(landscape).p2()));
        }
    }
};

QTEST_MAIN(SheetTextTest)
#include "sheet_text_test.moc"
