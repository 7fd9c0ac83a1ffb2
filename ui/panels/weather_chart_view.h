#pragma once

#include <QWidget>

#include "core/pour/weather.h"

namespace yardcast::ui {

/// The pour day's chart in a card.
class WeatherChartView : public QWidget {
    Q_OBJECT

public:
    explicit WeatherChartView(QWidget* parent = nullptr);

    void setWeather(const PourWeather& weather);

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    PourWeather weather_;
};

}  // namespace yardcast::ui
