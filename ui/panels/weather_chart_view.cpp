#include "ui/panels/weather_chart_view.h"

#include <cmath>

#include <QPainter>

#include "ui/drawing/weather_chart.h"
#include "ui/look/theme.h"
#include "ui/wording/figures.h"

namespace yardcast::ui {

WeatherChartView::WeatherChartView(QWidget* parent) : QWidget(parent)
{
    setObjectName(QStringLiteral("weatherChart"));
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
}

void WeatherChartView::setWeather(const PourWeather& weather)
{
    weather_ = weather;
    // In words for those who cannot see it.
    const WeatherHour* worst = nullptr;
    for (const WeatherHour& hour : weather_.hours) {
        if (!worst || hour.evaporationKgM2H > worst->evaporationKgM2H) worst = &hour;
    }
    if (worst) {
        setAccessibleName(tr("Water lost through the day: most at %1, %2 kg/m² an hour; the limit is %3")
                              .arg(clockText(worst->hourOfDay), numberText(worst->evaporationKgM2H, 2),
                                   numberText(weather_.limitKgM2H, 1)));
    }
    setToolTip(
        tr("The line is the formula's, the band how far real rates lie from it. Hatched: outside working hours."));
    update();
}

QSize WeatherChartView::sizeHint() const
{
    return {280, static_cast<int>(std::ceil(weatherChartHeight(PaintStyle{})))};
}

QSize WeatherChartView::minimumSizeHint() const { return {220, sizeHint().height()}; }

void WeatherChartView::paintEvent(QPaintEvent*)
{
    PaintStyle style;
    style.ink = inkOf(palette());
    style.ink.sheet = style.ink.card;
    style.devicePixels = devicePixelRatioF();
    QPainter painter(this);
    paintWeatherChart(painter, rect(), weather_, style);
}

}  // namespace yardcast::ui
