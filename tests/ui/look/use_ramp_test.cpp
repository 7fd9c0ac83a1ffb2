#include <cmath>
#include <limits>

#include <QTest>

#include "ui/look/ink.h"
#include "ui/look/use_ramp.h"

using namespace yardcast::ui;

namespace {

/// CIE L*, from sRGB by IEC 61966-2-1 and the definition of CIE 1976: another measure of lightness than the ramp was
/// made with.
double lightness(const QColor& colour)
{
    const auto linear = [](double c) { return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4); };
    const double y = 0.2126 * linear(colour.redF()) + 0.7152 * linear(colour.greenF()) + 0.0722 * linear(colour.blueF());
    return y > 0.008856 ? 116.0 * std::cbrt(y) - 16.0 : 903.3 * y;
}

}  // namespace

class UseRampTest : public QObject {
    Q_OBJECT

private slots:
    void lightnessFallsEvenly()
    {
        constexpr int kSteps = 20;
        const double whole = lightness(useColour(0.0)) - lightness(useColour(100.0));
        QVERIFY(whole > 60.0);
        for (int i = 0; i < kSteps; ++i) {
            const double step =
                lightness(useColour(100.0 * i / kSteps)) - lightness(useColour(100.0 * (i + 1) / kSteps));
            // A quarter off an even step is not seen; the two measures of lightness differ by some of it.
            QVERIFY2(std::fabs(step - whole / kSteps) < 0.25 * whole / kSteps, qPrintable(QString::number(step)));
        }
    }

    void littleUseIsPaleAndMuchIsDark()
    {
        QVERIFY(lightness(useColour(0.0)) > 90.0);
        QVERIFY(lightness(useColour(100.0)) < 25.0);
        QCOMPARE(useColour(250.0), useColour(100.0));
        QCOMPARE(useColour(-3.0), useColour(0.0));
        QCOMPARE(useColour(std::numeric_limits<double>::quiet_NaN()), useColour(0.0));
    }

    void figuresOnItCanBeRead()
    {
        // On every shade a figure can stand on: those of the lines.
        for (const double percent : {0.0, 25.0, 50.0, 75.0, 100.0, 150.0}) {
            const double contrast = contrastRatio(inkOnUse(percent), useColour(percent));
            QVERIFY2(contrast >= 4.5, qPrintable(QStringLiteral("%1 %: %2").arg(percent).arg(contrast)));
        }
    }
};

QTEST_APPLESS_MAIN(UseRampTest)
#include "use_ramp_test.moc"
