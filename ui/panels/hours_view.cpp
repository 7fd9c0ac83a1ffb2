#include "ui/panels/hours_view.h"

#include <algorithm>
#include <cmath>

#include <QPainter>

#include "ui/look/theme.h"

namespace yardcast::ui {

namespace {

/// More of them would leave no room for the table below.
constexpr std::size_t kMostGroups = 2;
constexpr int kLeastHeightPx = 120;

const CastingHours* slowest(const Assessment& assessment)
{
    const CastingHours* last = nullptr;
    for (const CastingHoursPtr& hours : assessment.hours) {
        if (!hours || hours->governing() == nullptr) continue;
        if (last == nullptr || hours->governing()->cautiousH > last->governing()->cautiousH) last = hours.get();
    }
    return last;
}

HoursChart groupOf(const HoursChart& chart, const std::string& casting)
{
    for (std::size_t i = 0; i < chart.groups.size(); ++i) {
        const auto& castings = chart.groups[i].castings;
        if (std::ranges::find(castings, casting) != castings.end()) return chartOfGroups(chart, i, i + 1);
    }
    return {};
}

}  // namespace

HoursChart hoursChartFor(const Plan& plan, const Assessment& assessment, const QStringList& parts)
{
    HoursChart shown;
    double endH = 0.0;
    for (const QString& part : parts) {
        const HoursChart own = hoursChart(plan, assessment, part.toStdString());
        if (own.groups.empty()) continue;
        shown.startH = own.startH;
        endH = std::max(endH, own.endH);
        for (const HoursGroup& group : own.groups) {
            if (shown.groups.size() < kMostGroups) shown.groups.push_back(group);
        }
    }
    if (!shown.groups.empty()) {
        shown.endH = endH;
        return shown;
    }
    const CastingHours* last = slowest(assessment);
    return last ? groupOf(hoursChart(plan, assessment, last->part), last->casting) : HoursChart();
}

HoursView::HoursView(QWidget* parent) : QWidget(parent)
{
    setObjectName(QStringLiteral("hoursView"));
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    setToolTip(tr("Hours after the pour begins. The chosen parts, or the casting that is ready last."));
}

void HoursView::setChart(const HoursChart& chart, bool isBeingFound)
{
    chart_ = chart;
    noHours_ = isBeingFound ? tr("Hours are being found.") : tr("No hours can be found for these castings.");
    setAccessibleName(chart_.groups.empty() ? noHours_ : hoursChartWords(chart_));
    const int height = chart_.groups.empty() ? std::max(heightPx_, kLeastHeightPx)
                                             : static_cast<int>(std::ceil(hoursChartHeight(chart_, PaintStyle{})));
    if (height != heightPx_) {
        heightPx_ = height;
        updateGeometry();
    }
    update();
}

QSize HoursView::sizeHint() const { return {280, heightPx_}; }

QSize HoursView::minimumSizeHint() const { return {220, heightPx_}; }

void HoursView::paintEvent(QPaintEvent*)
{
    QPainter painter(this);
    if (chart_.groups.empty()) {
        painter.setPen(palette().color(QPalette::PlaceholderText));
        painter.drawText(rect(), Qt::AlignCenter | Qt::TextWordWrap, noHours_);
        return;
    }
    PaintStyle style;
    style.ink = inkOf(palette());
    style.ink.sheet = style.ink.card;
    style.devicePixels = devicePixelRatioF();
    // Narrower than its words it is drawn smaller, so that nothing is cut off.
    const double scale = std::min(1.0, width() / hoursChartLeastWidth(chart_, style));
    painter.scale(scale, scale);
    paintHoursChart(painter, QRectF(0.0, 0.0, width() / scale, height() / scale), chart_, style);
}

}  // namespace yardcast::ui
