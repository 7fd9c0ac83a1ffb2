#include <algorithm>

#include <QLabel>
#include <QPainter>
#include <QScrollBar>
#include <QTest>

#include "panel_fixture.h"
#include "ui/drawing/weather_chart.h"
#include "ui/look/theme.h"
#include "ui/panels/figure_button.h"
#include "ui/panels/line_view.h"
#include "ui/panels/weather_card.h"
#include "ui/panels/weather_chart_view.h"
#include "ui/wording/figures.h"

using namespace yardcast;
using namespace yardcast::ui;

namespace {

constexpr char kSample[] = "two-level-bar.yardplan";

struct Shown : PanelFixture {
    WeatherCard card{document, selection, live};
    explicit Shown(const Plan& plan) : PanelFixture(plan)
    {
        card.setOpened(true);
        card.resize(340, 560);
        card.show();
        (void)QTest::qWaitForWindowExposed(&card);
    }
    QString big() const { return card.findChild<FigureButton*>(QStringLiteral("bigFigure"))->figure(); }
    QString line(int number) const
    {
        const auto* button = card.findChild<FigureButton*>(QStringLiteral("line%1").arg(number));
        return button->isHidden() ? QString() : button->figure();
    }
    LineView* table(const QString& name) const
    {
        for (LineView* view : card.findChildren<LineView*>()) {
            if (view->accessibleName() == name) return view;
        }
        return nullptr;
    }
    const PourWeather& weather() const { return live.assessment()->weather; }
};

/// Dark pixels of the chart on paper in a column range.
QImage paperChart(const PourWeather& weather)
{
    PaintStyle style;
    style.ink = paperInk();
    style.onPaper = true;
    QImage image(1200, 700, QImage::Format_RGB32);
    image.fill(Qt::white);
    QPainter painter(&image);
    painter.scale(7.0, 7.0);
    paintWeatherChart(painter, QRectF(0, 0, 170, weatherChartHeight(style)), weather, style);
    painter.end();
    return image;
}

}  // namespace

class WeatherCardTest : public QObject {
    Q_OBJECT

private slots:
    void figuresAreThoseOfTheAssessment()
    {
        Shown shown(samplePlan(kSample));
        QCOMPARE(shown.big(), clockText(shown.weather().bestStartH));
        // Whatever is worse: the conditions as stated, or an hour of the work.
        const double worst = std::max(shown.weather().worstAtPlanKgM2H, shown.weather().evaporationKgM2H);
        QVERIFY2(shown.line(1).contains(numberText(worst, 2)), qPrintable(shown.line(1)));
        // As the pour has it, hour by hour: no other figure beside it.
        double least = 1e9;
        double most = 0.0;
        for (const PourDay& day : shown.live.assessment()->pour.days) {
            for (const PouredCasting& poured : day.castings) {
                least = std::min(least, poured.workingMinutes);
                most = std::max(most, poured.workingMinutes);
            }
        }
        QVERIFY(most > 0.0);
        QVERIFY2(shown.line(2).contains(numberText(least, 0)), qPrintable(shown.line(2)));
        QVERIFY2(shown.line(2).contains(numberText(most, 0)), qPrintable(shown.line(2)));
        QVERIFY(!shown.line(3).isEmpty());
        const LineView* hours = shown.table(QStringLiteral("By the hour"));
        QCOMPARE(hours->lineModel().rowCount(), 24);
        QCOMPARE(hours->lineModel().line(15).cells[4], numberText(shown.weather().hours[15].evaporationKgM2H, 2));
        QVERIFY(hours->lineModel().line(15).mark.has_value());
        QCOMPARE(shown.table(QStringLiteral("Curing"))->lineModel().rowCount(),
                 static_cast<int>(shown.live.assessment()->mixes.size()));
    }

    void followsThePlan()
    {
        Shown shown(samplePlan(kSample));
        const QString before = shown.line(2);
        shown.document.apply(QStringLiteral("cooler"), [](const Plan& plan) {
            Plan changed = plan;
            changed.conditions.concreteC = 12;
            changed.conditions.airC = 8;
            changed.conditions.lowC = -4;
            changed.conditions.highC = 9;
            return changed;
        });
        shown.settle();
        QVERIFY(shown.line(2) != before);
        QVERIFY2(shown.line(3).contains(QStringLiteral("Freezes")), qPrintable(shown.line(3)));
    }

    void saysWhatToDoWhileThereIsNothing()
    {
        Shown shown{Plan{}};
        const auto* empty = shown.card.findChild<QLabel*>(QStringLiteral("emptyText"));
        QVERIFY(empty->isVisible());
    }

    void fitsTheDockInLightAndDark()
    {
        PanelFixture fixture(samplePlan(kSample));
        for (const int width : {300, 360}) {
            for (const Appearance appearance : {Appearance::light, Appearance::dark}) {
                qApp->findChild<Theme*>()->setAppearance(appearance);
                WeatherCard card(fixture.document, fixture.selection, fixture.live);
                card.setOpened(true);
                card.resize(width, 620);
                card.show();
                QVERIFY(QTest::qWaitForWindowExposed(&card));
                QCoreApplication::processEvents();
                const int least = card.minimumSizeHint().width();
                QVERIFY2(least <= 300, qPrintable(QString::number(least)));
                for (LineView* view : card.findChildren<LineView*>()) {
                    if (view->isVisible()) QCOMPARE(view->horizontalScrollBar()->maximum(), 0);
                }
                keepPicture(card.grab(), QStringLiteral("weather-%1-%2")
                                             .arg(width)
                                             .arg(QLatin1String(appearance == Appearance::dark ? "dark" : "light")));
            }
        }
        qApp->findChild<Theme*>()->setAppearance(Appearance::light);
    }

    void chartTellsDryDaysFromMildOnes()
    {
        const PanelFixture fixture(samplePlan(kSample));
        PourWeather weather = fixture.live.assessment()->weather;
        const QImage dry = paperChart(weather);
        keepPicture(QPixmap::fromImage(dry), QStringLiteral("weather-chart-paper"));
        for (WeatherHour& hour : weather.hours) hour.evaporationKgM2H = 0.1;
        const QImage mild = paperChart(weather);
        QVERIFY(dry != mild);
        // Without colour: nothing but greys, so that any printer keeps it.
        for (int y = 0; y < dry.height(); y += 3) {
            for (int x = 0; x < dry.width(); x += 3) {
                const QColor c = dry.pixelColor(x, y);
                QVERIFY(std::abs(c.red() - c.blue()) < 40);
            }
        }
        weather.hours.clear();
        const QImage none = paperChart(weather);
        QCOMPARE(none.pixelColor(600, 350), QColor(Qt::white));
    }

    void chartIsToldInWordsToo()
    {
        Shown shown(samplePlan(kSample));
        const auto* chart = shown.card.findChild<WeatherChartView*>();
        QVERIFY(chart->accessibleName().contains(QStringLiteral("kg/m²")));
    }
};

int main(int argc, char** argv)
{
    QApplication app(argc, argv);
    Theme theme(app);
    WeatherCardTest test;
    return QTest::qExec(&test, argc, argv);
}

#include "weather_card_test.moc"
