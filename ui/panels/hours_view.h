#pragma once

#include <QStringList>
#include <QWidget>

#include "ui/drawing/hours_chart.h"

namespace yardcast::ui {

/// The groups of the chosen parts; where none of them has hours, the casting that is ready last.
HoursChart hoursChartFor(const Plan& plan, const Assessment& assessment, const QStringList& parts);

/// The chart of hours in a card. It keeps its height while new hours are being found.
class HoursView : public QWidget {
    Q_OBJECT

public:
    explicit HoursView(QWidget* parent = nullptr);

    /// A chart without groups: new hours are being found, or there are none.
    void setChart(const HoursChart& chart, bool isBeingFound);
    const HoursChart& chart() const { return chart_; }

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    HoursChart chart_;
    QString noHours_;
    int heightPx_ = 0;
};

}  // namespace yardcast::ui
